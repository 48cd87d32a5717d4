/**
 * Worked cases about care: looks, waits, lay-up, services and shutdowns that sleep.
 *
 * @module
 */

import type { ClosedFormCase } from './agreement.js'
import { hoursAYear, lasting, model, part } from './build.js'

/** Looks every 500 h over two years of all the time, of which the last is at 17,500 h. */
const tests = 35
const sleepsInBetween = 1 - Math.exp(-500 / 2000)

/** Found asleep over all tests when each is made with this chance, and one that is left out lets it sleep on. */
function foundWithDiligence(made: number): number {
  let asleep = sleepsInBetween
  let found = 0
  for (let n = 0; n < tests; n++) {
    found += made * asleep
    const still = (1 - made) * asleep
    asleep = still + (1 - still) * sleepsInBetween
  }
  return found
}

export const workedCare: readonly ClosedFormCase[] = [
  ...[
    { id: 'always', diligence: 1, found: tests * sleepsInBetween },
    { id: 'mostly', diligence: 0.8, found: foundWithDiligence(0.8) },
  ].map(
    ({ id, diligence, found }): ClosedFormCase => ({
      id: `tested-every-500-hours-${id}`,
      source: 'a hidden failure of mean 2,000 h, met at whole multiples of 500 h: chain from test to test',
      held: 'derived',
      histories: 2000,
      model: model({
        horizonYears: 2,
        checks: [{ id: 'test', everyHours: 500, diligence }],
        parts: [
          part(
            'shutdown',
            {
              clock: 'hours',
              shape: 1,
              scale: 2000,
              hidden: true,
              checks: [{ check: 'test', detection: 1 }],
            },
            10,
          ),
        ],
      }),
      expect: [{ mean: { of: 'plannedCost' }, value: 10 * found }],
    }),
  ),
  {
    id: 'two-tests-at-one-hour',
    source:
      'two tests of chance 0.5 each at the same multiples of 500 h are one of chance 0.75: chain from test to test',
    held: 'derived',
    histories: 2000,
    model: model({
      horizonYears: 2,
      checks: [
        { id: 'press', everyHours: 500, diligence: 0.5 },
        { id: 'lift', everyHours: 500, diligence: 0.5 },
      ],
      parts: [
        part(
          'shutdown',
          {
            clock: 'hours',
            shape: 1,
            scale: 2000,
            hidden: true,
            checks: [
              { check: 'press', detection: 1 },
              { check: 'lift', detection: 1 },
            ],
          },
          10,
        ),
      ],
    }),
    expect: [{ mean: { of: 'plannedCost' }, value: 10 * foundWithDiligence(0.75) }],
  },
  {
    id: 'looked-at-as-the-season-ends',
    source:
      'a look once in a season’s hours falls on its last moment: first after nine months, then yearly, at a rate of 0.5 a year',
    held: 'derived',
    histories: 3000,
    model: model({
      horizonYears: 5,
      use: { hoursByMonth: [0, 0, 0, 80, 80, 80, 80, 80, 80, 0, 0, 0] },
      checks: [{ id: 'test', everyHours: 10_000 }],
      parts: [
        part(
          'shutdown',
          {
            clock: 'years',
            shape: 1,
            scale: 2,
            hidden: true,
            checks: [{ check: 'test', detection: 1 }],
          },
          10,
        ),
      ],
    }),
    expect: [{ mean: { of: 'plannedCost' }, value: 10 * (1 - Math.exp(-0.375) + 4 * (1 - Math.exp(-0.5))) }],
  },
  {
    id: 'looks-that-miss-alike-before-and-after-the-failure',
    source:
      'defective within hours, asleep after 250 h more, looked at every 100 h with one detection, even between 0 and 1: found by the fifth look with chance 5/6',
    held: 'derived',
    histories: 5000,
    alternative: 'once',
    model: model({
      horizonYears: 550 / hoursAYear,
      checks: [{ id: 'look', everyHours: 100 }],
      giveUp: { costNow: 30 },
      parts: [
        part(
          'valve',
          {
            clock: 'hours',
            shape: 20,
            scale: 10,
            delay: { clock: 'hours', median: 250, logSd: 0 },
            hidden: true,
            checks: [{ check: 'look', detection: 0.5 }],
          },
          12,
        ),
      ],
      // Whatever is found ends the history, so that it is the first find that is counted.
      alternatives: [{ id: 'once', limit: { knots: [0, 0, 0], above: 'give-up' } }],
    }),
    expect: [{ mean: { of: 'giveUpCost' }, value: (30 * 5) / 6 }],
  },
  {
    id: 'looks-that-miss-alike',
    source:
      'one detection for all looks at one defect, even between 0 and 1 when its mean is 0.5: found by the fifth look with chance 1 − 1/6',
    held: 'derived',
    histories: 5000,
    model: model({
      horizonYears: 550 / hoursAYear,
      checks: [{ id: 'look', everyHours: 100 }],
      parts: [
        part(
          'valve',
          {
            clock: 'hours',
            shape: 20,
            scale: 2000,
            hidden: true,
            checks: [{ check: 'look', detection: 0.5 }],
          },
          12,
          { age: { hours: 4000 } },
        ),
      ],
    }),
    expect: [{ mean: { of: 'plannedCost' }, value: 12 * (1 - 1 / 6) }],
  },
  {
    id: 'found-with-a-wait',
    source:
      'exponential defects (4,000 h), failure 100 h later, a sure look every 50 h, pieces after 72 h, rest with chance 0.7: renewal reward over 43,830 h',
    held: 'derived',
    histories: 1500,
    model: model({
      horizonYears: 5,
      checks: [{ id: 'look', everyHours: 50 }],
      care: { restChance: 0.7 },
      parts: [
        part(
          'bearing',
          {
            clock: 'hours',
            shape: 1,
            scale: 4100,
            delay: { clock: 'hours', median: 100, logSd: 0 },
            checks: [{ check: 'look', detection: 1 }],
          },
          0,
          { repair: { price: 100, supply: [{ chance: 1, days: 3 }] } },
        ),
      ],
    }),
    expect: [
      { mean: { of: 'plannedCost' }, value: 924.2380171041997 },
      { mean: { of: 'failures', mode: 'bearing/fails' }, value: 1.4115503699180292 },
      { mean: { of: 'stops' }, value: 1.4115503699180292 },
      { mean: { of: 'daysWithoutPower' }, value: 14.117663340897806 },
    ],
  },
  {
    id: 'failed-in-lay-up',
    source:
      'rate 0.8 a year; in use April to September; five fittings out, the first after three months, each planned with chance 0.6',
    held: 'derived',
    histories: 5000,
    model: model({
      horizonYears: 5,
      use: { hoursByMonth: [0, 0, 0, 80, 80, 80, 80, 80, 80, 0, 0, 0] },
      care: { fittingOutShare: 0.6 },
      parts: [part('hose', { clock: 'years', shape: 1, scale: 1.25 }, 100)],
    }),
    expect: [
      {
        mean: { of: 'failures', mode: 'hose/fails' },
        value: 0.8 * 2.5 + 0.4 * (1 - Math.exp(-0.2) + 4 * (1 - Math.exp(-0.4))),
      },
      {
        mean: { of: 'plannedCost' },
        value: 100 * 0.6 * (1 - Math.exp(-0.2) + 4 * (1 - Math.exp(-0.4))),
      },
    ],
  },
  {
    id: 'shutdown-that-sleeps',
    source:
      'shutdown asleep with chance w(t) = (1 − e^(−1.5t))/3, since each failure of the pump shows it: ∫(0.1 + 0.9w)dt over 6 years',
    held: 'derived',
    histories: 5000,
    model: model({
      horizonYears: 6,
      parts: [
        part(
          'pump',
          {
            clock: 'years',
            shape: 1,
            scale: 1,
            links: [
              {
                part: 'head',
                mode: 'fails',
                chance: 1,
                guard: { part: 'shutdown', effectiveness: 0.9 },
              },
            ],
          },
          0,
        ),
        part('shutdown', { clock: 'years', shape: 1, scale: 2, hidden: true }, 0),
        lasting('head', 1000),
      ],
    }),
    expect: [
      { mean: { of: 'failures', mode: 'head/fails' }, value: 2.200024681960817 },
      { mean: { of: 'failureCost' }, value: 2200.024681960817 },
    ],
  },
  {
    id: 'served-every-other-time',
    source: 'due after each of five years, done with chance 0.5',
    held: 'derived',
    histories: 2000,
    model: model({
      horizonYears: 5.5,
      labour: { ownPerHour: 20 },
      parts: [
        {
          ...lasting('filter', 0),
          service: { everyYears: 1, everyHours: 20_000, diligence: 0.5, price: 30, hours: 0.5 },
        },
      ],
    }),
    expect: [{ mean: { of: 'upkeepCost' }, value: 5 * 0.5 * 40 }],
  },
]
