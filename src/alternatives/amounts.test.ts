import { expect, test } from 'vitest'
import { amountsOf, drawAmount, meanAmount } from './amounts.js'

const words = Array.from({ length: 4096 }, (_, i) => ((i + 0.5) / 4096) * 2 ** 32)

// The table of normals against continuous draws: the mean of a lognormal, and its spread.
test.each([0.1, 0.35, 0.7])(
  'a lognormal of log-sd %f has its mean within 1e-3 and its variance within 2 %%',
  (logSd) => {
    const amounts = amountsOf([{ median: 100, logSd }])
    const drawn = words.map((word) => drawAmount(amounts, 0, word))
    const mean = drawn.reduce((sum, value) => sum + value, 0) / drawn.length
    expect(Math.abs(mean / meanAmount(amounts, 0) - 1)).toBeLessThan(1e-3)
    const square = drawn.reduce((sum, value) => sum + (value - mean) ** 2, 0) / drawn.length
    const exact = meanAmount(amounts, 0) ** 2 * Math.expm1(logSd ** 2)
    expect(Math.abs(square / exact - 1)).toBeLessThan(0.02)
  },
)

test('fixed and exponential amounts keep their means', () => {
  const amounts = amountsOf([7, { exponentialMean: 40 }])
  const mean = (i: number) =>
    words.reduce((sum, word) => sum + drawAmount(amounts, i, word), 0) / words.length
  expect(mean(0)).toBeCloseTo(7, 12)
  expect(mean(1)).toBeCloseTo(40, 1)
})
