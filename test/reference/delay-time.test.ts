import { expect, test } from 'vitest'
import { massesAt, presentTerms } from '../../src/forecast/mode-likelihood.js'
import { evenPast } from '../../src/forecast/track.js'
import { chanceAhead, type LifeSoFar, readAhead, readLife, stateAt } from '../oracles/delay-time.js'
import { afterSoundLooks, downShare, inspectionCycle, shareFailing, statesAt } from '../oracles/inspection.js'

// Expected values in this file: closed forms of the delay-time model (Christer and Waller 1984, recalled), recomputed
// by an independent program.

function exponentialLife(means: { onset: number; delay: number }, age: number): LifeSoFar {
  return {
    mode: { shape: 1, delay: { kind: 'weibull', shape: 1, scale: means.delay }, hidden: false },
    age,
    observations: [],
    repeatedLooks: 'independent',
  }
}

/** The same by the quadrature that a boat's posterior is made with; looks that showed nothing. */
function productMasses(
  means: { readonly onset: number; readonly delay: number },
  record: { readonly age: number; readonly at: readonly number[]; readonly detection: readonly number[] },
  hidden = false,
): { sound: number; defective: number; failed: number } {
  const ages = { years: 1, hours: record.age, starts: 0 }
  const terms = presentTerms(
    {
      clock: 'hours',
      shape: 1,
      onsetScale: means.onset,
      delay: { kind: 'weibull', shape: 1, scale: means.delay },
      delayClock: 'hours',
      hidden,
      pace: 1,
    },
    {
      part: { past: evenPast({ ...ages, lowLoadShare: 0 }), ages },
      broken: false,
      looks: record.at.map((hours, index) => ({
        yearsAgo: (record.age - hours) / record.age,
        seen: { sound: 1, defective: 1 - record.detection[index]!, failed: 1 },
      })),
    },
  )
  const masses = { sound: 0, defective: 0, failed: 0 }
  massesAt(terms, 1, masses)
  return masses
}

const withoutLooks = [
  {
    onset: 4000.0,
    delay: 500.0,
    age: 1000,
    good: 0.778800783071,
    defective: 0.0919236428335,
    failed: 0.129275574095,
    given: 0.105571453032,
  },
  {
    onset: 4000.0,
    delay: 500.0,
    age: 250,
    good: 0.939413062813,
    defective: 0.0475546290144,
    failed: 0.0130323081721,
    given: 0.0481825589714,
  },
  {
    onset: 10000.0,
    delay: 200.0,
    age: 2000,
    good: 0.818730753078,
    defective: 0.01670786435,
    failed: 0.164561382572,
    given: 0.0199989131474,
  },
  {
    onset: 500.0,
    delay: 4000.0,
    age: 1000,
    good: 0.135335283237,
    defective: 0.735389142668,
    failed: 0.129275574095,
    given: 0.844571624259,
  },
]

test.each(withoutLooks)('onset $onset, delay $delay, aged $age: sound, defective or failed', (one) => {
  const life = exponentialLife(one, one.age)
  const running = stateAt(readLife(life), one.onset)
  const evidence = Math.exp(running.logEvidence)
  expect(Math.abs(running.sound * evidence - one.good)).toBeLessThan(1e-9)
  expect(Math.abs(running.defective * evidence - one.defective)).toBeLessThan(1e-9)
  expect(Math.abs(1 - evidence - one.failed)).toBeLessThan(1e-9)
  expect(Math.abs(running.defective - one.given)).toBeLessThan(1e-9)

  const hidden = stateAt(readLife({ ...life, mode: { ...life.mode, hidden: true } }), one.onset)
  expect(Math.abs(hidden.failed - one.failed)).toBeLessThan(1e-9)
  expect(Math.abs(hidden.logEvidence)).toBeLessThan(1e-9)

  const product = productMasses(one, { age: one.age, at: [], detection: [] })
  expect(Math.abs(product.sound - one.good)).toBeLessThan(1e-9)
  expect(Math.abs(product.defective - one.defective)).toBeLessThan(1e-9)
  const asleep = productMasses(one, { age: one.age, at: [], detection: [] }, true)
  expect(Math.abs(asleep.failed - one.failed)).toBeLessThan(1e-9)
  expect(Math.abs(product.defective / (product.sound + product.defective) - one.given)).toBeLessThan(1e-9)

  const closed = statesAt({ defect: 1 / one.onset, failure: 1 / one.delay }, one.age)
  expect(Math.abs(closed.defective - one.defective)).toBeLessThan(1e-9)
})

