import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  chanceOfState,
  meanLnKappa,
  meanLnTheta,
  meanOver,
  type TrialPart,
  trialModel,
} from '../../test/trial-model.js'
import { posteriorOf } from './posterior.js'

// Grid quadrature with 200,001 points over ±12 sd, halved grid agreeing to 1e-7; derived. Lognormal prior of ln η with
// the stated median and P84/P50; chance: that the unit of that age fails within `ahead` more hours.
const scaleCases = [
  {
    name: 'one survival',
    prior: { median: 6000, spread: 2, shape: 2 },
    unit: { age: 5000, ahead: 300 },
    failures: [],
    withdrawn: [],
    expected: { mean: 10855.9, chance: 0.0540447, evidence: 0.473871 },
  },
  {
    name: 'one failure young',
    prior: { median: 6000, spread: 2, shape: 2 },
    unit: { age: 0, ahead: 300 },
    failures: [1500],
    withdrawn: [],
    expected: { mean: 3824.42, chance: 0.0143056, evidence: 0.000126148 },
  },
  {
    name: 'a failure and a survival',
    prior: { median: 20000, spread: 3, shape: 1.3 },
    unit: { age: 12000, ahead: 500 },
    failures: [8000],
    withdrawn: [],
    expected: { mean: 27241.2, chance: 0.0346582, evidence: 1.29797e-5 },
  },
  {
    name: 'a narrow prior',
    prior: { median: 6000, spread: 1.2, shape: 3 },
    unit: { age: 5000, ahead: 300 },
    failures: [],
    withdrawn: [],
    expected: { mean: 6433.9, chance: 0.0994319, evidence: 0.544164 },
  },
  {
    name: 'a long survival',
    prior: { median: 6000, spread: 2, shape: 2 },
    unit: { age: 15000, ahead: 300 },
    failures: [],
    withdrawn: [],
    expected: { mean: 18557.8, chance: 0.042012, evidence: 0.0911027 },
  },
  {
    name: 'two failures and one withdrawn, no wear',
    prior: { median: 4000, spread: 1.5, shape: 1 },
    unit: { age: 0, ahead: 300 },
    failures: [1000, 2500],
    withdrawn: [10000],
    expected: { mean: 4999.18, chance: 0.0645931, evidence: 1.94348e-9 },
  },
]

describe('a scale learnt from survival and failures', () => {
  for (const { name, prior, unit, failures, withdrawn, expected } of scaleCases) {
    it(name, () => {
      const { median, spread, shape } = prior
      const model = trialModel([
        {
          id: 'a',
          age: { years: unit.age / 8766, hours: unit.age },
          pastLives: [
            ...failures.map((hours) => ({ age: { hours }, ended: { failed: 'm' } })),
            ...withdrawn.map((hours) => ({ age: { hours }, ended: 'sound' as const })),
          ],
          modes: [{ id: 'm', clock: 'hours', shape, scale: median, logSd: Math.log(spread) }],
        },
      ])
      const posterior = posteriorOf(model, { seed: 1 })
      expect(Math.abs(Math.exp(posterior.logEvidence) / expected.evidence - 1)).toBeLessThan(1e-3)
      const mean = meanOver(posterior, 0, (at) => posterior.theta[at]! * median)
      expect(Math.abs(mean / expected.mean - 1)).toBeLessThan(0.005)
      const chance = meanOver(posterior, 0, (at) => {
        const scale = posterior.theta[at]! * median
        return -Math.expm1((unit.age / scale) ** shape - ((unit.age + unit.ahead) / scale) ** shape)
      })
      expect(Math.abs(chance / expected.chance - 1)).toBeLessThan(0.005)
    })
  }
})

/** A visible mode with exponential onset and delay, on the hour clock, looked at so many years ago. */
function delayPart(at: {
  readonly onset: number
  readonly delay: number
  readonly hours: number
  readonly looks: readonly { readonly hours: number; readonly missed: number }[]
}): TrialPart {
  return {
    id: 'a',
    age: { years: at.hours / 1000, hours: at.hours },
    modes: [
      {
        id: 'm',
        clock: 'hours',
        shape: 1,
        scale: at.onset + at.delay,
        delay: { clock: 'hours', shape: 1, scale: at.delay },
        observations: at.looks.map((look) => ({
          yearsAgo: (at.hours - look.hours) / 1000,
          likelihood: { sound: 1, defective: look.missed },
        })),
      },
    ],
  }
}

// Exponential onset and delay, looks independent: closed-form recursion good' = g e^(−λΔ),
// defective' = g·λ(e^(−λΔ) − e^(−μΔ))/(μ − λ) + d e^(−μΔ); derived. After Christer and Waller (1984); recalled.
const delayCases = [
  { onset: 4000, delay: 500, hours: 1000, looks: [], defective: 0.105571453032, evidence: 0.870724425905 },
  {
    onset: 4000,
    delay: 500,
    hours: 1000,
    looks: [{ hours: 1000, missed: 0 }],
    defective: 0,
    evidence: 0.778800783071,
  },
  {
    onset: 4000,
    delay: 500,
    hours: 1200,
    looks: [500, 1000].map((hours) => ({ hours, missed: 0.3 })),
    defective: 0.0583814455567,
    evidence: 0.786749811998,
  },
  {
    onset: 4000,
    delay: 500,
    hours: 1000,
    looks: [250, 500, 750, 1000].map((hours) => ({ hours, missed: 0.5 })),
    defective: 0.0356529568692,
    evidence: 0.807593893318,
  },
]

