/**
 * Answers and forecasts as screens use them: asked for once, followed while they get sharper, kept when left.
 *
 * @module
 */

import * as Comlink from 'comlink'
import { startTransition, useEffect, useMemo, useRef, useState } from 'react'
import { type AskedOf, answerSeed, keyOf } from '../../alternatives/answer-key.js'
import type { AnswerView } from '../../alternatives/answer-view.js'
import type { Basis } from '../../alternatives/figures.js'
import type { PriceChange } from '../../alternatives/reweigh.js'
import type { Entry } from '../../logbook/kinds.js'
import { useBoat } from '../data/boat.js'
import { useLessons } from '../data/lessons.js'
import { today } from '../data/today.js'
import { type Live, live } from '../data/value.js'
import { theConductor } from './begin.js'
import type { AnswerState, FigureSource, ForecastState, Stage } from './messages.js'

/** What is on the page; it changes when there is something new to read. */
export interface Shown {
  readonly basis?: Basis
  readonly view?: AnswerView
  /** Why there is no answer. */
  readonly problem?: string
}

/** How far the work is; it changes all the time, and only what shows it looks. */
export interface Progress {
  readonly stage: Stage
  readonly choosing: boolean
  /** What is shown are first figures. */
  readonly rough: boolean
  readonly histories: number
  readonly wanted: number
}

export interface Answer extends Shown {
  /** The log has changed since: what is shown follows it soon. */
  readonly following: boolean
  readonly key: string
  readonly progress: Live<Progress>
  /** Moves prices; an empty change goes back to those of the log. */
  readonly prices: (change: PriceChange) => void
  readonly stop: () => void
  readonly goOn: () => void
}

export interface ForecastAnswer extends ForecastState {
  readonly following: boolean
  readonly key: string
}

interface Followed {
  readonly shown: Live<Shown>
  readonly progress: Live<Progress>
}

const answers = new Map<string, Followed>()
const forecasts = new Map<string, Live<ForecastState>>()
/** What was shown last of each set, until the first figure after a change is there. */
const lastAnswers = new Map<string, Shown>()
const lastForecasts = new Map<string, ForecastState>()

/** The answer for a set as her log stands, or for another number of years kept. */
export function useAnswer(
  boatId: string,
  setId: string,
  tried: { readonly yearsKept?: number } = {},
  how: { readonly roughFirst: boolean } = { roughFirst: true },
): Answer {
  const { asked, ready, entries } = useQuestion(boatId, setId, tried.yearsKept)
  const { key } = asked
  const of = useMemo(() => followed(ready ? key : ''), [key, ready])
  // Only another key is another question: the log may be read anew and be the same.
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key says what is asked
  useEffect(() => {
    if (!ready) return
    const tell = Comlink.proxy((state: AnswerState) => {
      hear(of, state)
      if (of.shown.get().view !== undefined) lastAnswers.set(`${boatId} ${setId}`, of.shown.get())
    })
    void theConductor().answer(asked, Comlink.proxy(entries), tell, how)
  }, [key, of, ready])
  const now = useInSlices(of.shown)
  const last = lastAnswers.get(`${boatId} ${setId}`)
  const following = now.view === undefined && last !== undefined && now.problem === undefined
  const acts = useMemo(
    () => ({
      key,
      progress: of.progress,
      prices: (change: PriceChange) => void theConductor().prices(key, change),
      stop: () => void theConductor().stop(key),
      goOn: () => void theConductor().goOn(key),
    }),
    [key, of],
  )
  return { ...(following ? last : now), ...acts, following }
}

/** What is likely when, as the log stands. */
export function useForecast(boatId: string, setId: string): ForecastAnswer {
  const { asked, ready, entries } = useQuestion(boatId, setId)
  const { key } = asked
  const of = useMemo(() => {
    const place = ready ? key : ''
    const found = forecasts.get(place) ?? live<ForecastState>({ stage: 'preparing' })
    forecasts.set(place, found)
    return found
  }, [key, ready])
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key says what is asked
  useEffect(() => {
    if (!ready || of.get().stage === 'done') return
    const tell = Comlink.proxy((state: ForecastState) => {
      of.set(state)
      if (state.view !== undefined) lastForecasts.set(`${boatId} ${setId}`, state)
    })
    void theConductor().forecast(asked, Comlink.proxy(entries), tell)
  }, [key, of, ready])
  const now = useInSlices(of)
  const last = lastForecasts.get(`${boatId} ${setId}`)
  const following = now.view === undefined && last !== undefined && now.stage !== 'failed'
  return { ...(following ? last : now), following, key }
}

/** A figure of the catalogue as this set has it. */
export function describeFigure(key: string, path: string): Promise<FigureSource | undefined> {
  return theConductor().describe(key, path)
}

export function useQuestion(boat: string, set: string, yearsKept?: number) {
  const log = useBoat(boat)
  const { status, tag } = useLessons()
  const latest = useRef(log.entries)
  latest.current = log.entries
  const asked = useMemo(() => {
    const of: AskedOf = {
      boat,
      set,
      asOf: today(),
      seed: answerSeed,
      ...(yearsKept === undefined ? {} : { yearsKept }),
      ...(log.demonstration || tag === undefined ? {} : { lessons: tag }),
    }
    return { ...of, key: keyOf(of, log.entries) }
  }, [boat, set, log.entries, log.demonstration, yearsKept, tag])
  const entries = async (from: number): Promise<readonly Entry[]> => latest.current.slice(from, from + slice)
  return { asked, ready: log.status === 'ready' && (log.demonstration || status === 'ready'), entries }
}

/** Entries given over in one go: copying them takes a few milliseconds. */
const slice = 1_000

function followed(key: string): Followed {
  const found = answers.get(key)
  if (found !== undefined) return found
  const made: Followed = {
    shown: live<Shown>({}),
    progress: live<Progress>({ stage: 'preparing', choosing: false, rough: false, histories: 0, wanted: 0 }),
  }
  answers.set(key, made)
  return made
}

function hear({ shown, progress }: Followed, state: AnswerState): void {
  const { basis, view, problem, stage, choosing = false, rough = false, histories, wanted } = state
  progress.set({ stage, choosing, rough, histories, wanted })
  if (basis === undefined && view === undefined && problem === undefined) return
  const before = shown.get()
  shown.set({
    ...before,
    ...(basis === undefined ? {} : { basis }),
    ...(view === undefined ? {} : { view }),
    ...(problem === undefined ? {} : { problem }),
  })
}

/** A value whose changes are drawn in short slices, so that what the reader does meanwhile is answered at once. */
function useInSlices<T>(of: Live<T>): T {
  const [state, setState] = useState({ of, value: of.get() })
  useEffect(() => {
    const take = () => startTransition(() => setState({ of, value: of.get() }))
    take()
    return of.on(take)
  }, [of])
  return state.of === of ? state.value : of.get()
}
