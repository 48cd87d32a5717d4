/**
 * The job that a decision begins: its name, and what it is to do.
 *
 * @module
 */

import type { Alternative } from '../forecast/life-model.js'
import type { Deed, SetRegister } from '../register/register-types.js'

export interface DecidedJob {
  readonly job?: string
  readonly parts?: readonly { readonly part: string; readonly did: Deed }[]
}

const deeds = {
  renewed: 'renewed',
  reconditioned: 'reconditioned',
  cleared: 'cleaned',
  patched: 'patched',
} as const satisfies Record<string, Deed>

/** A name is at most so long. */
const longestName = 60

/**
 * Taking an alternative that puts parts right begins the job of its quote, or one of its own name and month with those parts;
 * fitting another set begins one without parts. Leaving the set as it is, or doing without, speaks of the one quote that is open.
 */
export function decidedJob(
  { id, now }: Pick<Alternative, 'id' | 'now'>,
  { openQuotes, ownAlternatives, asOf }: Pick<SetRegister, 'openQuotes' | 'ownAlternatives' | 'asOf'>,
): DecidedJob {
  if (now === 'leave' || now === 'give-up') {
    return openQuotes.length === 1 ? { job: openQuotes[0]!.job } : {}
  }
  const ownName = `${id.slice(0, longestName - '-2026-11'.length)}-${asOf.slice(0, 7)}`
  if ('replaceWith' in now) return { job: ownName }
  const own = ownAlternatives.find((one) => one.id === id)
  const inHand = openQuotes.filter(({ covers }) => covers.newSet === undefined).at(-1)
  const quoted = now.quote === undefined ? undefined : (own?.job ?? inHand?.job)
  const parts = new Map(now.parts.map(({ part, outcome }) => [part, deeds[outcome]]))
  return {
    job: quoted ?? ownName,
    parts: [...parts].map(([part, did]) => ({ part, did })),
  }
}
