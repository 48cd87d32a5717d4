/**
 * The factor κ that all scales of one set share: its grid, its posterior and the nodes a simulation draws from.
 *
 * @module
 */

import { normalDensity } from './special-normal.js'

/** Even points of ln κ, over five standard deviations to each side; one point where κ has no spread. */
export interface KappaGrid {
  readonly logSd: number
  readonly lnKappa: Float64Array
  /** ln of the prior weight of each point. */
  readonly lnPrior: Float64Array
}

/** Nodes of ln κ, their weights, and the logarithm of the mean likelihood under the prior. */
export interface KappaNodes {
  readonly kappaLog: Float64Array
  readonly kappaWeight: Float64Array
  readonly logEvidence: number
}

const gridPoints = 61
const reach = 5
const finer = 40

/** The grid for κ = exp(b + g): ln κ ~ N(0, boatLogSd² + setLogSd²). */
export function kappaGrid(spread: { readonly boatLogSd: number; readonly setLogSd: number }): KappaGrid {
  const logSd = Math.hypot(spread.boatLogSd, spread.setLogSd)
  if (logSd === 0) return { logSd, lnKappa: new Float64Array(1), lnPrior: new Float64Array(1) }
  const z = Float64Array.from({ length: gridPoints }, (_, k) => reach * ((2 * k) / (gridPoints - 1) - 1))
  return { logSd, lnKappa: z.map((at) => at * logSd), lnPrior: z.map((at) => -0.5 * at * at) }
}

/**
 * Equally likely nodes: the mean of ln κ within each of so many slices of its posterior, drawn apart about the whole
 * mean until their spread is the posterior's. Mean and variance are exact; what is lost are the tails, with eleven those
 * beyond about 1.7 standard deviations (kurtosis 2.2 for 3), so that the chance of very good and very bad sets comes
 * out low.
 */
export function kappaNodes(grid: KappaGrid, lnLikelihood: Float64Array, nodeCount = 11): KappaNodes {
  if (grid.lnKappa.length === 1) {
    return { kappaLog: Float64Array.of(0), kappaWeight: Float64Array.of(1), logEvidence: lnLikelihood[0]! }
  }
  const lnMass = lnLikelihood.map((value, k) => value + grid.lnPrior[k]!)
  const step = grid.lnKappa[1]! - grid.lnKappa[0]!
  const points = (gridPoints - 1) * finer + 1
  const place = new Float64Array(points)
  const mass = new Float64Array(points)
  const top = lnMass.reduce((most, value) => Math.max(most, value), -Infinity)
  let total = 0
  let prior = 0
  for (let i = 0; i < points; i++) {
    place[i] = grid.lnKappa[0]! + (i * step) / finer
    mass[i] = Math.exp(parabola(lnMass, i / finer) - top)
    total += mass[i]!
    prior += normalDensity(place[i]! / grid.logSd) * 2.5066282746310002
  }
  const nodes = new Float64Array(nodeCount)
  let mean = 0
  let square = 0
  let node = 0
  let room = total / nodeCount
  for (let i = 0; i < points; i++) {
    let left = mass[i]!
    mean += left * place[i]!
    square += left * place[i]! ** 2
    while (left > 0) {
      const taken = node === nodeCount - 1 ? left : Math.min(left, room)
      nodes[node]! += taken * place[i]!
      left -= taken
      room -= taken
      if (room <= 0 && node < nodeCount - 1) {
        node++
        room = total / nodeCount
      }
    }
  }
  mean /= total
  const variance = square / total - mean * mean
  let between = 0
  for (let n = 0; n < nodeCount; n++) {
    nodes[n]! /= total / nodeCount
    between += (nodes[n]! - mean) ** 2 / nodeCount
  }
  const stretch = between > 0 ? Math.sqrt(variance / between) : 1
  return {
    kappaLog: nodes.map((value) => mean + stretch * (value - mean)),
    kappaWeight: new Float64Array(nodeCount).fill(1 / nodeCount),
    logEvidence: top + Math.log(total / prior),
  }
}

/** Value between even points, by the parabola through the three nearest. */
function parabola(values: Float64Array, at: number): number {
  const middle = Math.min(values.length - 2, Math.max(1, Math.round(at)))
  const d = at - middle
  const [a, b, c] = [values[middle - 1]!, values[middle]!, values[middle + 1]!]
  return b + d * ((c - a) / 2) + d * d * ((a + c) / 2 - b)
}

/** Points of ln κ that played lives are asked at: every third of the grid, to three standard deviations. */
export function playedPoints(grid: KappaGrid): readonly number[] {
  if (grid.lnKappa.length === 1) return [0]
  const middle = (gridPoints - 1) / 2
  const side = Math.round((playedReach / reach) * middle)
  const points: number[] = []
  for (let k = middle - side; k <= middle + side; k += 3) points.push(k)
  return points
}

const playedReach = 3
const terms = 4

/**
 * The cubic in ln κ that lies nearest to noisy values, weighted: what a played part may say of κ. A part that is
 * played gives its likelihood with the noise of its lives, and over many parts that would drive κ. Beyond three
 * standard deviations, where hardly a life is played, the end value is kept.
 *
 * @param noisy one value and weight for each of {@link playedPoints}
 */
export function smoothOverKappa(
  grid: KappaGrid,
  noisy: { readonly values: Float64Array; readonly weights: Float64Array },
): Float64Array {
  const { values, weights } = noisy
  if (grid.lnKappa.length === 1) return values
  const points = playedPoints(grid)
  const rows = Array.from({ length: terms }, () => new Float64Array(terms + 1))
  points.forEach((point, i) => {
    if (!(weights[i]! > 0) || !Number.isFinite(values[i]!)) return
    const z = grid.lnKappa[point]! / grid.logSd
    for (let r = 0; r < terms; r++) {
      for (let c = 0; c < terms; c++) rows[r]![c]! += weights[i]! * z ** (r + c)
      rows[r]![terms]! += weights[i]! * z ** r * values[i]!
    }
  })
  const cubic = solve(rows)
  return grid.lnKappa.map((lnKappa) => {
    const z = Math.max(-playedReach, Math.min(playedReach, lnKappa / grid.logSd))
    return cubic.reduceRight((sum, coefficient) => sum * z + coefficient, 0)
  })
}

/** Solves a small set of symmetric equations by elimination; a coefficient that nothing determines is 0. */
function solve(rows: readonly Float64Array[]): Float64Array {
  const size = rows.length
  for (let k = 0; k < size; k++) {
    const pivot = rows[k]![k]!
    if (!(pivot > 1e-10 * rows[0]![0]!)) {
      rows[k]!.fill(0)
      continue
    }
    for (let r = k + 1; r < size; r++) {
      const factor = rows[r]![k]! / pivot
      for (let c = k; c <= size; c++) rows[r]![c]! -= factor * rows[k]![c]!
    }
  }
  const solution = new Float64Array(size)
  for (let k = size - 1; k >= 0; k--) {
    const row = rows[k]!
    if (row[k] === 0) continue
    let value = row[size]!
    for (let c = k + 1; c < size; c++) value -= row[c]! * solution[c]!
    solution[k] = value / row[k]!
  }
  return solution
}

/** ln P(n) of a Poisson count, without the factorial, which does not depend on κ. */
export function lnPoisson(count: number, mean: number): number {
  return count === 0 ? -mean : count * Math.log(Math.max(mean, 1e-12)) - mean
}
