import { expect, test } from 'vitest'
import type { TwoWayMap } from '../../alternatives/two-way-map.js'
import { bordersOf, regionsOf, stepsOf } from './two-way.js'

const axis = { low: 0, high: 10, now: 5 }
const mapOf = (rows: TwoWayMap['rows']): TwoWayMap => ({
  across: { id: 'quote', ...axis },
  down: { id: 'day-without-power', ...axis },
  rows,
})

test('a border that slants is one line, and no step', () => {
  const map = mapOf([
    { down: 0, first: 'mend', changes: [{ at: 4, to: 'leave' }] },
    { down: 5, first: 'mend', changes: [{ at: 6, to: 'leave' }] },
    { down: 10, first: 'mend', changes: [{ at: 7, to: 'leave' }] },
  ])
  expect(bordersOf(map)).toEqual([
    [
      { at: 4, down: 0 },
      { at: 6, down: 5 },
      { at: 7, down: 10 },
    ],
  ])
  expect(stepsOf(map)).toEqual([])
  expect(regionsOf(map)).toEqual([
    { alternative: 'mend', at: 3.5, row: 10 },
    { alternative: 'leave', at: 7, row: 0 },
  ])
})

test('where another alternative is best all across from a row on, a step parts them half way', () => {
  const map = mapOf([
    { down: 0, first: 'leave', changes: [] },
    { down: 5, first: 'leave', changes: [] },
    { down: 10, first: 'replace', changes: [] },
  ])
  expect(bordersOf(map)).toEqual([])
  expect(stepsOf(map)).toEqual([{ from: 0, to: 10, down: 7.5 }])
  expect(regionsOf(map).map(({ alternative, row }) => [alternative, row])).toEqual([
    ['leave', 0],
    ['replace', 10],
  ])
})
