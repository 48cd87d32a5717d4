/**
 * What the server has by it, worked out at its start or at the prompt: posteriors, and figures of answers.
 *
 * @module
 */

import { restsOnAnswer } from '../../alternatives/answer-key.js'
import type { Begun } from '../../alternatives/figures.js'
import type { Memory } from '../../alternatives/memory.js'
import type { Sample } from '../../alternatives/sample.js'
import { posteriorKey, usedKey } from '../../alternatives/settle.js'
import type { LifeModel } from '../../forecast/life-model.js'
import { unpacked } from '../../forecast/packed.js'
import type { Posterior } from '../../forecast/posterior-type.js'
import { canonicalText } from '../../logbook/canonical.js'

/** What is shown of an answer, by its key; undefined where the server has none. */
export function fetchBegun(key: string): Promise<Begun | undefined> {
  return fetchComputed<Begun>(restsOnAnswer(key, 'view'), ArrayBuffer)
}

/** The histories of an answer, by its key; undefined where the server has none. */
export function fetchHistories(key: string): Promise<readonly Sample[] | undefined> {
  // the browser's own store, where they go later, takes no shared memory
  return fetchComputed<readonly Sample[]>(restsOnAnswer(key, 'histories'), ArrayBuffer)
}

/** The posterior of a set, remembered; undefined where the server has none. */
export async function bringPosterior(
  memory: Memory,
  model: LifeModel,
  seed: number,
): Promise<Posterior | undefined> {
  const key = posteriorKey(model, seed)
  const brought = await fetchComputed<Posterior>(key)
  return brought && memory.posterior(key, () => brought)
}

/** Those of candidates that are bought used. */
export async function bringUsed(memory: Memory, model: LifeModel, seed: number): Promise<void> {
  const used = model.candidates.filter((candidate) => candidate.used !== undefined)
  await Promise.all(
    used.map(async ({ id }) => {
      const key = usedKey(model, id, seed)
      const brought = await fetchComputed<Posterior>(key)
      if (brought !== undefined) memory.posterior(key, () => brought)
    }),
  )
}

/** What rests on this; undefined where the server has none, or does not answer. */
async function fetchComputed<T extends object>(
  restsOn: unknown,
  Memory: MemoryKind = sharedMemory,
): Promise<T | undefined> {
  try {
    const text = new TextEncoder().encode(canonicalText(restsOn))
    const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', text))
    const name = Array.from(digest, (byte) => byte.toString(16).padStart(2, '0')).join('')
    const answer = await fetch(`/api/computed/${name}?by=${encodeURIComponent(self.location.pathname)}`)
    if (answer.status !== 200) return undefined
    const brought = unpacked<T>(await allBytes(answer, Memory))
    if (brought !== undefined) performance.mark(broughtMark)
    return brought
  } catch {
    // It is worked out here instead.
    return undefined
  }
}

/** Among the marks of the worker's own time line, so that whoever measures can tell. */
const broughtMark = 'computed before'

type MemoryKind = ArrayBufferConstructor | SharedArrayBufferConstructor

/** Memory that other threads see without a copy, where there is such a thing. */
const sharedMemory: MemoryKind = typeof SharedArrayBuffer === 'undefined' ? ArrayBuffer : SharedArrayBuffer

/** All bytes of an answer. */
async function allBytes({ headers, body }: Response, Memory: MemoryKind): Promise<Uint8Array> {
  const length = Number(headers.get('Content-Length'))
  const bytes = new Uint8Array(new Memory(length))
  const reader = body!.getReader()
  let at = 0
  for (let read = await reader.read(); !read.done; read = await reader.read()) {
    bytes.set(read.value, at)
    at += read.value.length
  }
  if (at !== length) throw new RangeError(`bytes must be ${length}; found ${at}`)
  return bytes
}
