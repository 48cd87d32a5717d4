/**
 * Tests of insulation: how high it reads, dry and cold, and again hot.
 *
 * @module
 */

import { insulationAt25, insulationAt40, leakageMicroamp, oldLeastMohm } from './insulation.js'
import { again, doubt, type Plan, proofTest, stepOf, type Taken } from './judging.js'
import type { Limits } from './limits.js'
import { sayFigure } from './say-figure.js'
import type { Ask, Field, ProofTest } from './test-type.js'

/** Windings whose insulation is measured to the frame. */
export const windingParts = ['stator-winding', 'rotor-winding', 'exciter'] as const

export const megohmUnits = ['Mohm', 'Gohm', 'kohm', 'ohm'] as const

export const washAndDry =
  'Wash salt out with fresh water, dry at no more than 80 °C in the winding, read again at one temperature until it stands. Low is no reason for a rewind by itself.'

export const insulationFields: readonly Field[] = [
  {
    kind: 'number',
    id: 'winding-to-frame',
    name: 'Winding to frame, 60 s after the volts came on',
    unit: 'Mohm',
    units: megohmUnits,
    least: 0,
    most: 1e7,
    needed: true,
  },
  {
    kind: 'number',
    id: 'winding',
    name: 'Temperature of the winding itself',
    help: 'Of the copper or the iron beside it, not of the air.',
    unit: 'C',
    units: ['C', 'F'],
    least: -40,
    most: 200,
    condition: true,
    needed: true,
  },
  {
    kind: 'number',
    id: 'dew-point',
    name: 'Dew point of the air around it',
    unit: 'C',
    units: ['C', 'F'],
    least: -60,
    most: 60,
    condition: true,
  },
  {
    kind: 'number',
    id: 'tester',
    name: 'Volts that the tester puts on',
    unit: 'V',
    units: ['V'],
    least: 1,
    most: 10_000,
    condition: true,
  },
  {
    kind: 'number',
    id: 'tester-top',
    name: 'Highest that the tester shows',
    unit: 'Mohm',
    units: megohmUnits,
    least: 0.1,
    most: 1e8,
    condition: true,
  },
  {
    kind: 'number',
    id: 'rated',
    name: 'Rated volts between lines',
    unit: 'V',
    units: ['V', 'kV'],
    least: 12,
    most: 1000,
    condition: true,
    of: 'volts',
  },
  {
    kind: 'choice',
    id: 'winding-kind',
    name: 'What winding it is',
    help: 'Left out: of round wire laid in at random, as in every small set.',
    choices: [
      { id: 'random-wound', name: 'round wire, random-wound' },
      { id: 'form-wound', name: 'form-wound, made after 1970' },
      { id: 'before-1970', name: 'made before about 1970' },
    ],
  },
  {
    kind: 'choice',
    id: 'taken-off',
    name: 'Regulator, diodes, capacitors, filters, cables and the neutral bond taken off',
    choices: [
      { id: 'yes', name: 'yes, the winding alone' },
      { id: 'no', name: 'no, some still hang on it' },
    ],
  },
]

/** Doubts that any reading of insulation may raise. */
function doubtsOf(taken: Taken, limits: Limits): Ask[] {
  const mohm = taken.need('winding-to-frame')
  const testV = taken.number('tester')
  const asks: Ask[] = [...dampAsks(taken, limits), ...topAsks(taken, mohm)]
  if (mohm > 0 && mohm < limits('insulation-ohms-doubtful').value) {
    const ohms = mohm * 1e6
    asks.push(
      doubt(
        'ohms',
        'winding-to-frame',
        `${ohms.toPrecision(3)} Ω would be a winding joined to the frame. Were megohms meant?`,
      ),
    )
  }
  const most = limits('insulation-megohms-doubtful').value
  if (mohm > most) {
    asks.push(
      doubt(
        'megohms',
        'winding-to-frame',
        `${sayFigure(mohm, 'Mohm')} is more than testers of windings show. Were ohms or kilohms typed as megohms?`,
      ),
    )
  }
  if (testV !== undefined && testV < limits('insulation-test-volts-least').value) {
    asks.push(
      doubt(
        'few-volts',
        'tester',
        `${testV} V shows little of what ${limits('insulation-test-volts-least').value} V would. Is it a tired field winding that is spared on purpose?`,
      ),
    )
  }
  return asks
}

/** A winding on which water stands, or one that the laws of temperature do not reach. None where its temperature is not told. */
export function dampAsks(taken: Taken, limits: Limits): Ask[] {
  const windingC = taken.number('winding')
  const dewC = taken.number('dew-point')
  if (windingC === undefined) return []
  if (dewC !== undefined && windingC < dewC) {
    return [
      again(
        'below-dew-point',
        'winding',
        `The winding at ${windingC} °C is colder than the dew point of ${dewC} °C: water stands on it. Warm it a little above and read again.`,
      ),
    ]
  }
  const [coldest, hottest] = [limits('insulation-law-coldest').value, limits('insulation-law-hottest').value]
  if (windingC >= coldest && windingC <= hottest) return []
  return [
    again(
      'past-the-laws',
      'winding',
      `A winding at ${windingC} °C: the laws of temperature hold from ${coldest} to ${hottest} °C. Read again within them.`,
    ),
  ]
}

/**
 * Where insulation testers end. [MΩ]
 *
 * Source: practice.
 */
