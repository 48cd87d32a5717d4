/**
 * Played lives put to use: the share each has at a node of κ, what a part says of κ, and its starting states.
 *
 * @module
 */

import { type pastTable, readPast } from './past-lives.js'
import { type PlayedLives, playPart } from './play-forward.js'
import type { PlayedPart } from './play-part.js'
import { POSTERIOR_STEPS } from './posterior-type.js'
import { type KappaGrid, playedPoints } from './set-factor.js'
import { normalQuantile } from './special-normal.js'

/** A part with its played lives and their weights (what is entered, symptoms included). */
export interface PlayedSample {
  readonly prepared: PlayedPart
  readonly lives: PlayedLives
  readonly weight: Float64Array
  /**
   * Per life: Σ ln θ/τ² and the precision Σ 1/τ² of its modes. Given its θ a life does not depend on κ, so lives
   * played once over a wide span of κ serve every κ with the weight p(θ | κ)/p(θ).
   */
  readonly pull: Float64Array
  readonly precision: number
  /** θ of each life and mode times the quality of the piece in place. */
  readonly theta: Float64Array
  /** ln of what was taken out of the weights. */
  readonly lnScale: number
  readonly pastLeftOut: readonly number[]
  /** Some life agrees with what is entered. */
  readonly isPossible: boolean
}

/** Per mode: what earlier lives say of θ, or null. */
type PastTables = readonly ReturnType<typeof pastTable>[]

/** How many lives are played: batch by batch, until so many in effect agree with what is entered, or the most are played. */
export interface HowManyLives {
  readonly batch: number
  readonly leastEffective: number
  readonly most: number
}

const usual: HowManyLives = { batch: 2048, leastEffective: 384, most: 8192 }
/** ln κ is played with this much more spread than it has, so that sets far from the usual find lives too. */
const wider = 1.3
/** Own spread under which weights over κ would rest on a handful of lives; the model's usual least is 0.1. */
const leastOwnLogSd = 0.08

/**
 * ln κ of one batch of lives: even quantiles, rising, so that systematic steps through the lives are spread over κ
 * and meet no other order in them.
 */
function batchQuantiles(batch: number): Float64Array {
  const known = quantilesOfBatch.get(batch)
  if (known !== undefined) return known
  const made = Float64Array.from({ length: batch }, (_, k) => normalQuantile((k + 0.5) / batch))
  quantilesOfBatch.set(batch, made)
  return made
}

const quantilesOfBatch = new Map<number, Float64Array>()

/** Plays a part in batches until enough lives agree with what is entered, or the most are played. */
export function playSample(
  prepared: PlayedPart,
  how: {
    readonly seed: number
    readonly kappaLogSd: number
    readonly set: number
    readonly howMany?: HowManyLives | undefined
    /** What earlier lives say, by mode. */
    readonly past?: PastTables
    /** How many of them, by mode, no scale allows for. */
    readonly pastLeftOut?: readonly number[]
  },
): PlayedSample {
  const { batch, leastEffective, most } = how.howMany ?? usual
  const lnKappa = batchQuantiles(batch).map((z) => z * wider * how.kappaLogSd)
  const parts: PlayedLives[] = []
  let count = 0
  let sum = 0
  let squares = 0
  for (;;) {
    const lives = playPart(prepared, { seed: how.seed, from: count, count: batch, lnKappa, set: how.set })
    weighByPast(lives, how.past ?? [])
    parts.push(lives)
    count += batch
    for (const weight of lives.weight) {
      sum += weight
      squares += weight * weight
    }
    const effective = squares > 0 ? (sum * sum) / squares : 0
    if (effective >= leastEffective || count >= most) break
  }
  const lnScale = (how.past ?? []).reduce((sum, table) => sum + (table?.lnTop ?? 0), 0)
  return { ...withPull(prepared, joinLives(parts)), lnScale, pastLeftOut: how.pastLeftOut ?? [] }
}

