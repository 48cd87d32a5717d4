import { describe, expect, it } from 'vitest'
import { chanceOfState, meanLnTheta, meanOver, type TrialPart, trialModel } from '../../test/trial-model.js'
import { contradictedEvidence } from './contradicted-evidence.js'
import { forecastOf } from './odds.js'
import { posteriorOf } from './posterior.js'
import { setAsideIn } from './posterior-type.js'

const wearing = { id: 'm', clock: 'years', shape: 2, scale: 6, logSd: 0.4 } as const

/** Means over ln θ ~ N(0, sd²) by 4,001 points; derived. */
function overTheta(sd: number, likelihood: (theta: number) => number, read: (theta: number) => number) {
  let whole = 0
  let prior = 0
  let sum = 0
  for (let k = -2000; k <= 2000; k++) {
    const z = k / 300
    const weight = Math.exp(-0.5 * z * z)
    const theta = Math.exp(sd * z)
    prior += weight
    whole += weight * likelihood(theta)
    sum += weight * likelihood(theta) * read(theta)
  }
  return { lnEvidence: Math.log(whole / prior), mean: sum / whole }
}

/** What survival to an age comes to where a service every year is done with this chance, by steps of whole years. */
function afterServices(years: number, diligence: number, theta: number) {
  const used = (age: number) => (age / (wearing.scale * theta)) ** wearing.shape
  let byAge = [1]
  for (let year = 1; year <= years; year++) {
    const older = byAge.map((chance, age) => chance * Math.exp(used(age) - used(age + 1)))
    byAge = [older.reduce((a, b) => a + b, 0) * diligence, ...older.map((chance) => chance * (1 - diligence))]
  }
  const last = byAge.map((chance, age) => chance * Math.exp(used(age) - used(age + 0.5)))
  const whole = last.reduce((a, b) => a + b, 0)
  return { whole, young: last[0]! / whole }
}

describe('a part fitted at a known time, whose service clears a mode', () => {
  for (const diligence of [1, 0.6]) {
    it(`has outlived what its service left it to, done ${diligence * 10} times in ten (closed form, derived)`, () => {
      const part: TrialPart = {
        id: 'a',
        age: { years: 10.5 },
        service: { everyYears: 1, clears: ['m'], diligence },
        modes: [wearing],
      }
      const posterior = posteriorOf(trialModel([part], { set: { ageYears: 30 } }), { seed: 1 })
      const likelihood = (theta: number) => afterServices(10, diligence, theta).whole
      const scale = overTheta(0.4, likelihood, Math.log)
      const young = overTheta(0.4, likelihood, (theta) => afterServices(10, diligence, theta).young)
      expect(Math.abs(posterior.logEvidence - scale.lnEvidence)).toBeLessThan(0.06)
      expect(Math.abs(meanLnTheta(posterior, 0) - scale.mean)).toBeLessThan(0.025)
      const found = meanOver(posterior, 0, (at) => (posterior.age[at]! < 0.6 ? 1 : 0))
      expect(Math.abs(found - young.mean)).toBeLessThan(diligence === 1 ? 1e-9 : 0.03)
      expect(posterior.serviceYears[0]).toBeCloseTo(0.5, 5)
    })
  }

  it('leaves its other modes as they are without the service', () => {
    const other: TrialPart['modes'][number] = {
      id: 'n',
      clock: 'years',
      shape: 2,
      scale: 14,
      logSd: 0.3,
      delay: { clock: 'years', median: 2, logSd: 0.4 },
      observations: [{ yearsAgo: 1, likelihood: { sound: 1, defective: 0.3 } }],
    }
    const modes = [{ ...wearing, scale: 400 }, other]
    const part: TrialPart = { id: 'a', age: { years: 10.5 }, modes }
    const service = { everyYears: 1, clears: ['m'] }
    const learn = (rest: Partial<TrialPart>) =>
      posteriorOf(trialModel([{ ...part, ...rest }], { set: { ageYears: 12 } }), { seed: 1 })
    const [plain, served] = [learn({}), learn({ service })]
    expect(served.joint[0]).toBe(1)
    expect(Math.abs(chanceOfState(served, 1, 1) - chanceOfState(plain, 1, 1))).toBeLessThan(0.03)
    expect(Math.abs(meanLnTheta(served, 1) - meanLnTheta(plain, 1))).toBeLessThan(0.025)
    expect(Math.abs(served.logEvidence - plain.logEvidence)).toBeLessThan(0.06)
  })

  it('is played on the hours of its own life', () => {
    const track = [
      { yearsAgo: 20, hours: 0 },
      { yearsAgo: 2, hours: 1800 },
      { yearsAgo: 0, hours: 2600 },
    ]
    const part: TrialPart = {
      id: 'a',
      age: { years: 4 },
      service: { everyHours: 300, clears: ['m'] },
      modes: [{ ...wearing, clock: 'hours', scale: 90_000, logSd: 0 }],
    }
    const posterior = posteriorOf(trialModel([part], { past: { track } }), { seed: 1 })
    // 200 h in the first two years, then 400 h a year: due at 300, 600 and 900 h of its 1,000
    expect(posterior.age[0]).toBeCloseTo(100, 3)
    expect(posterior.serviceHours[0]).toBeCloseTo(100, 3)
    expect(posterior.serviceYears[0]).toBeCloseTo(0.25, 5)
  })

  it('learns from earlier lives as any part does', () => {
    const pastLives = [{ age: { years: 2 }, ended: { failed: 'm' } }]
    const service = { everyYears: 4, clears: ['m'] }
    const part: TrialPart = { id: 'a', age: { years: 4.5 }, service, pastLives, modes: [wearing] }
    const posterior = posteriorOf(trialModel([part], { set: { ageYears: 7 } }), { seed: 1 })
    const known = overTheta(
      0.4,
      (theta) => {
        const used = (age: number) => (age / (6 * theta)) ** 2
        return used(2) * Math.exp(-used(2)) * Math.exp(-used(4) - used(0.5))
      },
      Math.log,
    )
    expect(Math.abs(meanLnTheta(posterior, 0) - known.mean)).toBeLessThan(0.03)
    // the density of the earlier failure is β/x times what is above
    expect(Math.abs(posterior.logEvidence - known.lnEvidence)).toBeLessThan(0.06)
  })
})

