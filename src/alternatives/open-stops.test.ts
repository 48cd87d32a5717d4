import { expect, test } from 'vitest'
import { shippedCatalogue } from '../../test/shipped-limits.js'
import { lifeModelSchema } from '../forecast/life-model.js'
import type { Measured, SetRegister } from '../register/register-types.js'
import { failedTestsIn, lowInsulation } from './open-stops.js'

const model = lifeModelSchema.parse({
  type: 'gensettle/life-model',
  version: 1,
  horizonYears: 1,
  parts: [
    {
      id: 'stator-winding',
      name: 'Stator winding, where the power is made',
      modes: [{ id: 'damp', clock: 'years', shape: 2, scale: 30 }],
    },
  ],
})

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
  const [stop, ...more] = lowInsulation(
    [reading('stator-winding', 10, 1.8), reading('rotor-winding', 11, 46)],
    model,
  )
  expect(more).toEqual([])
  expect(stop?.parts).toEqual(['stator-winding'])
  expect(stop?.why).toMatch(/^Do not energise the set: the stator winding reads 0\.39\u00a0MΩ at 40\u00a0°C/)
})

test('the stop closes with a later good reading of the same winding', () => {
  expect(
    lowInsulation([reading('stator-winding', 10, 1.8), reading('stator-winding', 30, 80)], model),
  ).toEqual([])
})

test('without a temperature the reading itself must reach the limit', () => {
  const bare = (mohm: number) => ({ ...reading('stator-winding', 10, mohm), conditions: [] })
  expect(lowInsulation([bare(0.6)], model)[0]?.why).toMatch(/reads 0\.60\u00a0MΩ/)
  expect(lowInsulation([bare(5)], model)).toEqual([])
})

test('a winding colder than the law reaches is judged at its coldest', () => {
  const cold = {
    ...reading('stator-winding', 10, 1.5),
    conditions: [{ name: 'winding', value: 4, unit: 'C' as const }],
  }
  expect(lowInsulation([cold], model)).toHaveLength(1)
})

const bond = (day: number, ohm: number): Measured => ({
  entry: `bond-${day}`,
  day,
  test: 'bond-test',
  values: [{ name: 'bond', value: ohm, unit: 'ohm' }],
  conditions: [{ name: 'leads', value: 0.1, unit: 'ohm' }],
  answers: [{ name: 'what', is: 'frame' }],
})

const failed = (...readings: readonly Measured[]) =>
  failedTestsIn(
    { readings, setFacts: { has: [], hasNot: [] } } as unknown as SetRegister,
    shippedCatalogue,
  ).map(({ why, test }) => [test, why.split(':')[0]])

test('a failed test of a stop line holds it open until its next good reading', () => {
  expect(failed(bond(10, 3))).toEqual([['bond-test', 'No safe path to earth']])
  expect(failed(bond(10, 3), bond(20, 0.15))).toEqual([])
  expect(failed(bond(20, 0.15), bond(10, 3))).toEqual([])
})

test('insulation is told winding by winding, not once more', () => {
  expect(failed(reading('stator-winding', 10, 0.3))).toEqual([])
})
