import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { nothingKnown, shippedFaults } from '../../test/fault-model.js'
import { enumeratePairs, enumerateSingles } from '../../test/oracles/fault-enumeration.js'
import type { FaultModel } from '../catalogue/read-fault-model.js'
import { type Answers, faultTables, normalised, posteriorOf } from './infer.js'
import { priorsOf, weightsOf } from './priors.js'
import { pairChances, secondFaultOf } from './second-fault.js'

const { model } = shippedFaults()
const tables = faultTables(model)
const weights = weightsOf(priorsOf(model, nothingKnown))

/** Answers of any kind, many or few, likely or not. */
const anyAnswers: fc.Arbitrary<Answers> = fc
  .record({
    symptoms: fc.uniqueArray(
      fc.record({
        id: fc.constantFrom(...model.symptoms.map(({ id }) => id)),
        is: fc.constantFrom('present' as const, 'absent' as const),
      }),
      { selector: ({ id }) => id, maxLength: 12 },
    ),
    outcomes: fc.uniqueArray(
      fc
        .constantFrom(...model.checks)
        .chain((check) =>
          fc.constantFrom(...check.outcomes.map(({ id }) => ({ id: check.id, outcome: id }))),
        ),
      { selector: ({ id }) => id, maxLength: 12 },
    ),
  })
  .map(({ symptoms, outcomes }) => ({
    symptoms: Object.fromEntries(symptoms.map(({ id, is }) => [id, is])),
    outcomes: Object.fromEntries(outcomes.map(({ id, outcome }) => [id, outcome])),
  }))

const chancesOf = (answers: Answers) => posteriorOf(tables, weights, answers).chances

describe('the chances of single faults', () => {
  test('are those of plain enumeration', () => {
    fc.assert(
      fc.property(anyAnswers, (answers) => {
        const enumerated = enumerateSingles(model, weights, answers)
        for (const [f, chance] of chancesOf(answers).entries()) {
          expect(chance).toBeCloseTo(enumerated[tables.faults[f]!]!, 9)
        }
      }),
      { numRuns: 40 },
    )
  })

  test('are the shares of the weights where nothing was answered', () => {
    const total = model.faults.reduce((sum, { weight }) => sum + weight, 0)
    for (const [f, chance] of chancesOf({ symptoms: {}, outcomes: {} }).entries()) {
      expect(chance).toBeCloseTo(model.faults[f]!.weight / total, 12)
    }
  })

  test('make one and are never no number, whatever was answered', () => {
    fc.assert(
      fc.property(anyAnswers, (answers) => {
        const chances = chancesOf(answers)
        expect(chances.every((chance) => chance >= 0 && chance <= 1)).toBe(true)
        expect(chances.reduce((sum, chance) => sum + chance, 0)).toBeCloseTo(1, 9)
      }),
      { numRuns: 60 },
    )
  })

  test('do not depend on the order of the answers', () => {
    fc.assert(
      fc.property(anyAnswers, ({ symptoms, outcomes }) => {
        const turned = <T>(record: Readonly<Record<string, T>>) =>
          Object.fromEntries(Object.entries(record).reverse())
        const one = chancesOf({ symptoms, outcomes })
        const other = chancesOf({ symptoms: turned(symptoms), outcomes: turned(outcomes) })
        for (const [f, chance] of one.entries()) expect(other[f]).toBeCloseTo(chance, 12)
      }),
      { numRuns: 40 },
    )
  })

  test('are not changed by an answer that is as likely with every fault', () => {
    const check = model.checks.find(({ id }) => id === 'combustion-gas')!
    const dull: FaultModel = {
      ...model,
      checks: model.checks.map((one) => (one === check ? { ...one, given: {} } : one)),
    }
    const before = { symptoms: { steam: 'present' as const }, outcomes: {} }
    const one = posteriorOf(faultTables(dull), weights, before).chances
    for (const outcome of ['none', 'gas']) {
      const after = { ...before, outcomes: { 'combustion-gas': outcome } }
      const other = posteriorOf(faultTables(dull), weights, after).chances
      for (const [f, chance] of one.entries()) expect(other[f]).toBeCloseTo(chance, 12)
    }
  })

  test('go up with a symptom that the fault brings on, and down where it is looked for and not there', () => {
    const f = tables.faults.indexOf('impeller-worn')
    const unknown = chancesOf({ symptoms: {}, outcomes: {} })[f]!
    expect(chancesOf({ symptoms: { 'little-water': 'present' }, outcomes: {} })[f]).toBeGreaterThan(unknown)
    expect(chancesOf({ symptoms: { 'little-water': 'absent' }, outcomes: {} })[f]).toBeLessThan(unknown)
  })

  test('keep half the pull of a symptom that a check has measured again', () => {
    const { pulls } = posteriorOf(tables, weights, {
      symptoms: { 'little-water': 'present', steam: 'present' },
      outcomes: { 'water-flow': 'weak' },
    })
    expect(pulls.map(({ power }) => power)).toEqual([0.5, 1, 1])
  })

  test('refuse names that the model has not, and priors that are nought everywhere', () => {
    expect(() => chancesOf({ symptoms: { 'sings-hymns': 'present' }, outcomes: {} })).toThrow('sings-hymns')
    expect(() => chancesOf({ symptoms: {}, outcomes: { impeller: 'teapot' } })).toThrow('teapot')
    expect(() => posteriorOf(tables, {}, { symptoms: {}, outcomes: {} })).toThrow(
      'prior must be above nought',
    )
  })

  test('stand where weights are as far apart as numbers go', () => {
    expect([...normalised(Float64Array.of(-1e6, -1e6 + Math.log(3), Number.NEGATIVE_INFINITY))]).toEqual([
      expect.closeTo(0.25, 9),
      expect.closeTo(0.75, 9),
      0,
    ])
  })
})

describe('a second fault', () => {
  test('has the chance of plain enumeration', () => {
    fc.assert(
      fc.property(anyAnswers, (answers) => {
        const enumerated = enumeratePairs(model, weights, answers)
        for (const [f, chance] of pairChances(tables, weights, answers).entries()) {
          expect(chance).toBeCloseTo(enumerated[tables.faults[f]!]!, 9)
        }
      }),
      { numRuns: 4 },
    )
  })

  test('is spoken of where two unlike things were found, and not where one explains all', () => {
    const two: Answers = {
      symptoms: { 'little-water': 'present', 'hot-on-load': 'present', 'a-few-volts': 'present' },
      outcomes: { impeller: 'vanes-gone', 'water-flow': 'hardly-any', diodes: 'one-shorted' },
    }
    const first = chancesOf(two).indexOf(Math.max(...chancesOf(two)))
    const second = secondFaultOf(tables, pairChances(tables, weights, two), tables.faults[first]!)
    expect(second?.chance).toBeGreaterThan(0.3)
    const one: Answers = {
      symptoms: { 'little-water': 'present', 'hot-on-load': 'present' },
      outcomes: { impeller: 'vanes-gone' },
    }
    expect(secondFaultOf(tables, pairChances(tables, weights, one), 'impeller-worn')).toBeUndefined()
  })
})
