import { describe, expect, test } from 'vitest'
import { type LifeModel, lifeModelSchema } from '../forecast/life-model.js'
import { posteriorOf } from '../forecast/posterior.js'
import { POSTERIOR_STEPS, type Posterior } from '../forecast/posterior-type.js'
import { normalFrom } from './amounts.js'
import { setWords } from './kernel.js'
import { compile } from './program.js'
import * as purpose from './purpose.js'
import { reportOf } from './report.js'
import { column, type Sample } from './sample.js'
import { playSpan } from './simulate.js'
import { startStates } from './start-states.js'

const part = (id: string, scale: number, price: number) => ({
  id,
  age: { years: 6 },
  repair: { price, supply: [{ chance: 1, days: 6 }] },
  modes: [
    {
      id: 'worn',
      clock: 'years' as const,
      shape: 3,
      scale,
      logSd: 0.35,
      delay: { clock: 'years' as const, median: 1, logSd: 0.4 },
    },
  ],
})

/** A job at a quote, what it is weighed against, and a new set. */
function modelOf({ newPrice }: { readonly newPrice: number }): LifeModel {
  return lifeModelSchema.parse({
    type: 'gensettle/life-model',
    version: 1,
    horizonYears: 6,
    setFactor: { boatLogSd: 0.28, setLogSd: 0.28 },
    powerLoss: {
      curve: [
        { days: 0, cost: 0 },
        { days: 10, cost: 2000 },
      ],
    },
    candidates: [{ id: 'new', price: { median: newPrice, logSd: 0.15 } }],
    parts: [part('winding', 9, 3000), part('pump', 7, 700), part('riser', 8, 900)],
    alternatives: [
      { id: 'leave', now: 'leave' },
      {
        id: 'mend',
        now: { parts: [{ part: 'winding' }], quote: { price: 2500, overrun: { median: 1.1, logSd: 0.2 } } },
      },
      { id: 'replace', now: { replaceWith: 'new' } },
    ],
  })
}

const seed = 17
const meanCost = (sample: Sample): number => {
  const cost = column(sample, 'cost')
  return cost.reduce((sum, one) => sum + one, 0) / cost.length
}

function played(model: LifeModel, posterior: Posterior) {
  const program = compile(model, posterior)
  return (of: number, count: number, from = 0) => playSpan(program, { seed: of, from, count })
}

describe('nine in ten intervals of the simulation hold the price', () => {
  const clear = modelOf({ newPrice: 12_000 })
  const posterior = posteriorOf(clear, { seed: 1 })
  const clearMeans = played(clear, posterior)(seed, 40_000).map(meanCost)
  // The price at which replacing ties with leaving: the minimum of the two is where a bootstrap has it hardest.
  const meanOfPrice = Math.exp(0.15 ** 2 / 2)
  const tied = modelOf({ newPrice: 12_000 - (clearMeans[2]! - clearMeans[0]!) / meanOfPrice })

  test.each([
    { what: 'a clear case', model: clear },
    { what: 'a tie of the two best rivals', model: tied },
  ])(
    '$what',
    ({ model }) => {
      const play = played(model, posterior)
      const truth = reportOf(model, play(seed, 60_000), seed).walkAway!.price
      const repeats = 200
      let holding = 0
      for (let repeat = 0; repeat < repeats; repeat++) {
        const { simulation } = reportOf(model, play(1_000 + repeat, 300), seed).walkAway!
        if (simulation.low <= truth && truth <= simulation.high) holding++
      }
      expect(holding / repeats).toBeGreaterThanOrEqual(0.85)
      expect(holding / repeats).toBeLessThanOrEqual(0.95)
    },
    120_000,
  )
})

/** A set of which everything that could be learnt is known: one scale and one state of each mode, for certain. */
function certain(
  posterior: Posterior,
  of: {
    readonly kappaLog: number
    readonly theta: number[]
    readonly state: number[]
    readonly since: number[]
  },
): Posterior {
  const modes = of.theta.length
  const each = <T extends Float32Array | Uint8Array>(table: T, value: (m: number) => number): T => {
    const one = table.slice(0, modes * POSTERIOR_STEPS) as T
    for (let m = 0; m < modes; m++) one.fill(value(m), m * POSTERIOR_STEPS, (m + 1) * POSTERIOR_STEPS)
    return one
  }
  return {
    ...posterior,
    kappaLog: Float64Array.of(of.kappaLog),
    kappaWeight: Float64Array.of(1),
    theta: each(posterior.theta, (m) => of.theta[m]!),
    state: each(posterior.state, (m) => of.state[m]!),
    since: each(posterior.since, (m) => of.since[m]!),
    // The fitting dates are known: the ages of the first entry are those of all.
    age: each(posterior.age, (m) => posterior.age[m * POSTERIOR_STEPS]!),
    ageHours: each(posterior.ageHours, (m) => posterior.ageHours[m * POSTERIOR_STEPS]!),
  }
}

test('what finding out could make of the price agrees with nested simulation', () => {
  const model = modelOf({ newPrice: 9_000 })
  const posterior = posteriorOf(model, { seed: 1 })
  const samples = played(model, posterior)(seed, 20_000)
  const { findingOut } = reportOf(model, samples, seed).walkAway!
  const factor = column(samples[1]!, 'quoteFactor')
  const meanFactor = factor.reduce((sum, one) => sum + one, 0) / factor.length

  const outer = 240
  const states = startStates(compile(model, posterior), { seed, from: 0, count: outer })
  const prices = Float64Array.from({ length: outer }, (_, i) => {
    const normal = (set: number, forWhat: number) =>
      normalFrom(setWords({ seed, history: i, set, forWhat })[0])
    const known: LifeModel = {
      ...model,
      candidates: model.candidates.map((one) => ({
        ...one,
        price: 9_000 * Math.exp(0.15 * normal(1, purpose.replacement)),
      })),
    }
    const row = (table: { readonly [at: number]: number }) => model.parts.map((_, m) => table[m * outer + i]!)
    const inner = certain(posterior, {
      kappaLog: states.kappaLog[i]!,
      theta: row(states.scaleLog).map(Math.exp),
      state: row(states.state),
      since: row(states.since),
    })
    const [leave, mend, replace] = played(known, inner)(5_000 + i, 600)
    const quote = column(mend!, 'quoteFactor').reduce((sum, one) => sum + one, 0) / 600
    const without = meanCost(mend!) - 2500 * quote
    return (Math.min(meanCost(leave!), meanCost(replace!)) - without) / meanFactor
  }).sort()
  const at = (share: number) => prices[Math.round(share * (outer - 1))]!
  const span = findingOut.high - findingOut.low
  expect(span).toBeGreaterThan(1_000)
  expect(Math.abs(findingOut.low - at(0.1))).toBeLessThan(0.15 * span)
  expect(Math.abs(findingOut.high - at(0.9))).toBeLessThan(0.15 * span)
}, 120_000)
