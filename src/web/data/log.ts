/**
 * The logs of the boats as this page holds them: fetched once, then only what is new.
 *
 * @module
 */

import type { Problem } from '../../catalogue/problem.js'
import { type CurrentEntries, currentEntries } from '../../logbook/current.js'
import { readKept } from '../../logbook/kept.js'
import type { Entry } from '../../logbook/kinds.js'
import type { BoatsAnswer } from '../../server/http-types.js'
import { ask, askJson } from './http.js'
import { type Live, live } from './value.js'

export type Status = 'loading' | 'ready' | 'failed'

/** The log of one boat. */
export interface Log extends CurrentEntries {
  readonly status: Status
  readonly problems: readonly Problem[]
  /** Whether she is one of the boats that came with the program. */
  readonly demonstration: boolean
  /** Every entry that the server keeps, in the order in which it was written. */
  readonly kept: readonly Entry[]
  /** Entries of this browser that are not sent yet. They are reckoned with. */
  readonly waiting: readonly Entry[]
}

export interface BoatList {
  readonly status: Status
  readonly problems: readonly Problem[]
  readonly boats: BoatsAnswer['boats']
}

export const boatList: Live<BoatList> = live<BoatList>({ status: 'loading', problems: [], boats: [] })

const logs = new Map<string, Live<Log>>()
const underWay = new Map<string, Promise<void>>()
let listUnderWay: Promise<void> | undefined

/** The log of a boat; asking for it begins to fetch it. */
export function logOf(boat: string): Live<Log> {
  const known = logs.get(boat)
  if (known !== undefined) return known
  const made = live<Log>(unread)
  logs.set(boat, made)
  void refreshLog(boat)
  return made
}

/** Fetches the list of boats; a second call while the first is under way is the same one. */
export function refreshBoats(): Promise<void> {
  listUnderWay ??= fetchBoats().finally(() => {
    listUnderWay = undefined
  })
  return listUnderWay
}

async function fetchBoats(): Promise<void> {
  const answer = await askJson<BoatsAnswer>('/api/boats')
  if (answer.ok) boatList.set({ status: 'ready', problems: [], boats: answer.value.boats })
  else if (boatList.get().status !== 'ready') {
    boatList.set({ status: 'failed', problems: answer.problems, boats: [] })
  }
}

/** Fetches what is new in a boat's log. */
export function refreshLog(boat: string): Promise<void> {
  const going = underWay.get(boat) ?? fetchLog(boat).finally(() => underWay.delete(boat))
  underWay.set(boat, going)
  return going
}

/** Fetches what is new in the list of boats and in every log that was asked for. */
export async function refreshAll(): Promise<void> {
  await Promise.all([refreshBoats(), ...[...logs.keys()].map(refreshLog)])
}

async function fetchLog(boat: string): Promise<void> {
  const of = logOf(boat)
  const { kept } = of.get()
  const last = kept.at(-1)
  const after = last === undefined ? '' : `?after=${kept.length}&last=${last.id}`
  const answer = await ask(`/api/boats/${encodeURIComponent(boat)}/entries${after}`)
  if (!answer.ok) {
    if (of.get().status !== 'ready') of.set({ ...of.get(), status: 'failed', problems: answer.problems })
    return
  }
  const { headers } = answer.value
  const entries = await entriesIn(await answer.value.text())
  const whole = headers.get('Gensettle-After') === '0' ? entries : [...kept, ...entries]
  const demonstration = headers.get('Gensettle-Demonstration') === 'yes'
  of.set(withCurrent({ ...of.get(), status: 'ready', problems: [], demonstration, kept: whole }))
}

/** Tells a boat's log what waits in this browser to be sent. */
export function setWaiting(boat: string, waiting: readonly Entry[]): void {
  const of = logOf(boat)
  const before = of.get()
  if (before.waiting.length === 0 && waiting.length === 0) return
  of.set(withCurrent({ ...before, waiting }))
}

/** The log with the current form of its entries. */
function withCurrent(log: Log): Log {
  const known = new Set(log.kept.map(({ id }) => id))
  const added = log.waiting.filter(({ id }) => !known.has(id))
  return { ...log, ...currentEntries([...log.kept, ...added]) }
}

/** Parses lines a slice at a time, so that the page stays usable meanwhile. */
async function entriesIn(text: string): Promise<readonly Entry[]> {
  const lines = text.split('\n').filter((line) => line !== '')
  const entries: Entry[] = []
  for (let at = 0; at < lines.length; at += slice) {
    if (at > 0) await new Promise((resolve) => setTimeout(resolve, 0))
    for (const line of lines.slice(at, at + slice)) entries.push(readKept(line))
  }
  return entries
}

/** Lines parsed in one go: a few milliseconds. */
const slice = 1_000

const unread: Log = {
  status: 'loading',
  problems: [],
  demonstration: false,
  kept: [],
  waiting: [],
  entries: [],
  disputes: [],
  troubles: [],
}
