/**
 * Tests of volts and frequency by class: at steady load, and as load is put on and thrown off.
 *
 * @module
 */

import { classWanted, hertz, seconds, volts } from './fields.js'
import { loadFields, partLoad } from './full-load.js'
import { again, type Outcome, proofTest } from './judging.js'
import type { Limit } from './limits.js'
import { rated, ratedHertz, runSteps } from './run-fields.js'
import { sayFigure } from './say-figure.js'
import { droopPercent, loadSteps, regulationPercent, shareOf, steadyVoltsPercent } from './supply.js'
import type { ProofTest, Worked } from './test-type.js'

/** Judges figures against the limits of one class; the worst of those that exceed is named. */
function weighClass(
  figures: readonly { readonly name: string; readonly value: number; readonly limit: Limit }[],
  words: {
    readonly good: string
    readonly next: string
    readonly passed: string
    readonly worked?: readonly Worked[]
  },
): Outcome {
  const over = figures.filter(({ value, limit }) => value > limit.value)
  const worst = [...over].sort((a, b) => b.value / b.limit.value - a.value / a.limit.value)[0]
  const all = figures
    .map(
      ({ name, value, limit }) =>
        `${name} ${sayFigure(value, limit.unit, limit.value)} (at most ${limit.value} ${limit.unit})`,
    )
    .join(', ')
  return {
    band: worst === undefined ? 'within' : 'over',
    says: worst === undefined ? `${words.good}: ${all}.` : `Over the limit: ${all}.`,
    worked: [
      ...figures.map(({ name, value, limit }) => ({
        name: name[0]!.toUpperCase() + name.slice(1),
        value,
        unit: limit.unit,
      })),
      ...(words.worked ?? []),
    ],
    limits: figures.map(({ limit }) => limit),
    next: worst === undefined ? words.passed : words.next,
  }
}

const classBands = [
  { id: 'within', name: 'Within the class', verdict: 'pass' },
  { id: 'over', name: 'Over the class', verdict: 'fail' },
] as const

export const droopTest: ProofTest = proofTest({
  id: 'droop',
  name: 'Droop of frequency',
  purpose: 'Whether the governor holds the speed from no load to full load.',
  danger: 'live',
  dangers: ['shock', 'injury'],
  instrument: 'Meter that shows frequency; a load of known kilowatts',
  steps: [
    ...runSteps,
    'Warm it up. Read the frequency unloaded, put full load on in steps, wait, read again. Load off, stop.',
  ],
  fields: [
    hertz({ id: 'no-load', name: 'Unloaded', needed: true }),
    hertz({ id: 'full-load', name: 'At full load', needed: true }),
    ratedHertz,
    ...loadFields,
    classWanted,
  ],
  bands: classBands,
  doubts: (taken, limits) => partLoad(taken, limits, 'full-load'),
  weigh(taken, limits) {
    const ratedHz = taken.need('rated-hertz')
    const value = droopPercent({
      noLoadHz: taken.need('no-load'),
      fullLoadHz: taken.need('full-load'),
      ratedHz,
    })
    return weighClass([{ name: 'droop', value, limit: limits(`droop-${taken.choice('class') ?? 'g1'}`) }], {
      good: 'The governor holds',
      passed:
        value < 0
          ? 'Speed rises with load: an electronic governor may; a mechanical one is set wrong.'
          : 'Nothing more to do.',
      next: 'Air, fuel filter and exhaust first; then the governor’s spring and linkage.',
    })
  },
})

