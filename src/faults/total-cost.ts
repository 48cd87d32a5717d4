/**
 * What it is expected to cost until the set works: look once more, mend what is likeliest, or hand it over.
 *
 * With one cause, mending in the order of chance over cost is cheapest:
 * E = Σ_k cost_k · (1 − Σ_{j<k} p_j). A look first costs its own and then E with the chances after each outcome.
 *
 * Source: Heckerman, Breese and Rommelse, Decision-theoretic troubleshooting, Communications of the ACM 38 (3), 1995,
 * expected cost of repair and one-step look-ahead; recalled.
 *
 * @module
 */

import type { LookWorth } from './next-check.js'

/** Faults gone through one by one at most. */
const mostMends = 15

export interface MendingCosts {
  /** In the order of the tables' faults. [money] */
  readonly byFault: readonly number[]
  /** What it costs that somebody else looks for it; what mends it comes on top. [money] */
  readonly handOverFee: number
}

export interface MendingPlan {
  /** Expected until the set works. [money] */
  readonly cost: number
  /** Mended and tried one after another before the rest is handed over; none: handed over at once. */
  readonly mendFirst: readonly number[]
}

/**
 * The cheapest plan without another look: mend the first k in the order of chance over cost, each tried, then hand over.
 *
 * E(k) = Σ_{j<k} cost_j · left_j + left_k · fee + Σ_{j≥k} p_j · cost_j, with left_j = 1 − Σ_{i<j} p_i; the least of all k.
 */
export function planOfMending(chances: Float64Array, { byFault, handOverFee }: MendingCosts): MendingPlan {
  const order = bestForTheirCost(chances, byFault)
  let rest = chances.reduce((sum, chance, f) => sum + chance * byFault[f]!, 0)
  let left = 1
  let spent = 0
  let best = { cost: handOverFee + rest, count: 0 }
  for (const [k, f] of order.entries()) {
    spent += byFault[f]! * left
    left = Math.max(0, left - chances[f]!)
    rest = Math.max(0, rest - chances[f]! * byFault[f]!)
    const cost = spent + left * handOverFee + rest
    if (cost < best.cost) best = { cost, count: k + 1 }
  }
  return { cost: best.cost, mendFirst: order.slice(0, best.count) }
}

/** Expected cost when this look is taken first. */
export function costWithLook(look: LookWorth, costOfLook: number, costs: MendingCosts): number {
  return look.branches.reduce(
    (sum, { chance, after }) => sum + chance * planOfMending(after, costs).cost,
    costOfLook,
  )
}

/** The faults with the most chance for their cost, the first few in order. */
function bestForTheirCost(chances: Float64Array, byFault: readonly number[]): number[] {
  const order: number[] = []
  const worth: number[] = []
  for (let f = 0; f < chances.length; f++) {
    const own = chances[f]! / byFault[f]!
    if (order.length === mostMends && own <= worth[mostMends - 1]!) continue
    let at = order.length
    while (at > 0 && own > worth[at - 1]!) at--
    order.splice(at, 0, f)
    worth.splice(at, 0, own)
    if (order.length > mostMends) {
      order.pop()
      worth.pop()
    }
  }
  return order
}
