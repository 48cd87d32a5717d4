/**
 * Reading a boat file into the owner's store: the whole of it, or nothing.
 *
 * @module
 */

import { createHash } from 'node:crypto'
import { closeSync, existsSync, fsyncSync, mkdtempSync, openSync, rmSync, writeSync } from 'node:fs'
import { type FileHandle, open } from 'node:fs/promises'
import { join } from 'node:path'
import { type ReadEntry, readEntryLines } from '../logbook/boat-lines.js'
import { readKept } from '../logbook/kept.js'
import { isKind } from '../logbook/kinds.js'
import { mergeCopies } from '../logbook/merge.js'
import { photographsKept, photographsOf } from '../logbook/photographs.js'
import { type Problem, problemsOf } from '../logbook/problems.js'
import { type ArchiveRules, type Member, readDirectory } from './archive-directory.js'
import { streamMember } from './archive-member.js'
import {
  type BoatFileHeader,
  entriesName,
  headerName,
  headerSchema,
  type LongWork,
  limits,
  memberNamePattern,
  photographName,
} from './boat-file-form.js'
import { stopped } from './export-boat.js'
import { adoptPhotograph, photographPath } from './photographs.js'
import { leftoverPrefix, type Store } from './store.js'

export type Imported =
  | {
      readonly ok: true
      readonly boat: string
      readonly added: number
      readonly alreadyHeld: number
      readonly photographs: number
    }
  | { readonly ok: false; readonly problems: readonly Problem[] }

/**
 * Adds a boat file to the store. A boat that is there already is merged: the union by id.
 *
 * Everything is checked before the first entry is written. Photographs are unpacked beside the store, adopted when all are sound,
 * and swept away where anything is not. Memory does not grow with the photographs.
 */
export async function importBoat(store: Store, path: string, work: LongWork = {}): Promise<Imported> {
  let file: FileHandle
  try {
    file = await open(path, 'r')
  } catch {
    return refused([{ code: 'no-such-file', path: 'file', found: path, allowed: 'a file that can be read' }])
  }
  const incoming = mkdtempSync(join(store.folder, leftoverPrefix))
  try {
    return await importFrom(file, { store, incoming, work })
  } finally {
    rmSync(incoming, { recursive: true, force: true })
    await file.close()
  }
}

interface Place {
  readonly store: Store
  /** Folder for photographs that are not yet adopted. */
  readonly incoming: string
  readonly work: LongWork
}

async function importFrom(file: FileHandle, { store, incoming, work }: Place): Promise<Imported> {
  const directory = await readDirectory(file, rules)
  if (!directory.ok) return directory
  const members = new Map(directory.members.map((member) => [member.name, member]))
  const header = await readHeader(file, members)
  if (!header.ok) return header
  const entries = await readEntries(file, members.get(entriesName), header.header)
  if (!entries.ok) return entries
  const absent = new Set(header.header.absent)
  const problems = [
    ...photographProblems(members, { entries: entries.entries, absent, count: header.header.photographs }),
    ...conflicts(store, entries.entries),
  ]
  if (problems.length > 0) return refused(problems)

  const unpacked = await unpackPhotographs(file, [...members.values()], { store, incoming, work })
  if (!unpacked.ok) return unpacked
  const removed = removedBefore(store, header.header.boat)
  for (const sha256 of unpacked.sound) {
    if (!removed.has(sha256) && !existsSync(photographPath(store.folder, sha256)))
      adoptPhotograph(store.folder, join(incoming, sha256), sha256)
  }
  const texts = entries.entries.map(({ text }) => text)
  const appended = store.append(texts, { absent: new Set([...absent, ...removed]) })
  if (!appended.ok) return appended
  const { added, alreadyHeld } = appended
  return { ok: true, boat: header.header.boat, added, alreadyHeld, photographs: unpacked.sound.length }
}

/** What was taken away here on request does not come back with another copy of the log. */
function removedBefore(store: Store, boat: string): ReadonlySet<string> {
  const entries = store.texts(boat).map(({ text }) => readKept(text))
  return new Set(entries.flatMap((entry) => (isKind(entry, 'photograph-removed') ? [entry.body.sha256] : [])))
}

const rules: ArchiveRules = {
  mostMembers: limits.photographs + 2,
  namePattern: memberNamePattern,
  mostBytes: (name) => {
    if (name === headerName) return limits.headerBytes
    return name === entriesName ? limits.entriesBytes : limits.photographBytes
  },
  mostBytesTogether: limits.totalBytes,
  mostRatio: limits.ratio,
}

type Refused = { readonly ok: false; readonly problems: readonly Problem[] }

function refused(problems: readonly Problem[]): Refused {
  return { ok: false, problems }
}

async function readHeader(
  file: FileHandle,
  members: ReadonlyMap<string, Member>,
): Promise<{ readonly ok: true; readonly header: BoatFileHeader } | Refused> {
  const read = await readText(file, { name: headerName, member: members.get(headerName) })
  if (!read.ok) return read
  let value: unknown
  try {
    value = JSON.parse(read.text)
  } catch {
    return refused([
      { code: 'not-json', path: headerName, found: 'text that is no JSON', allowed: 'a header' },
    ])
  }
  const parsed = headerSchema.safeParse(value)
  if (parsed.success) return { ok: true, header: parsed.data }
  return refused(
    problemsOf(parsed.error, value).map((problem) => ({ ...problem, path: `${headerName} ${problem.path}` })),
  )
}

