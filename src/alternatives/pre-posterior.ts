/**
 * What is best before and after a look whose outcomes weigh the histories, and what choosing after it saves.
 *
 * @module
 */

import type { Alternative } from '../forecast/life-model.js'

/** An alternative that may be chosen, and what it costs in each history. */
export interface Open {
  readonly alternative: Alternative
  readonly cost: Float64Array
}

/** Histories in which renewing was played, and how many of all each of them stands for. */
export interface Stratum {
  readonly histories: Int32Array
  /** Share of all histories that are of its kind. */
  readonly share: number
  /** Beside each alternative, what renewing adds to its cost in each of these histories. */
  readonly added: ReadonlyMap<string, Float64Array>
}

export interface Problem {
  readonly open: readonly Open[]
  readonly seen: Float64Array
  readonly strata: readonly Stratum[]
}

export interface Pick {
  readonly a: number
  readonly renews: boolean
}

export interface Rule {
  readonly unlooked: Pick
  readonly ifSeen: Pick
  readonly ifNot: Pick
}

export type Half = 0 | 1

/** Another choice than without the look is taken only if it is better by more than this many standard errors. */
const sure = 1

/** What is best without the look, and after each outcome of it, on one half of the histories or on all. */
export function bestRule(problem: Problem, half?: Half): Rule {
  const { seen } = problem
  const one = () => 1
  const first = { a: leastOf(problem, one, half), renews: false }
  const unlooked = better(problem, first, { weight: one, half })
  return {
    unlooked,
    ifSeen: better(problem, unlooked, { weight: (i) => seen[i]!, half }),
    ifNot: better(problem, unlooked, { weight: (i) => 1 - seen[i]!, half }),
  }
}

export function isSame(one: Pick, other: Pick): boolean {
  return one.a === other.a && one.renews === other.renews
}

interface Outcome {
  readonly weight: (history: number) => number
  readonly half: Half | undefined
}

/** The least of all choices under an outcome, if it is surely better than the one at hand; else that one. */
function better(problem: Problem, atHand: Pick, { weight, half }: Outcome): Pick {
  let best = atHand
  let least = 0
  problem.open.forEach(({ alternative }, a) => {
    const renewable = problem.strata.some(({ added }) => added.has(alternative.id))
    for (const renews of renewable ? [false, true] : [false]) {
      const other = { a, renews }
      if (isSame(other, atHand)) continue
      const { mean: less, error } = differenceOf(problem, { from: atHand, to: other }, { weight, half })
      if (less < least && less < -sure * error) {
        best = other
        least = less
      }
    }
  })
  return best
}

function leastOf({ open }: Problem, weight: (history: number) => number, half?: Half): number {
  const sums = open.map(({ cost }) => {
    let sum = 0
    for (let i = half ?? 0; i < cost.length; i += half === undefined ? 1 : 2) sum += weight(i) * cost[i]!
    return sum
  })
  return sums.indexOf(Math.min(...sums))
}

export interface Estimate {
  readonly mean: number
  readonly error: number
}

/** E[w·(cost of one choice − cost of another)], by histories of a half or of all. */
function differenceOf(
  { open, strata }: Problem,
  { from, to }: { readonly from: Pick; readonly to: Pick },
  { weight, half }: Outcome,
): Estimate {
  const costs = open[to.a]!.cost
  const others = open[from.a]!.cost
  const whole = meanOver(costs.length, half, (i) => weight(i) * (costs[i]! - others[i]!))
  return plusStrata(whole, strata, half, (stratum, k) => {
    const i = stratum.histories[k]!
    const added = (pick: Pick) => (pick.renews ? addedBy(stratum, open[pick.a]!)[k]! : 0)
    return weight(i) * (added(to) - added(from))
  })
}

function addedBy(stratum: Stratum, { alternative }: Open): Float64Array {
  return stratum.added.get(alternative.id)!
}

/** E[cost unlooked − Σ_o P(o)·cost of what is chosen after o]. */
export function gainOf({ open, seen, strata }: Problem, rule: Rule, half: Half): Estimate {
  const { unlooked, ifSeen, ifNot } = rule
  if (isSame(ifSeen, unlooked) && isSame(ifNot, unlooked)) {
    return { mean: 0, error: 0 }
  }
  const cost = (pick: Pick) => open[pick.a]!.cost
  const [before, after, otherwise] = [cost(unlooked), cost(ifSeen), cost(ifNot)]
  const whole = meanOver(
    before.length,
    half,
    (i) => before[i]! - seen[i]! * after[i]! - (1 - seen[i]!) * otherwise[i]!,
  )
  return plusStrata(whole, strata, half, (stratum, k) => {
    const chance = seen[stratum.histories[k]!]!
    const added = (pick: Pick) => (pick.renews ? addedBy(stratum, open[pick.a]!)[k]! : 0)
    return added(unlooked) - chance * added(ifSeen) - (1 - chance) * added(ifNot)
  })
}

function meanOver(count: number, half: Half | undefined, value: (i: number) => number): Estimate {
  const step = half === undefined ? 1 : 2
  let n = 0
  let sum = 0
  let squares = 0
  for (let i = half ?? 0; i < count; i += step) {
    const x = value(i)
    n++
    sum += x
    squares += x * x
  }
  const average = sum / n
  return { mean: average, error: Math.sqrt(Math.max(0, squares / n - average ** 2) / n) }
}

/** Adds what only some histories were played for: Σ share × mean within each kind of history. */
function plusStrata(
  whole: Estimate,
  strata: readonly Stratum[],
  half: Half | undefined,
  value: (stratum: Stratum, k: number) => number,
): Estimate {
  let { mean: sum } = whole
  let variance = whole.error ** 2
  for (const stratum of strata) {
    let n = 0
    let total = 0
    let squares = 0
    for (let k = 0; k < stratum.histories.length; k++) {
      if (half !== undefined && (stratum.histories[k]! & 1) !== half) continue
      const x = value(stratum, k)
      n++
      total += x
      squares += x * x
    }
    if (n === 0) continue
    const average = total / n
    sum += stratum.share * average
    variance += (stratum.share ** 2 * Math.max(0, squares / n - average ** 2)) / n
  }
  return { mean: sum, error: Math.sqrt(variance) }
}
