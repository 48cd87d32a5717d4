/**
 * From what is typed in a form to the body of an entry, and back.
 *
 * A form holds texts by the key of their field; those of rows by `parts.0.did`. Everything is kept as it was typed.
 *
 * @module
 */

import type { LogDate } from '../../logbook/dates.js'
import { toKept } from '../../units/spoken.js'
import { sayDate } from '../words/say.js'
import { type Field, isRows, type Single, type Takes } from './fields/field.js'
import { monthsTyped, pointsText, pointsTyped } from './lists.js'
import { dateTyped, numberTyped } from './typed.js'

/** What stands in a form, by field. */
export type Values = Readonly<Record<string, string>>

type Fields = Record<string, unknown>

/** What cannot be understood, by field. */
export type Misread = Readonly<Record<string, 'number' | 'date'>>

/**
 * The body that was typed. Fields that the form does not have stay as in `base`. What cannot be read as a number or a date is
 * named in `misread`, and left as its text.
 */
export function bodyOf(
  fields: readonly Field[],
  values: Values,
  { base = {}, today }: { readonly base?: object; readonly today: LogDate },
): { readonly body: object; readonly misread: Misread } {
  const body = structuredClone(base) as Fields
  const misread: Record<string, 'number' | 'date'> = {}
  const read = (field: Single, key: string, into: Fields) => {
    const value = valueTyped(field.takes, values[key] ?? '', today)
    if (value === 'no-number') misread[key] = 'number'
    if (value === 'no-date') misread[key] = 'date'
    put(into, field.key, value)
  }
  for (const field of fields) {
    if (!isRows(field)) {
      read(field, field.key, body)
      continue
    }
    const rows = rowsIn(values, field.key).flatMap((row) => {
      const item: Fields = {}
      for (const inner of field.rows) read(inner, `${field.key}.${row}.${inner.key}`, item)
      return Object.keys(item).length === 0 ? [] : [inKeptUnit(item)]
    })
    put(body, field.key, rows.length > 0 || field.key === 'covers.parts' ? rows : undefined)
  }
  return { body, misread }
}

/** What a form shows of a body. */
export function valuesOf(fields: readonly Field[], body: object): Values {
  const values: Record<string, string> = {}
  for (const field of fields) {
    const value = get(body, field.key)
    if (!isRows(field)) put1(values, field.key, textOf(field.takes, value))
    else {
      for (const [row, item] of ((value ?? []) as readonly object[]).entries()) {
        for (const inner of field.rows)
          put1(values, `${field.key}.${row}.${inner.key}`, textOf(inner.takes, get(item, inner.key)))
      }
    }
  }
  return values
}

/** The rows of a list for which anything stands in the form, in order. */
export function rowsIn(values: Values, key: string): readonly number[] {
  const rows = new Set<number>()
  for (const name of Object.keys(values)) {
    if (name.startsWith(`${key}.`) && values[name] !== '') {
      const row = Number(name.slice(key.length + 1).split('.')[0])
      if (Number.isInteger(row)) rows.add(row)
    }
  }
  return [...rows].sort((a, b) => a - b)
}

/** What goes without saying in a new entry. */
export function usualValues(fields: readonly Field[]): Values {
  return Object.fromEntries(
    fields.flatMap((field) =>
      isRows(field) || field.usual === undefined ? [] : [[field.key, field.usual] as const],
    ),
  )
}

function valueTyped(takes: Takes, typed: string, today: LogDate): unknown {
  const text = typed.trim()
  if (text === '') return takes.as === 'several' && !takes.perhaps ? [] : undefined
  switch (takes.as) {
    case 'number':
    case 'money':
      return numberTyped(text) ?? 'no-number'
    case 'date':
      return dateTyped(text, today) ?? 'no-date'
    case 'percent': {
      const share = numberTyped(text)
      return share === undefined ? 'no-number' : Number((share / 100).toPrecision(12))
    }
    case 'month':
      return Number(text)
    case 'months':
      return monthsTyped(text)
    case 'points':
      return pointsIn(typed)
    case 'yes-no':
      return text === 'yes'
    case 'several':
    case 'parts':
      return text.split(' ')
    case 'texts':
      return text
        .split(/[,;\n]/)
        .map((piece) => piece.trim())
        .filter(Boolean)
    case 'numbers':
      return text.split(/[\s/;]+/).map((piece) => numberTyped(piece) ?? 'no-number')
    case 'name':
      return nameFrom(text)
    default:
      return text
  }
}

/** Rows in which nothing stands are no points. */
function pointsIn(typed: string): unknown {
  const points = pointsTyped(typed)
    .filter(({ days, price }) => days.trim() !== '' || price.trim() !== '')
    .map(({ days, price }) => ({ days: numberTyped(days), price: numberTyped(price) }))
  if (points.some(({ days, price }) => days === undefined || price === undefined)) return 'no-number'
  return points.length === 0 ? undefined : points
}

function textOf(takes: Takes, value: unknown): string {
  if (value === undefined || value === null) return ''
  if (takes.as === 'yes-no') return value === true ? 'yes' : 'no'
  if (takes.as === 'date') return sayDate(String(value))
  if (takes.as === 'numbers') return (value as readonly number[]).join(' / ')
  if (takes.as === 'texts') return (value as readonly string[]).join(', ')
  if (takes.as === 'percent') return String(Number((Number(value) * 100).toPrecision(12)))
  if (takes.as === 'points') {
    const points = value as readonly { readonly days: number; readonly price: number }[]
    return pointsText(points.map(({ days, price }) => ({ days: String(days), price: String(price) })))
  }
  if (takes.as === 'months') return (value as readonly number[]).join(' ')
  if (takes.as === 'several' || takes.as === 'parts') return (value as readonly string[]).join(' ')
  if (takes.as === 'name') return String(value).replaceAll('-', ' ')
  return String(value)
}

/** A name that only identifies, from words: "Rewind, stator only" is `rewind-stator-only`. */
export function nameFrom(words: string): string {
  const name = words
    .normalize('NFD')
    .replace(/[\u0300-\u036f]/g, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^[-0-9]+|-+$/g, '')
    .slice(0, 60)
    .replace(/-+$/, '')
  return name === '' ? words : name
}

/** A reading in a unit that is only spoken, in the one in which it is kept; its name as a name. */
function inKeptUnit(item: Fields): Fields {
  const { name, value, unit } = item
  if (typeof value !== 'number' || typeof unit !== 'string') return item
  return {
    ...item,
    ...(typeof name === 'string' ? { name: nameFrom(name) } : {}),
    ...toKept({ value, unit }),
  }
}

/** Puts a value under a path, or takes away what stands there; a record that holds nothing more goes too. */
function put(into: Fields, path: string, value: unknown): void {
  const [head = '', ...rest] = path.split('.')
  if (rest.length === 0) {
    if (value === undefined) delete into[head]
    else into[head] = value
    return
  }
  const inner = { ...(into[head] as Fields | undefined) }
  put(inner, rest.join('.'), value)
  if (Object.keys(inner).length === 0) delete into[head]
  else into[head] = inner
}

function put1(values: Record<string, string>, key: string, text: string): void {
  if (text !== '') values[key] = text
}

function get(from: object, path: string): unknown {
  return path.split('.').reduce<unknown>((here, step) => (here as Fields | undefined)?.[step], from)
}
