/**
 * Looking back as its page uses it: what was kept is there at once, anything else only when it is asked for.
 *
 * @module
 */

import * as Comlink from 'comlink'
import { startTransition, useEffect, useMemo, useState } from 'react'
import { type AskedOf, keyOf } from '../../alternatives/answer-key.js'
import type { Boat } from '../data/boat.js'
import { today } from '../data/today.js'
import { theConductor } from './begin.js'
import type { LookBackAsked, LookBackState } from './look-back-says.js'

/** The same as at the prompt, so that both say the same. */
const seed = 1
/** Entries given over in one go: copying them takes a few milliseconds. */
const slice = 1_000

export interface LooksBackOn {
  readonly state: LookBackState
  /** The log is not read yet. */
  readonly waits: boolean
  readonly start: () => void
  readonly stop: () => void
}

export function useLookBack(log: Boat, set: string, { months, most, by }: LookBackAsked): LooksBackOn {
  // Corrected entries too: what stood in the log on a past day may have been corrected since.
  const all = useMemo(() => {
    const known = new Set(log.kept.map(({ id }) => id))
    return [...log.kept, ...log.waiting.filter(({ id }) => !known.has(id))]
  }, [log.kept, log.waiting])
  const asked = useMemo(() => {
    const of: AskedOf = { boat: log.id, set, asOf: today(), seed }
    return { ...of, key: keyOf(of, all) }
  }, [log.id, set, all])
  const waits = log.status !== 'ready'
  const which = waits ? '' : `${asked.key} ${months} ${most} ${by}`
  const [started, setStarted] = useState({ of: '', times: 0 })
  const [heard, setHeard] = useState<{ readonly of: string; readonly state: LookBackState }>()
  const isStarted = which !== '' && started.of === which
  const times = isStarted ? started.times : 0
  // biome-ignore lint/correctness/useExhaustiveDependencies: `which` says all that it hangs on
  useEffect(() => {
    if (which === '') return
    let gone = false
    const tell = Comlink.proxy((state: LookBackState) => {
      if (!gone) startTransition(() => setHeard({ of: which, state }))
    })
    const entries = Comlink.proxy(async (from: number) => all.slice(from, from + slice))
    void theConductor().lookBack(asked, entries, tell, { months, most, by, start: isStarted })
    return () => {
      gone = true
      void theConductor().stopLookingBack()
    }
  }, [which, times])
  return {
    state: heard !== undefined && heard.of === which ? heard.state : { stage: 'asleep' },
    waits: waits || heard?.of !== which,
    start: () => setStarted(({ of, times: before }) => ({ of: which, times: of === which ? before + 1 : 1 })),
    stop: () => void theConductor().stopLookingBack(),
  }
}
