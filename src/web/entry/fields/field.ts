/**
 * One thing to type or to choose, and the kinds of them that most entries have.
 *
 * @module
 */

import type { Kind } from '../../../logbook/kinds.js'

/** The fields of some kinds of entry. */
export type FieldsByKind = Readonly<Partial<Record<Kind, readonly Field[]>>>

/** One thing to type or to choose. `key` is its path in the body: `workHours.owner`. */
export type Field = Single | Rows

export interface Single {
  readonly key: string
  readonly takes: Takes
  /** Asked only where someone wants to say more. */
  readonly more?: true
  /** Chosen already in a new entry. */
  readonly usual?: string
}

export type Takes =
  | { readonly as: 'number'; readonly unit?: string }
  | { readonly as: 'money' }
  | { readonly as: 'text' }
  | { readonly as: 'lines' }
  | { readonly as: 'name' }
  | { readonly as: 'date' }
  | { readonly as: 'yes-no' }
  | {
      readonly as: 'choice'
      readonly options: readonly string[]
      /** What they are called, where no word of the form's own is it. */
      readonly names?: Readonly<Record<string, string>>
    }
  /** Nothing chosen is an empty list, or with `perhaps` nothing said. */
  | { readonly as: 'several'; readonly options: readonly string[]; readonly perhaps?: true }
  | { readonly as: 'numbers' }
  /** Several short texts, commas between. */
  | { readonly as: 'texts' }
  /** A share, typed in hundredths. */
  | { readonly as: 'percent' }
  /** One month; several, ticked. */
  | { readonly as: 'month' }
  | { readonly as: 'months' }
  /** Points of a price that grows with days. */
  | { readonly as: 'points' }
  | { readonly as: 'part' }
  | { readonly as: 'parts' }
  /** A way of failing of the part that stands in the field named. */
  | { readonly as: 'mode'; readonly of: string }
  | { readonly as: 'check' }
  | { readonly as: 'danger' }
  | { readonly as: 'unit' }

/** Rows that each hold the same fields. */
export interface Rows {
  readonly key: string
  readonly rows: readonly Single[]
  /** So many are open in a new entry. */
  readonly least: number
  readonly more?: true
}

export function isRows(field: Field): field is Rows {
  return 'rows' in field
}

export const number = (key: string, unit?: string): Single => ({
  key,
  takes: unit === undefined ? { as: 'number' } : { as: 'number', unit },
})
export const money = (key: string): Single => ({ key, takes: { as: 'money' } })
export const text = (key: string): Single => ({ key, takes: { as: 'text' } })
export const lines = (key: string): Single => ({ key, takes: { as: 'lines' } })
export const texts = (key: string): Single => ({ key, takes: { as: 'texts' } })
export const choice = (key: string, options: readonly string[], usual?: string): Single => ({
  key,
  takes: { as: 'choice', options },
  ...(usual === undefined ? {} : { usual }),
})
export const yesNo = (key: string, usual?: string): Single => ({
  key,
  takes: { as: 'yes-no' },
  ...(usual === undefined ? {} : { usual }),
})
export const more = <T extends Field>(field: T): T => ({ ...field, more: true })

export const percent = (key: string): Single => ({ key, takes: { as: 'percent' } })
export const part = (key = 'part'): Single => ({ key, takes: { as: 'part' } })
export const mode = (key = 'mode', of = 'part'): Single => ({ key, takes: { as: 'mode', of } })
export const meter = more(number('meterHours', 'h'))
export const remark = more(lines('remark'))
export const tax: readonly Single[] = [more(yesNo('tax.included')), more(number('tax.percent', '%'))]
