/**
 * Volts on metalwork, and the steps that tell where they come from.
 *
 * @module
 */

import { bearableMilliamp, bodyMilliamp, earthAmps, seenVolts, sourceBehind } from './earth.js'
import { amps, choice, kilowatts, milliamps, ohms, volts, yesNo } from './fields.js'
import { type Outcome, percentOf, proofTest, stepOf, type Taken } from './judging.js'
import type { Limits } from './limits.js'
import { sayFigure } from './say-figure.js'
import { openNeutralVolts } from './supply.js'
import type { ProofTest, Worked } from './test-type.js'

const steps = [
  'Nobody in the water or near it. Bond and insulation have passed their dead tests.',
  'Stopped and locked out: clip one lead on the bond bar, or hang a probe in the water; the other on the metal. Insulated grips, one hand.',
  'Stand clear of all metal, then start, every branch off. Read, stop, take off.',
] as const

export const touchTest: ProofTest = proofTest({
  id: 'touch-volts',
  name: 'Volts on metalwork',
  purpose: 'Whether metal that a hand or the water meets is live.',
  danger: 'live',
  dangers: ['shock'],
  instrument: 'Voltmeter of 10 MΩ, and one of about 3 kΩ or a lamp of 10 W',
  steps,
  fields: [
    volts({ id: 'open', name: 'Metal to bond or water, 10 MΩ meter', needed: true }),
    volts({ id: 'loaded', name: 'The same on a low-impedance meter or with a lamp' }),
    ohms({
      id: 'meter-ohms',
      name: 'Resistance of that meter',
      help: 'Left out: 3 kΩ.',
      condition: true,
      least: 1,
      most: 1e6,
    }),
    yesNo({ id: 'felt', name: 'Has anybody felt a tingle?' }),
  ],
  bands: [
    { id: 'quiet', name: 'Quiet', verdict: 'pass' },
    { id: 'some', name: 'Some: look into it before anything is fed', verdict: 'fail' },
    { id: 'felt', name: 'Felt by somebody', verdict: 'fail' },
    { id: 'danger', name: 'Danger', verdict: 'fail' },
  ],
  weigh(taken, limits) {
    const [look, danger] = [limits('touch-look'), limits('touch-danger')]
    const body = limits('body-salt-wet')
    const open = taken.need('open')
    const loaded = taken.number('loaded')
    const band = stepOf(
      open,
      [
        { below: look.value, is: taken.choice('felt') === 'yes' ? 'felt' : 'quiet' },
        { upTo: danger.value, is: taken.choice('felt') === 'yes' ? 'felt' : 'some' },
      ],
      'danger',
    )
    const stop = 'Stop the set, unplug shore, keep off the water and the metal.'
    return {
      band,
      says: {
        quiet: `${sayFigure(open, 'V', look.value)} on the metal; below ${look.value} V is quiet.`,
        some: `${stop} ${sayFigure(open, 'V', look.value)} on the metal; below ${look.value} V is wanted.`,
        felt: `${stop} A tingle was felt, whatever the meter says.`,
        danger: `${stop} ${sayFigure(open, 'V', danger.value)} on the metal; above ${danger.value} V is a danger to wet hands.`,
      }[band],
      worked: [
        {
          name: 'Through a wet hand on it, at most',
          value: bodyMilliamp({ volts: open, ohm: body.value }),
          unit: 'mA',
        },
        ...bearsForOneSecond(),
        ...workedBehind(taken, limits),
      ],
      limits: [look, danger, body],
      next:
        band === 'quiet'
          ? 'Repeat on shore power and on each other source.'
          : `${heldUp(loaded, limits)}Find it dead first: bond, then insulation of each circuit. The test of stray volts parts the causes. A licensed marine electrician where it is not found at once.`,
    }
  },
})

/** What a light meter falls to on one that draws tells pick-up from a fault. */
function heldUp(loaded: number | undefined, limits: Limits): string {
  if (loaded === undefined) return 'Read it on a meter that draws too: that tells pick-up from a fault. '
  return loaded <= limits('pickup-falls').value
    ? `It falls to ${sayFigure(loaded, 'V')} on a meter that draws: sooner pick-up through filters than a fault. `
    : `It still stands at ${sayFigure(loaded, 'V')} on a meter that draws: a fault or a bond, no pick-up. `
}

function bearsForOneSecond(): readonly Worked[] {
  const bears = bearableMilliamp(1)
  return bears === undefined ? [] : [{ name: 'What a body of 50 kg bears for 1 s', value: bears, unit: 'mA' }]
}