const looked = [
  {
    onset: 4000.0,
    delay: 500.0,
    at: [],
    detection: [],
    age: 1000,
    ahead: 100,
    good: 0.778800783071,
    defective: 0.0919236428335,
    given: 0.105571453032,
    fails: 0.0212133959216,
    evidence: 0.870724425905,
  },
  {
    onset: 4000.0,
    delay: 500.0,
    at: [1000],
    detection: [1.0],
    age: 1000,
    ahead: 100,
    good: 0.778800783071,
    defective: 0.0,
    given: 0.0,
    fails: 0.00232163669305,
    evidence: 0.778800783071,
  },
  {
    onset: 4000.0,
    delay: 500.0,
    at: [500, 1000],
    detection: [0.7, 0.7],
    age: 1200,
    ahead: 100,
    good: 0.740818220682,
    defective: 0.0459315913159,
    given: 0.0583814455567,
    fails: 0.0127688568571,
    evidence: 0.786749811998,
  },
  {
    onset: 4000.0,
    delay: 500.0,
    at: [250, 500, 750, 1000],
    detection: [0.5, 0.5, 0.5, 0.5],
    age: 1000,
    ahead: 100,
    good: 0.778800783071,
    defective: 0.0287931102463,
    given: 0.0356529568692,
    fails: 0.00870164812238,
    evidence: 0.807593893318,
  },
  {
    onset: 2000.0,
    delay: 2000.0,
    at: [1000],
    detection: [0.9],
    age: 1000,
    ahead: 100,
    good: 0.606530659713,
    defective: 0.0303265329856,
    given: 0.047619047619,
    fails: 0.00347393623735,
    evidence: 0.636857192698,
  },
]

test.each(looked)('onset $onset, delay $delay, looks at $at that showed nothing', (one) => {
  const observations = one.at.map((age, index) => ({
    kind: 'look' as const,
    age,
    check: 'look',
    detection: one.detection[index]!,
    falseAlarm: 0,
    seen: false,
  }))
  const life: LifeSoFar = { ...exponentialLife(one, one.age), observations }
  const read = readLife(life)
  const state = stateAt(read, one.onset)
  const evidence = Math.exp(state.logEvidence)
  expect(Math.abs(state.sound * evidence - one.good)).toBeLessThan(1e-9)
  expect(Math.abs(state.defective * evidence - one.defective)).toBeLessThan(1e-9)
  expect(Math.abs(state.defective - one.given)).toBeLessThan(1e-9)
  expect(Math.abs(evidence - one.evidence)).toBeLessThan(1e-9)
  const product = productMasses(one, one)
  expect(Math.abs(product.sound - one.good)).toBeLessThan(1e-9)
  expect(Math.abs(product.defective - one.defective)).toBeLessThan(1e-9)
  const fails = chanceAhead({ life: read, ahead: readAhead(life, one.ahead) }, one.onset)
  expect(Math.abs(fails - one.fails)).toBeLessThan(1e-9)
})

test('equal and nearly equal rates, false alarms and perfect looks agree with the steps taken one by one', () => {
  for (const delay of [500, 500 * (1 + 1e-12), 500.001, 20, 9000]) {
    for (const falseAlarm of [0, 0.05]) {
      for (const detection of [0, 0.3, 1]) {
        const at = [100, 400, 650]
        const closed = afterSoundLooks(
          { defect: 1 / 500, failure: 1 / delay },
          { looks: at.map((age) => ({ at: age, detection })), falseAlarm, now: 700, ahead: 90 },
        )
        const life: LifeSoFar = {
          ...exponentialLife({ onset: 500, delay }, 700),
          observations: at.map((age) => ({
            kind: 'look',
            age,
            check: 'look',
            detection,
            falseAlarm,
            seen: false,
          })),
        }
        const read = readLife(life)
        const state = stateAt(read, 500)
        expect(state.sound).toBeCloseTo(closed.good / closed.evidence, 11)
        expect(Math.exp(state.logEvidence)).toBeCloseTo(closed.evidence, 11)
        expect(chanceAhead({ life: read, ahead: readAhead(life, 90) }, 500)).toBeCloseTo(
          closed.failsAhead,
          11,
        )
      }
    }
  }
})

