/**
 * From a log to an answer: prepared once, played further and further, re-weighed when a price is moved, kept.
 *
 * @module
 */

import type { PriceChange } from '../../alternatives/reweigh.js'
import { type Prepared, preparing, withOwnLimits } from '../../alternatives/settle.js'
import { joinSamples, type Sample } from '../../alternatives/simulate.js'
import type { Catalogue } from '../../catalogue/catalogue.js'
import { describeFigure } from '../../catalogue/overrule.js'
import { parseCatalogue } from '../../catalogue/parse.js'
import type { Entry } from '../../logbook/kinds.js'
import type { SetRegister } from '../../register/register-types.js'
import { setCatalogueOf } from '../../register/set-kind-of.js'
import type { CatalogueAnswer } from '../../server/http-types.js'
import { type AnswerView, answerView } from './answer-view.js'
import { basisOf } from './basis.js'
import type { Crew, Job } from './crew.js'
import { isSettled } from './enough.js'
import { forecastView } from './forecast-view.js'
import { keepAnswer, readAnswer } from './kept-answers.js'
import type { AskedOf } from './key.js'
import type { AnswerState, Basis, Conductor, Entries, ForecastState, Stage } from './messages.js'
import { makeMemory } from './remembered.js'

/** Numbers of histories after which it is looked at anew. */
const steps = [500, 1_000, 2_000, 5_000, 10_000, 20_000]
/** As far as it is played when it is asked to go on. */
const furthest = 100_000

/** An answer under way or finished. */
interface Run {
  readonly key: string
  readonly asked: AskedOf
  readonly entries: Entries
  tell: (state: AnswerState) => void
  basis?: Basis
  prepared?: Prepared
  /** Whether each alternative has a repair limit of its own yet. */
  ownLimits: boolean
  samples?: readonly Sample[]
  change: PriceChange
  stage: Stage
  histories: number
  wanted: number
  most: number
  /** What is to be stopped, and by whom: a reader's stop is not undone by coming back. */
  stopped?: 'by-reader' | 'left'
  /** Something is under way; whether it is to go on once it has heard the stop. */
  working: boolean
  again: boolean
  /** Repair limits are being chosen. */
  choosing: boolean
  viewDue: boolean
  view?: AnswerView
  /** The basis that the page has, and when it was last told how far it is. */
  basisTold?: Basis
  toldAt: number
  problem?: string
}

/** As it is kept in the browser. */
interface KeptRun {
  readonly basis: Basis
  readonly samples: readonly Sample[]
  readonly stage: Stage
  readonly ownLimits: boolean
  /** The reader stopped it. */
  readonly byReader: boolean
}

const mostRuns = 4
/** So few histories are kept while more are played, so that a page opened anew begins with them. */
const keptOnTheWay = 2_000

