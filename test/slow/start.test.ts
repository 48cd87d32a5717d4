import { expect, test } from 'vitest'
import { lifeModelSchema } from '../../src/forecast/life-model.js'
import { POSTERIOR_STEPS, type Posterior } from '../../src/forecast/posterior-type.js'
import { chanceOf, detectionAt, normalTail } from './random.js'
import { simulateSlowly } from './simulator.js'

/** One part with one mode: a quarter of the entries defective, scales that differ from entry to entry and node to node. */
const nodes = [-0.5, 0.5]
const weights = [0.3, 0.7]
const entries = nodes.length * POSTERIOR_STEPS
const isDefective = (entry: number) => entry % 4 === 0
const thetaOf = (entry: number) =>
  Math.exp(nodes[Math.floor(entry / POSTERIOR_STEPS)]!) * (1 + (entry % POSTERIOR_STEPS) / POSTERIOR_STEPS)

const posterior: Posterior = {
  kappaLog: Float64Array.from(nodes),
  kappaWeight: Float64Array.from(weights),
  logEvidence: 0,
  theta: Float32Array.from({ length: entries }, (_, entry) => thetaOf(entry)),
  state: Uint8Array.from({ length: entries }, (_, entry) => (isDefective(entry) ? 1 : 0)),
  age: new Float32Array(entries).fill(3),
  since: Float32Array.from({ length: entries }, (_, entry) => (isDefective(entry) ? 0.5 : 0)),
  ageHours: new Float32Array(entries),
  serviceYears: new Float32Array(entries),
  serviceHours: new Float32Array(entries),
  joint: new Uint8Array(1),
  setAside: new Int32Array(0),
}

test('histories start from the tables of a posterior: exponential times to the defect and beyond, in closed form (derived)', () => {
  const model = lifeModelSchema.parse({
    type: 'gensettle/life-model',
    version: 1,
    horizonYears: 1,
    setFactor: { boatLogSd: 0.2, setLogSd: 0.3 },
    parts: [
      {
        id: 'pump',
        age: 'unknown',
        modes: [
          {
            id: 'fails',
            clock: 'years',
            shape: 1,
            scale: 4,
            delay: { clock: 'years', shape: 1, scale: 1 },
          },
        ],
      },
    ],
  })
  // Mean onset 4 − 1 = 3 years times θ; P(X + D > 1) for rates a and 1.
  let expected = 0
  for (let entry = 0; entry < entries; entry++) {
    const a = 1 / (3 * thetaOf(entry))
    const lasts = isDefective(entry) ? Math.exp(-1) : (Math.exp(-a) - a * Math.exp(-1)) / (1 - a)
    expected += (weights[Math.floor(entry / POSTERIOR_STEPS)]! * lasts) / POSTERIOR_STEPS
  }
  const { histories } = simulateSlowly(model, posterior, 'leave', { seed: 4, histories: 20_000 })
  const found = histories.filter((history) => history.first === null).length / histories.length
  expect(Math.abs(found - expected)).toBeLessThan(4 * Math.sqrt((expected * (1 - expected)) / 20_000))
})

test.each([
  ['from what is believed', null],
  [
    'from a table that holds it',
    {
      ...posterior,
      theta: new Float32Array(entries).fill(0.5),
      state: new Uint8Array(entries),
      age: new Float32Array(entries),
    },
  ],
] as const)(
  'a poor piece in place lasts as such, and what renews it as a good one, %s (closed form, derived)',
  (_, tables) => {
    const model = lifeModelSchema.parse({
      type: 'gensettle/life-model',
      version: 1,
      horizonYears: 6,
      parts: [{ id: 'pump', quality: 0.5, modes: [{ id: 'fails', clock: 'years', shape: 1, scale: 4 }] }],
    })
    // First at rate a = 1/(4 · 0.5), then at b = 1/4: E N(T) = F + b (T − F/a), F = 1 − e^(−aT).
    const a = 1 / 2
    const failed = 1 - Math.exp(-a * 6)
    const expected = failed + (6 - failed / a) / 4
    const { means } = simulateSlowly(model, tables, 'leave', { seed: 5, histories: 4000 })
    const { mean, standardError } = means['failures.pump/fails']!
    expect(Math.abs(mean - expected)).toBeLessThan(4 * standardError)
  },
)

test('evidence or an unknown age without a posterior is refused', () => {
  const model = lifeModelSchema.parse({
    type: 'gensettle/life-model',
    version: 1,
    horizonYears: 1,
    parts: [{ id: 'pump', age: 'unknown', modes: [{ id: 'fails', clock: 'years', shape: 1, scale: 4 }] }],
  })
  expect(() => simulateSlowly(model, null, 'leave', { seed: 1, histories: 1 })).toThrow(/posterior/)
})

test('a defect that has lasted stays within the law of its delay, and a look within the law of its detection', () => {
  // Φ(−1.96) = 0.0249979 and Φ(−5) = 2.86652e-7: normal tables (recalled).
  expect(normalTail(1.96)).toBeCloseTo(0.0249979, 6)
  expect(normalTail(5) / 2.86652e-7).toBeCloseTo(1, 5)
  // Beta(1, 1) is even; Beta(2m, 2 − 2m) has mean m (derived).
  expect(detectionAt(0.5, 0.3)).toBeCloseTo(0.3, 10)
  const chance = chanceOf(9, 1)
  let sum = 0
  for (let n = 0; n < 5000; n++) sum += detectionAt(0.8, chance.uniform())
  // Variance m(1 − m)/3.
  expect(Math.abs(sum / 5000 - 0.8)).toBeLessThan(4 * Math.sqrt((0.8 * 0.2) / 3 / 5000))
  expect(detectionAt(0, 0.5)).toBe(0)
  expect(detectionAt(1, 0.5)).toBe(1)
})
