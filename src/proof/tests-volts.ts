/**
 * Tests of volts and frequency, unloaded.
 *
 * @module
 */

import { classWanted, hertz, volts, yesNo } from './fields.js'
import { again, type Outcome, percentOf, proofTest, stepOf, type Taken } from './judging.js'
import type { Limits } from './limits.js'
import { meanOf } from './resistance.js'
import { rated, ratedHertz, runSteps } from './run-fields.js'
import { sayFigure } from './say-figure.js'
import { highestNoLoadHz, sequenceUnbalancePercent, unbalancePercent } from './supply.js'
import type { ProofTest, Worked } from './test-type.js'

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
