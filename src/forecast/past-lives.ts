/**
 * What earlier lives of a part say of the scales of its modes.
 *
 * @module
 */

import { earlierPieces, lnRenewalOver } from './earlier-pieces.js'
import type { LifePart } from './life-model.js'
import type { ModeLife } from './mode-life.js'
import { type LifeEnd, massesAt, type OnsetTerms, pastTerms, type StateMasses } from './mode-likelihood.js'
import { type Ages, completeAgesEvenly, type UseTrack } from './track.js'

/** A factor of the likelihood from what is known of the past of a place, at λ = θ^(−β). */
export type PastFactor = (lambda: number) => number

/** Points of ln θ over the whole prior spread, where a mean over the prior is all that is asked for. */
const priorPoints = 21
const reach = 5

/** Mean of a likelihood over the prior spread of ln θ, times {@link normOfPrior}. */
export function overPrior(
  mode: { readonly life: ModeLife; readonly totalLogSd: number; readonly past: readonly PastFactor[] },
  terms: OnsetTerms,
): number {
  const masses: StateMasses = { sound: 0, defective: 0, failed: 0 }
  let sum = 0
  for (let k = 0; k < priorPoints; k++) {
    const z = reach * ((2 * k) / (priorPoints - 1) - 1)
    const lambda = Math.exp(-mode.life.shape * z * mode.totalLogSd)
    massesAt(terms, lambda, masses)
    const past = Math.exp(lnPastAt(mode.past, lambda))
    sum += Math.exp(-0.5 * z * z) * past * (masses.sound + masses.defective + masses.failed)
  }
  return sum
}

/** ln of the likelihood of all earlier lives at θ; `lambda` is θ^(−β). */
export function lnPastAt(past: readonly PastFactor[], lambda: number): number {
  let sum = 0
  for (const factor of past) sum += Math.log(factor(lambda))
  return sum
}

/** Σ coefficient · terms. */
function lifeFactor(
  sum: readonly { readonly terms: OnsetTerms; readonly coefficient: number }[],
): PastFactor {
  const masses: StateMasses = { sound: 0, defective: 0, failed: 0 }
  return (lambda) => {
    let value = 0
    for (const { terms, coefficient } of sum) {
      massesAt(terms, lambda, masses)
      value += coefficient * (masses.sound + masses.defective)
    }
    return value
  }
}

const tablePoints = 241
const tableReach = 7

/** ln of the likelihood of a mode's earlier lives over ln θ, less its greatest value. */
export interface PastTable {
  readonly reach: number
  readonly values: Float64Array
}

/**
 * The likelihood of a mode's earlier lives on even points, for the many lives that are played; null where there are
 * none, or where they cannot be.
 */
export function pastTable(mode: {
  readonly life: ModeLife
  readonly totalLogSd: number
  readonly past: readonly PastFactor[]
}): (PastTable & { readonly lnTop: number }) | null {
  if (mode.past.length === 0) return null
  const reach = tableReach * Math.max(mode.totalLogSd, 1e-6)
  const values = Float64Array.from({ length: tablePoints }, (_, k) => {
    const lnTheta = reach * ((2 * k) / (tablePoints - 1) - 1)
    return lnPastAt(mode.past, Math.exp(-mode.life.shape * lnTheta))
  })
  const lnTop = values.reduce((most, value) => Math.max(most, value), -Infinity)
  return Number.isFinite(lnTop) ? { reach, lnTop, values: values.map((value) => value - lnTop) } : null
}

/** Value of a table between its points, straight; end values beyond. */
export function readPast({ reach, values }: PastTable, lnTheta: number): number {
  const place = Math.min(1, Math.max(0, 0.5 + lnTheta / (2 * reach))) * (tablePoints - 1)
  const left = Math.min(tablePoints - 2, Math.floor(place))
  const part = place - left
  return part === 0 ? values[left]! : (1 - part) * values[left]! + part * values[left + 1]!
}

const none = new Float64Array(0)
/** The likelihood 1. */
const nothingSeen: OnsetTerms = {
  endY: 0,
  sound: 1,
  x: none,
  y: none,
  defective: none,
  failed: none,
  since: none,
}

