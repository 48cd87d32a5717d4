/**
 * Renewal theory on a grid, to judge the simulator by; no part of the product.
 *
 * @module
 */

import { gamma } from '../../src/forecast/special-gamma.js'

/** Chance that a life has ended by an age. */
export type EndedBy = (age: number) => number

/** Expected renewals by each grid time 0, h, 2h … */
export interface RenewalGrid {
  readonly step: number
  readonly expected: Float64Array
}

/**
 * M = F + F∗M by mid-points of the Riemann–Stieltjes integral:
 *
 *     M_i = (F(t_i) + Σ_{j<i} F(t_i − t_{j−1/2}) (M_j − M_{j−1}) − F(h/2) M_{i−1}) / (1 − F(h/2))
 *
 * Error of order h² for smooth lives. Part new at 0, the first installation not counted.
 */
export function renewalGrid(life: {
  readonly endedBy: EndedBy
  readonly until: number
  readonly steps: number
}): RenewalGrid {
  const { endedBy, until, steps } = life
  const step = until / steps
  const middles = Float64Array.from({ length: steps + 1 }, (_, index) => endedBy((index + 0.5) * step))
  const expected = new Float64Array(steps + 1)
  const rises = new Float64Array(steps + 1)
  const half = middles[0]!
  for (let i = 1; i <= steps; i++) {
    let sum = endedBy(i * step)
    for (let j = 1; j < i; j++) sum += middles[i - j]! * rises[j]!
    expected[i] = (sum - half * expected[i - 1]!) / (1 - half)
    rises[i] = expected[i]! - expected[i - 1]!
  }
  return { step, expected }
}

/** A grid quantity with its h² error taken out by a second grid of half the step. */
export function extrapolated(steps: number, of: (steps: number) => number): number {
  const coarse = of(steps)
  return of(2 * steps) + (of(2 * steps) - coarse) / 3
}

/** Expected renewals by `until`. */
export function renewals(life: {
  readonly endedBy: EndedBy
  readonly until: number
  readonly steps: number
}): number {
  return extrapolated(life.steps, (steps) => renewalGrid({ ...life, steps }).expected.at(-1)!)
}

/** Variance of the number of renewals by `until`: M + 2 ∫ M(t − u) dM(u) − M². */
export function renewalVariance(life: {
  readonly endedBy: EndedBy
  readonly until: number
  readonly steps: number
}): number {
  return extrapolated(life.steps, (steps) => {
    const { expected } = renewalGrid({ ...life, steps })
    const total = expected.at(-1)!
    let twice = 0
    for (let j = 1; j <= steps; j++) {
      const left = (expected[steps - j]! + expected[steps - j + 1]!) / 2
      twice += left * (expected[j]! - expected[j - 1]!)
    }
    return total + 2 * twice - total * total
  })
}

/**
 * Expected number and present value of renewals at unit cost by `until`, the first life perhaps another (aged) one:
 * M₁ = F₁ + F₁∗M, discounted at e^(−rt).
 */
export function discountedRenewals(life: {
  readonly endedBy: EndedBy
  readonly firstEndedBy?: EndedBy
  readonly until: number
  readonly steps: number
  readonly interest: number
}): { readonly expected: number; readonly presentValue: number } {
  const { endedBy, firstEndedBy = endedBy, until, interest } = life
  const both = (steps: number): { expected: number; presentValue: number } => {
    const { step, expected } = renewalGrid({ endedBy, until, steps })
    let before = 0
    let presentValue = 0
    for (let i = 1; i <= steps; i++) {
      let sum = firstEndedBy(i * step)
      for (let j = 1; j <= i; j++)
        sum += firstEndedBy((i - j + 0.5) * step) * (expected[j]! - expected[j - 1]!)
      presentValue += Math.exp(-interest * (i - 0.5) * step) * (sum - before)
      before = sum
    }
    return { expected: before, presentValue }
  }
  return {
    expected: extrapolated(life.steps, (steps) => both(steps).expected),
    presentValue: extrapolated(life.steps, (steps) => both(steps).presentValue),
  }
}

/**
 * Expected renewals of a Weibull life of scale 1 by its power series,
 *
 *     M(t) = Σ_k (−1)^(k−1) A_k t^(kβ)/Γ(1 + kβ),  g_k = Γ(kβ + 1)/k!,  A_k = g_k − Σ_{j<k} g_j A_{k−j}
 *
 * for t up to about 1.2, beyond which the terms cancel. Source: Smith and Leadbetter, Technometrics 5 (1963); recalled.
 */
export function weibullRenewalSeries(life: { readonly shape: number; readonly at: number }): number {
  const { shape, at } = life
  // Everything is divided by Γ(1 + kβ)-like growth as it goes, so that nothing overflows.
  const g: number[] = [0]
  const a: number[] = [0]
  let factorial = 1
  let sum = 0
  for (let k = 1; k <= 60; k++) {
    factorial *= k
    const gammaK = gamma(k * shape + 1)
    if (gammaK === Infinity) break
    g[k] = gammaK / factorial
    let ak = g[k]!
    for (let j = 1; j < k; j++) ak -= g[j]! * a[k - j]!
    a[k] = ak
    const term = (ak * at ** (k * shape)) / gammaK
    sum += k % 2 === 1 ? term : -term
    if (Math.abs(term) < 1e-17) break
  }
  return sum
}

/** Infinite-horizon present value of renewals at unit cost, φ/(1 − φ) with φ = E e^(−rX). */
export function endlessRenewals(laplace: number): number {
  return laplace / (1 - laplace)
}

/** E e^(−rX) of a life, by parts: 1 − r ∫ e^(−rx) S(x) dx, on `steps` mid-points up to `until`. */
export function laplaceOf(life: {
  readonly endedBy: EndedBy
  readonly until: number
  readonly steps: number
  readonly interest: number
}): number {
  const { endedBy, until, interest } = life
  const survivalPart = extrapolated(life.steps, (steps) => {
    const step = until / steps
    let sum = 0
    for (let i = 0; i < steps; i++) {
      const x = (i + 0.5) * step
      sum += Math.exp(-interest * x) * (1 - endedBy(x))
    }
    return sum * step
  })
  return 1 - interest * survivalPart
}
