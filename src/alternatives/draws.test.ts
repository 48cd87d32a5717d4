import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { counterOfLife, counterOfUse, drawLimits, purpose, uniformFrom, WHOLE_SET } from './draws.js'

const below = (limit: number) => fc.integer({ min: 0, max: limit - 1 })

test('no two draws share a counter: each can be read back from its two words', () => {
  fc.assert(
    fc.property(
      below(drawLimits.modes + 1),
      below(drawLimits.lives),
      below(drawLimits.sets),
      below(drawLimits.purposes),
      below(drawLimits.uses),
      (mode, life, set, forWhat, use) => {
        const first = counterOfLife(mode, life) >>> 0
        const second = counterOfUse(set, forWhat, use) >>> 0
        expect([first >>> 19, first & 0x7ffff]).toEqual([mode, life])
        expect([second >>> 24, (second >>> 18) & 63, second & 0x3ffff]).toEqual([set, forWhat, use])
      },
    ),
  )
})

test('every purpose has its own number, within its bits', () => {
  const numbers = Object.values(purpose)
  expect(new Set(numbers).size).toBe(numbers.length)
  expect(Math.max(...numbers)).toBeLessThan(drawLimits.purposes)
  expect(WHOLE_SET).toBe(drawLimits.modes)
})

test('uniform draws are never 0 or 1', () => {
  expect(uniformFrom(0)).toBeGreaterThan(0)
  expect(uniformFrom(2 ** 32 - 1)).toBeLessThan(1)
})
