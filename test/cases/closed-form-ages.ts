/**
 * Life models with known answers whose parts start with an age or keep a share of it when mended.
 *
 * @module
 */

import type { ClosedFormCase, Quantity } from './agreement.js'
import { hoursAYear, lasting, model, part } from './build.js'

const fails = (mode: string): Quantity => ({ of: 'failures', mode })
const first = (mode: string): Quantity => ({ of: 'firstFailure', mode })

/** Weibull life of two years and shape 2: cumulative hazard by an age. */
const worn = (age: number) => (age / 2) ** 2

/**
 * Chance of outliving the half year to the next service: fitted ten and a half years ago, cleared with this chance
 * every year since, and not renewed since, so that no service interval has ended in failure.
 */
function outlives(diligence: number): number {
  let byAge = [1]
  for (let year = 1; year <= 10; year++) {
    const older = byAge.map((chance, age) => chance * Math.exp(worn(age) - worn(age + 1)))
    byAge = [older.reduce((a, b) => a + b, 0) * diligence, ...older.map((chance) => chance * (1 - diligence))]
  }
  const to = (end: number) =>
    byAge.reduce((sum, chance, age) => sum + chance * Math.exp(worn(age) - worn(age + end)), 0)
  return to(1) / to(0.5)
}

export const agedCases: readonly ClosedFormCase[] = [
  ...[1, 0.5].map(
    (diligence): ClosedFormCase => ({
      id: `cleared-by-its-service-since-it-was-fitted-${diligence}`,
      source:
        'recursion over the years since the last service that was done, lives in which it failed left out',
      held: 'derived',
      histories: 10_000,
      slowHistories: 600,
      model: model({
        horizonYears: 0.5,
        parts: [
          part('filter', { clock: 'years', shape: 2, scale: 2 }, 100, {
            age: { years: 10.5 },
            service: { everyYears: 1, clears: ['fails'], diligence },
          }),
        ],
      }),
      expect: [{ mean: { of: 'withoutFailure' }, value: outlives(diligence) }],
    }),
  ),
  {
    id: 'a-used-set-was-kept-with-good-pieces',
    source:
      'a life without wear knows no age: survival of two years at scale 4, whatever is fitted from now on',
    held: 'derived',
    histories: 10_000,
    model: model({
      horizonYears: 2,
      candidates: [{ id: 'other', price: 0, used: { years: 12.3, hours: 2000 } }],
      alternatives: [{ id: 'buy', now: { replaceWith: 'other' } }],
      parts: [
        part('pump', { clock: 'years', shape: 1, scale: 4 }, 100, {
          repair: { price: 100, supply: [{ chance: 1, days: 0, quality: 0.25 }] },
        }),
      ],
    }),
    alternative: 'buy',
    expect: [{ mean: { of: 'withoutFailure' }, value: Math.exp(-2 / 4) }],
  },
  {
    id: 'a-mode-cleared-three-years-ago',
    source: 'survival of a Weibull life of shape 2 and scale 6 from 3 to 5 years',
    held: 'derived',
    histories: 10_000,
    model: model({
      horizonYears: 2,
      parts: [
        part('strainer', { clock: 'years', shape: 2, scale: 6, clearedYearsAgo: 3 }, 100, {
          age: { years: 9 },
        }),
      ],
    }),
    expect: [{ mean: { of: 'withoutFailure' }, value: Math.exp((9 - 25) / 36) }],
  },
  ...[
    {
      id: 'what-fails-first-in-300-hours',
      horizonYears: 300 / hoursAYear,
      expect: [
        { mean: first('impeller/fails'), value: 0.371462510527 },
        { mean: first('bearing/fails'), value: 0.0309463095368 },
        { mean: first('injector/fails'), value: 0.0881003159519 },
        { mean: { of: 'withoutFailure' }, value: 0.509490863984 },
        { mean: { of: 'firstFailureCost' }, value: 274.141298649 },
      ] as const,
    },
    {
      id: 'what-fails-first-ever',
      horizonYears: 6000 / hoursAYear,
      expect: [
        { mean: first('impeller/fails'), value: 0.805568783843 },
        { mean: first('bearing/fails'), value: 0.0493513574314 },
        { mean: first('injector/fails'), value: 0.145079858726 },
        { mean: { of: 'firstFailureYears' }, value: 354.775815288 / hoursAYear },
      ] as const,
    },
  ].map(
    ({ id, horizonYears, expect }): ClosedFormCase => ({
      id,
      source:
        'quadrature of the cause-specific densities of three aged Weibull lives; a job costs its part and what it took along',
      held: 'derived',
      histories: 10_000,
      model: model({
        horizonYears,
        parts: [
          part(
            'impeller',
            {
              clock: 'hours',
              shape: 2.5,
              scale: 900,
              links: [{ part: 'elbow', mode: 'fails', chance: 0.3 }],
            },
            150,
            { age: { hours: 500 } },
          ),
          part(
            'bearing',
            { clock: 'hours', shape: 1.5, scale: 9000, links: [{ part: 'winding', chance: 0.2 }] },
            900,
            { age: { hours: 6000 } },
          ),
          part(
            'injector',
            {
              clock: 'hours',
              shape: 2,
              scale: 4000,
              links: [{ part: 'piston', mode: 'fails', chance: 0.05 }],
            },
            400,
            { age: { hours: 3000 } },
          ),
          lasting('elbow', 1100),
          lasting('winding', 2800),
          lasting('piston', 3500),
        ],
      }),
      expect,
    }),
  ),
  ...[
    { shape: 2, kept: 0.25, horizonYears: 1.5, number: 1.49903581496 },
    { shape: 2, kept: 0.5, horizonYears: 1.5, number: 1.6856629696 },
    { shape: 3, kept: 0.5, horizonYears: 1.5, number: 1.75822400027 },
    { shape: 2, kept: 0.5, horizonYears: 3, number: 4.42327792702 },
  ].map(
    ({ shape, kept, horizonYears, number }): ClosedFormCase => ({
      id: `age-kept-${kept}-shape-${shape}-over-${horizonYears}`,
      source:
        'Kijima (1989, recalled), second model: the virtual age after each mend is the kept share of that before; backward recursion on a grid, good to 0.001',
      held: 'derived',
      histories: 10_000,
      model: model({
        horizonYears,
        parts: [
          part(
            'pump',
            {
              clock: 'years',
              shape,
              scale: 1,
              remedy: { outcome: 'reconditioned', agesLess: 1 - kept },
            },
            100,
          ),
        ],
      }),
      expect: [
        { mean: fails('pump/fails'), value: number },
        { mean: { of: 'presentCost' }, value: 100 * number },
      ],
    }),
  ),
]
