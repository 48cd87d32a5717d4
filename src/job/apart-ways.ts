/**
 * What is undone to open each way in: the steps in their order, what to picture before each, what to label and to bag, and the
 * stop lines that are answered first.
 *
 * Practice throughout. No torque stands here: it is the set's own manual that tells it.
 *
 * @module
 */

import type { Deed } from '../register/register-types.js'

/** One thing undone. */
export interface WayStep {
  readonly id: string
  readonly what: string
  /** What to picture before anything is touched, a picture each. */
  readonly pictures: readonly string[]
  /** Leads come off: each is labelled first. */
  readonly leads?: true
  /** Leads are joined there: how, is written down first. */
  readonly joined?: true
  /** What to write on the bag of its fasteners. */
  readonly bag?: string
  /** Stop lines of the fault model, beside those of the way. */
  readonly lines?: readonly string[]
  /** Only for jobs with one of these parts. */
  readonly forParts?: readonly string[]
  /** Left out where this way is opened too, since it is a step of that. */
  readonly unless?: string
}

export interface Way {
  /** A way in of the catalogue. */
  readonly access: string
  /** Stop lines that are answered before each of its steps. */
  readonly lines: readonly string[]
  readonly steps: readonly WayStep[]
}

const cooling = [
  'coolant-pump',
  'thermostat',
  'thermostat-housing',
  'coolant-hoses',
  'coolant',
  'header-tank',
]
const headWork = ['head-and-gasket', 'valve-gear', 'pistons-and-bores']

