import { describe, expect, it } from 'vitest'
import { kappaGrid, kappaNodes, playedPoints, smoothOverKappa } from './set-factor.js'

const grid = kappaGrid({ boatLogSd: 0.3, setLogSd: 0.4 })

describe('the set factor', () => {
  it('has one node without spread', () => {
    const none = kappaGrid({ boatLogSd: 0, setLogSd: 0 })
    const nodes = kappaNodes(none, Float64Array.of(-2))
    expect(nodes).toEqual({ kappaLog: Float64Array.of(0), kappaWeight: Float64Array.of(1), logEvidence: -2 })
  })

  it('keeps mean, spread and evidence of a normal posterior', () => {
    // prior N(0, 0.5²) × likelihood exp(−(u − 0.4)²/(2·0.2²)): conjugate, derived
    const likelihood = grid.lnKappa.map((u) => -0.5 * ((u - 0.4) / 0.2) ** 2)
    const { kappaLog, kappaWeight, logEvidence } = kappaNodes(grid, likelihood)
    const variance = 1 / (1 / 0.25 + 1 / 0.04)
    const mean = kappaLog.reduce((sum, u, n) => sum + u * kappaWeight[n]!, 0)
    const square = kappaLog.reduce((sum, u, n) => sum + (u - mean) ** 2 * kappaWeight[n]!, 0)
    expect(mean).toBeCloseTo((0.4 / 0.04) * variance, 4)
    expect(square).toBeCloseTo(variance, 4)
    expect(logEvidence).toBeCloseTo(Math.log(0.2 / Math.sqrt(0.29)) - (0.5 * 0.16) / 0.29, 3)
    expect([...kappaLog]).toEqual([...kappaLog].sort((a, b) => a - b))
  })

  it('gives back a cubic unharmed by smoothing, and its end value further out', () => {
    const cubic = (u: number) => 1 - 2 * u + 3 * u * u - 0.5 * u ** 3
    const points = playedPoints(grid)
    const values = Float64Array.from(points, (point) => cubic(grid.lnKappa[point]!))
    const smooth = smoothOverKappa(grid, { values, weights: values.map(() => 1) })
    for (const point of points) expect(smooth[point]).toBeCloseTo(cubic(grid.lnKappa[point]!), 9)
    expect(smooth[0]).toBeCloseTo(cubic(grid.lnKappa[points[0]!]!), 9)
  })
})
