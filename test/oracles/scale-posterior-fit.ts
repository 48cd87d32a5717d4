/**
 * The shape and scale under which past lives were likeliest, and how far either could be moved.
 *
 * @module
 */

import { hazardAhead, lifeQuantile } from '../../src/forecast/lives.js'
import { requireWithin } from '../../src/units/require.js'
import { type KnownLife, requireLives, weibullLogLikelihood } from './scale-posterior-lives.js'

/** 95 % span by the profile likelihood; an end is null where the lives set no limit on that side. */
export interface ProfileSpan {
  readonly low: number | null
  readonly high: number | null
}

export type WeibullFit =
  | {
      readonly outcome: 'fitted'
      readonly shape: number
      readonly scale: number
      /** Age by which a tenth have failed. */
      readonly b10: number
      readonly logLikelihood: number
      readonly shapeSpan: ProfileSpan
      readonly scaleSpan: ProfileSpan
      readonly b10Span: ProfileSpan
      /** From the observed information; the spans above are better with few failures. */
      readonly shapeSd: number
      readonly scaleSd: number
      readonly covariance: number
    }
  /** The likelihood still rises at the largest or smallest shape allowed, as when all failed at one age and none outlived it. */
  | {
      readonly outcome: 'shape-at-limit'
      readonly shape: number
      readonly scale: number
      readonly logLikelihood: number
    }
  /** Nothing failed, or nothing was seen to last: any scale beyond (or below) some limit will do. */
  | { readonly outcome: 'undetermined'; readonly because: 'no failures' | 'no age survived' }

/** Shapes that are searched for the likeliest. */
const shapeLimits = { low: 0.1, high: 50 }
/** Shapes that a profile may run through. */
const profileLimits = { low: 0.02, high: 200 }
/** 95 % point of χ² with one degree of freedom; derived. */
const chiSquare95 = 3.841458820694124

/**
 * Maximises {@link weibullLogLikelihood} over shape and scale.
 *
 * The scale is the likeliest at each shape ({@link likeliestScale}), so one search over ln β is left. Spans are
 * {θ : 2 (l_max − l_profile(θ)) ≤ 3.8415}, for the tenth quantile with η = B10 / 0.10536^(1/β) put in.
 *
 * @throws RangeError as {@link requireLives}.
 */
export function fitWeibull(lives: readonly KnownLife[]): WeibullFit {
  requireLives(lives)
  const because = whyUndetermined(lives)
  if (because !== undefined) return { outcome: 'undetermined', because }

  const profileOfShape = (lnShape: number): number => {
    const shape = Math.exp(lnShape)
    return weibullLogLikelihood(lives, { shape, scale: likeliestScale(lives, shape)! })
  }
  const [lowest, highest] = [Math.log(shapeLimits.low), Math.log(shapeLimits.high)]
  let best = lowest
  for (let lnShape = lowest; lnShape <= highest; lnShape += 0.1) {
    if (profileOfShape(lnShape) > profileOfShape(best)) best = lnShape
  }
  const peak = climb(profileOfShape, { start: best, step: 0.1, low: lowest, high: highest })
  const shape = Math.exp(peak.at)
  const scale = likeliestScale(lives, shape)!
  const logLikelihood = peak.height
  if (peak.at < lowest + 1e-6 || peak.at > highest - 1e-6) {
    return { outcome: 'shape-at-limit', shape, scale, logLikelihood }
  }

  const b10 = lifeQuantile({ kind: 'weibull', shape, scale }, 0.1)
  const profile = (scaleAt: (shape: number, value: number) => number) => (lnValue: number) => {
    const height = (lnShape: number): number => {
      const at = Math.exp(lnShape)
      return weibullLogLikelihood(lives, { shape: at, scale: scaleAt(at, Math.exp(lnValue)) })
    }
    return climb(height, {
      start: peak.at,
      step: 0.2,
      low: Math.log(profileLimits.low),
      high: Math.log(profileLimits.high),
    }).height
  }
  const floor = logLikelihood - chiSquare95 / 2
  return {
    outcome: 'fitted',
    shape,
    scale,
    b10,
    logLikelihood,
    shapeSpan: spanAbove(profileOfShape, { peak: shape, floor, reach: 3 }),
    scaleSpan: spanAbove(
      profile((_, value) => value),
      { peak: scale, floor, reach: 12 },
    ),
    b10Span: spanAbove(
      profile((at, value) => value / lifeQuantile({ kind: 'weibull', shape: at, scale: 1 }, 0.1)),
      { peak: b10, floor, reach: 12 },
    ),
    ...spreadAt(lives, { shape, scale }),
  }
}

