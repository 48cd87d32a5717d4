/**
 * Answers kept in the browser's own store, so that a page that is opened anew costs nothing.
 *
 * @module
 */

const database = 'gensettle-answers'
const store = 'answers'
/** Answers hold their histories: only the last few are kept. */
const mostKept = 6

export interface KeptAnswer {
  readonly key: string
  readonly at: number
  readonly what: unknown
}

/** What was kept under a key, by this very build of the program; undefined where nothing was, or where the browser keeps nothing. */
export async function readAnswer(key: string): Promise<unknown> {
  try {
    const on = await opened()
    const found = await asked<KeptAnswer | undefined>(
      on.transaction(store).objectStore(store).get(stamped(key)),
    )
    return found?.what
  } catch {
    return undefined
  }
}

/** Keeps an answer, and lets the oldest go. That it cannot be kept is no harm: it is worked out again. */
export async function keepAnswer(key: string, what: unknown): Promise<void> {
  try {
    const on = await opened()
    const writing = on.transaction(store, 'readwrite').objectStore(store)
    await asked(writing.put({ key: stamped(key), at: Date.now(), what } satisfies KeptAnswer))
    const keys = await asked(writing.index('at').getAllKeys())
    for (const old of keys.slice(0, Math.max(0, keys.length - mostKept))) writing.delete(old)
  } catch {
    // The store is full or forbidden.
  }
}

/** Another build may reckon otherwise: the address of this script has its content's hash in it. */
function stamped(key: string): string {
  return `${import.meta.url} ${key}`
}

let connection: Promise<IDBDatabase> | undefined

function opened(): Promise<IDBDatabase> {
  connection ??= new Promise((resolve, reject) => {
    const opening = indexedDB.open(database, 1)
    opening.onupgradeneeded = () => {
      opening.result.createObjectStore(store, { keyPath: 'key' }).createIndex('at', 'at')
    }
    opening.onsuccess = () => resolve(opening.result)
    opening.onerror = () => reject(opening.error)
  })
  return connection
}

function asked<T>(request: IDBRequest<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result)
    request.onerror = () => reject(request.error)
  })
}
