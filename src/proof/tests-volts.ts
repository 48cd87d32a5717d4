/**
 * Tests of volts and frequency, unloaded and through a load put on and thrown off.
 *
 * @module
 */

import { classWanted, hertz, seconds, volts, yesNo } from './fields.js'
import { loadFields, partLoad } from './full-load.js'
import { again, type Outcome, percentOf, proofTest, stepOf, type Taken } from './judging.js'
import type { Limit, Limits } from './limits.js'
import { meanOf } from './resistance.js'
import { sayFigure } from './say-figure.js'
import {
  droopPercent,
  highestNoLoadHz,
  loadSteps,
  regulationPercent,
  sequenceUnbalancePercent,
  shareOf,
  steadyVoltsPercent,
  unbalancePercent,
} from './supply.js'
import type { ProofTest, Worked } from './test-type.js'

const runSteps = [
  'Stopped and locked out: clips on the lines at the terminals of the set, covers on.',
  'Nobody in the water; somebody at the stop.',
  'Stand clear, both hands away, then start.',
] as const

const rated = volts({
  id: 'rated',
  name: 'Rated volts',
  needed: true,
  condition: true,
  least: 12,
  of: 'volts',
})
const ratedHertz = hertz({
  id: 'rated-hertz',
  name: 'Rated frequency',
  needed: true,
  condition: true,
  least: 40,
  most: 70,
  of: 'hertz',
})
const threeLines = [
  volts({ id: 'first', name: 'First pair, as the links give it', needed: true }),
  volts({ id: 'second', name: 'Second pair' }),
  volts({ id: 'third', name: 'Third pair' }),
] as const

function linesOf(taken: Taken): number[] {
  return ['first', 'second', 'third'].flatMap((id) => taken.number(id) ?? [])
}

export const noLoadTest: ProofTest = proofTest({
  id: 'no-load',
  name: 'Volts and frequency, unloaded',
  purpose: 'Whether what the terminals give is what the boat is made for, before a breaker closes.',
  danger: 'live',
  dangers: ['shock', 'injury', 'overvoltage'],
  instrument: 'True-RMS voltmeter of category III that shows frequency',
  steps: [
    ...runSteps.slice(0, 1),
    'Breaker open and locked. Nobody in the water; somebody at the stop.',
    'Stand clear, both hands away, then start; run 10 min.',
    'Read the volts of every pair and the frequency; watch whether they swing. Stop, take off.',
  ],
  fields: [
    ...threeLines,
    { ...rated, name: 'What each pair must give' },
    hertz({ id: 'hertz', name: 'Frequency', needed: true }),
    ratedHertz,
    hertz({ id: 'swing', name: 'How far the frequency swings, lowest to highest' }),
    yesNo({ id: 'volts-swing', name: 'Do the volts swing?' }),
    classWanted,
  ],
  bands: [
    { id: 'stop-volts', name: 'Volts at which no breaker is closed', verdict: 'fail' },
    { id: 'stop-hertz', name: 'Frequency at which no breaker is closed', verdict: 'fail' },
    { id: 'swings', name: 'Volts or frequency swing', verdict: 'fail' },
    { id: 'slow', name: 'Slow: below its frequency already unloaded', verdict: 'fail' },
    { id: 'off', name: 'Volts off what the links give', verdict: 'fail' },
    { id: 'good', name: 'As it must be', verdict: 'pass' },
  ],
  weigh: weighNoLoad,
})

