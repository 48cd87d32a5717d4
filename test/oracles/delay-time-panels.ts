/**
 * Averages over the age at which a defect arises, laid out once so that they cost little at each scale.
 *
 * With s = (x/T)^β and λ = (T/η)^β an average over a Weibull onset becomes a Laplace transform,
 *
 *     ∫ fx(x) g(x) dx = ∫ g λ e^(−λs) ds
 *
 * in which the scale η stands only in λ. Places s and factors w·g are worked out once; a scale then costs one
 * exponential a place.
 *
 * @module
 */

import type { Delay } from '../../src/forecast/lives.js'
import { gaussLegendre } from '../../src/forecast/special-quadrature.js'

/** A weight g(x) over onset ages, ready to be averaged at any scale. */
export interface OnsetAverage {
  readonly shape: number
  /** The age T that the places are fractions of. [clock of the mode] */
  readonly unitAge: number
  /** Places s = (x/T)^β, and at each the weight g times the width it stands for. */
  readonly places: Float64Array
  readonly factors: Float64Array
  /** Spans of s over which g is one number: `blocks[3i]` to `blocks[3i + 1]`, g = `blocks[3i + 2]`. */
  readonly blocks: Float64Array
}

/** A stretch of onset ages over which g is smooth inside. */
export interface OnsetPiece {
  readonly fromAge: number
  readonly toAge: number
  readonly weight: (onsetAge: number) => number
}

/** Ages at which g has kinks of the delay's making: it depends on `untilAge` less the onset age. */
export interface DelayKink {
  readonly untilAge: number
  readonly delay: Delay
}

/** Ratio of neighbouring panel edges, in the place s at the left end and in the age elsewhere. */
const panelRatio = 4

/**
 * Lays out the average of a weight over onset ages from 0 to `unitAge`, ascending pieces without overlap.
 *
 * Panels of 16 points, graded towards onset age 0 (geometric in s, so that any scale down to a hundredth of the age
 * is resolved) and, below each kink, towards the ages at which the delay's survival bends.
 */
export function onsetAverage(layout: {
  readonly shape: number
  readonly unitAge: number
  readonly pieces: readonly OnsetPiece[]
  readonly kinks: readonly DelayKink[]
}): OnsetAverage {
  const { shape, unitAge, pieces, kinks } = layout
  const marks = [...leftMarks({ shape, unitAge }), ...kinks.flatMap((kink) => kinkMarks(kink))]
  marks.sort((one, other) => one - other)
  const { nodes, weights } = gaussLegendre(16)
  const places: number[] = []
  const factors: number[] = []
  const blocks: number[] = []
  for (const { fromAge, toAge, weight } of pieces) {
    const edges = [fromAge, ...marks.filter((mark) => mark > fromAge && mark < toAge), toAge]
    for (let panel = 0; panel + 1 < edges.length; panel++) {
      const [left, right] = [edges[panel]!, edges[panel + 1]!]
      if (!(right - left > 1e-15 * right)) continue
      const from = (left / unitAge) ** shape
      const to = (right / unitAge) ** shape
      if (left === 0) {
        blocks.push(0, to, weight(right / 2))
        continue
      }
      for (let index = 0; index < nodes.length; index++) {
        const place = (from + to) / 2 + ((to - from) / 2) * nodes[index]!
        const onsetAge = Math.min(right, Math.max(left, unitAge * place ** (1 / shape)))
        const factor = weights[index]! * ((to - from) / 2) * weight(onsetAge)
        if (factor === 0) continue
        places.push(place)
        factors.push(factor)
      }
    }
  }
  return {
    shape,
    unitAge,
    places: Float64Array.from(places),
    factors: Float64Array.from(factors),
    blocks: Float64Array.from(blocks),
  }
}

/** An average of nothing. */
export function emptyAverage(layout: { readonly shape: number; readonly unitAge: number }): OnsetAverage {
  return { ...layout, places: new Float64Array(), factors: new Float64Array(), blocks: new Float64Array() }
}

