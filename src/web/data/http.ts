/**
 * Asking the server on this machine.
 *
 * @module
 */

import type { Problem } from '../../catalogue/problem.js'
import type { Refusal } from '../../server/http-types.js'

/**
 * What came of asking. `unreachable`: the server does not answer, try again later. `not-let-in`: this browser has not opened the
 * printed address. `refused`: asked wrongly, trying again changes nothing.
 */
export type Answer<T> = { readonly ok: true; readonly value: T } | Failure

export interface Failure {
  readonly ok: false
  readonly why: 'unreachable' | 'not-let-in' | 'refused'
  readonly problems: readonly Problem[]
}

/** Asks, and reads the answer as JSON. */
export async function askJson<T>(path: string, init: RequestInit = {}): Promise<Answer<T>> {
  const asked = await ask(path, init)
  if (!asked.ok) return asked
  try {
    return { ok: true, value: (await asked.value.json()) as T }
  } catch {
    return unreachable
  }
}

/** Sends a value as JSON, and reads the answer as JSON. */
export function sendJson<T>(path: string, value: unknown): Promise<Answer<T>> {
  return askJson<T>(path, {
    method: 'POST',
    body: JSON.stringify(value),
    headers: { 'Content-Type': 'application/json' },
  })
}

/** Asks; an answer that is no success is told as a failure. */
export async function ask(path: string, init: RequestInit = {}): Promise<Answer<Response>> {
  let response: Response
  try {
    response = await fetch(path, init)
  } catch {
    return heard(unreachable)
  }
  if (response.ok) return heard({ ok: true, value: response })
  if (response.status >= 500) return heard(unreachable)
  const problems = await problemsIn(response)
  return heard({ ok: false, why: response.status === 401 ? 'not-let-in' : 'refused', problems })
}

/** How the server answered last; `unknown` before the first answer. */
export type Reach = 'unknown' | 'reachable' | 'unreachable' | 'not-let-in'

let reach: Reach = 'unknown'
const listeners = new Set<() => void>()

export function lastReach(): Reach {
  return reach
}

export function onReach(listener: () => void): () => void {
  listeners.add(listener)
  return () => listeners.delete(listener)
}

function heard<T>(answer: Answer<T>): Answer<T> {
  const now = answer.ok || answer.why === 'refused' ? 'reachable' : answer.why
  if (now !== reach) {
    reach = now
    for (const listener of listeners) listener()
  }
  return answer
}

const unreachable: Failure = {
  ok: false,
  why: 'unreachable',
  problems: [{ code: 'unreachable', path: '', found: 'no answer', allowed: 'the program running' }],
}

async function problemsIn(response: Response): Promise<readonly Problem[]> {
  try {
    const { problems } = (await response.json()) as Refusal
    if (Array.isArray(problems)) return problems
  } catch {
    // No list of problems came with it: the status is all there is to tell.
  }
  return [
    { code: 'refused', path: '', found: `status ${response.status}`, allowed: 'a request of this program' },
  ]
}