describe('a defect that looks have not shown', () => {
  for (const { defective, evidence, ...at } of delayCases) {
    it(`after ${at.looks.length} looks in ${at.hours} h`, () => {
      const model = trialModel([delayPart(at)], {
        use: { hoursByMonth: Array(12).fill(1000 / 12) },
      })
      const posterior = posteriorOf(model, { seed: 4 })
      expect(Math.exp(posterior.logEvidence)).toBeCloseTo(evidence, 9)
      expect(Math.abs(chanceOfState(posterior, 0, 1) - defective)).toBeLessThan(1.01 / 1024)
    })
  }
})

describe('no evidence', () => {
  const spread = { boatLogSd: 0.28, setLogSd: 0.28, letDowns: [] }

  it('leaves a new part of known age at its prior', () => {
    const model = trialModel(
      [{ id: 'a', modes: [{ id: 'm', clock: 'years', shape: 3, scale: 9, logSd: 0.2 }] }],
      {
        setFactor: spread,
      },
    )
    const posterior = posteriorOf(model, { seed: 1 })
    expect(posterior.logEvidence).toBeCloseTo(0, 9)
    expect(meanLnKappa(posterior)).toBeCloseTo(0, 6)
    expect(meanLnTheta(posterior, 0)).toBeCloseTo(0, 3)
    const square = meanOver(posterior, 0, (at) => Math.log(posterior.theta[at]!) ** 2)
    expect(square).toBeCloseTo(2 * 0.28 ** 2 + 0.2 ** 2, 2)
  })

  it('leaves the set factor alone however old a part of unknown date is', () => {
    const model = trialModel(
      [{ id: 'a', age: 'unknown', modes: [{ id: 'm', clock: 'years', shape: 3, scale: 4, logSd: 0.2 }] }],
      { setFactor: spread, set: { ageYears: 30 } },
    )
    const posterior = posteriorOf(model, { seed: 1 })
    expect(posterior.logEvidence).toBeCloseTo(0, 9)
    expect(meanLnKappa(posterior)).toBeCloseTo(0, 6)
    // resampled from 2,048 lives, so good to about 1/√500 of a standard deviation
    expect(Math.abs(meanLnTheta(posterior, 0))).toBeLessThan(0.03)
  })

  it('is what being in service is for a hidden mode', () => {
    const hidden = { id: 'm', clock: 'years', shape: 2, scale: 6, logSd: 0.4, hidden: true } as const
    const posterior = posteriorOf(trialModel([{ id: 'a', age: { years: 12 }, modes: [hidden] }]), { seed: 1 })
    expect(posterior.logEvidence).toBeCloseTo(0, 4)
    expect(Math.abs(meanLnTheta(posterior, 0))).toBeLessThan(0.002)
    // prior mean of 1 − exp(−(12/6θ)²), ln θ normal with sd 0.4, by quadrature with 4,001 points; derived
    expect(Math.abs(chanceOfState(posterior, 0, 2) - priorFailed(12 / 6, 0.4))).toBeLessThan(0.002)
  })
})

function priorFailed(ratio: number, logSd: number): number {
  let sum = 0
  let weight = 0
  for (let k = -2000; k <= 2000; k++) {
    const z = k / 400
    const w = Math.exp(-0.5 * z * z)
    sum += w * -Math.expm1(-((ratio / Math.exp(logSd * z)) ** 2))
    weight += w
  }
  return sum / weight
}

