import { describe, expect, test } from 'vitest'
import { nothingKnown, shippedFaults } from '../../test/fault-model.js'
import { trialEntry } from '../../test/trial-log.js'
import { deeds } from '../logbook/bodies-work.js'
import { registerOf } from '../register/register.js'
import { casesOf, newCase } from './case.js'
import { clocksOf } from './clocks.js'
import { closedCounts } from './closed-cases.js'
import { givenOf } from './given.js'
import { clockFactor, priorsOf } from './priors.js'

const { model, catalogue } = shippedFaults()
const fault = (id: string) => model.faults.find((one) => one.id === id)!
const prior = (given: Partial<typeof nothingKnown>, id: string) =>
  priorsOf(model, { ...nothingKnown, ...given })[id]!

describe('a clock', () => {
  // The reference works one out: stored 420 days, (420/180)^0.7 = 1.81, so that a weight of 16 counts as 29.
  test('multiplies the weight by (x/reference)^power', () => {
    expect(clockFactor(fault('residual-lost'), 420, model.rule)).toBeCloseTo(1.81, 2)
    expect(fault('residual-lost').weight * clockFactor(fault('residual-lost'), 420, model.rule)).toBeCloseTo(
      29,
      0,
    )
  })

  test('is clamped, and says nothing where it is not known', () => {
    expect(clockFactor(fault('impeller-worn'), 0, model.rule)).toBe(0.25)
    expect(clockFactor(fault('impeller-worn'), 1e6, model.rule)).toBe(4)
    expect(clockFactor(fault('impeller-worn'), undefined, model.rule)).toBe(1)
    expect(clockFactor(fault('intake-blocked'), 500, model.rule)).toBe(1)
  })
})

describe('a kind of set', () => {
  test('rules out what it cannot have, and nothing where it is not known', () => {
    const bare = { kind: { excitation: 'capacitor', governor: 'electronic' } }
    expect(prior(bare, 'regulator-dead').weight).toBe(0)
    expect(prior(bare, 'governor-sticks').weight).toBe(0)
    expect(prior(bare, 'capacitor-weak').weight).toBeGreaterThan(0)
    expect(prior({}, 'regulator-dead').weight).toBeGreaterThan(0)
  })
})

test('a part that likely stands defective makes its fault likelier, up to five times', () => {
  const one = prior({}, 'elbow-choked').weight
  expect(prior({ defective: { 'exhaust-elbow': 1 } }, 'elbow-choked').weight).toBeCloseTo(5 * one, 9)
  expect(prior({ defective: { 'exhaust-elbow': 0.1 } }, 'elbow-choked').weight).toBeCloseTo(1.4 * one, 9)
})

describe('work just done', () => {
  const relinked = (hoursSince: number) => ({
    work: [{ part: 'terminal-block', did: 'relinked', daysSince: 3, hoursSince }],
  })
  test('raises what it is known to leave behind, and the less the longer ago', () => {
    expect(prior(relinked(0), 'links-wrong').work).toBeCloseTo(4, 9)
    expect(prior(relinked(50), 'links-wrong').work).toBeCloseTo(1 + 3 / Math.E, 9)
    expect(prior(relinked(0), 'impeller-worn').work).toBe(1)
  })

  test('is always something that can be done', () => {
    for (const { id, afterWork } of model.faults) {
      for (const { did } of afterWork) for (const one of did) expect(deeds, id).toContain(one)
    }
  })
})

test('a closed case counts as one more of the thirty that the weights stand for', () => {
  const sum = model.faults.reduce((total, { weight }) => total + weight, 0)
  const own = (30 * fault('fuel-air').weight) / sum
  expect(prior({ closed: { 'fuel-air': 2 } }, 'fuel-air').weight).toBeCloseTo(own + 2, 9)
})

describe('the log', () => {
  const built = trialEntry(1, 'set', { built: '2010', excitation: 'capacitor' }, { from: '2020-01-01' })
  const hours = [
    trialEntry(2, 'hours', { meterHours: 1000 }, { from: '2020-01-01' }),
    trialEntry(3, 'hours', { meterHours: 1400 }, { from: '2024-01-01' }),
  ]
  const renewed = trialEntry(
    4,
    'work',
    { parts: [{ part: 'sea-pump-impeller', did: 'renewed' }], by: 'owner', why: 'preventive' },
    { from: '2022-01-01' },
  )
  const closed = trialEntry(
    5,
    'case',
    {
      name: 'case-1',
      lines: [],
      symptoms: [],
      checks: [],
      closed: { as: 'listed', fault: 'fuel-air', place: 2, chance: 0.2 },
    },
    { from: '2023-01-01' },
  )
  const entries = [built, ...hours, renewed, closed]
  const { boat, set } = built
  const register = registerOf({ entries, boat, set: set!, asOf: '2024-01-01', catalogue })

  test('tells hours since the part was renewed, years of the set, and no days idle', () => {
    const clocks = clocksOf(model, register, undefined)
    expect(clocks['impeller-worn']).toBeCloseTo(200, 0)
    expect(clocks['exchanger-leaks']).toBeCloseTo(13.5, 1)
    expect(clocks['bearing-worn']).toBeCloseTo(1400, 6)
    expect(clocks['residual-lost']).toBeUndefined()
    expect(clocksOf(model, register, 90)['residual-lost']).toBe(90)
  })

  test('gives kind, work and closed cases', () => {
    const cases = casesOf(entries, set!)
    const given = givenOf({ model, register, entries, cases, body: newCase('case-2') })
    expect(given.kind.excitation).toBe('capacitor')
    expect(given.work).toEqual([
      { part: 'sea-pump-impeller', did: 'renewed', daysSince: 730, hoursSince: expect.closeTo(200, 0) },
    ])
    expect(given.closed).toEqual({ 'fuel-air': 1 })
    expect(closedCounts(cases, 'case-1')).toEqual({})
  })
})
