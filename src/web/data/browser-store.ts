/**
 * What this browser keeps of its own until the server has it, in a small database that survives a crash.
 *
 * @module
 */

import type { Entry } from '../../logbook/kinds.js'
import type { Photograph } from '../../logbook/photographs.js'
import type { Problem } from '../../logbook/problems.js'

/** What is told of a picture beside its bytes. */
export type PictureTold = Pick<Photograph, 'shows' | 'arrows'>

/** An entry on its way to the server. */
export interface Outgoing {
  readonly id: string
  readonly boat: string
  readonly entry: Entry
  /** Keys of pictures that are to be sent first and then named in the entry. */
  readonly pictures: readonly number[]
  /** What is told of these, by their keys. */
  readonly told?: Readonly<Record<number, PictureTold>>
  /** Why the server would not take it; left out: it waits to be sent. */
  readonly refused?: readonly Problem[]
  /** It is the first of its pictures that was not taken; it is kept until somebody leaves it out. */
  readonly pictureRefused?: true
}

/** What one writing to the database may touch. */
export interface Writing {
  readonly outbox: IDBObjectStore
  readonly counts: IDBObjectStore
  readonly self: IDBObjectStore
  readonly pictures: IDBObjectStore
  /** Pictures chosen for entries that are not written yet, by the name of the form. */
  readonly chosen: IDBObjectStore
}

const stores = ['outbox', 'counts', 'self', 'pictures', 'chosen'] as const
const formOf: Readonly<Partial<Record<(typeof stores)[number], IDBObjectStoreParameters>>> = {
  outbox: { keyPath: 'id' },
  pictures: { autoIncrement: true },
}
let opening: Promise<IDBDatabase> | undefined

/** Everything in the outbox, for each boat in the order of its counts. */
export async function readOutbox(): Promise<readonly Outgoing[]> {
  const database = await open()
  const items = (await result(
    database.transaction('outbox').objectStore('outbox').getAll(),
  )) as readonly Outgoing[]
  return [...items].sort((a, b) => (a.boat === b.boat ? a.entry.n - b.entry.n : a.boat < b.boat ? -1 : 1))
}

export async function readPicture(key: number): Promise<Blob | undefined> {
  const database = await open()
  return (await result(database.transaction('pictures').objectStore('pictures').get(key))) as Blob | undefined
}

/** Pictures chosen in a form and not written yet. */
export async function chosenPictures(form: string): Promise<readonly File[]> {
  const database = await open()
  const found = await result(database.transaction('chosen').objectStore('chosen').get(form))
  return (found as readonly File[] | undefined) ?? []
}

/** Keeps the pictures chosen in a form; none are forgotten. */
export function keepChosen(form: string, files: readonly File[]): Promise<void> {
  return writing(async ({ chosen }) => {
    if (files.length === 0) chosen.delete(form)
    else chosen.put([...files], form)
  })
}

/** Does all of `work` or none of it, and returns when it is on disk. One at a time, over all tabs. */
export async function writing<T>(work: (on: Writing) => Promise<T>): Promise<T> {
  const database = await open()
  const transaction = database.transaction([...stores], 'readwrite', { durability: 'strict' })
  const ended = new Promise<void>((resolve, reject) => {
    transaction.oncomplete = () => resolve()
    transaction.onabort = () => reject(transaction.error ?? new Error('the browser could not keep it'))
  })
  const on = Object.fromEntries(stores.map((name) => [name, transaction.objectStore(name)]))
  try {
    const value = await work(on as unknown as Writing)
    await ended
    return value
  } catch (error) {
    try {
      transaction.abort()
    } catch {
      // It had ended already.
    }
    await ended.catch(() => undefined)
    throw error
  }
}

/** What a request of the database gives. */
export function result<T>(request: IDBRequest<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result)
    request.onerror = () => reject(request.error)
  })
}

function open(): Promise<IDBDatabase> {
  opening ??= new Promise<IDBDatabase>((resolve, reject) => {
    const request = indexedDB.open('gensettle', 2)
    request.onupgradeneeded = () => {
      const database = request.result
      for (const name of stores) {
        if (!database.objectStoreNames.contains(name)) database.createObjectStore(name, formOf[name])
      }
    }
    request.onsuccess = () => {
      // A tab with a newer program waits for this one to let go.
      request.result.onversionchange = () => {
        request.result.close()
        opening = undefined
      }
      resolve(request.result)
    }
    request.onerror = () => reject(request.error)
  }).catch((error) => {
    opening = undefined
    throw error
  })
  return opening
}
