/**
 * The delay-time model of one failure mode: a defect arises, can be found, and fails some time later; and what the
 * looks at a part of known age say of the scale of its life and of the state it is in.
 *
 * Onset X is Weibull with the mode's shape β and a scale η that is to be learnt; the delay D to failure is known.
 * After Christer and Waller, "Delay time models of industrial inspection maintenance problems", Journal of the
 * Operational Research Society 35 (1984); recalled.
 *
 * @module
 */

import { chanceOfEnding, type Delay, logDensity, survival } from '../../src/forecast/lives.js'
import { gamma } from '../../src/forecast/special-gamma.js'
import { requireWithin } from '../../src/units/require.js'
import { type LookChances, lookChances, type Observation, type RepeatedLooks } from './delay-time-looks.js'
import {
  blockAverage,
  emptyAverage,
  lnAverage,
  type OnsetAverage,
  onsetAverage,
} from './delay-time-panels.js'

/** One failure mode with its two stages, both on one clock. */
export interface TwoStageMode {
  /** β of the age at which a defect arises. [–] */
  readonly shape: number
  readonly delay: Delay
  /** Whether a failure shows only when it is tested or needed, so that the part may have failed unnoticed. */
  readonly hidden: boolean
}

/** A part in service at a known age, and what was seen on it. */
export interface LifeSoFar {
  readonly mode: TwoStageMode
  /** [clock of the mode] */
  readonly age: number
  readonly observations: readonly Observation[]
  readonly repeatedLooks: RepeatedLooks
}

/** A life laid out so that any scale of it is cheap to weigh. */
export interface ReadLife {
  readonly shape: number
  readonly age: number
  /** ln of the chance of what was seen, had the part been sound throughout. */
  readonly lnSeenIfSound: number
  readonly defective: OnsetAverage
  readonly failed: OnsetAverage
}

/** State of the part now, given all that was seen, at one scale. */
export interface StateChances {
  readonly sound: number
  readonly defective: number
  /** Failed unnoticed; 0 for a mode that is not hidden. */
  readonly failed: number
  /**
   * ln of the joint chance of being in service and of what was seen: the likelihood of the scale. −∞ where it cannot
   * be; the three chances are then 0.
   */
  readonly logEvidence: number
}

/**
 * Lays out a life: the three joint weights
 *
 *     sound now      Sx(a) Π ls
 *     defective now  ∫₀ᵃ fx(x) Sd(a − x) Π_{aj<x} ls Π_{aj≥x} ld dx
 *     failed         ∫₀ᵃ fx(x) ∫₀^{a−x} fd(y) Π_{aj<x} ls Π_{x≤aj<x+y} ld Π_{aj≥x+y} lf dy dx   (hidden modes)
 *
 * with Sx, fx of the onset and Sd, fd of the delay. Being in service is evidence for a mode that shows when it fails,
 * and none for a hidden one. The inner integral is a sum over the gaps between observations.
 *
 * Accurate to 1e-10 for shapes from 0.2 to 20.
 *
 * @throws RangeError if the age is negative, the shape outside 0.2 to 20, or an observation outside its span.
 */
export function readLife(life: LifeSoFar): ReadLife {
  const { mode, age } = life
  const looks = looksOf(life)
  const { shape } = mode
  return {
    shape,
    age,
    lnSeenIfSound: Math.log(looks.sound.at(-1)!),
    defective: age === 0 ? emptyAverage({ shape, unitAge: 1 }) : defectiveNow(life, looks),
    failed: age === 0 || !mode.hidden ? emptyAverage({ shape, unitAge: 1 }) : failedUnnoticed(life, looks),
  }
}

