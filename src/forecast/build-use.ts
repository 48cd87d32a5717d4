/**
 * Use of power through the year, and the hours and starts behind the set.
 *
 * @module
 */

import type { SetCatalogue } from '../catalogue/scale.js'
import type { SetRegister } from '../register/register-types.js'
import type { LifeModelInput } from './life-model.js'

type UseInput = NonNullable<LifeModelInput['use']>
type PastInput = NonNullable<LifeModelInput['past']>

export interface UseOfSet {
  readonly use: UseInput & { readonly hoursByMonth: number[]; readonly lowLoadShare: number }
  readonly past: PastInput | undefined
  readonly hoursPerYear: number
  /** Of the set, now. */
  readonly hoursNow: number
  readonly ageYears: number
  readonly assumed: readonly string[]
}

/** Share of the running hours below about 30 % load where nobody said. Practice. */
const usualLowLoadShare = 0.3
/** Age of a set of which nobody says when it was built. [a] Practice. */
const usualAgeYears = 15
const daysPerYear = 365.25
const longestMonthHours = 744

export function useOf(register: SetRegister, catalogue: SetCatalogue): UseOfSet {
  const assumed: string[] = []
  const ageYears = ageOf(register, assumed)
  const hoursPerYear = hoursPerYearOf(register, catalogue, { ageYears, assumed })
  const use =
    register.use === undefined
      ? usualYear(register, catalogue, { hoursPerYear, assumed })
      : saidYear(register.use.months)
  const hours = sum(use.hoursByMonth)
  const before = yearBefore(register, catalogue, { use, ageYears, assumed })
  const hoursBefore = sum(before.hoursByMonth)
  const startsPerHour = hoursBefore > 0 ? sum(before.startsByMonth) / hoursBefore : 0
  const track = trackOf(register, { ageYears, hoursPerYear: hoursBefore, startsPerHour })
  return {
    use,
    past: track.length < 2 ? undefined : { track, lowLoadShare: before.lowLoadShare },
    hoursPerYear: hours,
    hoursNow: track.at(-1)?.hours ?? 0,
    ageYears,
    assumed,
  }
}

/** The usual year so far: that of now, unless this one is a change. */
function yearBefore(
  register: SetRegister,
  catalogue: SetCatalogue,
  known: { readonly use: Year; readonly ageYears: number; readonly assumed: string[] },
): Year {
  const before = register.use?.before
  if (before === undefined) return known.use
  if (before.length > 0) return saidYear(before)
  const { use: _, ...unsaid } = register
  const hoursPerYear = hoursPerYearOf(unsaid, catalogue, known)
  return usualYear(unsaid, catalogue, { hoursPerYear, assumed: known.assumed })
}

function ageOf(register: SetRegister, assumed: string[]): number {
  const { builtDay, asOfDay } = register
  if (builtDay !== undefined) return Math.max(0, (asOfDay - builtDay) / daysPerYear)
  const [first] = register.hours.points
  const perYear = register.hours.perYear
  if (first !== undefined && perYear !== undefined && perYear > 0) {
    assumed.push('when the set was built is not said: its first hours are taken to have run like its last')
    return Math.min(60, (asOfDay - first.day) / daysPerYear + first.hours / perYear)
  }
  assumed.push(`when the set was built is not said: taken to be ${usualAgeYears} years ago`)
  return usualAgeYears
}

function hoursPerYearOf(
  register: SetRegister,
  catalogue: SetCatalogue,
  { ageYears, assumed }: { readonly ageYears: number; readonly assumed: string[] },
): number {
  if (register.use !== undefined) return sum(register.use.months.map(({ hours }) => hours))
  const { perYear, points } = register.hours
  if (perYear !== undefined) return perYear
  const now = points.at(-1)?.hours
  if (now !== undefined && now > 0 && ageYears > 0) return now / ageYears
  const usual = catalogue.wholeSet.use.find(({ id }) => id === 'cruiser')!.hoursPerYear.typical
  assumed.push(`how much the set runs is not said: ${usual} hours a year are taken`)
  return usual
}

