import { describe, expect, test } from 'vitest'
import { normalQuantile } from '../forecast/special-normal.js'
import { uniformOfWord } from '../forecast/threefry.js'
import { knowing } from './perfect-information.js'

const n = 20_000

/** Standard normals from a generator of their own, so that the test repeats. */
function normals(seed: number, count = n): Float64Array {
  let state = seed
  return Float64Array.from({ length: count }, () => {
    state ^= state << 13
    state ^= state >>> 17
    state ^= state << 5
    return normalQuantile(uniformOfWord(state >>> 0))
  })
}

describe('two actions with a normal difference', () => {
  const known = normals(0x9e3779b9)
  const noise = normals(0x1234567)

  // EVPI = s·L(|m|/s), L(D) = φ(D) − D(1 − Φ(D)): Raiffa and Schlaifer, Applied Statistical Decision Theory (1961),
  // the unit normal loss integral; recalled. m = −300, s = 900: 228.813, worked from the formula.
  test('knowing all of it is worth the unit normal loss', () => {
    const costs = [new Float64Array(n), known.map((z) => 300 + 900 * z)]
    const { worth, error } = knowing(costs, known)
    expect(Math.abs(worth - 228.813)).toBeLessThan(4 * error)
    expect(error).toBeLessThan(6)
  })

  // The same with s the deviation of the summand alone, 540: 97.84, worked from the formula.
  test('knowing one of two summands is worth what its own spread is', () => {
    const costs = [new Float64Array(n), known.map((z, i) => 300 + 540 * z + 720 * noise[i]!)]
    const expected = unitNormalLoss(300 / 540) * 540
    const { worth, error } = knowing(costs, known)
    expect(expected).toBeCloseTo(97.84, 2)
    expect(Math.abs(worth - expected)).toBeLessThan(4 * error)
    expect(error).toBeLessThan(12)
  })

  test('knowing what has no bearing is worth nothing, in 95 of 100 cases and more', () => {
    let paying = 0
    for (let run = 0; run < 60; run++) {
      const x = normals(run * 7919 + 17, 2_000)
      const y = normals(run * 104_729 + 5, 2_000)
      // A tie, where any luck of the draw would look like worth.
      const { worth, error } = knowing([new Float64Array(2_000), y.map((z) => 900 * z)], x)
      if (worth > 2 * error) paying++
    }
    expect(paying).toBeLessThanOrEqual(3)
  })
})

test('where one action is best at every value, knowing the value is worth exactly nothing', () => {
  const x = normals(99)
  const costs = [x.map((z) => 1000 + 10 * z), x.map((z) => 2000 + 20 * z)]
  expect(knowing(costs, x)).toEqual({ worth: 0, error: 0 })
})

function unitNormalLoss(d: number): number {
  const density = Math.exp((-d * d) / 2) / Math.sqrt(2 * Math.PI)
  // Tail by Simpson's rule, far enough out.
  const steps = 4_000
  const width = 10 / steps
  let tail = 0
  for (let i = 0; i <= steps; i++) {
    const weight = i === 0 || i === steps ? 1 : i % 2 === 1 ? 4 : 2
    const z = d + i * width
    tail += (weight * Math.exp((-z * z) / 2)) / Math.sqrt(2 * Math.PI)
  }
  return density - (d * tail * width) / 3
}
