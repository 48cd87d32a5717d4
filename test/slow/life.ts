/**
 * Lives of modes in the slow simulator: their scales and what is drawn of them; sentences 4 and 7 to 12 of
 * `docs/life-model.md`, given in round brackets.
 *
 * @module
 */

import type { LifeMode, LifeModel, LifePart } from '../../src/forecast/life-model.js'
import { type Chance, exponential, gammaOf, lognormal, normal, normalTail, weibull } from './random.js'

/** A piece that was ordered: how much dearer, how good, how long it takes. */
export interface Supply {
  readonly priceFactor: number
  readonly quality: number
  readonly days: number
}

export interface ModeNow {
  model: LifeMode
  readonly key: string
  /** `asleep`: hidden and failed unnoticed. `laid-up`: failed in lay-up, met at fitting out. */
  state: 'sound' | 'defective' | 'asleep' | 'laid-up'
  /** θ, kept through renewals (8). */
  theta: number
  /** Scale of the onset before θ and quality, ηx. */
  onsetScale: number
  quality: number
  /** On the mode’s own clock since its last renewal; the virtual age after reconditioning. */
  age: number
  /** Running hours and years since its last renewal: the phase of its checks. */
  hours: number
  years: number
  /** How far its looks have been followed, on their clock (13). */
  looked: number
  /** X, on the mode’s clock. */
  onset: number
  /** Since the onset, on the delay’s clock. */
  since: number
  /** D, on the delay’s clock. */
  delay: number
  /** Factor on its hazard now, by wear links. */
  wear: number
  /** The quantile of the detection drawn for this defect, by check. */
  looks: Map<string, number>
  found: { readonly at: number; readonly supply: Supply | null; readonly rested: boolean } | null
  /** Found too late and left: nobody looks again. */
  left: boolean
}

export interface PartNow {
  model: LifePart
  readonly modes: ModeNow[]
  serviceHours: number
  serviceYears: number
  /** How often it was renewed. */
  renewals: number
}

export const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0)
export const hoursAYear = (model: LifeModel) => sum(model.use.hoursByMonth)
export const startsAYear = (model: LifeModel) => sum(model.use.startsByMonth)

/** (4) */
export function sootFactor(mode: LifeMode, lowLoadShare: number): number {
  return mode.clock === 'hours' ? 1 + lowLoadShare * (mode.soot - 1) : 1
}

/** (7) Scale of the onset, before θ. */
export function onsetScaleOf(model: LifeModel, mode: LifeMode): number {
  const factor = mode.lifeFactor ?? 1
  if (mode.delay === undefined) return factor * mode.scale
  const meanLife = mode.scale * gammaOf(1 + 1 / mode.shape)
  const delay = mode.delay
  let meanDelay =
    'median' in delay
      ? delay.median * Math.exp(delay.logSd ** 2 / 2)
      : delay.scale * gammaOf(1 + 1 / delay.shape)
  if (delay.clock !== mode.clock) {
    const rates = pastRates(model)
    meanDelay =
      rates[delay.clock] === 0 || rates[mode.clock] === 0
        ? 0
        : (meanDelay / rates[delay.clock]) * rates[mode.clock]
  }
  return (factor * mode.scale * Math.max(meanLife - meanDelay, meanLife / 2)) / meanLife
}

/** (5, 7) Yearly use of the track if there is one, else of the future. */
export function pastRates(model: LifeModel): Record<'hours' | 'years' | 'starts', number> {
  const track = model.past?.track
  if (track === undefined) return { hours: hoursAYear(model), years: 1, starts: startsAYear(model) }
  const first = track[0]!
  const last = track[track.length - 1]!
  const span = first.yearsAgo - last.yearsAgo
  return span > 0
    ? { hours: (last.hours - first.hours) / span, years: 1, starts: (last.starts - first.starts) / span }
    : { hours: 0, years: 1, starts: 0 }
}

/** A set with every part new: scales by the candidate, each mode’s θ from this κ (8, 30). */
export function newParts(
  model: LifeModel,
  chance: Chance,
  set: { readonly kappaLog: number; readonly hourLifeFactor: number },
): PartNow[] {
  return model.parts.map((part) => ({
    model: part,
    serviceHours: 0,
    serviceYears: 0,
    renewals: 0,
    modes: part.modes.map((mode): ModeNow => {
      const fresh: ModeNow = {
        model: mode,
        key: `${part.id}/${mode.id}`,
        state: 'sound',
        theta: Math.exp(set.kappaLog + mode.logSd * normal(chance)),
        onsetScale: onsetScaleOf(model, mode) * (mode.clock === 'hours' ? set.hourLifeFactor : 1),
        quality: 1,
        age: 0,
        hours: 0,
        years: 0,
        looked: 0,
        onset: 0,
        since: 0,
        delay: 0,
        wear: 1,
        looks: new Map(),
        found: null,
        left: false,
      }
      drawOnset(chance, fresh)
      return fresh
    }),
  }))
}

/** X of a mode that is sound at its age, under the wear it stands in (8, 27). */
export function drawOnset(chance: Chance, mode: ModeNow): void {
  const { shape } = mode.model
  const scale = mode.theta * mode.onsetScale * mode.quality
  mode.onset = scale * ((mode.age / scale) ** shape + exponential(chance) / mode.wear) ** (1 / shape)
}

/** D, whole. */
export function drawDelay(chance: Chance, mode: LifeMode): number {
  if (mode.delay === undefined) return 0
  return 'median' in mode.delay ? lognormal(chance, mode.delay) : weibull(chance, mode.delay)
}

/** (12) D of a defect that has lasted `since` already: the survival falls to a uniform share of what it is there. */
export function drawDelayBeyond(chance: Chance, mode: LifeMode, since: number): number {
  const delay = mode.delay
  if (delay === undefined) return since
  if ('shape' in delay) {
    return delay.scale * ((since / delay.scale) ** delay.shape + exponential(chance)) ** (1 / delay.shape)
  }
  if (since <= 0) return lognormal(chance, delay)
  if (delay.logSd === 0) return Math.max(since, delay.median)
  let low = Math.log(since / delay.median) / delay.logSd
  const wanted = chance.uniform() * normalTail(low)
  let high = Math.max(low, 0) + 20
  for (let step = 0; step < 60; step++) {
    const middle = (low + high) / 2
    if (normalTail(middle) > wanted) low = middle
    else high = middle
  }
  return Math.max(since, delay.median * Math.exp(delay.logSd * low))
}
