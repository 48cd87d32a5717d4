/**
 * Cooling by four temperatures, and the wet exhaust.
 *
 * @module
 */

import {
  type ExchangerState,
  exchangerState,
  type FourTemperatures,
  transferKwPerKelvin,
  waterKgPerSecond,
} from './cooling.js'
import { choice, degrees, flows, kilopascals, minutes } from './fields.js'
import { loadFields, partLoad } from './full-load.js'
import { again, type Outcome, percentOf, proofTest, stepOf, type Taken } from './judging.js'
import type { Limits } from './limits.js'
import { sayFigure } from './say-figure.js'
import type { Ask, NumberField, ProofTest, Worked } from './test-type.js'

const ends = {
  'coolant-in': 'Coolant into the exchanger',
  'coolant-out': 'Coolant out of it',
  'sea-in': 'Sea water into it',
  'sea-out': 'Sea water out of it',
} as const

function endFields(clean: boolean): NumberField[] {
  return Object.entries(ends).map(([id, name]) =>
    degrees({
      id: clean ? `clean-${id}` : id,
      name: clean ? `When it was clean, at the same load: ${name[0]!.toLowerCase()}${name.slice(1)}` : name,
      least: -5,
      most: 150,
      ...(clean ? { condition: true } : { needed: true }),
    }),
  )
}

function fourOf(taken: Taken, prefix: '' | 'clean-'): FourTemperatures | undefined {
  const [coolantInC, coolantOutC, seaInC, seaOutC] = Object.keys(ends).map((id) =>
    taken.number(`${prefix}${id}`),
  )
  return coolantInC === undefined ||
    coolantOutC === undefined ||
    seaInC === undefined ||
    seaOutC === undefined
    ? undefined
    : { coolantInC, coolantOutC, seaInC, seaOutC }
}

export const coolingTest: ProofTest = proofTest({
  id: 'four-temperatures',
  name: 'Cooling by four temperatures',
  purpose:
    'Whether sea water is short, the exchanger fouled, the coolant slow, or the engine makes more heat.',
  danger: 'turning',
  dangers: ['scald', 'injury', 'carbon-monoxide'],
  instrument: 'Infrared thermometer, or the same probe at four taped spots',
  steps: [
    'Stopped and cold: mark four spots at the exchanger, dull paint or tape on bright metal.',
    'Guards on, cloth and hair tied. Run at 60 % load or more until 20 min steady.',
    'Stand clear of belts and hoses; point, do not reach. Read all four within a minute.',
  ],
  fields: [
    ...endFields(false),
    ...loadFields,
    minutes({ id: 'steady', name: 'Minutes at that load before', condition: true }),
    ...endFields(true),
    flows({
      id: 'sea-flow',
      name: 'Sea water that comes overboard, in a bucket by the watch',
      condition: true,
      further: true,
      least: 0.5,
    }),
  ],
  bands: [
    { id: 'starved', name: 'Sea water is short', verdict: 'fail' },
    { id: 'fouled', name: 'The exchanger is fouled', verdict: 'fail' },
    { id: 'coolant', name: 'The coolant is slow', verdict: 'fail' },
    { id: 'hot-outlet', name: 'Sea water leaves so hot that scale grows', verdict: 'fail' },
    { id: 'more-heat', name: 'The engine makes more heat', verdict: 'fail' },
    {
      id: 'flow-good',
      name: 'Enough sea water; fouling cannot be told without clean figures',
      verdict: 'pass',
    },
    { id: 'as-clean', name: 'As when it was clean', verdict: 'pass' },
  ],
  doubts(taken, limits) {
    const asks: Ask[] = [...partLoad(taken, limits, 'cooling-load')]
    const wait = limits('cooling-minutes')
    const steady = taken.number('steady')
    if (steady !== undefined && steady < wait.value) {
      asks.push(
        again(
          'not-steady',
          'steady',
          `After ${steady} min it still warms: ${wait.value} min steady are wanted.`,
        ),
      )
    }
    for (const prefix of ['', 'clean-'] as const) {
      const four = fourOf(taken, prefix)
      if (four === undefined) continue
      const inOrder =
        four.coolantInC > four.coolantOutC &&
        four.seaOutC > four.seaInC &&
        four.coolantOutC > four.seaInC &&
        four.coolantInC > four.seaOutC
      if (!inOrder) {
        asks.push(
          again(
            'crossed',
            `${prefix}coolant-in`,
            'Coolant gives heat and sea water takes it: coolant in must be the hottest, sea water in the coldest. Which reading is which?',
          ),
        )
      }
    }
    return asks
  },
  weigh: weighCooling,
})

