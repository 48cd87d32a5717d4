/**
 * Tests before the set is left alone: carbon monoxide, protections, and another look at joints after the first hours.
 *
 * @module
 */

import { choice, hours, parts, yesNo } from './fields.js'
import { again, proofTest, stepOf } from './judging.js'
import { sayFigure } from './say-figure.js'
import type { ProofTest } from './test-type.js'

export const monoxideTest: ProofTest = proofTest({
  id: 'carbon-monoxide',
  name: 'Carbon monoxide where people are, set loaded',
  purpose: 'Whether exhaust gets to people aboard, alongside or in the water.',
  danger: 'turning',
  dangers: ['carbon-monoxide'],
  instrument: 'Carbon monoxide meter, an alarm on the person',
  steps: [
    'Doors and hatches as when people sleep. Nobody asleep aboard; nobody in the water at the outlet.',
    'Start, load it, and read in the engine space from the door, then in every cabin, for 15 min.',
    'At 35 ppm everybody goes out into the air, and the set is stopped from outside.',
  ],
  fields: [
    parts({ id: 'highest', name: 'Highest where people are', needed: true }),
    yesNo({ id: 'leak', name: 'Does any joint of the exhaust leak gas inside the boat?', needed: true }),
    yesNo({ id: 'unwell', name: 'Does anybody feel unwell?', needed: true }),
  ],
  bands: [
    { id: 'clean', name: 'Clean', verdict: 'pass' },
    { id: 'some', name: 'Some: not with people aboard', verdict: 'fail' },
    { id: 'out', name: 'Everybody out', verdict: 'fail' },
  ],
  weigh(taken, limits) {
    const [clean, out, never] = [limits('monoxide-clean'), limits('monoxide-out'), limits('monoxide-never')]
    const highest = taken.need('highest')
    const band =
      taken.choice('unwell') === 'yes' || taken.choice('leak') === 'yes'
        ? 'out'
        : stepOf(
            highest,
            [
              { below: clean.value, is: 'clean' },
              { below: out.value, is: 'some' },
            ],
            'out',
          )
    return {
      band,
      says: {
        clean: `${sayFigure(highest, 'ppm', clean.value)} with the set loaded; below ${clean.value} ppm is wanted.`,
        some: `${sayFigure(highest, 'ppm', clean.value)}; below ${clean.value} ppm is wanted. No run with people aboard until the leak is mended.`,
        out: `Everybody out into fresh air, then stop the set from outside. Warn swimmers and boats alongside.${highest > never.value ? ` Above ${never.value} ppm nobody goes back in for anything, until it is aired from outside.` : ''}`,
      }[band],
      limits: [clean, out, never],
      next:
        band === 'clean'
          ? 'An alarm in every sleeping space all the same.'
          : 'Any sign in a person: medical help first, machine later. Then every joint from manifold to outlet, and this test again.',
    }
  },
})

const trips = {
  oil: 'Oil pressure',
  coolant: 'Coolant temperature',
  exhaust: 'Exhaust temperature or sea-water flow',
  stop: 'Stop by hand at the engine',
} as const

export const shutdownTest: ProofTest = proofTest({
  id: 'shutdown-test',
  name: 'Protections made to act',
  purpose: 'Whether it stops by itself before it is left alone.',
  danger: 'turning',
  dangers: ['lost-protection', 'injury', 'will-not-stop'],
  instrument: 'The wiring plan; a jumper that simulates a sender, never one that bypasses it',
  steps: [
    'Guards on, second true gauge fitted. Never run with a switch bypassed.',
    'Simulate each sender in its place, one by one; the engine must stop. Take the jumper out at once.',
    'Stop it by hand at the engine too.',
  ],
  fields: Object.entries(trips).map(([id, name]) =>
    choice({
      id,
      name,
      needed: true,
      of: { stops: 'it stops', fails: 'it does not', 'not-fitted': 'not fitted' },
    }),
  ),
  bands: [
    { id: 'fails', name: 'One does not act', verdict: 'fail' },
    { id: 'acts', name: 'All that are fitted act', verdict: 'pass' },
  ],
  weigh(taken) {
    const failing = Object.entries(trips).filter(([id]) => taken.choice(id) === 'fails')
    const missing = Object.entries(trips).filter(([id]) => taken.choice(id) === 'not-fitted')
    const band = failing.length > 0 || missing.some(([id]) => id === 'stop') ? 'fails' : 'acts'
    const names = (of: typeof failing) => of.map(([, name]) => name.toLowerCase()).join(', ')
    return {
      band,
      says: `${failing.length > 0 ? `Does not act: ${names(failing)}. ` : ''}${missing.length > 0 ? `Not fitted: ${names(missing)}. ` : ''}${band === 'acts' ? 'What is fitted stops it.' : 'Do not leave it alone.'}`,
      limits: [],
      next:
        band === 'acts'
          ? missing.length > 0
            ? 'What is not fitted cannot save it: somebody watches the gauges.'
            : 'Once a year again.'
          : 'Sender, wiring, relay, solenoid, in this order.',
    }
  },
})

