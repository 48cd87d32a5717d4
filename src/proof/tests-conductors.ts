/**
 * Conductors and breakers, after links or set have changed.
 *
 * @module
 */

import { allowableAmps, dropVolts, fullLoadAmps, gauges, insulations } from './conductor.js'
import { amps, choice, counts, kilovoltAmps, metres, squares, volts, yesNo } from './fields.js'
import { again, type Outcome, percentOf, proofTest, stepOf, type Taken } from './judging.js'
import type { Limit, Limits } from './limits.js'
import { sayFigure } from './say-figure.js'
import type { ProofTest } from './test-type.js'

const phases = choice({
  id: 'phases',
  name: 'Phases',
  needed: true,
  of: { one: 'one, or both legs of one', three: 'three' },
})
const ratedVolts = volts({
  id: 'volts',
  name: 'Volts between the lines',
  needed: true,
  condition: true,
  least: 12,
  of: 'volts',
})

export const breakerTest: ProofTest = proofTest({
  id: 'breaker-of-set',
  name: 'Breaker of the set against its full load',
  purpose: 'Whether the breaker still fits: halves joined in parallel double the current.',
  danger: 'locked out',
  dangers: ['fire', 'shock'],
  instrument: 'The plate of the set and the breaker',
  steps: [
    'Read kVA, volts and phases off the plate, as the set is linked now; for a set linked to one phase the rating of that pattern.',
    'Read the amps off the breaker, and whether it opens every live pole.',
  ],
  fields: [
    kilovoltAmps({ id: 'rating', name: 'Rating as it is linked', needed: true }),
    ratedVolts,
    phases,
    amps({ id: 'breaker', name: 'Breaker', needed: true, least: 1 }),
    yesNo({ id: 'built-for-40', name: 'Is the machine built for 40 °C and stands in an engine space?' }),
    yesNo({ id: 'all-poles', name: 'Does it open every live pole?' }),
  ],
  bands: [
    { id: 'pole', name: 'A live pole is left closed', verdict: 'fail' },
    { id: 'too-big', name: 'Too big for the set', verdict: 'fail' },
    { id: 'right', name: 'Fits', verdict: 'pass' },
    { id: 'small', name: 'Smaller than full load', verdict: 'pass' },
  ],
  weigh(taken, limits) {
    const [most, derate] = [limits('breaker-of-set'), limits('derate-forty')]
    const derated = taken.choice('built-for-40') === 'yes'
    const full =
      fullLoadAmps({
        kVA: taken.need('rating'),
        volts: taken.need('volts'),
        phases: taken.choice('phases') === 'three' ? 3 : 1,
      }) * (derated ? derate.value / 100 : 1)
    const largest = (full * most.value) / 100
    const breaker = taken.need('breaker')
    const band =
      taken.choice('all-poles') === 'no'
        ? 'pole'
        : stepOf(
            breaker,
            [
              { below: full, is: 'small' },
              { upTo: largest, is: 'right' },
            ],
            'too-big',
          )
    return {
      band,
      says: {
        pole: 'It leaves a live pole closed: both poles of 120/240 are guarded, the neutral never alone.',
        'too-big': `${sayFigure(breaker, 'A')} is more than ${most.value} % of the full load of ${sayFigure(full, 'A')}, which is ${sayFigure(largest, 'A')}.`,
        right: `${sayFigure(breaker, 'A')} for a full load of ${sayFigure(full, 'A')}; ${sayFigure(largest, 'A')} at most.`,
        small: `${sayFigure(breaker, 'A')} guards the set and trips below its full load of ${sayFigure(full, 'A')}.`,
      }[band],
      worked: [
        { name: 'Full load', value: full, unit: 'A' },
        { name: 'Largest breaker', value: largest, unit: 'A' },
      ],
      limits: derated ? [most, derate] : [most],
      next:
        band === 'right' || band === 'small'
          ? 'Then the conductors that it guards.'
          : 'A licensed marine electrician fits the right one before it carries load.',
    }
  },
})

export const conductorTest: ProofTest = proofTest({
  id: 'conductor',
  name: 'Conductor, its breaker and its drop of volts',
  purpose: 'Whether the cable from the set carries what it now must, where it lies.',
  danger: 'locked out',
  dangers: ['fire'],
  instrument: 'The print on the cable, a tape',
  steps: [
    'Read gauge and temperature of the insulation off the cable; where nothing can be read, nothing can be told.',
    'Count the wires that lie together and carry current. Measure its length one way.',
  ],
  fields: [
    choice({
      id: 'gauge',
      name: 'Gauge',
      of: Object.fromEntries(gauges.map((gauge) => [`awg-${gauge}`, `${gauge} AWG`])),
    }),
    squares({ id: 'section', name: 'Cross-section, where it is metric', condition: true, least: 0.5 }),
    choice({
      id: 'insulation',
      name: 'Insulation good for',
      of: Object.fromEntries(insulations.map((degrees) => [`c-${degrees}`, `${degrees} °C`])),
    }),
    yesNo({ id: 'engine-space', name: 'Does it pass through the engine space?', needed: true }),
    counts({ id: 'bundled', name: 'Current-carrying wires that lie together', condition: true, most: 200 }),
    amps({ id: 'load', name: 'Full load', needed: true }),
    amps({ id: 'breaker', name: 'Breaker that guards it' }),
    metres({ id: 'length', name: 'Length one way', condition: true }),
    ratedVolts,
    phases,
    yesNo({ id: 'hot', name: 'Reckon the drop for copper at 75 °C?', further: true }),
    choice({
      id: 'circuit',
      name: 'What it feeds',
      help: 'Left out: the main feeder, or what must not fail.',
      further: true,
      of: { main: 'the panel, or what must not fail', other: 'any other circuit' },
    }),
  ],
  bands: [
    { id: 'overloaded', name: 'Carries too much', verdict: 'fail' },
    { id: 'unguarded', name: 'Its breaker lets too much through', verdict: 'fail' },
    { id: 'drop', name: 'Loses too many volts', verdict: 'fail' },
    { id: 'good', name: 'Fits', verdict: 'pass' },
  ],
  doubts(taken) {
    const gauge = taken.choice('gauge')
    if (gauge === undefined && taken.number('section') === undefined) {
      return [again('missing', 'gauge', 'Gauge or cross-section: one of them is wanted.')]
    }
    return gauge !== undefined && taken.choice('insulation') === undefined
      ? [again('missing', 'insulation', 'How hot may its insulation get? Without it no amps can be told.')]
      : []
  },
  weigh: weighConductor,
})

