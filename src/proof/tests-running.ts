/**
 * Before it turns, and through a long run: turned by hand, links compared, load in steps, vibration.
 *
 * @module
 */

import { choice, degrees, hertz, kelvins, minutes, speeds, yesNo } from './fields.js'
import { type Outcome, proofTest, stepOf, type Taken } from './judging.js'
import type { Limits } from './limits.js'
import { loadPlan } from './load-programmes.js'
import { sayFigure } from './say-figure.js'
import type { ProofTest, Worked } from './test-type.js'
import { riseFields, riseOf } from './winding-rise.js'

export const turnTest: ProofTest = proofTest({
  id: 'turn-by-hand',
  name: 'Turned by hand, two full turns',
  purpose: 'Whether anything binds, and no cylinder holds water, before a starter turns it.',
  danger: 'locked out',
  dangers: ['water-lock', 'injury'],
  instrument: 'Socket on the crankshaft',
  steps: [
    'Lock out: start battery off, selector off, key taken; fuel stop pulled.',
    'Tools counted, guards in reach, nothing left in the alternator.',
    'Turn two full turns by hand, slowly. Feel for a hard stop.',
    'Know how to shut the air off by hand before the first start after any work on fuel or governor.',
  ],
  fields: [
    choice({
      id: 'turns',
      name: 'How it turns',
      needed: true,
      of: {
        free: 'freely, with compression alone',
        rubs: 'something rubs or clicks',
        stops: 'it stops hard',
      },
    }),
    yesNo({ id: 'water', name: 'Water at the manifold or in the oil?', needed: true }),
  ],
  bands: [
    { id: 'locked', name: 'Stops hard, or water', verdict: 'fail' },
    { id: 'rubs', name: 'Rubs', verdict: 'fail' },
    { id: 'free', name: 'Free', verdict: 'pass' },
  ],
  weigh(taken) {
    const turns = taken.choice('turns')
    const band =
      turns === 'stops' || taken.choice('water') === 'yes' ? 'locked' : turns === 'rubs' ? 'rubs' : 'free'
    return {
      band,
      says: {
        locked: 'Do not crank it. Water in a cylinder bends rods.',
        rubs: 'Something rubs: find it before the starter does.',
        free: 'It turns freely.',
      }[band],
      limits: [],
      next: {
        locked: 'Injectors out, bar it by hand, drain, find where the water came from; a mechanic.',
        rubs: 'Cover off, look at rotor, fan, coupling and cables.',
        free: 'Guards back on.',
      }[band],
    }
  },
})

export const linksTest: ProofTest = proofTest({
  id: 'winding-links',
  name: 'Winding links compared with what they were and what they must be',
  purpose: 'Whether every lead is joined as it was, or as it is meant to be now, before anything turns.',
  danger: 'locked out',
  dangers: ['shock', 'overvoltage'],
  instrument: 'The photographs from before, the plan, the page of winding links',
  steps: [
    'Lock out and prove dead.',
    'Write the joined leads down as they are; compare them with as found, lead by lead.',
    'Every difference is either put back, or is meant, with sensing leads, breaker and meters moved along.',
  ],
  fields: [
    yesNo({ id: 'photographed', name: 'Were they photographed before anything was undone?', needed: true }),
    choice({
      id: 'differences',
      name: 'Differences to as found',
      needed: true,
      of: { none: 'none', meant: 'all are meant and followed up', open: 'some are not answered' },
    }),
    yesNo({
      id: 'sensing',
      name: 'Do the regulator’s sensing and supply leads fit the links?',
      needed: true,
    }),
  ],
  bands: [
    { id: 'differ', name: 'Not answered', verdict: 'fail' },
    { id: 'sensing', name: 'Sensing leads do not fit', verdict: 'fail' },
    { id: 'unknown', name: 'Nobody knows how they were', verdict: 'fail' },
    { id: 'match', name: 'As they must be', verdict: 'pass' },
  ],
  weigh(taken) {
    const differences = taken.choice('differences')
    const band =
      differences === 'open'
        ? 'differ'
        : taken.choice('sensing') === 'no'
          ? 'sensing'
          : taken.choice('photographed') === 'no' && differences === 'none'
            ? 'unknown'
            : 'match'
    return {
      band,
      says: {
        differ: 'Do not energise the set: a difference in the links is not answered.',
        sensing: 'Do not energise the set: sensing on another pattern drives it to twice or half its volts.',
        unknown: 'Nobody photographed them, so "no difference" is against nothing.',
        match: 'Every lead is as it must be.',
      }[band],
      limits: [],
      next:
        band === 'match'
          ? 'Then the resistance of halves and pattern, then the volts across each gap before it is closed.'
          : 'Work out the links from the leads as they are, compare the resistances, and have a winder say it where doubt is left.',
    }
  },
})

