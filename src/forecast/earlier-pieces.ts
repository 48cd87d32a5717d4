/**
 * What it says of a part's modes that the first renewal known of was not its first life: earlier pieces, of which
 * nothing else is known, have come to their end by then.
 *
 * @module
 */

import type { LifeMode, LifePart } from './life-model.js'
import { cumulativeHazard } from './lives.js'
import { pastRate, type UseTrack } from './track.js'

/** A part's modes as calendar lives, on the mean use of the past, and when its first known renewal was. */
export interface EarlierPieces {
  readonly modes: readonly RenewingMode[]
  /** From the set's first day to the first renewal that is known of. [years] */
  readonly renewedAt: number
  /** From when on an earlier one would be known too; `renewedAt` where nothing says so. [years] */
  readonly watchedFrom: number
}

/** A mode whose failure is mended by a new piece: one Weibull life from new to failure, its delay within. */
interface RenewingMode {
  readonly shape: number
  /** At θ = 1. [years] */
  readonly scale: number
  readonly totalLogSd: number
}

/** A part is renewed for no fault of its own this often, along with others or by way of precaution. [1/year] Practice. */
export const renewedUnaskedPerYear = 0.02

const cells = 120
const points = 81
const reach = 5
const priorPoints = 21
const priorReach = 5
/** Where nothing is left of a density, so that its logarithm stays a number. */
const tiny = 1e-300

/**
 * The earlier pieces of a part, mode by mode; null where nothing is to be said: no renewal is known, it is renewed by rote, or the
 * mode is hidden, cleared by a service, or mended otherwise than by a new piece.
 */
export function earlierPieces(
  part: LifePart,
  how: { readonly past: UseTrack; readonly kappaLogSd: number },
): (EarlierPieces & { readonly at: readonly (number | null)[] }) | null {
  const { firstRenewal, service } = part
  if (firstRenewal === undefined || part.age === 'unknown' || service?.renews) return null
  const { past } = how
  const renewedAt = past.years - firstRenewal.yearsAgo
  if (!(renewedAt > 0)) return null
  const watched = past.years - (firstRenewal.watchedFromYearsAgo ?? firstRenewal.yearsAgo)
  const modes: RenewingMode[] = []
  const at = part.modes.map((mode) => {
    const perYear = pastRate(past, mode.clock) * pace(mode, past)
    const renews = mode.remedy.outcome === 'renewed' && !mode.hidden && !service?.clears.includes(mode.id)
    if (!renews || !(perYear > 0)) return null
    const scale = (mode.scale * (mode.lifeFactor ?? 1)) / perYear
    return modes.push({ shape: mode.shape, scale, totalLogSd: Math.hypot(mode.logSd, how.kappaLogSd) }) - 1
  })
  return { modes, renewedAt, watchedFrom: Math.min(renewedAt, Math.max(0, watched)), at }
}

function pace({ clock, soot }: LifeMode, past: UseTrack): number {
  return clock === 'hours' ? 1 + past.lowLoadShare * (soot - 1) : 1
}

/**
 * ln of the density of the first known renewal, over ln θ of one of the modes, its prior mean being 1.
 *
 * With S(t) the survival of a piece (this mode at θ; the others each averaged over its prior; and the chance of being
 * renewed unasked), f = −S′ and m the density of renewals of such pieces since the first day,
 * g(T) = f(T) + ∫₀^W m(s) f(T − s) ds: the piece that ended at T was the first one, or was put in at s, before the log
 * began to tell of renewals at W. With W = T it is m(T), the renewal density itself.
 *
 * M(t) = F(t) + ∫ M(t − s) dF(s) is solved by midpoints (M. Xie, "On the solution of renewal-type integral equations",
 * Communications in Statistics – Simulation and Computation 18, 1989, recalled).
 */