describe('what is seen', () => {
  const sees = { check: 'look', detection: 0.7 }
  const looked = (yearsAgo: readonly number[], seen = false): TrialPart => ({
    id: 'a',
    age: { years: 6 },
    modes: [
      {
        id: 'm',
        clock: 'years',
        shape: 2,
        scale: 8,
        delay: { clock: 'years', median: 3, logSd: 0.5 },
        checks: [sees],
        observations: yearsAgo.map((ago) => ({ yearsAgo: ago, check: 'look', seen })),
      },
    ],
  })
  const odds = (part: TrialPart) => {
    const defective = chanceOfState(posteriorOf(trialModel([part]), { seed: 2 }), 0, 1)
    return defective / (1 - defective)
  }

  it('is worth less the second time the same check misses', () => {
    const none = odds(looked([]))
    const once = odds(looked([0.01]))
    const twice = odds(looked([0.01, 0.005]))
    expect(once / none).toBeCloseTo(0.3, 1)
    expect(twice).toBeLessThan(once)
    // E[(1 − d)²] / E[1 − d] = (b + 1)/(a + b + 1) with a = 1.4, b = 0.6: 0.533 in place of 0.3
    expect(Math.abs(twice / once - 1.6 / 3)).toBeLessThan(0.06)
  })

  it('makes a defect certain where the check gives no false alarm', () => {
    expect(chanceOfState(posteriorOf(trialModel([looked([0], true)]), { seed: 2 }), 0, 1)).toBe(1)
  })

  it('does not depend on the order of entry', () => {
    const observations = [
      { yearsAgo: 0.2, check: 'look', seen: false },
      { yearsAgo: 1.5, check: 'look', seen: true },
      { yearsAgo: 1.5, likelihood: { sound: 0.9, defective: 0.4 } },
      { yearsAgo: 3, check: 'look', seen: false },
    ]
    const pastLives = [
      { age: { years: 5 }, ended: { failed: 'm' } },
      { age: { years: 9 }, ended: 'failed-cause-unknown' as const },
      { age: { years: 4 }, ended: { defective: 'm' } },
    ]
    const learn = (order: { seen: typeof observations; lives: typeof pastLives }) => {
      const part = looked([])
      const mode = {
        ...part.modes[0]!,
        checks: [{ ...sees, falseAlarm: 0.1 }],
        observations: order.seen,
        logSd: 0.3,
      }
      return posteriorOf(trialModel([{ ...part, pastLives: order.lives, modes: [mode] }]), { seed: 2 })
    }
    const first = learn({ seen: observations, lives: pastLives })
    fc.assert(
      fc.property(
        fc.shuffledSubarray(observations, { minLength: 4 }),
        fc.shuffledSubarray(pastLives, { minLength: 3 }),
        (seen, lives) => {
          const other = learn({ seen, lives })
          expect(other.logEvidence).toBeCloseTo(first.logEvidence, 9)
          expect(chanceOfState(other, 0, 1)).toBeCloseTo(chanceOfState(first, 0, 1), 2)
        },
      ),
      { numRuns: 10 },
    )
  })
})

describe('what moves a scale', () => {
  const part = (rest: Partial<TrialPart>): TrialPart => ({
    id: 'a',
    modes: [{ id: 'm', clock: 'years', shape: 2.5, scale: 10, logSd: 0.3 }],
    ...rest,
  })
  const spread = { boatLogSd: 0.28, setLogSd: 0.28 }
  const learn = (rest: Partial<TrialPart>) =>
    posteriorOf(trialModel([part(rest)], { setFactor: spread }), { seed: 3 })

  it('is survival upwards, the more the longer', () => {
    const ages = [0, 5, 10, 20, 30].map((years) => learn({ age: { years } }))
    for (let i = 1; i < ages.length; i++) {
      expect(meanLnTheta(ages[i]!, 0)).toBeGreaterThan(meanLnTheta(ages[i - 1]!, 0))
      expect(meanLnKappa(ages[i]!)).toBeGreaterThan(meanLnKappa(ages[i - 1]!))
    }
  })

  it('is a failure young downwards, of the mode and of the set', () => {
    const failed = learn({ pastLives: [{ age: { years: 2 }, ended: { failed: 'm' } }] })
    expect(meanLnTheta(failed, 0)).toBeLessThan(-0.3)
    expect(meanLnKappa(failed)).toBeLessThan(-0.15)
  })

  it('is the cause unknown on the mode that fails so young, not on the other', () => {
    const modes = [
      { id: 'quick', clock: 'years' as const, shape: 2, scale: 5, logSd: 0.4 },
      { id: 'slow', clock: 'years' as const, shape: 2, scale: 80, logSd: 0.4 },
    ]
    const posterior = learn({ modes, pastLives: [{ age: { years: 1.5 }, ended: 'failed-cause-unknown' }] })
    const shift = (mode: number) => meanLnTheta(posterior, mode) - meanLnKappa(posterior)
    expect(shift(0)).toBeLessThan(-0.15)
    expect(Math.abs(shift(1))).toBeLessThan(0.03)
  })

  it('is a mode that stands broken, and it stands so at the start', () => {
    const posterior = learn({ age: { years: 3 }, broken: 'm' })
    expect(chanceOfState(posterior, 0, 1)).toBeCloseTo(1, 9)
    expect(meanLnTheta(posterior, 0)).toBeLessThan(-0.2)
  })
})

it('is the same for the same seed', () => {
  const model = trialModel(
    [
      { id: 'a', age: 'unknown', modes: [{ id: 'm', clock: 'years', shape: 3, scale: 4, logSd: 0.2 }] },
      { id: 'b', age: { years: 3 }, modes: [{ id: 'm', clock: 'years', shape: 3, scale: 4, logSd: 0.2 }] },
    ],
    { setFactor: { boatLogSd: 0.2, setLogSd: 0.2 }, set: { ageYears: 8 } },
  )
  const [first, again, other] = [9, 9, 10].map((seed) => posteriorOf(model, { seed }).theta)
  expect(again!.every((theta, i) => theta === first![i])).toBe(true)
  expect(other!.every((theta, i) => theta === first![i])).toBe(false)
})
