/**
 * From a test's own plan to its judgement: what every test does alike.
 *
 * @module
 */

import type { Limit, Limits } from './limits.js'
import type { Ask, Band, Field, Judgement, NumberField, ProofTest, Readings, Worked } from './test-type.js'

/** The readings of one test, once all that it needs is there and within its span. */
export interface Taken {
  /** A number that the test needs. */
  readonly need: (field: string) => number
  readonly number: (field: string) => number | undefined
  readonly choice: (field: string) => string | undefined
}

/** What a test comes to: a band of it, or nothing that can be told. */
export interface Outcome {
  readonly band?: string
  readonly says: string
  readonly worked?: readonly Worked[]
  readonly limits: readonly Limit[]
  readonly next: string
}

/** A test as it is written: what is doubtful in readings that can be, and what they come to. */
export interface Plan extends Omit<ProofTest, 'judge'> {
  /** Asked before anything is judged. One that is confirmed is not asked again. */
  readonly doubts?: (taken: Taken, limits: Limits) => readonly Ask[]
  readonly weigh: (taken: Taken, limits: Limits) => Outcome
}

/** Makes a test of its plan: what is missing, past its span or in doubt is asked about, and only then it is weighed. */
export function proofTest({ doubts, weigh, ...plan }: Plan): ProofTest {
  return {
    ...plan,
    judge(readings, limits) {
      const taken = takenOf(readings)
      const gaps = plan.fields.flatMap((field) => gapOf(field, readings))
      const asks =
        gaps.length > 0
          ? gaps
          : (doubts?.(taken, limits) ?? []).filter(
              ({ code, confirmable }) => !confirmable || readings[`sure-${code}`] !== 'yes',
            )
      if (asks.length > 0) return cannotTell(asks)
      const { band, worked = [], ...rest } = weigh(taken, limits)
      if (band === undefined) return { verdict: 'cannot tell', worked, asks: [], ...rest }
      return { verdict: bandOf(plan.bands, band).verdict, band, worked, asks: [], ...rest }
    },
  }
}

/**
 * The step of a number on a scale that takes in every number: the first whose end it has not passed, else the one above all.
 * `below` leaves its end to the next step, `upTo` takes it in.
 */
export function stepOf<const T extends string>(
  value: number,
  steps: readonly (({ readonly below: number } | { readonly upTo: number }) & { readonly is: T })[],
  above: T,
): T {
  const step = steps.find((one) => ('below' in one ? value < one.below : value <= one.upTo))
  return step === undefined ? above : step.is
}

/** A share of something in percent, without the last digits of the division. [%] */
export function percentOf(part: number, whole: number): number {
  return Number(((100 * part) / whole).toPrecision(12))
}

/** A doubt that "it is so" answers. */
export function doubt(code: string, field: string, question: string): Ask {
  return { code, field, question, confirmable: true }
}

/** A doubt that only another reading answers. */
export function again(code: string, field: string, question: string): Ask {
  return { code, field, question, confirmable: false }
}

function cannotTell(asks: readonly Ask[]): Judgement {
  return {
    verdict: 'cannot tell',
    says: `Cannot tell yet. ${asks[0]!.question}`,
    worked: [],
    limits: [],
    next: 'Answer what is asked, or read again.',
    asks,
  }
}

function bandOf(bands: readonly Band[], id: string): Band {
  const band = bands.find((one) => one.id === id)
  if (band === undefined) throw new RangeError(`band must be one of the test's; found ${id}`)
  return band
}

function takenOf(readings: Readings): Taken {
  const number = (field: string) => {
    const value = readings[field]
    return typeof value === 'number' && Number.isFinite(value) ? value : undefined
  }
  return {
    number,
    need(field) {
      const value = number(field)
      if (value === undefined)
        throw new RangeError(`${field} must be a field that the test needs; found none`)
      return value
    },
    choice(field) {
      const value = readings[field]
      return typeof value === 'string' ? value : undefined
    },
  }
}

/** What is missing in a field, or cannot be. */
function gapOf(field: Field, readings: Readings): Ask[] {
  const value = readings[field.id]
  if (value === undefined || (typeof value === 'number' && !Number.isFinite(value))) {
    return field.needed ? [again('missing', field.id, `Not given: ${lowerFirst(field.name)}.`)] : []
  }
  if (field.kind === 'choice') {
    if (field.choices.some(({ id }) => id === value)) return []
    const allowed = field.choices.map(({ id }) => id).join(', ')
    return [again('no-such-choice', field.id, `${field.name}: one of ${allowed} is wanted, not ${value}.`)]
  }
  if (typeof value === 'number' && value >= field.least && value <= field.most) return []
  return [again('past-its-span', field.id, pastItsSpan(field, value))]
}

function pastItsSpan({ name, least, most, unit }: NumberField, value: number | string): string {
  return `${name}: ${value} cannot be; from ${least} to ${most} ${unit} can. Was another unit meant?`
}

function lowerFirst(name: string): string {
  return /^[A-Z][a-z]/.test(name) ? name[0]!.toLowerCase() + name.slice(1) : name
}