/** In the order in which they are opened, where the catalogue leaves it open. */
export const ways: readonly Way[] = [
  {
    access: 'panels-off',
    lines: [],
    steps: [
      {
        id: 'panels-off',
        what: 'Take the panels of the sound case off; number each on its inside',
        pictures: ['Each panel with its catches and seals, before it comes off'],
        bag: 'case panels',
      },
    ],
  },
  {
    access: 'starting-side',
    lines: ['battery-gas'],
    steps: [
      {
        id: 'battery-off',
        what: 'Charger off; then the negative lead off the start battery first, the positive after it, and both ends covered',
        pictures: ['Battery and both leads, marks readable'],
        leads: true,
        bag: 'battery clamps',
      },
      {
        id: 'starter-leads-off',
        what: 'Take the leads off the starter and its solenoid',
        pictures: ['Every lead on the starter, with its stud'],
        leads: true,
        bag: 'starter nuts',
        forParts: ['starter', 'battery-cables', 'engine-wiring'],
      },
    ],
  },
  {
    access: 'boat-side',
    lines: [],
    steps: [
      {
        id: 'boat-side-as-found',
        what: 'Follow the run on the boat’s side and mark it; hull fittings below the waterline come off ashore only',
        pictures: ['The run as found, both ends', 'Which way each handle stands'],
        bag: 'boat side',
      },
    ],
  },
  {
    access: 'terminal-box',
    lines: ['stored-charge'],
    steps: [
      {
        id: 'box-open',
        what: 'Open the terminal box and prove it dead at every terminal',
        pictures: [
          'The whole box as found',
          'Every row of terminals close by, marks readable',
          'Link plates and jumpers',
        ],
        bag: 'box cover',
      },
      {
        id: 'box-leads-off',
        what: 'Label every lead at its terminal; only then take the leads off that are in the way',
        pictures: ['Every label on its lead, while it is still on its terminal'],
        leads: true,
        joined: true,
        bag: 'terminal nuts and link plates',
      },
    ],
  },
  {
    access: 'sea-water-side',
    lines: ['flooding'],
    steps: [
      {
        id: 'sea-water-hoses-off',
        what: 'Take the hoses off the sea-water pump; mark which one comes from the sea',
        pictures: ['Both hoses on the pump with their clips', 'Cover of the pump and the way it turns'],
        bag: 'sea-water clips',
      },
    ],
  },
  {
    access: 'exchanger-side',
    lines: ['hot-coolant', 'flooding'],
    steps: [
      {
        id: 'coolant-drained',
        what: 'Cold: drain the coolant into a can, and note how much came',
        pictures: ['Drain taps, and the can with its level'],
      },
      {
        id: 'exchanger-hoses-off',
        what: 'Take the hoses off the exchanger; mark each end and its place',
        pictures: ['Each hose end with its clip, both sides'],
        bag: 'exchanger clips',
      },
    ],
  },
  {
    access: 'fuel-side',
    lines: [],
    steps: [
      {
        id: 'fuel-pipes-off',
        what: 'Number the fuel pipes; take off those in the way, and cap both ends of each at once',
        pictures: [
          'Every pipe at pump, filter and injectors, numbered',
          'Timing marks of the injection pump, if it comes off',
        ],
        bag: 'fuel unions and washers',
      },
    ],
  },
  {
    access: 'exhaust-side',
    lines: [],
    steps: [
      {
        id: 'exhaust-hose-off',
        what: 'Take the exhaust hose off the elbow, and the injection hose with it',
        pictures: [
          'Hose on the elbow: clips and how far it is pushed on',
          'How the hose falls to the silencer',
        ],
        bag: 'exhaust clips',
      },
      {
        id: 'elbow-off',
        what: 'Take the elbow off; soak the studs first, and stop before one shears',
        pictures: ['Elbow from both sides', 'Joint face, gasket and studs as they are when it is off'],
        bag: 'exhaust elbow',
      },
    ],
  },
  {
    access: 'front-end',
    lines: [],
    steps: [
      {
        id: 'front-coolant-drained',
        what: 'Cold: drain the coolant into a can, and note how much came',
        pictures: ['Drain tap, and the can with its level'],
        lines: ['hot-coolant'],
        forParts: cooling,
        unless: 'exchanger-side',
      },
      {
        id: 'guard-off',
        what: 'Take the belt guard off',
        pictures: ['Guard and its bolts'],
        bag: 'belt guard',
      },
      {
        id: 'belt-off',
        what: 'Mark the way the belt runs, measure how far it gives, slacken it and take it off',
        pictures: ['The belt round every pulley', 'Pulleys edge on, with a straightedge along them'],
        bag: 'tensioner',
      },
    ],
  },
  {
    access: 'top-end',
    lines: ['hot-coolant'],
    steps: [
      {
        id: 'intake-off',
        what: 'Take the intake off, and cover the ports',
        pictures: ['Intake with breather and its hoses'],
        bag: 'intake',
      },
      {
        id: 'rocker-cover-off',
        what: 'Take the rocker cover off',
        pictures: ['Cover and gasket', 'Rockers as found, with the timing marks where they stand'],
        bag: 'rocker cover',
      },
      {
        id: 'injectors-out',
        what: 'Number the injectors and draw them; cap every opening, and count the washers',
        pictures: ['Each injector with its pipe and clamp'],
        bag: 'injector clamps and washers',
        forParts: [...headWork, 'injectors'],
      },
      {
        id: 'head-off',
        what: 'Slacken the head nuts a little at a time, in the order of the manual; lift the head straight up with gear',
        pictures: ['Nuts and studs, numbered on the casting', 'Gasket as it lies, both sides'],
        bag: 'head nuts, in their order',
        lines: ['lifting'],
        forParts: headWork,
      },
    ],
  },
  {
    access: 'set-out',
    lines: ['lifting', 'flooding', 'stored-charge'],
    steps: [
      {
        id: 'set-water-off',
        what: 'Take the sea-water hose and the exhaust hose off the set, and plug both',
        pictures: ['Hose ends on the set with their clips'],
        bag: 'hose clips of the set',
      },
      {
        id: 'set-fuel-off',
        what: 'Take feed and return of the fuel off, cap all four ends and mark which is which',
        pictures: ['Feed and return on the set, marked'],
        bag: 'fuel unions of the set',
      },
      {
        id: 'set-cables-off',
        what: 'Prove the output dead; label its cables, the battery leads, the bonding lead and the remote plug, then take them off',
        pictures: ['Every cable in its place, labels readable', 'Bonding lead and its stud'],
        leads: true,
        joined: true,
        bag: 'cable ends of the set',
      },
      {
        id: 'set-feet-off',
        what: 'Mark each foot on its bed; undo the feet, and bag the packing pieces foot by foot',
        pictures: ['Each foot with its packing pieces', 'Marks on the bed'],
        bag: 'feet, packing pieces by foot',
      },
      {
        id: 'set-lifted',
        what: 'Lift or slide the set out, nobody below and no hand between',
        pictures: ['Sling on its points before the weight comes on', 'The bed when it is empty'],
      },
    ],
  },
  {
    access: 'alternator-end',
    lines: ['stored-charge'],
    steps: [
      {
        id: 'end-cover-off',
        what: 'Mark the end cover against the frame and take it off',
        pictures: ['Cover with its marks, from the end', 'What is behind it: exciter, diodes, fan'],
        bag: 'end cover',
      },
      {
        id: 'exciter-leads-off',
        what: 'Label the leads of the exciter and of the diodes, then take them off',
        pictures: ['Every lead and its place, labels readable'],
        leads: true,
        joined: true,
        bag: 'exciter and diodes',
      },
    ],
  },
  {
    access: 'alternator-apart',
    lines: ['stored-charge', 'lifting'],
    steps: [
      {
        id: 'output-leads-off',
        what: 'Label the output leads and those of the regulator at both ends; then take them off',
        pictures: [
          'Terminal block with all leads and link plates',
          'Cable glands and which lead goes through which',
        ],
        leads: true,
        joined: true,
        bag: 'output terminals and link plates',
      },
      {
        id: 'engine-propped',
        what: 'Prop the engine under its flywheel housing, and take the weight of the alternator on gear: only then a bolt',
        pictures: ['The prop, and the sling on the alternator'],
      },
      {
        id: 'coupling-undone',
        what: 'Mark drive plate against flywheel; undo its bolts, turning by hand',
        pictures: ['Marks on plate and flywheel', 'Drive plate: cracks, rust at the bolts'],
        bag: 'drive plate',
      },
      {
        id: 'alternator-off',
        what: 'Undo the flange and draw the alternator off level, on gear',
        pictures: ['Flange with its marks', 'Feet and packing pieces, foot by foot'],
        bag: 'flange and feet, packing pieces by foot',
      },
      {
        id: 'rotor-drawn',
        what: 'Draw the rotor straight, its weight on gear: it must touch neither the stator nor its own leads',
        pictures: ['Rotor in its place, both ends', 'Bearings and their seats'],
        bag: 'rotor and bearings',
        forParts: ['rotor-winding', 'stator-winding', 'exciter', 'drive-end-bearing', 'alternator-fan'],
      },
    ],
  },
  {
    access: 'sump-off',
    lines: ['lifting'],
    steps: [
      {
        id: 'oil-drained',
        what: 'Drain the oil into a can; look at what is on the plug',
        pictures: ['Plug and what is on it'],
      },
      {
        id: 'sump-off',
        what: 'With the engine held safely on its side or hung, take the sump off',
        pictures: ['Sump joint', 'What lies in the sump'],
        bag: 'sump bolts, long ones marked',
      },
    ],
  },
]

/** What is done to a part of the job once the way to it is open. */
export function partStep(part: string, name: string, did: Deed): WayStep {
  const pictures = ['As it sits, before a bolt is turned', 'Its marks, numbers and joints']
  const id = `part-${part}`.slice(0, 60).replace(/-$/, '')
  const lines = cooling.includes(part) ? ['hot-coolant'] : []
  return comesOut.includes(did)
    ? {
        id,
        what: `Take out: ${name}`,
        pictures: [...pictures, 'What was behind it'],
        bag: name.toLowerCase().slice(0, 60),
        lines,
      }
    : { id, what: `As found, before anything of it is moved: ${name}`, pictures, lines }
}

const comesOut: readonly Deed[] = ['renewed', 'reconditioned', 'removed']