type Year = {
  hoursByMonth: number[]
  startsByMonth: number[]
  powerNeededByMonth: number[]
  lowLoadShare: number
}

function saidYear(months: NonNullable<SetRegister['use']>['months']): Year {
  const at = (month: number) => months.find((one) => one.month === month + 1)
  const hours = sum(months.map((one) => one.hours))
  const lowLoad = sum(months.map((one) => one.hours * one.lowLoadShare))
  return {
    hoursByMonth: twelve((month) => at(month)?.hours ?? 0),
    startsByMonth: twelve((month) => at(month)?.starts ?? 0),
    powerNeededByMonth: twelve((month) => at(month)?.needShare ?? 0),
    lowLoadShare: hours > 0 ? lowLoad / hours : 0,
  }
}

function usualYear(
  register: SetRegister,
  catalogue: SetCatalogue,
  { hoursPerYear, assumed }: { readonly hoursPerYear: number; readonly assumed: string[] },
): Year {
  const months = register.boatFacts.monthsInUse ?? twelve((month) => month + 1)
  const perMonth = Math.min(longestMonthHours, hoursPerYear / months.length)
  const nearest = [...catalogue.wholeSet.use].sort(
    (a, b) =>
      Math.abs(Math.log(a.hoursPerYear.typical / Math.max(1, hoursPerYear))) -
      Math.abs(Math.log(b.hoursPerYear.typical / Math.max(1, hoursPerYear))),
  )[0]!
  assumed.push(
    `use by month is not said: spread evenly over ${months.length} months, ${nearest.hoursPerStart} hours a start, ` +
      `power wanted every day of them, ${usualLowLoadShare * 100} % of the hours at low load`,
  )
  const used = (month: number) => months.includes(month + 1)
  return {
    hoursByMonth: twelve((month) => (used(month) ? perMonth : 0)),
    startsByMonth: twelve((month) => (used(month) ? perMonth / nearest.hoursPerStart : 0)),
    powerNeededByMonth: twelve((month) => (used(month) ? 1 : 0)),
    lowLoadShare: usualLowLoadShare,
  }
}

/** Totals since the first day; what starts are not entered follow the hours. */
function trackOf(
  register: SetRegister,
  known: { readonly ageYears: number; readonly hoursPerYear: number; readonly startsPerHour: number },
): PastInput['track'] {
  const { ageYears, startsPerHour } = known
  const points = register.hours.points
    .map(({ day, hours }) => ({ yearsAgo: Math.max(0, (register.asOfDay - day) / daysPerYear), hours }))
    .filter((point) => point.yearsAgo <= ageYears)
  if (ageYears === 0) return []
  const now = points.at(-1)?.hours ?? known.hoursPerYear * ageYears
  const first = points[0]
  const track = [
    ...(first === undefined || first.yearsAgo < ageYears ? [{ yearsAgo: ageYears, hours: 0 }] : []),
    ...lastOfEachSpan(points, ageYears / mostReadings),
    ...(points.at(-1)?.yearsAgo === 0 ? [] : [{ yearsAgo: 0, hours: now }]),
  ]
  return track.map((point) => ({ ...point, starts: Math.round(point.hours * startsPerHour) }))
}

/** A log may read its meter every day: more readings than these tell no more of lives that are counted in months. */
const mostReadings = 1000

/** The last reading of each span of years, where there are more of them than are wanted. */
function lastOfEachSpan<Point extends { readonly yearsAgo: number }>(
  points: readonly Point[],
  spanYears: number,
): readonly Point[] {
  if (points.length <= mostReadings) return points
  const spanOf = (point: Point | undefined) => point && Math.floor(point.yearsAgo / spanYears)
  return points.filter((point, i) => spanOf(point) !== spanOf(points[i + 1]))
}

function twelve(of: (month: number) => number): number[] {
  return Array.from({ length: 12 }, (_, month) => of(month))
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0)
}
