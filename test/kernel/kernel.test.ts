import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { compileAssembly, compileKernel } from '../../scripts/kernel.js'
import { amountsOf, normalTable } from '../../src/alternatives/amounts.js'
import { flatSize, writeFlat } from '../../src/alternatives/flat.js'
import * as purpose from '../../src/alternatives/purpose.js'
import { normalCdf, normalQuantile } from '../../src/forecast/special-normal.js'

/** What `assembly/index.ts` exports. */
interface Pieces {
  readonly memory: { readonly buffer: ArrayBuffer }
  counterOfLife(mode: number, life: number): number
  counterOfUse(set: number, forWhat: number, use: number): number
  draw(key0: number, key1: number, counter0: number, counter1: number): bigint
  uniformFrom(word: number): number
  uniformFromLow(word: number): number
  normalCdf(z: number): number
  normalQuantile(chance: number): number
  normalFrom(word: number): number
  openQueue(horizonYears: number): void
  clearQueue(): void
  push(at: number, code: number): void
  takeFirst(): number
  reserve(bytes: number): number
  openAmounts(at: number): void
  amountFrom(i: number, word: number): number
  meanOf(i: number): number
}

const { WebAssembly } = globalThis as unknown as {
  WebAssembly: {
    Module: new (bytes: Uint8Array) => object
    Instance: new (module: object, imports: object) => { readonly exports: unknown }
  }
}
const bytes = await compileAssembly(join(import.meta.dirname, 'assembly', 'index.ts'))
const abort = () => {
  throw new Error('aborted')
}
const pieces = new WebAssembly.Instance(new WebAssembly.Module(bytes), { env: { abort } }).exports as Pieces

test('the kernel in use is the one that its sources make', async () => {
  const folder = join(import.meta.dirname, '..', '..', 'src', 'alternatives')
  const { bytes, text } = await compileKernel()
  expect(
    readFileSync(join(folder, 'kernel-bytes.ts'), 'utf8') === text,
    'npm run kernel has not been run',
  ).toBe(true)
  expect(readFileSync(join(folder, 'kernel.wasm')).equals(bytes)).toBe(true)
})

// Known answers of Threefry-2×32 with 20 rounds as published with Salmon, Moraes, Dror and Shaw, "Parallel random
// numbers: as easy as 1, 2, 3", SC11 (2011); recalled.
test.each([
  [[0, 0, 0, 0], 0x6b200159, 0x99ba4efe],
  [[0xffffffff, 0xffffffff, 0xffffffff, 0xffffffff], 0x1cb996fc, 0xbb002be7],
  [[0x13198a2e, 0x03707344, 0x243f6a88, 0x85a308d3], 0xc4923a9c, 0x483df7a0],
] as const)('Threefry encrypts %j as published', ([key0, key1, counter0, counter1], first, second) => {
  const words = BigInt.asUintN(64, pieces.draw(key0, key1, counter0, counter1))
  expect([Number(words & 0xffffffffn), Number(words >> 32n)]).toEqual([first, second])
})

const below = (limit: number) => fc.integer({ min: 0, max: limit - 1 })

test('no two draws share a counter: each can be read back from its two words', () => {
  fc.assert(
    fc.property(
      below(8192),
      below(2 ** 19),
      below(256),
      below(64),
      below(2 ** 18),
      (mode, life, set, what, use) => {
        const first = pieces.counterOfLife(mode, life) >>> 0
        const second = pieces.counterOfUse(set, what, use) >>> 0
        expect([first >>> 19, first & 0x7ffff]).toEqual([mode, life])
        expect([second >>> 24, (second >>> 18) & 63, second & 0x3ffff]).toEqual([set, what, use])
      },
    ),
  )
})

test('every purpose has its own number, within its six bits', () => {
  const numbers = Object.values(purpose)
  expect(new Set(numbers).size).toBe(numbers.length)
  expect(Math.max(...numbers)).toBeLessThan(64)
})

test('uniform draws are never 0 or 1', () => {
  for (const uniform of [pieces.uniformFrom, pieces.uniformFromLow]) {
    expect(uniform(0)).toBeGreaterThan(0)
    expect(uniform(2 ** 32 - 1)).toBeLessThan(1)
  }
})