describe('a mode cleared at a known time', () => {
  const cleared = { ...wearing, clearedYearsAgo: 3.2 }
  const learn = (part: Omit<TrialPart, 'id'>) =>
    posteriorOf(trialModel([{ id: 'a', ...part }], { set: { ageYears: 12 } }), { seed: 1 })

  it('counts its ages from then', () => {
    const looks = [{ yearsAgo: 5, likelihood: { sound: 0.01, defective: 1 } }]
    const since = learn({ age: { years: 9 }, modes: [{ ...cleared, observations: looks }] })
    const young = learn({ age: { years: 3.2 }, modes: [wearing] })
    expect(since.logEvidence).toBeCloseTo(young.logEvidence, 12)
    expect(since.theta).toEqual(young.theta)
    expect(since.age).toEqual(young.age)
    expect(since.ageHours).toEqual(young.ageHours)
    expect(since.serviceYears[0]).toBe(9)
  })

  it('starts a new life in the lives that are played', () => {
    for (const age of [{ years: 10 }, 'unknown'] as const) {
      const service = { everyYears: 4, clears: ['m'] }
      const modes = [{ ...wearing, scale: 1000, clearedYearsAgo: 1 }]
      expect(learn({ age, service, modes }).age[0]).toBeCloseTo(1, 5)
      expect(learn({ age, service, modes: [{ ...modes[0]!, clearedYearsAgo: 0 }] }).age[0]).toBe(0)
    }
  })
})

describe('the quality of the piece in place', () => {
  const poor = 0.5
  const learn = (part: Omit<TrialPart, 'id'>) =>
    trialModel([{ id: 'a', ...part }], {
      set: { ageYears: 12 },
      setFactor: { boatLogSd: 0.2, setLogSd: 0.2 },
    })

  it('shortens its life as a shorter scale would, known and played', () => {
    for (const age of [{ years: 2 }, 'unknown'] as const) {
      const rest = { age, service: { everyYears: 5, clears: ['m'] } }
      const told = posteriorOf(learn({ ...rest, quality: poor, modes: [wearing] }), { seed: 1 })
      const shorter = { ...wearing, scale: poor * wearing.scale }
      const same = posteriorOf(learn({ ...rest, modes: [shorter] }), { seed: 1 })
      expect(told.logEvidence).toBeCloseTo(same.logEvidence, 9)
      expect(told.age).toEqual(same.age)
      expect(Math.abs(told.theta[500]! / (poor * same.theta[500]!) - 1)).toBeLessThan(1e-6)
    }
  })

  it('says nothing of the lives before', () => {
    const part = {
      age: { years: 0 },
      pastLives: [{ age: { years: 2 }, ended: { failed: 'm' } }],
      modes: [wearing],
    }
    const good = posteriorOf(learn(part), { seed: 1 })
    const told = posteriorOf(learn({ ...part, quality: poor }), { seed: 1 })
    expect(told.logEvidence).toBeCloseTo(good.logEvidence, 12)
    expect(meanLnTheta(told, 0)).toBeCloseTo(meanLnTheta(good, 0) + Math.log(poor), 6)
  })

  it('ends with the piece: a service that renews fits a good one', () => {
    const sure = { ...wearing, logSd: 0 }
    const service = { everyYears: 1, renews: true }
    const model = trialModel([{ id: 'a', age: { years: 0.75 }, quality: 0.2, service, modes: [sure] }])
    const [odds] = forecastOf(model, posteriorOf(model, { seed: 1 }), { seed: 1 }).parts
    const used = (age: number, quality: number) => (age / (6 * quality)) ** 2
    const outlived = used(1, 0.2) - used(0.75, 0.2) + used(1, 1) + used(0.75, 1)
    const expected = 1 - Math.exp(-outlived)
    expect(Math.abs(odds!.failing[3]! - expected)).toBeLessThan(4 * odds!.standardError)
  })
})

