/**
 * Replacement policies with closed or nearly closed answers; no part of the product.
 *
 * @module
 */

import { hazard, survival, type WeibullLife } from '../../src/forecast/lives.js'
import { gamma, lowerGammaShare } from '../../src/forecast/special-gamma.js'
import { integrate } from '../../src/forecast/special-quadrature.js'
import { weibullRenewalSeries } from './renewal.js'

export interface Costs {
  /** Of a replacement after failure. */
  readonly failure: number
  /** Of a planned one. */
  readonly planned: number
}

export interface Best {
  readonly age: number
  readonly costRate: number
}

/** ∫₀ᵀ S = η Γ(1 + 1/β) P(1/β, (T/η)^β). */
export function meanLifeWithin(life: WeibullLife, age: number): number {
  const { shape, scale } = life
  return scale * gamma(1 + 1 / shape) * lowerGammaShare({ shape: 1 / shape, at: (age / scale) ** shape })
}

/** Cost per time of replacing at failure or at an age, whichever is first: (c_f F + c_p S)/∫₀ᵀ S. */
export function ageCostRate(life: WeibullLife, policy: Costs & { readonly age: number }): number {
  const lasting = survival(life, policy.age)
  return (policy.failure * (1 - lasting) + policy.planned * lasting) / meanLifeWithin(life, policy.age)
}

/**
 * Cheapest age: h(T) ∫₀ᵀ S − F(T) = c_p/(c_f − c_p), where the cost per time is (c_f − c_p) h(T); undefined if it pays
 * to run to failure. Source: Barlow and Proschan, Mathematical Theory of Reliability (1965); recalled.
 */
export function bestAge(life: WeibullLife, costs: Costs): Best | undefined {
  if (life.shape <= 1 || costs.failure <= costs.planned) return undefined
  const goal = costs.planned / (costs.failure - costs.planned)
  const miss = (age: number): number =>
    hazard(life, age) * meanLifeWithin(life, age) - 1 + survival(life, age) - goal
  const age = rootOf(miss, { low: 1e-9 * life.scale, high: 1e3 * life.scale })
  return { age, costRate: (costs.failure - costs.planned) * hazard(life, age) }
}

/** Present value of the age policy for ever: (c_f A + c_p B)/(1 − A − B), A = ∫₀ᵀ e^(−rt) f, B = e^(−rT) S(T). */
export function agePresentValue(
  life: WeibullLife,
  policy: Costs & { readonly age: number; readonly interest: number },
): number {
  const { age, interest } = policy
  const atAge = Math.exp(-interest * age) * survival(life, age)
  // By parts, A = 1 − B − r ∫ e^(−rt) S, so that no singular density is met.
  const worn = interest * panels(age, (t) => Math.exp(-interest * t) * survival(life, t))
  const atFailure = 1 - atAge - worn
  return (policy.failure * atFailure + policy.planned * atAge) / worn
}

/** Cheapest interval of replacing at fixed times as well as at failures, (c_p + c_f M(T))/T, for scale 1. */
export function bestBlock(shape: number, costs: Costs): Best {
  const rate = (age: number): number =>
    (costs.planned + costs.failure * weibullRenewalSeries({ shape, at: age })) / age
  const age = lowestOf(rate, { low: 0.05, high: 1 })
  return { age, costRate: rate(age) }
}

/**
 * Minimal repairs, renewed at T: T = η (c_r/(c_m (β − 1)))^(1/β), cost per time β c_r/((β − 1) T).
 * Source: Barlow and Hunter, Operations Research 8 (1960); recalled.
 */
export function bestWithMinimalRepair(
  life: WeibullLife,
  costs: { readonly repair: number; readonly renewal: number },
): Best & { readonly repairs: number } {
  const { shape, scale } = life
  const age = scale * (costs.renewal / (costs.repair * (shape - 1))) ** (1 / shape)
  return { age, costRate: (shape * costs.renewal) / ((shape - 1) * age), repairs: (age / scale) ** shape }
}

