/**
 * Tests of leaking current and of the device that must cut it.
 *
 * @module
 */

import {
  bearableMilliamp,
  capacitorLeakMilliamp,
  groundFaultSeconds,
  highestEarthOhm,
  trippingLeakOhm,
} from './earth.js'
import { choice, hertz, microfarads, milliamps, seconds, volts, yesNo } from './fields.js'
import { type Outcome, percentOf, proofTest, stepOf, type Taken } from './judging.js'
import type { Limits } from './limits.js'
import { sayFigure } from './say-figure.js'
import type { ProofTest, Worked } from './test-type.js'
import { licensed } from './tests-earth.js'

export const leakageTest: ProofTest = proofTest({
  id: 'residual-current',
  name: 'Leaking current, all live conductors in the clamp',
  purpose: 'How much of the current does not come back the way it went.',
  danger: 'live',
  dangers: ['shock'],
  instrument: 'Milliamp clamp for leakage',
  steps: [
    'Covers on but where the clamp goes; jaws insulated. Nobody in the water.',
    'Stand clear of metal, then close the breaker. Clamp round all live conductors and the neutral together, not the earth.',
    'Read with every branch off, then add branches one by one and note which moves it.',
  ],
  fields: [
    milliamps({ id: 'leak', name: 'All together', needed: true }),
    milliamps({
      id: 'device',
      name: 'Rating of the device that guards it',
      help: 'Left out: 30 mA.',
      condition: true,
      least: 1,
      most: 1000,
    }),
    volts({
      id: 'line',
      name: 'One line to earth',
      help: '120 V of a set of 120/240 V.',
      condition: true,
      further: true,
      least: 12,
    }),
    microfarads({
      id: 'filters',
      name: 'Filter capacitors to earth, together',
      help: 'Of appliances with electronics, as marked on their filters; 0.1 µF is a large one.',
      condition: true,
      further: true,
      most: 100,
    }),
    hertz({ id: 'hertz', name: 'Frequency', condition: true, further: true, least: 40, of: 'hertz' }),
  ],
  bands: [
    { id: 'quiet', name: 'Quiet', verdict: 'pass' },
    { id: 'within', name: 'Within its share', verdict: 'pass' },
    { id: 'much', name: 'Much: near a trip', verdict: 'fail' },
    { id: 'trips', name: 'As much as trips', verdict: 'fail' },
  ],
  weigh(taken, limits) {
    const [quiet, trip, share] = [limits('leakage-quiet'), limits('leakage-trip'), limits('leakage-share')]
    const leak = taken.need('leak')
    const device = taken.number('device') ?? trip.value
    const allowed = (device * share.value) / 100
    const path = pathOf(taken, device)
    const byFilters = filterMilliamp(taken)
    const filters = limits('leakage-filters')
    const mostlyFilters = byFilters !== undefined && leak > 0 && percentOf(byFilters, leak) >= filters.value
    const band =
      leak > Math.min(device, trip.value)
        ? 'trips'
        : leak > Math.max(allowed, 0)
          ? 'much'
          : stepOf(leak, [{ below: quiet.value, is: 'quiet' }], 'within')
    return {
      band,
      says: `${sayFigure(leak, 'mA', allowed)} does not come back. ${share.value} % of a device of ${device} mA is ${sayFigure(allowed, 'mA')}.`,
      worked: [
        { name: 'Of the rating of the device', value: percentOf(leak, device), unit: '%' },
        ...path,
        ...(byFilters === undefined
          ? []
          : [{ name: 'Of it, by filters alone', value: byFilters, unit: 'mA' }]),
      ],
      limits: byFilters === undefined ? [quiet, trip, share] : [quiet, trip, share, filters],
      next:
        band === 'quiet' || band === 'within'
          ? 'Write it down with what was on: it grows before it trips.'
          : mostlyFilters
            ? `Filters alone pass ${sayFigure(byFilters, 'mA')}, and no insulation is at fault: unplug what has electronics and watch it fall, then part it over more devices. Where it does not fall, add branches one by one.`
            : 'Add branches one by one and note which moves it; measure its insulation dead. With none on: the set itself, or a second bond.',
    }
  },
})

/** The insulation that this leak comes to, and the one at which the device acts; nothing where the volts are not told. */
function pathOf(taken: Taken, tripMa: number): readonly Worked[] {
  const [volts, leak] = [taken.number('line'), taken.need('leak')]
  if (volts === undefined) return []
  const kilohm = (ma: number) => trippingLeakOhm({ volts, tripMa: ma }) / 1000
  return [
    ...(leak === 0
      ? []
      : [{ name: 'Insulation that this leak comes to', value: kilohm(leak), unit: 'kohm' }]),
    { name: 'Insulation at which its device acts', value: kilohm(tripMa), unit: 'kohm' },
  ]
}

