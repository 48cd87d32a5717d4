/**
 * Which further parts to renew while the set is open for a job that is decided: the choice that costs least, proved.
 *
 * @module
 */

import type { Highs } from 'highs'
import { addChoice, emptyProgramme, optimumOf, type Term } from '../sizing/plan-milp.js'

/** A part that could be renewed along with the job. Money is present money. */
export interface Addition {
  readonly part: string
  /** Piece, hands and trips of its own; without opening. */
  readonly price: number
  /** Hands. [h] */
  readonly hours: number
  /** Ways in that it needs and that the job does not open anyway, with all that they include. */
  readonly opens: readonly string[]
  /** What renewing it now saves over the years the boat is kept, before its price. */
  readonly saves: number
  /** What the faults that the work may put in cost on average. */
  readonly mayPutIn: number
}

/** A way in that must be opened before anything behind it is reached. */
export interface Opening {
  readonly id: string
  readonly price: number
  readonly hours: number
}

export interface BundleLimits {
  /** For everything that is added. */
  readonly money?: number
  /** Hours of hands and opening. [h] */
  readonly hours?: number
}

export interface Bundling {
  readonly additions: readonly Addition[]
  readonly openings: readonly Opening[]
  readonly limits?: BundleLimits
}

/** A choice of additions; the ways in they share are paid once. */
export interface Bundle {
  readonly parts: readonly string[]
  readonly opens: readonly string[]
  /** Pieces, hands and opening. */
  readonly price: number
  readonly hours: number
  /** What it saves over the years kept, with its price, its opening and what it may put in taken off. */
  readonly net: number
}

export type Bundled =
  | { readonly ok: true; readonly best: Bundle; readonly second?: Bundle }
  | { readonly ok: false; readonly words: string }

/** Long enough for any boat; what is not proved by then is told as such. [s] */
const solverSeconds = 10

/**
 * The additions that cost least over the years kept, and the next best choice:
 * min Σ xₚ (price + mayPutIn − saves) + Σ y_g price of opening g, with y_g ≥ xₚ for every way in g that p needs, and
 * Σ money and Σ hours within their limits. What an addition saves is taken as its own, whatever else is renewed.
 */
export function bundleOf(highs: Highs, of: Bundling): Bundled {
  const best = leastOf(highs, of, [])
  if (!best.ok) return best
  const second = leastOf(highs, of, [best.chosen])
  return {
    ok: true,
    best: bundleWith(of, best.chosen),
    ...(second.ok ? { second: bundleWith(of, second.chosen) } : {}),
  }
}

type Found =
  | { readonly ok: true; readonly chosen: ReadonlySet<number> }
  | { readonly ok: false; readonly words: string }

/** The least choice that is none of those left out. */
function leastOf(
  highs: Highs,
  { additions, openings, limits = {} }: Bundling,
  leftOut: ReadonlySet<number>[],
): Found {
  if (additions.length === 0)
    return leftOut.length === 0 ? { ok: true, chosen: new Set() } : { ok: false, words: '' }
  const programme = emptyProgramme()
  const renewed = additions.map(({ price, mayPutIn, saves }) =>
    addChoice(programme, price + mayPutIn - saves),
  )
  const opened = openings.map(({ price }) => addChoice(programme, price))
  additions.forEach(({ opens }, p) => {
    for (const id of opens) {
      const g = openings.findIndex((one) => one.id === id)
      if (g < 0) throw new RangeError(`opens must name an opening; found ${id}`)
      programme.rows.push({
        terms: [
          [opened[g]!, 1],
          [renewed[p]!, -1],
        ],
        least: 0,
      })
    }
  })
  const sum = (of: 'price' | 'hours'): Term[] => [
    ...additions.map((one, p): Term => [renewed[p]!, one[of]]),
    ...openings.map((one, g): Term => [opened[g]!, one[of]]),
  ]
  if (limits.money !== undefined) programme.rows.push({ terms: sum('price'), most: limits.money })
  if (limits.hours !== undefined) programme.rows.push({ terms: sum('hours'), most: limits.hours })
  for (const chosen of leftOut) {
    // at least one addition is otherwise
    programme.rows.push({
      terms: renewed.map((column, p): Term => [column, chosen.has(p) ? -1 : 1]),
      least: 1 - chosen.size,
    })
  }
  const optimum = optimumOf(highs, programme, { seconds: solverSeconds })
  if (!optimum.ok) return { ok: false, words: optimum.words }
  return {
    ok: true,
    chosen: new Set(renewed.flatMap((column, p) => (optimum.values[column]! > 0.5 ? [p] : []))),
  }
}

/** Money and hours of a choice, added up anew: the solver's binaries are only nearly whole. */
export function bundleWith({ additions, openings }: Bundling, chosen: ReadonlySet<number>): Bundle {
  const taken = additions.filter((_, p) => chosen.has(p))
  const needed = new Set(taken.flatMap(({ opens }) => opens))
  const ways = openings.filter(({ id }) => needed.has(id))
  const sum = (list: readonly { readonly price: number; readonly hours: number }[], of: 'price' | 'hours') =>
    list.reduce((total, one) => total + one[of], 0)
  const price = sum(taken, 'price') + sum(ways, 'price')
  return {
    parts: taken.map(({ part }) => part),
    opens: ways.map(({ id }) => id),
    price,
    hours: sum(taken, 'hours') + sum(ways, 'hours'),
    net: taken.reduce((total, { saves, mayPutIn }) => total + saves - mayPutIn, 0) - price,
  }
}
