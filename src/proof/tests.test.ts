import fc from 'fast-check'
import { expect, test } from 'vitest'
import { shippedLimits } from '../../test/shipped-limits.js'
import { inUnit } from '../units/meter.js'
import type { Field, ProofTest, Readings } from './test-type.js'
import { proofTestOf, proofTests } from './tests.js'

const each = fc.constantFrom(...proofTests)

/** Any number there is for a number, any of its choices for a choice; some left out. */
function anyOf(field: Field): fc.Arbitrary<number | string | undefined> {
  if (field.kind === 'choice')
    return fc.option(fc.constantFrom(...field.choices.map(({ id }) => id)), { nil: undefined })
  const { least, most, needed } = field
  const within = fc.double({ min: least, max: most, noNaN: true })
  const anywhere = fc.double()
  const near = fc.integer({ min: 0, max: 40 }).map((x) => Math.min(most, Math.max(least, x)))
  const number = fc.oneof(
    { weight: 6, arbitrary: within },
    { weight: 6, arbitrary: near },
    { weight: 1, arbitrary: anywhere },
  )
  return needed ? number : fc.option(number, { nil: undefined })
}

const codes = ['ohms', 'at-top', 'few-volts', 'milliohms', 'megohms', 'maybe-at-top', 'meter-or-speed']

function readingsOf(of: ProofTest): fc.Arbitrary<Readings> {
  const sure = Object.fromEntries(
    codes.map((code) => [`sure-${code}`, fc.option(fc.constant('yes'), { nil: undefined })]),
  )
  return fc.record({ ...Object.fromEntries(of.fields.map((field) => [field.id, anyOf(field)])), ...sure })
}

test('whatever is read, a test comes to a verdict that its band bears out, or says that it cannot tell', () => {
  fc.assert(
    fc.property(
      each.chain((of) => fc.tuple(fc.constant(of), readingsOf(of))),
      ([of, readings]) => {
        const judged = of.judge(readings, shippedLimits)
        const band = of.bands.find(({ id }) => id === judged.band)
        expect(judged.verdict).toBe(band === undefined ? 'cannot tell' : band.verdict)
        expect(judged.band === undefined || judged.asks.length === 0).toBe(true)
        for (const { value } of judged.worked) expect(Number.isNaN(value), of.id).toBe(false)
        expect(judged.says).not.toMatch(/undefined|NaN/)
        expect(judged.next).not.toBe('')
        const measures = of.fields.some(({ kind }) => kind === 'number')
        if (band !== undefined && measures) expect(judged.limits.length, of.id).toBeGreaterThan(0)
      },
    ),
    { numRuns: 800 },
  )
})

test('nothing read is never a pass, and every question names a field', () => {
  for (const of of proofTests) {
    const { verdict, asks } = of.judge({}, shippedLimits)
    expect(verdict, of.id).toBe('cannot tell')
    for (const { field } of asks) expect(of.fields.map(({ id }) => id)).toContain(field)
  }
})

test('every test has a name of its own, steps, fields in units that can be brought to its own, and bands of both kinds', () => {
  expect(new Set(proofTests.map(({ id }) => id)).size).toBe(proofTests.length)
  for (const { id, steps, fields, bands } of proofTests) {
    expect(steps.length, id).toBeGreaterThan(0)
    expect(new Set(fields.map((field) => field.id)).size, id).toBe(fields.length)
    expect(bands.map(({ verdict }) => verdict)).toEqual(expect.arrayContaining(['pass', 'fail']))
    for (const field of fields) {
      if (field.kind !== 'number') continue
      expect(field.units, `${id} ${field.id}`).toContain(field.unit)
      for (const unit of field.units) expect(inUnit({ value: 1, unit }, field.units[0]!)).not.toBeNaN()
    }
  }
  expect(proofTestOf('tea')).toBeUndefined()
})
