/**
 * One set judged for one boat: what it can do, what it cannot, and by how much, on which occasion.
 *
 * @module
 */

import type { SizingLimits } from '../catalogue/sizing-schema.js'
import type { SpaceFacts } from '../register/load-facts.js'
import { alternatorEfficiency, alternatorFactor, factorByRise } from './alternator-rating.js'
import { stepW } from './demand-grid.js'
import { shareAbove, shareBelow } from './demand-points.js'
import {
  engineDerating,
  firstStepShare,
  frequencyAfterStep,
  meanPressureBar,
  standardPressureKPa,
} from './engine-derating.js'
import { judgePlace, type PlaceBook } from './judge-place.js'
import type { Load, Occasion, Weathers } from './load-type.js'
import type { OnOccasion, Unshed } from './occasions.js'
import { type StartLimits, startChances, startOn } from './overload.js'
import { measured, type SizeCheck, type Verdict, worstOf } from './size-check.js'
import type { SizedSet } from './sized-set.js'
import { startKW, voltageDip } from './voltage-dip.js'

/** How one set meets one occasion, over its seasons. */
export interface SetOnOccasion {
  readonly occasion: Occasion
  readonly hours: number
  /** Worst over the seasons. */
  readonly p99KW: number
  readonly p99KVA: number
  /** Share of the time at which more is drawn than the engine gives. */
  readonly overShare: number
  /** Share of the time below 30 % of the rating. */
  readonly lowShare: number
  /** Starts in a year that ask for more than the engine gives, and that dip the voltage too far. */
  readonly overloadsPerYear: number
  readonly dipsPerYear: number
  /** Overloads left when all that may be shed is off; left out: nothing may be shed. */
  readonly overloadsUnshed?: number
  /** Chance that a start does either; undefined where nothing starts. */
  readonly chanceAtStart?: number
  readonly checks: readonly SizeCheck[]
}

export interface JudgedSet {
  readonly set: SizedSet
  /** What is left of engine and alternator where it stands. */
  readonly engineKW: number
  readonly alternatorKVA: number
  readonly engineFactor: number
  readonly alternatorFactor: number
  /** The alternator's by the rise of class H alone: a second opinion. */
  readonly alternatorFactorByRise: number
  readonly occasions: readonly SetOnOccasion[]
  /** Over the year and whatever the occasion. */
  readonly checks: readonly SizeCheck[]
  readonly hoursPerYear: number
  readonly lowShare: number
  readonly overloadsPerYear: number
  readonly dipsPerYear: number
  readonly overloadsUnshed?: number
  /** Whether it carries what is asked of it. */
  readonly verdict: Verdict
  /** Whether it can stand where it is to stand, and get there. */
  readonly place: Verdict
}

export interface JudgeBook extends PlaceBook {
  readonly sizing: SizingLimits
}

export interface Judged {
  readonly book: JudgeBook
  readonly loads: readonly Load[]
  readonly year: readonly OnOccasion[]
  readonly space: SpaceFacts
  /** Between the legs' outer ends, and of a leg; the same on a set of one voltage. [V] */
  readonly legVolts: number
}

/** Judges a set. */
export function judgeSet(on: Judged, set: SizedSet): JudgedSet {
  const { book, year } = on
  const derated = deratedOf(on, set)
  const limits: StartLimits = {
    kW: derated.engineKW,
    kVA: set.kVA,
    reactance: set.reactance,
    dip: book.sizing.voltageDip.most,
  }
  const named = [...new Set(year.map(({ occasion }) => occasion))]
  const occasions = named.map((occasion) =>
    judgeOccasion(
      on,
      { set, derated, limits },
      year.filter((one) => one.occasion === occasion),
    ),
  )
  const hours = year.reduce((sum, one) => sum + one.hours, 0)
  const lowShare = hours === 0 ? 0 : weighedMean(occasions, ({ lowShare: share }) => share)
  const place = judgePlace(book, { set, space: on.space })
  const carrying = [...startChecks(on, { set, derated }), ...lowLoadChecks(on, { lowShare, derated })]
  const all = [...carrying, ...occasions.flatMap((one) => one.checks)]
  return {
    set,
    ...derated,
    occasions,
    checks: [...carrying, ...place],
    hoursPerYear: hours,
    lowShare,
    overloadsPerYear: occasions.reduce((sum, one) => sum + one.overloadsPerYear, 0),
    dipsPerYear: occasions.reduce((sum, one) => sum + one.dipsPerYear, 0),
    ...(occasions.some(({ overloadsUnshed }) => overloadsUnshed !== undefined)
      ? { overloadsUnshed: occasions.reduce((sum, one) => sum + (one.overloadsUnshed ?? 0), 0) }
      : {}),
    verdict: worstOf(all.map(({ verdict }) => verdict)),
    place: worstOf(place.map(({ verdict }) => verdict)),
  }
}

