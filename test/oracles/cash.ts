/**
 * Streams of failures and what they cost, in closed form; no part of the product.
 *
 * @module
 */

/** Present value of a Poisson stream of unit costs, λ (1 − e^(−rT))/r, and its standard deviation. */
export function poissonStream(stream: {
  readonly rate: number
  readonly interest: number
  readonly horizon: number
}): { mean: number; sd: number } {
  const { rate, interest, horizon } = stream
  return {
    mean: rate * discountedTime(interest, horizon),
    sd: Math.sqrt(rate * discountedTime(2 * interest, horizon)),
  }
}

/** ∫₀ᵀ e^(−rt) dt, whole at r = 0. */
export function discountedTime(interest: number, horizon: number): number {
  return interest === 0 ? horizon : -Math.expm1(-interest * horizon) / interest
}

/**
 * Rates of failure where each failure brings on others with given chances, each hit counted: λ (I − P)⁻¹, for parts
 * listed so that only earlier ones bring on later ones.
 */
export function cascadeRates(own: readonly number[], chances: readonly (readonly number[])[]): number[] {
  const rates: number[] = []
  own.forEach((rate, part) => {
    rates.push(rate + rates.reduce((sum, cause, from) => sum + cause * chances[from]![part]!, 0))
  })
  return rates
}

/** Exponential up and down times, starting up. */
export function alternating(set: {
  readonly meanUp: number
  readonly meanDown: number
  readonly window: number
}): {
  availability: number
  upAt: (time: number) => number
  downTime: number
  failures: number
} {
  const [fail, mend] = [1 / set.meanUp, 1 / set.meanDown]
  const availability = mend / (fail + mend)
  const upTime = availability * set.window + (1 - availability) * discountedTime(fail + mend, set.window)
  return {
    availability,
    upAt: (time) => availability + (1 - availability) * Math.exp(-(fail + mend) * time),
    downTime: set.window - upTime,
    failures: fail * upTime,
  }
}

/** Share of time that a set of parts is up, where the others stand still while one is down: 1/(1 + Σ λd). */
export function seriesAvailability(
  parts: readonly { readonly meanUp: number; readonly meanDown: number }[],
): number {
  return 1 / (1 + parts.reduce((sum, { meanUp, meanDown }) => sum + meanDown / meanUp, 0))
}

/** Present values for ever of unit repairs and of unit-rate down time, exponential up and down times, starting up. */
export function endlessRepairs(set: {
  readonly fail: number
  readonly mend: number
  readonly interest: number
}): {
  repairs: number
  downTime: number
} {
  const { fail, mend, interest } = set
  const cycle = (fail / (fail + interest)) * (mend / (mend + interest))
  const repairs = fail / (fail + interest) / (1 - cycle)
  return { repairs, downTime: repairs / (mend + interest) }
}

/** Chance of a Poisson number of events being `count`. */
export function poissonChance(mean: number, count: number): number {
  let chance = Math.exp(-mean)
  for (let k = 1; k <= count; k++) chance *= mean / k
  return chance
}

/** Times at which tasks with given periods fall due up to a horizon, and how many times that is at least one. */
export function visits(periods: readonly number[], horizon: number): { tasks: number[]; visits: number } {
  const times = periods.map((period) =>
    Array.from({ length: Math.floor(horizon / period + 1e-9) }, (_, index) => (index + 1) * period),
  )
  return {
    tasks: times.map((due) => due.length),
    visits: new Set(times.flat().map((time) => time.toFixed(6))).size,
  }
}
