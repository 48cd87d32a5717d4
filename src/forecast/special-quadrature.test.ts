import { expect, test } from 'vitest'
import { gaussLegendre, integrate } from './special-quadrature.js'

test.each([8, 16, 20] as const)('%i points integrate every power up to twice that, less one', (points) => {
  const { nodes, weights } = gaussLegendre(points)
  for (let power = 0; power < 2 * points; power++) {
    let sum = 0
    for (let index = 0; index < points; index++) sum += weights[index]! * nodes[index]! ** power
    expect(sum).toBeCloseTo(power % 2 === 0 ? 2 / (power + 1) : 0, 14)
  }
  let beyond = 0
  for (let index = 0; index < points; index++) beyond += weights[index]! * nodes[index]! ** (2 * points)
  expect(Math.abs(beyond - 2 / (2 * points + 1))).toBeGreaterThan(1e-13)
})

test('one panel of a smooth integrand', () => {
  expect(integrate({ from: 0, to: 2 }, Math.exp)).toBeCloseTo(Math.expm1(2), 14)
  expect(integrate({ from: 3, to: 1 }, (x) => x)).toBeCloseTo(-4, 14)
})