function weighByPast(lives: PlayedLives, past: PastTables): void {
  past.forEach((table, m) => {
    if (table === null) return
    for (let life = 0; life < lives.count; life++) {
      lives.weight[life]! *= Math.exp(readPast(table, lives.lnTheta[life * past.length + m]!))
    }
  })
}

function withPull(prepared: PlayedPart, lives: PlayedLives): Omit<PlayedSample, 'lnScale' | 'pastLeftOut'> {
  const own = prepared.modes.map((mode) => Math.max(mode.logSd, leastOwnLogSd))
  const modes = own.length
  const pull = new Float64Array(lives.count)
  for (let life = 0; life < lives.count; life++) {
    for (let m = 0; m < modes; m++) pull[life]! += lives.lnTheta[life * modes + m]! / own[m]! ** 2
  }
  const precision = own.reduce((sum, logSd) => sum + 1 / logSd ** 2, 0)
  const isPossible = lives.weight.some((weight) => weight > 0)
  return {
    prepared,
    lives,
    isPossible,
    weight: isPossible ? lives.weight.slice() : new Float64Array(lives.count).fill(1),
    pull,
    precision,
    theta: lives.lnTheta.map((lnTheta) => prepared.quality * Math.exp(lnTheta)),
  }
}

/** Whether anything entered tells lives of this part apart. */
export function isInformed(sample: PlayedSample): boolean {
  const first = sample.weight[0]!
  return sample.weight.some((weight) => weight !== first)
}

/**
 * p(θ of the life | κ)/p(θ) at one ln κ, for all lives into `out`:
 * exp(u B − u² C/2 − B²/(2 (C + 1/v)) + ½ ln(1 + v C)), u = ln κ, B the pull, C the precision, v the variance played.
 */
export function sharesAtKappa(
  sample: PlayedSample,
  at: { readonly lnKappa: number; readonly kappaLogSd: number },
  out: Float64Array,
): void {
  const { pull, precision } = sample
  const variance = (wider * at.kappaLogSd) ** 2
  if (variance === 0) {
    out.fill(1)
    return
  }
  const u = at.lnKappa
  const constant = -0.5 * u * u * precision + 0.5 * Math.log1p(variance * precision)
  const back = 0.5 / (precision + 1 / variance)
  for (let life = 0; life < pull.length; life++) {
    const b = pull[life]!
    out[life] = Math.exp(u * b + constant - b * b * back)
  }
}

/**
 * At each of {@link playedPoints}: ln L(κ) of a part, in how many lives it rests, and the stops expected per counted
 * span.
 */
export function overGrid(
  sample: PlayedSample,
  grid: KappaGrid,
): {
  readonly lnLikelihood: Float64Array
  readonly effective: Float64Array
  readonly stops: readonly Float64Array[]
} {
  const { lives, weight } = sample
  const spans = sample.prepared.counted.length
  const shares = new Float64Array(lives.count)
  const points = playedPoints(grid)
  const lnLikelihood = new Float64Array(points.length)
  const effective = new Float64Array(points.length)
  const stops = Array.from({ length: spans }, () => new Float64Array(points.length))
  points.forEach((point, k) => {
    sharesAtKappa(sample, { lnKappa: grid.lnKappa[point]!, kappaLogSd: grid.logSd }, shares)
    let all = 0
    let sum = 0
    let squares = 0
    for (let life = 0; life < lives.count; life++) {
      const product = shares[life]! * weight[life]!
      all += shares[life]!
      sum += product
      squares += product * product
      for (let s = 0; s < spans; s++) stops[s]![k]! += product * lives.stopsSeen[life * spans + s]!
    }
    lnLikelihood[k] = Math.log(sum / all) + sample.lnScale
    effective[k] = squares > 0 ? (sum * sum) / squares : 0
    for (let s = 0; s < spans; s++) stops[s]![k]! /= sum
  })
  return { lnLikelihood, effective, stops }
}

