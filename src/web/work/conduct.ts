/**
 * From a log to an answer: prepared once, played further and further, re-weighed when a price is moved, kept.
 *
 * @module
 */

import { type AskedOf, keyOf } from '../../alternatives/answer-key.js'
import { basisOf } from '../../alternatives/figures.js'
import type { Play } from '../../alternatives/policy.js'
import { joinSamples } from '../../alternatives/sample.js'
import {
  type Prepared,
  posteriorIn,
  posteriorKey,
  prepareRoughly,
  type ReadSet,
  readSet,
  usedStates,
  withAlternativesOf,
  withFirstLimitBy,
  withOwnLimits,
} from '../../alternatives/settle.js'
import { simulate } from '../../alternatives/simulate.js'
import type { Catalogue } from '../../catalogue/catalogue.js'
import { describeFigure } from '../../catalogue/overrule.js'
import type { Posterior } from '../../forecast/posterior-type.js'
import { learnedOverrunOf } from '../../job/actual.js'
import type { SetRegister } from '../../register/register-types.js'
import { setCatalogueOf } from '../../register/set-kind-of.js'
import { makeBearer } from './bear.js'
import { bringPosterior, bringUsed, fetchBegun, fetchHistories } from './computed-before.js'
import type { Crew } from './crew.js'
import { decisionOf } from './decide.js'
import { isSettled } from './enough.js'
import { makeForecaster } from './forecast-view.js'
import { makeJobWorth } from './job-worth.js'
import { readAnswer } from './kept-answers.js'
import { readyKernel } from './kernel-file.js'
import { fetchLessonsTag, lessonsFor } from './lessons.js'
import { makeLooksBack } from './look-back.js'
import type { Conductor, Entries } from './messages.js'
import { allOf, fetchCatalogue, fetchLog, withYearsKept } from './question.js'
import { makeMemory } from './remembered.js'
import {
  breathOf,
  type KeptRun,
  keep,
  newRun,
  pause,
  type Run,
  Stopped,
  say,
  showBegun,
  shown,
  showView,
  steps,
  takeUp,
  tellEveryMs,
} from './run.js'

/** Histories of first figures. */
const firstHistories = 300
/** As far as it is played when it is asked to go on. */
const furthest = 100_000

const mostRuns = 4
/** The page draws its first figures in about this time, and then nothing else should ask for its core. [ms] */
const pageDrawsMs = 150
/** So few are kept while more are played, so that a page opened anew begins with them. */
const keptOnTheWay = 2_000

