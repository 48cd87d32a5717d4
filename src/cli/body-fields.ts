/**
 * The fields of each kind of entry as they can be typed: taken from the schemas of the logbook, so that none is forgotten.
 *
 * @module
 */

import * as z from 'zod'
import { forms } from '../logbook/kind-forms.js'
import type { Kind } from '../logbook/kinds.js'

/** One field of a body. */
export interface BodyField {
  /** Names from the body inwards: `tax`, `percent`. */
  readonly path: readonly string[]
  /** As typed, without hyphens before it: `tax-percent`. */
  readonly flag: string
  readonly takes: Takes
  /** What may be typed, in words. */
  readonly words: string
}

type Takes =
  | { readonly form: 'number' | 'text' | 'yes-no' | 'json' }
  | { readonly form: 'record'; readonly keys: readonly string[]; readonly of: readonly Takes[] }
  | { readonly form: 'list'; readonly of: Takes }

/** Fields that have an option of their own, or none. */
const apart = new Set(['photographs', 'kept'])

/** Every field of a kind. */
export function fieldsOf(kind: Kind): readonly BodyField[] {
  return fieldsIn(forms[kind].shape.body as z.ZodObject, [])
}

function fieldsIn(record: z.ZodObject, path: readonly string[]): BodyField[] {
  return Object.entries(record.shape).flatMap(([name, field]) => {
    if (apart.has(name)) return []
    const here = [...path, name]
    const bare = bareOf(field as z.ZodType)
    if (bare instanceof z.ZodObject && path.length === 0 && !hasPart(bare)) return fieldsIn(bare, here)
    const takes = takesOf(bare)
    return [{ path: here, flag: here.map(hyphened).join('-'), takes, words: wordsOf(bare, takes) }]
  })
}

/** What a typed text stands for; where it stands for nothing it is handed on, for the entry's own check to refuse. */
export function valueTyped(takes: Takes, texts: readonly string[]): unknown {
  if (takes.form === 'list') {
    const pieces = texts.flatMap((text) =>
      startsAsJson(text) ? [text] : text.split(takes.of.form === 'record' ? /;/ : /[,;]/),
    )
    const [only] = pieces
    if (pieces.length === 1 && only?.trimStart().startsWith('[')) return jsonOr(only)
    return pieces.map((text) => valueTyped(takes.of, [text.trim()]))
  }
  const text = texts.at(-1) ?? ''
  if (takes.form === 'number') return numberOr(text)
  if (takes.form === 'yes-no') return yesNoOr(text)
  if (takes.form === 'text') return text
  if (takes.form !== 'record' || startsAsJson(text)) return jsonOr(text)
  const pieces = text.split(':')
  return Object.fromEntries(
    pieces.flatMap((piece, i) => {
      const key = takes.keys[i] ?? `more-${i}`
      if (piece.trim() === '' && pieces.length > 1) return []
      return [[key, valueTyped(takes.of[i] ?? { form: 'number' }, [piece])]]
    }),
  )
}

/** Puts a value into a body under its path. */
export function put(body: Record<string, unknown>, path: readonly string[], value: unknown): void {
  const [first, ...rest] = path
  if (first === undefined) return
  if (rest.length === 0) body[first] = value
  else {
    const inner = (body[first] ?? {}) as Record<string, unknown>
    body[first] = inner
    put(inner, rest, value)
  }
}

function bareOf(field: z.ZodType): z.ZodType {
  return field instanceof z.ZodOptional ? bareOf(field.unwrap() as z.ZodType) : field
}

function hasPart(record: z.ZodObject): boolean {
  return 'part' in record.shape
}

function takesOf(field: z.ZodType): Takes {
  if (field instanceof z.ZodNumber || field instanceof z.ZodUnion) return { form: 'number' }
  if (field instanceof z.ZodString || field instanceof z.ZodEnum) return { form: 'text' }
  if (field instanceof z.ZodBoolean || field instanceof z.ZodLiteral) return { form: 'yes-no' }
  if (field instanceof z.ZodArray) return { form: 'list', of: takesOf(bareOf(field.element as z.ZodType)) }
  if (!(field instanceof z.ZodObject)) return { form: 'json' }
  const fields = Object.values(field.shape).map((inner) => takesOf(bareOf(inner as z.ZodType)))
  const flat = fields.every(({ form }) => form === 'number' || form === 'text' || form === 'yes-no')
  return flat ? { form: 'record', keys: Object.keys(field.shape), of: fields } : { form: 'json' }
}

function wordsOf(field: z.ZodType, takes: Takes): string {
  if (takes.form === 'list' && field instanceof z.ZodArray) {
    const of = wordsOf(bareOf(field.element as z.ZodType), takes.of)
    return `several: ${of}; again, or joined by "${takes.of.form === 'record' ? ';' : ','}"`
  }
  if (takes.form === 'record') return takes.keys.join(':')
  if (takes.form === 'json') return 'JSON'
  if (takes.form === 'yes-no') return 'yes or no'
  if (field instanceof z.ZodEnum) return `one of: ${field.options.join(', ')}`
  const issue = field.safeParse(undefined).error?.issues[0]
  return issue?.message ?? ''
}

function startsAsJson(text: string): boolean {
  return /^\s*[[{]/.test(text)
}

function jsonOr(text: string): unknown {
  try {
    return JSON.parse(text) as unknown
  } catch {
    return text
  }
}

function numberOr(text: string): unknown {
  const value = Number(text)
  return text.trim() !== '' && Number.isFinite(value) ? value : text
}

function yesNoOr(text: string): unknown {
  if (/^(yes|true|y)$/i.test(text)) return true
  return /^(no|false|n)$/i.test(text) ? false : text
}

function hyphened(name: string): string {
  return name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)
}
