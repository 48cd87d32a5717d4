/**
 * How often each fault is the cause on this set, before anything is answered.
 *
 * prior = share · clock · kind · part · work, with
 * - share: (closedCases · w / Σw + times it proved to be the cause), the mean of a Dirichlet law up to a factor
 * - clock: (x / reference)^power between clockLeast and clockMost; 1 where x is not known
 * - kind: 0 where a set of this kind cannot have it, else 1; what is not known rules nothing out
 * - part: 1 + workFactor · chance that the part stands defective already, as the forecast and the log have it
 * - work: 1 + (workFactor − 1) · e^(−hours since / workHours), by days where hours are not known, of work that is known to leave it
 *
 * Practice; the rule is told in docs/faults.md.
 *
 * @module
 */

import type { Fault, FaultRule } from '../catalogue/fault-schema.js'
import type { Fits } from '../catalogue/part-schema.js'
import type { FaultModel } from '../catalogue/read-fault-model.js'
import type { FaultClocks, RecentWork } from './clocks.js'

export interface KindFacts {
  readonly excitation?: string | undefined
  readonly governor?: string | undefined
}

export interface PriorGiven {
  readonly clocks: FaultClocks
  readonly kind: KindFacts
  /** Chance that a part stands defective or failed now; what is left out says nothing. */
  readonly defective: Readonly<Record<string, number>>
  readonly work: readonly RecentWork[]
  /** How often each fault proved to be the cause in closed cases of this set. */
  readonly closed: Readonly<Record<string, number>>
}

export interface FaultPrior {
  /** In any unit; only their proportions count. */
  readonly weight: number
  readonly clock: number
  readonly kind: number
  readonly part: number
  readonly work: number
  /** What its closed cases made of its share. */
  readonly closed: number
}

export function priorsOf(model: FaultModel, given: PriorGiven): Readonly<Record<string, FaultPrior>> {
  const { rule } = model
  const sum = model.faults.reduce((total, { weight }) => total + weight, 0)
  return Object.fromEntries(
    model.faults.map((fault) => {
      const share = (rule.closedCases * fault.weight) / sum
      const closed = (share + (given.closed[fault.id] ?? 0)) / share
      const clock = clockFactor(fault, given.clocks[fault.id], rule)
      const kind = mayHave(fault.fits, given.kind) ? 1 : 0
      const part = partFactor(fault, given.defective, rule)
      const work = workFactor(fault, given.work, rule)
      return [
        fault.id,
        { weight: share * closed * clock * kind * part * work, clock, kind, part, work, closed },
      ]
    }),
  )
}

/** The weights alone, as inference takes them. */
export function weightsOf(priors: Readonly<Record<string, FaultPrior>>): Record<string, number> {
  return Object.fromEntries(Object.entries(priors).map(([fault, { weight }]) => [fault, weight]))
}

/** (x / reference)^power, clamped. */
export function clockFactor(
  { clock }: Pick<Fault, 'clock'>,
  reached: number | undefined,
  { clockLeast, clockMost }: Pick<FaultRule, 'clockLeast' | 'clockMost'>,
): number {
  if (clock === undefined || reached === undefined) return 1
  return Math.min(clockMost, Math.max(clockLeast, (reached / clock.reference) ** clock.power))
}

function mayHave(fits: Fits | undefined, kind: KindFacts): boolean {
  if (fits === undefined) return true
  const { excitation, governor } = fits
  return (
    (excitation === undefined ||
      kind.excitation === undefined ||
      excitation.some((one) => one === kind.excitation)) &&
    (governor === undefined || kind.governor === undefined || governor === kind.governor)
  )
}

function partFactor({ parts }: Fault, defective: PriorGiven['defective'], rule: FaultRule): number {
  const chance = Math.max(0, ...parts.map(({ part }) => defective[part] ?? 0))
  return 1 + rule.workFactor * Math.min(1, chance)
}

function workFactor({ afterWork }: Fault, work: readonly RecentWork[], rule: FaultRule): number {
  const fresh = work.map((done) => {
    const leaves = afterWork.some(({ part, did }) => part === done.part && did.includes(done.did))
    if (!leaves) return 0
    return done.hoursSince === undefined
      ? Math.exp(-done.daysSince / rule.workDays)
      : Math.exp(-done.hoursSince / rule.workHours)
  })
  return 1 + (rule.workFactor - 1) * Math.max(0, ...fresh)
}
