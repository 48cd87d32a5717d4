/**
 * What is believed of the scale of a life: a grid over its logarithm, weighed by a likelihood.
 *
 * @module
 */

import { gaussLegendre } from '../../src/forecast/special-quadrature.js'
import { requireWithin } from '../../src/units/require.js'

/** Belief before any evidence: ln η normal. */
export interface ScalePrior {
  readonly medianScale: number
  /** τ, standard deviation of ln η; 0 where the scale is known. [–] */
  readonly logSd: number
}

/** Belief after it, as chances on even points of ln η. */
export interface ScalePosterior {
  /** ln η, rising, evenly spaced; a single point where the scale is known. */
  readonly logScales: Float64Array
  /** Sum to 1. */
  readonly chances: Float64Array
  /** ln of the mean likelihood under the prior. */
  readonly logEvidence: number
}

/** Points of the grid. */
const points = 201
/** Standard deviations of the prior on either side that the grid spans unless the evidence pulls further. */
const spread = 5
/** An end of the grid that holds more than this below the peak is moved out: the prior alone is 12.5 below at its ends. */
const endsBelow = 12
/** A peak with fewer points than {@link leastPoints} within this of it is laid out afresh, closer. */
const peakDepth = 20
const leastPoints = 24
/** Spans wider than this of ln η hold no life that a clock could tell from 0 or for ever. */
const widest = 200

/**
 * Posterior of a scale under a likelihood, on 201 even points of ln η over ±5 prior standard deviations.
 *
 * The span moves out where the evidence pulls against an end, and closes in on a peak too narrow for the points, so
 * that neither a long survivor nor a well-known life falls between them. Weights are kept as logarithms until the
 * largest is known.
 *
 * Predictive chances are means over this posterior with the part's own survival in the likelihood; a median put in
 * their place is wrong and too low.
 *
 * @throws RangeError if the prior is outside its span, or the likelihood is 0 at every scale.
 */
export function scalePosterior(belief: {
  readonly prior: ScalePrior
  /** ln of the chance of all that is known, given η; −∞ where it cannot be. */
  readonly logLikelihood: (scale: number) => number
}): ScalePosterior {
  const { prior, logLikelihood } = belief
  requireWithin('medianScale', prior.medianScale, Number.MIN_VALUE, Number.MAX_VALUE, 'of the clock')
  requireWithin('logSd', prior.logSd, 0, 10, '')
  const centre = Math.log(prior.medianScale)
  if (prior.logSd === 0) {
    return {
      logScales: Float64Array.of(centre),
      chances: Float64Array.of(1),
      logEvidence: requirePossible(logLikelihood(prior.medianScale)),
    }
  }

  const weigh = (span: Span): Grid =>
    weighGrid(span, (logScale) => {
      const z = (logScale - centre) / prior.logSd
      return logLikelihood(Math.exp(logScale)) - 0.5 * z * z - lnRootTwoPi - Math.log(prior.logSd)
    })
  let span = { from: centre - spread * prior.logSd, to: centre + spread * prior.logSd }
  let grid = weigh(span)
  for (let tries = 0; tries < 40; tries++) {
    const better = betterSpan(span, grid)
    if (better === undefined) break
    span = better
    grid = weigh(span)
  }
  requirePossible(grid.peak)
  const sum = grid.logWeights.reduce((total, weight) => total + Math.exp(weight - grid.peak), 0)
  return {
    logScales: grid.logScales,
    chances: grid.logWeights.map((weight) => Math.exp(weight - grid.peak) / sum),
    logEvidence: grid.peak + Math.log(sum * grid.step),
  }
}

/** Mean over the posterior of a function of the scale: its mean with `(scale) => scale`, a chance ahead with that chance. */
export function posteriorMean(posterior: ScalePosterior, of: (scale: number) => number): number {
  let sum = 0
  for (let index = 0; index < posterior.chances.length; index++) {
    const chance = posterior.chances[index]!
    if (chance > 0) sum += chance * of(Math.exp(posterior.logScales[index]!))
  }
  return sum
}

/**
 * The scale that is undershot with the given chance. The density between points runs through the logarithms of
 * the four nearest (a cubic), so that coarse grids give fine quantiles.
 *
 * @throws RangeError if the chance is not between 0 and 1.
 */