function weighCooling(taken: Taken, limits: Limits): Outcome {
  const four = fourOf(taken, '')!
  const now = exchangerState(four)
  const worked = [
    { name: 'Rise of the sea water', value: now.seaRise, unit: 'K' },
    { name: 'Drop of the coolant', value: now.coolantDrop, unit: 'K' },
    { name: 'Mean difference', value: now.logMean, unit: 'K' },
    { name: 'Sea flow over coolant flow, by their heat', value: now.coolantDrop / now.seaRise, unit: '1' },
    { name: 'Transfer units of the sea side', value: now.transferUnits, unit: '1' },
    ...workedOfFlow(taken, limits, now),
  ]
  const outlet = limits('sea-outlet')
  const clean = fourOf(taken, 'clean-')
  if (clean === undefined) {
    const most = limits('sea-rise-most')
    const band =
      now.seaRise > most.value ? 'starved' : four.seaOutC > outlet.value ? 'hot-outlet' : 'flow-good'
    return {
      band,
      says: `The sea water rises by ${sayFigure(now.seaRise, 'K', most.value)}; up to ${most.value} K at full load, and about 6 K with a new pump.`,
      worked,
      limits: [most, outlet],
      next: nextOf(band),
    }
  }
  const before = exchangerState(clean)
  const [more, less, drop] = [
    limits('cooling-rise-more'),
    limits('cooling-transfer-less'),
    limits('coolant-drop-more'),
  ]
  const rise = percentOf(now.seaRise - before.seaRise, before.seaRise)
  // At the same load the heat is the same, so that the transfer goes as one over the mean difference.
  const transfer = percentOf(before.logMean - now.logMean, now.logMean)
  const dropMore = percentOf(now.coolantDrop - before.coolantDrop, before.coolantDrop)
  const hotter = four.coolantInC - four.seaInC - (clean.coolantInC - clean.seaInC)
  const band =
    rise > more.value
      ? 'starved'
      : transfer < -less.value
        ? 'fouled'
        : dropMore > drop.value
          ? 'coolant'
          : four.seaOutC > outlet.value
            ? 'hot-outlet'
            : hotter > limits('exhaust-rise').value
              ? 'more-heat'
              : 'as-clean'
  return {
    band,
    says: `Against the clean figures the sea water rises by ${signed(rise)} more, the exchanger passes ${signed(transfer)} more, the coolant drops by ${signed(dropMore)} more.`,
    worked: [
      ...worked,
      { name: 'Rise of the sea water against clean', value: rise, unit: '%' },
      { name: 'Heat transfer against clean', value: transfer, unit: '%' },
      { name: 'Drop of the coolant against clean', value: dropMore, unit: '%' },
    ],
    limits: [more, less, drop, outlet],
    next: nextOf(band),
  }
}

/** Heat and transfer of the exchanger, and the least flow for that heat; nothing where nobody measured the flow. */
function workedOfFlow(taken: Taken, limits: Limits, { seaRise, logMean }: ExchangerState): readonly Worked[] {
  const flow = taken.number('sea-flow')
  if (flow === undefined) return []
  const [heat, density] = [limits('sea-heat').value, limits('sea-density').value]
  const heatKw = (flow / 60) * density * heat * seaRise
  const least = waterKgPerSecond({ heatKw, riseK: limits('sea-rise-most').value, heatCapacity: heat })
  return [
    { name: 'Heat into the sea water', value: heatKw, unit: 'kW' },
    { name: 'Heat transfer of the exchanger', value: transferKwPerKelvin({ heatKw, logMean }), unit: 'kW/K' },
    { name: 'Sea water that this heat wants, at least', value: (60 * least) / density, unit: 'l/min' },
  ]
}

function signed(percent: number): string {
  return `${percent < 0 ? '−' : ''}${sayFigure(Math.abs(percent), '%')}`
}

function nextOf(band: string): string {
  const next: Readonly<Record<string, string>> = {
    starved:
      'Seacock, strainer, impeller, suction hose, in this order. Less flow takes transfer too, by its 0.8th power: judge scale only when the flow is right again.',
    fouled:
      'Pull the end caps; rod and descale the tubes. The thermostat hides fouling until it stands wide open.',
    coolant: 'Level and air first, then belt, coolant pump and thermostat.',
    'hot-outlet': 'More sea water: seacock, strainer, impeller.',
    'more-heat': 'Load, injection timing, head gasket: test the coolant for combustion gas.',
    'flow-good': 'Write the four down: they are the clean figures of next time, if it is clean now.',
    'as-clean': 'Write them down with the load.',
  }
  return next[band]!
}

