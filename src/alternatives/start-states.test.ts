import { expect, test } from 'vitest'
import { type LifeModelInput, lifeModelSchema } from '../forecast/life-model.js'
import { posteriorOf } from '../forecast/posterior.js'
import { compile } from './program.js'
import { column } from './sample.js'
import { playSpan } from './simulate.js'
import { DEFECTIVE, startStates } from './start-states.js'

const input: LifeModelInput = {
  type: 'gensettle/life-model',
  version: 1,
  horizonYears: 5,
  setFactor: { boatLogSd: 0.28, setLogSd: 0.28 },
  parts: [
    {
      id: 'hose',
      age: { years: 6 },
      repair: { price: 200 },
      modes: [
        {
          id: 'cracked',
          clock: 'years',
          shape: 3,
          scale: 8,
          logSd: 0.3,
          delay: { clock: 'years', median: 2, logSd: 0.4 },
        },
        { id: 'loose', clock: 'years', shape: 1, scale: 20 },
      ],
    },
  ],
}
const model = lifeModelSchema.parse(input)
const posterior = posteriorOf(model, { seed: 3 })

test('what is drawn without playing is what is played: ln κ, history by history', () => {
  const span = { seed: 7, from: 20, count: 400 }
  const states = startStates(compile(model, posterior), span)
  const [sample] = playSpan(compile(model, posterior), span)
  expect(states.kappaLog).toEqual(column(sample!, 'kappaLog'))
})

test('defects are as frequent as the posterior says, by ln κ', () => {
  const states = startStates(compile(model, posterior), { seed: 1, from: 0, count: 20_000 })
  const nodes = posterior.kappaLog.length
  const entries = posterior.state.length / nodes / 2
  const shareAt = (node: number) => {
    const at = node * 2 * entries
    return posterior.state.subarray(at, at + entries).filter((state) => state === DEFECTIVE).length / entries
  }
  const expected = posterior.kappaWeight.reduce((sum, weight, node) => sum + weight * shareAt(node), 0)
  const drawn = states.state.subarray(0, 20_000).filter((state) => state === DEFECTIVE).length / 20_000
  expect(expected).toBeGreaterThan(0.1)
  expect(Math.abs(drawn - expected)).toBeLessThan(4 * Math.sqrt((expected * (1 - expected)) / 20_000))
  states.state.forEach((state, at) => {
    expect(states.since[at]! > 0).toBe(state === DEFECTIVE)
  })
})

test('any split gives the same', () => {
  const program = compile(model, posterior)
  const whole = startStates(program, { seed: 5, from: 0, count: 90 })
  const later = startStates(program, { seed: 5, from: 40, count: 50 })
  expect(later.kappaLog).toEqual(whole.kappaLog.subarray(40))
  for (const name of ['state', 'since', 'scaleLog'] as const) {
    for (let m = 0; m < 2; m++) {
      expect(later[name].subarray(m * 50, m * 50 + 50)).toEqual(
        whole[name].subarray(m * 90 + 40, m * 90 + 90),
      )
    }
  }
})

test('a history of one seed does not begin as the same history of another seed played before it', () => {
  const program = compile(model, posterior)
  playSpan(program, { seed: 1, from: 9, count: 1 })
  const after = playSpan(program, { seed: 2, from: 9, count: 1 })
  const fresh = playSpan(compile(model, posterior), { seed: 2, from: 9, count: 1 })
  expect(after).toEqual(fresh)
})
