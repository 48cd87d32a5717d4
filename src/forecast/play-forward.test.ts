import { describe, expect, it } from 'vitest'
import { chanceOfState, meanLnKappa, meanOver, type TrialPart, trialModel } from '../../test/trial-model.js'
import { posteriorOf, startingStatesOfUsed } from './posterior.js'
import { POSTERIOR_STEPS } from './posterior-type.js'

const renewed = (rest: Partial<TrialPart> = {}): TrialPart => ({
  id: 'a',
  age: 'unknown',
  service: { everyYears: 4, renews: true },
  modes: [{ id: 'm', clock: 'years', shape: 8, scale: 500 }],
  ...rest,
})
const old = (years: number) => ({ set: { ageYears: years } })

describe('a part of unknown fitting date', () => {
  it('is as old as its service leaves it', () => {
    const posterior = posteriorOf(trialModel([renewed()], old(21)), { seed: 1 })
    expect(meanOver(posterior, 0, (at) => posterior.age[at]!)).toBeCloseTo(1, 5)
    expect(posterior.serviceYears[0]).toBeCloseTo(1, 5)
    expect(posterior.joint[0]).toBe(1)
  })

  it('has an age of the stationary kind when it fails at random and is mended', () => {
    const modes = [{ id: 'm', clock: 'years' as const, shape: 1, scale: 5 }]
    const posterior = posteriorOf(trialModel([renewed({ service: undefined, modes })], old(40)), { seed: 1 })
    // age of a Poisson renewal: exponential with mean 5, cut at 40
    expect(Math.abs(meanOver(posterior, 0, (at) => posterior.age[at]!) / 5 - 1)).toBeLessThan(0.08)
    const young = meanOver(posterior, 0, (at) => (posterior.age[at]! < 2 ? 1 : 0))
    expect(Math.abs(young - (1 - Math.exp(-0.4)))).toBeLessThan(0.03)
  })

  it('was not renewed where the log is complete and says nothing of it', () => {
    const complete = [{ of: 'work' as const, fromYearsAgo: 3, toYearsAgo: 0 }]
    const service = { everyYears: 2, renews: true, diligence: 0.6 }
    const without = posteriorOf(trialModel([renewed({ service })], old(20)), { seed: 1 })
    const with3 = posteriorOf(trialModel([renewed({ service, complete })], old(20)), { seed: 1 })
    const young = (posterior: typeof with3) =>
      meanOver(posterior, 0, (at) => (posterior.age[at]! < 2.99 ? 1 : 0))
    // one service fell due in the last three years, at 18, and was done with chance 0.6
    expect(Math.abs(young(without) - 0.6)).toBeLessThan(0.03)
    // what is left is the one log in fifty that is not complete after all: 0.02·0.6 against 0.98·0.4 + 0.02·0.4
    expect(Math.abs(young(with3) - 0.012 / 0.412)).toBeLessThan(0.01)
  })

  it('still has states where the log says what the care all but rules out', () => {
    const complete = [{ of: 'work' as const, fromYearsAgo: 6, toYearsAgo: 0 }]
    const posterior = posteriorOf(trialModel([renewed({ complete })], old(20)), { seed: 1 })
    expect(Number.isFinite(posterior.logEvidence)).toBe(true)
    expect(posterior.logEvidence).toBeLessThan(Math.log(0.03))
  })

  it('found sound lately is less likely defective, and one seen defective is so', () => {
    const modes = (observations: TrialPart['modes'][number]['observations']): TrialPart['modes'] => [
      {
        id: 'm',
        clock: 'years',
        shape: 1,
        scale: 12,
        delay: { clock: 'years', median: 2, logSd: 0.4 },
        checks: [{ check: 'look', detection: 0.8 }],
        observations,
      },
    ]
    const learn = (seen: TrialPart['modes'][number]['observations']) =>
      chanceOfState(
        posteriorOf(trialModel([renewed({ service: undefined, modes: modes(seen) })], old(15)), { seed: 1 }),
        0,
        1,
      )
    const plain = learn([])
    expect(learn([{ yearsAgo: 0.01, check: 'look', seen: false }]) / plain).toBeLessThan(0.4)
    expect(learn([{ yearsAgo: 0, check: 'look', seen: true }])).toBeCloseTo(1, 9)
  })

  it('stands broken where the owner says so', () => {
    const modes: TrialPart['modes'] = [
      { id: 'm', clock: 'years', shape: 2, scale: 12, delay: { clock: 'years', median: 2, logSd: 0.4 } },
      { id: 'n', clock: 'years', shape: 2, scale: 12 },
    ]
    const posterior = posteriorOf(
      trialModel([renewed({ service: undefined, modes, broken: 'm' })], old(15)),
      { seed: 1 },
    )
    expect(chanceOfState(posterior, 0, 1)).toBeCloseTo(1, 9)
  })
})

