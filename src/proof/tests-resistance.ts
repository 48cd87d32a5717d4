/**
 * Dead tests of windings, rotating diodes and the excitation capacitor.
 *
 * @module
 */

import { choice, degrees, hertz, kilohms, microfarads, ohms, volts, yesNo } from './fields.js'
import { again, doubt, type Outcome, percentOf, proofTest, stepOf, type Taken } from './judging.js'
import type { Limits } from './limits.js'
import { capacitorAmps, imbalancePercent, meanOf, resistanceAt } from './resistance.js'
import { sayFigure } from './say-figure.js'
import type { ProofTest } from './test-type.js'

export const windingResistanceTest: ProofTest = proofTest({
  id: 'winding-resistance',
  name: 'Resistance of the windings compared',
  purpose:
    'Whether phases and halves are alike, and as the links or the book give: volts alone do not prove a parallel half.',
  danger: 'locked out',
  dangers: ['shock'],
  instrument: 'Four-wire milliohm meter or bridge; an ordinary ohmmeter above 1 Ω',
  parts: ['stator-winding', 'rotor-winding', 'exciter'],
  steps: [
    'Lock out and prove dead. Discharge the excitation capacitor and meter it.',
    'Photograph the links, then open those that tie one winding to another.',
    'Read each phase or half at its own ends, current leads outside the sense leads. Let it settle.',
    'Take the temperature of the winding.',
  ],
  fields: [
    ohms({ id: 'first', name: 'First phase or half', needed: true, most: 1e6 }),
    ohms({ id: 'second', name: 'Second', most: 1e6 }),
    ohms({ id: 'third', name: 'Third', most: 1e6 }),
    choice({
      id: 'leads',
      name: 'How it was read',
      needed: true,
      of: { 'four-wire': 'four wires or a bridge', 'two-wire': 'two leads' },
    }),
    degrees({ id: 'winding', name: 'Temperature of the winding', condition: true, least: -30, most: 200 }),
    ohms({ id: 'expected', name: 'What the book or the links give', condition: true, most: 1e6 }),
    degrees({
      id: 'expected-at',
      name: 'At which temperature',
      help: 'Left out: 25 °C, as books have it.',
      condition: true,
      least: -30,
      most: 200,
    }),
    choice({
      id: 'expected-from',
      name: 'Where that figure is from',
      help: 'Left out: the links, or a reading of this winding. A table of nominal ohms allows more.',
      further: true,
      of: { links: 'the links, or an earlier reading', table: 'a maker’s table of nominal ohms' },
    }),
  ],
  bands: [
    { id: 'joint', name: 'Far apart: a joint before a winding', verdict: 'fail' },
    { id: 'uneven', name: 'Uneven', verdict: 'fail' },
    { id: 'double', name: 'Twice what it must be: a parallel half may be left off', verdict: 'fail' },
    { id: 'off', name: 'Not what the links or the book give', verdict: 'fail' },
    { id: 'even', name: 'Even, and as it must be', verdict: 'pass' },
  ],
  doubts(taken, limits) {
    const values = valuesOf(taken)
    const least = Math.min(...values)
    const leads = limits('winding-four-wire')
    if (taken.choice('leads') === 'two-wire' && least < leads.value) {
      const question = `Below ${leads.value} Ω two leads count as much as the winding: 0.07 Ω through leads of 0.2 Ω reads 0.27 Ω. Read again with four wires.`
      return [again('two-wire', 'leads', question)]
    }
    if (Math.max(...values) === 0) {
      return [
        again('nothing-read', 'first', 'No winding reads 0 Ω. Read again with a meter that shows milliohms.'),
      ]
    }
    if (taken.number('expected') !== undefined && taken.number('winding') === undefined) {
      const question =
        'How warm was the winding? 10 °C move copper by 4 %, so that it cannot be compared without.'
      return [again('missing', 'winding', question)]
    }
    const tooMany = limits('winding-ohms-doubtful')
    const manyTimes = limits('winding-times-doubtful').value * (taken.number('expected') ?? 0)
    if (least > tooMany.value && least > manyTimes) {
      return [
        doubt(
          'milliohms',
          'first',
          `${sayFigure(least, 'ohm')} is much for a winding. Were milliohms meant?`,
        ),
      ]
    }
    return []
  },
  weigh: weighResistance,
})

function valuesOf(taken: Taken): number[] {
  return ['first', 'second', 'third'].flatMap((id) => taken.number(id) ?? [])
}