/** The average with g one number between two onset ages and nothing elsewhere: the onset's own chance of lying there. */
export function blockAverage(layout: {
  readonly shape: number
  readonly unitAge: number
  readonly spans: readonly { readonly fromAge: number; readonly toAge: number; readonly weight: number }[]
}): OnsetAverage {
  const { shape, unitAge, spans } = layout
  const blocks = spans
    .filter(({ weight }) => weight > 0)
    .flatMap(({ fromAge, toAge, weight }) => [
      (fromAge / unitAge) ** shape,
      (toAge / unitAge) ** shape,
      weight,
    ])
  return { ...emptyAverage({ shape, unitAge }), blocks: Float64Array.from(blocks) }
}

/**
 * Logarithm of the average at a scale η; −∞ if nothing is there.
 *
 * The largest exponential is taken out first, so that small scales do not underflow.
 */
export function lnAverage(average: OnsetAverage, scale: number): number {
  const { places, factors, blocks } = average
  const rate = (average.unitAge / scale) ** average.shape
  let least = places.length > 0 ? places[0]! : Infinity
  for (let index = 0; index < blocks.length; index += 3) least = Math.min(least, blocks[index]!)
  if (least === Infinity) return -Infinity

  let sum = 0
  for (let index = 0; index < places.length; index++) {
    const exponent = rate * (places[index]! - least)
    // Places ascend; past this none of the rest can reach the sum.
    if (exponent > 745) break
    sum += factors[index]! * Math.exp(-exponent)
  }
  sum *= rate
  for (let index = 0; index < blocks.length; index += 3) {
    const from = blocks[index]!
    const share = -Math.expm1(-rate * (blocks[index + 1]! - from))
    sum += blocks[index + 2]! * Math.exp(-rate * (from - least)) * share
  }
  return Math.log(sum) - rate * least
}

/** Panel edges towards onset age 0, where the density may be singular and small scales crowd. */
function leftMarks({ shape, unitAge }: { readonly shape: number; readonly unitAge: number }): number[] {
  // At a scale of T/100 the rate is 100^β; below the last mark no more than 1e−10 of the lives may begin.
  const lowest = 1e-10 / 100 ** shape
  const marks: number[] = []
  for (let place = 1 / panelRatio; place > lowest / panelRatio; place /= panelRatio) {
    marks.push(unitAge * place ** (1 / shape))
  }
  return marks
}

/** Panel edges below `untilAge` where survival of the delay bends. */
function kinkMarks({ untilAge, delay }: DelayKink): number[] {
  return delayMarks(delay)
    .map((since) => untilAge - since)
    .filter((mark) => mark > 0)
}

/** Times since onset between which survival of the delay is smooth to a 16-point rule. */
function delayMarks(delay: Delay): number[] {
  if (delay.kind === 'none') return []
  const marks: number[] = []
  if (delay.kind === 'lognormal') {
    if (delay.logSd === 0) return [delay.median]
    // From 6.5 sd below the median (survival is 1 to 4e−11) to 8 above, in steps of at most 2.5 sd.
    const steps = Math.ceil((14.5 * delay.logSd) / Math.min(Math.log(panelRatio), 2.5 * delay.logSd))
    for (let step = 0; step <= steps; step++) {
      marks.push(delay.median * Math.exp(delay.logSd * (-6.5 + (14.5 * step) / steps)))
    }
    return marks
  }
  // From a cumulative hazard that hardly shows to 40, each panel at most fourfold in age and in hazard.
  const lowest = delay.shape < 1 ? 1e-12 : 1e-7
  const span = Math.log(40 / lowest) / delay.shape
  const steps = Math.ceil(span / Math.min(Math.log(panelRatio), Math.log(panelRatio) / delay.shape))
  for (let step = 0; step <= steps; step++) {
    marks.push(delay.scale * (40 * Math.exp((-span * delay.shape * step) / steps)) ** (1 / delay.shape))
  }
  return marks
}