export function makeConductor(crew: Crew): Conductor {
  const runs = new Map<string, Run>()
  /** Registers of the sets asked about, for their figures one by one. */
  const registers = new Map<string, SetRegister>()
  const memory = makeMemory()
  /** The catalogue; the kernel is ready with it, for whatever is played here. */
  let loaded: Promise<Catalogue> | undefined
  const catalogue = () => {
    loaded ??= Promise.all([fetchCatalogue(), readyKernel()]).then(([fetched]) => fetched)
    loaded.catch(() => {
      loaded = undefined
    })
    return loaded
  }

  /** Everything up to the histories. What waits is heard in between, and a stop with it. */
  async function prepare(run: Run): Promise<Prepared> {
    const { seed } = run.asked
    const entries = withYearsKept(await allOf(run.entries), run.asked)
    const pooled = await lessonsFor(run.asked, { catalogue: await catalogue(), memory })
    const overrun = learnedOverrunOf({ ...run.asked, entries, catalogue: await catalogue() })
    const read = readSet({ ...run.asked, entries, catalogue: await catalogue(), pooled, overrun })
    if (!memory.hasPosterior(posteriorKey(read.bare, seed))) {
      const kept = await bringPosterior(memory, read.bare, seed)
      if (run.roughFirst && shown(run) === undefined) await showRoughly(run, read, kept)
      await bringUsed(memory, read.bare, seed)
    }
    await breathOf(run)
    const posterior = posteriorIn(memory, read.bare, seed)
    await breathOf(run)
    const used = usedStates(read.bare, posterior, seed, memory)
    await breathOf(run)
    const prepared = withAlternativesOf(read, { posterior, used })
    // what was played before goes on with the limits that it was played with
    if (run.figures !== undefined) return { ...prepared, model: run.figures.basis.model }
    return withFirstLimitBy(prepared, { seed, play: playFor(run, prepared), memory })
  }

  /** Begins with what the start of the program or the prompt played, where there is any. */
  async function begin(run: Run): Promise<void> {
    const begun = await fetchBegun(run.key)
    if (begun === undefined) return
    showBegun(run, begun)
    await pageDraws(run)
    const [samples] = await Promise.all([fetchHistories(run.key), readyKernel()]).catch(() => [])
    takeUp(run, samples && { basis: begun.basis, samples })
    // prices that were moved meanwhile
    if (Object.keys(run.change).length > 0) showView(run)
  }

  /** First figures, which the page shows until there are better ones. */
  async function showRoughly(run: Run, read: ReadSet, kept: Posterior | undefined): Promise<void> {
    const { seed } = run.asked
    const prepared = prepareRoughly(read, seed, kept)
    await breathOf(run)
    // so few that it is not worth their while to bring them to others
    const samples = simulate(prepared.model, prepared.posterior, { seed, from: 0, count: firstHistories })
    run.rough = { basis: basisOf(prepared, await catalogue()), samples }
    say(run, 'refining')
    showView(run)
    await pageDraws(run)
    await breathOf(run)
  }

  /** The page is let draw what it has before whoever plays is made ready. */
  async function pageDraws(run: Run): Promise<void> {
    await run.heard
    await pause(pageDrawsMs)
    void crew.warm()
  }

  /** Lets the crew play; what was stopped throws. */
  function playFor(run: Run, prepared: Prepared): Play {
    const { model, posterior, used } = prepared
    return async (alternatives, which) => {
      const job = { id: run.key, of: { model, posterior, used }, alternatives }
      const all = shown(run) === undefined
      const samples = await crew.play(job, which, { all, stopped: () => run.stopped !== undefined })
      if (samples === undefined) throw new Stopped()
      return samples
    }
  }

  async function goFurther(run: Run): Promise<void> {
    delete run.stopped
    run.again = run.working
    if (run.working) return
    run.working = true
    try {
      do {
        run.again = false
        await further(run).catch(async (cause) => {
          if (!(cause instanceof Stopped)) throw cause
          say(run, 'stopped')
          await keep(run)
        })
      } while (run.again && run.stage === 'stopped')
    } catch (cause) {
      run.problem = cause instanceof Error ? cause.message : String(cause)
      say(run, 'failed')
    } finally {
      run.working = false
    }
  }

  async function further(run: Run): Promise<void> {
    if (run.prepared === undefined) {
      say(run, shown(run) === undefined ? 'preparing' : 'refining')
      const { beginning } = run
      delete run.beginning
      await beginning
      run.prepared = await prepare(run)
    }
    if (run.stopped) throw new Stopped()
    if (run.figures === undefined) await playTo(run, steps[0]!)
    if (!run.ownLimits) await refineLimits(run)
    await playOn(run)
  }

  /** Each alternative gets a repair limit of its own; what was played with the first one is let go. */
  async function refineLimits(run: Run): Promise<void> {
    const prepared = run.prepared!
    const play = playFor(run, prepared)
    run.choosing = true
    say(run, 'refining')
    const refined = await withOwnLimits(prepared, { seed: run.asked.seed, play, memory }).finally(() => {
      run.choosing = false
    })
    await playTo(run, Math.max(steps[0]!, run.histories), refined)
  }

  async function playOn(run: Run): Promise<void> {
    while (run.histories < run.most) {
      const next = steps.find((step) => step > run.histories) ?? run.histories * 2
      await playTo(run, Math.min(next, run.most))
      if (run.most <= steps.at(-1)! && run.view !== undefined && isSettled(run.view.report)) break
    }
    say(run, 'done')
    await keep(run)
  }

  /** Plays up to a number of histories, of `afresh` from the first on; throws if it was stopped on the way. */
  async function playTo(run: Run, upTo: number, afresh?: Prepared): Promise<void> {
    const prepared = afresh ?? run.prepared!
    const from = afresh ? 0 : run.histories
    run.wanted = upTo
    say(run, 'refining')
    const span = { seed: run.asked.seed, from, count: upTo - from }
    const { model, posterior, used } = prepared
    const job = { id: run.key, of: { model, posterior, used }, alternatives: model.alternatives }
    const samples = await crew.play(job, span, {
      all: shown(run) === undefined,
      stopped: () => run.stopped !== undefined,
      onProgress: (done) => {
        if (!afresh) run.histories = from + done
        if (performance.now() - run.toldAt > tellEveryMs) say(run, 'refining')
      },
    })
    if (samples === undefined) {
      run.histories = from
      throw new Stopped()
    }
    const { figures } = run
    run.figures =
      from === 0 || figures === undefined
        ? { basis: basisOf(prepared, await catalogue()), samples }
        : { ...figures, samples: joinSamples([figures.samples, samples]) }
    run.prepared = prepared
    run.ownLimits ||= afresh !== undefined
    delete run.rough
    run.histories = upTo
    showView(run)
    if (upTo <= keptOnTheWay) await keep(run)
  }

  const forecast = makeForecaster({ memory, catalogue, registers })
  const bearer = makeBearer(crew, prepare)
  const looksBack = makeLooksBack({ memory, catalogue, crew })
  const ofJob = makeJobWorth(crew, { prepare, catalogue })

  function stopOthers(key: string): void {
    for (const run of runs.values()) if (run.key !== key) run.stopped ??= 'left'
  }

  /** The run of a page on a job, beside those of answers: it shows no figures, and an answer that is kept is still read. */
  let runOfJob: Run | undefined
  function jobRun(asked: AskedOf & { readonly key: string }, entries: Entries): Run {
    if (runOfJob?.key !== asked.key) {
      const prepared = runs.get(asked.key)?.prepared
      const made = { ...newRun(asked, entries), roughFirst: false }
      runOfJob = prepared === undefined ? made : { ...made, prepared }
    }
    return runOfJob
  }

  function remember(run: Run): void {
    runs.set(run.key, run)
    for (const [key] of [...runs].slice(0, Math.max(0, runs.size - mostRuns))) runs.delete(key)
  }

  return {
    async expect(asked) {
      const [log, tag] = await Promise.all([fetchLog(asked.boat), fetchLessonsTag()])
      const { entries } = log
      const heard = log.demonstration || tag === undefined ? {} : { lessons: tag }
      const key = keyOf({ ...asked, ...heard }, entries)
      // what the page asks itself in the meantime goes before, and what is kept needs no beginning
      if (entries.length === 0 || runs.size > 0 || (await readAnswer(key)) !== undefined || runs.size > 0)
        return
      const run = newRun({ ...asked, ...heard, key }, async (from) => entries.slice(from))
      run.heard = new Promise((resolve) => {
        run.hear = resolve
      })
      remember(run)
      run.beginning = begin(run)
      await goFurther(run)
    },

    async answer(asked, entries, tell, { roughFirst }) {
      const { key } = asked
      stopOthers(key)
      const known = runs.get(key)
      const run = known ?? newRun(asked, entries)
      if (known === undefined) run.roughFirst = roughFirst
      run.tell = tell
      run.hear?.()
      remember(run)
      if (known !== undefined) {
        delete run.basisTold
        say(run, run.stage)
        showView(run)
        if (run.stopped !== 'by-reader' && run.stage !== 'done') await goFurther(run)
        return
      }
      const [found] = await Promise.all([readAnswer(key), readyKernel()])
      const kept = found as KeptRun | undefined
      if (kept !== undefined) {
        const { byReader, ...rest } = kept
        Object.assign(run, rest)
        if (byReader) run.stopped = 'by-reader'
        takeUp(run, rest.figures)
        say(run, kept.stage)
        showView(run)
        if (kept.stage === 'done' || kept.byReader) return
      } else run.beginning = begin(run)
      await goFurther(run)
    },

    forecast,

    async prices(key, change) {
      const run = runs.get(key)
      if (run === undefined) return
      run.change = change
      if (run.viewDue || shown(run) === undefined) return
      run.viewDue = true
      setTimeout(() => {
        run.viewDue = false
        showView(run)
      })
    },

    async bearing(key, change, tell) {
      const run = runs.get(key)
      if (run !== undefined) await bearer.bear(run, change, tell)
    },

    async stopBearing() {
      bearer.stop()
    },

    async lookBack(asked, entries, tell, how) {
      if (how.start) stopOthers('')
      await looksBack.look(asked, entries, tell, how)
    },

    async stopLookingBack() {
      looksBack.stop()
    },

    async jobWorth(asked, entries, job, tell) {
      stopOthers('')
      await ofJob.worth(jobRun(asked, entries), job, tell)
    },

    async jobTogether(asked, entries, job, parts) {
      return ofJob.together(jobRun(asked, entries), job, parts)
    },

    async stopJob() {
      ofJob.stop()
    },

    async decision(key) {
      const { figures, asked } = runs.get(key) ?? {}
      return figures && asked && decisionOf(figures, asked)
    },

    async stop(key) {
      const run = runs.get(key)
      if (run !== undefined) run.stopped = 'by-reader'
    },

    async goOn(key) {
      const run = runs.get(key)
      if (run === undefined) return
      if (run.stage === 'done') run.most = furthest
      await goFurther(run)
    },

    async warm() {
      await catalogue()
    },

    async describe(key, path) {
      const register = shown(runs.get(key))?.basis.register ?? registers.get(key)
      if (register === undefined) return undefined
      const whole = await catalogue()
      const figure = describeFigure(setCatalogueOf(register, whole).catalogue, path)
      if (figure === undefined) return undefined
      const source = whole.sources.find(({ id }) => id === figure.source)
      return { ...figure, sourceTitle: source?.title ?? figure.source }
    },
  }
}
