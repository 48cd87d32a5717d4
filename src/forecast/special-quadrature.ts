/**
 * Gauss–Legendre quadrature.
 *
 * @module
 */

/** Places and weights of one rule on −1 to 1. */
export interface QuadratureRule {
  readonly nodes: Float64Array
  readonly weights: Float64Array
}

/** One panel of an integral. */
export interface Panel {
  readonly from: number
  readonly to: number
}

const rules = new Map<number, QuadratureRule>()

/**
 * The Gauss–Legendre rule with `points` places: exact for polynomials up to degree 2 · points − 1.
 *
 * Places are the zeros of the Legendre polynomial by Newton's steps, weights 2 / ((1 − x²) P′(x)²); kept once made.
 */
export function gaussLegendre(points: 8 | 16 | 20): QuadratureRule {
  const known = rules.get(points)
  if (known !== undefined) return known
  const made = legendreRule(points)
  rules.set(points, made)
  return made
}

/** ∫ over the panel of `integrand`, with one rule of 16 points. */
export function integrate(panel: Panel, integrand: (x: number) => number): number {
  const { nodes, weights } = gaussLegendre(16)
  const middle = (panel.from + panel.to) / 2
  const half = (panel.to - panel.from) / 2
  let sum = 0
  for (let index = 0; index < nodes.length; index++)
    sum += weights[index]! * integrand(middle + half * nodes[index]!)
  return half * sum
}

function legendreRule(points: number): QuadratureRule {
  const nodes = new Float64Array(points)
  const weights = new Float64Array(points)
  for (let index = 0; index < points / 2; index++) {
    let x = Math.cos((Math.PI * (index + 0.75)) / (points + 0.5))
    let slope = 1
    for (let step = 0; step < 8; step++) {
      let last = 1
      let value = x
      for (let degree = 2; degree <= points; degree++) {
        const next = ((2 * degree - 1) * x * value - (degree - 1) * last) / degree
        last = value
        value = next
      }
      slope = (points * (last - x * value)) / (1 - x * x)
      x -= value / slope
    }
    nodes[index] = -x
    nodes[points - 1 - index] = x
    weights[index] = 2 / ((1 - x * x) * slope * slope)
    weights[points - 1 - index] = weights[index]!
  }
  return { nodes, weights }
}