/** What the earlier lives of a part, known and unknown, say of one of its modes; those that no scale allows for are left out. */
export function pastOfMode(
  part: LifePart,
  m: number,
  how: { readonly lives: readonly ModeLife[]; readonly past: UseTrack; readonly kappaLogSd: number },
): { readonly past: readonly PastFactor[]; readonly leftOut: number } {
  const life = how.lives[m]!
  const totalLogSd = Math.hypot(part.modes[m]!.logSd, how.kappaLogSd)
  const factors = pastFactors(part, m, how)
  const past = factors.filter((factor) => overPrior({ life, totalLogSd, past: [factor] }, nothingSeen) > 0)
  const unknown = unknownPieces(part, m, { ...how, shape: life.shape })
  return { past: [...past, ...unknown], leftOut: factors.length - past.length }
}

/** What it says that there were pieces before the first renewal known of. */
function unknownPieces(
  part: LifePart,
  m: number,
  how: { readonly past: UseTrack; readonly kappaLogSd: number; readonly shape: number },
): PastFactor[] {
  const pieces = earlierPieces(part, how)
  const at = pieces?.at[m] ?? null
  if (pieces === null || at === null) return []
  const ln = lnRenewalOver(pieces, at)
  return [(lambda) => Math.exp(ln(-Math.log(lambda) / how.shape))]
}

/**
 * Factors from earlier lives, equal ones gathered by no means: each is one sum of terms. Where the cause of a failure
 * is unknown: this mode's density with the others surviving, plus its survival with one of the others failing, the
 * others at their prior chance, divided by the whole so that the part's evidence is counted once over its modes.
 */
function pastFactors(
  part: LifePart,
  m: number,
  how: { readonly lives: readonly ModeLife[]; readonly past: UseTrack; readonly kappaLogSd: number },
): PastFactor[] {
  const life = how.lives[m]!
  return part.pastLives.map(({ age, ended }) => {
    const ages = completeAgesEvenly(how.past, age)
    const one = (end: LifeEnd) => lifeFactor([{ terms: pastTerms(life, { ages, end }), coefficient: 1 }])
    const id = part.modes[m]!.id
    if (ended === 'sound') return one('survived')
    if (ended === 'failed-cause-unknown') return causeUnknown(part, m, { ...how, ages })
    if ('failed' in ended) return one(ended.failed === id ? 'failed' : 'survived')
    return one(ended.defective === id ? 'defective' : 'survived')
  })
}

function causeUnknown(
  part: LifePart,
  m: number,
  how: { readonly lives: readonly ModeLife[]; readonly ages: Ages; readonly kappaLogSd: number },
): PastFactor {
  const { ages, lives } = how
  const prior = lives.map((life, k) => {
    const totalLogSd = Math.hypot(part.modes[k]!.logSd, how.kappaLogSd)
    // densities of modes on different clocks are brought to one, the calendar
    const perYear = ages.years > 0 ? (ages[life.clock] * life.pace) / ages.years : 1
    const failed = pastTerms(life, { ages, end: 'failed' })
    const survived = pastTerms(life, { ages, end: 'survived' })
    const bare = { life, totalLogSd, past: [] }
    return {
      perYear,
      failedTerms: failed,
      survivedTerms: survived,
      density: (overPrior(bare, failed) / normOfPrior) * perYear,
      survival: overPrior(bare, survived) / normOfPrior,
    }
  })
  const others = prior.filter((_, k) => k !== m)
  const allSurvive = others.reduce((product, other) => product * other.survival, 1)
  let oneFails = 0
  others.forEach((other, k) => {
    oneFails += others.reduce((product, each, j) => product * (j === k ? other.density : each.survival), 1)
  })
  const own = prior[m]!
  const whole = own.density * allSurvive + own.survival * oneFails
  if (!(whole > 0)) return lifeFactor([{ terms: own.survivedTerms, coefficient: 1 }])
  return lifeFactor([
    { terms: own.failedTerms, coefficient: (own.perYear * allSurvive) / whole },
    { terms: own.survivedTerms, coefficient: oneFails / whole },
  ])
}

const normOfPrior = Array.from({ length: priorPoints }, (_, k) => {
  const z = reach * ((2 * k) / (priorPoints - 1) - 1)
  return Math.exp(-0.5 * z * z)
}).reduce((a, b) => a + b, 0)