export function lnRenewalOver(pieces: EarlierPieces, m: number): (lnTheta: number) => number {
  const mode = pieces.modes[m]!
  const most = reach * mode.totalLogSd
  if (!(most > 0)) return () => 0
  const times = halfSteps(pieces.renewedAt)
  const others = meanSurvival(
    pieces.modes.filter((_, k) => k !== m),
    times,
  )
  const hazards = hazardsOf(mode, times)
  const values = Float64Array.from({ length: points }, (_, k) => {
    const lambda = Math.exp(-mode.shape * most * ((2 * k) / (points - 1) - 1))
    const ended = others.map((survive, i) => 1 - survive * Math.exp(-lambda * hazards[i]!))
    return Math.log(Math.max(tiny, firstRenewalDensity(ended, pieces)))
  })
  const read = (lnTheta: number) => {
    const place = Math.min(1, Math.max(0, 0.5 + lnTheta / (2 * most))) * (points - 1)
    const left = Math.min(points - 2, Math.floor(place))
    return values[left]! + (place - left) * (values[left + 1]! - values[left]!)
  }
  const mean = overPrior(mode.totalLogSd, (lnTheta) => Math.exp(read(lnTheta)))
  return (lnTheta) => read(lnTheta) - Math.log(mean)
}

/** Survival of a piece at the half steps of the time to the first renewal, and one half step beyond. */
function halfSteps(renewedAt: number): Float64Array {
  return Float64Array.from({ length: 2 * cells + 2 }, (_, i) => (i * renewedAt) / (2 * cells))
}

/** (t/η)^β at θ = 1; at another θ it is θ^(−β) times that. */
function hazardsOf({ shape, scale }: RenewingMode, times: Float64Array): Float64Array {
  return times.map((t) => cumulativeHazard({ kind: 'weibull', shape, scale }, t))
}

/** Survival of a piece by modes each averaged over its prior, and by the chance of being renewed unasked. */
function meanSurvival(modes: readonly RenewingMode[], times: Float64Array): Float64Array {
  const hazards = modes.map((mode) => hazardsOf(mode, times))
  return times.map((t, i) =>
    modes.reduce(
      (product, { totalLogSd, shape }, m) =>
        product * overPrior(totalLogSd, (lnTheta) => Math.exp(-Math.exp(-shape * lnTheta) * hazards[m]![i]!)),
      Math.exp(-renewedUnaskedPerYear * t),
    ),
  )
}

/** g(T) from the chance that a piece has ended by each half step. */
function firstRenewalDensity(
  ended: Float64Array,
  of: { readonly renewedAt: number; readonly watchedFrom: number },
): number {
  const atMidpoint = Float64Array.from({ length: cells }, (_, j) => ended[2 * j + 1]!)
  const half = atMidpoint[0]!
  /** Expected renewals within each cell. */
  const renewals = new Float64Array(cells)
  let before = 0
  for (let i = 0; i < cells; i++) {
    let sum = ended[2 * i + 2]! - before * half
    for (let j = 0; j < i; j++) sum += renewals[j]! * atMidpoint[i - j]!
    const upTo = sum / (1 - half)
    renewals[i] = upTo - before
    before = upTo
  }
  // the chance of an end within half a step of T, of the first piece and of one put in in each cell before W
  let chance = ended[2 * cells + 1]! - ended[2 * cells - 1]!
  const watched = (of.watchedFrom / of.renewedAt) * cells
  for (let j = 0; j < Math.ceil(watched); j++) {
    const put = renewals[j]! * Math.min(1, watched - j)
    const from = 2 * (cells - 1 - j)
    chance += put * (ended[from + 2]! - ended[from]!)
  }
  return (chance * cells) / of.renewedAt
}

/** Mean over the prior spread of ln θ. */
function overPrior(logSd: number, value: (lnTheta: number) => number): number {
  let sum = 0
  let whole = 0
  for (let k = 0; k < priorPoints; k++) {
    const z = priorReach * ((2 * k) / (priorPoints - 1) - 1)
    const weight = Math.exp(-0.5 * z * z)
    sum += weight * value(z * logSd)
    whole += weight
  }
  return sum / whole
}
