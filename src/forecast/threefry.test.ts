import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { threefry2x32, threefryUniform, uniformOfWord } from './threefry.js'

function words(key0: number, key1: number, counter0: number, counter1: number): number[] {
  const out = new Uint32Array(2)
  threefry2x32(key0, key1, counter0, counter1, out)
  return [...out]
}

// Known answers of the authors (Salmon, Moraes, Dror and Shaw, SC11 2011), threefry2x32 with 20 rounds. Recalled.
test.each([
  [0, 0, 0, 0, 0x6b200159, 0x99ba4efe],
  [0xffffffff, 0xffffffff, 0xffffffff, 0xffffffff, 0x1cb996fc, 0xbb002be7],
  [0x13198a2e, 0x03707344, 0x243f6a88, 0x85a308d3, 0xc4923a9c, 0x483df7a0],
])('key %i %i, counter %i %i gives the published words', (key0, key1, counter0, counter1, first, second) => {
  expect(words(key0, key1, counter0, counter1)).toEqual([first, second])
})

/** The same cipher written from its definition with whole numbers of any size, none of the tricks. */
function plainThreefry(key: readonly [bigint, bigint], counter: readonly [bigint, bigint]): number[] {
  const cut = (value: bigint): bigint => value & 0xffffffffn
  const keys = [key[0], key[1], 0x1bd11bdan ^ key[0] ^ key[1]]
  const rotations = [13n, 15n, 26n, 6n, 17n, 29n, 16n, 24n]
  let [a, b] = [cut(counter[0] + keys[0]!), cut(counter[1] + keys[1]!)]
  for (let round = 0; round < 20; round++) {
    const by = rotations[round % 8]!
    a = cut(a + b)
    b = cut((b << by) | (b >> (32n - by))) ^ a
    if (round % 4 === 3) {
      const injection = (round + 1) / 4
      a = cut(a + keys[injection % 3]!)
      b = cut(b + keys[(injection + 1) % 3]! + BigInt(injection))
    }
  }
  return [Number(a), Number(b)]
}

test('agrees with the cipher written from its definition, whatever the words', () => {
  const word = fc.nat({ max: 0xffffffff })
  fc.assert(
    fc.property(word, word, word, word, (key0, key1, counter0, counter1) => {
      const plain = plainThreefry([BigInt(key0), BigInt(key1)], [BigInt(counter0), BigInt(counter1)])
      expect(words(key0, key1, counter0, counter1)).toEqual(plain)
      expect(threefryUniform(key0, key1, counter0, counter1)).toBe(uniformOfWord(plain[0]!))
    }),
  )
})

test('signed words count as the same bits', () => {
  expect(words(-1, -1, -1, -1)).toEqual(words(0xffffffff, 0xffffffff, 0xffffffff, 0xffffffff))
})

test('a uniform is never 0 and never 1', () => {
  expect(uniformOfWord(0)).toBe(2 ** -33)
  expect(uniformOfWord(0xffffffff)).toBe(1 - 2 ** -33)
})

test('mean, variance and neighbour correlation of a long run are those of a uniform', () => {
  const draws = Array.from({ length: 40_000 }, (_, index) => threefryUniform(7, 11, index, 0))
  const mean = draws.reduce((sum, u) => sum + u, 0) / draws.length
  const variance = draws.reduce((sum, u) => sum + (u - mean) ** 2, 0) / draws.length
  const together = draws.slice(1).reduce((sum, u, index) => sum + (u - mean) * (draws[index]! - mean), 0)
  const four = 4 / Math.sqrt(draws.length)
  expect(Math.abs(mean - 1 / 2)).toBeLessThan(four * Math.sqrt(1 / 12))
  expect(Math.abs(variance - 1 / 12)).toBeLessThan(four * Math.sqrt(1 / 180))
  expect(Math.abs(together / draws.length / variance)).toBeLessThan(four)
})
