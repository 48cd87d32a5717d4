/**
 * What can be typed into an entry of each kind: its fields in the order in which they are asked.
 *
 * @module
 */

import { readingUnits } from '../../logbook/bodies-seen.js'
import type { Kind } from '../../logbook/kinds.js'
import { apartFields } from './fields/apart.js'
import { type Field, type FieldsByKind, isRows } from './fields/field.js'
import { seenFields } from './fields/seen.js'
import { setFields } from './fields/set.js'
import { sizeFields } from './fields/size.js'
import { workFields } from './fields/work.js'

/** Kinds that are written from any page, in the order in which they are offered. */
export const quickKinds = ['hours', 'finding', 'reading', 'stop', 'work', 'quote', 'bill', 'note'] as const

const fields: FieldsByKind = {
  ...seenFields,
  ...workFields,
  ...setFields,
  ...sizeFields,
  ...apartFields,
}

/** The fields of a kind; what has none is a kind that is shown and not typed. */
export function fieldsOf(kind: Kind): readonly Field[] {
  return fields[kind] ?? []
}

/** Kinds that belong to the boat and never to a set. */
export const ofBoatOnly: readonly Kind[] = [
  'boat',
  'terms',
  'free-days',
  'load',
  'house-rule',
  'photograph-removed',
]

/** Units in which a reading may be typed: those that are kept, and those that are only spoken. */
export const typedUnits: readonly string[] = [...readingUnits, 'F', 'psi', 'bar', 'US gal', 'imp gal', 'hp']

/** Every key under which something can stand in a form, that of a row before that of its list. */
export function keysOf(fields: readonly Field[]): readonly string[] {
  const ofRows = fields
    .filter(isRows)
    .flatMap(({ key, rows }) =>
      Array.from({ length: 20 }, (_, row) => rows.map((inner) => `${key}.${row}.${inner.key}`)).flat(),
    )
  return [...fields.map(({ key }) => key), ...ofRows]
}
