/**
 * Worked cases about lives: what survival says of them, what they share, and what wears them faster.
 *
 * @module
 */

import type { ClosedFormCase } from './agreement.js'
import { hoursAYear, model, part } from './build.js'

export const workedLives: readonly ClosedFormCase[] = [
  ...[
    { id: 'by-the-mode', logSd: Math.LN2, setLogSd: 0, shape: 2, value: 0.0540447 },
    { id: 'by-the-set', logSd: 0, setLogSd: Math.LN2, shape: 2, value: 0.0540447 },
    { id: 'by-the-mode-narrow', logSd: Math.log(1.2), setLogSd: 0, shape: 3, value: 0.0994319 },
  ].map(
    ({ id, logSd, setLogSd, shape, value }): ClosedFormCase => ({
      id: `survived-5000-hours-unsure-${id}`,
      source:
        'mean over the posterior of the scale (median 6,000 h before; survived 5,000 h) of the chance to fail in 300 h more',
      held: 'derived',
      histories: 10_000,
      model: model({
        horizonYears: 300 / hoursAYear,
        setFactor: { boatLogSd: 0, setLogSd },
        parts: [part('pump', { clock: 'hours', shape, scale: 6000, logSd }, 0, { age: { hours: 5000 } })],
      }),
      expect: [{ mean: { of: 'withoutFailure' }, value: 1 - value }],
    }),
  ),
  {
    id: 'running-at-1000-hours-perhaps-defective',
    source:
      'delay-time model (Christer and Waller, 1984, recalled): exponential, 4,000 h to the defect and 500 h more; running at 1,000 h, 100 h ahead',
    held: 'derived',
    histories: 10_000,
    model: model({
      horizonYears: 100 / hoursAYear,
      parts: [
        part(
          'pump',
          { clock: 'hours', shape: 1, scale: 4500, delay: { clock: 'hours', shape: 1, scale: 500 } },
          0,
          { age: { hours: 1000 } },
        ),
      ],
    }),
    expect: [{ mean: { of: 'withoutFailure' }, value: 1 - 0.0212134 }],
  },
  ...[
    { age: 0, value: 0.2978591516263352 },
    { age: 4, value: 0.3684633476084947 },
  ].map(
    ({ age, value }): ClosedFormCase => ({
      id: `one-factor-for-two-parts-from-age-${age}`,
      source: 'E[e^(−2(a+5)/(8κ))]/E[e^(−2a/(8κ))] by quadrature, ln κ normal with variance 0.3² + 0.4²',
      held: 'derived',
      histories: 5000,
      model: model({
        horizonYears: 5,
        setFactor: { boatLogSd: 0.3, setLogSd: 0.4 },
        parts: ['pump', 'cooler'].map((id) =>
          part(id, { clock: 'years', shape: 1, scale: 8 }, 0, { age: { years: age } }),
        ),
      }),
      expect: [{ mean: { of: 'withoutFailure' }, value }],
    }),
  ),
  {
    id: 'worn-three-times-as-fast-while-unnoticed',
    source:
      '∫ae^(−as)exp(−H(s) − 3(H(T) − H(s)))ds + e^(−aT)e^(−H(T)) by quadrature, a = 0.3, H(t) = (t/6)², T = 5',
    held: 'derived',
    histories: 5000,
    model: model({
      horizonYears: 5,
      parts: [
        part(
          'anode',
          {
            clock: 'years',
            shape: 1,
            scale: 1 / 0.3,
            hidden: true,
            wear: [{ part: 'cooler', mode: 'fails', factor: 3 }],
          },
          0,
        ),
        part('cooler', { clock: 'years', shape: 2, scale: 6 }, 0),
      ],
    }),
    expect: [
      { mean: { of: 'withoutFailure' }, value: 0.2524381605950228 },
      { mean: { of: 'failures', mode: 'anode/fails' }, value: 1 - Math.exp(-0.3 * 5) },
    ],
  },
  {
    id: 'sooted-and-started',
    source:
      'constant rates: 8,766 h a year at half of them twofold extra soot on 4,000 h; 1,200 starts a year on 600',
    held: 'derived',
    histories: 3000,
    model: model({
      horizonYears: 2,
      use: { hoursByMonth: Array(12).fill(730.5), startsByMonth: Array(12).fill(100), lowLoadShare: 0.5 },
      parts: [
        part('nozzle', { clock: 'hours', shape: 1, scale: 4000, soot: 3 }, 0),
        part('starter', { clock: 'starts', shape: 1, scale: 600, stops: 0.3, dangers: ['fire'] }, 0),
      ],
      dangers: { fire: 0.02 },
    }),
    expect: [
      { mean: { of: 'failures', mode: 'nozzle/fails' }, value: (2 * 2 * hoursAYear) / 4000 },
      { mean: { of: 'failures', mode: 'starter/fails' }, value: 4 },
      { mean: { of: 'stops' }, value: (2 * 2 * hoursAYear) / 4000 + 0.3 * 4 },
      { mean: { of: 'sameDayStops' }, value: (2 * 2 * hoursAYear) / 4000 + 0.3 * 4 },
      { mean: { of: 'danger', danger: 'fire' }, value: 0.02 * 4 },
    ],
  },
  {
    id: 'worse-piece-fitted',
    source: 'rate 0.4 a year to the first failure and 0.8 after it: 2λT − (1 − e^(−λT))',
    held: 'derived',
    histories: 5000,
    model: model({
      horizonYears: 6,
      parts: [
        part('pump', { clock: 'years', shape: 1, scale: 2.5 }, 0, {
          repair: { supply: [{ chance: 1, days: 0, quality: 0.5 }] },
        }),
      ],
    }),
    expect: [{ mean: { of: 'failures', mode: 'pump/fails' }, value: 2 * 0.4 * 6 - (1 - Math.exp(-0.4 * 6)) }],
  },
  {
    id: 'poor-piece-in-place',
    source:
      'rate a = 0.5 a year to the first failure, for a piece of quality 0.5, then b = 0.25: F + b(T − F/a), F = 1 − e^(−aT)',
    held: 'derived',
    histories: 5000,
    model: model({
      horizonYears: 6,
      parts: [part('pump', { clock: 'years', shape: 1, scale: 4 }, 0, { quality: 0.5 })],
    }),
    expect: [{ mean: { of: 'failures', mode: 'pump/fails' }, value: poorThenGood(6) }],
  },
  {
    id: 'patched-for-a-while',
    source:
      'failure at X + D, means 4 and 2 years, then a stream of mean gap 0.5: P(F ≤ T) + 2∫P(F ≤ s)ds, P(F > s) = 2e^(−s/4) − e^(−s/2)',
    held: 'derived',
    histories: 5000,
    model: model({
      horizonYears: 8,
      parts: [
        part(
          'elbow',
          {
            clock: 'years',
            shape: 1,
            scale: 6,
            delay: { clock: 'years', shape: 1, scale: 2 },
            remedy: { outcome: 'patched', delayFactor: 0.25 },
          },
          100,
        ),
      ],
    }),
    expect: [
      {
        mean: { of: 'failures', mode: 'elbow/fails' },
        value:
          1 - (2 * Math.exp(-2) - Math.exp(-4)) + 2 * (8 - (8 * (1 - Math.exp(-2)) - 2 * (1 - Math.exp(-4)))),
      },
    ],
  },
]

function poorThenGood(years: number): number {
  const failed = 1 - Math.exp(-0.5 * years)
  return failed + 0.25 * (years - failed / 0.5)
}