type Derated = Pick<
  JudgedSet,
  'engineKW' | 'alternatorKVA' | 'engineFactor' | 'alternatorFactor' | 'alternatorFactorByRise'
>

/** Air as usual where nobody told it: at the sea, 45 °C in the engine space, three fifths humid; coolant 7 K above the sea. Practice. */
const usualAir = { engineSpaceC: 45, humidity: 0.6, altitudeM: 0, seaWaterC: 25, coolantAboveSeaK: 7 }

function deratedOf({ book: { sizing }, space }: Judged, set: SizedSet): Derated {
  const { engineSpaceC, humidity, altitudeM, seaWaterC } = { ...usualAir, ...withoutUndefined(space) }
  const { power } = engineDerating(sizing.engine, {
    aspiration: set.aspiration,
    mechanicalEfficiency: sizing.engine.mechanicalEfficiency.typical,
    air: {
      pressureKPa: Math.min(standardPressureKPa(altitudeM), sizing.engine.reference.pressureKPa),
      temperatureC: engineSpaceC,
      humidity,
      chargeCoolantC: seaWaterC + usualAir.coolantAboveSeaK,
    },
  })
  const engineFactor = Math.min(1, power)
  const factor = alternatorFactor(sizing.alternator, { airC: engineSpaceC, altitudeM })
  return {
    engineFactor,
    alternatorFactor: factor,
    alternatorFactorByRise: factorByRise({
      riseK: sizing.alternator.classRiseK.h,
      aboveK: engineSpaceC - sizing.alternator.heat.aboveC,
    }),
    engineKW: engineFactor * set.ratingKW,
    alternatorKVA: factor * set.kVA,
  }
}

function withoutUndefined<T extends object>(record: T): { [K in keyof T]: Exclude<T[K], undefined> } {
  return Object.fromEntries(Object.entries(record).filter(([, value]) => value !== undefined)) as never
}

interface OfSet {
  readonly set: SizedSet
  readonly derated: Derated
}

function judgeOccasion(
  on: Judged,
  of: OfSet & { readonly limits: StartLimits },
  seasons: readonly OnOccasion[],
): SetOnOccasion {
  const { derated, set, limits } = of
  const { sizing } = on.book
  const hours = seasons.reduce((sum, one) => sum + one.hours, 0)
  const share = (value: (one: OnOccasion) => number) =>
    seasons.reduce((sum, one) => sum + (one.hours / hours) * value(one), 0)
  const starts = seasons.map((one) => startsOn(on.loads, one, limits))
  const total = (field: 'starts' | 'tooMuch' | 'dips' | 'either') =>
    starts.reduce((sum, one) => sum + one[field], 0)
  const worstKW = worst(seasons, (one) => one.kW.p99)
  const worstKVA = worst(seasons, (one) => one.kVA.p99)
  const at = (season: Weathers) => ({ occasion: seasons[0]!.occasion, season })
  const checks: SizeCheck[] = [
    {
      ...measured('engine-load', worstKW.value, sizing.load.p99ShareOfRating * derated.engineKW, 'kW'),
      ...at(worstKW.season),
      limitPath: 'sizing.load.p99ShareOfRating',
    },
    {
      ...measured('alternator-load', worstKVA.value, derated.alternatorKVA, 'kVA'),
      ...at(worstKVA.season),
    },
    ...legChecks(on, derated, seasons),
    ...startOverload(of, { seasons, perYear: total('tooMuch') }),
  ]
  return {
    occasion: seasons[0]!.occasion,
    hours,
    p99KW: worstKW.value,
    p99KVA: worstKVA.value,
    overShare: share(({ active }) => shareAbove(active, derated.engineKW)),
    lowShare: share(({ active }) => shareBelow(active, sizing.load.lowBelow * set.ratingKW)),
    overloadsPerYear: total('tooMuch'),
    dipsPerYear: total('dips'),
    ...unshedOn(seasons, limits),
    ...(total('starts') > 0 ? { chanceAtStart: total('either') / total('starts') } : {}),
    checks,
  }
}

