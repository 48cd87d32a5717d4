/**
 * Many quantiles of one beta distribution at once.
 *
 * @module
 */

import { type BetaShape, betaCdf, betaQuantile } from './special-beta.js'
import { lnGamma } from './special-gamma.js'
import { gaussLegendre } from './special-quadrature.js'

/**
 * The beta distribution at the middles of `steps` equally likely slices, to a relative 1e-9.
 *
 * From both ends towards the share ½, one quantile after the next: with w = xᵃ the chance grows by
 * ∫ (1 − w^(1/a))^(b − 1) dw / (a B(a, b)), which is nearly linear, by 8 points and Newton's steps.
 */
export function betaQuantileSteps(beta: BetaShape, steps: number): Float64Array {
  const { towardsOne, towardsZero } = beta
  const out = new Float64Array(steps)
  const below = betaCdf({ ...beta, share: 0.5 })
  const left = Math.min(steps, Math.max(0, Math.ceil(below * steps - 0.5)))
  fromEnd(beta, { steps, count: left }, (i, share) => {
    out[i] = share
  })
  const mirrored = { towardsOne: towardsZero, towardsZero: towardsOne }
  fromEnd(mirrored, { steps, count: steps - left }, (i, share) => {
    out[steps - 1 - i] = 1 - share
  })
  return out
}

/** Leaves nothing of a miss on so straight a line. */
const newtonSteps = 3

function fromEnd(
  beta: BetaShape,
  slices: { readonly steps: number; readonly count: number },
  put: (i: number, share: number) => void,
): void {
  const { towardsOne: a, towardsZero: b } = beta
  const { steps, count } = slices
  if (count === 0) return
  const whole = a * Math.exp(lnGamma(a) + lnGamma(b) - lnGamma(a + b))
  const { nodes, weights } = gaussLegendre(8)
  const heightAt = (w: number) => (1 - w ** (1 / a)) ** (b - 1)
  const first = betaQuantile({ ...beta, chance: 0.5 / steps })
  put(0, first)
  // a share beyond the least number is still a plain w
  let w = first > 0 ? first ** a : (0.5 / steps) * whole
  for (let i = 1; i < count; i++) {
    const goal = whole / steps
    let next = w + goal / heightAt(w)
    for (let step = 0; step < newtonSteps; step++) {
      const half = (next - w) / 2
      let sum = 0
      for (let k = 0; k < nodes.length; k++) sum += weights[k]! * heightAt(w + half * (1 + nodes[k]!))
      next -= (half * sum - goal) / heightAt(next)
    }
    w = next
    put(i, w ** (1 / a))
  }
}