/** Another look at joints and leaks so many hours after the work. */
function recheckTest(of: {
  readonly id: string
  readonly name: string
  readonly after: string
  readonly afterHours: string
}): ProofTest {
  return proofTest({
    id: of.id,
    name: of.name,
    purpose: 'Joints settle and seals weep in the first hours: now is when it costs nothing.',
    danger: 'locked out',
    dangers: ['scald', 'shock'],
    instrument: 'Torque wrench, mirror, torch, dry paper',
    steps: [
      `After ${of.afterHours}: stop, lock out, let it cool, prove dead.`,
      'Every joint that was undone: torque by the book, links and lugs among them; mark it.',
      'Dry paper under every seal, hose and pipe that was touched.',
    ],
    fields: [
      hours({ id: 'run', name: 'Hours run since the work', needed: true, condition: true }),
      choice({
        id: 'leaks',
        name: 'Leaks',
        needed: true,
        of: { none: 'none', seeps: 'it seeps', drops: 'drops form', falls: 'drops fall' },
      }),
      choice({
        id: 'joints',
        name: 'Joints',
        needed: true,
        of: {
          held: 'all held their torque',
          moved: 'some moved and were tightened',
          burnt: 'one is burnt or discoloured',
        },
      }),
    ],
    bands: [
      { id: 'leak', name: 'Leaks', verdict: 'fail' },
      { id: 'burnt', name: 'A joint is burnt', verdict: 'fail' },
      { id: 'moved', name: 'Tightened: look once more', verdict: 'pass' },
      { id: 'held', name: 'All held', verdict: 'pass' },
    ],
    doubts(taken, limits) {
      const least = limits(of.after)
      const run = taken.need('run')
      return run < least.value
        ? [again('too-soon', 'run', `${run} h: this look belongs after ${least.value} h or more.`)]
        : []
    },
    weigh(taken, limits) {
      const leaks = taken.choice('leaks')
      const joints = taken.choice('joints')
      const band =
        leaks === 'drops' || leaks === 'falls'
          ? 'leak'
          : joints === 'burnt'
            ? 'burnt'
            : joints === 'moved'
              ? 'moved'
              : 'held'
      return {
        band,
        says: {
          leak: 'It leaks: mend it before it runs again.',
          burnt: 'A joint is burnt: renew lug and stud, and look for why.',
          moved: 'Joints had settled and are tight again.',
          held: 'No leak that forms drops, every joint held.',
        }[band],
        limits: [limits(of.after)],
        next:
          band === 'moved'
            ? 'Look at those joints once more after as many hours.'
            : band === 'held'
              ? 'Nothing more to do.'
              : 'Then this look again.',
      }
    },
  })
}

export const firstRecheck: ProofTest = recheckTest({
  id: 'recheck-first',
  name: 'Joints and leaks after the first hour',
  after: 'recheck-first',
  afterHours: 'the first hour',
})
export const secondRecheck: ProofTest = recheckTest({
  id: 'recheck-second',
  name: 'Joints and leaks after ten hours',
  after: 'recheck-second',
  afterHours: 'ten hours',
})