function weighResistance(taken: Taken, limits: Limits): Outcome {
  const values = valuesOf(taken)
  const expected = taken.number('expected')
  if (values.length === 1 && expected === undefined) {
    return {
      says: 'One winding alone tells nothing: another like it, or what it must read, is needed.',
      limits: [],
      next: 'Read its like, or take the figure from the book or the links.',
    }
  }
  const uneven = limits('winding-imbalance')
  const joints = limits('winding-imbalance-joints')
  const imbalance = imbalancePercent(values)
  const worked =
    values.length > 1 ? [{ name: 'Largest difference from the mean', value: imbalance, unit: '%' }] : []
  const spread = stepOf(
    imbalance,
    [
      { upTo: uneven.value, is: 'even' },
      { upTo: joints.value, is: 'uneven' },
    ],
    'joint',
  )
  if (spread !== 'even') {
    return {
      band: spread,
      says: `They differ by ${sayFigure(imbalance, '%', uneven.value)} from their mean; ${uneven.value} % is allowed.`,
      worked,
      limits: [uneven, joints],
      next:
        spread === 'joint'
          ? 'Look at lugs and links first: clean, tighten, read again. Then look for turns that are shorted or a coil that is open.'
          : 'Read again with clean clips at one temperature. If it stays, have the winding compared on a growler or by surge at a shop.',
    }
  }
  const alike = values.length > 1 ? `They lie within ${sayFigure(imbalance, '%')} of their mean` : 'It'
  if (expected === undefined) {
    return {
      band: 'even',
      says: `${alike}; ${uneven.value} % is allowed.`,
      worked,
      limits: [uneven],
      next: 'Compare with what the links give too: a half that is left off reads twice as much and still makes the right volts.',
    }
  }
  return weighExpected(taken, limits, { expected, values, worked: [...worked] })
}

function weighExpected(
  taken: Taken,
  limits: Limits,
  known: {
    readonly expected: number
    readonly values: readonly number[]
    readonly worked: { name: string; value: number; unit: string }[]
  },
): Outcome {
  const allowed = limits(taken.choice('expected-from') === 'table' ? 'winding-table' : 'winding-expected')
  const toC = taken.number('expected-at') ?? 25
  const there = resistanceAt({ ohm: meanOf(known.values), fromC: taken.need('winding'), toC })
  const apart = known.expected === 0 ? Infinity : percentOf(there - known.expected, known.expected)
  const times = 1 + apart / 100
  const band =
    times >= limits('winding-double-least').value && times <= limits('winding-double-most').value
      ? 'double'
      : stepOf(Math.abs(apart), [{ upTo: allowed.value, is: 'even' }], 'off')
  const reads = `Brought to ${toC}\u00a0°C it reads ${sayFigure(there, 'ohm')}; ${sayFigure(known.expected, 'ohm')} is expected, within ${allowed.value} %.`
  return {
    band,
    says: band === 'double' ? `Twice what is expected. ${reads}` : reads,
    worked: [...known.worked, { name: `Resistance at ${toC} °C`, value: there, unit: 'ohm' }],
    limits: [allowed],
    next: {
      even: 'Write it down with the temperature: it is what the next reading is compared with.',
      double:
        'A parallel half is open or was never joined: the volts are right, the capacity is half. Go through the links lead by lead.',
      off: 'Compare the links with the photograph and the plan, then look for turns that are shorted (less) or a joint (more).',
    }[band],
  }
}

export const diodeTest: ProofTest = proofTest({
  id: 'diode-test',
  name: 'Rotating diodes, one by one',
  purpose: 'Whether every diode on the rotor passes one way and stops the other.',
  danger: 'locked out',
  dangers: ['shock', 'injury'],
  instrument: 'Meter with a diode setting; ohmmeter for the surge part',
  parts: ['rotor-diodes'],
  steps: [
    'Lock out, start battery off, shaft barred by hand only.',
    'Lift one lead of each diode and of the surge part; mark where it was.',
    'Read each diode both ways: 0.4 to 0.7 V one way, open the other.',
    'Read the surge part both ways.',
  ],
  fields: [
    volts({ id: 'forward-lowest', name: 'Lowest of all diodes, the way they pass', needed: true, most: 10 }),
    volts({
      id: 'forward-highest',
      name: 'Highest of all diodes, the way they pass',
      needed: true,
      most: 10,
    }),
    yesNo({ id: 'any-open', name: 'Does one stop both ways?', needed: true }),
    yesNo({ id: 'any-back', name: 'Does one pass both ways?', needed: true }),
    kilohms({ id: 'surge-one-way', name: 'Surge part, one way' }),
    kilohms({ id: 'surge-other-way', name: 'Surge part, the other way' }),
  ],
  bands: [
    { id: 'shorted', name: 'One is shorted', verdict: 'fail' },
    { id: 'open', name: 'One is open', verdict: 'fail' },
    { id: 'surge', name: 'The surge part passes', verdict: 'fail' },
    { id: 'odd', name: 'One is out of the usual span', verdict: 'fail' },
    { id: 'sound', name: 'All sound', verdict: 'pass' },
  ],
  doubts(taken) {
    return taken.need('forward-highest') < taken.need('forward-lowest')
      ? [again('crossed', 'forward-highest', 'The highest is lower than the lowest. Which is which?')]
      : []
  },
  weigh(taken, limits) {
    const [least, most, short, surge] = [
      limits('diode-forward-least'),
      limits('diode-forward-most'),
      limits('diode-short'),
      limits('surge-part'),
    ]
    const lowest = taken.need('forward-lowest')
    const highest = taken.need('forward-highest')
    const surges = ['surge-one-way', 'surge-other-way'].flatMap((id) => taken.number(id) ?? [])
    const band =
      taken.choice('any-back') === 'yes' || lowest < short.value
        ? 'shorted'
        : taken.choice('any-open') === 'yes'
          ? 'open'
          : surges.some((value) => value < surge.value)
            ? 'surge'
            : lowest < least.value || highest > most.value
              ? 'odd'
              : 'sound'
    return {
      band,
      says: {
        shorted:
          'A diode passes both ways: the field takes two or three times its current and the exciter rotor burns.',
        open: 'A diode stops both ways: volts are low under load and hunt.',
        surge: `The surge part reads less than ${sayFigure(surge.value, 'kohm')} both ways: it shorts the field.`,
        odd: `A sound diode shows ${least.value} to ${most.value} V; these show ${sayFigure(lowest, 'V')} to ${sayFigure(highest, 'V')}.`,
        sound: `All pass at ${sayFigure(lowest, 'V')} to ${sayFigure(highest, 'V')} one way and stop the other.`,
      }[band],
      limits: [least, most, short, surge],
      next:
        band === 'sound'
          ? 'Put every lead back where it was marked.'
          : 'Renew the diodes of one plate together, of the same polarity each, and the surge part with them.',
    }
  },
})

