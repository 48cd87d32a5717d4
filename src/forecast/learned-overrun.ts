/**
 * What the owner's own jobs have come to, taken into the life model where the owner asks for it.
 *
 * @module
 */

import type { LifeModel } from './life-model.js'

/** A log-normal factor on what work is expected to cost. */
export interface Overrun {
  readonly median: number
  readonly logSd: number
}

export interface LearnedOverrun {
  /** Jobs that taught it. */
  readonly jobs: number
  /** Of a further job without a quote. */
  readonly further: Overrun
  /** On the median overrun of a quote: by the system of its parts, and of any other. */
  readonly quoteFactor: { readonly bySystem: Readonly<Record<string, number>>; readonly other: number }
}

/** Of parts of several systems, or of none. */
export const wholeSet = 'whole-set'

/** Bounds of an overrun in a life model. */
const [least, most] = [0.1, 10]

/** The life model with what the jobs taught: the overrun of work, and the medians of what quotes in hand will come to. */
export function withLearnedOverrun(model: LifeModel, learned: LearnedOverrun | undefined): LifeModel {
  if (learned === undefined || learned.jobs === 0) return model
  const systems = new Map(model.parts.map(({ id, system }) => [id, system]))
  return {
    ...model,
    labour: { ...model.labour, overrun: learned.further },
    alternatives: model.alternatives.map((alternative) => {
      const { now } = alternative
      if (typeof now !== 'object' || !('parts' in now) || now.quote === undefined) return alternative
      const system = systemOf(now.parts.map(({ part }) => systems.get(part)))
      const factor = learned.quoteFactor.bySystem[system] ?? learned.quoteFactor.other
      const { overrun } = now.quote
      const median = Math.min(most, Math.max(least, overrun.median * factor))
      return { ...alternative, now: { ...now, quote: { ...now.quote, overrun: { ...overrun, median } } } }
    }),
  }
}

/** The one system that all are of; else the whole set. */
export function systemOf(systems: readonly (string | undefined)[]): string {
  const named = new Set(systems)
  return named.size === 1 ? ([...named][0] ?? wholeSet) : wholeSet
}

/** In words, beside what else is taken for granted; nothing where nothing was learnt. */
export function sayLearned(learned: LearnedOverrun | undefined): string[] {
  if (learned === undefined || learned.jobs === 0) return []
  const { jobs, further } = learned
  return [
    `as you asked, what ${jobs === 1 ? 'one of your jobs' : `${jobs} of your jobs`} came to is heard: work is expected to come to ${further.median.toFixed(2)} times its usual price`,
  ]
}