export const loadRunTest: ProofTest = proofTest({
  id: 'load-run',
  name: 'Load in steps until everything is steady',
  purpose: 'Whether it carries its load for as long as it takes to find its temperature.',
  danger: 'live',
  dangers: ['shock', 'carbon-monoxide', 'scald', 'fire'],
  instrument: 'Heaters or a load bank, clamp meter, infrared thermometer, carbon monoxide meter',
  steps: [
    'Nobody in the water; carbon monoxide meter where people are; clips and spots set while it is stopped and locked out.',
    'Stand clear, then start. Unloaded 10 min, a quarter 15 min, half 30 min, three quarters 60 min, full 60 to 120 min.',
    'Every 15 min: volts and amps of each leg, kilowatts, frequency, water in and out, coolant, oil pressure, air out of the alternator, colour of the exhaust.',
    'At three quarters: every link, terminal, breaker and plug by infrared, through its slot.',
    'Load off, 10 min unloaded, stop. Insulation again while hot; links and lugs tightened again.',
  ],
  plan: loadPlan,
  fields: [
    minutes({ id: 'full', name: 'Minutes at full load', needed: true }),
    degrees({
      id: 'coolant-1',
      name: 'Coolant, three readings 15 min apart: first',
      needed: true,
      least: 0,
      most: 150,
    }),
    degrees({ id: 'coolant-2', name: 'Second', needed: true, least: 0, most: 150 }),
    degrees({ id: 'coolant-3', name: 'Third', needed: true, least: 0, most: 150 }),
    kelvins({ id: 'joint', name: 'Hottest joint above its neighbours', needed: true }),
    yesNo({ id: 'tripped', name: 'Did anything trip, smell, smoke or leak?', needed: true }),
    ...riseFields,
  ],
  bands: [
    { id: 'trouble', name: 'Something tripped, smelt, smoked or leaked', verdict: 'fail' },
    { id: 'hot-winding', name: 'The winding is hotter than its insulation bears', verdict: 'fail' },
    { id: 'hot-joint', name: 'A joint is hot', verdict: 'fail' },
    { id: 'warm-joint', name: 'A joint is warm', verdict: 'fail' },
    { id: 'climbing', name: 'Still getting warmer', verdict: 'fail' },
    { id: 'short', name: 'Too short', verdict: 'fail' },
    { id: 'steady', name: 'Steady at full load', verdict: 'pass' },
  ],
  weigh: weighRun,
})

function weighRun(taken: Taken, limits: Limits): Outcome {
  const [warm, hot, like, long] = [
    limits('joint-warm'),
    limits('joint-hot'),
    limits('steady-band'),
    limits('steady-minutes'),
  ]
  const coolant = ['coolant-1', 'coolant-2', 'coolant-3'].map((id) => taken.need(id))
  const spread = Math.max(...coolant) - Math.min(...coolant)
  const joint = stepOf(
    taken.need('joint'),
    [
      { below: warm.value, is: 'cool' },
      { upTo: hot.value, is: 'warm-joint' },
    ],
    'hot-joint',
  )
  const rise = riseOf(taken, limits)
  const band =
    taken.choice('tripped') === 'yes'
      ? 'trouble'
      : rise?.over
        ? 'hot-winding'
        : joint !== 'cool'
          ? joint
          : spread > like.value
            ? 'climbing'
            : taken.need('full') < long.value
              ? 'short'
              : 'steady'
  return {
    band,
    says: {
      trouble: 'Something tripped, smelt, smoked or leaked: stop, and find it.',
      'hot-winding': `The winding stands ${sayFigure(rise?.riseK ?? 0, 'K', rise?.limit?.value)} above the air by its ohms; ${rise?.limit?.value} K is what its class bears.`,
      'hot-joint': `A joint is ${sayFigure(taken.need('joint'), 'K', hot.value)} above its neighbours; above ${hot.value} K it is undone at once.`,
      'warm-joint': `A joint is ${sayFigure(taken.need('joint'), 'K', warm.value)} above its neighbours; below ${warm.value} K is wanted.`,
      climbing: `Three readings lie ${sayFigure(spread, 'K', like.value)} apart; within ${like.value} K it is steady.`,
      short: `${sayFigure(taken.need('full'), 'min')} at full load; ${long.value} min are wanted.`,
      steady: `Steady within ${sayFigure(spread, 'K')} after ${sayFigure(taken.need('full'), 'min')} at full load, no joint warm.`,
    }[band],
    worked: [{ name: 'Coolant, highest less lowest', value: spread, unit: 'K' }, ...(rise?.worked ?? [])],
    limits: [warm, hot, like, long, ...(rise?.limit === undefined ? [] : [rise.limit])],
    next:
      band === 'steady'
        ? `Insulation again while it is hot${rise === undefined ? '' : `, with ${sayFigure(rise.windingC, 'C')} as the temperature of the winding`}; links and lugs tightened again.`
        : band === 'hot-winding'
          ? 'Stop and let it cool. Air in and out of the alternator, its fan and screens first; then the load of each leg; then a lower rating.'
          : 'Dead, locked out and cold, then: clean and tighten, renew what is burnt, and run it again.',
  }
}

