/**
 * Past use: what the hour meter and the count of starts read at any time, and the three ages of a part.
 *
 * @module
 */

import type { Clock, LifeModel } from './life-model.js'

/** Running totals against time since the set's first day, straight between points. */
export interface UseTrack {
  /** Age of the set: time from its first day to now. [years] */
  readonly years: number
  /** Times since the first day, rising, the first 0 and the last `years`. [years] */
  readonly time: Float64Array
  /** Running hours by then. [h] */
  readonly hours: Float64Array
  readonly starts: Float64Array
  /** Mean over the whole past, or of the use to come where there is no past. [h/year] */
  readonly hoursPerYear: number
  readonly startsPerYear: number
  /** Share of past hours below about 30 % load. */
  readonly lowLoadShare: number
  /** Where to look for a time or a reading among the points. */
  readonly guides: { readonly time: Guide; readonly hours: Guide; readonly starts: Guide }
}

/** Per even slice of what rising values span, the segment in which it begins. */
interface Guide {
  readonly slicesPerUnit: number
  readonly segment: Uint16Array
}

/** A track with its guides. */
export function withGuides(points: Omit<UseTrack, 'guides'>): UseTrack {
  const { time, hours, starts } = points
  return { ...points, guides: { time: guideTo(time), hours: guideTo(hours), starts: guideTo(starts) } }
}

/** The three ages of a part; each from its fitting to now. */
export interface Ages {
  readonly years: number
  readonly hours: number
  readonly starts: number
}

/** Yearly use to come: the sum over the twelve months. */
export function yearlyUse(model: LifeModel): { readonly hours: number; readonly starts: number } {
  return { hours: sum(model.use.hoursByMonth), starts: sum(model.use.startsByMonth) }
}

/**
 * The past use of a model.
 *
 * A track whose first point is not yet the first day is carried back to nought: straight to the set's stated age
 * if that is older, else at the mean use of the track. Without a track the use to come is taken, even, over the
 * set's age.
 */
export function pastUseOf(model: LifeModel): UseTrack {
  const future = yearlyUse(model)
  const track = model.past?.track
  if (track === undefined) {
    const past = evenPast({
      years: model.set.ageYears,
      hours: future.hours * model.set.ageYears,
      starts: future.starts * model.set.ageYears,
      lowLoadShare: model.use.lowLoadShare,
    })
    return { ...past, hoursPerYear: future.hours, startsPerYear: future.starts }
  }
  const first = track[0]!
  const last = track[track.length - 1]!
  const span = first.yearsAgo - last.yearsAgo
  const rate = span > 0 ? (last.hours - first.hours) / span : 0
  const points = track.map((point) => ({ ...point }))
  if (model.set.ageYears > first.yearsAgo) {
    points.unshift({ yearsAgo: model.set.ageYears, hours: 0, starts: 0 })
  } else if (first.hours > 0 && rate > 0) {
    points.unshift({ yearsAgo: first.yearsAgo + first.hours / rate, hours: 0, starts: 0 })
  }
  const years = points[0]!.yearsAgo
  return withGuides({
    years,
    time: Float64Array.from(points, (point) => years - point.yearsAgo),
    hours: Float64Array.from(points, (point) => point.hours),
    starts: Float64Array.from(points, (point) => point.starts),
    hoursPerYear: years > 0 ? (last.hours - points[0]!.hours) / years : future.hours,
    startsPerYear: years > 0 ? (last.starts - points[0]!.starts) / years : future.starts,
    lowLoadShare: model.past!.lowLoadShare,
  })
}

/** A past of even use. */
export function evenPast(set: Ages & { readonly lowLoadShare: number }): UseTrack {
  return withGuides({
    years: set.years,
    time: Float64Array.of(0, set.years),
    hours: Float64Array.of(0, set.hours),
    starts: Float64Array.of(0, set.starts),
    hoursPerYear: set.years > 0 ? set.hours / set.years : 0,
    startsPerYear: set.years > 0 ? set.starts / set.years : 0,
    lowLoadShare: set.lowLoadShare,
  })
}

