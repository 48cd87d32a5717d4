/**
 * Tests of bonds and of the changeover: where the neutral is tied to earth, and that only one source feeds.
 *
 * @module
 */

import { faultAmps } from './earth.js'
import { amps, choice, counts, megohms, ohms, volts, yesNo } from './fields.js'
import { again, type Outcome, proofTest, stepOf, type Taken } from './judging.js'
import type { Limits } from './limits.js'
import { sayFigure } from './say-figure.js'
import type { ProofTest, Worked } from './test-type.js'

export const licensed = 'A licensed marine electrician looks at it before anything is fed.'

export const bondTest: ProofTest = proofTest({
  id: 'bond-test',
  name: 'Continuity from metal to the bond bar',
  purpose: 'Whether a fault to the frame drives enough current to be cut, instead of waiting for a hand.',
  danger: 'locked out',
  dangers: ['shock'],
  instrument: 'Low-ohm meter that drives 0.2 A or more',
  steps: [
    'Every source off and locked: set, shore plug out and in sight, inverter off.',
    'Hold both leads together and read them.',
    'One lead on the bond bar, the other on bare metal: frame, each case, panel. Move the cable while reading.',
  ],
  fields: [
    ohms({ id: 'bond', name: 'Metal to bond bar, as shown', needed: true, most: 1e6 }),
    ohms({ id: 'leads', name: 'Leads of the meter held together', needed: true, condition: true, most: 100 }),
    choice({
      id: 'what',
      apart: true,
      name: 'Which metal',
      needed: true,
      of: { frame: 'frame of the set, a case, a panel', 'sea-metal': 'underwater metal that is bonded' },
    }),
    amps({ id: 'test-current', name: 'Current of the meter', condition: true, most: 50 }),
    volts({ id: 'line', name: 'One line to earth', condition: true, further: true, least: 12 }),
    ohms({
      id: 'rest-of-loop',
      name: 'Winding and line conductor, without the bond',
      help: 'With the bond it is the loop that a fault must drive enough current through.',
      condition: true,
      further: true,
      least: 0.001,
      most: 1000,
    }),
    amps({
      id: 'breaker',
      name: 'Breaker of that line',
      condition: true,
      further: true,
      least: 0.1,
    }),
  ],
  bands: [
    { id: 'good', name: 'Bonded', verdict: 'pass' },
    { id: 'high', name: 'Too high', verdict: 'fail' },
    { id: 'open', name: 'Open', verdict: 'fail' },
  ],
  doubts(taken) {
    const shown = taken.need('bond')
    const leads = taken.need('leads')
    return shown < leads
      ? [
          again(
            'below-leads',
            'leads',
            `${shown} Ω is less than the leads alone, ${leads} Ω. Hold them together and read again.`,
          ),
        ]
      : []
  },
  weigh(taken, limits) {
    const sea = taken.choice('what') === 'sea-metal'
    const most = limits(sea ? 'bond-sea-metal' : 'bond-frame')
    const open = limits('bond-open')
    const net = Number((taken.need('bond') - taken.need('leads')).toPrecision(10))
    const current = limits('bond-current')
    const driven = taken.number('test-current')
    const band = stepOf(
      net,
      [
        { upTo: most.value, is: 'good' },
        { upTo: open.value, is: 'high' },
      ],
      'open',
    )
    const weak = driven !== undefined && driven < current.value
    return {
      band,
      says: `${band === 'good' ? '' : 'Do not start with the field live, and close no breaker. '}Net of the leads it is ${sayFigure(net, 'ohm', most.value)}; ${most.value} Ω or less is wanted.`,
      worked: [{ name: 'Net of the leads', value: net, unit: 'ohm' }, ...workedFault(taken, net)],
      limits: [most, open, current],
      next:
        band === 'good'
          ? weak
            ? `Passed with less than ${current.value} A: one strand passes such a test. Read it again with more where you can.`
            : 'Next metal. Each must pass by itself.'
          : `Lugs, studs and paint first; clean, tighten, read again. ${licensed}`,
    }
  },
})

/** What a fault to this metal drives, and how many times the breaker that is; nothing where the rest of its loop is not told. */
function workedFault(taken: Taken, bondOhm: number): readonly Worked[] {
  const [volts, rest, breaker] = ['line', 'rest-of-loop', 'breaker'].map((id) => taken.number(id))
  if (volts === undefined || rest === undefined) return []
  const fault = faultAmps({ volts, loopOhm: rest + bondOhm })
  return [
    { name: 'What a fault to it drives', value: fault, unit: 'A' },
    ...(breaker === undefined ? [] : [{ name: 'Times its breaker', value: fault / breaker, unit: '1' }]),
  ]
}

