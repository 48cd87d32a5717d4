import { expect, test } from 'vitest'
import type { Measured } from '../register/register-types.js'
import { lowInsulation } from './alternatives-of.js'

function reading(part: string, day: number, mohm: number): Measured {
  return {
    entry: `${part}-${day}`,
    day,
    test: 'insulation-test',
    part,
    values: [{ name: 'winding-to-frame', value: mohm, unit: 'Mohm' }],
    conditions: [{ name: 'winding', value: 18, unit: 'C' }],
  }
}

test('a wet winding stops the set, whatever another winding reads after it', () => {
  const [stop, ...more] = lowInsulation([
    reading('stator-winding', 10, 1.8),
    reading('rotor-winding', 11, 46),
  ])
  expect(more).toEqual([])
  expect(stop?.parts).toEqual(['stator-winding'])
  expect(stop?.why).toMatch(/^Do not energise the set: stator-winding reads 0\.39 MΩ at 40 °C/)
})

test('the stop closes with a later good reading of the same winding', () => {
  expect(lowInsulation([reading('stator-winding', 10, 1.8), reading('stator-winding', 30, 80)])).toEqual([])
})