/** Where a played part's starting states are written; `mode` is the row of its first mode. */
export interface PlayedRows {
  readonly theta: Float32Array
  readonly state: Uint8Array
  readonly age: Float32Array
  readonly since: Float32Array
  readonly ageHours: Float32Array
  readonly serviceYears: Float32Array
  readonly serviceHours: Float32Array
  readonly firstMode: number
  readonly part: number
}

/** Draws the table of a played part at one κ by systematic steps over the weighted lives, one uniform start. */
export function fillPlayed(
  sample: PlayedSample,
  node: { readonly lnKappa: number; readonly kappaLogSd: number; readonly start: number },
  rows: PlayedRows,
): void {
  const { lives, weight, prepared } = sample
  const shares = new Float64Array(lives.count)
  sharesAtKappa(sample, node, shares)
  let total = 0
  for (let life = 0; life < lives.count; life++) {
    shares[life]! *= weight[life]!
    total += shares[life]!
  }
  if (!(total > 0)) {
    shares.set(weight)
    total = weight.reduce((a, b) => a + b, 0)
  }
  const modes = prepared.part.modes.length
  const chosen = systematicSteps(shares, { total, start: node.start })
  // told one by one: reading them from their records at every step would cost more than the copying
  const { theta } = sample
  const { state, age, since, ageHours, serviceYears, serviceHours } = lives
  const { theta: toTheta, state: toState, age: toAge, since: toSince, ageHours: toAgeHours } = rows
  for (let m = 0; m < modes; m++) {
    const first = (rows.firstMode + m) * POSTERIOR_STEPS
    for (let step = 0; step < POSTERIOR_STEPS; step++) {
      const from = chosen[step]! * modes + m
      const at = first + step
      toTheta[at] = theta[from]!
      toState[at] = state[from]!
      toAge[at] = age[from]!
      toSince[at] = since[from]!
      toAgeHours[at] = ageHours[from]!
    }
  }
  const first = rows.part * POSTERIOR_STEPS
  const { serviceYears: toYears, serviceHours: toHours } = rows
  for (let step = 0; step < POSTERIOR_STEPS; step++) {
    toYears[first + step] = serviceYears[chosen[step]!]!
    toHours[first + step] = serviceHours[chosen[step]!]!
  }
}

/** Which life each step falls on when the steps go evenly through all the weight. */
function systematicSteps(
  weights: Float64Array,
  steps: { readonly total: number; readonly start: number },
): Int32Array {
  const chosen = new Int32Array(POSTERIOR_STEPS)
  let life = 0
  let above = weights[0]!
  for (let step = 0; step < POSTERIOR_STEPS; step++) {
    const target = ((step + steps.start) / POSTERIOR_STEPS) * steps.total
    while (above <= target && life < weights.length - 1) {
      life++
      above += weights[life]!
    }
    chosen[step] = life
  }
  return chosen
}

function joinLives(parts: readonly PlayedLives[]): PlayedLives {
  const first = parts[0]!
  if (parts.length === 1) return first
  const float = (read: (lives: PlayedLives) => Float64Array) => {
    const joined = new Float64Array(parts.reduce((sum, lives) => sum + read(lives).length, 0))
    let at = 0
    for (const lives of parts) {
      joined.set(read(lives), at)
      at += read(lives).length
    }
    return joined
  }
  const bytes = (read: (lives: PlayedLives) => Uint8Array) =>
    Uint8Array.from(float((lives) => Float64Array.from(read(lives))))
  return {
    count: parts.reduce((sum, lives) => sum + lives.count, 0),
    lnTheta: float((lives) => lives.lnTheta),
    state: bytes((lives) => lives.state),
    age: float((lives) => lives.age),
    since: float((lives) => lives.since),
    ageHours: float((lives) => lives.ageHours),
    serviceYears: float((lives) => lives.serviceYears),
    serviceHours: float((lives) => lives.serviceHours),
    weight: float((lives) => lives.weight),
    atSymptom: bytes((lives) => lives.atSymptom),
    symptoms: first.symptoms,
    stopsSeen: float((lives) => lives.stopsSeen),
  }
}
