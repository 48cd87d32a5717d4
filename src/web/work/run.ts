/**
 * An answer under way or finished: what is known of it, what the page is told, what is kept.
 *
 * @module
 */

import type { AskedOf } from '../../alternatives/answer-key.js'
import { type AnswerView, answerView } from '../../alternatives/answer-view.js'
import type { Basis, Begun, Figures } from '../../alternatives/figures.js'
import type { PriceChange } from '../../alternatives/reweigh.js'
import type { Prepared } from '../../alternatives/settle.js'
import { keepAnswer } from './kept-answers.js'
import type { AnswerState, Entries, Stage } from './messages.js'

/** An answer under way or finished. */
export interface Run {
  readonly key: string
  readonly asked: AskedOf
  readonly entries: Entries
  tell: (state: AnswerState) => void
  /** Of an answer begun before a page asked for it: fulfilled when one does, and what fulfils it. */
  heard?: Promise<void>
  hear?: () => void
  /** Fulfilled when what the server has of it is taken up, and what the page shows of it until then. */
  beginning?: Promise<void>
  begun?: Begun
  prepared?: Prepared
  /** Whether each alternative has a repair limit of its own yet. */
  ownLimits: boolean
  figures?: Figures
  /** Whether rough figures are wanted while there are no others, and what they are. */
  roughFirst: boolean
  rough?: Figures
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
export interface KeptRun {
  readonly figures?: Figures
  readonly rough?: Figures
  readonly stage: Stage
  readonly ownLimits: boolean
  /** The reader stopped it. */
  readonly byReader: boolean
}

/** Numbers of histories after which it is looked at anew. */
export const steps = [500, 1_000, 2_000, 5_000, 10_000, 20_000]

export class Stopped extends Error {}

/** The page is told how far it is no oftener than this. [ms] */
export const tellEveryMs = 300

/** What the page shows: rough figures only while there are no others. */
export function shown(run: Run | undefined): Figures | undefined {
  return run?.figures ?? run?.rough
}

/** Tells the page how far it is. */
export function say(run: Run, stage: Stage): void {
  run.stage = stage
  run.toldAt = performance.now()
  const { problem } = run
  run.tell({ ...progressOf(run), ...(problem === undefined ? {} : { problem }) })
}

export function progressOf({ stage, choosing, figures, rough, histories, wanted }: Run): AnswerState {
  return { stage, choosing, rough: figures === undefined && rough !== undefined, histories, wanted }
}

/** Gives the page its figures, and what they start from where that is new to it. */
export function showView(run: Run): void {
  const told = shownOf(run)
  if (told === undefined) return
  const { basis, view } = told
  const { basisTold } = run
  run.view = view
  run.basisTold = basis
  run.tell({ ...progressOf(run), view, ...(basisTold === basis ? {} : { basis }) })
}

function shownOf(run: Run): Begun | undefined {
  const figures = shown(run)
  if (figures === undefined) return run.begun
  const { basis, samples } = figures
  const { change, asked } = run
  return { basis, view: answerView(basis.model, samples, { seed: asked.seed, change }) }
}

export async function keep(run: Run): Promise<void> {
  const { figures, rough, stage, ownLimits } = run
  const byReader = run.stopped === 'by-reader'
  const of = figures !== undefined ? { figures } : rough !== undefined ? { rough } : undefined
  if (of !== undefined) await keepAnswer(run.key, { ...of, stage, ownLimits, byReader } satisfies KeptRun)
}

/** Shows what the server has of an answer while its histories are on their way. */
export function showBegun(run: Run, begun: Begun): void {
  run.begun = begun
  run.histories = begun.view.histories
  run.wanted = Math.max(run.wanted, run.histories)
  say(run, 'refining')
  showView(run)
}

/** Goes on from histories that were played before; without any, from the first one. */
export function takeUp(run: Run, figures: Figures | undefined): void {
  delete run.begun
  if (figures !== undefined) run.figures = figures
  run.histories = figures?.samples[0]?.columns[0]?.length ?? 0
}

/** Lets messages that wait be heard; throws where a stop was among them. */
export async function breathOf(run: Run): Promise<void> {
  await pause(0)
  if (run.stopped !== undefined) throw new Stopped()
}

export function pause(ms: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, ms))
}

export function newRun(asked: AskedOf & { readonly key: string }, entries: Entries): Run {
  return {
    key: asked.key,
    asked,
    entries,
    tell: () => undefined,
    ownLimits: false,
    roughFirst: true,
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
}
