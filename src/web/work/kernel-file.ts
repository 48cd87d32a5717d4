/**
 * The simulator's kernel as a file of its own, which workers fetch once rather than each bring along as text.
 *
 * @module
 */

import { warmKernel } from '../../alternatives/kernel.js'
import address from '../../alternatives/kernel.wasm?url'

let ready: Promise<void> | undefined

/** The kernel, fetched and compiled; whoever plays waits for it. */
export function readyKernel(): Promise<void> {
  ready ??= warmKernel(fetchKernel)
  ready.catch(() => {
    ready = undefined
  })
  return ready
}

async function fetchKernel(): Promise<Uint8Array> {
  const answer = await fetch(address)
  if (!answer.ok) throw new Error(`the kernel must be served; found status ${answer.status}`)
  return new Uint8Array(await answer.arrayBuffer())
}
