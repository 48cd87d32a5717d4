/**
 * Inspection with constant rates, in closed form; no part of the product.
 *
 * @module
 */

/** Rates of a defect arising (λ) and of a defect failing (μ). */
export interface Rates {
  readonly defect: number
  readonly failure: number
}

/** Chances of being sound, defective and failed by a time; at equal rates the defective share is λT e^(−λT). */
export function statesAt(rates: Rates, time: number): { good: number; defective: number; failed: number } {
  const good = Math.exp(-rates.defect * time)
  const defective = rates.defect * time * good * meanDecay((rates.failure - rates.defect) * time)
  return { good, defective, failed: 1 - good - defective }
}

/** Inspections that looked sound, each missing a defect with its own chance, stepped through one by one. */
export function afterSoundLooks(
  rates: Rates,
  record: {
    readonly looks: readonly { readonly at: number; readonly detection: number }[]
    readonly falseAlarm: number
    readonly now: number
    readonly ahead: number
  },
): { good: number; defective: number; evidence: number; failsAhead: number } {
  let [good, defective, time] = [1, 0, 0]
  const pass = (until: number): void => {
    const step = statesAt(rates, until - time)
    defective = good * step.defective + defective * Math.exp(-rates.failure * (until - time))
    good *= step.good
    time = until
  }
  for (const look of record.looks) {
    pass(look.at)
    good *= 1 - record.falseAlarm
    defective *= 1 - look.detection
  }
  pass(record.now)
  const evidence = good + defective
  const ahead = statesAt(rates, record.ahead)
  const fails = good * ahead.failed + defective * -Math.expm1(-rates.failure * record.ahead)
  return { good, defective, evidence, failsAhead: fails / evidence }
}

/** One defect at a time, inspections every T of the part's own age, a new part on finding or failing. */
export function inspectionCycle(
  rates: Rates,
  plan: { readonly every: number; readonly detection: number },
): { fails: number; found: number; meanCycle: number } {
  const { every, detection } = plan
  const { defect, failure } = rates
  const lasting = Math.exp(-failure * every)
  // I: chance that a defect arising within an interval is still one at its end.
  const still =
    (defect * every * Math.exp(-defect * every) * meanDecay((failure - defect) * every)) /
    -Math.expm1(-defect * every)
  const found = (detection * still) / (1 - (1 - detection) * lasting)
  // While defective a part fails at rate μ, so that the mean time spent so is the chance of failing over μ.
  const meanCycle = 1 / defect + (1 - found) / failure
  return { fails: 1 - found, found, meanCycle }
}

/** Share of many small defects, arriving as a Poisson stream, that fail before an inspection finds them. */
export function shareFailing(plan: {
  readonly failure: number
  readonly every: number
  readonly detection: number
}): number {
  const { failure, every, detection } = plan
  const lasting = Math.exp(-failure * every)
  return 1 - (detection * -Math.expm1(-failure * every)) / (failure * every * (1 - (1 - detection) * lasting))
}

/** Share of time down: (k T b d_f + d_s)/(T + d_s), defects arriving at rate k. */
export function downShare(plan: {
  readonly arrivals: number
  readonly failure: number
  readonly detection: number
  readonly downPerFailure: number
  readonly downPerInspection: number
  readonly every: number
}): number {
  const failing = plan.arrivals * plan.every * shareFailing(plan)
  return (failing * plan.downPerFailure + plan.downPerInspection) / (plan.every + plan.downPerInspection)
}

/** (1 − e^(−x))/x, whole at 0. */
function meanDecay(x: number): number {
  return x === 0 ? 1 : -Math.expm1(-x) / x
}