/** Weighs a life that was laid out by {@link readLife} at one scale of the onset. */
export function stateAt(life: ReadLife, scale: number): StateChances {
  const lnSound = -((life.age / scale) ** life.shape) + life.lnSeenIfSound
  const lnDefective = lnAverage(life.defective, scale)
  const lnFailed = lnAverage(life.failed, scale)
  const most = Math.max(lnSound, lnDefective, lnFailed)
  if (most === -Infinity) return { sound: 0, defective: 0, failed: 0, logEvidence: -Infinity }
  const sound = Math.exp(lnSound - most)
  const defective = Math.exp(lnDefective - most)
  const failed = Math.exp(lnFailed - most)
  const sum = sound + defective + failed
  return {
    sound: sound / sum,
    defective: defective / sum,
    failed: failed / sum,
    logEvidence: most + Math.log(sum),
  }
}

/**
 * Lays out the joint chance that a life fails in the `ahead` that follows its age, and of what was seen on it before:
 *
 *     ∫₀ᵃ fx W (Sd(a − x) − Sd(a + u − x)) dx + Π ls ∫ₐ^{a+u} fx Fd(a + u − x) dx
 *
 * with W the chance of the observations given the onset. Divide by the evidence of the same life; {@link chanceAhead}
 * does. A hidden mode that has failed already does not fail again.
 *
 * @throws RangeError as {@link readLife}, and if `ahead` is negative.
 */
export function readAhead(life: LifeSoFar, ahead: number): OnsetAverage {
  requireWithin('ahead', ahead, 0, Number.MAX_VALUE, 'of the clock')
  const { mode, age } = life
  const { shape, delay } = mode
  const looks = looksOf(life)
  const unitAge = age + ahead
  if (ahead === 0) return emptyAverage({ shape, unitAge: 1 })
  const seenIfSound = looks.sound.at(-1)!
  if (delay.kind === 'none') {
    return blockAverage({ shape, unitAge, spans: [{ fromAge: age, toAge: unitAge, weight: seenIfSound }] })
  }
  const before = gaps(looks, age).map(({ fromAge, toAge, first }) => {
    const seen = looks.sound[first]! * looks.defective(first, looks.ages.length)
    const weight = (onset: number): number => {
      const since = age - onset
      return seen * survival(delay, since) * chanceOfEnding(delay, { age: since, ahead })
    }
    return { fromAge, toAge, weight }
  })
  const after = {
    fromAge: age,
    toAge: unitAge,
    weight: (onset: number) => seenIfSound * chanceOfEnding(delay, { age: 0, ahead: unitAge - onset }),
  }
  const kinks = [age, unitAge].map((untilAge) => ({ untilAge, delay }))
  return onsetAverage({ shape, unitAge, pieces: [...before, after], kinks })
}

/** Chance that a life fails in what follows, given all that was seen, at one scale of the onset. */
export function chanceAhead(
  read: { readonly life: ReadLife; readonly ahead: OnsetAverage },
  scale: number,
): number {
  const { logEvidence } = stateAt(read.life, scale)
  return logEvidence === -Infinity ? 0 : Math.min(1, Math.exp(lnAverage(read.ahead, scale) - logEvidence))
}

/**
 * Lays out the joint density of failing at exactly the life's age and of what was seen before; for past lives that
 * ended so. {@link lnFailureDensity} weighs it.
 *
 *     ∫₀ᵃ fx(x) fd(a − x) Π_{aj<x} ls Π_{aj≥x} ld dx,  or fx(a) Π ls without a delay
 *
 * @throws RangeError as {@link readLife}, and if the age is 0.
 */
export function readFailure(life: LifeSoFar): ReadFailure {
  const { mode, age } = life
  const { shape, delay } = mode
  requireWithin('age', age, Number.MIN_VALUE, Number.MAX_VALUE, 'of the clock')
  const looks = looksOf(life)
  const lnSeenIfSound = Math.log(looks.sound.at(-1)!)
  if (delay.kind === 'none') return { shape, age, lnSeenIfSound, average: undefined }
  const pieces = gaps(looks, age).map(({ fromAge, toAge, first }) => {
    const seen = looks.sound[first]! * looks.defective(first, looks.ages.length)
    const weight = (onset: number): number =>
      onset < age ? seen * Math.exp(logDensity(delay, age - onset)) : 0
    return { fromAge, toAge, weight }
  })
  const average = onsetAverage({ shape, unitAge: age, pieces, kinks: [{ untilAge: age, delay }] })
  return { shape, age, lnSeenIfSound, average }
}

