/**
 * Tests of what makes the volts: residual magnetism, the field fed from a battery, and the gap that a link will close.
 *
 * @module
 */

import { amps, choice, ohms, volts, yesNo } from './fields.js'
import { again, type Outcome, percentOf, proofTest, stepOf, type Taken } from './judging.js'
import type { Limits } from './limits.js'
import { imbalancePercent, meanOf } from './resistance.js'
import { sayFigure } from './say-figure.js'
import type { ProofTest } from './test-type.js'

const liveSteps = [
  'Stopped and locked out: clip the leads on, covers back as far as they go, nothing joined at the breaker.',
  'Breaker open and locked. Somebody else stands at the stop. Nobody in the water.',
  'Stand clear, both hands away, then start and run at speed.',
] as const

export const residualTest: ProofTest = proofTest({
  id: 'residual-volts',
  name: 'Residual volts',
  purpose: 'Whether enough magnetism is left in the machine for it to build up.',
  danger: 'live',
  dangers: ['shock', 'injury'],
  instrument: 'True-RMS voltmeter of category III with clips',
  steps: [...liveSteps, 'Regulator unplugged, or its field leads off. Read line to neutral; stop; take off.'],
  fields: [
    volts({ id: 'line', name: 'Line to neutral, regulator off', needed: true }),
    yesNo({ id: 'at-speed', name: 'Does the engine run at its speed?', needed: true }),
  ],
  bands: [
    { id: 'none', name: 'Lost', verdict: 'fail' },
    { id: 'little', name: 'Little', verdict: 'pass' },
    { id: 'usual', name: 'Usual', verdict: 'pass' },
    { id: 'much', name: 'More than usual', verdict: 'pass' },
  ],
  doubts: (taken) =>
    taken.choice('at-speed') === 'no'
      ? [
          again(
            'not-at-speed',
            'at-speed',
            'Residual volts rise with speed: read them at the speed of the set.',
          ),
        ]
      : [],
  weigh(taken, limits) {
    const [none, low, high, fed] = [
      limits('residual-least'),
      limits('residual-low'),
      limits('residual-high'),
      limits('no-voltage'),
    ]
    const line = taken.need('line')
    if (line >= fed.value) {
      return {
        says: `${sayFigure(line, 'V')} is more than residual: below ${fed.value} V counts as none. Something still feeds the field.`,
        limits: [fed],
        next: 'Unplug the regulator and read again.',
      }
    }
    const band = stepOf(
      line,
      [
        { below: none.value, is: 'none' },
        { below: low.value, is: 'little' },
        { upTo: high.value, is: 'usual' },
      ],
      'much',
    )
    return {
      band,
      says: `${sayFigure(line, 'V', none.value)} residual; ${low.value} to ${high.value} V is usual, under ${none.value} V it is lost.`,
      limits: [none, low, high],
      next:
        band === 'none'
          ? 'Open stator, or magnetism lost: prove the windings dead first. Then flash the field from 6 V, or 12 V through a lamp, a fuse and a diode, plus to F1, regulator leads off, 1 to 2 s, two or three touches.'
          : band === 'little'
            ? 'It may build by itself; where it does not, flash the field with the regulator leads off.'
            : 'Residual is there: if it makes no volts with the regulator on, look at the regulator and its leads.',
    }
  },
})

export const excitationTest: ProofTest = proofTest({
  id: 'separate-excitation',
  name: 'Field fed from a battery, regulator off',
  purpose: 'Whether the fault lies in the machine or in its regulator.',
  danger: 'live',
  dangers: ['shock', 'injury', 'overvoltage'],
  instrument:
    '12 V with a fuse of 10 A and an ammeter, or a bench supply with a current limit; voltmeter with clips',
  steps: [
    'Stopped and locked out: regulator leads off the field; battery, fuse and ammeter joined to it, plus to F1; voltmeter clips on the lines.',
    ...liveSteps.slice(1),
    'Switch the field on, read volts of every line and the amps of the field; again after some minutes. Volts may pass the rated ones: keep below 110 %.',
    'Field off, stop, then take off.',
  ],
  fields: [
    volts({ id: 'first', name: 'First line', needed: true }),
    volts({ id: 'second', name: 'Second line' }),
    volts({ id: 'third', name: 'Third line' }),
    volts({
      id: 'rated',
      name: 'What each must make',
      needed: true,
      condition: true,
      least: 12,
      of: 'volts',
    }),
    volts({ id: 'field-volts', name: 'Volts on the field', condition: true, most: 200 }),
    ohms({
      id: 'field-ohms',
      name: 'Resistance of the field, cold',
      condition: true,
      least: 0.01,
      most: 1000,
    }),
    amps({ id: 'field-amps', name: 'Amps of the field', most: 100 }),
    choice({
      id: 'field-goes',
      name: 'What the amps of the field do',
      of: {
        steady: 'steady, or fall a little as it warms',
        rise: 'rise as it runs',
        jump: 'jump or fall to nought',
        earth: 'jump when one lead touches the frame',
      },
    }),
  ],
  bands: [
    { id: 'earthed', name: 'The field touches the frame', verdict: 'fail' },
    { id: 'open', name: 'The field opens as it runs', verdict: 'fail' },
    { id: 'turns', name: 'Turns of the field are shorted', verdict: 'fail' },
    { id: 'residual', name: 'Residual only', verdict: 'fail' },
    { id: 'unbalanced', name: 'Unbalanced: stator or links', verdict: 'fail' },
    { id: 'partly', name: 'Low but balanced: diodes, exciter or rotor', verdict: 'fail' },
    { id: 'sound', name: 'The machine is sound: regulator or its supply', verdict: 'pass' },
  ],
  weigh: weighExcitation,
})

