/**
 * The decision brief: all that somebody who was not there must be told of a choice, on two pages.
 *
 * @module
 */

import type { Catalogue } from '../catalogue/catalogue.js'
import type { Problem } from '../catalogue/problem.js'
import type { LifeModel } from '../forecast/life-model.js'
import type { SetRegister } from '../register/register-types.js'
import type { WhatChanges, WorthFindingOut } from './bearing.js'
import { answerPassages } from './brief-answer.js'
import type { BriefPassage } from './brief-blocks.js'
import { groundPassages } from './brief-grounds.js'
import { entriesIn, type SayEntries, sayBriefDate } from './brief-words.js'
import type { Compared } from './compared.js'
import type { Report } from './report.js'
import { saySet } from './say-set.js'
import type { WhenToReplace } from './when-to-replace.js'

/** What a brief is made from: an answer that stands, with what bears on it. */
export interface BriefSubject {
  readonly register: SetRegister
  readonly model: LifeModel
  readonly report: Report
  /** Cheapest first. */
  readonly rows: readonly Compared[]
  readonly findingOut: WorthFindingOut
  /** null: only one alternative is open. */
  readonly changes: WhatChanges | null
  /** null: no other set is among the alternatives. */
  readonly when: WhenToReplace | null
  readonly restsOn: Readonly<Record<string, readonly string[]>>
  readonly assumed: readonly string[]
  /** Figures of the owner that could not be used. */
  readonly problems: readonly Problem[]
  readonly catalogue: Catalogue
  /** The number of each entry in the log. */
  readonly numbers: ReadonlyMap<string, number>
  readonly seed: number
  readonly program: string
  readonly demonstration: boolean
  /** What the owner's other boats taught, in words; none: they were not heard. */
  readonly heard?: readonly string[]
}

/** The same with the words that its passages share. */
export interface BriefOf extends BriefSubject {
  readonly boatName: string
  readonly setLine: string
  readonly entries: SayEntries
}

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
