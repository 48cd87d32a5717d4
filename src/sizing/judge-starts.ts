/**
 * What the largest starts do to a set.
 *
 * @module
 */

import { meetingsPerHour } from './cycles.js'
import type { Demand } from './demand.js'
import { firstStepShare, frequencyAfterStep } from './engine-derating.js'
import { meanPressureOf } from './engine-size.js'
import type { Judged, OfSet } from './judged-set.js'
import type { Load } from './load-type.js'
import { startOn } from './overload.js'
import { measured, type SizeCheck } from './size-check.js'
import type { SizedSet } from './sized-set.js'
import {
  largestStartKVA,
  type MotorStart,
  smallestSetKVA,
  startKW,
  startsTogether,
  voltageDip,
} from './voltage-dip.js'

/** A load that starts at all, by its place in the list, and its start on the set's alternator. */
interface Started {
  readonly at: number
  readonly load: Load
  readonly motor: MotorStart
}

/** What the largest starts do to voltage and frequency, with nothing else running. */
export function startChecks(on: Judged, of: OfSet): SizeCheck[] {
  const started = on.loads.flatMap((load, at) =>
    on.year.some(({ startsPerYear }) => startsPerYear[at]! > 0) ? [{ at, load }] : [],
  )
  const motors = started.flatMap((one) => {
    const motor = startOn(one.load, of.set)
    return motor === undefined ? [] : [{ ...one, motor }]
  })
  return [
    ...dipCheck(on, of.set, motors),
    ...togetherCheck(on, of.set, motors),
    ...currentCheck(on, of.set, motors),
    ...stepChecks(
      on,
      of,
      started.map(({ load }) => load),
    ),
  ]
}

/** The deepest dip of one start, and what would bear it. */
function dipCheck({ book }: Judged, set: SizedSet, motors: readonly Started[]): SizeCheck[] {
  const { aim, most } = book.sizing.voltageDip
  const dips = motors.map((one) => ({ ...one, dip: voltageDip(one.motor) }))
  const deepest = greatest(dips, ({ dip }) => dip)
  if (deepest === undefined) return []
  const { verdict, ...check } = measured('voltage-dip', deepest.dip, most, 'share')
  const { motor, load, dip } = deepest
  return [
    {
      ...check,
      verdict: verdict === 'passes' && dip > aim ? 'tight' : verdict,
      about: load.name,
      bears: {
        startKVA: largestStartKVA({ ...motor, dip: most }),
        setKVA: smallestSetKVA({ ...motor, dip: most }),
      },
      limitPath: 'sizing.voltageDip.most',
      ...usualReactance(set),
    },
  ]
}

function usualReactance({ usual }: SizedSet): Pick<SizeCheck, 'usual'> {
  return usual.includes('reactance') ? { usual: ['reactance'] } : {}
}

/** A start takes as long where nobody says. [s] Practice. */
const usualStartSeconds = 0.5

/** As often in a year people put up with a dip that is too deep; practice. */
const mostPerYear = 1

/** The deepest dip of two starts that fall together, and how often in a year such pairs dip too far. It never fails a set. */
function togetherCheck(on: Judged, set: SizedSet, motors: readonly Started[]): SizeCheck[] {
  const { most } = on.book.sizing.voltageDip
  const pairs = motors.flatMap((one, i) =>
    motors.slice(i + 1).flatMap((other) => {
      const perYear = meetingsPerYear(on, one, other)
      return perYear > 0
        ? [{ one, other, perYear, dip: voltageDip(startsTogether(one.motor, other.motor)) }]
        : []
    }),
  )
  const deepest = greatest(pairs, ({ dip }) => dip)
  if (deepest === undefined) return []
  const check = measured('starts-together', deepest.dip, most, 'share')
  const tooDeep = pairs.filter(({ dip }) => dip > most).reduce((sum, { perYear }) => sum + perYear, 0)
  return [
    {
      ...check,
      verdict: tooDeep > mostPerYear ? 'tight' : 'passes',
      about: `${deepest.one.load.name} with ${deepest.other.load.name}`,
      perYear: tooDeep,
      limitPath: 'sizing.voltageDip.most',
      ...usualReactance(set),
    },
  ]
}

