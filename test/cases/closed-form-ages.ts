/**
 * Life models with known answers whose parts start with an age or keep a share of it when mended.
 *
 * @module
 */

import type { ClosedFormCase, Quantity } from './agreement.js'
import { hoursAYear, lasting, model, part } from './build.js'

const fails = (mode: string): Quantity => ({ of: 'failures', mode })
const first = (mode: string): Quantity => ({ of: 'firstFailure', mode })

export const agedCases: readonly ClosedFormCase[] = [
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
