/**
 * How long it pays to keep a set: the service life whose even yearly payment is least.
 *
 * @module
 */

import { type Estimate, equivalentPerYear } from './summary.js'

export interface ServiceLife {
  readonly years: number
  /** Even payment a year, going on all the time, that is worth all that is paid over that life less what the set then fetches. */
  readonly costPerYear: number
  /** One standard error of it. */
  readonly error: number
}

/** Lives by their cost, and the one of least cost. */
export interface EconomicLife {
  readonly lives: readonly ServiceLife[]
  readonly best: ServiceLife
}

/**
 * Economic life: the n of least A_n = PV_n·r/(1 − e^(−rn)), PV_n all that is paid over n years and the resale then taken off,
 * discounted continuously at r.
 *
 * Source: any textbook of engineering economy, equivalent annual cost, such as Newnan, Eschenbach and Lavelle. Held: recalled.
 */
export function economicLife(
  presentValues: readonly { readonly years: number; readonly presentValue: Estimate }[],
  perYear: number,
): EconomicLife {
  const lives = presentValues.map(({ years, presentValue }) => ({
    years,
    costPerYear: equivalentPerYear({ presentValue: presentValue.mean, perYear, years }),
    error: equivalentPerYear({ presentValue: presentValue.standardError, perYear, years }),
  }))
  return { lives, best: lives.reduce((best, one) => (one.costPerYear < best.costPerYear ? one : best)) }
}
