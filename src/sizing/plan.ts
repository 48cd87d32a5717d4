/**
 * The run plan: what may wait is put into the fewest, well-loaded hours of a day.
 *
 * @module
 */

import type { Highs } from 'highs'
import { type DayProblem, dayProblems, type RunDay, standsIn } from './plan-day.js'
import { type Laid, layDown } from './plan-lay.js'
import { type Optimum, optimumOf } from './plan-milp.js'
import { type Choices, type RunOfDay, runOf } from './plan-run.js'
import { searchPlan } from './plan-search.js'

export type Planned =
  | { readonly ok: true; readonly choices: Choices; readonly run: RunOfDay }
  | { readonly ok: false; readonly problems: readonly DayProblem[] }

/**
 * The plan of least cost, proved by the solver and then reckoned anew from its yes-and-no alone.
 *
 * Unknowns of slot t: y on, s start, w low (yes or no), g the set's kW, x of each batch its beginning, b and u of each store
 * whether and how long it fills. Rows: what is wanted is carried, `g + out + sun + shore = base + batches + stores + in`;
 * `g ≤ most·y`; `g ≥ low·(y − w)`; `s ≥ y − y(t−1)`; each batch begins once; levels of stores and battery stay in bounds.
 * The set is on only where something runs.
 */
export function planDay(
  highs: Highs,
  day: RunDay,
  limit: { readonly seconds: number } = { seconds: 60 },
): Planned {
  const problems = dayProblems(day)
  if (problems.length > 0) return { ok: false, problems }
  const found = standsIn(day) ? solve(highs, day, limit) : bySearch(highs, day, limit)
  if (!found.ok) {
    const allowed =
      found.why === 'infeasible'
        ? 'a day whose loads fit the set, its quiet hours and its tanks: a larger tank, a later hour or fewer quiet ones'
        : 'a day that can be planned'
    return { ok: false, problems: [{ code: `plan-${found.why}`, path: 'day', found: found.words, allowed }] }
  }
  return { ok: true, choices: found.choices, run: runOf(day, found.choices) }
}

type Solved =
  | { readonly ok: true; readonly choices: Choices; readonly cost: number }
  | Extract<Optimum, { ok: false }>

/** The search, and where the day is too large for it the programme of the whole. */
function bySearch(highs: Highs, day: RunDay, limit: { readonly seconds: number }): Solved {
  const found = searchPlan(highs, day, limit)
  if (found.ok || found.why !== 'too-many') return found
  const whole = solve(highs, day, limit)
  const { best } = found
  const isBest = best !== undefined && (whole.ok ? best.cost < whole.cost : whole.why === 'infeasible')
  return isBest ? { ok: true, ...best } : whole
}

function solve(highs: Highs, day: RunDay, limit: { readonly seconds: number }): Solved {
  const laid = layDown(day)
  const found = optimumOf(highs, laid.programme, limit)
  return found.ok ? { ok: true, choices: choicesOf(day, laid, found.values), cost: found.cost } : found
}

/** The yes-and-no rounded, and what goes with it. */
function choicesOf(day: RunDay, laid: Laid, values: Float64Array): Choices {
  const read = (columns: readonly number[]) => columns.map((column) => values[column]!)
  const bounded = (columns: readonly number[] | undefined) =>
    columns && read(columns).map((value) => Math.max(0, value))
  const batches = Object.fromEntries(
    [...laid.batches].map(([id, columns]) => [
      id,
      columns.findIndex((column) => column !== undefined && values[column]! > 0.5),
    ]),
  )
  const stores = Object.fromEntries(
    day.stores.map(({ id, wholeSlots }) => [
      id,
      read(laid.stores.get(id)!.shares).map((share) =>
        wholeSlots ? Math.round(share) : share < 1e-6 ? 0 : Math.min(1, share),
      ),
    ]),
  )
  const charge = bounded(laid.charge)
  const inverter = bounded(laid.inverter)
  const shore = bounded(laid.shore)
  const isOn = read(laid.on).map((value) => value > 0.5)
  const begins = [...laid.stores].flatMap(([id, store]) =>
    store.begins === undefined ? [] : [[id, values[store.begins]!] as const],
  )
  return {
    batches,
    stores,
    ...(day.partSlots ? { onShare: read(laid.running).map((share, t) => (isOn[t] ? share : 0)) } : {}),
    ...(begins.length === 0 ? {} : { begins: Object.fromEntries(begins) }),
    ...(charge === undefined ? {} : { chargeKW: charge }),
    ...(inverter === undefined ? {} : { inverterKW: inverter }),
    ...(shore === undefined ? {} : { shoreKW: shore }),
    ...(!standsIn(day) ? {} : { setKW: read(laid.set).map((kW, t) => (isOn[t] ? kW : 0)) }),
  }
}