const cycles = [
  {
    onset: 4000,
    delay: 500,
    every: 250,
    detection: 1.0,
    fails: 0.215100957026,
    found: 0.784899042974,
    cycle: 4107.55047851,
    failsPer1000: 0.0523672096427,
    findsPer1000: 0.191086889152,
  },
  {
    onset: 4000,
    delay: 500,
    every: 250,
    detection: 0.7,
    fails: 0.328359503975,
    found: 0.671640496025,
    cycle: 4164.17975199,
    failsPer1000: 0.0788533453242,
    findsPer1000: 0.16128998651,
  },
  {
    onset: 4000,
    delay: 500,
    every: 1000,
    detection: 0.7,
    fails: 0.696790899433,
    found: 0.303209100567,
    cycle: 4348.39544972,
    failsPer1000: 0.16024092277,
    findsPer1000: 0.0697289618834,
  },
  {
    onset: 4000,
    delay: 500,
    every: 500,
    detection: 0.3,
    fails: 0.747203480805,
    found: 0.252796519195,
    cycle: 4373.6017404,
    failsPer1000: 0.170843969148,
    findsPer1000: 0.057800534708,
  },
]

test.each(cycles)('inspected every $every, detection $detection: how a cycle ends', (one) => {
  const rates = { defect: 1 / one.onset, failure: 1 / one.delay }
  const cycle = inspectionCycle(rates, one)
  const held: [number, number][] = [
    [cycle.fails, one.fails],
    [cycle.found, one.found],
    [cycle.meanCycle, one.cycle],
    [(1000 * cycle.fails) / cycle.meanCycle, one.failsPer1000],
    [(1000 * cycle.found) / cycle.meanCycle, one.findsPer1000],
  ]
  for (const [found, expected] of held) expect(Math.abs(found / expected - 1)).toBeLessThan(1e-7)

  // The product's likelihood, looked at again and again: what is still running after n looks decays to a cycle that
  // ends in a find or a failure in these shares.
  let [found, before] = [0, 1]
  const observations: LifeSoFar['observations'][number][] = []
  for (let n = 1; n <= 60; n++) {
    const life: LifeSoFar = { ...exponentialLife(one, n * one.every), observations: [...observations] }
    const state = stateAt(readLife(life), one.onset)
    const running = Math.exp(state.logEvidence)
    expect(running).toBeLessThan(before)
    before = running
    found += running * state.defective * one.detection
    observations.push({
      kind: 'look',
      age: n * one.every,
      check: 'look',
      detection: one.detection,
      falseAlarm: 0,
      seen: false,
    })
  }
  expect(Math.abs(found - one.found)).toBeLessThan(2 * before)
})

test('many small defects: the share that fails before it is found', () => {
  const one = shareFailing({ failure: 1 / 50, every: 100, detection: 1 })
  expect(one).toBeCloseTo(0.567667641618, 9)
  expect(0.01 * 100 * (1 - one)).toBeCloseTo(0.432332358382, 9)
  const other = shareFailing({ failure: 1 / 200, every: 250, detection: 0.8 })
  expect(other).toBeCloseTo(0.515606879471, 9)
  expect(0.025 * 250 * other).toBeCloseTo(3.22254299669, 9)
  expect(0.025 * 250 * (1 - other)).toBeCloseTo(3.02745700331, 9)
})

test('the interval with least time down', () => {
  const at = (every: number): number =>
    downShare({
      arrivals: 0.01,
      failure: 1 / 300,
      detection: 1,
      downPerFailure: 8,
      downPerInspection: 2,
      every,
    })
  expect(Math.abs(at(100) / 0.0313407005272 - 1)).toBeLessThan(1e-7)
  expect(Math.abs(at(500) / 0.0448864830042 - 1)).toBeLessThan(1e-7)
  expect(Math.abs(at(140.583479379) / 0.0299303494242 - 1)).toBeLessThan(1e-7)
  const best = 140.583479379
  expect(at(best * 1.0002)).toBeGreaterThan(at(best))
  expect(at(best * 0.9998)).toBeGreaterThan(at(best))
})