/**
 * The likeliest scale at a known shape, or undefined where the lives set none.
 *
 * Without lives that failed between two looks it is closed: ((Σ t^β − Σ entry^β) / r)^(1/β), r the failures; with
 * them the score r − Λ + Σ w/(e^w − 1) falls steadily in ln λ and is solved for.
 */
export function likeliestScale(lives: readonly KnownLife[], shape: number): number | undefined {
  if (whyUndetermined(lives) !== undefined) return undefined
  // Ages are taken as fractions of the largest, so that no power of them overflows.
  const unit = Math.max(...lives.map((known) => (known.ended === 'failed-between' ? known.byAge : known.age)))
  const ahead = (from: number, to: number): number =>
    hazardAhead({ kind: 'weibull', shape, scale: unit }, { age: from, ahead: to - from })
  let failures = 0
  let exposure = 0
  const between: { readonly count: number; readonly within: number }[] = []
  for (const known of lives) {
    const { entryAge = 0, count = 1 } = known
    if (known.ended === 'failed-between') {
      exposure += count * ahead(entryAge, known.afterAge)
      between.push({ count, within: ahead(known.afterAge, known.byAge) })
    } else {
      exposure += count * ahead(entryAge, known.age)
      if (known.ended === 'failed') failures += count
    }
  }
  const score = (lnRate: number): number => {
    const rate = Math.exp(lnRate)
    let sum = failures - rate * exposure
    for (const { count, within } of between) {
      const rise = rate * within
      sum += count * (rise > 700 ? 0 : rise < 1e-300 ? 1 : rise / Math.expm1(rise))
    }
    return sum
  }
  let lnRate = Math.log(failures / exposure)
  if (between.length > 0) {
    // The score is at its highest, all failures, at rate 0, and below 0 once the failures cannot make up the exposure.
    const all = between.reduce((sum, { count }) => sum + count, failures)
    let high = Math.log(all / exposure)
    let low = high - 1
    while (score(low) < 0) low -= 4
    for (let step = 0; step < 200 && high - low > 1e-15 * (1 + Math.abs(high)); step++) {
      const middle = (low + high) / 2
      if (score(middle) > 0) low = middle
      else high = middle
    }
    lnRate = (low + high) / 2
  }
  return unit * Math.exp(-lnRate / shape)
}

/**
 * Scale that lives without a failure put below all but `1 − confidence` of doubt, at a known shape:
 *
 *     η_L = ((Σ t^β − Σ entry^β) / (−ln(1 − confidence)))^(1/β)
 *
 * Counting one failure instead is the same with a confidence of 63.2 %.
 *
 * @throws RangeError if any failed, none lived at all, or the confidence is not between 0 and 1.
 */
export function scaleLowerLimit(known: {
  readonly lives: readonly KnownLife[]
  readonly shape: number
  readonly confidence: number
}): number {
  const { lives, shape, confidence } = known
  requireLives(lives)
  requireWithin('confidence', confidence, Number.MIN_VALUE, 1 - Number.EPSILON / 2, '')
  const oneFailure: KnownLife[] = lives.map((life) => {
    if (life.ended !== 'sound') throw new RangeError(`lives must be sound; found one ${life.ended}`)
    return life
  })
  const unit = Math.max(...oneFailure.map((life) => (life.ended === 'sound' ? life.age : 0)))
  requireWithin('longest age', unit, Number.MIN_VALUE, Number.MAX_VALUE, 'of the clock')
  const exposure = -weibullLogLikelihood(oneFailure, { shape, scale: unit })
  return unit * (exposure / -Math.log1p(-confidence)) ** (1 / shape)
}

