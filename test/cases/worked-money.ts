/**
 * Worked cases about money, days and what is done instead: most are arithmetic that can be followed by hand.
 *
 * @module
 */

import type { ClosedFormCase } from './agreement.js'
import { hoursAYear, lasting, model, part } from './build.js'

/** ∫ e^(−rt) dt. */
function worthOfOneAYear(rate: number, from: number, to: number): number {
  return (Math.exp(-rate * from) - Math.exp(-rate * to)) / rate
}

export const workedMoney: readonly ClosedFormCase[] = [
  {
    id: 'broken-at-the-start',
    source:
      'by hand: 500 × 1.2 + 4.5 h at 80 + two trips at 60, all × 1.1; out 5 + 2 + 4.5/6 days, half of them wanted, in July at twice the curve',
    held: 'derived',
    histories: 2,
    model: model({
      horizonYears: 1,
      startMonth: 6,
      realInterestPerYear: 0.05,
      use: { hoursByMonth: Array(12).fill(100), powerNeededByMonth: Array(12).fill(0.5) },
      labour: { paidPerHour: 80, perTrip: 60, hoursPerDay: 6, overrun: { median: 1.1, logSd: 0 } },
      access: [
        { id: 'side', hours: 1, includes: ['front'] },
        { id: 'front', hours: 0.5 },
      ],
      powerLoss: {
        curve: [
          { days: 0, cost: 0 },
          { days: 2, cost: 100 },
          { days: 3, cost: 400 },
        ],
        byMonth: [1, 1, 1, 1, 1, 1, 2, 1, 1, 1, 1, 1],
      },
      parts: [
        {
          ...lasting('pump', 0),
          broken: 'fails',
          access: ['side'],
          repair: {
            price: 500,
            hours: 3,
            trips: 2,
            workshopDays: 2,
            supply: [{ chance: 1, days: 5, priceFactor: 1.2 }],
          },
        },
      ],
    }),
    expect: [
      { mean: { of: 'failureCost' }, value: (600 + 4.5 * 80 + 2 * 60) * 1.1 },
      { mean: { of: 'daysWithoutPower' }, value: 7.75 / 2 },
      {
        mean: { of: 'powerCost' },
        value: 2 * (400 + 300 * (7.75 / 2 - 3)) * Math.exp((-0.05 * 7.75) / 2 / 365.25),
      },
      { mean: { of: 'stops' }, value: 1 },
      { mean: { of: 'sameDayStops' }, value: 0 },
      { mean: { of: 'failures', mode: 'pump/fails' }, value: 1 },
    ],
  },
  {
    id: 'mended-now-by-quote',
    source: 'means of lognormal amounts, median × e^(σ²/2); out for the wait and the days of the quote',
    held: 'derived',
    histories: 5000,
    alternative: 'mend',
    model: model({
      horizonYears: 1,
      parts: [{ ...lasting('pump', 700), broken: 'fails' }],
      alternatives: [
        {
          id: 'mend',
          now: {
            parts: [{ part: 'pump' }],
            quote: {
              price: 4000,
              overrun: { median: 1.1, logSd: 0.2 },
              besides: { median: 300, logSd: 0.5 },
            },
            days: 5,
            wait: 10,
          },
        },
      ],
    }),
    expect: [
      {
        mean: { of: 'nowCost' },
        value: 4000 * 1.1 * Math.exp(0.2 ** 2 / 2) + 300 * Math.exp(0.5 ** 2 / 2),
      },
      { mean: { of: 'presentCost' }, value: 4400 * Math.exp(0.02) + 300 * Math.exp(0.125) },
      { mean: { of: 'daysWithoutPower' }, value: 15 },
    ],
  },
  {
    id: 'last-source-likelier-every-year',
    source:
      'rate 2 a year, 100 or three times that, the dearer with chance 0.2 + 0.05t: 2∫100(1 + 2(0.2 + 0.05t))dt',
    held: 'derived',
    histories: 3000,
    model: model({
      horizonYears: 10,
      parts: [
        part('pump', { clock: 'years', shape: 1, scale: 0.5 }, 0, {
          repair: {
            price: 100,
            supply: [
              { chance: 0.8, days: 0 },
              { chance: 0.2, days: 0, priceFactor: 3 },
            ],
            lastLikelierPerYear: 0.05,
          },
        }),
      ],
    }),
    expect: [{ mean: { of: 'failureCost' }, value: 200 * (10 * 1.4 + 0.1 * 50) }],
  },
  {
    id: 'replaced-in-year-four',
    source:
      'by hand: price less salvage at 4 years; failures at 0.5 a year are free for three years from then; flows ∫e^(−rt)dt; resale after six years',
    held: 'derived',
    histories: 5000,
    alternative: 'later',
    model: model({
      horizonYears: 10,
      realInterestPerYear: 0.04,
      fuelPerHour: 1.5,
      upkeepPerYear: 200,
      set: {
        salvageAtReplacement: 400,
        resale: { newPrice: 50_000 },
      },
      candidates: [
        {
          id: 'seven',
          price: 9000,
          install: 1500,
          guaranteeYears: 3,
          fuelPerHour: 1.2,
          resale: { newPrice: 10_000, share: 0.6, fallPerYear: 0.1, least: 500 },
        },
      ],
      parts: [part('pump', { clock: 'years', shape: 1, scale: 2, stops: 0 }, 300)],
      alternatives: [{ id: 'later', now: 'leave', replaceLater: { year: 4, with: 'seven' } }],
    }),
    expect: [
      { mean: { of: 'replacementCost' }, value: 10_100 * Math.exp(-0.16) },
      {
        mean: { of: 'failureCost' },
        value: 300 * 0.5 * (worthOfOneAYear(0.04, 0, 4) + worthOfOneAYear(0.04, 7, 10)),
      },
      {
        mean: { of: 'fuelCost' },
        value: hoursAYear * (1.5 * worthOfOneAYear(0.04, 0, 4) + 1.2 * worthOfOneAYear(0.04, 4, 10)),
      },
      { mean: { of: 'upkeepCost' }, value: 200 * worthOfOneAYear(0.04, 0, 10) },
      { mean: { of: 'resaleCost' }, value: -10_000 * 0.6 * Math.exp(-0.6) * Math.exp(-0.4) },
      { mean: { of: 'replaced' }, value: 1 },
    ],
  },
  {
    id: 'given-up-now',
    source:
      'by hand: sold at twelve years, then 400 and twenty days at 50 × 1.25 a year, ∫e^(−rt)dt over ten years',
    held: 'derived',
    histories: 2,
    alternative: 'without',
    model: model({
      horizonYears: 10,
      realInterestPerYear: 0.03,
      fuelPerHour: 1,
      upkeepPerYear: 500,
      powerLoss: {
        curve: [
          { days: 0, cost: 0 },
          { days: 4, cost: 200 },
        ],
        byMonth: [1, 1, 1, 1, 1, 1, 2, 2, 2, 1, 1, 1],
      },
      set: { ageYears: 12, resale: { newPrice: 8000, share: 0.5, fallPerYear: 0.08, least: 300 } },
      giveUp: { costNow: 2500, costPerYear: 400, daysWithoutPerYear: 20 },
      parts: [part('pump', { clock: 'years', shape: 1, scale: 2 }, 300)],
      alternatives: [{ id: 'without', now: 'give-up' }],
    }),
    expect: [
      {
        mean: { of: 'presentCost' },
        value: 2500 + (400 + 20 * 50 * 1.25) * worthOfOneAYear(0.03, 0, 10) - 4000 * Math.exp(-0.96),
      },
      { mean: { of: 'resaleCost' }, value: -4000 * Math.exp(-0.96) },
    ],
  },
  {
    id: 'above-the-limit-from-year-two',
    source:
      'rate 0.5 a year, jobs of 1,000, the limit falls from 1,200 to 800 in four years and stays: mended for two years, replaced for six',
    held: 'derived',
    histories: 5000,
    alternative: 'limited',
    model: model({
      horizonYears: 8,
      candidates: [{ id: 'seven', price: 5000 }],
      parts: [part('pump', { clock: 'years', shape: 1, scale: 2 }, 1000)],
      alternatives: [{ id: 'limited', limit: { knots: [1200, 800, 800], above: { replaceWith: 'seven' } } }],
    }),
    expect: [
      { mean: { of: 'failureCost' }, value: 1000 * 0.5 * 2 },
      { mean: { of: 'replaced' }, value: 0.5 * 6 },
      { mean: { of: 'replacementCost' }, value: 5000 * 0.5 * 6 },
      { mean: { of: 'failures', mode: 'pump/fails' }, value: 4 },
    ],
  },
  {
    id: 'work-that-breaks-things',
    source:
      'each job brings another at once with chance 0.5 × 0.8: own failures 0.5 a year, and 0.4/0.6 of a job each',
    held: 'derived',
    histories: 3000,
    model: model({
      horizonYears: 10,
      intrusion: { testsCatch: 0.2, onset: { shape: 1, scaleHours: 0.01 } },
      parts: [
        part('pump', { clock: 'years', shape: 1, scale: 2 }, 0, {
          repair: { price: 200, intrusionChance: 0.5 },
        }),
      ],
    }),
    expect: [
      { mean: { of: 'failureCost' }, value: 200 * 5 },
      { mean: { of: 'intrusionCost' }, value: (200 * 5 * 0.4) / 0.6 },
    ],
  },
  {
    id: 'faults-built-in',
    source: 'a Poisson number of mean 2, all shown within a year',
    held: 'derived',
    histories: 3000,
    alternative: 'new',
    model: model({
      horizonYears: 1,
      candidates: [{ id: 'seven', price: 3000, infantFaults: 2 }],
      parts: [lasting('pump', 100), lasting('cooler', 300)],
      alternatives: [{ id: 'new', now: { replaceWith: 'seven' } }],
    }),
    expect: [
      { mean: { of: 'replacementCost' }, value: 3000 },
      { mean: { of: 'intrusionCost' }, value: 2 * 200 },
    ],
  },
]
