/**
 * Tests of insulation: how high it reads, and whether it still rises while it is read.
 *
 * @module
 */

import { absorption, insulationAt40, oldLeastMohm } from './insulation.js'
import { again, doubt, type Plan, proofTest, stepOf, type Taken } from './judging.js'
import type { Limits } from './limits.js'
import { sayFigure } from './say-figure.js'
import type { Ask, Field, ProofTest } from './test-type.js'

/** Windings whose insulation is measured to the frame. */
export const windingParts = ['stator-winding', 'rotor-winding', 'exciter'] as const

const megohms = ['Mohm', 'Gohm', 'kohm', 'ohm'] as const

const washAndDry =
  'Wash salt out with fresh water, dry at no more than 80 °C in the winding, read again at one temperature until it stands. Low is no reason for a rewind by itself.'

const fields: readonly Field[] = [
  {
    kind: 'number',
    id: 'winding-to-frame',
    name: 'Winding to frame, 60 s after the volts came on',
    unit: 'Mohm',
    units: megohms,
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
    units: megohms,
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
  const windingC = taken.need('winding')
  const dewC = taken.number('dew-point')
  const top = taken.number('tester-top')
  const testV = taken.number('tester')
  const asks: Ask[] = []
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
  if (dewC !== undefined && windingC < dewC) {
    asks.push(
      again(
        'below-dew-point',
        'winding',
        `The winding at ${windingC} °C is colder than the dew point of ${dewC} °C: water stands on it. Warm it a little above and read again.`,
      ),
    )
  } else if (
    windingC < limits('insulation-law-coldest').value ||
    windingC > limits('insulation-law-hottest').value
  ) {
    asks.push(
      again(
        'past-the-laws',
        'winding',
        `A winding at ${windingC} °C: the laws of temperature hold from ${limits('insulation-law-coldest').value} to ${limits('insulation-law-hottest').value} °C. Read again within them.`,
      ),
    )
  }
  if (top !== undefined && mohm >= top) {
    asks.push(
      doubt(
        'at-top',
        'winding-to-frame',
        'The tester stands at its top, as it does with nothing joined to it. Do its leads read nought held together, and does the winding still read the same?',
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
  fields,
  bands: [
    { id: 'stop', name: 'Too low to be energised', verdict: 'fail' },
    { id: 'hold', name: 'Hold: wash, dry and read again', verdict: 'fail' },
    { id: 'old-enough', name: 'Enough for a winding made before about 1970', verdict: 'pass' },
    { id: 'good', name: 'Good', verdict: 'pass' },
  ],
  doubts: doubtsOf,
  weigh(taken, limits) {
    const at40 = insulationAt40({
      measuredMohm: taken.need('winding-to-frame'),
      windingC: taken.need('winding'),
    })
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

/** Ten minutes, one minute, half a minute, ten seconds: how far it rises while it is read. */
export const absorptionTest: ProofTest = proofTest({
  id: 'insulation-absorption',
  name: 'Absorption of a winding: how far its insulation rises while it is read',
  purpose: 'Whether a reading that is high enough is that of a clean, dry winding.',
  danger: 'locked out',
  dangers: ['shock'],
  instrument: 'Insulation tester of 500 V that holds its volts for ten minutes',
  parts: windingParts,
  steps: [
    'As for insulation resistance, with the tester left on: read after 10 s, 30 s, 60 s and, if it can, 10 min.',
    'Discharge the winding for four times as long as it was charged.',
  ],
  fields: [
    ...(['ten-seconds', 'half-minute', 'one-minute', 'ten-minutes'] as const).map(
      (id, i): Field => ({
        kind: 'number',
        id,
        name: ['After 10 s', 'After 30 s', 'After 60 s', 'After 10 min'][i]!,
        unit: 'Mohm',
        units: megohms,
        least: 0.001,
        most: 1e7,
        ...(id === 'one-minute' ? { needed: true as const } : {}),
      }),
    ),
    ...fields.filter(({ id }) => id === 'winding').map(({ needed: _, ...field }): Field => field),
    {
      kind: 'choice',
      id: 'insulation-class',
      name: 'Class of insulation on the plate',
      choices: ['A', 'B', 'F', 'H'].map((name) => ({ id: name.toLowerCase(), name })),
    },
  ],
  bands: [
    { id: 'poor', name: 'Poor: wet or dirty', verdict: 'fail' },
    { id: 'doubtful', name: 'Doubtful', verdict: 'fail' },
    { id: 'fair', name: 'Fair', verdict: 'pass' },
    { id: 'good', name: 'Good', verdict: 'pass' },
    { id: 'brittle', name: 'Very high: good, or dry and brittle in an old winding', verdict: 'pass' },
  ],
  weigh(taken, limits) {
    const oneMohm = taken.need('one-minute')
    const tenMohm = taken.number('ten-minutes')
    const halfMohm = taken.number('half-minute')
    const tenSecondsMohm = taken.number('ten-seconds')
    const windingC = taken.number('winding')
    const tooHigh = limits('polarisation-no-meaning')
    const at40 =
      windingC !== undefined &&
      windingC >= limits('insulation-law-coldest').value &&
      windingC <= limits('insulation-law-hottest').value
        ? insulationAt40({ measuredMohm: oneMohm, windingC }).lower
        : oneMohm
    if (at40 > tooHigh.value) {
      return {
        says: `At ${sayFigure(at40, 'Mohm')} the current is too small for how it falls to mean anything: above ${sayFigure(tooHigh.value, 'Mohm')} no index is formed.`,
        limits: [tooHigh],
        next: 'Insulation so high passes by its resistance alone.',
      }
    }
    if (tenMohm !== undefined)
      return weighIndex(absorption({ laterMohm: tenMohm, earlierMohm: oneMohm }), taken, limits)
    if (halfMohm !== undefined)
      return weighRatio(absorption({ laterMohm: oneMohm, earlierMohm: halfMohm }), limits)
    if (tenSecondsMohm !== undefined) {
      const limit = limits('absorption-ten-seconds')
      const ratio = absorption({ laterMohm: oneMohm, earlierMohm: tenSecondsMohm })
      const good = ratio >= limit.value
      return {
        band: good ? 'fair' : 'poor',
        says: `60 s over 10 s is ${sayFigure(ratio, '1', limit.value)}; ${limit.value} or more is wanted.`,
        worked: [{ name: '60 s over 10 s', value: ratio, unit: '1' }],
        limits: [limit],
        next: good ? 'Keep it with the resistance.' : washAndDry,
      }
    }
    return {
      says: 'One reading alone shows no rise: another after 10 s, 30 s or 10 min is needed.',
      limits: [],
      next: 'Read again, twice.',
    }
  },
})

function weighIndex(index: number, taken: Taken, limits: Limits) {
  const least = limits(
    taken.choice('insulation-class') === 'a' ? 'polarisation-class-a' : 'polarisation-class-b-up',
  )
  const brittle = limits('polarisation-brittle')
  const band = stepOf(
    index,
    [
      { below: 1, is: 'poor' },
      { below: least.value, is: 'doubtful' },
      { upTo: brittle.value, is: 'good' },
    ],
    'brittle',
  )
  return {
    band,
    says: `The polarisation index is ${sayFigure(index, '1', least.value)}; ${least.value} or more is wanted.`,
    worked: [{ name: 'Polarisation index, 10 min over 1 min', value: index, unit: '1' }],
    limits: band === 'brittle' ? [least, brittle] : [least],
    next:
      band === 'poor' || band === 'doubtful'
        ? `A small random-wound winding may stand near 1 though it is dry, because it is charged within 2 or 3 minutes: judge it by 60 s over 30 s. Otherwise: ${washAndDry}`
        : 'Keep it with the resistance. It needs no correction for temperature.',
  }
}

function weighRatio(ratio: number, limits: Limits) {
  const [poor, fair, good] = [limits('absorption-poor'), limits('absorption-fair'), limits('absorption-good')]
  const band = stepOf(
    ratio,
    [
      { below: poor.value, is: 'poor' },
      { below: fair.value, is: 'doubtful' },
      { below: good.value, is: 'fair' },
    ],
    'good',
  )
  return {
    band,
    says: `60 s over 30 s is ${sayFigure(ratio, '1', fair.value)}; ${fair.value} or more is fair, ${good.value} good.`,
    worked: [{ name: 'Absorption ratio, 60 s over 30 s', value: ratio, unit: '1' }],
    limits: [poor, fair, good],
    next: band === 'poor' || band === 'doubtful' ? washAndDry : 'Keep it with the resistance.',
  }
}