/** Mean rate of a clock over the past. [clock units/year] */
export function pastRate(past: UseTrack, clock: Clock): number {
  if (clock === 'years') return 1
  return clock === 'hours' ? past.hoursPerYear : past.startsPerYear
}

/** What a clock read at a time since the first day; outside the past it goes on at the mean rate. */
export function readingAt(past: UseTrack, clock: Clock, time: number): number {
  if (clock === 'years') return time
  const values = clock === 'hours' ? past.hours : past.starts
  const last = values.length - 1
  if (time <= 0) return values[0]! + time * pastRate(past, clock)
  if (time >= past.time[last]!) return values[last]! + (time - past.time[last]!) * pastRate(past, clock)
  const left = segmentBelow(past.time, past.guides.time, time)
  const from = past.time[left]!
  const width = past.time[left + 1]! - from
  return values[left]! + ((time - from) / width) * (values[left + 1]! - values[left]!)
}

/** The first time at which a clock reached a reading; infinite if it stands still and never does. */
export function timeOfReading(past: UseTrack, clock: Clock, reading: number): number {
  if (clock === 'years') return reading
  const values = clock === 'hours' ? past.hours : past.starts
  const last = values.length - 1
  const rate = pastRate(past, clock)
  if (reading <= values[0]!) return rate > 0 ? (reading - values[0]!) / rate : 0
  if (reading > values[last]!) {
    return rate > 0 ? past.time[last]! + (reading - values[last]!) / rate : Infinity
  }
  const left = segmentBelow(values, clock === 'hours' ? past.guides.hours : past.guides.starts, reading)
  const from = values[left]!
  const width = values[left + 1]! - from
  return past.time[left]! + ((reading - from) / width) * (past.time[left + 1]! - past.time[left]!)
}

/** Those of the three ages that are known. */
export interface KnownAges {
  readonly years?: number | undefined
  readonly hours?: number | undefined
  readonly starts?: number | undefined
}

/** The three ages of a part from those known: the rest is read from the track; none known means as old as the set. */
export function completeAges(past: UseTrack, known: KnownAges): Ages {
  const years = known.years ?? yearsOf(past, known)
  const since = past.years - years
  return {
    years,
    hours: known.hours ?? readingAt(past, 'hours', past.years) - readingAt(past, 'hours', since),
    starts: known.starts ?? readingAt(past, 'starts', past.years) - readingAt(past, 'starts', since),
  }
}

/** The three ages of an earlier life of the part, of which only the mean use of the past is known. */
export function completeAgesEvenly(past: UseTrack, known: KnownAges): Ages {
  const { hoursPerYear, startsPerYear } = past
  let years = known.years
  if (years === undefined && known.hours !== undefined && hoursPerYear > 0) years = known.hours / hoursPerYear
  if (years === undefined && known.starts !== undefined && startsPerYear > 0)
    years = known.starts / startsPerYear
  years ??= 0
  return {
    years,
    hours: known.hours ?? years * hoursPerYear,
    starts: known.starts ?? years * startsPerYear,
  }
}

/** How the clocks of one part ran within its present life: with the track, stretched so that they meet its ages. */
export interface PartClock {
  readonly past: UseTrack
  readonly ages: Ages
}

/** Age of a part on a clock at a time years ago; 0 at its fitting, its whole age now. */
export function ageAt(part: PartClock, clock: Clock, yearsAgo: number): number {
  const { past, ages } = part
  if (clock === 'years') return Math.max(0, ages.years - yearsAgo)
  const now = readingAt(past, clock, past.years)
  const run = now - readingAt(past, clock, past.years - ages.years)
  const age = ages[clock]
  if (!(run > 0)) return ages.years > 0 ? age * Math.max(0, 1 - yearsAgo / ages.years) : age
  return Math.max(0, age * (1 - (now - readingAt(past, clock, past.years - yearsAgo)) / run))
}