export const exhaustTest: ProofTest = proofTest({
  id: 'exhaust-temperature',
  name: 'Wet exhaust after the water is let in',
  purpose: 'Whether enough water reaches the hose.',
  danger: 'turning',
  dangers: ['scald', 'fire', 'carbon-monoxide'],
  instrument: 'Infrared thermometer on a taped spot, or the hose’s own sender',
  steps: [
    'Mark a spot on the hose just after the elbow.',
    'Guards on. Run at load until steady. Stand clear; point, do not reach.',
  ],
  fields: [
    degrees({ id: 'hose', name: 'Hose after the elbow', needed: true, least: -20, most: 400 }),
    degrees({
      id: 'clean',
      name: 'The same when all was well, at this load',
      condition: true,
      least: -20,
      most: 150,
    }),
    ...loadFields,
  ],
  bands: [
    { id: 'usual', name: 'Usual', verdict: 'pass' },
    { id: 'warm', name: 'Warm', verdict: 'pass' },
    { id: 'risen', name: 'Risen above its own figure', verdict: 'fail' },
    { id: 'alarm', name: 'Alarm', verdict: 'fail' },
    { id: 'stop', name: 'Stop the engine', verdict: 'fail' },
    { id: 'hose', name: 'Above what the hose bears', verdict: 'fail' },
  ],
  weigh(taken, limits) {
    const [usual, alarm, stop, hose, rise] = [
      limits('exhaust-water-usual'),
      limits('exhaust-water-alarm'),
      limits('exhaust-water-stop'),
      limits('exhaust-hose'),
      limits('exhaust-rise'),
    ]
    const at = taken.need('hose')
    const clean = taken.number('clean')
    const absolute = stepOf(
      at,
      [
        { upTo: usual.value, is: 'usual' },
        { below: alarm.value, is: 'warm' },
        { below: stop.value, is: 'alarm' },
        { below: hose.value, is: 'stop' },
      ],
      'hose',
    )
    const risen = clean !== undefined && at - clean >= rise.value
    const band = risen && (absolute === 'usual' || absolute === 'warm') ? 'risen' : absolute
    return {
      band,
      says: {
        usual: `${sayFigure(at, 'C')}; up to ${usual.value} °C is usual at load.`,
        warm: `${sayFigure(at, 'C')}; above ${usual.value} °C it is watched, from ${alarm.value} °C it alarms.`,
        risen: `${sayFigure(at, 'C')} is ${sayFigure(at - (clean ?? at), 'K')} above its own figure; ${rise.value} K is the sign to look, because vapour keeps it cool until little water is left.`,
        alarm: `${sayFigure(at, 'C')}: alarm from ${alarm.value} °C.`,
        stop: `Stop the engine. ${sayFigure(at, 'C')}; ${stop.value} °C is the most.`,
        hose: `Stop the engine. ${sayFigure(at, 'C')}; the hose bears ${hose.value} °C.`,
      }[band],
      limits: [usual, alarm, stop, hose, rise],
      next:
        band === 'usual' || band === 'warm'
          ? 'Write it down with the load and the sea temperature.'
          : 'Seacock, strainer, impeller, then the elbow’s water passage. Look at the hose from inside where it was above 80 °C.',
    }
  },
})

export const backPressureTest: ProofTest = proofTest({
  id: 'back-pressure',
  name: 'Exhaust back pressure at full load',
  purpose: 'Whether elbow, hose or water lift chokes the engine.',
  danger: 'turning',
  dangers: ['carbon-monoxide', 'scald', 'fire'],
  instrument: 'Manometer at a plug before the water is let in',
  steps: [
    'Cold: take the plug out before the elbow, fit the manometer with a length of metal pipe.',
    'Guards on, carbon monoxide meter on the person. Run at full load. Stand clear and read.',
    'Stop, let it cool, put the plug back with new sealing, look for gas when it runs.',
  ],
  fields: [
    kilopascals({ id: 'pressure', name: 'Pressure before the water is let in', needed: true }),
    choice({
      id: 'aspiration',
      name: 'Engine',
      needed: true,
      of: { natural: 'without a turbocharger', turbo: 'with one' },
    }),
    ...loadFields,
  ],
  bands: [
    { id: 'within', name: 'Within the limit', verdict: 'pass' },
    { id: 'high', name: 'High', verdict: 'fail' },
    { id: 'very-high', name: 'More than twice the limit', verdict: 'fail' },
  ],
  doubts: (taken, limits) => partLoad(taken, limits, 'full-load'),
  weigh(taken, limits) {
    const most = limits(`back-pressure-${taken.choice('aspiration')}`)
    const pressure = taken.need('pressure')
    const band = stepOf(
      pressure,
      [
        { upTo: most.value, is: 'within' },
        { upTo: 2 * most.value, is: 'high' },
      ],
      'very-high',
    )
    return {
      band,
      says: `${sayFigure(pressure, 'kPa', most.value)} at full load; ${most.value} kPa at most.`,
      worked: [{ name: 'Of the limit', value: percentOf(pressure, most.value), unit: '%' }],
      limits: [most],
      next:
        band === 'within'
          ? 'Write it down: a rise over the years is soot in the elbow.'
          : 'Take the elbow off and look through its bore; then the lift and the height of the water that stands in it.',
    }
  },
})