function worst<T extends OnOccasion>(
  seasons: readonly T[],
  value: (one: T) => number,
): { readonly value: number; readonly season: Weathers; readonly one: T } {
  return seasons
    .map((one) => ({ value: value(one), season: one.season, one }))
    .reduce((most, next) => (next.value > most.value ? next : most))
}

/** The current of each leg against half of the alternator. */
function legChecks(on: Judged, derated: Derated, seasons: readonly OnOccasion[]): SizeCheck[] {
  const [first] = seasons
  return (first?.legKVA ?? []).map((_, leg) => {
    const { value, season } = worst(seasons, (one) => (1000 * one.legKVA[leg]!.p99) / on.legVolts)
    return {
      ...measured('leg-load', value, (500 * derated.alternatorKVA) / on.legVolts, 'A'),
      occasion: first!.occasion,
      season,
      about: leg === 0 ? 'leg one' : 'leg two',
    }
  })
}

interface Starts {
  readonly starts: number
  readonly tooMuch: number
  readonly dips: number
  readonly either: number
}

function startsOn(
  loads: readonly Load[],
  { startings, startsPerYear }: Unshed | OnOccasion,
  limits: StartLimits,
): Starts {
  let [starts, tooMuch, dips, either] = [0, 0, 0, 0]
  loads.forEach((load, i) => {
    const count = startsPerYear[i]!
    if (count <= 0) return
    const chances = startChances(load, startings[i]!, limits)
    starts += count
    tooMuch += count * chances.tooMuch
    dips += count * chances.dips
    either += count * Math.min(1, chances.tooMuch + chances.dips)
  })
  return { starts, tooMuch, dips, either }
}

/** Overloads of the loads that stay on when what may be shed is off. */
function unshedOn(
  seasons: readonly OnOccasion[],
  limits: StartLimits,
): { readonly overloadsUnshed?: number } {
  const unshed = seasons.flatMap((one) => one.unshed ?? [])
  if (unshed.length === 0) return {}
  return {
    overloadsUnshed: unshed.reduce((sum, one) => sum + startsOn(one.loads, one, limits).tooMuch, 0),
  }
}

/** Overloads in a year that people put up with on one occasion before it is called a failing; practice. */
const mostOverloads = 1

function startOverload(
  { derated }: OfSet,
  of: { readonly seasons: readonly OnOccasion[]; readonly perYear: number },
): SizeCheck[] {
  const { value, season } = worst(of.seasons, ({ active }) => shareAbove(active, derated.engineKW))
  if (of.perYear === 0 && value === 0) return []
  return [
    {
      ...measured('start-overload', of.perYear, mostOverloads, 'a year'),
      occasion: of.seasons[0]!.occasion,
      season,
    },
  ]
}

