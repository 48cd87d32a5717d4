/**
 * The run plan of a boat: her day as it could be, against the habit of today and what a meter saw of it.
 *
 * @module
 */

import type { Highs } from 'highs'
import type { CatalogueLoad, Season } from '../catalogue/load-schema.js'
import { type BatteryAlternative, type BatteryQuestion, batteryAlternative } from './battery-plan.js'
import { hasTwoLegs } from './boat-loads.js'
import type { DemandBasis } from './demand-basis.js'
import { type RecordedDay, recordedDay } from './measured-summary.js'
import { planDay } from './plan.js'
import { boatDay, type HabitDay } from './plan-boat.js'
import { type DayProblem, loadLimits, type RunDay } from './plan-day.js'
import type { Choices, DayTotals, RunOfDay } from './plan-run.js'
import { useOfDays, yearOf } from './plan-use.js'
import { type MeasuredDemand, needsOf, type SizeQuestion } from './size-boat.js'

export interface PlanQuestion {
  readonly size: SizeQuestion
  /** Left out: that of most days aboard. */
  readonly season?: Season
  /** A set of another size; left out: the one aboard. [kW] */
  readonly ratingKW?: number
  /** Left out: from 23 to 7, unless the set runs at night today; `none`: at no time. */
  readonly quiet?: { readonly from: number; readonly until: number } | 'none'
  readonly powerNeededByMonth: readonly number[]
  readonly battery?: Omit<BatteryQuestion, 'daysPerYear'>
}

/** Everything there is to say of a day and its plan. */
export interface BoatPlan {
  readonly season: Season
  readonly ratingKW: number
  readonly day: RunDay
  readonly plan: RunOfDay
  readonly choices: Choices
  readonly habit: HabitDay
  readonly recorded?: RecordedDay
  readonly measured?: MeasuredDemand
  readonly basis: DemandBasis
  readonly months: ReturnType<typeof useOfDays>
  readonly year: { readonly plan: Year; readonly habit: Year }
  readonly battery?: BatteryAlternative
  readonly assumed: readonly string[]
}

/** Sums of a year. */
export interface Year {
  readonly hours: number
  readonly starts: number
  readonly lowLoadShare: number
  readonly fuelLitres: number
  readonly days: number
}

export type PlannedBoat =
  | ({ readonly ok: true } & BoatPlan)
  | { readonly ok: false; readonly problems: readonly DayProblem[] }

export function planBoat(highs: Highs, question: PlanQuestion): PlannedBoat {
  const { size, powerNeededByMonth } = question
  const { recording } = size
  const needs = needsOf(size)
  const { loads, rules, habits } = needs
  const ratingKW = question.ratingKW ?? size.setFacts.ratingKw
  if (ratingKW === undefined)
    return refused('missing', 'set.ratingKw', 'no rating of the set', 'its rating in kW')
  if (needs.listed.length === 0)
    return refused('missing', 'loads', 'no load in the log', 'loads, as "log add load" enters them')
  const season = question.season ?? mostDays(habits.days)
  const recorded = recording === undefined ? undefined : recordedDay(recording, ratingKW)
  const quiet = quietOf(question, habits.setHours.night)
  const groups = new Map<string, CatalogueLoad['group']>(size.book.loads.map(({ id, group }) => [id, group]))
  const fuel = size.book.wholeSet.fuel[question.ratingKW === undefined ? 'aged' : 'healthy']
  const { day, habit, assumed } = boatDay({
    loads,
    rules,
    loadRules: size.book.loadRules,
    groups,
    habits,
    season,
    ratingKW,
    fuel: {
      litresPerHourPerRatedKW: fuel.litresPerHourPerRatedKW,
      litresPerKWh: fuel.litresPerHourPerLoadKW,
    },
    twoLegs: hasTwoLegs(needs.supply),
    ...startsOf(size.use),
    ...(quiet === undefined ? {} : { quiet }),
    ...(recorded === undefined || needs.basis !== 'recording' ? {} : { recorded }),
  })
  const planned = planDay(highs, day)
  if (!planned.ok) return planned
  const months = useOfDays(planned.run, powerNeededByMonth)
  const yearFor = (run: DayTotals): Year => {
    const use = useOfDays(run, powerNeededByMonth)
    const days = run.hours > 0 ? yearOf(use).hours / run.hours : 0
    return { ...yearOf(use), fuelLitres: run.fuelLitres * days, days }
  }
  const ofPlan = yearFor(planned.run)
  const battery =
    question.battery === undefined
      ? undefined
      : batteryAlternative(highs, day, {
          planned: planned.run,
          question: { ...question.battery, daysPerYear: ofPlan.days },
        })
  return {
    ok: true,
    basis: needs.basis,
    season,
    ratingKW,
    day,
    plan: planned.run,
    choices: planned.choices,
    habit,
    ...(recorded === undefined ? {} : { recorded }),
    ...(needs.measured === undefined ? {} : { measured: needs.measured }),
    months,
    year: { plan: ofPlan, habit: yearFor(habit) },
    ...(battery === undefined ? {} : { battery }),
    assumed: [
      ...needs.assumed,
      ...assumed,
      ...(quiet === undefined ? [] : [`silent from ${quiet.from} to ${quiet.until} o’clock`]),
      `the set is loaded to ${Math.round(loadLimits.most * 100)} of 100 of its rating at the most`,
    ],
  }
}

function refused(code: string, path: string, found: string, allowed: string): PlannedBoat {
  return { ok: false, problems: [{ code, path, found, allowed }] }
}

function startsOf(use: SizeQuestion['use']): { readonly startsPerHour?: number } {
  const hours = use?.reduce((sum, month) => sum + month.hours, 0) ?? 0
  return hours > 0 ? { startsPerHour: use!.reduce((sum, month) => sum + month.starts, 0) / hours } : {}
}

function mostDays(days: Readonly<Record<Season, number>>): Season {
  return (Object.entries(days) as [Season, number][]).reduce((best, one) =>
    one[1] > best[1] ? one : best,
  )[0]
}

function quietOf({ quiet }: PlanQuestion, hoursAtNight: number) {
  if (quiet === 'none') return undefined
  if (quiet !== undefined) return quiet
  return Math.round(hoursAtNight) > 0 ? undefined : { from: 23, until: 7 }
}
