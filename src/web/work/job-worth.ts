/**
 * What belongs with a job, in the worker: played once, kept, and a choice played as a whole when it is asked for.
 *
 * @module
 */

import type { Play } from '../../alternatives/policy.js'
import type { Prepared } from '../../alternatives/settle.js'
import type { Catalogue } from '../../catalogue/catalogue.js'
import { alternativeOfJob } from '../../job/job-action.js'
import { type PlayedJob, planHistories, playJob, playTogether, type Together } from '../../job/plan-job.js'
import { setCatalogueOf } from '../../register/set-kind-of.js'
import type { Crew } from './crew.js'
import { keepAnswer, readAnswer } from './kept-answers.js'
import type { JobAsked, JobWorthState } from './messages.js'
import { type Run, Stopped } from './run.js'

export interface JobWorth {
  readonly worth: (run: Run, job: JobAsked, tell: (state: JobWorthState) => void) => Promise<void>
  readonly together: (run: Run, job: JobAsked, parts: readonly string[]) => Promise<Together | undefined>
  readonly stop: () => void
}

/** The page is told how far it is no oftener than this. [ms] */
const tellEveryMs = 300

/** Only what was asked for last is worked out. */
export function makeJobWorth(
  crew: Crew,
  given: {
    readonly prepare: (run: Run) => Promise<Prepared>
    readonly catalogue: () => Promise<Catalogue>
  },
): JobWorth {
  let latest = 0
  let inHand: { readonly key: string; readonly played: PlayedJob } | undefined

  function playFor(
    run: Run,
    { model, posterior, used }: Prepared,
    how: { readonly stopped: () => boolean; readonly onProgress: (histories: number) => void },
  ): Play {
    return async (alternatives, which) => {
      const job = { id: run.key, of: { model, posterior, used }, alternatives }
      const samples = await crew.play(job, which, { all: true, ...how })
      if (samples === undefined) throw new Stopped()
      return samples
    }
  }

  async function jobOf(prepared: Prepared, job: JobAsked) {
    const { model, register } = prepared
    const { catalogue } = setCatalogueOf(register, await given.catalogue())
    return alternativeOfJob({ model, catalogue, openQuotes: register.openQuotes }, job)
  }

  return {
    async worth(run, job, tell) {
      const mine = ++latest
      const stopped = () => mine !== latest
      const key = keyOf(run, job)
      const kept = (await readAnswer(key)) as JobWorthState | undefined
      if (kept !== undefined) return tell(kept)
      let told = 0
      const onProgress = (histories: number) => {
        if (stopped() || performance.now() - told < tellEveryMs) return
        told = performance.now()
        tell({ stage: 'working', share: histories / planHistories })
      }
      tell({ stage: 'working', share: 0 })
      try {
        run.prepared ??= await given.prepare(run)
        if (stopped()) throw new Stopped()
        const { model } = run.prepared
        const play = playFor(run, run.prepared, { stopped, onProgress })
        const played = await playJob(await jobOf(run.prepared, job), { model, seed: run.asked.seed, play })
        inHand = { key, played }
        const { currency, horizonYears, labour } = model
        const names = Object.fromEntries(model.parts.map(({ id, name }) => [id, name ?? id]))
        const of = { currency, horizonYears, hoursPerDay: labour.hoursPerDay, names }
        const state: JobWorthState = { stage: 'done', share: 1, worth: played.worth, of }
        tell(state)
        await keepAnswer(key, state)
      } catch (cause) {
        if (cause instanceof Stopped) return tell({ stage: 'stopped', share: 0 })
        tell({ stage: 'failed', share: 0, problem: cause instanceof Error ? cause.message : String(cause) })
      }
    },

    async together(run, job, parts) {
      const mine = latest
      const key = keyOf(run, job)
      run.prepared ??= await given.prepare(run)
      const { model } = run.prepared
      const { seed } = run.asked
      const play = playFor(run, run.prepared, { stopped: () => mine !== latest, onProgress: () => undefined })
      try {
        const alone = await jobOf(run.prepared, job)
        const played =
          inHand?.key === key
            ? inHand.played
            : { job: alone, sample: (await play([alone], { seed, from: 0, count: planHistories }))[0]! }
        return await playTogether(played, { parts }, { model, seed, play })
      } catch (cause) {
        if (cause instanceof Stopped) return undefined
        throw cause
      }
    },

    stop: () => {
      latest++
    },
  }
}

function keyOf(run: Run, job: JobAsked): string {
  return `job ${run.key} ${JSON.stringify(job)}`
}
