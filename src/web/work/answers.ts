/**
 * Answers and forecasts as screens use them: asked for once, followed while they get sharper, kept when left.
 *
 * @module
 */

import * as Comlink from 'comlink'
import { useEffect, useMemo, useRef } from 'react'
import type { PriceChange } from '../../alternatives/reweigh.js'
import type { Entry } from '../../logbook/kinds.js'
import { useBoat } from '../data/boat.js'
import { today } from '../data/today.js'
import { type Live, live, useLive } from '../data/value.js'
import { type AskedOf, keyOf } from './key.js'
import type { AnswerState, Conductor, FigureSource, ForecastState } from './messages.js'

/** The same as at the prompt, so that both say the same. */
const seed = 1

export interface Answer extends AnswerState {
  /** The log has changed since: what is shown follows it soon. */
  readonly following: boolean
  readonly key: string
  /** Moves prices; an empty change goes back to those of the log. */
  prices(change: PriceChange): void
  stop(): void
  goOn(): void
}

export interface ForecastAnswer extends ForecastState {
  readonly following: boolean
  readonly key: string
}

const answers = new Map<string, Live<AnswerState>>()
const forecasts = new Map<string, Live<ForecastState>>()
/** What was shown last of each set, until the first figure after a change is there. */
const lastAnswers = new Map<string, AnswerState>()
const lastForecasts = new Map<string, ForecastState>()

let conductor: Comlink.Remote<Conductor> | undefined

function theConductor(): Comlink.Remote<Conductor> {
  conductor ??= Comlink.wrap<Conductor>(
    new Worker(new URL('./conductor.worker.ts', import.meta.url), { type: 'module' }),
  )
  return conductor
}

/** The answer for a set as her log stands, or for another number of years kept. */
export function useAnswer(
  boatId: string,
  setId: string,
  tried: { readonly yearsKept?: number } = {},
): Answer {
  const boat = useBoat(boatId)
  const ready = boat.status === 'ready'
  const { yearsKept } = tried
  const asked = useMemo(
    () => askedOf(boatId, setId, { entries: boat.entries, yearsKept }),
    [boatId, setId, boat.entries, yearsKept],
  )
  const of = useMemo(() => liveIn(answers, ready ? asked.key : '', firstAnswer), [asked.key, ready])
  const entries = useRef(boat.entries)
  entries.current = boat.entries
  // Only another key is another question: the log may be read anew and be the same.
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key says what is asked
  useEffect(() => {
    if (!ready) return
    const tell = Comlink.proxy((state: AnswerState) => {
      const before = of.get()
      of.set({ ...before, ...state })
      if (of.get().view !== undefined) lastAnswers.set(`${boatId} ${setId}`, of.get())
    })
    void theConductor().answer(asked, Comlink.proxy(inSlices(entries.current)), tell)
  }, [asked.key, of, ready])
  const now = useLive(of)
  const last = lastAnswers.get(`${boatId} ${setId}`)
  const following = now.view === undefined && last !== undefined && now.stage !== 'failed'
  return useMemo(
    () => ({
      ...(following ? { ...now, basis: last?.basis, view: last?.view } : now),
      following,
      key: asked.key,
      prices: (change: PriceChange) => void theConductor().prices(asked.key, change),
      stop: () => void theConductor().stop(asked.key),
      goOn: () => void theConductor().goOn(asked.key),
    }),
    [now, following, last, asked.key],
  ) as Answer
}

/** What is likely when, as the log stands. */
export function useForecast(boatId: string, setId: string): ForecastAnswer {
  const boat = useBoat(boatId)
  const ready = boat.status === 'ready'
  const entries = useRef(boat.entries)
  entries.current = boat.entries
  const asked = useMemo(
    () => askedOf(boatId, setId, { entries: boat.entries }),
    [boatId, setId, boat.entries],
  )
  const of = useMemo(() => liveIn(forecasts, ready ? asked.key : '', firstForecast), [asked.key, ready])
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key says what is asked
  useEffect(() => {
    if (!ready || of.get().stage === 'done') return
    const tell = Comlink.proxy((state: ForecastState) => {
      of.set(state)
      if (state.view !== undefined) lastForecasts.set(`${boatId} ${setId}`, state)
    })
    void theConductor().forecast(asked, Comlink.proxy(inSlices(entries.current)), tell)
  }, [asked.key, of, ready])
  const now = useLive(of)
  const last = lastForecasts.get(`${boatId} ${setId}`)
  const following = now.view === undefined && last !== undefined && now.stage !== 'failed'
  const { key } = asked
  return following
    ? ({ ...now, basis: last.basis, view: last.view, following, key } as ForecastAnswer)
    : { ...now, following, key }
}

/** A figure of the catalogue as this set has it. */
export function describeFigure(key: string, path: string): Promise<FigureSource | undefined> {
  return theConductor().describe(key, path)
}

function askedOf(
  boat: string,
  set: string,
  of: { readonly entries: readonly Entry[]; readonly yearsKept?: number | undefined },
): AskedOf & { readonly key: string } {
  const { entries, yearsKept } = of
  const asked = { boat, set, asOf: today(), seed, ...(yearsKept === undefined ? {} : { yearsKept }) }
  return { ...asked, key: keyOf(asked, entries) }
}

const firstAnswer: AnswerState = { stage: 'preparing', histories: 0, wanted: 0 }
const firstForecast: ForecastState = { stage: 'preparing' }

function liveIn<T>(map: Map<string, Live<T>>, key: string, first: T): Live<T> {
  const found = map.get(key)
  if (found !== undefined) return found
  const made = live(first)
  map.set(key, made)
  return made
}

/** The entries; given over whole, they are copied in one go, and a long log in the time of a few frames. */
function inSlices(entries: readonly Entry[]): () => Promise<readonly Entry[]> {
  return async () => entries
}