/** Highest point of a hill, by stepping up to a bracket and cutting it in the golden ratio. */
function climb(
  height: (x: number) => number,
  search: { readonly start: number; readonly step: number; readonly low: number; readonly high: number },
): { readonly at: number; readonly height: number } {
  const clamp = (x: number): number => Math.min(search.high, Math.max(search.low, x))
  let at = clamp(search.start)
  let best = height(at)
  for (const direction of [1, -1]) {
    for (let step = search.step; ; step *= 1.5) {
      const next = clamp(at + direction * step)
      const found = height(next)
      if (!(found > best)) break
      at = next
      best = found
      if (next === search.low || next === search.high) break
    }
  }
  // The last step up may have been long; the top lies within it on either side.
  let low = at
  let high = at
  for (let step = search.step; low > search.low && height(low) >= best; step *= 2) low = clamp(at - step)
  for (let step = search.step; high < search.high && height(high) >= best; step *= 2) high = clamp(at + step)
  const golden = (Math.sqrt(5) - 1) / 2
  let one = high - golden * (high - low)
  let two = low + golden * (high - low)
  let heightOne = height(one)
  let heightTwo = height(two)
  while (high - low > 1e-9) {
    if (heightOne > heightTwo) {
      high = two
      two = one
      heightTwo = heightOne
      one = high - golden * (high - low)
      heightOne = height(one)
    } else {
      low = one
      one = two
      heightOne = heightTwo
      two = low + golden * (high - low)
      heightTwo = height(two)
    }
  }
  const middle = (low + high) / 2
  const top = height(middle)
  return top >= best ? { at: middle, height: top } : { at, height: best }
}

/** Where a profile falls through the floor on either side of its peak, searched up to `reach` in the logarithm. */
function spanAbove(
  profile: (lnValue: number) => number,
  about: { readonly peak: number; readonly floor: number; readonly reach: number },
): ProfileSpan {
  const end = (direction: 1 | -1): number | null => {
    let inside = Math.log(about.peak)
    let step = 0.05
    let outside = inside + direction * step
    while (profile(outside) > about.floor) {
      if (Math.abs(outside - Math.log(about.peak)) > about.reach) return null
      inside = outside
      step *= 1.6
      outside = inside + direction * step
    }
    while (Math.abs(outside - inside) > 1e-8) {
      const middle = (inside + outside) / 2
      if (profile(middle) > about.floor) inside = middle
      else outside = middle
    }
    return Math.exp((inside + outside) / 2)
  }
  return { low: end(-1), high: end(1) }
}

/** Standard deviations and covariance from the curvature of the likelihood at its peak, by central differences. */
function spreadAt(
  lives: readonly KnownLife[],
  at: { readonly shape: number; readonly scale: number },
): { readonly shapeSd: number; readonly scaleSd: number; readonly covariance: number } {
  const h = 1e-3
  const near = (i: number, j: number): number =>
    weibullLogLikelihood(lives, { shape: at.shape * (1 + i * h), scale: at.scale * (1 + j * h) })
  const centre = near(0, 0)
  const shapeShape = -(near(1, 0) - 2 * centre + near(-1, 0)) / (h * at.shape) ** 2
  const scaleScale = -(near(0, 1) - 2 * centre + near(0, -1)) / (h * at.scale) ** 2
  const shapeScale =
    -(near(1, 1) - near(1, -1) - near(-1, 1) + near(-1, -1)) / (4 * h * h * at.shape * at.scale)
  const determinant = shapeShape * scaleScale - shapeScale ** 2
  return {
    shapeSd: Math.sqrt(scaleScale / determinant),
    scaleSd: Math.sqrt(shapeShape / determinant),
    covariance: -shapeScale / determinant,
  }
}

function whyUndetermined(lives: readonly KnownLife[]): 'no failures' | 'no age survived' | undefined {
  if (lives.every((known) => known.ended === 'sound')) return 'no failures'
  const lasted = lives.some((known) => {
    const end = known.ended === 'failed-between' ? known.afterAge : known.age
    return end > (known.entryAge ?? 0)
  })
  return lasted ? undefined : 'no age survived'
}
