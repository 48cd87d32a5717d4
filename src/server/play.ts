/**
 * Histories played on several threads; the answer is the same, to the bit, for any number of them.
 *
 * @module
 */

import { availableParallelism } from 'node:os'
import { extname } from 'node:path'
import { fileURLToPath } from 'node:url'
import { Piscina } from 'piscina'
import { compile } from '../alternatives/program.js'
import {
  countOf,
  joinSamples,
  type Picked,
  piecesOf,
  type Sample,
  type Span,
} from '../alternatives/sample.js'
import type { Alternative, LifeModel } from '../forecast/life-model.js'
import type { Posterior } from '../forecast/posterior-type.js'
import type { PlayChunk, PlayData, PlayQuestion } from './play-worker.js'

/** Histories in a chunk: some tenths of a second of work, so that progress moves and a stop is soon heard. */
const historiesPerChunk = 500

/** How histories are played. */
interface HowPlayed {
  readonly historiesPerChunk?: number
  readonly onProgress?: (done: { readonly histories: number; readonly of: number }) => void
  /** Stops the work; the promise is then rejected with the signal's reason, and the players are of no more use. */
  readonly signal?: AbortSignal
}

/** Which histories, and how they are played. */
export type PlayOptions = (Span | Picked) & HowPlayed

export interface PlayersOptions {
  /** Threads; by default one for each core. */
  readonly workers?: number
  /** Starting states of used candidates, by candidate index. */
  readonly used?: ReadonlyMap<number, Posterior>
}

/** Worker threads with one set's model in them. */
export interface Players {
  /** Plays histories of every alternative, in chunks that are joined in the order of the histories. */
  readonly play: (alternatives: readonly Alternative[], options: PlayOptions) => Promise<Sample[]>
  /** The same with the alternatives of another model of the same set, which rests on the same posterior. */
  readonly playModel: (model: LifeModel, options: PlayOptions) => Promise<Sample[]>
  readonly close: () => Promise<void>
}

/**
 * Starts the threads; they are to be closed.
 *
 * @throws RangeError if the workers are not a whole number from 1 on.
 */
export function openPlayers(model: LifeModel, posterior: Posterior, options: PlayersOptions = {}): Players {
  const workers = wholeFromOne('workers', options.workers ?? availableParallelism())
  const used = new Map([...(options.used ?? [])].map(([c, states]) => [c, shared(states)]))
  const program = compile(model, shared(posterior), used)
  const crew = makePool({ program }, workers)
  let questions = 0
  const ask = async (asked: Omit<PlayQuestion, 'number'>, how: PlayOptions) => {
    const chunks = chunksOf(how)
    how.signal?.throwIfAborted()
    return joinSamples(await playAll(crew, { number: questions++, ...asked }, chunks, how))
  }
  return {
    play: (alternatives, how) => ask({ alternatives }, how),
    playModel: (other, how) => ask({ model: other, alternatives: other.alternatives }, how),
    close: () => crew.pool.destroy(),
  }
}

/**
 * Plays histories of a model's own alternatives on worker threads, which are closed before the promise settles.
 *
 * @throws RangeError if the span, the workers or the chunk are not whole numbers from 1 on.
 */
export async function playOnWorkers(
  model: LifeModel,
  posterior: Posterior,
  options: PlayOptions & PlayersOptions,
): Promise<Sample[]> {
  chunksOf(options)
  options.signal?.throwIfAborted()
  const players = openPlayers(model, posterior, options)
  try {
    return await players.play(model.alternatives, options)
  } finally {
    await players.close()
  }
}

async function playAll(
  { pool, failing }: Crew,
  question: PlayQuestion,
  chunks: readonly (Span | Picked)[],
  options: PlayOptions,
): Promise<Sample[][]> {
  let histories = 0
  const of = countOf(options)
  const running = chunks.map(async (which) => {
    const samples: Sample[] = await pool.run({ question, which } satisfies PlayChunk, { name: 'playChunk' })
    histories += countOf(which)
    options.onProgress?.({ histories, of })
    return samples
  })
  const { signal } = options
  let stop = () => {}
  let fail = (_: Error) => {}
  const stopped = new Promise<never>((_, reject) => {
    fail = reject
    stop = () => reject(signal?.reason)
  })
  failing.add(fail)
  signal?.addEventListener('abort', stop, { once: true })
  try {
    return await Promise.race([Promise.all(running), stopped])
  } finally {
    signal?.removeEventListener('abort', stop)
    failing.delete(fail)
    for (const chunk of running) chunk.catch(() => undefined)
    stopped.catch(() => undefined)
  }
}

/** At most one chunk each, in order. */
function chunksOf(options: PlayOptions): (Span | Picked)[] {
  wholeFromOne('count', countOf(options))
  const size = wholeFromOne('historiesPerChunk', options.historiesPerChunk ?? historiesPerChunk)
  const { seed, withYears = false } = options
  return piecesOf<Span | Picked>(
    'histories' in options
      ? { seed, withYears, histories: options.histories }
      : { seed, withYears, from: options.from, count: options.count },
    size,
  )
}

function wholeFromOne(name: string, value: number): number {
  if (Number.isInteger(value) && value >= 1) return value
  throw new RangeError(`${name} must be a whole number from 1 on; found ${value}`)
}

/** The same posterior with its large tables in memory that all threads see, so that none is copied for each. */
function shared(posterior: Posterior): Posterior {
  const table = <T extends Float32Array | Uint8Array>(
    values: T,
    make: new (memory: SharedArrayBuffer) => T,
  ): T => {
    if (values.buffer instanceof SharedArrayBuffer) return values
    const copy = new make(new SharedArrayBuffer(values.byteLength))
    copy.set(values)
    return copy
  }
  return {
    ...posterior,
    theta: table(posterior.theta, Float32Array),
    state: table(posterior.state, Uint8Array),
    age: table(posterior.age, Float32Array),
    since: table(posterior.since, Float32Array),
    ageHours: table(posterior.ageHours, Float32Array),
    serviceYears: table(posterior.serviceYears, Float32Array),
    serviceHours: table(posterior.serviceHours, Float32Array),
  }
}

interface Crew {
  readonly pool: Piscina
  /** Told when a thread fails. */
  readonly failing: Set<(cause: Error) => void>
}

/** Compiled, the worker stands beside this file; run from source, it brings its own loader. */
function makePool(data: PlayData, workers: number): Crew {
  const compiled = extname(fileURLToPath(import.meta.url)) === '.js'
  const worker = compiled ? './play-worker.js' : './play-from-source.mjs'
  const pool = new Piscina({
    filename: fileURLToPath(new URL(worker, import.meta.url)),
    execArgv: [],
    minThreads: workers,
    maxThreads: workers,
    workerData: data,
  })
  // A worker that fails between questions, or answers after a stop, tells it here; unheard it would end the program.
  const failing: Crew['failing'] = new Set()
  pool.on('error', (cause: Error) => {
    for (const fail of failing) fail(cause)
  })
  return { pool, failing }
}
