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

interface ProblemParts {
  readonly open: readonly Open[]
  /** Chance that the look shows something, by history. */
  readonly seen: Float64Array
  readonly strata: readonly Stratum[]
}

export interface Problem extends ProblemParts {
  /** Sums of the cost of one alternative less that of another, on each half; gathered once. */
  readonly apart: (from: number, to: number) => readonly [Sums, Sums]
}

/** Over the histories of a half: Σ w·d and Σ (w·d)² of a difference d under the weight w of each outcome. */
interface Sums {
  readonly count: number
  readonly of: Readonly<Record<Outcome, { readonly sum: number; readonly squares: number }>>
}

/** Without the look, and when it shows something or nothing: histories weigh 1, P(seen) and 1 − P(seen). */
type Outcome = keyof Rule

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

export function problemOf(parts: ProblemParts): Problem {
  const { open, seen } = parts
  const gathered = new Map<string, readonly [Sums, Sums]>()
  const apart: Problem['apart'] = (from, to) => {
    const key = `${from} ${to}`
    const found = gathered.get(key)
    if (found !== undefined) return found
    const costs = { from: open[from]!.cost, to: open[to]!.cost, seen }
    const sums = [sumsOn(0, costs), sumsOn(1, costs)] as const
    gathered.set(key, sums)
    return sums
  }
  return { ...parts, apart }
}

function sumsOn(
  half: Half,
  { from, to, seen }: { readonly from: Float64Array; readonly to: Float64Array; readonly seen: Float64Array },
): Sums {
  let [all, shown, not] = [0, 0, 0]
  let [allSquares, shownSquares, notSquares] = [0, 0, 0]
  for (let i: number = half; i < seen.length; i += 2) {
    const apart = to[i]! - from[i]!
    const weighed = seen[i]! * apart
    const rest = apart - weighed
    all += apart
    allSquares += apart * apart
    shown += weighed
    shownSquares += weighed * weighed
    not += rest
    notSquares += rest * rest
  }
  return {
    count: Math.floor((seen.length + 1 - half) / 2),
    of: {
      unlooked: { sum: all, squares: allSquares },
      ifSeen: { sum: shown, squares: shownSquares },
      ifNot: { sum: not, squares: notSquares },
    },
  }
}

/** What is best without the look, and after each outcome of it, on one half of the histories or on all. */
export function bestRule(problem: Problem, half?: Half): Rule {
  const first = { a: leastOf(problem, half), renews: false }
  const unlooked = better(problem, first, { outcome: 'unlooked', half })
  return {
    unlooked,
    ifSeen: better(problem, unlooked, { outcome: 'ifSeen', half }),
    ifNot: better(problem, unlooked, { outcome: 'ifNot', half }),
  }
}

export function isSame(one: Pick, other: Pick): boolean {
  return one.a === other.a && one.renews === other.renews
}

interface Where {
  readonly outcome: Outcome
  readonly half: Half | undefined
}

/** The least of all choices under an outcome, if it is surely better than the one at hand; else that one. */
function better(problem: Problem, atHand: Pick, where: Where): Pick {
  let best = atHand
  let least = 0
  problem.open.forEach(({ alternative }, a) => {
    const renewable = problem.strata.some(({ added }) => added.has(alternative.id))
    for (const renews of renewable ? [false, true] : [false]) {
      const other = { a, renews }
      if (isSame(other, atHand)) continue
      const { mean: less, error } = differenceOf(problem, { from: atHand, to: other }, where)
      if (less < least && less < -sure * error) {
        best = other
        least = less
      }
    }
  })
  return best
}

/** The least on the whole, told by its difference from the first. */
function leastOf({ open, apart }: Problem, half?: Half): number {
  const means = open.map((_, a) => estimateOf(apart(0, a), { outcome: 'unlooked', half }).mean)
  return means.indexOf(Math.min(...means))
}

export interface Estimate {
  readonly mean: number
  readonly error: number
}

/** E[w·(cost of one choice − cost of another)], by histories of a half or of all. */
function differenceOf(
  { seen, open, strata, apart }: Problem,
  { from, to }: { readonly from: Pick; readonly to: Pick },
  where: Where,
): Estimate {
  const whole = estimateOf(apart(from.a, to.a), where)
  return plusStrata(whole, strata, where.half, (stratum, k) => {
    const added = (pick: Pick) => (pick.renews ? addedBy(stratum, open[pick.a]!)[k]! : 0)
    return weightOf(where.outcome, seen[stratum.histories[k]!]!) * (added(to) - added(from))
  })
}

function weightOf(outcome: Outcome, seen: number): number {
  return outcome === 'unlooked' ? 1 : outcome === 'ifSeen' ? seen : 1 - seen
}

function estimateOf(sums: readonly [Sums, Sums], { outcome, half }: Where): Estimate {
  const taken = half === undefined ? sums : [sums[half]]
  let [n, sum, squares] = [0, 0, 0]
  for (const { count, of } of taken) {
    n += count
    sum += of[outcome].sum
    squares += of[outcome].squares
  }
  return meanAndError(n, sum, squares)
}

function meanAndError(n: number, sum: number, squares: number): Estimate {
  const mean = sum / n
  return { mean, error: Math.sqrt(Math.max(0, squares / n - mean ** 2) / n) }
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

function meanOver(count: number, half: Half, value: (i: number) => number): Estimate {
  let [n, sum, squares] = [0, 0, 0]
  for (let i: number = half; i < count; i += 2) {
    const x = value(i)
    n++
    sum += x
    squares += x * x
  }
  return meanAndError(n, sum, squares)
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