export const vibrationTest: ProofTest = proofTest({
  id: 'vibration',
  name: 'Vibration',
  purpose: 'Whether it shakes more than such a machine may, or more than it did.',
  danger: 'turning',
  dangers: ['injury'],
  instrument: 'Meter of vibration speed, rms',
  steps: [
    'Mark the spots: alternator end, engine end, each in three directions.',
    'Guards on, cloth tied. Run at load. Stand clear of belts and coupling; read with a magnet, not by hand.',
  ],
  fields: [
    speeds({ id: 'along', name: 'Along the shaft', needed: true }),
    speeds({ id: 'across', name: 'Across', needed: true }),
    speeds({ id: 'upright', name: 'Up and down', needed: true }),
    choice({
      id: 'machine',
      name: 'Class of the machine',
      help: 'Small sets on soft mounts are usually of class 5 or 6; the maker’s book says.',
      of: Object.fromEntries(['1', '2', '3', '4', '5', '6', '7'].map((n) => [`class-${n}`, `class ${n}`])),
    }),
    speeds({ id: 'before', name: 'The three together when all was well', condition: true, least: 0.01 }),
    hertz({
      id: 'shakes',
      name: 'It shakes mostly at',
      help: 'To compare with limits of travel or of acceleration: turns a minute over 60, or what an analyser shows.',
      condition: true,
      further: true,
      least: 0.5,
    }),
  ],
  bands: [
    { id: 'grown', name: 'Grown', verdict: 'fail' },
    { id: 'damaging', name: 'Damaging', verdict: 'fail' },
    { id: 'high', name: 'High', verdict: 'fail' },
    { id: 'good', name: 'Good', verdict: 'pass' },
    { id: 'as-before', name: 'As before', verdict: 'pass' },
  ],
  weigh(taken, limits) {
    const sum = together({ x: taken.need('along'), y: taken.need('across'), z: taken.need('upright') })
    const before = taken.number('before')
    const machine = taken.choice('machine')?.replace('class-', '')
    const growth = limits('vibration-growth')
    const worst = Math.max(taken.need('along'), taken.need('across'), taken.need('upright'))
    const worked = [
      { name: 'The three together', value: sum, unit: 'mm/s' },
      ...(before === undefined ? [] : [{ name: 'Times what it was', value: sum / before, unit: '1' }]),
      ...travelOf(worst, taken.number('shakes')),
    ]
    const grown = before !== undefined && sum / before >= growth.value
    if (machine === undefined && before === undefined) {
      return {
        says: `${sayFigure(worst, 'mm/s')}: without its class or its own earlier figure nobody can say whether that is much.`,
        worked,
        limits: [],
        next: 'Find the class in the maker’s book, or take this as the figure to compare with.',
      }
    }
    if (machine === undefined || grown) {
      return {
        band: grown ? 'grown' : 'as-before',
        says: `${sayFigure(sum, 'mm/s')} together is ${sayFigure(sum / (before ?? sum), '1', growth.value)} times what it was; ${growth.value} times is the alarm.`,
        worked,
        limits: [growth],
        next: grown
          ? 'Mounts, coupling and drive plate first, then injectors, then bearings.'
          : 'Write it down with the load.',
      }
    }
    const [good, most] = [limits(`vibration-${machine}-good`), limits(`vibration-${machine}-most`)]
    const band = stepOf(
      worst,
      [
        { upTo: good.value, is: 'good' },
        { upTo: most.value, is: 'high' },
      ],
      'damaging',
    )
    return {
      band,
      says: `${sayFigure(worst, 'mm/s', good.value)} in the worst direction; up to ${good.value} mm/s is good, above ${most.value} mm/s it damages.`,
      worked,
      limits: [good, most, growth],
      next:
        band === 'good'
          ? 'Write it down with the load.'
          : 'Mounts, coupling and drive plate first, then injectors, then bearings.',
    }
  },
})

/** Three directions together. [mm/s] `√(x² + y² + z²)` */
export function together(of: { readonly x: number; readonly y: number; readonly z: number }): number {
  return Math.hypot(of.x, of.y, of.z)
}

/**
 * What a speed of vibration at one frequency is as travel and as acceleration, all rms: `s = v / (2πf)`, `a = 2πf·v`.
 * [µm] and [m/s²] of [mm/s] at [Hz]
 */
export function travelAndAcceleration(of: { readonly speed: number; readonly hertz: number }): {
  readonly micrometres: number
  readonly metresPerSecondSquared: number
} {
  const turning = 2 * Math.PI * of.hertz
  return { micrometres: (of.speed / turning) * 1000, metresPerSecondSquared: (turning * of.speed) / 1000 }
}

/** The worst direction in the other two measures, where the frequency is told. */
function travelOf(speed: number, hertz: number | undefined): Worked[] {
  if (hertz === undefined) return []
  const { micrometres, metresPerSecondSquared } = travelAndAcceleration({ speed, hertz })
  return [
    { name: 'The worst as travel', value: micrometres, unit: 'µm' },
    { name: 'The worst as acceleration', value: metresPerSecondSquared, unit: 'm/s²' },
  ]
}
