/**
 * What is done before any way in is opened: dead, and neither sea nor fuel behind what is opened. Practice.
 *
 * @module
 */

import type { WayStep } from './apart-ways.js'

/** A step for the whole job, before any way in is opened. */
export interface JobStep extends WayStep {
  /** Ways in that ask for it, beside its parts; left out: every job does. */
  readonly forWays?: readonly string[]
}

/** Before anything: nothing can start, turn or be live; no sea and no fuel behind what is opened. */
export const jobSteps: readonly [JobStep, ...JobStep[]] = [
  {
    id: 'made-dead',
    what: 'Make it dead: start off and tagged, remote start off, battery isolated, shore unplugged, inverter off; then try the start',
    pictures: [
      'The set as it stands, from every side that can be reached',
      'The tag on the start, and the battery switch off',
    ],
    lines: ['unexpected-start', 'fuel-and-fire'],
  },
  {
    id: 'seacock-shut',
    what: 'Shut the seacock and tag it; open the strainer and let the sea-water side run empty into a bucket',
    pictures: ['The seacock shut, with its tag'],
    lines: ['flooding'],
    forWays: ['sea-water-side', 'exchanger-side', 'exhaust-side', 'set-out'],
    forParts: ['anode', 'sea-pump-impeller', 'sea-strainer', 'siphon-break', 'water-lift'],
  },
  {
    id: 'fuel-shut',
    what: 'Shut the fuel at the tank; a tray and rags beneath, no flame, no smoking',
    pictures: ['Fuel cock shut'],
    forWays: ['fuel-side', 'set-out'],
    forParts: ['fuel-filters', 'injectors'],
  },
]