function weighNoLoad(taken: Taken, limits: Limits): Outcome {
  const [low, high, match] = [limits('volts-low'), limits('volts-high'), limits('volts-match')]
  const [either, swing] = [limits('hertz-either-side'), limits('hertz-swing')]
  const droop = limits(`droop-${taken.choice('class') ?? 'g1'}`)
  const ratedHz = taken.need('rated-hertz')
  const hz = taken.need('hertz')
  const shares = linesOf(taken).map((line) => percentOf(line, taken.need('rated')))
  const worst = shares.reduce((a, b) => (Math.abs(b - 100) > Math.abs(a - 100) ? b : a))
  const highestHz = highestNoLoadHz({ ratedHz, droopPercent: Math.max(either.value, droop.value) })
  const lowestHz = ratedHz * (1 - either.value / 100)
  const band =
    worst < low.value || worst > high.value
      ? 'stop-volts'
      : hz < lowestHz || hz > highestHz
        ? 'stop-hertz'
        : taken.choice('volts-swing') === 'yes' || (taken.number('swing') ?? 0) > swing.value
          ? 'swings'
          : hz < ratedHz
            ? 'slow'
            : Math.abs(worst - 100) > match.value
              ? 'off'
              : 'good'
  return {
    band,
    says: {
      'stop-volts': `Do not close a breaker. A pair gives ${sayFigure(worst, '%', low.value)} of its volts; ${low.value} to ${high.value} % is the most that is ever let through.`,
      'stop-hertz': `Do not close a breaker. ${sayFigure(hz, 'Hz')} unloaded; ${sayFigure(lowestHz, 'Hz')} to ${sayFigure(highestHz, 'Hz')} is allowed.`,
      swings: `It swings; ${swing.value} Hz unloaded is allowed, and no swing of volts.`,
      slow: `${sayFigure(hz, 'Hz', ratedHz)} unloaded is below ${ratedHz} Hz, and load takes more away.`,
      off: `A pair gives ${sayFigure(worst, '%', 100 - match.value)} of its volts; within ${match.value} % is wanted before links are trusted.`,
      good: `Every pair within ${match.value} % of its volts, ${sayFigure(hz, 'Hz')} unloaded.`,
    }[band],
    worked: shares.map((value, i): Worked => ({ name: `Pair ${i + 1} of its volts`, value, unit: '%' })),
    limits: [low, high, match, either, droop, swing],
    next: {
      'stop-volts': hintOf(worst),
      'stop-hertz': 'Set the governor before anything else: volts follow the speed.',
      swings: 'Fuel and air first, then the governor’s linkage, then the regulator’s stability.',
      slow: 'Set the governor a droop above the rated frequency.',
      off: 'Speed first, then the regulator’s trim or, with a capacitor, its capacity. Then the links.',
      good: 'A right voltage alone proves no parallel half: the resistance of the pattern must have passed too.',
    }[band],
  }
}

/** What volts so far off usually are. */
function hintOf(worst: number): string {
  if (worst < 10) return 'Nothing or residual only: test the residual volts.'
  if (worst > 40 && worst < 60)
    return 'Half: a half is turned round or dead, or the links are those of another voltage. Stop, and compare the links dead.'
  if (worst > 160)
    return 'Twice: the sensing leads stand on another pattern than the links. Stop. Never load it.'
  return 'Speed first. Then the regulator’s sensing leads, its trim, and the links.'
}

export const balanceTest: ProofTest = proofTest({
  id: 'voltage-balance',
  name: 'Unbalance of volts',
  purpose: 'Whether the phases or legs are alike: motors heat with the square of what they differ.',
  danger: 'live',
  dangers: ['shock'],
  instrument: 'True-RMS voltmeter of category III with clips',
  steps: [...runSteps, 'Read line to line (three phases), or each leg to neutral, unloaded. Stop, take off.'],
  fields: [
    { ...threeLines[0], name: 'First pair, or first leg' },
    { ...threeLines[1], name: 'Second pair, or second leg', needed: true },
    { ...threeLines[2], name: 'Third pair' },
  ],
  bands: [
    { id: 'even', name: 'Even', verdict: 'pass' },
    { id: 'uneven', name: 'Uneven: motors below their rating', verdict: 'fail' },
    { id: 'no-motors', name: 'So uneven that no motor is run', verdict: 'fail' },
  ],
  doubts: (taken, limits) =>
    Math.max(...linesOf(taken)) < limits('no-voltage').value
      ? [again('no-volts', 'first', 'There are no volts to compare. Does it run, and is it excited?')]
      : [],
  weigh(taken, limits) {
    const [most, never] = [limits('unbalance-motors'), limits('unbalance-most')]
    const lines = linesOf(taken)
    const apart = unbalancePercent(lines)
    const [a, b, c] = lines
    return {
      band: stepOf(
        apart,
        [
          { upTo: most.value, is: 'even' },
          { upTo: never.value, is: 'uneven' },
        ],
        'no-motors',
      ),
      says: `The largest deviation is ${sayFigure(apart, '%', most.value)} of the mean; ${most.value} % for the full rating of motors, none above ${never.value} %.`,
      worked: [
        { name: 'Mean', value: meanOf(lines), unit: 'V' },
        { name: 'Unbalance, largest deviation from the mean', value: apart, unit: '%' },
        ...(a !== undefined && b !== undefined && c !== undefined
          ? [
              {
                name: 'Unbalance, negative over positive sequence',
                value: sequenceUnbalancePercent([a, b, c]),
                unit: '%',
              },
            ]
          : []),
      ],
      limits: [most, never],
      next:
        apart <= most.value
          ? 'Read it once more at full load.'
          : 'Compare the stator halves dead and go through the links; under load, look for one leg that carries more.',
    }
  },
})

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
