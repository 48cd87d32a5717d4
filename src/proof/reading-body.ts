/**
 * From what was typed for a test to what the log keeps of it.
 *
 * @module
 */

import type { Body } from '../logbook/kinds.js'
import { inUnit, isMeterUnit, type MeterUnit } from '../units/meter.js'
import type { Field, NumberField, ProofTest, Readings } from './test-type.js'

/** The body of the entry of a test: the figures in the test's units, and what was told in words. No verdict is kept. */
export function readingBodyOf(
  test: ProofTest,
  readings: Readings,
  more: Pick<Body<'reading'>, 'part' | 'testedBy' | 'instrument' | 'remark' | 'meterHours'> = {},
): Body<'reading'> {
  const numbers = test.fields.filter((field): field is NumberField => field.kind === 'number')
  const measured = (fields: readonly NumberField[]) =>
    fields.flatMap(({ id, unit }) => {
      const value = readings[id]
      return typeof value === 'number' && Number.isFinite(value) ? [{ name: id, value, unit }] : []
    })
  const conditions = measured(numbers.filter(({ condition }) => condition))
  const names = [
    ...test.fields.filter(({ kind }) => kind === 'choice').map(({ id }) => id),
    ...Object.keys(readings).filter((name) => name.startsWith('sure-')),
  ]
  const answers = names.flatMap((name) => {
    const is = readings[name]
    return typeof is === 'string' && is !== '' ? [{ name, is }] : []
  })
  return {
    test: test.id,
    values: measured(numbers.filter(({ condition }) => !condition)),
    ...(conditions.length === 0 ? {} : { conditions }),
    ...(answers.length === 0 ? {} : { answers }),
    ...Object.fromEntries(Object.entries(more).filter(([, value]) => value !== undefined && value !== '')),
  }
}

export type Typed =
  | { readonly ok: true; readonly value: number | string }
  /** What may be typed instead. */
  | { readonly ok: false; readonly allowed: string }

/** What was typed for a field: a choice by its id, a number with or without its unit, as in `1.8`, `1.8 Mohm` or `65:F`. */
export function typedFor(field: Field, text: string, usualUnit?: MeterUnit): Typed {
  const bare = text.trim()
  if (field.kind === 'choice') {
    const ids = field.choices.map(({ id }) => id)
    return ids.includes(bare)
      ? { ok: true, value: bare }
      : { ok: false, allowed: `one of: ${ids.join(', ')}` }
  }
  const units = field.units.join(', ')
  const allowed = `a number, with one of the units ${units} behind it, or else in ${usualUnit ?? field.units[0]}`
  const [, digits, named = ''] = /^([-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?)\s*:?\s*(\S*)$/i.exec(bare) ?? []
  const unit = named === '' ? (usualUnit ?? field.units[0]!) : named
  if (atTop.test(bare)) {
    const top = `${allowed}; a meter at its top shows no reading: take a higher range, or type its top and say that it is`
    return { ok: false, allowed: top }
  }
  if (digits === undefined || !isMeterUnit(unit) || !field.units.includes(unit)) return { ok: false, allowed }
  const { unit: kept } = field
  return {
    ok: true,
    value: isMeterUnit(kept) ? inUnit({ value: Number(digits), unit }, kept) : Number(digits),
  }
}

/** As meters show that they are past their range: `OL`, `>550`, `1---`. */
const atTop = /^(?:[>≥].*|o\.?l\.?|over|inf(?:inity)?|∞|1[-. ]*-+)$/i
