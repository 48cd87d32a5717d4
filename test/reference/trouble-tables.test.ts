import { expect, test } from 'vitest'
import { faultTables, posteriorOf } from '../../src/faults/infer.js'
import { priorsOf, weightsOf } from '../../src/faults/priors.js'
import { nothingKnown, shippedFaults } from '../fault-model.js'
import { troublePairs } from './trouble-tables.js'

const { model } = shippedFaults()
const tables = faultTables(model)
/** The manuals are of brushless sets with a regulator and a governor of weights. */
const kind = { excitation: 'brushless-regulator', governor: 'mechanical' }
const weights = weightsOf(priorsOf(model, { ...nothingKnown, kind }))

function placeOf(trouble: string, cause: string): number {
  const { chances } = posteriorOf(tables, weights, { symptoms: { [trouble]: 'present' }, outcomes: {} })
  const own = chances[tables.faults.indexOf(cause)]!
  return 1 + chances.filter((chance) => chance > own).length
}

/** What the model ranks lower, as it came out when it was first asked. The place that each had then. */
const exceptions: Readonly<Record<string, number>> = {
  'a-few-volts: diode-open': 6,
  'a-few-volts: rotor-open': 7,
  'cranks-no-fire: lift-pump-weak': 7,
  'speed-drops-on-load: injection-pump-worn': 14,
  'hot-on-load: belt-slack': 6,
  'hot-on-load: thermostat-stuck': 8,
  'hot-on-load: overload': 10,
  'volts-low-unloaded: speed-set-wrong': 6,
  'flicker: governor-sticks': 9,
  'breaker-trips: stator-to-earth': 7,
  'stops-when-hot: heat-switch-false': 10,
}

test('the manuals’ causes stand among the first five for their trouble alone, at least 0.7 of them', () => {
  const missed = troublePairs.flatMap(({ trouble, cause }) => {
    const place = placeOf(trouble, cause)
    return place > 5 ? [[`${trouble}: ${cause}`, place] as const] : []
  })
  expect(troublePairs).toHaveLength(91)
  expect(1 - missed.length / troublePairs.length).toBeGreaterThanOrEqual(0.7)
  expect(Object.fromEntries(missed)).toEqual(exceptions)
})

test('the list names each pair once, and only what the model has', () => {
  const names = troublePairs.map(({ trouble, cause }) => `${trouble}: ${cause}`)
  expect(new Set(names).size).toBe(names.length)
  const known = new Set([...tables.faults, ...tables.symptoms.keys()])
  for (const { trouble, cause } of troublePairs) {
    expect(known, trouble).toContain(trouble)
    expect(known, cause).toContain(cause)
  }
})
