/**
 * The verdicts of several boats, one after the other: for `serve` and `demo`.
 *
 * @module
 */

import { keyOf } from '../alternatives/answer-key.js'
import { basisOf } from '../alternatives/figures.js'
import type { Memory } from '../alternatives/memory.js'
import { saySet } from '../alternatives/say-set.js'
import type { Problem } from '../catalogue/problem.js'
import { setsOf } from '../register/register.js'
import type { KeptFigures } from '../store/posterior-memory.js'
import { answerFor } from './answer.js'
import type { Lessons } from './lessons.js'
import { type NamedBoat, readCurrent } from './opened.js'
import { shippedCatalogue, today } from './places.js'

/** Enough for a first answer at the start; `alternatives` plays on until the verdict stands. */
const histories = 2_000

/** What there is to say of one set. */
export interface Verdict {
  /** The boat, as she is called. */
  readonly name: string
  readonly demonstration: boolean
  /** The set in a line. */
  readonly set: string
  /** The answer in a sentence, or why there is none. */
  readonly verdict: string
  /** What to say at the telephone; null where no quote is in hand. */
  readonly walkAway: string | null
  /** Conditions that bar a choice. */
  readonly barred: readonly string[]
  /** What was taken for granted because nobody said. */
  readonly assumed: readonly string[]
}

export interface HowSaid {
  readonly seed: number
  readonly memory?: Memory
  /** What the owner's other boats teach, where that is to be heard. */
  readonly lessons?: Lessons
  /** Told the figures behind each answer that rests on the boat's own log alone, by the key that a page asks for them with. */
  readonly onFigures?: (kept: KeptFigures) => void
  readonly signal?: AbortSignal
}

const noLessons: Lessons = { ok: true, pooled: undefined }

/** One boat's verdicts, one for each of her sets. */
export async function verdictsOf(boat: NamedBoat, how: HowSaid): Promise<readonly Verdict[]> {
  const read = readCurrent(boat)
  const plain = {
    name: boat.name,
    demonstration: boat.demonstration,
    walkAway: null,
    barred: [],
    assumed: [],
  }
  const { lessons = noLessons, onFigures, ...asked } = how
  if (!lessons.ok) return [{ ...plain, set: '', verdict: `Cannot tell: ${sayProblems(lessons.problems)}` }]
  const { pooled } = lessons
  if (!read.ok) return [{ ...plain, set: '', verdict: `Cannot tell: ${sayProblems(read.problems)}` }]
  const asOf = today()
  const sets = setsOf(read.entries, asOf)
  if (sets.length === 0) {
    const verdict = 'Cannot tell yet: no set is entered. Begin with "gensettle log add set".'
    return [{ ...plain, set: '', verdict }]
  }
  const verdicts: Verdict[] = []
  for (const set of sets) {
    const answer = await answerFor({
      entries: read.entries,
      boat: boat.name,
      set,
      asOf,
      histories,
      first: true,
      pooled,
      ...asked,
    })
    const { saying, register, assumed, samples } = answer
    if (pooled === undefined) {
      const key = keyOf({ boat: boat.name, set, asOf, seed: how.seed }, read.entries)
      onFigures?.({ key, seed: how.seed, figures: { basis: basisOf(answer, shippedCatalogue()), samples } })
    }
    const name = register.boatFacts.name ?? boat.name
    verdicts.push({ ...plain, ...saying, name, set: saySet(register), assumed })
  }
  return verdicts
}

function sayProblems(problems: readonly Problem[]): string {
  return problems.map(({ path, found }) => `${path}: ${found}`).join('; ')
}

/** One verdict as lines of text. */
export function verdictText(boat: Verdict): string {
  return [
    `${boat.name}${boat.demonstration ? ' (demonstration, invented)' : ''}${boat.set === '' ? '' : `: ${boat.set}`}`,
    `  ${boat.verdict}`,
    ...(boat.walkAway === null ? [] : [`  ${boat.walkAway}`]),
    ...boat.barred.map((line) => `  Stop: ${line}`),
  ].join('\n')
}
