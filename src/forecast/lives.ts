/**
 * Weibull and lognormal lives: how long a part or a defect lasts, and how much longer one that has lasted this long.
 *
 * Ages are on whatever clock the life is stated in (running hours, years, starts); nothing here asks which.
 * A life handed in is trusted; {@link requireLife} checks one that comes from outside.
 *
 * @module
 */

import { requireWithin } from '../units/require.js'
import { gamma, scaledUpperGamma } from './special-gamma.js'
import { lnNormalCdf, normalCdf, normalQuantile, scaledNormalTail } from './special-normal.js'

/** A life with survival exp(−(t/η)^β). */
export interface WeibullLife {
  readonly kind: 'weibull'
  /** β: below 1 early faults, 1 pure chance, above 1 wear. [–] */
  readonly shape: number
  /** η, the age that 36.8 % outlive. [clock of the life] */
  readonly scale: number
}

/** A life whose logarithm is normal. */
export interface LognormalLife {
  readonly kind: 'lognormal'
  /** The age that half outlive. [clock of the life] */
  readonly median: number
  /** Standard deviation of the logarithm; 0 where every life is the median, which then has no density. [–] */
  readonly logSd: number
}

export type Life = WeibullLife | LognormalLife

/** From a detectable defect to failure; `none` where the defect is the failure. */
export type Delay = Life | { readonly kind: 'none' }

/**
 * Refuses a life outside the span this folder is tested for.
 *
 * @throws RangeError unless the shape is 0.2 to 20, the log-sd 0 to 5 and the scale or median above 0 and finite.
 */
export function requireLife(life: Life): void {
  if (life.kind === 'weibull') {
    requireWithin('shape', life.shape, 0.2, 20, '')
    requireWithin('scale', life.scale, Number.MIN_VALUE, Number.MAX_VALUE, '')
  } else {
    requireWithin('logSd', life.logSd, 0, 5, '')
    requireWithin('median', life.median, Number.MIN_VALUE, Number.MAX_VALUE, '')
  }
}

/** Chance of outliving `age`: exp(−(t/η)^β), or Φ(−z) with z = ln(t/median)/σ. */
export function survival(life: Life, age: number): number {
  return life.kind === 'weibull'
    ? Math.exp(-cumulativeHazard(life, age))
    : normalCdf(-standardised(life, age))
}

/** Cumulative hazard −ln S(t): (t/η)^β, or −ln Φ(−z). */
export function cumulativeHazard(life: Life, age: number): number {
  return life.kind === 'weibull' ? (age / life.scale) ** life.shape : -lnNormalCdf(-standardised(life, age))
}

/**
 * Hazard h(t) = f(t)/S(t), the rate of failing of those still sound. [1 / clock]
 *
 * Infinite at age 0 for Weibull shapes below 1.
 */
export function hazard(life: Life, age: number): number {
  if (life.kind === 'weibull') return (life.shape / life.scale) * (age / life.scale) ** (life.shape - 1)
  return age === 0 ? 0 : Math.exp(logDensity(life, age) + cumulativeHazard(life, age))
}

/** ln f(t), the logarithm of the density. [ln 1/clock] */
export function logDensity(life: Life, age: number): number {
  if (life.kind === 'weibull') {
    if (age === 0) return life.shape === 1 ? -Math.log(life.scale) : life.shape < 1 ? Infinity : -Infinity
    const lnRatio = Math.log(age / life.scale)
    return Math.log(life.shape / life.scale) + (life.shape - 1) * lnRatio - Math.exp(life.shape * lnRatio)
  }
  if (age === 0) return -Infinity
  const z = standardised(life, age)
  return -0.5 * z * z - lnRootTwoPi - Math.log(life.logSd * age)
}

/**
 * Age by which the given chance of lives have ended: η (−ln(1 − p))^(1/β), or median · e^(σ Φ⁻¹(p)).
 *
 * @throws RangeError if the chance is outside 0 to 1.
 */
export function lifeQuantile(life: Life, chance: number): number {
  requireWithin('chance', chance, 0, 1, '')
  if (life.kind === 'weibull') return life.scale * (-Math.log1p(-chance)) ** (1 / life.shape)
  return life.median * Math.exp(life.logSd * normalQuantile(chance))
}

/** Mean life: η Γ(1 + 1/β), or median · e^(σ²/2). [clock of the life] */
export function meanLife(life: Life): number {
  if (life.kind === 'weibull') return life.scale * gamma(1 + 1 / life.shape)
  return life.median * Math.exp(0.5 * life.logSd * life.logSd)
}

/** A life that has reached an age, and a span of the same clock from then on. */
export interface AgedSpan {
  readonly age: number
  readonly ahead: number
}

/**
 * Rise of the cumulative hazard over the span: H(t + x) − H(t).
 *
 * For a Weibull life ((t+x)/η)^β − (t/η)^β, in the form (t/η)^β (e^(β ln(1 + x/t)) − 1) where the difference would
 * lose digits. Everything about a life that has reached an age follows from it.
 */