/** From the readings on two meters: the volts behind, what stands between, and what a short or a wet hand would draw now. */
function workedBehind(taken: Taken, limits: Limits): readonly Worked[] {
  const [open, loaded] = [taken.need('open'), taken.number('loaded')]
  if (loaded === undefined || open === 0) return []
  const behind = sourceBehind({
    light: { volts: open, meterOhm: limits('high-z-meter').value },
    heavy: { volts: loaded, meterOhm: taken.number('meter-ohms') ?? limits('low-z-meter').value },
  })
  if (behind === undefined) return []
  const { volts: sourceV, ohm: seriesOhm } = behind
  const bodyOhm = limits('body-salt-wet').value
  const onHand = seenVolts({ sourceV, seriesOhm, meterOhm: bodyOhm })
  return [
    { name: 'Volts with no meter on it', value: sourceV, unit: 'V' },
    { name: 'Resistance that it is live behind', value: seriesOhm / 1000, unit: 'kohm' },
    ...(seriesOhm === 0
      ? []
      : [
          {
            name: 'Through a dead short to the bond',
            value: bodyMilliamp({ volts: sourceV, ohm: seriesOhm }),
            unit: 'mA',
          },
        ]),
    {
      name: 'Through a wet hand, as it is fed now; damp feeds it better',
      value: bodyMilliamp({ volts: onHand, ohm: bodyOhm }),
      unit: 'mA',
    },
  ]
}

const causes = {
  quiet: 'Nothing stray',
  shore: 'It comes from ashore',
  'open-neutral': 'The neutral is open',
  pickup: 'Pick-up through filters, neutral not earthed',
  'two-bonds': 'Neutral and earth joined twice',
  unbonded: 'A fault to metal that is not bonded',
  'no-source-bond': 'A fault to bonded metal, and no bond at the source',
  'poor-bond': 'A fault to metal that is bonded through too much resistance',
} as const

export const strayTest: ProofTest = proofTest({
  id: 'stray-volts',
  name: 'Where stray volts come from',
  purpose: 'Which of the ways in which metal gets live it is.',
  danger: 'live',
  dangers: ['shock'],
  instrument: 'Voltmeter of 10 MΩ, one of about 3 kΩ, clamp for leakage',
  steps: [
    ...steps,
    'With the set stopped: shore lead in, read; shore lead out, read.',
    'Set running, all off: metal to a line, metal to neutral, on either meter. Then put load on and look whether it rises.',
  ],
  fields: [
    volts({ id: 'open', name: 'Metal to bond or water, 10 MΩ meter', needed: true }),
    volts({ id: 'loaded', name: 'The same on a low-impedance meter', needed: true }),
    volts({ id: 'line', name: 'Line to neutral', needed: true, least: 1, condition: true }),
    volts({ id: 'line-to-metal', name: 'Line to metal', needed: true }),
    volts({ id: 'neutral-to-metal', name: 'Neutral to metal', needed: true }),
    volts({ id: 'stopped-shore-in', name: 'Set stopped, shore lead in' }),
    volts({ id: 'other-leg', name: 'The other leg to neutral, where there are two' }),
    choice({
      id: 'with-load',
      name: 'When load is put on',
      of: { same: 'it stays', rises: 'it rises with the load' },
    }),
    milliamps({ id: 'earth-current', name: 'Clamp round the earth conductor' }),
    yesNo({ id: 'bonded', name: 'Did the metal pass its bond test?', needed: true }),
    amps({ id: 'load', name: 'Load that was put on', condition: true, further: true, least: 0.01 }),
    ohms({
      id: 'neutral-ohms',
      name: 'Neutral between the two joints with earth, dead',
      condition: true,
      further: true,
      least: 0.0001,
      most: 100,
    }),
    ohms({
      id: 'earth-ohms',
      name: 'Earth conductor between the same two, dead',
      condition: true,
      further: true,
      least: 0.0001,
      most: 100,
    }),
    kilowatts({
      id: 'first-load',
      name: 'On the first leg when it was read',
      condition: true,
      further: true,
      least: 0.01,
    }),
    kilowatts({ id: 'other-load', name: 'On the other leg', condition: true, further: true, least: 0.01 }),
  ],
  bands: Object.entries(causes).map(([id, name]) => ({
    id,
    name,
    verdict: id === 'quiet' ? 'pass' : 'fail',
  })),
  weigh: weighStray,
})

