/**
 * What a line of an old log says was done, and to which part.
 *
 * @module
 */

import type { Body } from './kinds.js'

/** A part of the catalogue with everything it is called. */
export interface PartNames {
  readonly id: string
  readonly names: readonly string[]
}

type Deed = Body<'work'>['parts'][number]['did']

/** Words for each deed; where a line has several, the first in this order counts, since it did most. */
const deedWords: readonly (readonly [Deed, RegExp])[] = [
  ['renewed', /\b(renew\w*|replac\w*|new|changed?|swapped|fitted)\b/],
  ['reconditioned', /\b(recondition\w*|overhaul\w*|rebuil[dt]\w*|refurbish\w*)\b/],
  ['patched', /\b(patch\w*|bodge\w*|taped|temporar\w*)\b/],
  ['relinked', /\b(relink\w*|reconnected for)\b/],
  ['removed', /\b(removed|taken (?:off|out))\b/],
  ['freed', /\b(freed|unseized|unstuck)\b/],
  ['cleaned', /\b(clean\w*|flush\w*|descal\w*|rodded|washed|dried)\b/],
  ['adjusted', /\b(adjust\w*|tighten\w*|realign\w*|aligned|tension\w*)\b/],
  ['topped-up', /\b(topped(?: |-)?up|top(?: |-)up|refilled)\b/],
  ['tested', /\b(test(?:ed)?|check(?:ed)?|inspect\w*|measured)\b/],
  ['opened', /\b(opened)\b/],
]

const failedWords = /\b(fail\w*|broke\w*|burst|seized|snapped|stopped|died|burnt|burned)\b/

/** A part, and what was done to it. */
export interface PartDeed {
  readonly part: string
  readonly did: Deed
}

/**
 * What was done to which parts, by the words of a row. Parts named in a column of their own share the deed of the row; in running
 * text each clause has its own, or that of its neighbour where it tells none: "impeller and belt renewed, strainer cleaned".
 */
export function deedsIn(
  row: { readonly part: string; readonly what: string },
  parts: readonly PartNames[],
): readonly PartDeed[] {
  const clauses = row.part === '' ? row.what.split(/[;.,&+\n]|\band\b/i) : [row.part]
  const told = clauses.map((clause) => deedIn(row.part === '' || row.what === '' ? clause : row.what))
  const forward = told.map((_, at) => told.slice(0, at + 1).findLast((deed) => deed !== undefined))
  const deeds = forward.map((deed, at) => deed ?? told.slice(at).find((later) => later !== undefined))
  const done = new Map<string, Deed>()
  for (const [at, clause] of clauses.entries()) {
    for (const part of partsIn(clause, parts)) {
      const did = deeds[at]
      if (did !== undefined && !done.has(part)) done.set(part, did)
    }
  }
  return [...done].map(([part, did]) => ({ part, did }))
}

/** Whether a text says that something had failed. */
export function tellsOfFailure(text: string): boolean {
  return failedWords.test(text.toLowerCase())
}

/** The deed a text speaks of; undefined where none is plain. */
function deedIn(text: string): Deed | undefined {
  const words = text.toLowerCase()
  return deedWords.find(([, pattern]) => pattern.test(words))?.[0]
}

/** Ids of the parts that a text names. A longer name counts before a shorter one within it. */
export function partsIn(text: string, parts: readonly PartNames[]): readonly string[] {
  let left = ` ${bare(text)} `
  const found = new Map<string, number>()
  const names = parts
    .flatMap(({ id, names: all }) => [id, ...all].map((name) => ({ id, name: ` ${bare(name)} ` })))
    .filter(({ name }) => name.trim() !== '')
    .sort((a, b) => b.name.length - a.name.length)
  for (const { id, name } of names) {
    const at = left.indexOf(name)
    if (at < 0) continue
    if (!found.has(id)) found.set(id, at)
    left = left.replaceAll(name, ` ${'·'.repeat(name.length - 2)} `)
  }
  return [...found].sort((a, b) => a[1] - b[1]).map(([id]) => id)
}

function bare(text: string): string {
  return text
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim()
}