function weighConductor(taken: Taken, limits: Limits): Outcome {
  const gauge = taken.choice('gauge')?.replace('awg-', '')
  const insulation = taken.choice('insulation')?.replace('c-', '')
  const load = taken.need('load')
  const breaker = taken.number('breaker')
  const carries =
    gauge === undefined || insulation === undefined
      ? undefined
      : allowableAmps(
          {
            gauge,
            insulation,
            engineSpace: taken.choice('engine-space') === 'yes',
            bundled: taken.number('bundled') ?? 1,
          },
          limits,
        )
  const ofWire = limits('breaker-of-wire')
  const lost = dropOf(taken, limits, gauge)
  const dropLimit = limits(taken.choice('circuit') === 'other' ? 'wire-drop-most' : 'wire-drop')
  if (carries === undefined && lost === undefined) {
    return {
      says: 'The table of amps knows gauges only, and without a length no drop can be told.',
      limits: [],
      next: 'Take the amps from the standard that the cable is made to, and measure its length.',
    }
  }
  const band =
    carries !== undefined && load > carries.amps
      ? 'overloaded'
      : carries !== undefined && breaker !== undefined && breaker > (carries.amps * ofWire.value) / 100
        ? 'unguarded'
        : lost !== undefined && lost.percent > dropLimit.value
          ? 'drop'
          : carries === undefined
            ? undefined
            : 'good'
  const reads = [
    ...(carries === undefined ? [] : [`it may carry ${sayFigure(carries.amps, 'A', load)} where it lies`]),
    ...(lost === undefined
      ? []
      : [
          `it loses ${sayFigure(lost.percent, '%', dropLimit.value)} of the volts, ${dropLimit.value} % is aimed at`,
        ]),
  ].join('; ')
  const says = `At ${sayFigure(load, 'A')} ${reads}.`
  const all: readonly Limit[] = [
    ...(carries?.limits ?? []),
    ...(breaker === undefined ? [] : [ofWire]),
    ...(lost === undefined ? [] : [dropLimit, ...lost.limits]),
  ]
  const worked = [
    ...(carries === undefined ? [] : [{ name: 'May carry', value: carries.amps, unit: 'A' }]),
    ...(lost === undefined
      ? []
      : [
          { name: 'Drop', value: lost.volts, unit: 'V' },
          { name: 'Drop of the volts', value: lost.percent, unit: '%' },
        ]),
  ]
  if (band === undefined) {
    return {
      says: `${says} What it may carry cannot be told: the table knows gauges only.`,
      worked,
      limits: all,
      next: 'Take the amps from the standard that the cable is made to.',
    }
  }
  return {
    band,
    says:
      band === 'unguarded'
        ? `A breaker of ${sayFigure(breaker ?? 0, 'A')} is more than ${ofWire.value} % of what it carries. ${says}`
        : says,
    worked,
    limits: all,
    next:
      band === 'good'
        ? 'Look at its ends at full load: a hot lug shows what no table does.'
        : 'A thicker cable or a smaller breaker, fitted by a licensed marine electrician.',
  }
}

function dropOf(taken: Taken, limits: Limits, gauge: string | undefined) {
  const metres = taken.number('length')
  const section = taken.number('section')
  const known = ['10', '8', '6', '4', '2']
  if (metres === undefined) return undefined
  const copper = limits('copper-resistance')
  const wire = gauge !== undefined && known.includes(gauge) ? limits(`wire-${gauge}-resistance`) : undefined
  const cold =
    wire !== undefined ? wire.value / 1000 : section !== undefined ? copper.value / section : undefined
  if (cold === undefined) return undefined
  const hot = limits('copper-hot')
  const isHot = taken.choice('hot') === 'yes'
  const volts = dropVolts({
    metres,
    amps: taken.need('load'),
    ohmPerMetre: cold * (isHot ? hot.value : 1),
    phases: taken.choice('phases') === 'three' ? 3 : 1,
  })
  return {
    volts,
    percent: percentOf(volts, taken.need('volts')),
    limits: [wire ?? copper, ...(isHot ? [hot] : [])],
  }
}
