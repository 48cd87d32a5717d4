import fc from 'fast-check'
import { expect, test } from 'vitest'
import { shippedLimits } from '../../test/shipped-limits.js'
import { trialEntry } from '../../test/trial-log.js'
import { parseEntry } from '../logbook/entry.js'
import { readingBodyOf, typedFor } from './reading-body.js'
import { readingsIn, resultsOf } from './results.js'
import type { Field, Readings } from './test-type.js'
import { proofTestOf, proofTests } from './tests.js'

const field = (test: string, id: string): Field => proofTestOf(test)!.fields.find((one) => one.id === id)!

test('numbers are typed with the unit that the meter shows, or in the usual one', () => {
  const mohm = field('insulation-test', 'winding-to-frame')
  expect(typedFor(mohm, '1.8')).toEqual({ ok: true, value: 1.8 })
  expect(typedFor(mohm, '1800 kohm')).toEqual({ ok: true, value: 1.8 })
  expect(typedFor(mohm, '1.2:Gohm')).toEqual({ ok: true, value: 1200 })
  expect(typedFor(mohm, '1.8', 'kohm')).toEqual({ ok: true, value: 0.0018 })
  expect(typedFor(field('insulation-test', 'winding'), '64.4F')).toEqual({ ok: true, value: 18 })
  expect(typedFor(field('back-pressure', 'pressure'), '3 inHg')).toMatchObject({
    ok: true,
    value: 10.15916592,
  })
})

test('another unit, a word, or a choice that there is not is refused with what may be typed', () => {
  const mohm = field('insulation-test', 'winding-to-frame')
  for (const text of ['1.8 V', 'dry', '', '1.8 Mohm dry']) {
    expect(typedFor(mohm, text)).toEqual({
      ok: false,
      allowed: 'a number, with one of the units Mohm, Gohm, kohm, ohm behind it, or else in Mohm',
    })
  }
  expect(typedFor(field('neutral-bond', 'system'), 'tea')).toEqual({
    ok: false,
    allowed: 'one of: earthed, insulated',
  })
})

test('what a meter shows past its range is no reading, and it is said what to do', () => {
  const mohm = field('insulation-test', 'winding-to-frame')
  for (const text of ['OL', '>550', '> 550 Mohm', '∞', '1 ---']) {
    const typed = typedFor(mohm, text)
    expect(typed.ok ? '' : typed.allowed, text).toMatch(/take a higher range, or type its top/)
  }
})

test('what is kept of a test judges as it did when it was typed', () => {
  const anyOf = (one: Field) =>
    one.kind === 'choice'
      ? fc.option(fc.constantFrom(...one.choices.map(({ id }) => id)), { nil: undefined })
      : fc.option(fc.double({ min: one.least, max: one.most, noNaN: true }), { nil: undefined })
  const some = fc
    .constantFrom(...proofTests)
    .chain((of) =>
      fc.tuple(fc.constant(of), fc.record(Object.fromEntries(of.fields.map((one) => [one.id, anyOf(one)])))),
    )
  fc.assert(
    fc.property(some, ([of, readings]) => {
      const body = readingBodyOf(of, readings as Readings)
      const kept = readingsIn(body, of, {})
      const named = (all: Readings) =>
        Object.fromEntries(Object.entries(all).filter(([, value]) => value !== undefined))
      expect(named(kept)).toEqual(named(readings as Readings))
      if (body.values.length + (body.answers ?? []).length === 0) return
      expect(parseEntry(JSON.stringify(trialEntry(1, 'reading', body)))).toMatchObject({ ok: true })
    }),
    { numRuns: 150 },
  )
})

test('an old reading under a name of its own is read, and what the set tells is filled in', () => {
  const { setFacts, limits } = { setFacts: { volts: [230], hertz: 50 }, limits: shippedLimits }
  const old = trialEntry(1, 'reading', {
    test: 'insulation-test',
    values: [{ name: 'resistance', value: 1800, unit: 'kohm' }],
    conditions: [{ name: 'copper', value: 18, unit: 'C' }],
  })
  const [result] = resultsOf([old], { setFacts, limits })
  expect(result?.readings).toMatchObject({ 'winding-to-frame': 1.8, winding: 18, rated: 230 })
  expect(result?.judgement.band).toBe('stop')
  const other = trialEntry(2, 'reading', {
    test: 'oil-gauge',
    values: [{ name: 'pressure', value: 300, unit: 'kPa' }],
  })
  expect(resultsOf([other], { setFacts, limits })).toEqual([])
})