/** The clocks of a part since a time within its life. */
export function clockSince(part: PartClock, yearsAgo: number): PartClock {
  const { past, ages } = part
  if (yearsAgo >= ages.years) return part
  return {
    past,
    ages: {
      years: yearsAgo,
      hours: ages.hours - ageAt(part, 'hours', yearsAgo),
      starts: ages.starts - ageAt(part, 'starts', yearsAgo),
    },
  }
}

/** The clocks of a part as a track of its own, from its fitting to now; the year's hours stay those of the set. */
export function trackSinceFitting(part: PartClock): UseTrack {
  const { past, ages } = part
  const fitted = past.years - ages.years
  const within = Array.from(past.time, (time) => time - fitted).filter(
    (time) => time > 0 && time < ages.years,
  )
  const time = Float64Array.of(0, ...within, ages.years)
  return withGuides({
    ...past,
    years: ages.years,
    time,
    hours: time.map((at) => ageAt(part, 'hours', ages.years - at)),
    starts: time.map((at) => ageAt(part, 'starts', ages.years - at)),
  })
}

/** Years ago at which a part reached an age on a clock; the other way round from {@link ageAt}. */
export function yearsAgoOfAge(part: PartClock, clock: Clock, age: number): number {
  const { past, ages } = part
  if (clock === 'years') return ages.years - age
  const whole = ages[clock]
  if (!(whole > 0)) return ages.years
  const now = readingAt(past, clock, past.years)
  const run = now - readingAt(past, clock, past.years - ages.years)
  if (!(run > 0)) return ages.years * (1 - age / whole)
  return past.years - timeOfReading(past, clock, now - run * (1 - age / whole))
}

function yearsOf(past: UseTrack, known: KnownAges): number {
  for (const clock of ['hours', 'starts'] as const) {
    const age = known[clock]
    if (age === undefined) continue
    const since = timeOfReading(past, clock, readingAt(past, clock, past.years) - age)
    if (Number.isFinite(since)) return Math.max(0, past.years - since)
  }
  return past.years
}

const slicesPerPoint = 4

function guideTo(values: Float64Array): Guide {
  const first = values[0]!
  const last = values.length - 1
  const span = values[last]! - first
  const slices = Math.min(4096, slicesPerPoint * values.length)
  const segment = new Uint16Array(slices)
  if (!(span > 0)) return { slicesPerUnit: 0, segment }
  let left = 0
  for (let slice = 0; slice < slices; slice++) {
    while (left < last - 1 && values[left + 1]! < first + (span * slice) / slices) left++
    segment[slice] = left
  }
  return { slicesPerUnit: slices / span, segment }
}

/** Index i with values[i] < wanted ≤ values[i + 1]; the values rise and hold the wanted one between them. */
function segmentBelow(values: Float64Array, guide: Guide, wanted: number): number {
  const { segment, slicesPerUnit } = guide
  const slice = Math.floor((wanted - values[0]!) * slicesPerUnit)
  let left = segment[Math.min(slice, segment.length - 1)]!
  while (left > 0 && values[left]! >= wanted) left--
  while (values[left + 1]! < wanted) left++
  return left
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0)
}

/** Mean yearly rate of each clock: of the track as entered, or of the use to come where there is none. */
export function yearlyRates(model: LifeModel): Readonly<Record<Clock, number>> {
  const first = model.past?.track[0]
  const last = model.past?.track.at(-1)
  if (first === undefined || last === undefined || !(first.yearsAgo > last.yearsAgo)) {
    return { ...yearlyUse(model), years: 1 }
  }
  const years = first.yearsAgo - last.yearsAgo
  return {
    hours: (last.hours - first.hours) / years,
    starts: (last.starts - first.starts) / years,
    years: 1,
  }
}