function weighStray(taken: Taken, limits: Limits): Outcome {
  const [look, apart, fell] = [limits('touch-look'), limits('legs-apart'), limits('pickup-falls')]
  const about = limits('stray-near').value
  const open = taken.need('open')
  const loaded = taken.need('loaded')
  const line = taken.need('line')
  const toLine = taken.need('line-to-metal') / line
  const toNeutral = taken.need('neutral-to-metal') / line
  const other = taken.number('other-leg')
  const bonded = taken.choice('bonded') === 'yes'
  const quietEarth = (taken.number('earth-current') ?? 0) < limits('leakage-quiet').value
  const falls = loaded <= fell.value && quietEarth
  const worked = [
    ...workedBehind(taken, limits),
    ...workedTwoBonds(taken, limits),
    ...workedOpenNeutral(taken),
  ]
  const near = (share: number, to: number) => Math.abs(share - to) <= about
  const cause: keyof typeof causes | undefined =
    (taken.number('stopped-shore-in') ?? 0) >= look.value
      ? 'shore'
      : other !== undefined && Math.abs(other - line) > (apart.value / 100) * line
        ? 'open-neutral'
        : taken.choice('with-load') === 'rises'
          ? 'two-bonds'
          : open < look.value
            ? 'quiet'
            : near(toLine, 0.5) && near(toNeutral, 0.5) && falls
              ? 'pickup'
              : bonded && near(toLine, 0) && near(toNeutral, 1)
                ? 'no-source-bond'
                : bonded
                  ? 'poor-bond'
                  : near(toLine, 0) || near(toNeutral, 0) || !falls
                    ? 'unbonded'
                    : undefined
  if (cause === undefined) {
    return {
      says: `${sayFigure(open, 'V')} on the metal, and no one cause fits all that was read.`,
      worked,
      limits: [look],
      next: 'Leave everything off. A licensed marine electrician looks at it.',
    }
  }
  return {
    band: cause,
    says: {
      quiet: `${sayFigure(open, 'V', look.value)} on the metal: nothing stray.`,
      shore: 'It is there with the set stopped and the shore lead in, so it comes from ashore.',
      'open-neutral': `One leg gives ${sayFigure(line, 'V')} and the other ${sayFigure(other ?? 0, 'V')}: the neutral is open, and loads share what they must not.`,
      pickup: `About half the volts from either side, and ${sayFigure(loaded, 'V')} on a meter that draws: picked up through filters, the neutral floating.`,
      'two-bonds':
        'It rises with the load: neutral and earth are joined twice, and the earth carries a share of the current.',
      unbonded:
        'One side sits near the metal, and it stays on a meter that draws: a fault to metal that nothing bonds.',
      'no-source-bond':
        'The line sits at the metal and the neutral a whole line away: a first fault, silent because the source has no bond.',
      'poor-bond':
        'The metal is bonded and still stands at volts: a fault drives current through a bond of too much resistance.',
    }[cause],
    worked,
    limits: [look, apart, fell],
    next: {
      quiet: 'Repeat on shore power and on each other source.',
      shore: 'Unplug shore and leave it out. Tell the marina; the dock side is theirs. Nobody in the water.',
      'open-neutral':
        'Everything off at once. Find the joint of the neutral dead, from the set to the panel.',
      pickup:
        'Establish which system it is, and its one bond, with a licensed marine electrician; unplug electronics and watch it fall.',
      'two-bonds': 'Lift bonds one by one, dead, until one is left with the source in use.',
      unbonded:
        'Leave it off. Insulation of one circuit after another, dead; bond the metal before anything runs.',
      'no-source-bond':
        'Leave it off. Bond of the source first, then the circuit at fault by its insulation.',
      'poor-bond': 'Leave it off. Bond first, then the circuit at fault by its insulation.',
    }[cause],
  }
}

/** Of a neutral and an earth that are joined twice: what goes by the earth, read and expected. */
function workedTwoBonds(taken: Taken, limits: Limits): readonly Worked[] {
  const [loadA, earthMa] = [taken.number('load'), taken.number('earth-current')]
  const [neutralOhm, earthOhm] = [taken.number('neutral-ohms'), taken.number('earth-ohms')]
  const measured =
    loadA === undefined || earthMa === undefined
      ? []
      : [{ name: 'Of the load, by the earth', value: percentOf(earthMa / 1000, loadA), unit: '%' }]
  if (neutralOhm === undefined || earthOhm === undefined) return measured
  const byEarth = (load: number) => earthAmps({ loadA: load, neutralOhm, earthOhm })
  return [
    ...measured,
    ...(loadA === undefined
      ? []
      : [{ name: 'By the earth, if both are joined twice', value: byEarth(loadA), unit: 'A' }]),
    {
      name: 'Load at which that trips a main device',
      value: limits('leakage-trip').value / 1000 / byEarth(1),
      unit: 'A',
    },
  ]
}

/** What each leg would show with the neutral open, from what is on it; the loads as resistances. */
function workedOpenNeutral(taken: Taken): readonly Worked[] {
  const [first, other, otherLeg] = ['first-load', 'other-load', 'other-leg'].map((id) => taken.number(id))
  if (first === undefined || other === undefined || otherLeg === undefined) return []
  const [one, two] = openNeutralVolts({
    lineV: taken.need('line') + otherLeg,
    firstOhm: 1 / first,
    secondOhm: 1 / other,
  })
  return [
    { name: 'First leg at these loads, were the neutral open', value: one, unit: 'V' },
    { name: 'Other leg', value: two, unit: 'V' },
  ]
}
