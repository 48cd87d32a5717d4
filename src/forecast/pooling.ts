/**
 * What members of a family teach of a further one: partial pooling of normals.
 *
 * @module
 */

import { requireWithin } from '../units/require.js'

/** What a record says of a quantity: a normal likelihood about `mean`. A precision of 0 says nothing. */
export interface Lesson {
  readonly mean: number
  readonly precision: number
}

/** A normal belief. */
export interface Belief {
  readonly mean: number
  readonly variance: number
}

/** A record that says less than this, against a prior of precision 1, is noise of the posterior's tables. Practice. */
const leastPrecision = 0.1

/**
 * What turned a prior N(0, prior variance) into a posterior N(m, v): precision λ = 1/v − 1/prior, mean m/(v λ). A record
 * that narrows the prior by less than a tenth says nothing.
 *
 * @throws RangeError if a variance is not above 0.
 */
export function lessonOf({
  posterior,
  priorVariance,
}: {
  readonly posterior: Belief
  readonly priorVariance: number
}): Lesson {
  requireWithin('priorVariance', priorVariance, Number.MIN_VALUE, Number.MAX_VALUE, '')
  requireWithin('variance', posterior.variance, Number.MIN_VALUE, Number.MAX_VALUE, '')
  const precision = 1 / posterior.variance - 1 / priorVariance
  if (precision * priorVariance < leastPrecision) return { mean: 0, precision: 0 }
  return { mean: posterior.mean / posterior.variance / precision, precision }
}

/** The same lesson of a quantity that the one observed equals but for a normal error of its own: 1/(1/λ + variance). */
export function throughNoise({ mean, precision }: Lesson, variance: number): Lesson {
  return precision === 0 ? { mean, precision } : { mean, precision: 1 / (1 / precision + variance) }
}

/** Lessons of one and the same quantity put together: precisions add up. */
export function together(lessons: readonly Lesson[]): Lesson {
  const precision = lessons.reduce((sum, lesson) => sum + lesson.precision, 0)
  if (precision === 0) return { mean: 0, precision }
  return { mean: lessons.reduce((sum, one) => sum + one.precision * one.mean, 0) / precision, precision }
}

/** What members have in common, as a share of the variance: middles of ten slices, all equally likely beforehand. Practice. */
const shares = Array.from({ length: 10 }, (_, i) => (i + 0.5) / 10)

/** What is believed of a further member, and of what members have in common. */
export interface Further extends Belief {
  /** Mean of what they have in common. */
  readonly common: number
  /** Mean of the share of the variance that is common to them. */
  readonly share: number
}

/**
 * Members are alike but for themselves: each is o + c, o ~ N(0, ρV) common to all, c ~ N(0, (1 − ρ)V) its own, so that
 * one alone is N(0, V) whatever ρ is. ρ is not known: even over 0 to 1 beforehand.
 *
 * Given ρ, with wⱼ = (1 − ρ)V + 1/λⱼ: o has the precision P = 1/(ρV) + Σ 1/wⱼ and the mean Σ(yⱼ/wⱼ)/P; a further member
 * is N(that mean, (1 − ρ)V + 1/P); and the lessons have the density Π N(yⱼ; 0, wⱼ)·√(1/(ρV P))·exp((Σ yⱼ/wⱼ)²/(2P)).
 * Mean and variance are those of the mixture over ρ. Without a lesson they are 0 and V, to the bit.
 *
 * Source: the normal model with means that have a common normal prior, in closed form (Lindley and Smith 1972). Held:
 * recalled; the formulas are derived.
 */
export function furtherMember(lessons: readonly Lesson[], prior: { readonly variance: number }): Further {
  const { variance } = prior
  requireWithin('variance', variance, 0, Number.MAX_VALUE, '')
  const telling = lessons.filter(({ precision }) => precision > 0)
  if (telling.length === 0 || variance === 0) return { mean: 0, variance, common: 0, share: 0.5 }
  const each = shares.map((share) => givenShare(telling, { share, variance }))
  const top = Math.max(...each.map(({ lnDensity }) => lnDensity))
  const weights = each.map(({ lnDensity }) => Math.exp(lnDensity - top))
  const total = weights.reduce((a, b) => a + b, 0)
  const mean = (read: (one: (typeof each)[number]) => number) =>
    each.reduce((sum, one, i) => sum + (weights[i]! / total) * read(one), 0)
  const centre = mean(({ common }) => common)
  return {
    mean: centre,
    variance: mean((one) => one.variance + (one.common - centre) ** 2),
    common: centre,
    share: mean(({ share }) => share),
  }
}

function givenShare(
  lessons: readonly Lesson[],
  { share, variance }: { readonly share: number; readonly variance: number },
) {
  const [ofCommon, ofOwn] = [share * variance, (1 - share) * variance]
  let precision = 1 / ofCommon
  let pull = 0
  let lnDensity = 0
  for (const lesson of lessons) {
    const spread = ofOwn + 1 / lesson.precision
    precision += 1 / spread
    pull += lesson.mean / spread
    lnDensity -= 0.5 * (Math.log(spread) + lesson.mean ** 2 / spread)
  }
  lnDensity += 0.5 * (pull ** 2 / precision - Math.log(ofCommon * precision))
  return { share, common: pull / precision, variance: ofOwn + 1 / precision, lnDensity }
}