/** Present value of minimal repairs over a horizon from an age, ∫₀ᴸ c h(a + t) e^(−rt) dt. */
export function minimalRepairPresentValue(
  life: WeibullLife,
  plan: { readonly cost: number; readonly interest: number; readonly horizon: number; readonly age: number },
): number {
  const { cost, interest, horizon, age } = plan
  return cost * panels(horizon, (t) => hazard(life, age + t) * Math.exp(-interest * t))
}

/** Present value of buying now and again every n years for ever, with minimal repairs between. */
export function everyNYears(
  life: WeibullLife,
  plan: {
    readonly repair: number
    readonly price: number
    readonly interest: number
    readonly years: number
  },
): number {
  const { interest, years } = plan
  const repairs = minimalRepairPresentValue(life, { cost: plan.repair, interest, horizon: years, age: 0 })
  return (plan.price + repairs) / -Math.expm1(-interest * years)
}

/** Cheapest n of {@link everyNYears}. */
export function bestEveryNYears(
  life: WeibullLife,
  plan: { readonly repair: number; readonly price: number; readonly interest: number },
): { readonly years: number; readonly presentValue: number } {
  const years = lowestOf((n) => everyNYears(life, { ...plan, years: n }), { low: 0.5, high: 200 })
  return { years, presentValue: everyNYears(life, { ...plan, years }) }
}

/** A repair limit: once a year at each age the bill is seen, then paid, or the unit replaced. */
export interface LimitPlan {
  readonly price: number
  /** Factor on what falls a year later. */
  readonly discount: number
  /** Mean bill at each age, exponential; at the last age plus one the unit is replaced. */
  readonly meanBills: readonly number[]
  /** `limit`: replace where the bill exceeds what it saves. `always mend`: only at the last age. */
  readonly rule: 'limit' | 'always mend'
}

/**
 * Value of a unit of each age for ever, V_i = E min(C + d V_{i+1}, P + d V_1), and the limit P + d (V_1 − V_{i+1}).
 * Source: Hastings, "The repair limit replacement method", Operational Research Quarterly 20 (1969); quoted.
 */
export function repairLimits(plan: LimitPlan): { readonly values: number[]; readonly limits: number[] } {
  const { price, discount, meanBills } = plan
  const last = meanBills.length
  let values = new Array<number>(last + 1).fill(0)
  for (let round = 0; round < 2000; round++) {
    const renew = price + discount * values[1]!
    const next = meanBills.map((mean, age) => {
      const keep = discount * values[age + 1]!
      if (plan.rule === 'always mend' || mean === 0) return mean + keep
      // E min(C, L) of an exponential bill is m (1 − e^(−L/m)).
      return keep + mean * -Math.expm1(-(renew - keep) / mean)
    })
    values = [...next, renew]
  }
  const limits = meanBills.map((_, age) => price + discount * (values[1]! - values[age + 1]!))
  return { values, limits }
}

function panels(until: number, integrand: (t: number) => number): number {
  const count = 64
  let sum = 0
  // Graded towards 0, where hazards and survivals of steep and of young lives bend most.
  const edge = (index: number): number => until * (index / count) ** 3
  for (let index = 0; index < count; index++)
    sum += integrate({ from: edge(index), to: edge(index + 1) }, integrand)
  return sum
}

function rootOf(miss: (x: number) => number, span: { readonly low: number; readonly high: number }): number {
  let { low, high } = span
  for (let step = 0; step < 200; step++) {
    const middle = (low + high) / 2
    if (miss(middle) < 0) low = middle
    else high = middle
  }
  return (low + high) / 2
}

function lowestOf(
  cost: (x: number) => number,
  span: { readonly low: number; readonly high: number },
): number {
  const golden = (Math.sqrt(5) - 1) / 2
  let { low, high } = span
  while (high - low > 1e-9 * high) {
    const one = high - golden * (high - low)
    const two = low + golden * (high - low)
    if (cost(one) < cost(two)) high = two
    else low = one
  }
  return (low + high) / 2
}
