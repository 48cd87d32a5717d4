import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { bandsOf, brierOf, type ToldAndSeen } from './calibration.js'
import { threefryUniform } from './threefry.js'

const pairs = fc.array(
  fc.record({ chance: fc.double({ min: 0, max: 1, noNaN: true }), came: fc.boolean() }),
  { minLength: 1, maxLength: 200 },
)

function times(count: number, chance: number, came: number): ToldAndSeen[] {
  return Array.from({ length: count }, (_, i) => ({ chance, came: i < came }))
}

describe('the Brier score', () => {
  test.each([
    // One forecast of rain each, as encyclopaedias explain the score. Held: recalled.
    [1, true, 0],
    [1, false, 1],
    [0.7, true, 0.09],
    [0.3, true, 0.49],
    [0.5, false, 0.25],
  ])('of %s told, and it came: %s', (chance, came, score) => {
    expect(brierOf([{ chance, came }]).score).toBeCloseTo(score, 12)
  })

  test('falls into reliability, resolution and uncertainty as worked by hand', () => {
    // Ten times 0.1 of which 2 came, ten times 0.4 of which 5: share 7/20.
    // reliability (10·0.1² + 10·0.1²)/20 = 0.01; resolution (10·0.15² + 10·0.15²)/20 = 0.0225; uncertainty 0.35·0.65.
    // score (2·0.81 + 8·0.01 + 5·0.36 + 5·0.16)/20 = 4.3/20. Derived.
    const brier = brierOf([...times(10, 0.1, 2), ...times(10, 0.4, 5)])
    expect(brier.reliability).toBeCloseTo(0.01, 12)
    expect(brier.resolution).toBeCloseTo(0.0225, 12)
    expect(brier.uncertainty).toBeCloseTo(0.2275, 12)
    expect(brier.withinBands).toBeCloseTo(0, 12)
    expect(brier.score).toBeCloseTo(0.215, 12)
    expect(brier.skill).toBeCloseTo(1 - 0.215 / 0.2275, 12)
  })

  test('is its parts put together, whatever was told', () => {
    fc.assert(
      fc.property(pairs, (all) => {
        const { score, reliability, resolution, uncertainty, withinBands } = brierOf(all)
        expect(reliability - resolution + uncertainty + withinBands).toBeCloseTo(score, 10)
        expect(Math.min(reliability, resolution, uncertainty)).toBeGreaterThanOrEqual(0)
      }),
    )
  })

  test('of one who always names the share that came has no skill, and of one who knows, all', () => {
    expect(brierOf(times(50, 0.2, 10)).skill).toBeCloseTo(0, 12)
    expect(brierOf([...times(5, 1, 5), ...times(5, 0, 0)]).skill).toBe(1)
    expect(brierOf(times(5, 0.3, 0)).skill).toBeNull()
  })

  test('needs something told, and chances that are some', () => {
    expect(() => brierOf([])).toThrow('told must be')
    expect(() => brierOf([{ chance: 1.1, came: true }])).toThrow('chance must be')
  })
})

describe('bands', () => {
  test('hold each chance once, its lower bound with it and its upper one not, but for certainty', () => {
    const bands = bandsOf([0, 0.01, 0.0499, 0.05, 0.5, 1].map((chance) => ({ chance, came: false })))
    expect(bands.map(({ from, to, told }) => [from, to, told])).toEqual([
      [0, 0.01, 1],
      [0.01, 0.02, 1],
      [0.02, 0.05, 1],
      [0.05, 0.1, 1],
      [0.5, 1, 2],
    ])
    fc.assert(
      fc.property(pairs, (all) => {
        expect(bandsOf(all).reduce((count, { told }) => count + told, 0)).toBe(all.length)
      }),
    )
  })

  test('with fewer than ten expected are not judged, however much came', () => {
    expect(bandsOf(times(99, 0.1, 40))[0]).toMatchObject({ judged: 'too-few', came: 40 })
    expect(bandsOf(times(101, 0.1, 40))[0]!.judged).toBe('came-oftener')
    expect(bandsOf(times(400, 0.1, 40))[0]!.judged).toBe('as-told')
    expect(bandsOf(times(400, 0.1, 10))[0]!.judged).toBe('came-seldomer')
  })

  test('of chances that are right come as told nine times in ten or oftener', () => {
    let within = 0
    const rounds = 300
    for (let round = 0; round < rounds; round++) {
      const all = Array.from({ length: 120 }, (_, i) => {
        const chance = 0.1 + 0.1 * threefryUniform(1, 2, round, 2 * i)
        return { chance, came: threefryUniform(1, 2, round, 2 * i + 1) < chance }
      })
      if (bandsOf(all)[0]!.judged === 'as-told') within++
    }
    expect(within / rounds).toBeGreaterThan(0.88)
    expect(within / rounds).toBeLessThan(0.98)
  })
})
