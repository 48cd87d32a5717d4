/**
 * When to stop, learnt from histories: at each date the cost of going on is fitted to what is known by then.
 *
 * @module
 */

import { fittedBy, leastSquares, normalEquations } from './least-squares.js'

/** What each history comes to, by the date at which it is stopped. */
export interface Stopping {
  /** Whole cost where it is stopped at each date, in order: [date][history]. */
  readonly stopped: readonly Float64Array[]
  /** Whole cost where it never is. */
  readonly never: Float64Array
  /** What is known at each date: [date][feature][history]. */
  readonly known: readonly (readonly Float64Array[])[]
}

/** At each date, weights of the basis whose sum, below nought, says stop. */
export interface StoppingPolicy {
  readonly scales: readonly (readonly Scale[])[]
  readonly weights: readonly Float64Array[]
}

interface Scale {
  readonly mean: number
  readonly deviation: number
}

/**
 * Least-squares Monte Carlo: from the last date back, cost of stopping − cost of going on as decided later is fitted to a
 * constant, the features, their squares and products; a history is stopped where the fit is below nought.
 *
 * Source: Longstaff and Schwartz, "Valuing American options by simulation: a simple least-squares approach", Review of
 * Financial Studies 14 (2001), 113-147. Held: recalled.
 */
export function learnStopping({ stopped, never, known }: Stopping): StoppingPolicy {
  const value = never.slice()
  const scales: (readonly Scale[])[] = []
  const weights: Float64Array[] = []
  for (let date = stopped.length - 1; date >= 0; date--) {
    const cost = stopped[date]!
    scales[date] = known[date]!.map(scaleOf)
    const basis = basisOf(known[date]!, scales[date]!)
    const gap = cost.map((stop, i) => stop - value[i]!)
    weights[date] = leastSquares(normalEquations(basis, [gap])[0]!)
    for (let i = 0; i < value.length; i++) {
      if (fittedBy(weights[date]!, basis, i) < 0) value[i] = cost[i]!
    }
  }
  return { scales, weights }
}

/** Cost of each history under a policy, best for histories that it was not learnt on; and at which date it stops, −1 never. */
export function followStopping(
  policy: StoppingPolicy,
  { stopped, never, known }: Stopping,
): { readonly cost: Float64Array; readonly date: Int32Array } {
  const cost = never.slice()
  const date = new Int32Array(never.length).fill(-1)
  for (let d = stopped.length - 1; d >= 0; d--) {
    const basis = basisOf(known[d]!, policy.scales[d]!)
    for (let i = 0; i < cost.length; i++) {
      if (fittedBy(policy.weights[d]!, basis, i) >= 0) continue
      cost[i] = stopped[d]![i]!
      date[i] = d
    }
  }
  return { cost, date }
}

function scaleOf(values: Float64Array): Scale {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0)
  return { mean, deviation: Math.sqrt(squares / values.length) || 1 }
}

function basisOf(features: readonly Float64Array[], scales: readonly Scale[]): Float64Array[] {
  const x = features.map((values, f) =>
    values.map((value) => (value - scales[f]!.mean) / scales[f]!.deviation),
  )
  const products = x.flatMap((a, f) => x.slice(f).map((b) => a.map((value, i) => value * b[i]!)))
  const count = features[0]?.length ?? 0
  return [new Float64Array(count).fill(1), ...x, ...products]
}