/** How often in a year two loads start so near one another that both come up to speed at once. */
function meetingsPerYear({ year }: Judged, one: Started, other: Started): number {
  const seconds = ({ load }: Started) => load.start?.seconds ?? usualStartSeconds
  const windowSeconds = (seconds(one) + seconds(other)) / 2
  return year.reduce((sum, { hours, startsPerYear, demand }) => {
    if (hours <= 0 || !canMeet(demand, one.at, other.at)) return sum
    const perHour = ({ at }: Started) => startsPerYear[at]! / hours
    return (
      sum +
      hours * meetingsPerHour({ firstPerHour: perHour(one), secondPerHour: perHour(other), windowSeconds })
    )
  }, 0)
}

/** Whether the rules of the house leave two loads on together on any kind of day; where no kinds of day are known, they may be. */
function canMeet({ days }: Demand, one: number, other: number): boolean {
  return (
    days.length === 0 ||
    days.some(({ groups }) => {
      const [group, second] = [one, other].map((load) => groups.find(({ members }) => members.includes(load)))
      if (group === undefined || second === undefined) return false
      if (group !== second) return true
      const both = (1 << group.members.indexOf(one)) | (1 << group.members.indexOf(other))
      return group.states.some(({ on, chance }) => chance > 0 && (on & both) === both)
    })
  )
}

/** What a capacitor-excited end starts at the most. */
function currentCheck({ book }: Judged, set: SizedSet, motors: readonly Started[]): SizeCheck[] {
  const largest = greatest(motors, ({ motor }) => motor.startKVA)
  if (!set.capacitor || largest === undefined) return []
  const times = book.sizing.alternator.capacitorStartTimesRating.most
  return [
    {
      ...measured('start-current', largest.motor.startKVA, times * set.kVA, 'kVA'),
      about: largest.load.name,
      limitPath: 'sizing.alternator.capacitorStartTimesRating.most',
    },
  ]
}

/** The largest single step of load, against what the engine takes at once and what it does to the frequency. */
function stepChecks(
  { book: { sizing } }: Judged,
  { set, derated }: OfSet,
  started: readonly Load[],
): SizeCheck[] {
  const steps = started.map((load) => {
    const motor = startOn(load, set)
    return { load, kW: Math.max(load.watts / 1000, motor === undefined ? 0 : startKW(motor)) }
  })
  const step = greatest(steps, ({ kW }) => kW)
  if (step === undefined) return []
  const { fullUpToBar } = sizing.firstStep
  const firstStep = firstStepShare({ meanPressureBar: meanPressureOf(sizing, set), fullUpToBar })
  const { inertiaSeconds, governorSeconds, dipMost } = sizing.frequency
  const after = frequencyAfterStep({
    stepShare: step.kW / set.kVA,
    seconds: governorSeconds,
    inertiaSeconds,
  })
  return [
    {
      ...measured('first-step', step.kW, firstStep * derated.engineKW, 'kW'),
      about: step.load.name,
      limitPath: 'sizing.firstStep.fullUpToBar',
      ...(set.sweptLitres === undefined ? { usual: ['sweptLitres'] } : {}),
    },
    {
      ...measured('frequency-dip', 1 - after, dipMost, 'share'),
      about: step.load.name,
      limitPath: 'sizing.frequency.dipMost',
      usual: ['inertia'],
    },
  ]
}

function greatest<T>(list: readonly T[], value: (one: T) => number): T | undefined {
  return list.reduce<T | undefined>(
    (most, one) => (most === undefined || value(one) > value(most) ? one : most),
    undefined,
  )
}