export const capacitorTest: ProofTest = proofTest({
  id: 'capacitor-test',
  name: 'Excitation capacitor off circuit',
  purpose: 'Whether the capacitor still holds what is marked on it: it sets the volts.',
  danger: 'locked out',
  dangers: ['shock'],
  instrument: 'Capacitance meter, voltmeter, two resistors of 10 kΩ 5 W in series',
  parts: ['excitation-capacitor'],
  steps: [
    'Lock out and prove dead. Treat the capacitor as live: 40 µF at 450 V hold about 8 J.',
    'Bleed it through the two resistors in series for 5 s or more; no screwdriver. Meter every pair: under 5 V.',
    'Take its leads off, meter the capacity, leave a shorting wire on it.',
  ],
  fields: [
    volts({ id: 'left', name: 'Volts left on it after bleeding', needed: true, condition: true }),
    microfarads({ id: 'capacitance', name: 'Capacity', needed: true }),
    microfarads({ id: 'marked', name: 'Marked on it', needed: true, condition: true, least: 0.1 }),
    yesNo({ id: 'shorted', name: 'Does an ohmmeter stay near nought across it?' }),
    volts({
      id: 'across',
      name: 'Volts across it when the set runs, by its book',
      help: 'What stands on it is its limit, not this.',
      condition: true,
      further: true,
      least: 1,
    }),
    hertz({ id: 'hertz', name: 'Frequency', condition: true, further: true, least: 40, of: 'hertz' }),
  ],
  bands: [
    { id: 'shorted', name: 'Shorted', verdict: 'fail' },
    { id: 'far-low', name: 'So low that it explains low volts', verdict: 'fail' },
    { id: 'low', name: 'Low', verdict: 'fail' },
    { id: 'good', name: 'As marked', verdict: 'pass' },
    { id: 'high', name: 'Too high: another capacitor than the one marked', verdict: 'fail' },
  ],
  doubts(taken, limits) {
    const left = taken.need('left')
    return left >= limits('capacitor-volts-left').value
      ? [
          again(
            'charged',
            'left',
            `${left} V are left on it. Bleed it again, meter it, and only then take it off.`,
          ),
        ]
      : []
  },
  weigh(taken, limits) {
    const [allowed, look] = [limits('capacitor-low'), limits('capacitor-look')]
    const marked = taken.need('marked')
    const expected = expectedAmps(taken)
    const apart = percentOf(taken.need('capacitance') - marked, marked)
    const band =
      taken.choice('shorted') === 'yes'
        ? 'shorted'
        : stepOf(
            apart,
            [
              { below: -look.value, is: 'far-low' },
              { below: -allowed.value, is: 'low' },
              { upTo: allowed.value, is: 'good' },
            ],
            'high',
          )
    return {
      band,
      says:
        band === 'shorted'
          ? 'It is shorted: residual volts only, and a hot auxiliary winding.'
          : `It reads ${sayFigure(Math.abs(apart), '%', allowed.value)} ${apart < 0 ? 'below' : 'above'} its mark; ${allowed.value} % either way is allowed.`,
      worked: [
        { name: 'Difference from its mark', value: apart, unit: '%' },
        ...(expected === undefined
          ? []
          : [{ name: 'Amps in its lead when the set runs, as marked', value: expected, unit: 'A' }]),
      ],
      limits: [allowed, look],
      next:
        band === 'good'
          ? `Put it back with its shorting wire off.${expected === undefined ? '' : ` With the set running and covers on, a clamp round its lead should show about ${sayFigure(expected, 'A')}: much less, and it opens when warm.`}`
          : 'Fit one of the same capacity, made for motors, of 400 to 450 V AC or more; where there are two, both.',
    }
  },
})

/** What it takes as marked; none where volts or frequency are not told. */
function expectedAmps(taken: Taken): number | undefined {
  const [across, frequency] = [taken.number('across'), taken.number('hertz')]
  if (across === undefined || frequency === undefined) return undefined
  return capacitorAmps({ uF: taken.need('marked'), volts: across, hertz: frequency })
}
