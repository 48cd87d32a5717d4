/**
 * What a plan is worth in failures: the set left as it is, run by today's habit and by the plan, on the same histories.
 *
 * @module
 */

import { summarise } from '../alternatives/summary.js'
import type { LifeModel } from '../forecast/life-model.js'
import type { BoatPlan, Year } from '../sizing/plan-whole.js'
import { prepareFor } from './answer.js'
import type { SetQuestion } from './of-set.js'
import { playAll } from './play-all.js'

/** Of a set that is left and mended as it fails. */
interface Run {
  readonly hoursPerYear: number
  readonly failuresPerYear: number
  readonly stopsPerYear: number
  readonly costPerYear: number
  readonly costPerYearError: number
}

export interface PlanWorth {
  readonly alternative: string
  readonly currency: string
  readonly years: number
  readonly histories: number
  readonly habit: Run
  readonly plan: Run
}

const histories = 2000

/**
 * Only what lies ahead differs: hours, starts and low load of each month, and the fuel of an hour. The years behind, and what
 * is believed of each part after them, are the same for both.
 */
export async function worthOfPlan(
  question: SetQuestion,
  plan: BoatPlan,
  { seed }: { readonly seed: number },
): Promise<PlanWorth> {
  const prepared = await prepareFor({ ...question, seed, first: true })
  const leave =
    prepared.model.alternatives.find(({ now }) => now === 'leave') ?? prepared.model.alternatives[0]!
  const play = async (model: LifeModel, year: Year): Promise<Run> => {
    const [sample] = await playAll({ ...prepared, model }, { seed, from: 0, count: histories })
    const { failures, stopsPerYear, costPerYear, cost } = summarise(model, sample!)
    return {
      hoursPerYear: year.hours,
      failuresPerYear: failures.reduce((sum, { perYear }) => sum + perYear, 0),
      stopsPerYear: stopsPerYear.mean,
      costPerYear,
      costPerYearError: ((cost.standardError ?? 0) / Math.max(1, cost.mean)) * costPerYear,
    }
  }
  const modelOf = (year: Year): LifeModel => {
    const share = plan.year.plan.hours > 0 ? year.hours / plan.year.plan.hours : 0
    const starts = plan.year.plan.starts > 0 ? year.starts / plan.year.plan.starts : 0
    const at = (month: number) => plan.months.find((one) => one.month === month + 1)
    const twelve = (of: (month: number) => number) => Array.from({ length: 12 }, (_, month) => of(month))
    // the model knows one price of an hour: that of this year's mean load
    const litrePrice = prepared.model.fuelPerHour / usualLitres(plan)
    return {
      ...prepared.model,
      alternatives: [leave],
      use: {
        ...prepared.model.use,
        hoursByMonth: twelve((month) => Math.min(744, (at(month)?.hours ?? 0) * share)),
        startsByMonth: twelve((month) => (at(month)?.starts ?? 0) * starts),
        lowLoadShare: year.lowLoadShare,
      },
      fuelPerHour: year.hours > 0 ? (litrePrice * year.fuelLitres) / year.hours : 0,
    }
  }
  return {
    alternative: leave.id,
    currency: prepared.model.currency,
    years: prepared.model.horizonYears,
    histories,
    habit: await play(modelOf(plan.year.habit), plan.year.habit),
    plan: await play(modelOf(plan.year.plan), plan.year.plan),
  }
}

/** What the model's price of an hour is for: 0.45 of the rating. Its source is the life model's own. */
function usualLitres({ day }: BoatPlan): number {
  return day.costs.perHour + day.costs.perKWh * 0.45 * day.set.ratingKW
}

export function worthText({ habit, plan, currency, years }: PlanWorth): string[] {
  const money = (value: number) => `${Math.round(value).toLocaleString('en-GB')} ${currency}`.trim()
  const saved = habit.costPerYear - plan.costPerYear
  const error = Math.hypot(habit.costPerYearError, plan.costPerYearError)
  return [
    `Left as it is and mended as it fails, over ${years} years: ${habit.failuresPerYear.toFixed(2)} failures a year by today’s habit, ${plan.failuresPerYear.toFixed(2)} by the plan; ${habit.stopsPerYear.toFixed(2)} and ${plan.stopsPerYear.toFixed(2)} stops of a day or longer.`,
    `Money a year, fuel in it: ${money(habit.costPerYear)} and ${money(plan.costPerYear)}: ${money(Math.abs(saved))} ${saved >= 0 ? 'less' : 'more'}, give or take ${money(error)} by the simulation.`,
  ]
}
