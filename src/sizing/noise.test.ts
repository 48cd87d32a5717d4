import { expect, test } from 'vitest'
import { levelAt, levelTogether, levelWithout } from './noise.js'

// Powers added and taken apart, and a free field; held: derived. Within 0.01 dB.
test('two levels together, one without what is there, and one farther away', () => {
  expect(levelTogether([68, 62])).toBeCloseTo(68.97, 2)
  expect(levelWithout({ together: 70, background: 65 })).toBeCloseTo(68.35, 2)
  expect(levelWithout({ together: 60, background: 60 })).toBeUndefined()
  expect(levelAt({ decibel: 68, metres: 1 }, 7)).toBeCloseTo(51.1, 2)
})