test('the normal distribution is that of the forecast', () => {
  for (let z = -12; z <= 8; z += 0.37) {
    expect(Math.abs(pieces.normalCdf(z) / normalCdf(z) - 1)).toBeLessThan(1e-13)
  }
  for (const chance of [1e-300, 1e-40, 1e-9, 0.003, 0.074, 0.3, 0.5, 0.92, 0.9999]) {
    expect(pieces.normalQuantile(chance)).toBeCloseTo(normalQuantile(chance), 12)
  }
})

const horizonYears = 8

/** Takes everything out: the codes in the order in which they come. */
function drain(): number[] {
  const codes: number[] = []
  for (let code = pieces.takeFirst(); code >= 0; code = pieces.takeFirst()) codes.push(code)
  return codes
}

const times = fc.array(fc.double({ min: 0, max: 7.9999, noNaN: true }), { maxLength: 3000 })

test('events come in the order of their times, those of one moment in the order put in', () => {
  fc.assert(
    fc.property(times, (list) => {
      pieces.openQueue(horizonYears)
      list.forEach((time, i) => {
        pieces.push(time, i)
      })
      const wanted = list.map((time, i) => ({ time, i })).sort((a, b) => a.time - b.time || a.i - b.i)
      expect(drain()).toEqual(wanted.map(({ i }) => i))
    }),
  )
})

test('events put in while others are taken come at their time', () => {
  const gaps = fc.array(fc.double({ min: 0, max: 0.1, noNaN: true }), { minLength: 1 })
  fc.assert(
    fc.property(times, gaps, (list, later) => {
      pieces.openQueue(horizonYears)
      const at = [...list]
      list.forEach((time, i) => {
        pieces.push(time, i)
      })
      let last = 0
      let taken = 0
      for (let code = pieces.takeFirst(); code >= 0; code = pieces.takeFirst()) {
        taken++
        expect(at[code]).toBeGreaterThanOrEqual(last)
        last = at[code]!
        const next = last + (later.pop() ?? horizonYears)
        if (next < horizonYears) pieces.push(next, at.push(next) - 1)
      }
      expect(taken).toBe(at.length)
    }),
  )
})

test('a queue cleared in the middle is as good as new', () => {
  pieces.openQueue(horizonYears)
  for (let i = 0; i < 5000; i++) pieces.push((i % 79) / 10, i)
  for (let i = 0; i < 1234; i++) pieces.takeFirst()
  pieces.clearQueue()
  pieces.push(3, 1)
  pieces.push(0, 2)
  expect(drain()).toEqual([2, 1])
})

const words = Array.from({ length: 4096 }, (_, i) => ((i + 0.5) / 4096) * 2 ** 32)

/** Draws of one amount over the whole of the uniform. */
function drawn(amount: Parameters<typeof amountsOf>[0][number]): {
  readonly values: number[]
  readonly mean: number
} {
  const { kind, level, spread } = amountsOf([amount])
  const sections = {
    normal: normalTable,
    'amounts.kind': kind,
    'amounts.level': level,
    'amounts.spread': spread,
  }
  const at = pieces.reserve(flatSize(sections))
  writeFlat(sections, pieces.memory.buffer, at)
  pieces.openAmounts(at)
  return { values: words.map((word) => pieces.amountFrom(0, word)), mean: pieces.meanOf(0) }
}

const meanOf = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length

// The table of normals against continuous draws: the mean of a lognormal, and its spread.
test.each([0.1, 0.35, 0.7])(
  'a lognormal of log-sd %f has its mean within 1e-3 and its variance within 2 %%',
  (logSd) => {
    const { values, mean: said } = drawn({ median: 100, logSd })
    const exact = 100 * Math.exp(logSd ** 2 / 2)
    expect(said).toBeCloseTo(exact, 10)
    const mean = meanOf(values)
    expect(Math.abs(mean / exact - 1)).toBeLessThan(1e-3)
    const variance = meanOf(values.map((value) => (value - mean) ** 2))
    expect(Math.abs(variance / (exact ** 2 * Math.expm1(logSd ** 2)) - 1)).toBeLessThan(0.02)
  },
)

test('fixed and exponential amounts keep their means', () => {
  const fixed = drawn(7)
  expect([meanOf(fixed.values), fixed.mean]).toEqual([7, 7])
  const exponential = drawn({ exponentialMean: 40 })
  expect(exponential.mean).toBe(40)
  expect(meanOf(exponential.values)).toBeCloseTo(40, 1)
})