/** A past life that ended in a failure, laid out by {@link readFailure}. */
export interface ReadFailure {
  readonly shape: number
  readonly age: number
  readonly lnSeenIfSound: number
  /** Left out where the onset is the failure. */
  readonly average: OnsetAverage | undefined
}

/** ln of the density of failing just then and of what was seen before, at one scale of the onset. [ln 1/clock] */
export function lnFailureDensity(failure: ReadFailure, scale: number): number {
  if (failure.average !== undefined) return lnAverage(failure.average, scale)
  return logDensity({ kind: 'weibull', shape: failure.shape, scale }, failure.age) + failure.lnSeenIfSound
}

/**
 * Scale of the onset for a life to failure that a catalogue gives: such that mean onset and mean delay add up to the
 * catalogue's mean life, with the mean onset never under half of it.
 *
 *     ηx = max(η Γ(1 + 1/β) − E D, η Γ(1 + 1/β)/2) / Γ(1 + 1/β)
 */
export function onsetScale(life: {
  readonly shape: number
  /** η of the life to failure. [clock of the mode] */
  readonly scale: number
  /** E D, on the same clock. */
  readonly meanDelay: number
}): number {
  const perScale = gamma(1 + 1 / life.shape)
  return Math.max(life.scale - life.meanDelay / perScale, life.scale / 2)
}

/** A gap between observations, and the first observation after it. */
interface Gap {
  readonly fromAge: number
  readonly toAge: number
  readonly first: number
}

function gaps(looks: LookChances, age: number): Gap[] {
  const edges = [0, ...looks.ages, age]
  return edges.slice(1).flatMap((toAge, first) => {
    const fromAge = edges[first]!
    return toAge > fromAge ? [{ fromAge, toAge, first }] : []
  })
}

function defectiveNow(life: LifeSoFar, looks: LookChances): OnsetAverage {
  const { age } = life
  const { shape, delay } = life.mode
  if (delay.kind === 'none') return emptyAverage({ shape, unitAge: 1 })
  const pieces = gaps(looks, age).map(({ fromAge, toAge, first }) => {
    const seen = looks.sound[first]! * looks.defective(first, looks.ages.length)
    return { fromAge, toAge, weight: (onset: number) => seen * survival(delay, age - onset) }
  })
  return onsetAverage({ shape, unitAge: age, pieces, kinks: [{ untilAge: age, delay }] })
}

function failedUnnoticed(life: LifeSoFar, looks: LookChances): OnsetAverage {
  const { age } = life
  const { shape, delay } = life.mode
  if (delay.kind === 'none') {
    const spans = gaps(looks, age).map(({ fromAge, toAge, first }) => {
      return { fromAge, toAge, weight: looks.sound[first]! * looks.failed[first]! }
    })
    return blockAverage({ shape, unitAge: age, spans })
  }
  const all = gaps(looks, age)
  const pieces = all.map(({ fromAge, toAge, first }) => {
    const later = all
      .filter((gap) => gap.first >= first)
      .map((gap) => ({
        toAge: gap.toAge,
        seen: looks.defective(first, gap.first) * looks.failed[gap.first]!,
      }))
    const weight = (onset: number): number => {
      let sum = 0
      let lasting = 1
      for (const gap of later) {
        const beyond = survival(delay, Math.max(0, gap.toAge - onset))
        sum += gap.seen * (lasting - beyond)
        lasting = beyond
      }
      return looks.sound[first]! * sum
    }
    return { fromAge, toAge, weight }
  })
  const kinks = all.map(({ toAge }) => ({ untilAge: toAge, delay }))
  return onsetAverage({ shape, unitAge: age, pieces, kinks })
}

function looksOf(life: LifeSoFar): LookChances {
  requireWithin('age', life.age, 0, Number.MAX_VALUE, 'of the clock')
  requireWithin('shape', life.mode.shape, 0.2, 20, '')
  const { observations, repeatedLooks } = life
  return lookChances({ observations, untilAge: life.age, repeatedLooks })
}
