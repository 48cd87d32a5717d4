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
  const found = day.partSlots ? solve(highs, day, limit) : byHours(highs, day, limit)
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

function solve(highs: Highs, day: RunDay, limit: { readonly seconds: number }, hours?: number): Solved {
  const laid = layDown(day, hours)
  const found = optimumOf(highs, laid.programme, limit)
  return found.ok ? { ok: true, choices: choicesOf(day, laid, found.values), cost: found.cost } : found
}

/**
 * The same optimum, found one number of slots after another: hours that are alike can change places in very many ways, and
 * are soon told apart once it is said how many of them there are. It ends where so many slots alone cost more than the best
 * found, with the energy of the day and one start.
 */
function byHours(highs: Highs, day: RunDay, limit: { readonly seconds: number }): Solved {
  const { costs, slotHours } = day
  const kWh = leastKWh(day)
  const fewest = standsIn(day) ? 0 : day.baseKW.filter((kW) => kW > 0).length
  const most = day.baseKW.filter((_, t) => !day.quiet?.[t]).length
  let best: Solved = { ok: false, why: 'infeasible', words: 'nothing meets all that is asked' }
  for (let hours = fewest; hours <= most; hours++) {
    const least = costs.perHour * slotHours * hours + costs.perKWh * kWh + (hours > 0 ? costs.perStart : 0)
    if (best.ok && least >= best.cost - 1e-9) break
    const found = solve(highs, day, limit, hours)
    if (found.ok && (!best.ok || found.cost < best.cost)) best = found
    if (!found.ok && found.why !== 'infeasible') return found
  }
  return best
}

/** Energy that the set has to give in any plan: what is wanted, less all that sun and shore could give; a battery only loses. [kWh] */
function leastKWh({ baseKW, slotHours, batches, stores, solarKW = [], shore }: RunDay): number {
  const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0)
  const filled = stores.map(({ kW, perHour, drawn, begins, ends = 0, least }) => {
    const rise = begins === undefined ? 0 : Math.max(ends, least) - begins
    return Math.max(0, (kW * (sum(drawn) + rise)) / perHour)
  })
  const wantedKW = sum(baseKW) + sum(batches.map(({ kW, slots }) => kW * slots))
  return Math.max(0, slotHours * (wantedKW - sum(solarKW) - sum(shore?.mostKW ?? [])) + sum(filled))
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
