/**
 * What the owner's other boats have shown, taken into the life model of one.
 *
 * @module
 */

import type { LifeModel } from './life-model.js'
import { type Belief, furtherMember, type Lesson, lessonOf, throughNoise, together } from './pooling.js'
import { POSTERIOR_STEPS, type Posterior } from './posterior-type.js'

/** What the record of one set shows: plain values, to be kept. */
export interface SetLessons {
  /** Of ln κ: boat's and set's part together. */
  readonly factor: Lesson
  /** By system, of each telling mode's own scale in units of its own spread. */
  readonly systems: Readonly<Record<string, readonly Lesson[]>>
}

/** The sets of one boat. */
export interface BoatLessons {
  readonly boat: string
  readonly sets: readonly SetLessons[]
}

/** What a further boat of the owner's is taken to be like before her own record is read. */
export interface Pooled {
  /** How many other boats have taught something. */
  readonly boats: number
  /** Of the boat's part b of ln κ. */
  readonly boat: Belief
  /** Of a mode's own scale, in units of its own spread; systems that taught nothing are left out. */
  readonly systems: Readonly<Record<string, Belief & { readonly modes: number }>>
}

/** What a set's record shows. The posterior must be one made without the lessons of other boats. */
export function lessonsOf(model: LifeModel, posterior: Posterior): SetLessons {
  const { boatLogSd, setLogSd } = model.setFactor
  const priorVariance = boatLogSd ** 2 + setLogSd ** 2
  const none: Lesson = { mean: 0, precision: 0 }
  const factor =
    priorVariance === 0 ? none : lessonOf({ posterior: beliefOfFactor(posterior), priorVariance })
  const systems: Record<string, Lesson[]> = {}
  let place = 0
  for (const part of model.parts) {
    for (const mode of part.modes) {
      const at = place++
      if (part.system === undefined || mode.logSd === 0) continue
      const own = beliefOfMode(posterior, { place: at, quality: part.quality, logSd: mode.logSd })
      if (!(own.variance > 0)) continue
      const lesson = lessonOf({ posterior: own, priorVariance: 1 })
      if (lesson.precision > 0) {
        systems[part.system] ??= []
        systems[part.system]!.push(lesson)
      }
    }
  }
  return { factor, systems }
}

function beliefOfFactor({ kappaLog, kappaWeight }: Posterior): Belief {
  const mean = kappaLog.reduce((sum, value, n) => sum + kappaWeight[n]! * value, 0)
  return {
    mean,
    variance: kappaLog.reduce((sum, value, n) => sum + kappaWeight[n]! * (value - mean) ** 2, 0),
  }
}

/** Mean and variance of (ln θ − ln quality − ln κ)/logSd over the tables. */
function beliefOfMode(
  { kappaLog, kappaWeight, theta }: Posterior,
  mode: { readonly place: number; readonly quality: number; readonly logSd: number },
): Belief {
  const modes = theta.length / kappaLog.length / POSTERIOR_STEPS
  const lnQuality = Math.log(mode.quality)
  let [first, second] = [0, 0]
  kappaLog.forEach((lnKappa, n) => {
    const weight = kappaWeight[n]! / POSTERIOR_STEPS
    const from = (n * modes + mode.place) * POSTERIOR_STEPS
    for (let at = from; at < from + POSTERIOR_STEPS; at++) {
      const z = (Math.log(theta[at]!) - lnQuality - lnKappa) / mode.logSd
      first += weight * z
      second += weight * z * z
    }
  })
  return { mean: first, variance: second - first * first }
}

/**
 * Lessons of other boats put together for one. b of each is seen through the set's own part g of each of her sets;
 * modes of a system are members of one family, whichever boat they are on.
 */
export function poolLessons(
  boats: readonly BoatLessons[],
  spread: { readonly boatLogSd: number; readonly setLogSd: number },
): Pooled {
  const factors = boats.map(({ sets }) =>
    together(sets.map(({ factor }) => throughNoise(factor, spread.setLogSd ** 2))),
  )
  const bySystem = new Map<string, Lesson[]>()
  for (const { systems } of boats.flatMap(({ sets }) => sets)) {
    for (const [system, lessons] of Object.entries(systems)) {
      bySystem.set(system, [...(bySystem.get(system) ?? []), ...lessons])
    }
  }
  const taught = boats.filter(
    ({ sets }, i) => factors[i]!.precision > 0 || sets.some(({ systems }) => Object.keys(systems).length > 0),
  )
  const { mean, variance } = furtherMember(factors, { variance: spread.boatLogSd ** 2 })
  return {
    boats: taught.length,
    boat: { mean, variance },
    systems: Object.fromEntries(
      [...bySystem].map(([system, lessons]) => {
        const further = furtherMember(lessons, { variance: 1 })
        return [system, { mean: further.mean, variance: further.variance, modes: lessons.length }]
      }),
    ),
  }
}

/** Bounds of a life factor in a life model. */
const [least, most] = [0.01, 100]

/**
 * The life model with the lessons in it (docs/life-model.md, 44). Without any the same model is given back.
 */
export function withLessons(model: LifeModel, pooled: Pooled | undefined): LifeModel {
  if (pooled === undefined || pooled.boats === 0) return model
  return {
    ...model,
    setFactor: { ...model.setFactor, boatLogSd: Math.sqrt(pooled.boat.variance) },
    parts: model.parts.map((part) => {
      const system = pooled.systems[part.system ?? '']
      return {
        ...part,
        modes: part.modes.map((mode) => {
          const shift = pooled.boat.mean + (system?.mean ?? 0) * mode.logSd
          const lifeFactor = (mode.lifeFactor ?? 1) * Math.exp(shift)
          return {
            ...mode,
            logSd: mode.logSd * Math.sqrt(system?.variance ?? 1),
            lifeFactor: Math.min(most, Math.max(least, lifeFactor)),
          }
        }),
      }
    }),
  }
}