async function readEntries(
  file: FileHandle,
  member: Member | undefined,
  header: BoatFileHeader,
): Promise<{ readonly ok: true; readonly entries: readonly ReadEntry[] } | Refused> {
  const text = await readText(file, { name: entriesName, member })
  if (!text.ok) return text
  const read = readEntryLines(text.text.split('\n'), { firstLine: 1, boat: header.boat })
  const problems = read.ok
    ? []
    : read.problems.map((problem) => ({ ...problem, path: `${entriesName} ${problem.path}` }))
  if (text.sha256 !== header.entriesSha256) {
    const allowed = 'the digest that the header tells'
    problems.push({ code: 'wrong-digest', path: entriesName, found: text.sha256, allowed })
  }
  if (read.ok && read.entries.length !== header.entries) {
    const allowed = `${header.entries}, as the header tells`
    problems.push({
      code: 'wrong-count',
      path: entriesName,
      found: `${read.entries.length} entries`,
      allowed,
    })
  }
  return read.ok && problems.length === 0 ? read : refused(problems)
}

async function readText(
  file: FileHandle,
  { name, member }: { readonly name: string; readonly member: Member | undefined },
): Promise<{ readonly ok: true; readonly text: string; readonly sha256: string } | Refused> {
  if (member === undefined) {
    return refused([{ code: 'missing', path: name, found: 'no file of that name', allowed: 'one' }])
  }
  const pieces: Uint8Array[] = []
  const problem = await streamMember(file, member, (piece) => pieces.push(Uint8Array.from(piece)))
  if (problem) return refused([problem])
  const bytes = Buffer.concat(pieces)
  try {
    const text = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes)
    return { ok: true, text, sha256: createHash('sha256').update(bytes).digest('hex') }
  } catch {
    return refused([{ code: 'not-text', path: name, found: 'bytes that are no UTF-8', allowed: 'UTF-8' }])
  }
}

/** Every photograph that entries name is there or is said to be lost, with the length they tell; and no other. */
function photographProblems(
  members: ReadonlyMap<string, Member>,
  told: {
    readonly entries: readonly ReadEntry[]
    readonly absent: ReadonlySet<string>
    readonly count: number
  },
): Problem[] {
  const problems: Problem[] = []
  const say = (code: string, path: string, found: string, allowed: string) =>
    problems.push({ code, path, found, allowed })
  const entries = told.entries.map(({ entry }) => entry)
  const wanted = photographsKept(entries)
  const named = new Map(
    entries.flatMap(photographsOf).map((photograph) => [photographName(photograph.sha256), photograph]),
  )
  for (const sha256 of wanted.keys()) {
    if (!members.has(photographName(sha256)) && !told.absent.has(sha256)) {
      say(
        'photograph-missing',
        photographName(sha256),
        'no file of that name',
        'every photograph that entries name',
      )
    }
  }
  let count = 0
  for (const { name, size } of members.values()) {
    if (name === headerName || name === entriesName) continue
    count += 1
    const photograph = named.get(name)
    if (photograph === undefined)
      say('foreign-photograph', name, 'a file that no entry names', 'photographs of entries')
    else if (photograph.bytes !== size)
      say('wrong-length', name, `${size} bytes`, `${photograph.bytes} bytes`)
  }
  if (count !== told.count)
    say('wrong-count', 'photographs', `${count}`, `${told.count}, as the header tells`)
  return problems
}

/** Told before the photographs are unpacked, since that takes longest. */
function conflicts(store: Store, entries: readonly ReadEntry[]): readonly Problem[] {
  const merged = mergeCopies(store.textOf, entries)
  return merged.ok ? [] : merged.problems
}

/** Unpacks all photographs, forced to disk, under the digests that they prove to have. */
async function unpackPhotographs(
  file: FileHandle,
  members: readonly Member[],
  { incoming, work: { onProgress, signal } }: Place,
): Promise<{ readonly ok: true; readonly sound: readonly string[] } | Refused> {
  const sound: string[] = []
  const problems: Problem[] = []
  const total = members.reduce((sum, { size }) => sum + size, 0)
  let done = members
    .filter(({ name }) => name === headerName || name === entriesName)
    .reduce((sum, { size }) => sum + size, 0)
  for (const member of members) {
    const sha256 = /^photographs\/(.*)$/.exec(member.name)?.[1]
    if (sha256 === undefined) continue
    if (signal?.aborted) return refused([stopped])
    const hash = createHash('sha256')
    const output = openSync(join(incoming, sha256), 'wx', 0o600)
    try {
      const problem = await streamMember(file, member, (piece) => {
        hash.update(piece)
        for (let at = 0; at < piece.length; ) at += writeSync(output, piece, at)
        done += piece.length
        onProgress?.({ done, total })
      })
      if (problem) problems.push(problem)
      fsyncSync(output)
    } finally {
      closeSync(output)
    }
    const proved = hash.digest('hex')
    if (proved === sha256) sound.push(sha256)
    else
      problems.push({
        code: 'wrong-digest',
        path: member.name,
        found: proved,
        allowed: 'the digest in its name',
      })
  }
  return problems.length > 0 ? refused(problems) : { ok: true, sound }
}
