/**
 * Writing entries: kept in this browser first, shown at once, sent when the server answers.
 *
 * Each entry gets its id and its count once, here, so that sending it twice writes it once.
 *
 * @module
 */

import { monotonicFactory } from 'ulid'
import type { Draft } from '../../logbook/draft.js'
import { type Entry, presentVersion } from '../../logbook/kinds.js'
import type { Problem } from '../../logbook/problems.js'
import { type Outgoing, type PictureTold, result, type Writing, writing } from './browser-store.js'
import { reloadOutbox } from './outbox.js'
import { sendSoon } from './sending.js'
import { tellOtherTabs } from './tabs.js'

/** What came of writing: the ids of the new entries; or everything that is wrong with them, and then none was written. */
export type Written =
  | { readonly ok: true; readonly ids: readonly string[] }
  | { readonly ok: false; readonly problems: readonly Problem[] }

const nextId = monotonicFactory()

/** A picture with what is told of it. */
export interface ToldPicture {
  readonly file: Blob
  readonly told: PictureTold
}

/** Writes new entries, all or none. Pictures go to the first of them. */
export async function write(
  drafts: readonly Draft[],
  pictures: readonly (Blob | ToldPicture)[] = [],
): Promise<Written> {
  const noted = new Date()
  const composed = drafts.map((draft) => composedFrom(draft, noted))
  const problems = await problemsOf(composed)
  if (problems.length > 0) return { ok: false, problems }
  return kept(async (on) => {
    const device = await deviceOf(on)
    for (const [index, entry] of composed.entries()) {
      const n = await nextCount(on, entry.boat)
      const held = index > 0 ? [] : pictures.map(withTold)
      const keys = await Promise.all(held.map(({ file }) => keep(on, file)))
      const item: Outgoing = {
        id: entry.id,
        boat: entry.boat,
        entry: { ...entry, device, n },
        pictures: keys,
        told: Object.fromEntries(held.map(({ told }, at) => [keys[at]!, told])),
      }
      on.outbox.put(item)
    }
    return composed.map(({ id }) => id)
  })
}

function withTold(picture: Blob | ToldPicture): ToldPicture {
  return picture instanceof Blob ? { file: picture, told: {} } : picture
}

/** Puts another text in the place of one that the server would not take; id and count stay. */
export async function mend(
  refused: Outgoing,
  draft: Draft,
  pictures: readonly Blob[] = [],
): Promise<Written> {
  const { id, noted, device, n } = refused.entry
  const entry = { ...composedFrom(draft, new Date(noted)), id, noted, device, n } as Entry
  const problems = await problemsOf([entry])
  if (problems.length > 0) return { ok: false, problems }
  return kept(async (on) => {
    const keys = await Promise.all(pictures.map((picture) => keep(on, picture)))
    const { boat } = refused
    // Another picture stands in the place of one that was not taken.
    const before = keys.length > 0 ? picturesTaken(on, refused) : refused.pictures
    const told = refused.told ?? {}
    on.outbox.put({ id, boat, entry, pictures: [...before, ...keys], told } satisfies Outgoing)
    return [id]
  })
}

/** Sends an entry without the picture of it that was not taken. */
export async function leavePictureOut(item: Outgoing): Promise<void> {
  await kept(async (on) => {
    const { id, boat, entry, told = {} } = item
    on.outbox.put({ id, boat, entry, pictures: picturesTaken(on, item), told } satisfies Outgoing)
    return []
  })
}

/** The pictures of an entry apart from one that was not taken, which is forgotten. */
function picturesTaken(
  { pictures }: Writing,
  { pictures: keys, pictureRefused }: Outgoing,
): readonly number[] {
  if (!pictureRefused) return keys
  pictures.delete(keys[0]!)
  return keys.slice(1)
}

/** Drops an entry that was never sent. Its count goes to the next one, so that none is missing. */
export async function drop(item: Outgoing): Promise<void> {
  await kept(async (on) => {
    on.outbox.delete(item.id)
    for (const key of item.pictures) on.pictures.delete(key)
    const counts = await countsOf(on, item.boat)
    on.counts.put({ ...counts, free: [...counts.free, item.entry.n] }, item.boat)
    return []
  })
}

/** Does the work durably, then shows it and sends. What the browser cannot keep is told, and nothing is shown as written. */
async function kept(work: (on: Writing) => Promise<readonly string[]>): Promise<Written> {
  let ids: readonly string[]
  try {
    ids = await writing(work)
  } catch (error) {
    const found = error instanceof Error ? error.message : String(error)
    const allowed = 'a browser that may keep data for this page, with room for it'
    return { ok: false, problems: [{ code: 'cannot-be-kept', path: '', found, allowed }] }
  }
  await reloadOutbox()
  tellOtherTabs({ news: 'outbox' })
  sendSoon()
  return { ok: true, ids }
}

function composedFrom(draft: Draft, noted: Date): Entry {
  return {
    until: draft.from,
    corrects: [],
    ...draft,
    version: presentVersion,
    id: nextId(noted.getTime()),
    noted: noted.toISOString(),
    device: unnamed,
    n: 1,
  } as Entry
}

/** Stands where the browser's own name comes when the entry is kept. */
const unnamed = 'browser'

type Judge = typeof import('../../logbook/entry.js').parseEntry

let judge: Judge | undefined

/** The forms bring along what judges entries: whoever types asks no server for it, and a page does without it until then. */
export function judgeBy(parse: Judge): void {
  judge = parse
}

async function problemsOf(entries: readonly Entry[]): Promise<readonly Problem[]> {
  try {
    judge ??= (await import('../../logbook/entry.js')).parseEntry
  } catch {
    const allowed = 'the program running where this page came from: start it, and write once more'
    return [{ code: 'not-reached', path: '', found: 'no answer', allowed }]
  }
  const parse = judge
  return entries.flatMap((entry, index) => {
    const parsed = parse(entry)
    const at = entries.length === 1 ? '' : `entry ${index + 1} `
    return parsed.ok ? [] : parsed.problems.map((one) => ({ ...one, path: `${at}${one.path}`.trimEnd() }))
  })
}

async function deviceOf({ self }: Writing): Promise<string> {
  const known = (await result(self.get('device'))) as string | undefined
  if (known !== undefined) return known
  const bytes = crypto.getRandomValues(new Uint8Array(5))
  const made = `browser-${[...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('')}`
  self.put(made, 'device')
  return made
}

interface Counts {
  readonly last: number
  /** Counts of entries that were dropped before they were sent. */
  readonly free: readonly number[]
}

async function countsOf({ counts }: Writing, boat: string): Promise<Counts> {
  return ((await result(counts.get(boat))) as Counts | undefined) ?? { last: 0, free: [] }
}

async function nextCount(on: Writing, boat: string): Promise<number> {
  const { last, free } = await countsOf(on, boat)
  const [reused, ...rest] = free
  on.counts.put(reused === undefined ? { last: last + 1, free } : { last, free: rest }, boat)
  return reused ?? last + 1
}

async function keep({ pictures }: Writing, picture: Blob): Promise<number> {
  return (await result(pictures.add(picture))) as number
}
