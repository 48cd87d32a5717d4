/**
 * What the readings of a log come to: every verdict is worked out anew from the figures that were written down.
 *
 * @module
 */

import { dayNumber, lastDay } from '../logbook/dates.js'
import { type Entry, type EntryOf, isKind } from '../logbook/kinds.js'
import type { Photograph } from '../logbook/photographs.js'
import type { SetFacts } from '../register/register-types.js'
import { inUnit, isMeterUnit } from '../units/meter.js'
import type { Limits } from './limits.js'
import type { Judgement, NumberField, ProofTest, Readings, SetFact } from './test-type.js'
import { proofTestOf } from './tests.js'

/** A test that was made, and what it came to. */
export interface ProofResult {
  readonly entry: string
  /** As the entry has it, and as a day. */
  readonly date: string
  readonly day: number
  /** Place among the entries as they follow one another. */
  readonly order: number
  readonly test: string
  readonly part?: string
  /** Which of several that each are a test of their own. */
  readonly which?: string
  readonly readings: Readings
  readonly judgement: Judgement
  readonly testedBy?: string
  readonly instrument?: string
  readonly remark?: string
  readonly photographs: readonly Photograph[]
}

/** Every test that a log holds, in the order of its entries. */
export function resultsOf(
  entries: readonly Entry[],
  of: { readonly setFacts: SetFacts; readonly limits: Limits },
): ProofResult[] {
  return entries.flatMap((entry, order) => {
    const test = isKind(entry, 'reading') ? proofTestOf(entry.body.test) : undefined
    if (test === undefined || !isKind(entry, 'reading')) return []
    const { part, testedBy, instrument, remark, photographs = [] } = entry.body
    const readings = readingsIn(entry.body, test, of.setFacts)
    const which = whichOf(test, readings)
    return [
      {
        entry: entry.id,
        date: entry.from,
        day: dayNumber(lastDay(entry.until)),
        order,
        test: test.id,
        ...(part === undefined ? {} : { part }),
        ...(which === undefined ? {} : { which }),
        readings,
        judgement: test.judge(readings, of.limits),
        ...(testedBy === undefined ? {} : { testedBy }),
        ...(instrument === undefined ? {} : { instrument }),
        ...(remark === undefined ? {} : { remark }),
        photographs,
      },
    ]
  })
}

/** The latest of each test, part and kind; a test that repeats another takes its place. */
export function latestResults<T extends Pick<ProofResult, 'test' | 'part' | 'which'>>(
  results: readonly T[],
): T[] {
  const latest = new Map<string, T>()
  for (const result of results) {
    const measures = proofTestOf(result.test)?.repeats ?? result.test
    const key = `${measures} ${result.part ?? ''} ${result.which ?? ''}`
    latest.delete(key)
    latest.set(key, result)
  }
  return [...latest.values()]
}

/** What an entry holds of a test's fields. */
type Read = Pick<EntryOf<'reading'>['body'], 'values' | 'conditions' | 'answers'>

/** The fields of a test as an entry holds them; what it leaves out and the set tells, from there. */
export function readingsIn(body: Read, test: ProofTest, setFacts: SetFacts): Readings {
  const readings: Record<string, number | string | undefined> = {}
  for (const { name, is } of body.answers ?? []) readings[name] = is
  const read = [...body.values, ...(body.conditions ?? [])]
  for (const field of test.fields) {
    if (field.kind !== 'number') continue
    const found = read.find(({ name }) => name === field.id) ?? onlyOne(body, test, field)
    const value = found === undefined ? undefined : valueIn(found, field)
    readings[field.id] = value ?? factOf(field.of, setFacts)
  }
  return readings
}

/** A reading under a name that is none of the test's, where it can be none but that one: the only value, or the only temperature. */
function onlyOne(body: Read, test: ProofTest, field: NumberField) {
  const isOther = ({ name }: { readonly name: string }) => !test.fields.some(({ id }) => id === name)
  const isFirst = test.fields.find(({ kind }) => kind === 'number') === field
  if (isFirst && body.values.length === 1) return body.values.find(isOther)
  if (field.unit !== 'C' || !field.condition || !field.needed) return undefined
  const temperatures = (body.conditions ?? []).filter((one) => one.unit === 'C' && isOther(one))
  return temperatures.length === 1 ? temperatures[0] : undefined
}

function valueIn(
  { value, unit }: { readonly value: number; readonly unit: string },
  field: NumberField,
): number | undefined {
  if (unit === field.unit) return value
  if (!isMeterUnit(unit) || !isMeterUnit(field.unit) || !field.units.includes(unit)) return undefined
  return inUnit({ value, unit }, field.unit)
}

/** A field's figure as the set is said to be. */
export function factOf(
  fact: SetFact | undefined,
  { volts, hertz, ratingKw, rpm, phases }: SetFacts,
): number | undefined {
  if (fact === undefined) return undefined
  return { volts: volts?.[0], hertz, ratingKw, rpm, phases }[fact]
}

/** Of a test that is made of several things apart, which it was. */
export function whichOf(test: ProofTest, readings: Readings): string | undefined {
  const field = test.fields.find((one) => one.kind === 'choice' && one.apart)
  const value = field === undefined ? undefined : readings[field.id]
  return typeof value === 'string' ? value : undefined
}
