/**
 * A server on a data folder of its own, as the program starts it, for tests that ask it over a socket.
 *
 * @module
 */

import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs'
import { request } from 'node:http'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { answerSeed } from '../src/alternatives/answer-key.js'
import { computedOf, figuresKeptIn, memoryOf } from '../src/cli/opened.js'
import { shippedCatalogue, shippedDemonstration, shippedFaultModel, shippedKits } from '../src/cli/shipped.js'
import { verdictsOf } from '../src/cli/verdicts.js'
import { listen } from '../src/server/listen.js'
import { readPages } from '../src/server/pages.js'
import { openStore } from '../src/store/store.js'

export interface ServedFolder {
  readonly folder: string
  readonly address: string
  /** "127.0.0.1:4321" */
  readonly host: string
  /** Lets one browser in, once. */
  readonly entrance: string
  /** Of a browser that was let in already. */
  readonly cookie: string
  /** Asks as a page of the server does. */
  ask(path: string, how?: Asking): Promise<Asked>
  stop(): Promise<void>
}

export interface Asking {
  readonly method?: string
  /** Take the place of those that a page of the server sends; undefined: not sent. */
  readonly headers?: Readonly<Record<string, string | undefined>>
  readonly body?: string | Uint8Array
}

export interface Asked {
  readonly status: number
  readonly headers: Readonly<Record<string, string | undefined>>
  readonly bytes: Buffer
  readonly text: string
  json<T = Record<string, unknown>>(): T
}

export { shippedCatalogue }

export interface ServeHow {
  /** Left out: a new one. */
  readonly folder?: string
  /** Left out: a page or two to be sent. */
  readonly pagesFolder?: string
  /** A folder in which answers were worked out already; left out: only the folder itself is looked in. */
  readonly workedOutIn?: string | undefined
}

/** Starts a server. */
export async function serveFolder(how: ServeHow = {}): Promise<ServedFolder> {
  const { folder = mkdtempSync(join(tmpdir(), 'gensettle-')), pagesFolder = trialPages() } = how
  const { workedOutIn = folder } = how
  const opened = openStore(folder)
  if (!opened.ok) throw new Error(JSON.stringify(opened.problems))
  const listening = await listen({
    store: opened.store,
    demonstration: shippedDemonstration(),
    catalogue: shippedCatalogue(),
    faults: shippedFaultModel(),
    kits: shippedKits(),
    pages: readPages(pagesFolder),
    computed: computedOf(workedOutIn),
    onError: (error) => {
      throw error
    },
  })
  if (!listening.ok) throw new Error(JSON.stringify(listening.problems))
  const { address } = listening
  const host = new URL(address).host
  const entered = await ask({ address, host, cookie: '' }, new URL(listening.entrance).pathname)
  const cookie = cookieIn(entered)
  return {
    folder,
    address,
    host,
    entrance: listening.entrance,
    cookie,
    ask: (path, how) => ask({ address, host, cookie }, path, how),
    stop: async () => {
      await listening.stop()
      opened.store.close()
    },
  }
}

/** Works out the answers of the demonstration boats and keeps them in the folder, as a start of the program does. */
export async function workOutAnswers(folder: string): Promise<void> {
  const store = shippedDemonstration()
  const how = { seed: answerSeed, memory: memoryOf(folder), onFigures: figuresKeptIn(folder) }
  for (const name of store.boats()) await verdictsOf({ name, demonstration: true, store }, how)
}

/** The cookie that an answer sets; empty where it sets none. */
export function cookieIn({ headers }: Asked): string {
  return headers['set-cookie']?.split(';')[0] ?? ''
}

interface From {
  readonly address: string
  readonly host: string
  readonly cookie: string
}

/** Not by `fetch`, which sends no Host or Origin of another's choosing. */
function ask({ address, host, cookie }: From, path: string, how: Asking = {}): Promise<Asked> {
  const { method = 'GET', body } = how
  const usual = {
    host,
    cookie,
    ...(method === 'GET' ? {} : { origin: `http://${host}`, 'content-type': 'application/json' }),
    ...(body === undefined ? {} : { 'content-length': String(Buffer.byteLength(body)) }),
  }
  const headers = Object.fromEntries(
    Object.entries({ ...usual, ...how.headers }).filter(([, value]) => value !== undefined && value !== ''),
  ) as Record<string, string>
  return new Promise((resolve, reject) => {
    const asking = request(new URL(path, address), { method, headers, agent: false }, (answer) => {
      const pieces: Buffer[] = []
      answer.on('data', (piece: Buffer) => pieces.push(piece))
      answer.on('error', reject)
      answer.on('end', () => {
        const bytes = Buffer.concat(pieces)
        const text = bytes.toString('utf8')
        const of = Object.fromEntries(
          Object.entries(answer.headers).map(([name, value]) => [name, String(value)]),
        )
        resolve({ status: answer.statusCode ?? 0, headers: of, bytes, text, json: () => JSON.parse(text) })
      })
    })
    asking.on('error', reject)
    if (body !== undefined) asking.write(body)
    asking.end()
  })
}

/** Pages enough to be served. */
function trialPages(): string {
  const folder = mkdtempSync(join(tmpdir(), 'gensettle-pages-'))
  mkdirSync(join(folder, 'assets'))
  writeFileSync(join(folder, 'index.html'), '<!doctype html><title>Trial page</title>')
  writeFileSync(join(folder, 'assets', 'main-1a2b.js'), `export const words = '${'so it goes '.repeat(400)}'`)
  writeFileSync(join(folder, 'notes.exe'), 'never served')
  return folder
}