export function makeConductor(crew: Crew): Conductor {
  const runs = new Map<string, Run>()
  /** Registers of the sets asked about, for their figures one by one. */
  const registers = new Map<string, SetRegister>()
  const memory = makeMemory()
  let loaded: Promise<Catalogue> | undefined
  const catalogue = () => {
    loaded ??= fetchCatalogue()
    loaded.catch(() => {
      loaded = undefined
    })
    return loaded
  }

  async function prepare(run: Run): Promise<Prepared> {
    const entries = withYearsKept(await allOf(run.entries), run.asked)
    const question = { ...run.asked, entries, catalogue: await catalogue(), memory }
    const work = preparing(question)
    for (;;) {
      const step = work.next()
      if (step.done) return step.value
      await breath()
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
        await further(run)
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
      say(run, run.samples === undefined ? 'preparing' : 'refining')
      run.prepared = await prepare(run)
      run.basis = basisOf(run.prepared, await catalogue())
    }
    if (run.stopped) return say(run, 'stopped')
    if (run.samples === undefined && !(await playTo(run, steps[0]!))) return
    if (!run.ownLimits && !(await refineLimits(run))) return
    await playOn(run)
  }

  /** Each alternative gets a repair limit of its own; what was played with the first one is let go. */
  async function refineLimits(run: Run): Promise<boolean> {
    const { prepared } = run
    const job = jobOf(run)
    const stopped = () => run.stopped !== undefined
    run.choosing = true
    say(run, 'refining')
    const play = async (alternatives: Job['alternatives'], span: Parameters<Crew['play']>[1]) => {
      const samples = await crew.play({ ...job, alternatives }, span, { stopped })
      if (samples === undefined) throw new Stopped()
      return samples
    }
    try {
      run.prepared = await withOwnLimits(prepared!, { seed: run.asked.seed, play, memory })
    } catch (cause) {
      if (!(cause instanceof Stopped)) throw cause
      say(run, 'stopped')
      return false
    } finally {
      run.choosing = false
    }
    run.ownLimits = true
    run.basis = { ...run.basis!, model: run.prepared.model }
    return playTo(run, steps[0]!, true)
  }

  async function playOn(run: Run): Promise<void> {
    while (run.histories < run.most) {
      const next = steps.find((step) => step > run.histories) ?? run.histories * 2
      if (!(await playTo(run, Math.min(next, run.most)))) return
      if (run.most <= steps.at(-1)! && run.view !== undefined && isSettled(run.view.report)) break
    }
    say(run, 'done')
    await keep(run)
  }

  /** Plays up to a number of histories; false if it was stopped on the way. */
  async function playTo(run: Run, upTo: number, afresh = false): Promise<boolean> {
    const from = afresh ? 0 : run.histories
    run.wanted = upTo
    say(run, 'refining')
    const span = { seed: run.asked.seed, from, count: upTo - from }
    const samples = await crew.play(jobOf(run), span, {
      all: run.samples === undefined,
      stopped: () => run.stopped !== undefined,
      onProgress: (done) => {
        if (!afresh) run.histories = from + done
        if (performance.now() - run.toldAt > tellEveryMs) say(run, 'refining')
      },
    })
    if (samples === undefined) {
      run.histories = from
      say(run, 'stopped')
      await keep(run)
      return false
    }
    run.samples = from === 0 ? samples : joinSamples([run.samples!, samples])
    run.histories = upTo
    showView(run)
    if (upTo <= keptOnTheWay) await keep(run)
    return true
  }

  function jobOf(run: Run): Job {
    const { model, posterior, used } = run.prepared!
    return { id: run.key, of: { model, posterior, used }, alternatives: model.alternatives }
  }

  function stopOthers(key: string): void {
    for (const run of runs.values()) if (run.key !== key) run.stopped ??= 'left'
  }

  function remember(run: Run): void {
    runs.set(run.key, run)
    for (const [key] of [...runs].slice(0, Math.max(0, runs.size - mostRuns))) runs.delete(key)
  }

  return {
    async answer(asked, entries, tell) {
      const { key } = asked
      stopOthers(key)
      const known = runs.get(key)
      const run: Run = known ?? {
        key,
        asked,
        entries,
        tell,
        ownLimits: false,
        change: {},
        stage: 'preparing',
        histories: 0,
        wanted: steps[0]!,
        most: steps.at(-1)!,
        working: false,
        again: false,
        choosing: false,
        viewDue: false,
        toldAt: 0,
      }
      run.tell = tell
      remember(run)
      if (known !== undefined) {
        delete run.basisTold
        say(run, run.stage)
        if (run.samples !== undefined) showView(run)
        if (run.stopped !== 'by-reader' && run.stage !== 'done') await goFurther(run)
        return
      }
      const kept = (await readAnswer(key)) as KeptRun | undefined
      if (kept !== undefined) {
        const { byReader, ...rest } = kept
        Object.assign(run, rest)
        if (byReader) run.stopped = 'by-reader'
        run.histories = kept.samples[0]!.columns[0]!.length
        say(run, kept.stage)
        showView(run)
        if (kept.stage === 'done' || kept.byReader) return
      }
      await goFurther(run)
    },

    async forecast(asked, entries, tell) {
      const key = `forecast ${asked.key}`
      const kept = (await readAnswer(key)) as ForecastState | undefined
      if (kept !== undefined) {
        registers.set(asked.key, kept.basis!.register)
        return tell(kept)
      }
      tell({ stage: 'preparing' })
      try {
        const question = { ...asked, entries: await allOf(entries), catalogue: await catalogue() }
        const state = await forecastView(question, memory)
        registers.set(asked.key, state.basis!.register)
        tell(state)
        await keepAnswer(key, state)
      } catch (cause) {
        tell({ stage: 'failed', problem: cause instanceof Error ? cause.message : String(cause) })
      }
    },

    async prices(key, change) {
      const run = runs.get(key)
      if (run === undefined) return
      run.change = change
      if (run.viewDue || run.samples === undefined) return
      run.viewDue = true
      setTimeout(() => {
        run.viewDue = false
        showView(run)
      })
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
      const register = runs.get(key)?.basis?.register ?? registers.get(key)
      if (register === undefined) return undefined
      const whole = await catalogue()
      const figure = describeFigure(setCatalogueOf(register, whole).catalogue, path)
      if (figure === undefined) return undefined
      const source = whole.sources.find(({ id }) => id === figure.source)
      return { ...figure, sourceTitle: source?.title ?? figure.source }
    },
  }
}