describe('what is entered and cannot be', () => {
  const certain = { ...wearing, delay: { clock: 'years', median: 1, logSd: 0.3 } } as const
  const aside = (part: Omit<TrialPart, 'id'>) => {
    const model = trialModel([{ id: 'a', ...part }], { set: { ageYears: 12 } })
    const posterior = posteriorOf(model, { seed: 1 })
    expect(Number.isFinite(posterior.logEvidence)).toBe(true)
    return { posterior, named: setAsideIn(model, posterior), told: contradictedEvidence(model, posterior) }
  }
  const never = [{ yearsAgo: 0, likelihood: { sound: 0, defective: 0 } }]

  it('is named, and the part is as if it had not been entered', () => {
    const { posterior, named, told } = aside({
      age: { years: 4 },
      modes: [{ ...certain, observations: never }],
    })
    expect(named).toEqual([{ part: 'a', mode: 'm', what: 'looks' }])
    expect(told).toEqual([
      {
        code: 'contradicts-model',
        path: 'parts.a.m',
        found: 'what was seen of it, which contradicts the model and was left out',
        allowed: 'what can happen to such a part',
      },
    ])
    const plain = aside({ age: { years: 4 }, modes: [certain] })
    expect(plain.named).toEqual([])
    expect(posterior.logEvidence).toBeCloseTo(plain.posterior.logEvidence, 12)
    expect(chanceOfState(posterior, 0, 1)).toBe(chanceOfState(plain.posterior, 0, 1))
  })

  it('may be an earlier life, or what stands broken on the day it is fitted', () => {
    const pastLives = [
      { age: { years: 3 }, ended: { failed: 'm' } },
      { age: { years: 5 }, ended: { defective: 'm' } },
    ]
    // what fails without warning is never found defective
    const { named, posterior } = aside({ age: { years: 4 }, pastLives, modes: [wearing] })
    expect(named).toEqual([{ part: 'a', mode: 'm', what: 'past-life' }])
    const one = aside({ age: { years: 4 }, pastLives: pastLives.slice(0, 1), modes: [wearing] })
    expect(posterior.logEvidence).toBeCloseTo(one.posterior.logEvidence, 12)
    expect(aside({ age: { years: 0 }, broken: 'm', modes: [certain] }).named).toEqual([
      { part: 'a', mode: 'm', what: 'broken' },
    ])
  })

  it('is everything entered of a played part if no life agrees with it', () => {
    const { named } = aside({ age: 'unknown', modes: [{ ...certain, observations: never }] })
    expect(named).toEqual([{ part: 'a', what: 'everything' }])
  })

  it('may be a symptom that nothing can have given, or let-downs where nothing could stop', () => {
    const symptom = { yearsAgo: 0, seen: true, modes: [{ part: 'a', mode: 'm', detection: 0.8 }] }
    const letDowns = [{ fromYearsAgo: 40, toYearsAgo: 30, count: 2 }]
    const setFactor = { boatLogSd: 0.2, setLogSd: 0.2, letDowns }
    const parts: TrialPart[] = [{ id: 'a', age: { years: 0 }, modes: [certain] }]
    const model = trialModel(parts, { symptoms: [symptom], setFactor, set: { ageYears: 12 } })
    const posterior = posteriorOf(model, { seed: 1 })
    expect(setAsideIn(model, posterior)).toEqual([
      { part: 'a', mode: 'm', what: 'symptom' },
      { what: 'let-downs' },
    ])
    expect(posterior.logEvidence).toBeCloseTo(0, 9)
    expect(contradictedEvidence(model, posterior).map(({ path }) => path)).toEqual([
      'parts.a.m',
      'setFactor.letDowns',
    ])
  })

  it('is not what was seen of the piece before, up to the day on which this one was fitted', () => {
    const modes = [{ ...certain, checks: [{ check: 'look', detection: 0.7 }] }]
    const observations = [4, 6].map((yearsAgo) => ({ yearsAgo, check: 'look', seen: true }))
    const service = { everyYears: 3, clears: ['m'] }
    for (const rest of [{}, { service }]) {
      const plain = aside({ age: { years: 4 }, modes, ...rest })
      const seen = aside({ age: { years: 4 }, modes: [{ ...modes[0]!, observations }], ...rest })
      expect(seen.named).toEqual([])
      expect(seen.posterior.theta).toEqual(plain.posterior.theta)
    }
  })
})
