/**
 * Life models whose answer is known without simulating, each with where the answer comes from and how it is held.
 *
 * Every simulator of the life model is held to these through the same input that a person would write by hand.
 * A year has 365.25 days, so a set in use all the time runs 8,766 hours a year.
 *
 * @module
 */

import type { ClosedFormCase, Quantity } from './agreement.js'
import { hoursAYear, model, part } from './build.js'
import { agedCases } from './closed-form-ages.js'

export { agreement, type ClosedFormCase, type HistoryView } from './agreement.js'

const fails = (mode: string): Quantity => ({ of: 'failures', mode })
const first = (mode: string): Quantity => ({ of: 'firstFailure', mode })

export const closedFormCases: readonly ClosedFormCase[] = [
  {
    id: 'payments-at-random',
    source: 'Campbell’s theorem: a stream of rate λ costs cλ(1 − e^(−rT))/r, variance c²λ(1 − e^(−2rT))/(2r)',
    held: 'derived',
    histories: 10_000,
    model: model({
      horizonYears: 10,
      realInterestPerYear: 0.05,
      parts: [part('pump', { clock: 'years', shape: 1, scale: 2.5 }, 1200)],
    }),
    expect: [
      { mean: { of: 'presentCost' }, value: 3777.30566676 },
      { deviation: 'presentCost', value: 1908.14423429 },
      { mean: { of: 'failureCost' }, value: 3777.30566676 },
      { mean: fails('pump/fails'), value: 4 },
      { mean: { of: 'withoutFailure' }, value: 0.0183156388887 },
    ],
  },
  ...[
    { age: 0, present: 1127.55013039, number: 1.5625 },
    { age: 5, present: 2357.14181879, number: 3.125 },
  ].map(
    ({ age, present, number }): ClosedFormCase => ({
      id: `mended-as-old-from-age-${age}`,
      source:
        'minimal repair is a Poisson process with the hazard of the life: cost c∫e^(−rt) dH(a + t), H = (t/η)^β',
      held: 'derived',
      histories: 10_000,
      model: model({
        horizonYears: 10,
        realInterestPerYear: 0.05,
        parts: [
          part(
            'pump',
            { clock: 'years', shape: 2, scale: 8, remedy: { outcome: 'reconditioned', agesLess: 0 } },
            1000,
            { age: { years: age } },
          ),
        ],
      }),
      expect: [
        { mean: { of: 'presentCost' }, value: present },
        { mean: fails('pump/fails'), value: number },
      ],
    }),
  ),
  {
    id: 'renewed-when-failed',
    source:
      'renewal function of a Weibull life of shape 2 (series of Smith and Leadbetter, 1963, recalled), with discounting',
    held: 'derived',
    histories: 10_000,
    model: model({
      horizonYears: 10,
      realInterestPerYear: 0.05,
      parts: [part('pump', { clock: 'years', shape: 2, scale: 8 }, 1000)],
    }),
    expect: [
      { mean: { of: 'presentCost' }, value: 773.205335231 },
      { mean: fails('pump/fails'), value: 1.04269315088 },
    ],
  },
  {
    id: 'renewed-when-failed-from-age-5',
    source: 'delayed renewal process: the first life is what is left at age 5, the later ones are whole',
    held: 'derived',
    histories: 10_000,
    model: model({
      horizonYears: 10,
      realInterestPerYear: 0.05,
      parts: [part('pump', { clock: 'years', shape: 2, scale: 8 }, 1000, { age: { years: 5 } })],
    }),
    expect: [
      { mean: { of: 'presentCost' }, value: 1182.97807167 },
      { mean: fails('pump/fails'), value: 1.49215319137 },
      { mean: { of: 'withoutFailure' }, value: 0.0439369336234 },
    ],
  },
  {
    id: 'knock-on-charged-once',
    source:
      'constant rates 0.6, 0.15, 0.05 a year; a failure of A ruins C directly or by B with chance 1 − 0.9·0.925 = 0.1675',
    held: 'derived',
    histories: 5000,
    model: model({
      horizonYears: 8,
      realInterestPerYear: 0.04,
      parts: [
        part(
          'pump',
          {
            clock: 'years',
            shape: 1,
            scale: 1 / 0.6,
            links: [
              { part: 'cooler', mode: 'fails', chance: 0.3 },
              { part: 'head', mode: 'fails', chance: 0.1 },
            ],
          },
          400,
        ),
        part(
          'cooler',
          {
            clock: 'years',
            shape: 1,
            scale: 1 / 0.15,
            links: [{ part: 'head', mode: 'fails', chance: 0.25 }],
          },
          2500,
        ),
        part('head', { clock: 'years', shape: 1, scale: 20 }, 6000),
      ],
    }),
    expect: [
      { mean: { of: 'presentCost' }, value: 15013.8790424 },
      { mean: fails('pump/fails'), value: 8 * 0.6 },
      { mean: fails('cooler/fails'), value: 8 * (0.15 + 0.6 * 0.3) },
      { mean: fails('head/fails'), value: 8 * (0.05 + 0.15 * 0.25 + 0.6 * 0.1675) },
    ],
  },
  {
    id: 'up-and-down',
    source: 'two-state chain, up 800 h and down 40 h in the mean, up at the start: over 2,000 h',
    held: 'derived',
    histories: 10_000,
    model: model({
      horizonYears: 2000 / hoursAYear,
      parts: [
        part('pump', { clock: 'hours', shape: 1, scale: 800 }, 0, {
          repair: { supply: [{ chance: 1, days: { exponentialMean: 40 / 24 } }] },
        }),
      ],
    }),
    expect: [
      { mean: { of: 'daysWithoutPower' }, value: 93.4240362812 / 24 },
      { mean: { of: 'stops' }, value: 2.38321995465 },
      { mean: fails('pump/fails'), value: 2.38321995465 },
    ],
  },
  ...[
    {
      // 17,532 h: the four-state chain (up, or down by one of three) gives 0.9357707 up from a start that is up;
      // without end it is 1/(1 + Σ λd) = 0.935453695042.
      id: 'others-stop-two-years',
      horizonYears: 2,
      expect: [
        { mean: { of: 'daysWithoutPower' }, value: 46.91947295482881 },
        { mean: { of: 'stops' }, value: 43.06557320384579 },
      ] as const,
    },
    {
      id: 'others-stop-200-hours',
      horizonYears: 200 / hoursAYear,
      expect: [{ mean: { of: 'withoutFailure' }, value: 0.591555364367 }] as const,
    },
  ].map(
    ({ id, horizonYears, expect }): ClosedFormCase => ({
      id,
      source:
        'parts that stand still while one is down: 0.002625 failures a running hour (Barlow and Proschan, 1975, recalled); chain solved here',
      held: 'derived',
      histories: 2000,
      model: model({
        horizonYears,
        parts: [
          { id: 'pump', meanHours: 500, repairHours: 10 },
          { id: 'cooler', meanHours: 2000, repairHours: 48 },
          { id: 'winding', meanHours: 8000, repairHours: 200 },
        ].map((line) =>
          part(line.id, { clock: 'hours', shape: 1, scale: line.meanHours }, 0, {
            repair: { supply: [{ chance: 1, days: { exponentialMean: line.repairHours / 24 } }] },
          }),
        ),
      }),
      expect,
    }),
  ),
  {
    id: 'two-modes-of-one-shape',
    source:
      'smallest of two Weibull lives of shape 2.5 and scales 3,000 and 4,000 h: Weibull of scale 2,559.65 h',
    held: 'derived',
    histories: 5000,
    model: model({
      horizonYears: 1.2,
      parts: [
        {
          id: 'pump',
          modes: [
            { id: 'leaks', clock: 'hours', shape: 2.5, scale: 3000 },
            { id: 'seizes', clock: 'hours', shape: 2.5, scale: 4000 },
          ],
        },
      ],
    }),
    expect: [
      { mean: first('pump/leaks'), value: 0.672431968528 },
      { mean: first('pump/seizes'), value: 1 - 0.672431968528 },
      { mean: { of: 'firstFailureYears' }, value: 2271.0848859 / hoursAYear },
    ],
  },
  ...[
    {
      id: 'two-parts-first-to-fail',
      horizonYears: 2,
      expect: [
        { mean: first('pump/fails'), value: 0.477883960847 },
        { mean: { of: 'firstFailureYears' }, value: 3258.65724382 / hoursAYear },
      ] as const,
    },
    {
      id: 'two-parts-first-within-3000-hours',
      horizonYears: 3000 / hoursAYear,
      expect: [
        { mean: first('pump/fails'), value: 0.315442202952 },
        { mean: first('bearing/fails'), value: 0.14775592085 },
        { mean: { of: 'withoutFailure' }, value: 0.536801876198 },
      ] as const,
    },
  ].map(
    ({ id, horizonYears, expect }): ClosedFormCase => ({
      id,
      source: 'quadrature of the cause-specific densities of Weibull lives (1.3, 6,000 h) and (3, 5,000 h)',
      held: 'derived',
      histories: 5000,
      model: model({
        horizonYears,
        parts: [
          part('pump', { clock: 'hours', shape: 1.3, scale: 6000 }, 0),
          part('bearing', { clock: 'hours', shape: 3, scale: 5000 }, 0),
        ],
      }),
      expect,
    }),
  ),
  {
    // Over all time this stream costs 16,060.1834862 for mending and 26,422.0183486 for being without.
    id: 'price-of-being-without',
    source:
      'two-state chain, 1.2 failures a year up, 26 repairs a year down: 700·1.2·∫e^(−rt)P(up) and 30,000·∫e^(−rt)P(down) over 30 years',
    held: 'derived',
    histories: 3000,
    model: model({
      horizonYears: 30,
      realInterestPerYear: 0.05,
      powerLoss: {
        curve: [
          { days: 0, cost: 0 },
          { days: 365.25, cost: 30_000 },
        ],
      },
      parts: [
        part('pump', { clock: 'hours', shape: 1, scale: hoursAYear / 1.2 }, 0, {
          repair: { price: 700, supply: [{ chance: 1, days: { exponentialMean: 365.25 / 26 } }] },
        }),
      ],
    }),
    expect: [
      { mean: { of: 'failureCost' }, value: 12476.975620325513 },
      { mean: { of: 'powerCost' }, value: 20515.63175645949 },
      { mean: { of: 'presentCost' }, value: 12476.975620325513 + 20515.63175645949 },
    ],
  },
  {
    id: 'points-of-a-random-sum',
    source: 'Poisson distribution of mean 3, in thousands',
    held: 'derived',
    histories: 5000,
    model: model({
      horizonYears: 6,
      parts: [part('pump', { clock: 'years', shape: 1, scale: 2 }, 1000)],
    }),
    expect: [
      { mean: { of: 'presentCost' }, value: 3000 },
      { deviation: 'presentCost', value: 1732.05080757 },
      { quantile: 'presentCost', share: 0.5, value: 3000 },
      { quantile: 'presentCost', share: 0.95, value: 6000 },
      { mean: { of: 'costAtLeast', cost: 5000 }, value: 0.184736755476 },
    ],
  },
  ...agedCases,
  {
    id: 'renewed-every-ten-years',
    source:
      'minimal repair (shape 2, scale 6 years) between renewals at 10 and 20 years: 800∫e^(−rt) dH in each, over 25 years',
    held: 'derived',
    histories: 5000,
    model: model({
      horizonYears: 25,
      realInterestPerYear: 0.05,
      parts: [
        part(
          'pump',
          { clock: 'years', shape: 2, scale: 6, remedy: { outcome: 'reconditioned', agesLess: 0 } },
          800,
          { service: { everyYears: 10, renews: true, price: 7000 } },
        ),
      ],
    }),
    expect: [
      { mean: { of: 'failureCost' }, value: 2749.581395248435 },
      { mean: { of: 'upkeepCost' }, value: 6820.870706188531 },
    ],
  },
  {
    id: 'looked-at-every-250-hours',
    source:
      'delay-time model (Christer and Waller, 1984, recalled): defect after 4,000 h and failure 500 h later in the mean, a perfect look every 250 h; renewal reward over 43,830 h',
    held: 'derived',
    histories: 3000,
    model: model({
      horizonYears: 5,
      checks: [{ id: 'look', everyHours: 250 }],
      parts: [
        part(
          'pump',
          {
            clock: 'hours',
            shape: 1,
            scale: 4500,
            delay: { clock: 'hours', shape: 1, scale: 500 },
            checks: [{ check: 'look', detection: 1 }],
          },
          100,
        ),
      ],
    }),
    expect: [
      { mean: fails('pump/fails'), value: 2.2932594986859294 },
      { mean: { of: 'plannedCost' }, value: 835.1399456956964 },
      { mean: { of: 'failureCost' }, value: 229.32594986859294 },
    ],
  },
]
