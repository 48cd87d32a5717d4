/**
 * What became of a part in a span of the past, as far as the log can tell.
 *
 * @module
 */

import type { LifeModel, LifePart } from '../forecast/life-model.js'
import { dayNumber, daySpan } from '../logbook/dates.js'
import { type Entry, isKind } from '../logbook/kinds.js'
import type { CompleteSpan } from '../register/register-types.js'
import type { PastSpan } from './hindsight-spans.js'

/** A failure met in service that the log tells of, once for its stop and the work that mended it. */
export interface EnteredFailure {
  readonly part: string
  readonly mode?: string
  /** Days between which it came; the same where the day is known. */
  readonly firstDay: number
  readonly lastDay: number
  readonly stopped: boolean
  readonly entry: string
}

/** Why a part's span says nothing of whether its chance was right. */
export const leftOutBecause = [
  'not-complete',
  'stood-broken',
  'day-not-known',
  'renewed-sound',
  'taken-off',
  'set-gone',
] as const
export type LeftOut = (typeof leftOutBecause)[number]

export type Became = 'failed' | 'held' | LeftOut

/** Work that mends a stop comes within this time. Practice, as in the register. [d] */
const mendedWithin = 90

/** Failures met in service: stops with their cause, and parts that work found failed which no stop before it tells of. */
export function failuresEntered(entries: readonly Entry[]): EnteredFailure[] {
  const stops = entries.flatMap((entry): EnteredFailure[] => {
    if (!isKind(entry, 'stop') || entry.body.cause === undefined) return []
    const { part, mode } = entry.body.cause
    const { first, last } = daySpan(entry.from)
    return [failure({ part, mode, firstDay: first, lastDay: last, stopped: true, entry: entry.id })]
  })
  const works = entries.flatMap((entry): EnteredFailure[] => {
    if (!isKind(entry, 'work') || entry.body.why === 'found' || entry.body.why === 'preventive') return []
    const { parts, why } = entry.body
    const firstDay = daySpan(entry.from).first
    const lastDay = daySpan(entry.until).last
    return parts.flatMap(({ part, mode, was }) => {
      const itself = was === 'failed' || (was === undefined && why === 'failed' && parts.length === 1)
      const told = stops.some(
        (stop) => stop.part === part && stop.firstDay <= lastDay && firstDay - stop.lastDay <= mendedWithin,
      )
      return itself && !told
        ? [failure({ part, mode, firstDay, lastDay, stopped: false, entry: entry.id })]
        : []
    })
  })
  return [...stops, ...works].sort((a, b) => a.firstDay - b.firstDay || a.lastDay - b.lastDay)
}

function failure({
  mode,
  ...rest
}: Omit<EnteredFailure, 'mode'> & { readonly mode: string | undefined }): EnteredFailure {
  return mode === undefined ? rest : { ...rest, mode }
}

/** What is known now of a span that is over. */
export interface SpanTruth {
  /** All that is known of the set by now, in its current form. */
  readonly entries: readonly Entry[]
  readonly failures: readonly EnteredFailure[]
  readonly complete: readonly CompleteSpan[]
  /** Parts that stood failed when the span began, as is known by now. */
  readonly brokenBefore: ReadonlySet<string>
}

/**
 * What became of one part of the model in a span.
 *
 * A failure of a visible mode met in service counts, once however often it came. That it held is believed only where the
 * whole span is declared complete for work and for stops; else the span is left out, failures in it too, since nothing
 * tells what did not fail. Left out as well: a part that stood failed already, one that was renewed sound though no
 * service renews it, one that was taken off, and what cannot be dated to one side of the span's ends.
 */
export function becameOf(part: LifePart, span: PastSpan, truth: SpanTruth): Became {
  if (!isComplete(span, truth.complete)) return 'not-complete'
  if (truth.brokenBefore.has(part.id)) return 'stood-broken'
  const { first, last } = daysOf(span)
  const hidden = new Set(part.modes.filter((mode) => mode.hidden).map(({ id }) => id))
  const onlyHidden = hidden.size === part.modes.length
  const own = truth.failures.filter(
    (one) => one.part === part.id && !(one.mode === undefined ? onlyHidden : hidden.has(one.mode)),
  )
  if (own.some(({ firstDay, lastDay }) => firstDay >= first && lastDay <= last)) return 'failed'
  if (own.some(({ firstDay, lastDay }) => firstDay <= last && lastDay >= first)) return 'day-not-known'
  const cutShort = workWithin(truth.entries, first, last).flatMap((entry) =>
    entry.body.parts
      .filter((done) => done.part === part.id)
      .flatMap(({ did, was }): LeftOut[] => {
        if (did === 'removed') return ['taken-off']
        const found = was === 'defective' || was === 'failed'
        return did === 'renewed' && !found && !part.service?.renews ? ['renewed-sound'] : []
      }),
  )
  if (cutShort[0] !== undefined) return cutShort[0]
  return setGoneWithin(truth.entries, first, last) ? 'set-gone' : 'held'
}

/** Whether the log is declared complete, for stops and for work, on every day of a span. */
export function isComplete(span: PastSpan, complete: readonly CompleteSpan[]): boolean {
  const { first, last } = daysOf(span)
  return (['stops', 'work'] as const).every((what) => {
    let reached = first
    for (const { of, firstDay, lastDay } of [...complete].sort((a, b) => a.firstDay - b.firstDay)) {
      if (of === what && firstDay <= reached) reached = Math.max(reached, lastDay + 1)
    }
    return reached > last
  })
}

/** Whether the set stopped in a span, by a failure or for a reason nobody named. */
export function stoppedIn(entries: readonly Entry[], span: PastSpan): boolean {
  const { first, last } = daysOf(span)
  return entries.some((entry) => {
    if (!isKind(entry, 'stop')) return false
    const day = daySpan(entry.from)
    return day.first >= first && day.last <= last
  })
}

/** Failures that a span surely holds, whether or not the log is complete in it. */
export function failuresIn(failures: readonly EnteredFailure[], span: PastSpan): EnteredFailure[] {
  const { first, last } = daysOf(span)
  return failures.filter(({ firstDay, lastDay }) => firstDay >= first && lastDay <= last)
}

/** Parts that a model gives a chance of failing in service: those with a mode that shows. */
export function showingParts(model: LifeModel): LifePart[] {
  return model.parts.filter(({ modes }) => modes.some(({ hidden }) => !hidden))
}

function daysOf({ asOf, until }: PastSpan): { readonly first: number; readonly last: number } {
  return { first: dayNumber(asOf) + 1, last: dayNumber(until) }
}

function workWithin(entries: readonly Entry[], first: number, last: number) {
  return entries.filter((entry): entry is Extract<Entry, { kind: 'work' }> => {
    if (!isKind(entry, 'work')) return false
    return daySpan(entry.from).first <= last && daySpan(entry.until).last >= first
  })
}

function setGoneWithin(entries: readonly Entry[], first: number, last: number): boolean {
  return entries.some((entry) => {
    if (!isKind(entry, 'set') || entry.body.standing !== 'gone') return false
    const day = daySpan(entry.from).first
    return day >= first && day <= last
  })
}
