import { describe, expect, it } from 'vitest'
import { type LifeModelInput, lifeModelSchema } from './life-model.js'
import { posteriorOf } from './posterior.js'
import { POSTERIOR_STEPS, type Posterior } from './posterior-type.js'

type PartInput = LifeModelInput['parts'][number]

function modelOf(parts: PartInput[], rest: Partial<LifeModelInput> = {}) {
  return lifeModelSchema.parse({
    type: 'gensettle/life-model',
    version: 1,
    horizonYears: 10,
    parts,
    ...rest,
  })
}

/** Mean over the table of one mode, all nodes. */
function meanOver(posterior: Posterior, mode: number, read: (at: number) => number): number {
  const modes = posterior.theta.length / posterior.kappaLog.length / POSTERIOR_STEPS
  let sum = 0
  posterior.kappaWeight.forEach((weight, node) => {
    for (let i = 0; i < POSTERIOR_STEPS; i++) {
      sum += (weight * read((node * modes + mode) * POSTERIOR_STEPS + i)) / POSTERIOR_STEPS
    }
  })
  return sum
}

// Grid quadrature of our own with 200,001 points, halved-grid agreement 1e-7; derived. BAY-3 and BAY-8 have the
// failures as earlier lives of the place and a unit that is new.
const survived = [
  {
    id: 'one survival',
    median: 6000,
    spread: 2,
    shape: 2,
    age: 5000,
    ahead: 300,
    failures: [],
    mean: 10855.9,
    chance: 0.0540447,
    evidence: 0.473871,
  },
  {
    id: 'one failure young',
    median: 6000,
    spread: 2,
    shape: 2,
    age: 0,
    ahead: 300,
    failures: [1500],
    mean: 3824.42,
    chance: 0.0143056,
    evidence: 0.000126148,
  },
  {
    id: 'a failure and a survival',
    median: 20000,
    spread: 3,
    shape: 1.3,
    age: 12000,
    ahead: 500,
    failures: [8000],
    mean: 27241.2,
    chance: 0.0346582,
    evidence: 1.29797e-5,
  },
  {
    id: 'narrow prior',
    median: 6000,
    spread: 1.2,
    shape: 3,
    age: 5000,
    ahead: 300,
    failures: [],
    mean: 6433.9,
    chance: 0.0994319,
    evidence: 0.544164,
  },
  {
    id: 'long survival',
    median: 6000,
    spread: 2,
    shape: 2,
    age: 15000,
    ahead: 300,
    failures: [],
    mean: 18557.8,
    chance: 0.042012,
    evidence: 0.0911027,
  },
]

describe('a scale learnt from survival and failures', () => {
  for (const c of survived) {
    it(c.id, () => {
      const model = modelOf([
        {
          id: 'a',
          age: { years: c.age / 8766, hours: c.age },
          pastLives: c.failures.map((hours) => ({ age: { hours }, ended: { failed: 'm' } })),
          modes: [{ id: 'm', clock: 'hours', shape: c.shape, scale: c.median, logSd: Math.log(c.spread) }],
        },
      ])
      const posterior = posteriorOf(model, { seed: 1 })
      expect(Math.exp(posterior.logEvidence) / c.evidence).toBeCloseTo(1, 3)
      const mean = meanOver(posterior, 0, (at) => posterior.theta[at]! * c.median)
      expect(mean / c.mean).toBeCloseTo(1, 2)
      const chance = meanOver(posterior, 0, (at) => {
        const scale = posterior.theta[at]! * c.median
        return -Math.expm1((c.age / scale) ** c.shape - ((c.age + c.ahead) / scale) ** c.shape)
      })
      expect(Math.abs(chance / c.chance - 1)).toBeLessThan(0.005)
    })
  }
})
