/**
 * Boats and their entries.
 *
 * @module
 */

import { createHash } from 'node:crypto'
import { Hono } from 'hono'
import { bodyLimit } from 'hono/body-limit'
import * as z from 'zod'
import { listOf } from '../logbook/atoms.js'
import { longestEntry, type ParsedEntry, parseEntry } from '../logbook/entry.js'
import type { Problem } from '../logbook/problems.js'
import { problemsOf } from '../logbook/problems.js'
import type { Store } from '../store/store.js'
import { answerBytes } from './answer-bytes.js'
import { onlyTypes, refuse } from './guards.js'
import type { AppendAnswer, BoatsAnswer, EntryResult } from './http-types.js'
import { type Served, whose } from './served.js'

/** So much in one request, and so many entries. */
const limits = { bytes: 20_000_000, entries: 1_000 } as const

export function boatRoutes(served: Served): Hono {
  const { store, demonstration } = served
  const routes = new Hono()
  const tagOf = tags()
  routes.get('/boats', (c) => {
    const own = store.boats()
    const shown = demonstration.boats().filter((boat) => !own.includes(boat))
    const boats = [
      ...own.map((boat) => ({ boat, demonstration: false })),
      ...shown.map((boat) => ({ boat, demonstration: true })),
    ]
    return c.json({ boats } satisfies BoatsAnswer)
  })
  routes.get('/boats/:boat/entries', (c) => {
    const boat = c.req.param('boat')
    const of = whose(served, boat)
    // A boat without entries is no boat yet: her log is empty, and her first entry makes her.
    const read = (of === 'demonstration' ? demonstration : store).lines(boat)
    if (!read.ok) return refuse(c, 409, ...read.problems)
    const after = holdsAlready(read.texts, c.req.query())
    const bytes = new TextEncoder().encode(
      read.texts
        .slice(after)
        .map((text) => `${text}\n`)
        .join(''),
    )
    c.header('Gensettle-After', String(after))
    c.header('Gensettle-Demonstration', of === 'demonstration' ? 'yes' : 'no')
    const type = 'application/x-ndjson; charset=utf-8'
    return answerBytes(c, {
      bytes,
      type,
      tag: `${tagOf(boat, read.texts)}-${after}`,
      cache: 'private, no-cache',
    })
  })
  routes.post(
    '/boats/:boat/entries',
    onlyTypes('application/json'),
    bodyLimit({ maxSize: limits.bytes, onError: (c) => refuse(c, 413, tooLarge(limits.bytes)) }),
    async (c) => {
      const boat = c.req.param('boat')
      if (whose(served, boat) === 'demonstration') {
        const allowed = 'a boat of your own: demonstration boats are only read'
        return refuse(c, 403, { code: 'read-only', path: 'boat', found: boat, allowed })
      }
      const text = await c.req.text()
      const asked = readAsked(text)
      if (!asked.ok) return refuse(c, 400, ...asked.problems)
      return c.json({ results: appendEach(store, boat, asked.entries) } satisfies AppendAnswer)
    },
  )
  return routes
}

/** How many of the first lines whoever asks has already: told by their number and the id of the last. */
function holdsAlready(texts: readonly string[], query: Readonly<Record<string, string>>): number {
  const after = Number(query.after)
  const last = Number.isInteger(after) ? texts[after - 1] : undefined
  if (last === undefined || query.last === undefined) return 0
  return last.includes(`"id":"${query.last}"`) ? after : 0
}

/** The digest of a boat's lines, reckoned once for each length: lines are only ever added. */
function tags(): (boat: string, texts: readonly string[]) => string {
  const known = new Map<string, { readonly count: number; readonly tag: string }>()
  return (boat, texts) => {
    const before = known.get(boat)
    if (before?.count === texts.length) return before.tag
    const hash = createHash('sha256')
    for (const text of texts) hash.update(text)
    const tag = hash.digest('hex').slice(0, 32)
    known.set(boat, { count: texts.length, tag })
    return tag
  }
}

const askedSchema = z.strictObject({ entries: listOf(z.string().max(longestEntry), 1, limits.entries) })

function readAsked(
  text: string,
):
  | { readonly ok: true; readonly entries: readonly string[] }
  | { readonly ok: false; readonly problems: readonly Problem[] } {
  let value: unknown
  try {
    value = JSON.parse(text)
  } catch {
    const problem = { code: 'not-json', path: '', found: 'text that is no JSON', allowed: '{"entries": […]}' }
    return { ok: false, problems: [problem] }
  }
  const parsed = askedSchema.safeParse(value)
  if (parsed.success) return { ok: true, entries: parsed.data.entries }
  return { ok: false, problems: problemsOf(parsed.error, value) }
}

/** Writes each entry for itself: what is wrong with one keeps no other back. Sound ones go to disk together, which is quicker. */
function appendEach(store: Store, boat: string, texts: readonly string[]): readonly EntryResult[] {
  const read = texts.map((text) => readEntry(text, boat))
  const sound = read.flatMap((one) => (one.ok ? [one.entry] : []))
  const held = new Set(sound.filter(({ id }) => store.textOf(id) !== undefined).map(({ id }) => id))
  const together = store.append(texts.filter((_, index) => read[index]!.ok))
  return read.map((one, index) => {
    if (!one.ok) return { result: 'refused', problems: one.problems }
    const appended = together.ok ? together : store.append([texts[index]])
    if (!appended.ok) return { result: 'refused', problems: appended.problems }
    return { result: held.has(one.entry.id) ? 'already-there' : 'written' }
  })
}

function readEntry(text: string, boat: string): ParsedEntry {
  const parsed = parseEntry(text)
  if (!parsed.ok || parsed.entry.boat === boat) return parsed
  const problem = { code: 'other-boat', path: 'boat', found: parsed.entry.boat, allowed: boat }
  return { ok: false, problems: [problem] }
}

export function tooLarge(most: number): Problem {
  return { code: 'too-large', path: '', found: 'a longer body', allowed: `at most ${most} bytes` }
}
