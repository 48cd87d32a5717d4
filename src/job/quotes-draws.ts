/**
 * What offers may come to, drawn together: what they share comes out alike for all of them.
 *
 * @module
 */

import type { Amount } from '../forecast/life-model.js'
import { normalCdf, normalQuantile } from '../forecast/special-normal.js'
import { threefryUniform } from '../forecast/threefry.js'
import type { OnScope } from './quotes-scope.js'
import { priceOf } from './quotes-wait.js'

export interface Drawn {
  /** One in ten lies below, an even chance, one in ten above. */
  readonly spread: { readonly low: number; readonly middle: number; readonly high: number }
  /** Chance of being the cheapest of all. */
  readonly cheapest: number
}

/** Standard normal draws under a name. */
type Normals = (name: string) => Float64Array

/** "quot" in ASCII, so that no other draw under the same seed is the same. */
const purpose = 0x71756f74
export const drawsOfQuotes = 4000

/**
 * Spread and chance of being the cheapest, of each offer. Shared: what opening the set shows, what each piece of work that is left
 * out comes to. Own: how its bill goes past its price, and its days. A draw is a function of seed, number and the name of what is
 * drawn alone, so that neither order nor another offer moves it. Error of a chance: at most 0.5/√4000 = 0.008.
 */
export function drawTogether(list: readonly OnScope[], seed: number): Drawn[] {
  const drawn = new Map<string, Float64Array>()
  const normals: Normals = (name) => {
    const found = drawn.get(name) ?? normalsOf(name, seed)
    drawn.set(name, found)
    return found
  }
  const costs = list.map((one) => drawsOf(one, normals))
  const won = list.map(() => 0)
  for (let i = 0; i < drawsOfQuotes; i++) {
    const least = Math.min(...costs.map((values) => values[i]!))
    const winners = costs.flatMap((values, k) => (values[i] === least ? [k] : []))
    for (const k of winners) won[k]! += 1 / winners.length
  }
  return costs.map((values, k) => {
    const sorted = values.toSorted()
    const at = (share: number) => sorted[Math.floor(share * drawsOfQuotes)]!
    return {
      spread: { low: at(0.1), middle: at(0.5), high: at(0.9) },
      cheapest: won[k]! / drawsOfQuotes,
    }
  })
}

function drawsOf(
  { offer, fixed, price, overrun, besides, wait, priceOfDays }: OnScope,
  normals: Normals,
): Float64Array {
  const own = normals(`own ${offer.entry}`)
  const opened = normals('strip-down')
  const days = normals(`days ${offer.entry}`)
  const others = besides.map(({ of, amount }) => ({ amount, of: normals(of) }))
  return Float64Array.from({ length: drawsOfQuotes }, (_, i) => {
    const bill = price * at(overrun.own, own[i]!) * at(overrun.stripDown, opened[i]!)
    const top = others.reduce((sum, one) => sum + at(one.amount, one.of[i]!), 0)
    return fixed + bill + top + priceOf(priceOfDays, at(wait.days, days[i]!))
  })
}

/** An amount at a standard normal draw. */
function at(amount: Amount, z: number): number {
  if (typeof amount === 'number') return amount
  if ('median' in amount) return amount.median * Math.exp(amount.logSd * z)
  return -amount.exponentialMean * Math.log(normalCdf(-z))
}

function normalsOf(name: string, seed: number): Float64Array {
  const stream = numberOf(name)
  return Float64Array.from({ length: drawsOfQuotes }, (_, i) =>
    normalQuantile(threefryUniform(seed, purpose, i, stream)),
  )
}

/** FNV-1a of a name, 32 bits. Source: Fowler, Noll and Vo; recalled. */
function numberOf(name: string): number {
  let hash = 0x811c9dc5
  for (let i = 0; i < name.length; i++) hash = Math.imul(hash ^ name.charCodeAt(i), 0x01000193)
  return hash >>> 0
}