it('keeps the phase of its checks when it is reconditioned, be it as good as new', () => {
  const remedy = { outcome: 'reconditioned', agesLess: 1 } as const
  const modes = [{ id: 'm', clock: 'years', shape: 20, scale: 5, remedy } as const]
  const use = { hoursByMonth: Array(12).fill(10) }
  const model = trialModel([{ id: 'a', age: 'unknown', modes }], { ...old(8), use })
  const posterior = posteriorOf(model, { seed: 1 })
  expect(meanOver(posterior, 0, (at) => posterior.age[at]!)).toBeLessThan(4)
  expect(posterior.ageHours.every((hours) => Math.abs(hours - 960) < 1e-3)).toBe(true)
})

describe('how often the set let its owner down', () => {
  const parts = ['a', 'b', 'c', 'd'].map(
    (id): TrialPart => ({
      id,
      age: 'unknown',
      modes: [{ id: 'm', clock: 'years', shape: 2, scale: 5, logSd: 0.2 }],
    }),
  )
  const learn = (count: number) =>
    meanLnKappa(
      posteriorOf(
        trialModel(parts, {
          ...old(20),
          setFactor: {
            boatLogSd: 0.28,
            setLogSd: 0.28,
            letDowns: [{ fromYearsAgo: 3, toYearsAgo: 0, count }],
          },
        }),
        { seed: 1 },
      ),
    )

  it('moves the set factor, and what was to be expected hardly', () => {
    // four parts renewed on failure at a mean life of 4.4 years: about 2.7 in three years
    expect(learn(0)).toBeGreaterThan(0.15)
    expect(Math.abs(learn(3))).toBeLessThan(0.1)
    expect(learn(8)).toBeLessThan(-0.2)
  })
})

describe('a used set', () => {
  it('starts as played over its own years, at the nodes it is given', () => {
    const candidate = { id: 'u', price: 1, used: { years: 9, hours: 900 } }
    const model = trialModel([renewed({ age: { years: 0 } })], {
      candidates: [candidate],
      setFactor: { boatLogSd: 0.2, setLogSd: 0.2 },
    })
    const used = model.candidates[0]!
    const kappaLog = Float64Array.of(-0.1, 0.3)
    const start = startingStatesOfUsed(model, { candidate: { ...used, used: used.used! }, kappaLog, seed: 1 })
    expect(start.theta.length).toBe(2 * POSTERIOR_STEPS)
    expect(start.age[0]).toBeCloseTo(1, 5)
    expect(start.ageHours[0]).toBeCloseTo(100, 3)
    const mean = (node: number) =>
      start.theta.slice(node * POSTERIOR_STEPS, (node + 1) * POSTERIOR_STEPS).reduce((a, b) => a + b, 0) /
      POSTERIOR_STEPS
    expect(Math.abs(mean(1) / mean(0) - Math.exp(0.4))).toBeLessThan(0.1)
  })
})
