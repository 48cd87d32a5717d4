/**
 * Sending what waits in the outbox: one tab at a time, in order, as often as it takes.
 *
 * @module
 */

import type { Entry } from '../../logbook/kinds.js'
import type { Photograph } from '../../logbook/photographs.js'
import type { Problem } from '../../logbook/problems.js'
import type { AppendAnswer, AppendAsked, PhotographAnswer } from '../../server/http-types.js'
import { type Outgoing, readOutbox, readPicture, writing } from './browser-store.js'
import { type Answer, askJson, type Failure, sendJson } from './http.js'
import { refreshBoats, refreshLog } from './log.js'
import { reloadOutbox } from './outbox.js'
import { tellOtherTabs } from './tabs.js'

let asked = false

/** Sends what waits, now if no other tab is at it, else when that one has done. Calling it twice does it once. */
export function sendSoon(): void {
  if (asked) return
  asked = true
  void navigator.locks.request('gensettle-sending', async () => {
    asked = false
    await sendAll()
  })
}

/** Sends until nothing waits, or until the server does not answer: `connection.ts` begins again then. */
async function sendAll(): Promise<void> {
  for (;;) {
    const waiting = (await readOutbox()).filter(({ refused }) => refused === undefined)
    const [first] = waiting
    if (first === undefined) return
    const sent =
      first.pictures.length > 0
        ? await sendPicture(first)
        : await sendEntries(
            first.boat,
            waiting
              .filter(({ boat }) => boat === first.boat)
              .slice(0, mostAtOnce)
              .filter(({ pictures }, index, items) => pictures.length === 0 && !pictureBefore(items, index)),
          )
    if (sent === 'no-answer') return
  }
}

/** Order is kept: nothing goes before an entry whose pictures are still to be sent. */
function pictureBefore(items: readonly Outgoing[], index: number): boolean {
  return items.slice(0, index).some(({ pictures }) => pictures.length > 0)
}

/** So many entries in one request at most. */
const mostAtOnce = 200

type Sent = 'sent' | 'no-answer'

async function sendEntries(boat: string, items: readonly Outgoing[]): Promise<Sent> {
  const value: AppendAsked = { entries: items.map(({ entry }) => JSON.stringify(entry)) }
  const path = `/api/boats/${encodeURIComponent(boat)}/entries`
  const answer = await sendJson<AppendAnswer>(path, value)
  if (!answer.ok && answer.why !== 'refused') return 'no-answer'
  await writing(async ({ outbox }) => {
    items.forEach((item, index) => {
      const problems = refusalOf(answer, index)
      if (problems === undefined) outbox.delete(item.id)
      else outbox.put({ ...item, refused: problems } satisfies Outgoing)
    })
  })
  await Promise.all([refreshBoats(), refreshLog(boat)])
  await reloadOutbox()
  tellOtherTabs({ news: 'log', boat })
  tellOtherTabs({ news: 'outbox' })
  return 'sent'
}

/** Why an entry was not taken; undefined where it was, now or before. */
function refusalOf(answer: Answer<AppendAnswer>, index: number): readonly Problem[] | undefined {
  if (!answer.ok) return answer.problems
  const result = answer.value.results[index]
  return result?.result === 'refused' ? result.problems : undefined
}

/** Sends the first picture of an entry and names it in the entry's text, before that is sent itself. One not taken is kept. */
async function sendPicture(item: Outgoing): Promise<Sent> {
  const [key, ...later] = item.pictures
  const picture = await readPicture(key!)
  const answer = picture === undefined ? lost : await upload(picture)
  if (!answer.ok && answer.why !== 'refused') return 'no-answer'
  await writing(async ({ outbox, pictures }) => {
    if (answer.ok) {
      pictures.delete(key!)
      outbox.put({
        ...item,
        pictures: later,
        entry: naming(item.entry, { ...answer.value.photograph, ...item.told?.[key!] }),
      })
    } else outbox.put({ ...item, refused: answer.problems, pictureRefused: true } satisfies Outgoing)
  })
  await reloadOutbox()
  tellOtherTabs({ news: 'outbox' })
  return 'sent'
}

/** Puts a picture into the store of the server. */
function upload(picture: Blob): Promise<Answer<PhotographAnswer>> {
  return askJson<PhotographAnswer>('/api/photographs', {
    method: 'POST',
    body: picture,
    headers: { 'Content-Type': picture.type },
  })
}

function naming(entry: Entry, photograph: Photograph): Entry {
  const before = 'photographs' in entry.body ? (entry.body.photographs ?? []) : []
  const others = before.filter(({ sha256 }) => sha256 !== photograph.sha256)
  return { ...entry, body: { ...entry.body, photographs: [...others, photograph] } } as Entry
}

const lost: Failure = {
  ok: false,
  why: 'refused',
  problems: [
    { code: 'picture-lost', path: 'photographs', found: 'nothing', allowed: 'the picture; attach it again' },
  ],
}