export const neutralBondTest: ProofTest = proofTest({
  id: 'neutral-bond',
  name: 'Where the neutral is tied to earth',
  purpose: 'Whether the source in use has its one bond, and no second.',
  danger: 'locked out',
  dangers: ['shock'],
  instrument: 'Ohmmeter and insulation tester; the plan of the changeover',
  steps: [
    'Say first which system it is: neutral earthed, or insulated with a monitor. Nobody guesses it.',
    'Every source off and locked. Set the changeover to one source. A bond made by a relay shows only while that source runs: count it from the plan.',
    'Neutral to frame with the bond in; lift the bond; neutral to frame again. Put it back.',
    'Then the next source. Each is a reading of its own.',
  ],
  fields: [
    choice({
      id: 'system',
      name: 'System',
      needed: true,
      of: { earthed: 'neutral earthed', insulated: 'insulated, with a monitor' },
    }),
    choice({
      id: 'source',
      apart: true,
      name: 'Source in use',
      needed: true,
      of: { set: 'the set', shore: 'shore', inverter: 'the inverter', other: 'another set' },
    }),
    yesNo({ id: 'neutral-switched', name: 'Does the changeover switch the neutral too?', needed: true }),
    yesNo({ id: 'transformer', name: 'Does shore come in through an isolating transformer?' }),
    counts({ id: 'bonds', name: 'Bonds found aboard with this source in use', needed: true, most: 20 }),
    ohms({ id: 'closed', name: 'Neutral to frame, bond in', most: 1e6 }),
    megohms({ id: 'lifted', name: 'Neutral to frame, bond lifted' }),
  ],
  bands: [
    { id: 'none', name: 'No bond', verdict: 'fail' },
    { id: 'two', name: 'More bonds than one', verdict: 'fail' },
    { id: 'poor', name: 'Bond of too much resistance', verdict: 'fail' },
    { id: 'joined', name: 'Still joined with the bond lifted', verdict: 'fail' },
    { id: 'right', name: 'As it must be for this source', verdict: 'pass' },
  ],
  doubts: (taken) =>
    Number.isInteger(taken.need('bonds'))
      ? []
      : [again('whole', 'bonds', 'Bonds are counted: a whole number is wanted.')],
  weigh: weighNeutral,
})

function weighNeutral(taken: Taken, limits: Limits): Outcome {
  const [aim, most, open] = [limits('neutral-closed'), limits('neutral-closed-most'), limits('neutral-open')]
  const earthed = taken.choice('system') === 'earthed'
  const shore = taken.choice('source') === 'shore' && taken.choice('transformer') !== 'yes'
  const wanted = earthed && !shore ? 1 : 0
  const bonds = taken.need('bonds')
  const [closed, lifted] = [taken.number('closed'), taken.number('lifted')]
  const band =
    bonds < wanted
      ? 'none'
      : bonds > wanted
        ? 'two'
        : wanted === 1 && closed !== undefined && closed > most.value
          ? 'poor'
          : lifted !== undefined && lifted < open.value
            ? 'joined'
            : 'right'
  const rule = !earthed
    ? 'An insulated system has none, and a monitor that shows the first fault.'
    : shore
      ? 'On shore power the neutral is earthed ashore alone.'
      : taken.choice('neutral-switched') === 'yes'
        ? 'The changeover switches the neutral, so this source must have one of its own.'
        : 'The changeover does not switch the neutral, so there must be one in all, whichever source runs.'
  const fair = closed !== undefined && closed > aim.value
  return {
    band,
    says: {
      none: `Feed nothing. No bond with this source, ${wanted} wanted: a first fault may cut nothing. ${rule}`,
      two: `Feed nothing. ${bonds} aboard with this source, ${wanted} wanted: neutral current shares the earth and devices trip. ${rule}`,
      poor: `Feed nothing. Bond in, it is ${sayFigure(closed ?? 0, 'ohm', most.value)}; ${most.value} Ω at most, ${aim.value} Ω is aimed at.`,
      joined: `Feed nothing. Bond lifted, it still reads ${sayFigure(lifted ?? 0, 'Mohm', open.value)}; ${open.value} MΩ or more is wanted. Another bond, or a fault to the frame.`,
      right: `${bonds} aboard with this source, as it must be. ${rule}`,
    }[band],
    limits: [aim, most, open],
    next:
      band === 'right'
        ? fair
          ? `Above ${aim.value} Ω: clean the joint. Then the next source.`
          : 'Then the next source: set, shore, inverter, each by itself.'
        : licensed,
  }
}

export const changeoverTest: ProofTest = proofTest({
  id: 'changeover-test',
  name: 'Changeover tried dead',
  purpose: 'Whether two sources can ever be joined, and whether the neutral goes with the lines.',
  danger: 'locked out',
  dangers: ['backfeed', 'shock'],
  instrument: 'Ohmmeter; the plan of the changeover',
  steps: [
    'Every source off and locked, proven dead.',
    'Try to close both: slowly, half way, with the slide forced as a hand would.',
    'Ohmmeter across from source to source in every position, each line and the neutral.',
  ],
  fields: [
    yesNo({
      id: 'can-join',
      name: 'Can two sources be joined in any position, or is an interlock defeated?',
      needed: true,
    }),
    yesNo({ id: 'neutral-alone', name: 'Can the neutral open while a line stays closed?', needed: true }),
    volts({ id: 'drop', name: 'Volts lost across a pole at load', most: 50 }),
  ],
  bands: [
    { id: 'joins', name: 'Two sources can join', verdict: 'fail' },
    { id: 'neutral', name: 'The neutral can open alone', verdict: 'fail' },
    { id: 'drop', name: 'A pole loses volts', verdict: 'fail' },
    { id: 'good', name: 'One source at a time', verdict: 'pass' },
  ],
  weigh(taken, limits) {
    const most = limits('changeover-drop')
    const drop = taken.number('drop')
    const band =
      taken.choice('can-join') === 'yes'
        ? 'joins'
        : taken.choice('neutral-alone') === 'yes'
          ? 'neutral'
          : drop !== undefined && drop > most.value
            ? 'drop'
            : 'good'
    return {
      band,
      says: {
        joins: 'Two sources can be joined: lock out all of them.',
        neutral: 'The neutral can open while a line stays closed: 120 V loads may meet 240.',
        drop: `A pole loses ${sayFigure(drop ?? 0, 'V', most.value)} at load; ${most.value} V at most.`,
        good: 'One source at a time, and the neutral never alone.',
      }[band],
      limits: [most],
      next: band === 'good' ? 'Look at its poles again at full load.' : licensed,
    }
  },
})
