/**
 * Tests of volts and frequency, unloaded.
 *
 * @module
 */

import { choice, classWanted, hertz, revolutions, volts, yesNo } from './fields.js'
import { again, doubt, type Outcome, percentOf, proofTest, stepOf, type Taken } from './judging.js'
import type { Limits } from './limits.js'
import { capacitorSetVolts, meanOf } from './resistance.js'
import { rated, ratedHertz, runSteps } from './run-fields.js'
import { sayFigure } from './say-figure.js'
import {
  hertzOf,
  highestNoLoadHz,
  polesOf,
  rpmOf,
  sequenceUnbalancePercent,
  shareOf,
  unbalancePercent,
} from './supply.js'
import type { Ask, ProofTest, Worked } from './test-type.js'

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
    hertz({ id: 'hertz', name: 'Frequency', help: 'Left out: from the speed, where it was read.' }),
    ratedHertz,
    hertz({ id: 'swing', name: 'How far the frequency swings, lowest to highest' }),
    yesNo({ id: 'volts-swing', name: 'Do the volts swing?' }),
    classWanted,
    revolutions({
      id: 'speed',
      name: 'Speed by a tachometer',
      help: 'It tells the frequency where the meter has none, or is misled by a distorted wave.',
      further: true,
    }),
    revolutions({ id: 'rated-speed', name: 'Rated speed', condition: true, further: true, of: 'rpm' }),
    choice({
      id: 'excited-by',
      name: 'What excites it',
      help: 'Without a regulator volts go with the speed, and are judged by it.',
      further: true,
      of: { regulator: 'a regulator', capacitor: 'a capacitor, no regulator' },
    }),
  ],
  bands: [
    { id: 'stop-volts', name: 'Volts at which no breaker is closed', verdict: 'fail' },
    { id: 'stop-hertz', name: 'Frequency at which no breaker is closed', verdict: 'fail' },
    { id: 'swings', name: 'Volts or frequency swing', verdict: 'fail' },
    { id: 'slow', name: 'Slow: below its frequency already unloaded', verdict: 'fail' },
    { id: 'off', name: 'Volts off what the links give', verdict: 'fail' },
    { id: 'good', name: 'As it must be', verdict: 'pass' },
  ],
  doubts: doubtsOfHertz,
  weigh: weighNoLoad,
})

/** Frequency by the speed; none where speed or rated speed were not given. */
function hertzBySpeed(taken: Taken): number | undefined {
  const [rpm, ratedRpm] = [taken.number('speed'), taken.number('rated-speed')]
  if (rpm === undefined || ratedRpm === undefined) return undefined
  return hertzOf({ rpm, poles: polesOf({ hertz: taken.need('rated-hertz'), rpm: ratedRpm }) })
}

function doubtsOfHertz(taken: Taken, limits: Limits): Ask[] {
  const [shown, bySpeed] = [taken.number('hertz'), hertzBySpeed(taken)]
  if (shown === undefined) {
    if (bySpeed !== undefined) return []
    return [again('missing', 'hertz', 'Not given: frequency; or else the speed, with the rated speed.')]
  }
  const most = limits('hertz-by-speed').value
  if (bySpeed === undefined || Math.abs(shareOf(shown - bySpeed, bySpeed)) <= most) return []
  const question = `The meter shows ${sayFigure(shown, 'Hz')} and the speed makes ${sayFigure(bySpeed, 'Hz')}, more than ${most} % apart. A distorted wave misleads meters, a wrong rated speed the other. Is the meter right?`
  return [doubt('meter-or-speed', 'hertz', question)]
}

/** Volts that a set without a regulator gives at its speed, in percent of the rated ones; none where one is fitted, or it is not told. */
function voltsBySpeed(
  taken: Taken,
  at: { readonly hz: number; readonly ratedHz: number },
): { readonly least: number; readonly most: number } | undefined {
  if (taken.choice('excited-by') !== 'capacitor') return undefined
  const { linear, squared } = capacitorSetVolts({ ratedV: 100, ratedHz: at.ratedHz, hertz: at.hz })
  return { least: Math.min(linear, squared), most: Math.max(linear, squared) }
}

