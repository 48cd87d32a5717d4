/**
 * The decision brief: all that somebody who was not there must be told of a choice, on two pages.
 *
 * @module
 */

import { answerPassages } from './brief-answer.js'
import type { BriefPassage } from './brief-blocks.js'
import { groundPassages } from './brief-grounds.js'
import type { BriefOf, BriefSubject } from './brief-subject.js'
import { entriesIn, sayBriefDate } from './brief-words.js'
import { saySet } from './say-set.js'

export interface Brief {
  readonly title: string
  readonly boatName: string
  readonly setLine: string
  /** How the boat is no real one, where she is not. */
  readonly invented?: string
  readonly day: string
  /** In the order in which they are read: about two pages. */
  readonly passages: readonly BriefPassage[]
  /** By what it can be worked out again. */
  readonly colophon: string
}

export function briefOf(subject: BriefSubject): Brief {
  const { register, report, seed, program, numbers, demonstration } = subject
  const boatName = register.boatFacts.name ?? register.boat
  const setLine = saySet(register)
  const of: BriefOf = { ...subject, boatName, setLine, entries: entriesIn(numbers) }
  const day = sayBriefDate(register.asOf)
  return {
    title: 'Decision brief',
    boatName,
    setLine,
    ...(demonstration ? { invented: 'Demonstration: boat and log are invented.' } : {}),
    day,
    passages: [...answerPassages(of), ...groundPassages(of)],
    colophon: `Gensettle ${program}, as of ${day}, seed ${seed}, ${report.histories.toLocaleString('en-GB')} histories. The same log, seed, histories and program give the same figures.`,
  }
}

/** Alternatives that fit on the first page with room to spare, where nothing stands before them. */
const few = 10

/** Whether a brief has room to spare on its two pages, so that the second is not left half empty. */
export function isShort({ passages }: Pick<Brief, 'passages'>): boolean {
  const blocks = passages.flatMap((passage) => passage.blocks)
  return !blocks.some(
    (block) =>
      block.is === 'stop' || block.is === 'number' || (block.is === 'ranges' && block.rows.length > few),
  )
}

/** A brief with every sentence said in other words, such as those of a region. */
export function briefInWords<Value>(value: Value, said: (sentence: string) => string): Value {
  if (typeof value === 'string') return said(value) as Value
  if (Array.isArray(value)) return value.map((one) => briefInWords(one, said)) as Value
  if (typeof value !== 'object' || value === null) return value
  // What a block is, is no sentence.
  const entries = Object.entries(value).map(([key, one]) => [
    key,
    key === 'is' ? one : briefInWords(one, said),
  ])
  return Object.fromEntries(entries) as Value
}
