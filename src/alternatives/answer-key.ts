/**
 * Under what an answer is kept: everything that it rests on, in a short word.
 *
 * @module
 */

import type { Entry } from '../logbook/kinds.js'

/** The same as at the prompt, so that both say the same. */
export const answerSeed = 1

export interface AskedOf {
  readonly boat: string
  readonly set: string
  /** 'YYYY-MM-DD' */
  readonly asOf: string
  readonly seed: number
  /** Years the boat is kept, tried instead of those in the log. */
  readonly yearsKept?: number
  /** Lessons of the owner's other boats are heard: what tells theirs from others. */
  readonly lessons?: string
}

/** Entries never change under their id, so that the ids of the current ones, the day and the seed say it all. */
export function keyOf(asked: AskedOf, entries: readonly Pick<Entry, 'id'>[]): string {
  const { boat, set, asOf, seed, yearsKept, lessons } = asked
  const tried = `${yearsKept ?? ''}/${lessons ?? ''}`
  return `${boat}/${set}/${asOf}/${seed}/${tried}/${entries.length}/${hashOf(entries)}`
}

/** FNV-1a, 32 bits, twice with different beginnings. */
function hashOf(entries: readonly Pick<Entry, 'id'>[]): string {
  let one = 0x811c9dc5
  let other = 0x050c5d1f
  for (const { id } of entries) {
    for (let i = 0; i < id.length; i++) {
      const code = id.charCodeAt(i)
      one = Math.imul(one ^ code, 0x01000193)
      other = Math.imul(other ^ code, 0x01000193)
    }
    other = Math.imul(other ^ 0x2c, 0x01000193)
  }
  return `${(one >>> 0).toString(36)}${(other >>> 0).toString(36)}`
}

/** What rests on an answer's key in the memory of a data folder: what is shown of it, and its histories. */
export function restsOnAnswer(key: string, what: 'view' | 'histories'): unknown {
  return { what: `answer: ${what}`, key }
}