class Stopped extends Error {}

async function allOf(entries: Entries): Promise<readonly Entry[]> {
  const all: Entry[] = []
  for (;;) {
    const some = await entries(all.length)
    if (some.length === 0) return all
    all.push(...some)
  }
}

/** The page is told how far it is no oftener than this. [ms] */
const tellEveryMs = 300

/** Tells the page how far it is. */
function say(run: Run, stage: Stage): void {
  run.stage = stage
  run.toldAt = performance.now()
  const { histories, wanted, problem, choosing } = run
  run.tell({ stage, choosing, histories, wanted, ...(problem === undefined ? {} : { problem }) })
}

/** Gives the page its figures, and what they start from where that is new to it. */
function showView(run: Run): void {
  const { basis, samples, change, asked, stage, histories, wanted, choosing, basisTold } = run
  if (basis === undefined || samples === undefined) return
  const view = answerView(basis.model, samples, { seed: asked.seed, change })
  run.view = view
  run.basisTold = basis
  run.tell({ stage, choosing, histories, wanted, view, ...(basisTold === basis ? {} : { basis }) })
}

async function keep(run: Run): Promise<void> {
  const { basis, samples, stage, ownLimits } = run
  if (basis === undefined || samples === undefined) return
  const byReader = run.stopped === 'by-reader'
  await keepAnswer(run.key, { basis, samples, stage, ownLimits, byReader } satisfies KeptRun)
}

/** Lets messages that wait be heard. */
function breath(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve))
}

/** Tries another number of years: as if an entry said so today, without writing one. */
function withYearsKept(entries: readonly Entry[], { boat, asOf, yearsKept }: AskedOf): readonly Entry[] {
  if (yearsKept === undefined) return entries
  const tried = {
    id: '7ZZZZZZZZZZZZZZZZZZZZZZZZZ',
    version: 1,
    boat,
    set: null,
    from: asOf,
    until: asOf,
    noted: `${asOf}T23:59:59Z`,
    device: 'tried',
    n: 1,
    corrects: [],
    kind: 'terms',
    body: { yearsKept },
  } as Entry
  return [...entries, tried]
}

async function fetchCatalogue(): Promise<Catalogue> {
  const answer = await fetch('/api/catalogue')
  if (!answer.ok) throw new Error(`the catalogue must be served; found status ${answer.status}`)
  const parsed = parseCatalogue(((await answer.json()) as CatalogueAnswer).files)
  if (!parsed.ok)
    throw new Error(`the catalogue must be sound; found ${JSON.stringify(parsed.problems.slice(0, 3))}`)
  return parsed.catalogue
}
