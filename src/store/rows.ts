/**
 * Rows of the table of entries: written once, and shown to be as they were written when they are read.
 *
 * Every row has a digest of its own. Checking twenty thousand of them one by one takes longer than reading them, so now and then
 * a boat's rows since the last time are sealed under one digest together; only rows after the last seal are checked singly.
 *
 * @module
 */

import { createHash } from 'node:crypto'
import type Database from 'libsql'
import type { Entry } from '../logbook/kinds.js'
import type { Problem } from '../logbook/problems.js'

/** An entry with the text it is kept as. */
export interface Row {
  readonly entry: Entry
  readonly text: string
}

export type CheckedTexts =
  | { readonly ok: true; readonly texts: readonly string[] }
  | { readonly ok: false; readonly problems: readonly Problem[] }

/** So many rows are left unsealed at most. */
const sealAfter = 256

/** Writes all rows or none. */
export function insertRows(database: Database.Database, rows: readonly Row[]): void {
  const insert = database.prepare(
    'INSERT INTO entries (id, boat, device, n, text, sha256) VALUES (?, ?, ?, ?, ?, ?)',
  )
  database.transaction(() => {
    for (const { entry, text } of rows) {
      insert.run(entry.id, entry.boat, entry.device, entry.n, text, digestOf([text]))
    }
    for (const boat of new Set(rows.map(({ entry }) => entry.boat))) seal(database, boat)
  })()
}

/** The texts of a boat in the order in which they were written, or which of them are not as they were written. */
export function readTexts(database: Database.Database, boat: string): CheckedTexts {
  const rows = database
    .prepare('SELECT seq, text FROM entries WHERE boat = ? ORDER BY seq')
    .all(boat) as readonly { readonly seq: number; readonly text: string }[]
  const texts = rows.map(({ text }) => text)
  let at = 0
  for (const { through, sha256 } of sealsOf(database, boat)) {
    const begin = at
    while (at < rows.length && rows[at]!.seq <= through) at += 1
    if (digestOf(texts.slice(begin, at)) !== sha256) return damaged(database, boat)
  }
  const singly = unsealed(database, boat)
  if (singly.some(({ text, sha256 }) => digestOf([text]) !== sha256)) return damaged(database, boat)
  return { ok: true, texts }
}

/** Rows are told one by one; where each is as it was written, some must have gone. */
function damaged(database: Database.Database, boat: string): CheckedTexts {
  const rows = rowsAfter(database, { boat, seq: 0 })
  const problems = rows
    .filter(({ text, sha256 }) => digestOf([text]) !== sha256)
    .map(({ id, text }) => problemOf(id, `${text.slice(0, 60)}…`))
  return { ok: false, problems: problems.length > 0 ? problems : [problemOf(boat, 'entries gone or put in')] }
}

function problemOf(path: string, found: string): Problem {
  return { code: 'damaged', path, found, allowed: 'what was written; take it from a backup' }
}

interface KeptRow {
  readonly id: string
  readonly seq: number
  readonly text: string
  readonly sha256: string
}

function seal(database: Database.Database, boat: string): void {
  const rows = unsealed(database, boat)
  const last = rows.at(-1)
  if (last === undefined || rows.length < sealAfter) return
  database
    .prepare('INSERT INTO seals (boat, through, sha256) VALUES (?, ?, ?)')
    .run(boat, last.seq, digestOf(rows.map(({ text }) => text)))
}

function unsealed(database: Database.Database, boat: string): readonly KeptRow[] {
  return rowsAfter(database, { boat, seq: sealsOf(database, boat).at(-1)?.through ?? 0 })
}

function sealsOf(database: Database.Database, boat: string) {
  return database
    .prepare('SELECT through, sha256 FROM seals WHERE boat = ? ORDER BY through')
    .all(boat) as readonly { readonly through: number; readonly sha256: string }[]
}

function rowsAfter(database: Database.Database, { boat, seq }: { boat: string; seq: number }) {
  return database
    .prepare('SELECT id, seq, text, sha256 FROM entries WHERE boat = ? AND seq > ? ORDER BY seq')
    .all(boat, seq) as readonly KeptRow[]
}

/** Each text is one JSON object, so that where one ends and the next begins is plain without a mark between them. */
function digestOf(texts: readonly string[]): string {
  const hash = createHash('sha256')
  for (const text of texts) hash.update(text)
  return hash.digest('hex')
}
