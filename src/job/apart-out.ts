/**
 * The set on its way out of the boat: the largest rigid piece, whether it passes, what carries it.
 *
 * @module
 */

import type { Catalogue } from '../catalogue/catalogue.js'
import { weightKg } from '../catalogue/whole-set.js'
import type { SpaceFacts } from '../register/load-facts.js'
import type { SetFacts } from '../register/register-types.js'
import { type Opening, tightest } from '../sizing/passage.js'
import { presentSet } from '../sizing/sized-set.js'

export type Verdict = 'passes' | 'too-large' | 'cannot-tell'

export interface WayOut {
  /** The set whole, as it is bolted together: longest edge first. [mm] Usual for its rating: nobody measured it. */
  readonly edgesMm?: readonly number[]
  /** Usual for its rating. [kg] */
  readonly weightKg?: { readonly low: number; readonly typical: number; readonly high: number }
  /** The opening that is tightest for it, and by how much it is too large; below nought: so much is left. [mm] */
  readonly tightest?: { readonly opening: Opening; readonly overMm: number }
  /** Whether it passes whole. */
  readonly passage: Verdict
  /** What can be lifted on the way, as the log says. [kg] */
  readonly liftKg?: number
  /** Whether that carries it whole. */
  readonly lift: Verdict
}

/** What the log tells of the way out. A usual size that passes is no proof: measure before the first bolt. */
export function wayOutOf(
  { wholeSet, sizing }: Pick<Catalogue, 'wholeSet' | 'sizing'>,
  { facts, space }: { readonly facts: SetFacts; readonly space: SpaceFacts },
): WayOut {
  const { liftKg, wayOut: openings = [] } = space
  const set = presentSet({ wholeSet, sizing }, facts, 'present')
  const given = liftKg === undefined ? {} : { liftKg }
  if (set === undefined) return { passage: 'cannot-tell', lift: 'cannot-tell', ...given }
  const weight = weightKg(wholeSet, { ratingKW: set.ratingKW, rpm: set.rpm })
  const narrow = tightest(set.edges, openings)
  return {
    edgesMm: [...set.edges].sort((a, b) => b - a).map(Math.round),
    weightKg: {
      low: Math.round(weight.low),
      typical: Math.round(weight.typical),
      high: Math.round(weight.high),
    },
    ...(narrow === undefined ? {} : { tightest: { ...narrow, overMm: Math.round(narrow.overMm) } }),
    passage: narrow === undefined ? 'cannot-tell' : narrow.overMm <= 0 ? 'passes' : 'too-large',
    ...given,
    lift: liftKg === undefined ? 'cannot-tell' : weight.high <= liftKg ? 'passes' : 'too-large',
  }
}

/** What is to be known and done before it is lifted; practice. */
export const liftingAdvice: readonly string[] = [
  'Lift by the eyes of the maker alone, and only what each is marked for: an eye on the engine may be made for the engine without the alternator, or the other way about.',
  'No rated eye: a sling under both feet rails, spread by a bar, and the set kept from tipping; never round a manifold, the sound case or a fan.',
  'The middle of the weight lies on the engine’s side of the flange. Take the weight a hand’s breadth, look whether it hangs level, and only then on.',
  'Reckon with the highest of the weights above, with gear rated for it, and with a beam or boom that somebody has reckoned for it. A boom that holds a sail need not hold an engine.',
  'Nobody below, no hand between, and a line on the set against swinging. Gear, and no backs.',
  'Anything over what you have gear for: riggers, a yard or a crane.',
]

/** What is measured before the first bolt, each with room for it. */
export const measureOut: readonly string[] = [
  'Set whole, as it would be carried: length × width × height, mm',
  'Engine without alternator: length × width × height, mm',
  'Alternator: length × width × height, mm',
  'Narrowest opening on the way: width × height, mm',
  'Height under the beam or boom above the set, mm',
  'Weight on the plate of the set, kg',
]