const usualTops: readonly number[] = [
  199.9, 200, 500, 550, 999, 999.9, 1000, 1999, 2000, 4000, 5000, 9999, 10_000, 20_000,
]

/** A tester at its top, or where it may be. */
function topAsks(taken: Taken, mohm: number): Ask[] {
  const top = taken.number('tester-top')
  if (top === undefined && usualTops.includes(mohm)) {
    const question = `${sayFigure(mohm, 'Mohm')} is where many testers end. Is it a reading, and not the top of the tester?`
    return [doubt('maybe-at-top', 'tester-top', question)]
  }
  if (top === undefined || mohm < top) return []
  return [
    doubt(
      'at-top',
      'winding-to-frame',
      'The tester stands at its top, as it does with nothing joined to it. Do its leads read nought held together, and does the winding still read the same?',
    ),
  ]
}

const insulation = {
  id: 'insulation-test',
  name: 'Insulation resistance of a winding to the frame',
  purpose: 'Whether the winding is dry and whole enough to be energised.',
  danger: 'locked out',
  dangers: ['shock'],
  instrument: 'Insulation tester of 500 V',
  parts: windingParts,
  steps: [
    'Lock out and prove dead. Discharge the excitation capacitor and meter it.',
    'Photograph, then take off what is not winding: regulator, diodes or a short across them, capacitors, filters, cables, the bond of the neutral.',
    'Tie the ends of the winding together. One lead to them, one to bare metal of the frame; read nought with both on the frame.',
    'Hold 60 s, then read. A reading that jumps is leakage over dirt or moisture.',
    'Take the temperature of the winding, and the dew point of the air.',
    'Discharge the winding for four times as long as it was charged.',
  ],
  fields: insulationFields,
  bands: [
    { id: 'stop', name: 'Too low to be energised', verdict: 'fail' },
    { id: 'hold', name: 'Hold: wash, dry and read again', verdict: 'fail' },
    { id: 'old-enough', name: 'Enough for a winding made before about 1970', verdict: 'pass' },
    { id: 'good', name: 'Good', verdict: 'pass' },
  ],
  doubts: doubtsOf,
  weigh(taken, limits) {
    const reading = { measuredMohm: taken.need('winding-to-frame'), windingC: taken.need('winding') }
    const at40 = insulationAt40(reading)
    const kind = taken.choice('winding-kind') ?? 'random-wound'
    const floor = limits('insulation-floor')
    const wanted = limits(kind === 'form-wound' ? 'insulation-form-wound' : 'insulation-random-wound')
    const ratedV = taken.number('rated')
    const oldRule = limits('insulation-old-added')
    const oldMohm =
      kind === 'before-1970' && ratedV !== undefined
        ? oldLeastMohm({ ratedV, addedMohm: oldRule.value })
        : wanted.value
    const band = stepOf(
      at40.lower,
      [
        { below: floor.value, is: 'stop' },
        { below: oldMohm, is: 'hold' },
        { below: wanted.value, is: 'old-enough' },
      ],
      'good',
    )
    const reads = `The winding reads ${sayFigure(at40.lower, 'Mohm', band === 'stop' ? floor.value : wanted.value)} at 40\u00a0°C`
    const attached = taken.choice('taken-off') === 'no'
    const testV = taken.number('tester')
    return {
      band,
      says: {
        stop: `Do not energise the set. ${reads} and must read ${sayFigure(floor.value, 'Mohm')} or more before it is energised at all, ${sayFigure(wanted.value, 'Mohm')} to be trusted.`,
        hold: `${reads}: above ${sayFigure(floor.value, 'Mohm')}, yet below the ${sayFigure(oldMohm, 'Mohm')} that it must reach to be trusted.`,
        'old-enough': `${reads}; ${sayFigure(oldMohm, 'Mohm')} is the least ever taken of a winding made before about 1970.`,
        good: `${reads}; ${sayFigure(wanted.value, 'Mohm')} or more is good.`,
      }[band],
      worked: [
        { name: 'At 40 °C if the resin softens in heat', value: at40.softening, unit: 'Mohm' },
        { name: 'At 40 °C if the resin is set', value: at40.set, unit: 'Mohm' },
        {
          name: 'At 25 °C by the older rule, for records that were kept so',
          value: insulationAt25(reading),
          unit: 'Mohm',
        },
        ...(testV === undefined || reading.measuredMohm === 0
          ? []
          : [
              {
                name: 'What the tester drives through it',
                value: leakageMicroamp({ testV, mohm: reading.measuredMohm }),
                unit: 'uA',
              },
            ]),
      ],
      limits: kind === 'before-1970' ? [floor, oldRule, wanted] : [floor, wanted],
      next:
        band === 'stop' || band === 'hold'
          ? attached
            ? `First take off what still hangs on it, which hides the winding, and read again. Then: ${washAndDry}`
            : washAndDry
          : 'Write the temperature beside it: a steady fall over the years warns sooner than any limit.',
    }
  },
} satisfies Plan

/** Dry and cold. */
export const insulationTest: ProofTest = proofTest(insulation)

/** Once more, while the winding is hot from full load: dampness shows then. */
export const hotInsulationTest: ProofTest = proofTest({
  ...insulation,
  id: 'insulation-hot',
  repeats: 'insulation-test',
  name: 'Insulation again, while the winding is hot from full load',
})
