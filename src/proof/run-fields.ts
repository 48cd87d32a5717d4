/**
 * What every test of a running set begins with.
 *
 * @module
 */

import { hertz, volts } from './fields.js'

export const runSteps = [
  'Stopped and locked out: clips on the lines at the terminals of the set, covers on.',
  'Nobody in the water; somebody at the stop.',
  'Stand clear, both hands away, then start.',
] as const

export const rated = volts({
  id: 'rated',
  name: 'Rated volts',
  needed: true,
  condition: true,
  least: 12,
  of: 'volts',
})
export const ratedHertz = hertz({
  id: 'rated-hertz',
  name: 'Rated frequency',
  needed: true,
  condition: true,
  least: 40,
  most: 70,
  of: 'hertz',
})
