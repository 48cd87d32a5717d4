import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { trialModel } from '../../test/trial-model.js'
import { overrunOf } from '../forecast/build-money.js'
import { withLearnedOverrun } from '../forecast/learned-overrun.js'
import { type Excess, furtherJob, learnedFrom, poolOverruns, usualSpread } from './overrun.js'

const logs = fc.double({ min: -0.5, max: 0.8, noNaN: true })

/** Solves A x = b by Gauss with pivots. */
function solved(a: readonly (readonly number[])[], b: readonly number[]): number[] {
  const rows = a.map((row, i) => [...row, b[i]!])
  rows.forEach((_, i) => {
    const pivot = rows
      .slice(i)
      .reduce((at, row, k) => (Math.abs(row[i]!) > Math.abs(rows[at]![i]!) ? i + k : at), i)
    ;[rows[i], rows[pivot]] = [rows[pivot]!, rows[i]!]
    for (let k = 0; k < rows.length; k++) {
      if (k === i) continue
      const factor = rows[k]![i]! / rows[i]![i]!
      rows[k] = rows[k]!.map((value, c) => value - factor * rows[i]![c]!)
    }
  })
  return rows.map((row, i) => row.at(-1)! / row[i]!)
}

/** E and Var of θ_k given the jobs, from the joint normal of all of them: no hierarchy in it. Derived. */
function byConditioning(list: readonly Excess[], kind: string) {
  const { ofBoat: s, betweenKinds: t, withinKind: j } = usualSpread
  const cov = (a: string, b: string) => s ** 2 + (a === b ? t ** 2 : 0)
  const jobs = list.map((one, i) =>
    list.map((other, k) => cov(one.kind, other.kind) + (i === k ? j ** 2 : 0)),
  )
  const cross = list.map((one) => cov(one.kind, kind))
  const weights = solved(jobs, cross)
  return {
    mean: weights.reduce((sum, w, i) => sum + w * list[i]!.log, 0),
    variance: cov(kind, kind) - weights.reduce((sum, w, i) => sum + w * cross[i]!, 0),
  }
}

describe('partial pooling of overruns', () => {
  test('is what conditioning the joint normal gives, for kinds with jobs and for one without', () => {
    const excess = fc.record({ kind: fc.constantFrom('alternator', 'engine', 'exhaust'), log: logs })
    fc.assert(
      fc.property(fc.array(excess, { minLength: 1, maxLength: 8 }), (list) => {
        const { kinds, other } = poolOverruns(list)
        for (const { kind, mean, variance } of kinds) {
          const sure = byConditioning(list, kind)
          expect(mean).toBeCloseTo(sure.mean, 9)
          expect(variance).toBeCloseTo(sure.variance, 9)
        }
        const sure = byConditioning(list, 'something else')
        expect(other.mean).toBeCloseTo(sure.mean, 9)
        expect(other.variance).toBeCloseTo(sure.variance, 9)
      }),
      { numRuns: 60 },
    )
  })

  test('of jobs that are each of another kind it is what bills teach without kinds', () => {
    const ratios = [1.4, 1.2, 1.05]
    const pooled = poolOverruns(ratios.map((ratio, at) => ({ kind: `${at}`, log: Math.log(ratio / 1.15) })))
    const { median, logSd } = overrunOf(ratios)
    const { further } = learnedFrom(pooled)
    expect(further.median).toBeCloseTo(median, 9)
    expect(further.logSd).toBeCloseTo(logSd, 9)
    expect(learnedFrom(poolOverruns([])).further).toEqual({
      median: expect.closeTo(1.15, 9),
      logSd: expect.closeTo(0.25, 9),
    })
  })

  test('a kind with many jobs speaks for itself, one with a single job is held close to the rest', () => {
    const many = Array.from({ length: 200 }, () => ({ kind: 'engine', log: 0.3 }))
    const { kinds } = poolOverruns([...many, { kind: 'alternator', log: -0.3 }])
    const [engine, alternator] = kinds
    expect(engine!.mean).toBeCloseTo(0.3, 2)
    expect(alternator!.mean).toBeGreaterThan(-0.3)
    expect(alternator!.mean).toBeLessThan(0.3)
    expect(furtherJob(engine!).logSd).toBeCloseTo(usualSpread.withinKind, 2)
  })

  test('every kind lies between its own jobs and the level of all; the order of jobs says nothing', () => {
    const list = fc.array(fc.record({ kind: fc.constantFrom('a', 'b', 'c', 'd'), log: logs }), {
      maxLength: 20,
    })
    fc.assert(
      fc.property(list, (some) => {
        const { kinds, other } = poolOverruns(some)
        for (const { own, mean } of kinds) {
          expect(mean).toBeGreaterThanOrEqual(Math.min(own, other.mean) - 1e-12)
          expect(mean).toBeLessThanOrEqual(Math.max(own, other.mean) + 1e-12)
        }
        expect(poolOverruns(some.toReversed()).other.mean).toBeCloseTo(other.mean, 12)
      }),
      { numRuns: 60 },
    )
  })
})

test('what was learnt moves the overrun of work, and the quote of a job of its kind', () => {
  const part = (id: string, system: string) => ({
    id,
    system,
    modes: [{ id: 'm', clock: 'years' as const, shape: 2, scale: 9 }],
  })
  const quoted = (id: string) => ({
    id,
    now: { parts: [{ part: id }], quote: { price: 100, overrun: { median: 1.1, logSd: 0.2 } } },
  })
  const model = trialModel([part('stator', 'alternator'), part('belt', 'drive')], {
    alternatives: [{ id: 'leave', now: 'leave' }, quoted('stator'), quoted('belt')],
  })
  const learned = learnedFrom(poolOverruns(Array(9).fill({ kind: 'alternator', log: 0.4 })))
  const { labour, alternatives } = withLearnedOverrun(model, learned)
  expect(labour.overrun).toEqual(learned.further)
  const median = (at: number) =>
    (alternatives[at]!.now as { quote: { overrun: { median: number } } }).quote.overrun
  expect(median(1).median).toBeCloseTo(1.1 * learned.quoteFactor.bySystem.alternator!, 9)
  expect(median(2).median).toBeCloseTo(1.1 * learned.quoteFactor.other, 9)
  expect(median(1).median).toBeGreaterThan(median(2).median)
  expect(median(1)).toMatchObject({ logSd: 0.2 })
  expect(withLearnedOverrun(model, undefined)).toBe(model)
  expect(withLearnedOverrun(model, learnedFrom(poolOverruns([])))).toBe(model)
})
