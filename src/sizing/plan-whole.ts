/**
 * The run plan of a boat: her day as it could be, against the habit of today and what a meter saw of it.
 *
 * @module
 */

import type { Highs } from 'highs'
import type { CatalogueLoad, Season } from '../catalogue/load-schema.js'
import { type Entry, isKind } from '../logbook/kinds.js'
import { type BatteryAlternative, type BatteryQuestion, batteryAlternative } from './battery-plan.js'
import { hasTwoLegs } from './boat-loads.js'
import { activeOfAll } from './demand-points.js'
import {
  type AgainstList,
  againstList,
  chancesWhileOn,
  type MeasuredBody,
  type RecordedDay,
  recordedDay,
} from './measured-summary.js'
import { planDay } from './plan.js'
import { boatDay, type HabitDay } from './plan-boat.js'
import { type DayProblem, loadLimits, type RunDay } from './plan-day.js'
import type { Choices, DayTotals, RunOfDay } from './plan-run.js'
import { useOfDays, yearOf } from './plan-use.js'
import { needsOf, type SizeQuestion } from './size-boat.js'

export interface PlanQuestion {
  readonly size: SizeQuestion
  /** Left out: that of most days aboard. */
  readonly season?: Season
  /** A set of another size; left out: the one aboard. [kW] */
  readonly ratingKW?: number
  /** Left out: from 23 to 7, unless the set runs at night today; `none`: at no time. */
  readonly quiet?: { readonly from: number; readonly until: number } | 'none'
  /** The latest recording; what cannot wait is corrected by it. */
  readonly recording?: MeasuredBody
  /** Leave the list as it is, whatever was recorded. */
  readonly trustList?: boolean
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
  readonly against?: AgainstList
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

/** The latest recording of what the set gives. */
export function recordingOf(entries: readonly Entry[], set: string): MeasuredBody | undefined {
  return entries
    .filter((entry) => isKind(entry, 'measured'))
    .findLast((entry) => entry.set === set && entry.body.of === 'set')?.body
}

export function planBoat(highs: Highs, question: PlanQuestion): PlannedBoat {
  const { size, recording, trustList, powerNeededByMonth } = question
  const needs = needsOf(size)
  const { loads, rules, habits, year: occasions } = needs
  const ratingKW = question.ratingKW ?? size.setFacts.ratingKw
  if (ratingKW === undefined)
    return refused('missing', 'set.ratingKw', 'no rating of the set', 'its rating in kW')
  if (loads.length === 0)
    return refused('missing', 'loads', 'no load in the log', 'loads, as "log add load" enters them')
  const season = question.season ?? mostDays(habits.days)
  const wanted = occasions.filter((one) => one.season === season)
  const against =
    recording === undefined ? undefined : againstRecording(recording, wanted.length > 0 ? wanted : occasions)
  const correction = trustList || against === undefined ? undefined : against.factor
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
    ...(correction === undefined ? {} : { correction }),
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
    season,
    ratingKW,
    day,
    plan: planned.run,
    choices: planned.choices,
    habit,
    ...(recording === undefined ? {} : { recorded: recordedDay(recording, ratingKW) }),
    ...(against === undefined ? {} : { against }),
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

function againstRecording(
  recording: MeasuredBody,
  occasions: Parameters<typeof activeOfAll>[0],
): AgainstList | undefined {
  const [, ...on] = activeOfAll(occasions)
  const total = on.reduce((sum, chance) => sum + chance, 0)
  const measured = chancesWhileOn(recording)
  if (total <= 0 || measured.length === 0) return undefined
  return againstList(
    { chances: measured, stepKW: recording.stepKw, mostKW: recording.mostKw },
    { chances: [0, ...on.map((chance) => chance / total)], stepKW: 0.1 },
  )
}
