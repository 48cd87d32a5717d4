/**
 * Posteriors that the server has by it, worked out at its start or at the prompt.
 *
 * @module
 */

import { posteriorFrom } from '../../forecast/posterior-bytes.js'
import type { Posterior } from '../../forecast/posterior-type.js'
import { canonicalText } from '../../logbook/canonical.js'

/** The posterior that rests on this; undefined where the server has none, or does not answer. */
export async function fetchPosterior(restsOn: unknown): Promise<Posterior | undefined> {
  try {
    const text = new TextEncoder().encode(canonicalText(restsOn))
    const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', text))
    const name = Array.from(digest, (byte) => byte.toString(16).padStart(2, '0')).join('')
    const answer = await fetch(`/api/posteriors/${name}?by=${encodeURIComponent(self.location.pathname)}`)
    return answer.status === 200 ? posteriorFrom(shared(await answer.arrayBuffer())) : undefined
  } catch {
    // It is worked out here instead.
    return undefined
  }
}

/** The bytes in memory that other threads see without a copy, where there is such a thing. */
function shared(bytes: ArrayBuffer): Uint8Array {
  if (typeof SharedArrayBuffer === 'undefined') return new Uint8Array(bytes)
  const seen = new Uint8Array(new SharedArrayBuffer(bytes.byteLength))
  seen.set(new Uint8Array(bytes))
  return seen
}