export const steadyTest: ProofTest = proofTest({
  id: 'steady-band',
  name: 'Volts and frequency at steady load',
  purpose: 'Whether regulator and governor hold still, and how far volts fall from no load to full load.',
  danger: 'live',
  dangers: ['shock', 'injury'],
  instrument: 'Voltmeter that keeps highest and lowest, and shows frequency',
  steps: [
    ...runSteps,
    'At each load from nought to full, wait until it is steady, then keep highest and lowest for a minute. Load off, stop.',
  ],
  fields: [
    volts({ id: 'highest', name: 'Highest volts at any steady load', needed: true }),
    volts({ id: 'lowest', name: 'Lowest volts at any steady load', needed: true }),
    rated,
    hertz({ id: 'highest-hertz', name: 'Highest frequency within one steady load', needed: true }),
    hertz({ id: 'lowest-hertz', name: 'Lowest frequency within the same load', needed: true }),
    ratedHertz,
    volts({ id: 'no-load', name: 'Volts unloaded' }),
    volts({ id: 'full-load', name: 'Volts at full load', least: 1 }),
    classWanted,
  ],
  bands: classBands,
  doubts: (taken) =>
    taken.need('highest') < taken.need('lowest') || taken.need('highest-hertz') < taken.need('lowest-hertz')
      ? [again('crossed', 'highest', 'The highest is below the lowest. Which is which?')]
      : [],
  weigh(taken, limits) {
    const g = taken.choice('class') ?? 'g1'
    const [noLoadV, fullLoadV] = [taken.number('no-load'), taken.number('full-load')]
    const deviation = steadyVoltsPercent({
      highestV: taken.need('highest'),
      lowestV: taken.need('lowest'),
      ratedV: taken.need('rated'),
    })
    const band = shareOf(taken.need('highest-hertz') - taken.need('lowest-hertz'), taken.need('rated-hertz'))
    return weighClass(
      [
        { name: 'deviation of volts either side', value: deviation, limit: limits(`volts-band-${g}`) },
        { name: 'band of frequency', value: band, limit: limits(`hertz-band-${g}`) },
      ],
      {
        good: 'It holds still',
        passed: 'Nothing more to do.',
        next: 'Volts alone: regulator, its trim and droop. Both: governor, fuel and air.',
        worked:
          noLoadV === undefined || fullLoadV === undefined
            ? []
            : [
                {
                  name: 'Regulation, no load to full load',
                  value: regulationPercent({ noLoadV, fullLoadV }),
                  unit: '%',
                },
              ],
      },
    )
  },
})

export const loadStepTest: ProofTest = proofTest({
  id: 'load-step',
  name: 'Load put on and thrown off at once',
  purpose: 'How far volts and frequency fall and rise, and how soon they are back.',
  danger: 'live',
  dangers: ['shock', 'injury', 'overspeed', 'overvoltage'],
  instrument: 'Meter that keeps highest and lowest of volts and frequency, and a watch or a recorder',
  steps: [
    ...runSteps,
    'Electronics off. Warm it up at half load for 30 min.',
    'Put on half the load, then to 80 %, then all of it, each when it is steady; keep the lowest and the time until it is back within its steady band.',
    'Throw all off at once; keep the highest and the time. Run 5 min unloaded, stop.',
  ],
  plan(ratingKw, limits) {
    const shares = ['first', 'second', 'third'].map((step) => limits(`load-step-${step}`).value)
    return loadSteps({ ratingKw, shares }).map(
      ({ kW, by }, at) => `Step ${at + 1}: ${sayFigure(by, 'kW')} more, ${sayFigure(kW, 'kW')} in all.`,
    )
  },
  fields: [
    volts({ id: 'before', name: 'Volts before the step', needed: true }),
    volts({ id: 'lowest', name: 'Lowest volts as load came on', needed: true }),
    volts({ id: 'highest', name: 'Highest volts as load went off' }),
    rated,
    seconds({ id: 'volts-back', name: 'Until volts were back', most: 120 }),
    hertz({ id: 'hertz-before', name: 'Frequency before the step' }),
    hertz({ id: 'lowest-hertz', name: 'Lowest frequency as load came on' }),
    hertz({ id: 'highest-hertz', name: 'Highest frequency as load went off' }),
    ratedHertz,
    seconds({ id: 'hertz-back', name: 'Until frequency was back', most: 120 }),
    classWanted,
  ],
  bands: classBands,
  weigh(taken, limits) {
    const g = taken.choice('class') ?? 'g1'
    const ratedV = taken.need('rated')
    const ratedHz = taken.need('rated-hertz')
    const before = taken.need('before')
    const hzBefore = taken.number('hertz-before') ?? ratedHz
    const figure = (name: string, id: string, value: number | undefined) =>
      value === undefined ? [] : [{ name, value: Math.max(0, value), limit: limits(`${id}-${g}`) }]
    const share = (field: string, from: number, base: number, sign: 1 | -1) => {
      const value = taken.number(field)
      return value === undefined ? undefined : sign * shareOf(value - from, base)
    }
    return weighClass(
      [
        ...figure('dip of volts', 'volts-dip', share('lowest', before, ratedV, -1)),
        ...figure('rise of volts', 'volts-rise', share('highest', ratedV, ratedV, 1)),
        ...figure('volts back after', 'volts-recovery', taken.number('volts-back')),
        ...figure('dip of frequency', 'hertz-dip', share('lowest-hertz', hzBefore, ratedHz, -1)),
        ...figure('rise of frequency', 'hertz-rise', share('highest-hertz', ratedHz, ratedHz, 1)),
        ...figure('frequency back after', 'hertz-recovery', taken.number('hertz-back')),
      ],
      {
        good: 'It takes the step',
        passed: 'Nothing more to do. In one step from nought to full, a dip of 30 % is usual and no fault.',
        next: 'Put the load on in smaller steps; look at governor and regulator, and at a fuel filter that starves it.',
      },
    )
  },
})
