/**
 * Questions about parts: names the catalogue does not have, and work on a part that is not there.
 *
 * @module
 */

import { isSurelyBefore } from './dates.js'
import { type Entry, isKind } from './kinds.js'
import { sayEntryOf, sayOn } from './oddities-words.js'
import type { KnownThings, Oddity } from './oddity.js'

/** A part that an entry names, with the failure mode where one is named. */
export interface NamedPart {
  readonly part: string
  readonly mode?: string | undefined
}

/** Every part that an entry names. */
export function partsNamedBy(entry: Entry): readonly NamedPart[] {
  if (isKind(entry, 'fitted')) return [entry.body]
  if (isKind(entry, 'finding')) return entry.body.about
  if (isKind(entry, 'reading')) return entry.body.part === undefined ? [] : [{ part: entry.body.part }]
  if (isKind(entry, 'stop')) return entry.body.cause === undefined ? [] : [entry.body.cause]
  if (isKind(entry, 'work')) return entry.body.parts
  if (isKind(entry, 'danger-safe')) return entry.body.at === undefined ? [] : [entry.body.at]
  if (isKind(entry, 'quote')) return entry.body.covers.parts
  if (isKind(entry, 'alternative')) return entry.body.parts ?? []
  if (isKind(entry, 'bill')) return named(entry.body.parts)
  if (isKind(entry, 'particulars')) return [{ part: entry.body.part }]
  if (isKind(entry, 'order')) return named(entry.body.lines.map(({ part }) => part))
  if (isKind(entry, 'set')) return [...named(entry.body.has), ...named(entry.body.hasNot)]
  if (isKind(entry, 'terms')) return [...named(entry.body.ownerAlsoDoes), ...named(entry.body.ownerNeverDoes)]
  return []
}

/** Questions about parts. Entries in the order of `byDate`. */
export function partOddities(entries: readonly Entry[], known: KnownThings): Oddity[] {
  return [...unknownNames(entries, known), ...workAfterRemoval(entries), ...plansForWhatIsNotThere(entries)]
}

function named(parts: readonly string[] | undefined): NamedPart[] {
  return (parts ?? []).map((part) => ({ part }))
}

/** One question for each name, however often it stands in the log. */
function unknownNames(entries: readonly Entry[], { parts, checks }: KnownThings): Oddity[] {
  const unknown = new Map<string, { readonly code: string; readonly ids: Set<string> }>()
  const ask = (code: string, question: string, id: string) => {
    const asked = unknown.get(question) ?? { code, ids: new Set() }
    unknown.set(question, asked)
    asked.ids.add(id)
  }
  for (const entry of entries) {
    for (const { part, mode } of partsNamedBy(entry)) {
      const modes = parts.get(part)
      if (modes === undefined) {
        ask('unknown-part', `The catalogue has no part "${part}". Which one is meant?`, entry.id)
      } else if (mode !== undefined && !modes.has(mode)) {
        ask(
          'unknown-mode',
          `The part "${part}" has no way of failing called "${mode}". Which one is meant?`,
          entry.id,
        )
      }
    }
    const check = isKind(entry, 'finding')
      ? entry.body.check
      : isKind(entry, 'reading')
        ? entry.body.test
        : undefined
    if (check !== undefined && checks !== undefined && !checks.has(check)) {
      ask('unknown-check', `There is no check or test "${check}". Which one is meant?`, entry.id)
    }
  }
  return [...unknown].map(([question, { code, ids }]) => ({ code, ids: [...ids], question }))
}

/** Work, findings and stops at a part that was taken out and not fitted again. */
function workAfterRemoval(entries: readonly Entry[]): Oddity[] {
  const removed = new Map<string, Entry>()
  const asked: Oddity[] = []
  for (const entry of entries) {
    if (
      !isKind(entry, 'work') &&
      !isKind(entry, 'finding') &&
      !isKind(entry, 'stop') &&
      !isKind(entry, 'fitted')
    )
      continue
    for (const { part } of partsNamedBy(entry)) {
      const key = `${entry.set} ${part}`
      const removal = removed.get(key)
      const deeds = isKind(entry, 'work') ? entry.body.parts.filter((done) => done.part === part) : []
      const putBack = isKind(entry, 'fitted') || deeds.some(({ did }) => did === 'renewed')
      if (removal !== undefined && !putBack && isSurelyBefore(removal.until, entry.from)) {
        asked.push({
          code: 'work-after-removal',
          ids: [removal.id, entry.id],
          question: `The part "${part}" was taken out ${sayOn(removal.until)}, yet the ${sayEntryOf(entry)} is about it. When was it put back?`,
        })
      }
      if (putBack) removed.delete(key)
      else if (deeds.some(({ did }) => did === 'removed')) removed.set(key, entry)
    }
  }
  return asked
}

/** Alternatives that would mend a part which the set is said not to have, or which was taken out and not fitted again. */
function plansForWhatIsNotThere(entries: readonly Entry[]): Oddity[] {
  const there = new Map<string, boolean>()
  for (const entry of entries) {
    const say = (part: string, is: boolean) => there.set(`${entry.set} ${part}`, is)
    if (isKind(entry, 'set')) {
      for (const part of entry.body.has ?? []) say(part, true)
      for (const part of entry.body.hasNot ?? []) say(part, false)
    } else if (isKind(entry, 'fitted')) say(entry.body.part, true)
    else if (isKind(entry, 'work')) {
      for (const { part, did } of entry.body.parts) {
        if (did === 'renewed') say(part, true)
        else if (did === 'removed') say(part, false)
      }
    }
  }
  return entries.flatMap((entry) => {
    if (!isKind(entry, 'alternative')) return []
    const parts = new Set((entry.body.parts ?? []).map(({ part }) => part))
    return [...parts]
      .filter((part) => there.get(`${entry.set} ${part}`) === false)
      .map((part) => ({
        code: 'not-on-the-set',
        ids: [entry.id],
        question: `The alternative "${entry.body.name ?? entry.body.id}" would put right the part "${part}", which by its log the set does not have. Is it there after all?`,
      }))
  })
}