/** What the largest start does to voltage and frequency, with nothing else running. */
function startChecks({ book: { sizing }, loads, year }: Judged, { set, derated }: OfSet): SizeCheck[] {
  const started = loads.filter((_, i) => year.some(({ startsPerYear }) => startsPerYear[i]! > 0))
  const motors = started.flatMap((load) => {
    const motor = startOn(load, set)
    return motor === undefined ? [] : [{ load, motor }]
  })
  const checks: SizeCheck[] = []
  const { aim, most } = sizing.voltageDip
  const deepest = motors
    .map(({ load, motor }) => ({ load, dip: voltageDip(motor) }))
    .sort((a, b) => b.dip - a.dip)[0]
  if (deepest !== undefined) {
    const { verdict, ...check } = measured('voltage-dip', deepest.dip, most, 'share')
    const tight = verdict === 'passes' && deepest.dip > aim
    checks.push({
      ...check,
      verdict: tight ? 'tight' : verdict,
      about: deepest.load.name,
      limitPath: 'sizing.voltageDip.most',
      ...(set.usual.includes('reactance') ? { usual: ['reactance'] } : {}),
    })
  }
  const largest = [...motors].sort((a, b) => b.motor.startKVA - a.motor.startKVA)[0]
  if (set.capacitor && largest !== undefined) {
    const times = sizing.alternator.capacitorStartTimesRating.most
    checks.push({
      ...measured('start-current', largest.motor.startKVA, times * set.kVA, 'kVA'),
      about: largest.load.name,
      limitPath: 'sizing.alternator.capacitorStartTimesRating.most',
    })
  }
  const step = started
    .map((load) => {
      const motor = startOn(load, set)
      return { load, kW: Math.max(load.watts / 1000, motor === undefined ? 0 : startKW(motor)) }
    })
    .sort((a, b) => b.kW - a.kW)[0]
  if (step === undefined) return checks
  const told = set.sweptLitres
  const efficiency = alternatorEfficiency(sizing.alternator, set.ratingKW)
  const usualBar = sizing.engine.usualMeanPressureBar
  const bar =
    told === undefined
      ? set.aspiration === 'turbo'
        ? usualBar.turbo
        : set.aspiration === 'turbo-cooled'
          ? usualBar.turboCooled
          : usualBar.natural
      : meanPressureBar({ shaftKW: set.ratingKW / efficiency, sweptLitres: told, rpm: set.rpm })
  const firstStep = firstStepShare({ meanPressureBar: bar, fullUpToBar: sizing.firstStep.fullUpToBar })
  const { inertiaSeconds, governorSeconds, dipMost } = sizing.frequency
  const after = frequencyAfterStep({
    stepShare: step.kW / set.kVA,
    seconds: governorSeconds,
    inertiaSeconds,
  })
  checks.push(
    {
      ...measured('first-step', step.kW, firstStep * derated.engineKW, 'kW'),
      about: step.load.name,
      limitPath: 'sizing.firstStep.fullUpToBar',
      ...(told === undefined ? { usual: ['sweptLitres'] } : {}),
    },
    {
      ...measured('frequency-dip', 1 - after, dipMost, 'share'),
      about: step.load.name,
      limitPath: 'sizing.frequency.dipMost',
      usual: ['inertia'],
    },
  )
  return checks
}

/** Light running, and the mean over a day. */
function lowLoadChecks(
  { book: { sizing }, year }: Judged,
  { lowShare, derated }: { readonly lowShare: number; readonly derated: Derated },
): SizeCheck[] {
  if (year.length === 0) return []
  const low = measured('low-load', lowShare, sizing.load.lowShareMost, 'share')
  const heaviest = heaviestDay(year)
  return [
    // Light running wears; it does not stop the set from carrying what is asked.
    {
      ...low,
      verdict: low.verdict === 'fails' ? 'tight' : low.verdict,
      limitPath: 'sizing.load.lowShareMost',
    },
    {
      ...measured('mean-load', heaviest.kW, sizing.load.meanShareMost * derated.engineKW, 'kW'),
      season: heaviest.season,
      limitPath: 'sizing.load.meanShareMost',
    },
  ]
}

/** The season in which most is drawn on the mean of a day's running. Time at rest is not counted. */
function heaviestDay(year: readonly OnOccasion[]): { readonly kW: number; readonly season: Weathers } {
  const named = [...new Set(year.map(({ season }) => season))]
  const meanKW = ({ active }: OnOccasion) =>
    active.reduce((sum, chance, i) => sum + (chance * i * stepW) / 1000, 0)
  return named
    .map((season) => {
      const day = year.filter((one) => one.season === season)
      const hours = day.reduce((sum, one) => sum + one.hours, 0)
      return { season, kW: day.reduce((sum, one) => sum + (one.hours / hours) * meanKW(one), 0) }
    })
    .reduce((most, next) => (next.kW > most.kW ? next : most))
}

function weighedMean(occasions: readonly SetOnOccasion[], value: (one: SetOnOccasion) => number): number {
  const hours = occasions.reduce((sum, one) => sum + one.hours, 0)
  return occasions.reduce((sum, one) => sum + (one.hours / hours) * value(one), 0)
}
