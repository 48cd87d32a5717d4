/**
 * What a test usually gives, filled in where nothing is typed yet.
 *
 * @module
 */

import { spokenUnit } from '../../units/spoken.js'
import { usualReadings } from '../words/entry/units.js'
import { rowsIn, type Values } from './values.js'

/** The form after another test was chosen: names and units of what it usually gives, unless a value is typed already. `units`: those the boat chose. */
export function withUsualReading(
  before: Values,
  after: Values,
  units: readonly (string | undefined)[] = [],
): Values {
  const { test } = after
  if (test === undefined || test === before.test) return after
  const typed = ['values', 'conditions'].some((key) =>
    rowsIn(after, key).some((row) => after[`${key}.${row}.value`]),
  )
  const usual = usualReadings[test]
  if (typed) return after
  const rest = Object.entries(after).filter(([key]) => !/^(values|conditions)[.#]/.test(key))
  if (usual === undefined) return Object.fromEntries(rest)
  const row = (key: string, at: number, [name, unit]: readonly [string, string]) => ({
    [`${key}.${at}.name`]: name,
    [`${key}.${at}.unit`]: spokenUnit(unit, units),
  })
  return Object.assign(
    Object.fromEntries(rest),
    row('values', 0, usual.value),
    ...usual.conditions.map((condition, at) => row('conditions', at, condition)),
  ) as Values
}

/** The form without conditions that were filled in beforehand and that nobody gave a value. */
export function withoutUntouched(values: Values): Values {
  const usual = usualReadings[values.test ?? '']?.conditions ?? []
  const untouched = rowsIn(values, 'conditions').filter((row) => {
    const name = values[`conditions.${row}.name`]
    return !values[`conditions.${row}.value`] && usual.some(([known]) => known === name)
  })
  const gone = untouched.map((row) => `conditions.${row}.`)
  return Object.fromEntries(
    Object.entries(values).filter(([key]) => !gone.some((start) => key.startsWith(start))),
  )
}