export function hazardAhead(life: Life, span: AgedSpan): number {
  const { age, ahead } = span
  if (life.kind === 'lognormal' || ahead > age) {
    const used = cumulativeHazard(life, age)
    return used === Infinity ? Infinity : cumulativeHazard(life, age + ahead) - used
  }
  return age === 0 ? 0 : cumulativeHazard(life, age) * Math.expm1(life.shape * Math.log1p(ahead / age))
}

/** Chance that a life which has reached `age` lasts `ahead` more. */
export function residualSurvival(life: Life, span: AgedSpan): number {
  return Math.exp(-hazardAhead(life, span))
}

/** Chance that a life which has reached `age` ends within `ahead`; keeps its digits however small. */
export function chanceOfEnding(life: Life, span: AgedSpan): number {
  return -Math.expm1(-hazardAhead(life, span))
}

/**
 * How much longer a life which has reached `age` lasts, with the given chance of ending sooner.
 *
 * Weibull: η (z − ln(1 − p))^(1/β) − t with z = (t/η)^β, at high ages in the form t (e^(ln(1 − ln(1−p)/z)/β) − 1).
 * Lognormal: where Φ(−z) has fallen to (1 − p) Φ(−z₀).
 *
 * @throws RangeError if the chance is outside 0 to 1.
 */
export function residualQuantile(life: Life, at: { readonly age: number; readonly chance: number }): number {
  const { age, chance } = at
  requireWithin('chance', chance, 0, 1, '')
  const draw = -Math.log1p(-chance)
  if (life.kind === 'weibull') {
    const used = cumulativeHazard(life, age)
    if (draw > used) return life.scale * (used + draw) ** (1 / life.shape) - age
    return used === 0 ? 0 : age * Math.expm1(Math.log1p(draw / used) / life.shape)
  }
  if (age === 0 || chance === 1) return lifeQuantile(life, chance)
  const z = standardised(life, age)
  return age * Math.expm1(life.logSd * (-normalQuantileOfLog(lnNormalCdf(-z) - draw) - z))
}

/**
 * Mean of how much longer a life which has reached `age` lasts. [clock of the life]
 *
 * - Weibull: (η/β) e^z Γ(1/β, z), z = (t/η)^β;
 * - lognormal: mean · Φ(σ − z)/Φ(−z) − t, with z = ln(t/median)/σ, beyond z = σ in the form
 *   t (M(z − σ)/M(z) − 1), M Mills' ratio, in which the exponentials cancel.
 */
export function meanResidualLife(life: Life, age: number): number {
  if (life.kind === 'weibull') {
    const used = cumulativeHazard(life, age)
    return (life.scale / life.shape) * scaledUpperGamma({ shape: 1 / life.shape, at: used })
  }
  const z = standardised(life, age)
  if (z > life.logSd) return age * (scaledNormalTail(z - life.logSd) / scaledNormalTail(z) - 1)
  return (meanLife(life) * normalCdf(life.logSd - z)) / normalCdf(-z) - age
}

/** What people say of a price or a life when asked for three figures. */
export interface ThreePoints {
  readonly low: number
  readonly typical: number
  readonly high: number
}

/** Standard normal point with 10 % above it; derived. */
const tenPercentPoint = 1.2815515655446004

/**
 * The lognormal with the typical figure as its median and the low and high ones as its 10 % and 90 % points, as
 * nearly as two numbers can meet three: σ = ln(high/low) / (2 · 1.2816). Practice.
 *
 * @throws RangeError unless 0 < low ≤ typical ≤ high and low < high.
 */
export function lognormalFromThree(points: ThreePoints): LognormalLife {
  const { low, typical, high } = points
  requireWithin('low', low, Number.MIN_VALUE, Number.MAX_VALUE, '')
  requireWithin('typical', typical, low, high, '')
  if (!(high > low)) throw new RangeError(`high must be above low; found ${high}`)
  return { kind: 'lognormal', median: typical, logSd: Math.log(high / low) / (2 * tenPercentPoint) }
}

const lnRootTwoPi = 0.9189385332046727

function standardised(life: LognormalLife, age: number): number {
  // Of a life without spread all end at the median, and none before it.
  if (life.logSd === 0) return age < life.median ? -Infinity : Infinity
  return Math.log(age / life.median) / life.logSd
}

/** The z with ln Φ(z) given; Newton's steps from the far-tail guess where the chance itself is out of range. */
function normalQuantileOfLog(lnChance: number): number {
  if (lnChance > -0.6) return -normalQuantile(-Math.expm1(lnChance))
  if (lnChance > -600) return normalQuantile(Math.exp(lnChance))
  let z = -Math.sqrt(-2 * lnChance)
  for (let step = 0; step < 20; step++) {
    const slope = 1 / (scaledNormalTail(-z) * 2.5066282746310002)
    const change = (lnNormalCdf(z) - lnChance) / slope
    z -= change
    if (Math.abs(change) < 1e-15 * Math.abs(z)) break
  }
  return z
}
