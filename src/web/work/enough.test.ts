import { expect, test } from 'vitest'
import type { Report } from '../../alternatives/report.js'
import { isSettled } from './enough.js'

const report = (verdict: Partial<Report['verdict']>, more: Partial<Report> = {}): Report => ({
  histories: 5_000,
  walkAway: null,
  ...more,
  verdict: {
    best: 'mend',
    next: 'leave',
    saving: 500,
    savingError: 50,
    chanceBest: 0.97,
    clearness: 'clear',
    ...verdict,
  },
})

test('a clear saving of more than four errors settles it, a smaller one does not', () => {
  expect(isSettled(report({}))).toBe(true)
  expect(isSettled(report({ savingError: 130 }))).toBe(false)
})

test('a chance of being best near to where the words change does not settle it', () => {
  expect(isSettled(report({ chanceBest: 0.905 }))).toBe(false)
  expect(isSettled(report({ chanceBest: 0.8, clearness: 'leaning' }))).toBe(true)
  expect(isSettled(report({ chanceBest: 0.705, clearness: 'leaning' }))).toBe(false)
  expect(isSettled(report({ chanceBest: 0.55, clearness: 'too-close' }))).toBe(true)
})

test('the simulation’s own width of the walk-away price must be a tenth of the other', () => {
  const walkAway = {
    price: 3_000,
    findingOut: { low: 2_500, high: 3_500 },
    quote: 2_900,
    otherwise: 'leave',
  }
  expect(isSettled(report({}, { walkAway: { ...walkAway, simulation: { low: 2_960, high: 3_050 } } }))).toBe(
    true,
  )
  expect(isSettled(report({}, { walkAway: { ...walkAway, simulation: { low: 2_900, high: 3_050 } } }))).toBe(
    false,
  )
})
