import { describe, expect, test } from 'vitest'
import { normal } from '../../bench/advice/chance.js'
import { costOf, type Life } from '../../bench/advice/ledger.js'
import type { Nature } from '../../bench/advice/nature.js'
import { ledBy, type Rule } from '../../bench/advice/rules.js'
import type { Kept } from '../../src/alternatives/kept.js'
import { column } from '../../src/alternatives/sample.js'
import { simulate } from '../../src/alternatives/simulate.js'
import type { Alternative, LifeModel } from '../../src/forecast/life-model.js'
import { posteriorOf } from '../../src/forecast/posterior.js'
import { type TrialPart, trialModel } from '../trial-model.js'

const supply = [
  { chance: 0.6, days: { median: 2, logSd: 0.4 } },
  { chance: 0.4, days: { median: 20, logSd: 0.5 }, priceFactor: 1.5, quality: 0.8 },
]
const parts: TrialPart[] = [
  {
    id: 'pump',
    access: ['front'],
    age: { years: 0 },
    repair: {
      price: { median: 300, logSd: 0.2 },
      hours: 2,
      by: 'owner',
      supply,
      lastLikelierPerYear: 0.02,
      wrongPartChance: 0.2,
      intrusionChance: 0.15,
    },
    modes: [
      {
        id: 'seal',
        clock: 'hours',
        shape: 2,
        scale: 900,
        logSd: 0.3,
        delay: { clock: 'hours', median: 80, logSd: 0.7 },
        checks: [
          { check: 'watch', detection: 0.5 },
          { check: 'open', detection: 0.8 },
        ],
        links: [
          { part: 'engine', mode: 'wear', chance: 0.1 },
          { part: 'belt', mode: 'frayed', chance: 0.5, effect: 'starts-defect' },
        ],
      },
    ],
  },
  {
    id: 'engine',
    access: ['front', 'top'],
    age: { years: 0 },
    repair: {
      price: { median: 2500, logSd: 0.3 },
      hours: 20,
      trips: 2,
      workshopDays: { median: 10, logSd: 0.4 },
      supply,
      intrusionChance: 0.2,
    },
    modes: [
      { id: 'wear', clock: 'hours', shape: 2.5, scale: 4000, logSd: 0.3 },
      {
        id: 'rust',
        clock: 'years',
        shape: 1.5,
        scale: 15,
        logSd: 0.4,
        delay: { clock: 'years', median: 1, logSd: 0.5 },
        checks: [{ check: 'open', detection: 0.6 }],
      },
    ],
  },
  {
    id: 'belt',
    access: ['front'],
    age: { years: 0 },
    repair: {
      price: 40,
      hours: 1,
      by: 'owner',
      supply: supply.slice(0, 1).map((s) => ({ ...s, chance: 1 })),
    },
    modes: [
      {
        id: 'frayed',
        clock: 'years',
        shape: 3,
        scale: 6,
        logSd: 0.2,
        stops: 0,
        delay: { clock: 'years', median: 0.5, logSd: 0.5 },
        checks: [{ check: 'watch', detection: 0.4 }],
      },
    ],
  },
]
const model: LifeModel = trialModel(parts, {
  horizonYears: 10,
  realInterestPerYear: 0.03,
  use: { hoursByMonth: Array(12).fill(25), powerNeededByMonth: Array(12).fill(0.8) },
  setFactor: { boatLogSd: 0.2, setLogSd: 0.2 },
  checks: [
    { id: 'watch', everyHours: 50, diligence: 0.7 },
    { id: 'open', everyHours: 250, diligence: 0.8 },
  ],
  labour: { paidPerHour: 100, ownPerHour: 20, perTrip: 150, overrun: { median: 1.1, logSd: 0.2 } },
  access: [
    { id: 'front', hours: 1 },
    { id: 'top', hours: 3 },
  ],
  powerLoss: {
    curve: [
      { days: 1, cost: 20 },
      { days: 5, cost: 400 },
      { days: 30, cost: 2500 },
    ],
  },
  intrusion: { testsCatch: 0.3, onset: { shape: 0.6, scaleHours: 12 } },
  set: { resale: { newPrice: 8000, least: 300 }, ageYears: 0, salvageAtReplacement: 200 },
  candidates: [
    {
      id: 'new-same',
      price: { median: 8000, logSd: 0.1 },
      install: { median: 2000, logSd: 0.2 },
      leadDays: { median: 25, logSd: 0.4 },
      installDays: 4,
      guaranteeYears: 2,
      infantFaults: 0.4,
      resale: { newPrice: 8000, least: 300 },
    },
  ],
})

const limit = (share: number): Pick<Alternative, 'limit'> => ({
  limit: { knots: [share * 8000, share * 8000, share * 8000], above: { replaceWith: 'new-same' } },
})
const upTo =
  (share: number): Rule['answer'] =>
  ({ estimate }) =>
    estimate > share * 8000 ? 'replace' : 'mend'

const policies: readonly {
  readonly name: string
  readonly alternative: Omit<Alternative, 'id' | 'now'>
  readonly rule: Pick<Rule, 'answer' | 'replaceAt'>
}[] = [
  { name: 'always mended', alternative: {}, rule: { answer: () => 'mend' } },
  { name: 'mended up to half the price of new', alternative: limit(0.5), rule: { answer: upTo(0.5) } },
  { name: 'mended up to a twenty-fifth', alternative: limit(0.04), rule: { answer: upTo(0.04) } },
  {
    name: 'replaced at six years',
    alternative: { replaceLater: { year: 6, with: 'new-same' } },
    rule: { answer: () => 'mend', replaceAt: { year: 6 } },
  },
]

const lives = 1500
const histories = 20_000

function natureOf(number: number): Nature {
  const seed = 7_000_000 + number
  return {
    seed,
    model,
    law: 'weibull',
    level: 1,
    boatLog: model.setFactor.boatLogSd * normal([seed, 0]),
    ageYears: 0,
    pastHoursPerYear: 300,
    logYears: 0,
  }
}

describe('the world that the bench lives in, against the simulator', () => {
  const posterior = posteriorOf(model, { seed: 2 })
  const quantities: readonly (readonly [Kept, (life: Life) => number])[] = [
    ['cost', costOf],
    ['failures', (life) => life.costs.failures],
    ['planned', (life) => life.costs.planned],
    ['intrusion', (life) => life.costs.intrusion],
    ['replacement', (life) => life.costs.replacement],
    ['power', (life) => life.costs.power],
    ['resale', (life) => life.costs.resale],
    ['daysWithout', (life) => life.daysWithout],
  ]
  test.each(policies)('$name: every heading within 4 standard errors', ({ alternative, rule }) => {
    const alternatives: Alternative[] = [{ id: 'one', now: 'leave', ...alternative }]
    const sample = simulate({ ...model, alternatives }, posterior, { seed: 5, from: 0, count: histories })[0]!
    const led = Array.from({ length: lives }, (_, i) => ledBy(rule, natureOf(i), 0))
    for (const [kept, read] of quantities) {
      const own = meanAndError(led.map(read))
      const theirs = meanAndError([...column(sample, kept)])
      const error = Math.hypot(own.error, theirs.error)
      const said = `${kept}: lived ${own.mean} ± ${own.error}, simulated ${theirs.mean} ± ${theirs.error}`
      expect(Math.abs(own.mean - theirs.mean), said).toBeLessThanOrEqual(4 * error + 1e-9)
    }
  })
})

function meanAndError(values: readonly number[]): { readonly mean: number; readonly error: number } {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0)
  return { mean, error: Math.sqrt(squares / (values.length - 1) / values.length) }
}
