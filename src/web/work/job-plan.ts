/**
 * What belongs with a job, as its page uses it: played by the workers, chosen by the solver anew whenever a limit is moved, and
 * the choice played as a whole.
 *
 * @module
 */

import * as Comlink from 'comlink'
import { useEffect, useMemo, useState } from 'react'
import type { WorthOfAdditions } from '../../job/additions.js'
import type { Bundle, Bundled, BundleLimits } from '../../job/bundle.js'
import type { Job } from '../../job/jobs.js'
import { bundlingOf, type Together } from '../../job/plan-job.js'
import type { OfSet } from '../of-set.js'
import { useQuestion } from './answers.js'
import { theConductor } from './begin.js'
import type { Chooser } from './bundle.worker.js'
import type { JobAsked, JobWorthState } from './messages.js'

export interface JobPlan extends JobWorthState {
  /** The choice within the limits, and the next best; undefined while it is looked for. */
  readonly bundled?: Bundled
  /** The choice played as a whole; undefined while it is played, or where nothing is chosen. */
  readonly together?: Together
  readonly stop: () => void
  readonly goOn: () => void
}

export function useJobPlan(of: OfSet, job: Job, limits: BundleLimits): JobPlan {
  const { asked, ready, entries } = useQuestion(of.boat, of.set)
  const wanted = useMemo((): JobAsked => {
    const { name, parts, what, alternative } = job
    return {
      name,
      parts,
      ...(what === undefined ? {} : { what }),
      ...(alternative === undefined ? {} : { alternative }),
    }
  }, [job])
  const question = ready ? `${asked.key} ${JSON.stringify(wanted)}` : ''
  const [heard, setHeard] = useState<{ readonly of: string; readonly state: JobWorthState }>()
  const [again, setAgain] = useState(0)
  // biome-ignore lint/correctness/useExhaustiveDependencies: the question says all that it hangs on
  useEffect(() => {
    if (question === '') return
    let gone = false
    const tell = Comlink.proxy((state: JobWorthState) => {
      if (!gone) setHeard({ of: question, state })
    })
    void theConductor().jobWorth(asked, Comlink.proxy(entries), wanted, tell)
    return () => {
      gone = true
      void theConductor().stopJob()
    }
  }, [question, again])
  const state: JobWorthState = heard?.of === question ? heard.state : { stage: 'working', share: 0 }
  const bundled = useChoice(state.worth, limits)
  const best = bundled?.ok ? bundled.best : undefined
  const together = useTogether(`${question} ${best?.parts.join(' ') ?? ''}`, best, (parts) =>
    theConductor().jobTogether(asked, Comlink.proxy(entries), wanted, parts),
  )
  return {
    ...state,
    ...(bundled === undefined ? {} : { bundled }),
    ...(together === undefined ? {} : { together }),
    stop: () => void theConductor().stopJob(),
    goOn: () => setAgain((times) => times + 1),
  }
}

/** Chosen anew when a limit is moved; the last choice stays until the next is there. */
function useChoice(worth: WorthOfAdditions | undefined, { money, hours }: BundleLimits): Bundled | undefined {
  const [bundled, setBundled] = useState<Bundled>()
  const chooser = useChooser(worth !== undefined)
  useEffect(() => {
    if (worth === undefined || chooser === undefined) return setBundled(undefined)
    let isWanted = true
    const limits = {
      ...(money === undefined ? {} : { money }),
      ...(hours === undefined ? {} : { hours }),
    }
    const failed = (cause: unknown): Bundled => ({ ok: false, words: String(cause) })
    void chooser
      .choose(bundlingOf(worth, limits))
      .catch(failed)
      .then((found) => isWanted && setBundled(found))
    return () => {
      isWanted = false
    }
  }, [worth, money, hours, chooser])
  return bundled
}

/** The solver in a worker of its own, from when it is needed until the page is left. */
function useChooser(isNeeded: boolean): Comlink.Remote<Chooser> | undefined {
  const [chooser, setChooser] = useState<Comlink.Remote<Chooser>>()
  useEffect(() => {
    if (!isNeeded) return
    const worker = new Worker(new URL('./bundle.worker.ts', import.meta.url), { type: 'module' })
    const made = Comlink.wrap<Chooser>(worker)
    setChooser(() => made)
    return () => {
      worker.terminate()
      setChooser(undefined)
    }
  }, [isNeeded])
  return chooser
}

function useTogether(
  key: string,
  best: Bundle | undefined,
  ask: (parts: readonly string[]) => Promise<Together | undefined>,
): Together | undefined {
  const [heard, setHeard] = useState<{ readonly of: string; readonly together: Together | undefined }>()
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key says all that it hangs on
  useEffect(() => {
    if (best === undefined || best.parts.length === 0) return
    let isWanted = true
    void ask(best.parts).then((together) => isWanted && setHeard({ of: key, together }))
    return () => {
      isWanted = false
    }
  }, [key])
  return heard?.of === key ? heard.together : undefined
}