function weighExcitation(taken: Taken, limits: Limits): Outcome {
  const [good, part, balance] = [limits('excited-good'), limits('excited-part'), limits('excited-balance')]
  const lines = ['first', 'second', 'third'].flatMap((id) => taken.number(id) ?? [])
  const share = percentOf(meanOf(lines), taken.need('rated'))
  const apart = imbalancePercent(lines)
  const goes = taken.choice('field-goes')
  const byField = { rise: 'turns', jump: 'open', earth: 'earthed', steady: undefined } as const
  const field = goes === undefined ? undefined : byField[goes as keyof typeof byField]
  const band =
    field ??
    (share < part.value
      ? 'residual'
      : apart > balance.value
        ? 'unbalanced'
        : stepOf(share, [{ upTo: good.value, is: 'partly' }], 'sound'))
  const fieldV = taken.number('field-volts')
  const fieldOhm = taken.number('field-ohms')
  const expected = fieldV === undefined || fieldOhm === undefined ? undefined : fieldV / fieldOhm
  return {
    band,
    says: `The lines make ${sayFigure(share, '%', good.value)} of what they must${lines.length > 1 ? ` and lie within ${sayFigure(apart, '%', balance.value)} of one another` : ''}; above ${good.value} % and even, the machine is sound.`,
    worked: [
      { name: 'Share of the rated volts', value: share, unit: '%' },
      ...(expected === undefined
        ? []
        : [{ name: 'Amps that the field should take', value: expected, unit: 'A' }]),
    ],
    limits: [good, part, balance],
    next: {
      earthed: 'Stop. The field is earthed: take its insulation dead, with the diodes lifted.',
      open: 'A joint or the winding of the field opens as it turns: look at lugs, then brushes, then the winding.',
      turns: 'More amps as it warms are shorted turns: compare the resistance with the book.',
      residual: 'Field open, exciter rotor open, or rotor winding open: measure each dead.',
      unbalanced: 'Compare stator halves dead and go through the links.',
      partly: 'Test the rotating diodes one by one, then exciter rotor and main rotor.',
      sound: 'Look at the regulator, its supply and its sensing leads.',
    }[band],
  }
}

export const gapTest: ProofTest = proofTest({
  id: 'gap-volts',
  name: 'Volts across the gap that a link will close',
  purpose: 'Whether two halves or corners may be joined: crossed, they are a short inside the breaker.',
  danger: 'live',
  dangers: ['shock', 'injury', 'fire'],
  instrument: 'Voltmeter with clips; a low field from a battery',
  steps: [
    'Dead tests of halves and pattern are done and pass. Stopped and locked out: leave the parallel or delta link open, clips across its gap and across one coil.',
    ...liveSteps.slice(1),
    'Feed a low field, read the gap and the coil. Field off, stop, lock out.',
    'Only below the limit, and only dead, close the link. Then the next gap.',
  ],
  fields: [
    volts({ id: 'gap', name: 'Across the gap', needed: true }),
    volts({
      id: 'coil',
      name: 'Across one coil at the same time',
      needed: true,
      least: 0.01,
      condition: true,
    }),
  ],
  bands: [
    { id: 'close', name: 'May be closed, dead', verdict: 'pass' },
    { id: 'stop', name: 'Must not be closed', verdict: 'fail' },
  ],
  weigh(taken, limits) {
    const most = limits('gap-volts')
    const gap = taken.need('gap')
    const coil = taken.need('coil')
    const share = percentOf(gap, coil)
    const band = stepOf(share, [{ below: most.value, is: 'close' }], 'stop')
    return {
      band,
      says: `The gap shows ${sayFigure(share, '%', most.value)} of one coil; it must be below ${most.value} %.`,
      worked: [{ name: 'Gap over one coil', value: share, unit: '%' }],
      limits: [most],
      next:
        band === 'close'
          ? 'Stop, lock out, prove dead, close this link, and measure the next gap.'
          : 'Do not close it. Twice a coil is a half turned round, 1.7 times another phase: go back to the leads, dead.',
    }
  },
})
