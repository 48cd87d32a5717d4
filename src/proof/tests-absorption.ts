/**
 * Absorption: whether insulation still rises while it is read.
 *
 * @module
 */

import { absorption, insulationAt40 } from './insulation.js'
import { again, proofTest, stepOf, type Taken } from './judging.js'
import type { Limits } from './limits.js'
import { sayFigure } from './say-figure.js'
import type { Ask, Field, ProofTest } from './test-type.js'
import { dampAsks, insulationFields, megohmUnits, washAndDry, windingParts } from './tests-insulation.js'

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
    'A bare field winding, and a small one that is charged within 2 or 3 minutes, show no rise though they are dry: there the resistance alone counts.',
    'Discharge the winding for four times as long as it was charged.',
  ],
  fields: [
    ...(['ten-seconds', 'half-minute', 'one-minute', 'ten-minutes'] as const).map(
      (id, i): Field => ({
        kind: 'number',
        id,
        name: ['After 10 s', 'After 30 s', 'After 60 s', 'After 10 min'][i]!,
        unit: 'Mohm',
        units: megohmUnits,
        least: 0.001,
        most: 1e7,
        ...(id === 'one-minute' ? { needed: true as const } : {}),
      }),
    ),
    ...insulationFields
      .filter(({ id }) => ['winding', 'dew-point', 'tester-top', 'taken-off'].includes(id))
      .map(({ needed: _, ...field }): Field => field),
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
    { id: 'excellent', name: 'Excellent', verdict: 'pass' },
    { id: 'brittle', name: 'Very high: good, or dry and brittle in an old winding', verdict: 'pass' },
  ],
  doubts(taken, limits): Ask[] {
    const top = taken.number('tester-top')
    const wet = dampAsks(taken, limits).filter(({ code }) => code === 'below-dew-point')
    if (top === undefined || taken.need('one-minute') < top) return wet
    const question =
      'The tester stands at its top, where no rise can be seen. Read with one that goes higher.'
    return [...wet, again('at-top', 'one-minute', question)]
  },
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
    if (taken.choice('taken-off') === 'no') {
      return {
        says: 'What still hangs on the winding is charged along with it: how the reading rises tells nothing of the winding.',
        limits: [],
        next: 'Take off regulator, diodes, capacitors, filters, cables and the bond of the neutral, and read again.',
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
  const [poor, fair, good, excellent] = [
    limits('absorption-poor'),
    limits('absorption-fair'),
    limits('absorption-good'),
    limits('absorption-excellent'),
  ]
  const band = stepOf(
    ratio,
    [
      { below: poor.value, is: 'poor' },
      { below: fair.value, is: 'doubtful' },
      { below: good.value, is: 'fair' },
      { upTo: excellent.value, is: 'good' },
    ],
    'excellent',
  )
  return {
    band,
    says: `60 s over 30 s is ${sayFigure(ratio, '1', fair.value)}; ${fair.value} or more is fair, ${good.value} good.`,
    worked: [{ name: 'Absorption ratio, 60 s over 30 s', value: ratio, unit: '1' }],
    limits: [poor, fair, good, excellent],
    next: band === 'poor' || band === 'doubtful' ? washAndDry : 'Keep it with the resistance.',
  }
}