/** What filters pass; none where they, the volts or the frequency are not told. */
function filterMilliamp(taken: Taken): number | undefined {
  const [uF, volts, frequency] = ['filters', 'line', 'hertz'].map((id) => taken.number(id))
  if (uF === undefined || volts === undefined || frequency === undefined) return undefined
  return capacitorLeakMilliamp({ uF, volts, hertz: frequency })
}

export const tripTest: ProofTest = proofTest({
  id: 'trip-test',
  name: 'Trip of a residual-current device',
  purpose: 'Whether it cuts at its rating and in time; the button alone proves only the button.',
  danger: 'live',
  dangers: ['shock', 'lost-protection'],
  instrument: 'Tester that ramps the current and takes the time',
  steps: [
    'Warn everybody aboard; loads off. Nobody in the water.',
    'Stand clear, then press its own button; set it again.',
    'Plug the tester in, ramp until it trips; then at its full rating, with the time.',
  ],
  fields: [
    choice({
      id: 'kind',
      apart: true,
      name: 'Which device',
      needed: true,
      of: {
        main: 'main device of the boat',
        general: 'device of a circuit, general type',
        people: 'interrupter for people, 5 mA',
      },
    }),
    milliamps({ id: 'device', name: 'Its rating', needed: true, condition: true, least: 1, most: 1000 }),
    yesNo({ id: 'tripped', name: 'Did it trip?', needed: true }),
    milliamps({ id: 'tripped-at', name: 'Current at which it tripped, ramped', most: 2000 }),
    milliamps({
      id: 'timed-at',
      name: 'Current at which it was timed',
      condition: true,
      least: 0.1,
      most: 5000,
    }),
    seconds({ id: 'time', name: 'Time it took', units: ['ms', 's'], most: 60 }),
  ],
  bands: [
    { id: 'dead', name: 'Does not trip', verdict: 'fail' },
    { id: 'high', name: 'Trips only above its rating', verdict: 'fail' },
    { id: 'late', name: 'Trips late', verdict: 'fail' },
    { id: 'early', name: 'Trips too soon', verdict: 'fail' },
    { id: 'good', name: 'Trips as it must', verdict: 'pass' },
  ],
  weigh: weighTrip,
})

function weighTrip(taken: Taken, limits: Limits): Outcome {
  const kind = taken.choice('kind')
  const device = taken.need('device')
  const people = kind === 'people'
  const half = limits('trip-least')
  const [ground, groundMost] = [limits('trip-ground-least'), limits('trip-ground-most')]
  const least = people ? ground.value : (device * half.value) / 100
  const most = people ? groundMost.value : device
  const at = taken.number('tripped-at')
  const time = taken.number('time')
  const timedAt = taken.number('timed-at') ?? device
  const timeLimit = limits(
    kind === 'main'
      ? 'trip-shore-time'
      : timedAt >= 5 * device
        ? 'trip-five-time'
        : timedAt >= 2 * device
          ? 'trip-twice-time'
          : 'trip-once-time',
  )
  const bears = time === undefined ? undefined : bearableMilliamp(time)
  const longest = people ? groundFaultSeconds(timedAt) : timeLimit.value / 1000
  if (taken.choice('tripped') === 'yes' && at === undefined && time === undefined) {
    return {
      says: 'It trips. At which current and how fast is not told, and only that proves it.',
      limits: [],
      next: 'Ramp it with a tester, or have it done.',
    }
  }
  const band =
    taken.choice('tripped') === 'no'
      ? 'dead'
      : at !== undefined && at > most
        ? 'high'
        : time !== undefined && time > longest
          ? 'late'
          : at !== undefined && at < least
            ? 'early'
            : 'good'
  return {
    band,
    says: {
      dead: 'It does not trip. Leave the outlets dead.',
      high: `It trips at ${sayFigure(at ?? 0, 'mA', most)}; ${sayFigure(most, 'mA')} at most. Leave the outlets dead.`,
      late: `It takes ${sayFigure(time ?? 0, 's', longest)}; ${sayFigure(longest, 's')} at most at ${sayFigure(timedAt, 'mA')}. Leave the outlets dead.`,
      early: `It trips at ${sayFigure(at ?? 0, 'mA', least)}, below ${sayFigure(least, 'mA')}: no danger, and no peace.`,
      good: `It trips${at === undefined ? '' : ` at ${sayFigure(at, 'mA', most)}`}${time === undefined ? '' : ` within ${sayFigure(time, 's', longest)}`}, as it must.`,
    }[band],
    worked: [
      {
        name: 'Highest earth resistance at which it keeps metal below 50 V',
        value: highestEarthOhm({ touchV: limits('touch-dry').value, tripMa: device }),
        unit: 'ohm',
      },
      ...(bears === undefined
        ? []
        : [{ name: 'What a body of 50 kg bears for as long as it took', value: bears, unit: 'mA' }]),
    ],
    limits: people ? [ground, groundMost] : [half, timeLimit, limits('touch-dry')],
    next:
      band === 'good'
        ? 'Press its button each month.'
        : band === 'early'
          ? 'Measure the leaking current with nothing on; then renew the device.'
          : `Renew it. ${licensed}`,
  }
}
