/**
 * An answer kept with the decision that was taken on it, and held against what comes out when it is run again.
 *
 * @module
 */

import { deflateSync, Inflate } from 'fflate'
import type { Problem } from '../catalogue/problem.js'
import type { LifeModel } from '../forecast/life-model.js'
import { readLifeModel } from '../forecast/read-life-model.js'
import { longestKeptModel, mostModelBytes } from '../logbook/bodies-decision.js'
import { canonicalText } from '../logbook/canonical.js'
import type { Body } from '../logbook/kinds.js'
import type { Report } from './report.js'
import { column, type Sample } from './sample.js'
import { estimateOf } from './summary.js'

/** Everything that an answer rested on, and its figures. */
export type KeptAnswer = NonNullable<Body<'decision'>['kept']>
export type KeptResult = KeptAnswer['result']

/** The program and the engine that reckoned. */
export type Reckoner = Pick<KeptAnswer, 'program' | 'reckoning' | 'engine'>

/** An answer as it came out. */
export interface Answered {
  readonly model: LifeModel
  readonly samples: readonly Sample[]
  readonly report: Report
}

/** The answer as it is kept; a life model too large for an entry is told. */
export function keepAnswer(
  answered: Answered,
  how: { readonly seed: number; readonly by: Reckoner },
):
  | { readonly ok: true; readonly kept: KeptAnswer }
  | { readonly ok: false; readonly problems: readonly Problem[] } {
  const text = canonicalText(answered.model)
  const readable = readLifeModel(JSON.parse(text))
  if (!readable.ok) return readable
  const bytes = new TextEncoder().encode(text)
  const model = inBase64(deflateSync(bytes, { level: 9 }))
  if (model.length > longestKeptModel || bytes.length > mostModelBytes) {
    const allowed = `a life model that packs into ${longestKeptModel} characters, so that an entry can hold it`
    const found = `${model.length} characters packed, ${bytes.length} bytes unpacked`
    return { ok: false, problems: [{ code: 'too-long', path: 'kept.model', found, allowed }] }
  }
  const { reckoning, ...by } = how.by
  const kept: KeptAnswer = {
    model,
    modelBytes: bytes.length,
    seed: how.seed,
    histories: answered.report.histories,
    ...by,
    ...(reckoning === undefined ? {} : { reckoning }),
    result: resultOf(answered),
  }
  return { ok: true, kept }
}

/** The figures of an answer that are kept. */
export function resultOf({ model, samples, report }: Answered): KeptResult {
  const { best, next, saving, savingError, chanceBest, clearness } = report.verdict
  const barred = new Map(model.alternatives.map((one) => [one.id, one.barred !== undefined]))
  return {
    best,
    next,
    saving,
    savingError: orNull(savingError),
    chanceBest,
    clearness,
    ...(report.walkAway === null ? {} : { walkAway: report.walkAway }),
    alternatives: samples.map((sample) => {
      const { mean, standardError } = estimateOf(column(sample, 'cost'))
      return {
        alternative: sample.alternative,
        mean,
        error: orNull(standardError),
        ...(barred.get(sample.alternative) ? { barred: true as const } : {}),
      }
    }),
  }
}

function orNull(value: number): number | null {
  return Number.isNaN(value) ? null : value
}

/** The life model of a kept answer, or everything that is wrong with what is kept. */
export function keptModel({
  model: packed,
  modelBytes,
}: Pick<KeptAnswer, 'model' | 'modelBytes'>):
  | { readonly ok: true; readonly model: LifeModel }
  | { readonly ok: false; readonly problems: readonly Problem[] } {
  const bytes = unpacked(fromBase64(packed), Math.min(modelBytes, mostModelBytes))
  if (typeof bytes === 'string') return broken(bytes, modelBytes)
  try {
    return readLifeModel(JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes)))
  } catch {
    return broken('bytes that are no JSON', modelBytes)
  }
}

function broken(found: string, bytes: number): { readonly ok: false; readonly problems: readonly Problem[] } {
  const allowed = `a life model of ${bytes} bytes as it was packed`
  return { ok: false, problems: [{ code: 'broken-model', path: 'kept.model', found, allowed }] }
}

/** So much is unpacked at once: a piece can grow a thousandfold. [bytes] */
const piece = 1 << 12

/** Unpacked bytes, or what is wrong with them. Never many more are made than were promised. */
function unpacked(packed: Uint8Array, promised: number): Uint8Array | string {
  const whole = new Uint8Array(promised)
  let at = 0
  let more = false
  const inflate = new Inflate((bytes) => {
    more ||= at + bytes.length > promised
    if (!more) whole.set(bytes, at)
    at += bytes.length
  })
  try {
    for (let from = 0; from < packed.length && !more; from += piece) {
      inflate.push(packed.subarray(from, from + piece), from + piece >= packed.length)
    }
  } catch {
    return 'bytes that cannot be unpacked'
  }
  if (more) return 'more bytes than were promised'
  return at === promised ? whole : `${at} bytes`
}

function inBase64(bytes: Uint8Array): string {
  let letters = ''
  for (const byte of bytes) letters += String.fromCharCode(byte)
  return btoa(letters)
}

function fromBase64(text: string): Uint8Array {
  return Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0))
}

/** A figure that came out otherwise; what is not there on one side is null. */
export interface Difference {
  readonly figure: string
  readonly kept: string | number | boolean | null
  readonly now: string | number | boolean | null
}

/** Every figure of two results held against one another, to the last digit. */
export function compareResults(
  kept: KeptResult,
  now: KeptResult,
): { readonly figures: number; readonly differences: readonly Difference[] } {
  const before = figuresOf(kept)
  const after = figuresOf(now)
  const names = [...new Set([...before.keys(), ...after.keys()])]
  const differences = names.flatMap((figure) => {
    const [a = null, b = null] = [before.get(figure), after.get(figure)]
    return Object.is(a, b) ? [] : [{ figure, kept: a, now: b }]
  })
  return { figures: names.length, differences }
}

/** All figures of a result under names that tell where they stand. */
function figuresOf(value: unknown, path = ''): Map<string, string | number | boolean | null> {
  if (typeof value !== 'object' || value === null) {
    return new Map([[path, value as string | number | boolean | null]])
  }
  const named = Object.entries(value).map(([key, inner]): [string, unknown] => [
    Array.isArray(value) ? (inner as { readonly alternative: string }).alternative : key,
    inner,
  ])
  return new Map(
    named.flatMap(([key, inner]) => [...figuresOf(inner, path === '' ? key : `${path}, ${key}`)]),
  )
}