function weighNoLoad(taken: Taken, limits: Limits): Outcome {
  const [low, high, match] = [limits('volts-low'), limits('volts-high'), limits('volts-match')]
  const [either, swing] = [limits('hertz-either-side'), limits('hertz-swing')]
  const droop = limits(`droop-${taken.choice('class') ?? 'g1'}`)
  const ratedHz = taken.need('rated-hertz')
  const hz = taken.number('hertz') ?? hertzBySpeed(taken) ?? ratedHz
  const bySpeed = voltsBySpeed(taken, { hz, ratedHz })
  const shares = linesOf(taken).map((line) => percentOf(line, taken.need('rated')))
  const worst = shares.reduce((a, b) => (Math.abs(b - 100) > Math.abs(a - 100) ? b : a))
  const [least, most] = [bySpeed?.least ?? 100, bySpeed?.most ?? 100]
  const off = shares.some((share) => share < least - match.value || share > most + match.value)
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
            : off
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
      good: `Every pair within ${match.value} % of ${bySpeed === undefined ? 'its volts' : 'what its speed gives'}, ${sayFigure(hz, 'Hz')} unloaded.`,
    }[band],
    worked: [
      ...shares.map((value, i): Worked => ({ name: `Pair ${i + 1} of its volts`, value, unit: '%' })),
      ...workedBySpeed(taken, { hz, ratedHz, bySpeed }),
    ],
    limits: [low, high, match, either, droop, swing],
    next: {
      'stop-volts': off ? hintOf(worst, limits) : speedFirst(taken, ratedHz),
      'stop-hertz': 'Set the governor before anything else: volts follow the speed.',
      swings: 'Fuel and air first, then the governor’s linkage, then the regulator’s stability.',
      slow: `Set the governor a droop above the rated frequency${speedWanted(taken, highestNoLoadHz({ ratedHz, droopPercent: usualDroop }))}.`,
      off:
        bySpeed === undefined
          ? 'Speed first, then the regulator’s trim or, with a capacitor, its capacity. Then the links.'
          : `Its speed does not account for that: ${sayFigure(least, '%')} to ${sayFigure(most, '%')} would be. The capacitor’s capacity first, then rotor diodes, then the links.`,
      good: 'A right voltage alone proves no parallel half: the resistance of the pattern must have passed too.',
    }[band],
  }
}

/**
 * Droop that a mechanical governor is set for. [%]
 *
 * Source: practice; 3 to 5 % are usual.
 */
const usualDroop = 4

/** ", 51.5 Hz or 1,545 rpm"; nothing of the speed where the rated one is not told. */
function speedWanted(taken: Taken, wantedHz: number): string {
  const ratedRpm = taken.number('rated-speed')
  if (ratedRpm === undefined) return `: ${sayFigure(wantedHz, 'Hz')}`
  const rpm = rpmOf({ hertz: wantedHz, poles: polesOf({ hertz: taken.need('rated-hertz'), rpm: ratedRpm }) })
  return `: ${sayFigure(wantedHz, 'Hz')}, ${Math.round(rpm)} rpm`
}

function speedFirst(taken: Taken, ratedHz: number): string {
  return `Its speed alone accounts for that: set the governor first${speedWanted(taken, highestNoLoadHz({ ratedHz, droopPercent: usualDroop }))}, and read again.`
}

function workedBySpeed(
  taken: Taken,
  {
    hz,
    ratedHz,
    bySpeed,
  }: { readonly hz: number; readonly ratedHz: number; readonly bySpeed: ReturnType<typeof voltsBySpeed> },
): readonly Worked[] {
  const fromSpeed = hertzBySpeed(taken)
  const ratedRpm = taken.number('rated-speed')
  return [
    ...(fromSpeed === undefined ? [] : [{ name: 'Frequency by the speed', value: fromSpeed, unit: 'Hz' }]),
    ...(fromSpeed !== undefined || ratedRpm === undefined
      ? []
      : [
          {
            name: 'Speed that makes this frequency',
            value: rpmOf({ hertz: hz, poles: polesOf({ hertz: ratedHz, rpm: ratedRpm }) }),
            unit: 'rpm',
          },
        ]),
    ...(bySpeed === undefined
      ? []
      : [
          { name: 'Volts that its speed gives, least', value: bySpeed.least, unit: '%' },
          { name: 'Volts that its speed gives, most', value: bySpeed.most, unit: '%' },
        ]),
  ]
}

/** What volts so far off usually are. */
function hintOf(worst: number, limits: Limits): string {
  if (worst < limits('volts-nothing').value) return 'Nothing or residual only: test the residual volts.'
  if (worst > limits('volts-half-least').value && worst < limits('volts-half-most').value)
    return 'Half: a half is turned round or dead, or the links are those of another voltage. Stop, and compare the links dead.'
  if (worst > limits('volts-double-least').value)
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
    { ...classWanted, further: true },
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
    const ofClass = limits(`unbalance-${taken.choice('class') ?? 'g1'}`)
    const even = Math.min(most.value, ofClass.value)
    const lines = linesOf(taken)
    const apart = unbalancePercent(lines)
    const [a, b, c] = lines
    return {
      band: stepOf(
        apart,
        [
          { upTo: even, is: 'even' },
          { upTo: never.value, is: 'uneven' },
        ],
        'no-motors',
      ),
      says: `The largest deviation is ${sayFigure(apart, '%', even)} of the mean; ${even} % for the full rating of motors, none above ${never.value} %.`,
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
      limits: [most, ofClass, never],
      next:
        apart <= even
          ? 'Read it once more at full load.'
          : 'Compare the stator halves dead and go through the links; under load, look for one leg that carries more.',
    }
  },
})
