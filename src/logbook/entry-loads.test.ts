import { expect, test } from 'vitest'
import { trialEntry } from '../../test/trial-log.js'
import { parseEntry } from './entry.js'
import type { Body, Kind } from './kinds.js'

function codes<K extends Kind>(kind: K, body: Body<K>) {
  const parsed = parseEntry(trialEntry(1, kind, body))
  return parsed.ok ? [] : parsed.problems.map(({ code, path }) => `${code} ${path}`)
}

test('a load, a rule of the house and an offered set may be told piece by piece, and taken away', () => {
  expect(codes('load', { id: 'oven', is: 'oven' })).toEqual([])
  expect(codes('load', { id: 'oven', removed: true, remark: 'sold' })).toEqual([])
  expect(codes('house-rule', { id: 'baking', loads: ['oven', 'heater'] })).toEqual([])
  expect(codes('candidate', { id: 'smaller', ratingKw: 5 })).toEqual([])
  expect(codes('habits', { days: { warm: 40 } })).toEqual([])
})

test('what does not hang together is told', () => {
  expect(codes('load', { id: 'oven', removed: true, runW: 2000 })).toEqual(['removed-but-told body.runW'])
  expect(codes('load', { id: 'pump', codeLetter: 'K' })).toEqual(['missing body.horsepower'])
  expect(codes('load', { id: 'pump', codeLetter: 'K', horsepower: 1, lockedRotorA: 40 })).toEqual([
    'told-twice body.codeLetter',
  ])
  expect(codes('house-rule', { id: 'baking' })).toEqual(['missing body.loads'])
  expect(codes('house-rule', { id: 'baking', loads: ['oven', 'oven'] })).toEqual(['named-twice body.loads'])
  expect(codes('house-rule', { id: 'baking', loads: ['oven', 'heater'], atMost: 2 })).toEqual([
    'says-nothing body.atMost',
  ])
  expect(codes('space', {})).toEqual(['says-nothing body'])
  expect(codes('candidate', { id: 'smaller' })).toEqual(['says-nothing body'])
})