export function posteriorQuantile(posterior: ScalePosterior, chance: number): number {
  requireWithin('chance', chance, Number.MIN_VALUE, 1 - Number.EPSILON / 2, '')
  const { logScales, chances } = posterior
  if (logScales.length === 1) return Math.exp(logScales[0]!)
  const logs = chances.map((value) => Math.log(value))
  const cells = chances.slice(1).map((_, cell) => partOfCell(logs, { cell, share: 1 }))
  const total = cells.reduce((sum, mass) => sum + mass, 0)
  let left = chance * total
  let cell = 0
  while (cell < cells.length - 1 && left > cells[cell]!) left -= cells[cell++]!
  let [low, high] = [0, 1]
  for (let step = 0; step < 52; step++) {
    const share = (low + high) / 2
    if (partOfCell(logs, { cell, share }) < left) low = share
    else high = share
  }
  return Math.exp(logScales[cell]! + ((low + high) / 2) * (logScales[1]! - logScales[0]!))
}

const lnRootTwoPi = 0.9189385332046727

interface Span {
  readonly from: number
  readonly to: number
}

interface Grid {
  readonly logScales: Float64Array
  readonly logWeights: Float64Array
  readonly step: number
  readonly peak: number
}

function weighGrid(span: Span, logDensity: (logScale: number) => number): Grid {
  const step = (span.to - span.from) / (points - 1)
  const logScales = Float64Array.from({ length: points }, (_, index) => span.from + index * step)
  const logWeights = logScales.map(logDensity)
  return {
    logScales,
    logWeights,
    step,
    peak: logWeights.reduce((most, weight) => Math.max(most, weight), -Infinity),
  }
}

/** A span that serves the weights better, or undefined if this one will do. */
function betterSpan(span: Span, grid: Grid): Span | undefined {
  const { logScales, logWeights, peak } = grid
  const width = span.to - span.from
  if (Number.isNaN(peak) || width > widest) return undefined
  // With nothing anywhere the grid must have missed the place; a life this young or old can only be moved out to.
  const lowEnd = peak === -Infinity || logWeights[0]! > peak - endsBelow
  const highEnd = peak === -Infinity || logWeights[points - 1]! > peak - endsBelow
  if (lowEnd || highEnd) {
    return { from: lowEnd ? span.from - width / 4 : span.from, to: highEnd ? span.to + width / 4 : span.to }
  }
  const first = logWeights.findIndex((weight) => weight > peak - peakDepth)
  const last = logWeights.findLastIndex((weight) => weight > peak - peakDepth)
  if (last - first + 1 >= leastPoints) return undefined
  return { from: logScales[Math.max(0, first - 1)]!, to: logScales[Math.min(points - 1, last + 1)]! }
}

/** Integral of e^cubic over the first `share` of a cell between two points, in units of the step. */
function partOfCell(logs: Float64Array, part: { readonly cell: number; readonly share: number }): number {
  const { cell, share } = part
  const start = Math.min(Math.max(cell - 1, 0), logs.length - 4)
  const four = Array.from(logs.subarray(start, start + 4))
  const { nodes, weights } = gaussLegendre(8)
  // Where the density has died out to nothing a cubic through −∞ is none; those cells hold nothing either.
  if (four.some((value) => value === -Infinity)) return 0
  let sum = 0
  for (let index = 0; index < nodes.length; index++) {
    const t = cell - start + (share * (1 + nodes[index]!)) / 2
    sum += weights[index]! * Math.exp(cubicThrough(four, t))
  }
  return (share / 2) * sum
}

/** The cubic through values at 0, 1, 2, 3, at t. */
function cubicThrough(values: readonly number[], t: number): number {
  const [a, b, c, d] = [values[0]!, values[1]!, values[2]!, values[3]!]
  return (
    (-a * (t - 1) * (t - 2) * (t - 3)) / 6 +
    (b * t * (t - 2) * (t - 3)) / 2 -
    (c * t * (t - 1) * (t - 3)) / 2 +
    (d * t * (t - 1) * (t - 2)) / 6
  )
}

function requirePossible(logWeight: number): number {
  if (!(logWeight > -Infinity)) {
    throw new RangeError(`logLikelihood must be above −∞ at some scale; found ${logWeight} at every one`)
  }
  return logWeight
}
