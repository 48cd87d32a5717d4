import { expect, test } from 'vitest'
import { type Look, lookChances, sharedSymptom } from './delay-time-looks.js'

function look(age: number, more: Partial<Look> = {}): Look {
  return { kind: 'look', age, check: 'glance', detection: 0.6, falseAlarm: 0.1, seen: false, ...more }
}

test('n misses by one check at one defect: Π (b + i)/(a + b + i) with a = 2d, b = 2(1 − d)', () => {
  const chances = lookChances({
    observations: [look(1), look(2), look(3)],
    untilAge: 5,
    repeatedLooks: 'persistent',
  })
  const [a, b] = [1.2, 0.8]
  const product = (n: number): number =>
    Array.from({ length: n }, (_, i) => (b + i) / (a + b + i)).reduce((one, other) => one * other, 1)
  expect([0, 1, 2, 3].map((n) => chances.defective(0, n))).toEqual(
    [0, 1, 2, 3].map((n) => expect.closeTo(product(n), 14)),
  )
  expect(chances.defective(1, 3)).toBeCloseTo(product(2), 14)
  expect(chances.sound[3]).toBeCloseTo(0.9 ** 3, 14)
})

test('independent looks each have their own luck, in order of age whatever the order given', () => {
  const observations = [
    look(3, { seen: true }),
    look(1),
    { kind: 'pair', age: 2, ifSound: 0.5, ifDefective: 0.25 } as const,
  ]
  const chances = lookChances({ observations, untilAge: 5, repeatedLooks: 'independent' })
  expect([...chances.ages]).toEqual([1, 2, 3])
  expect(chances.defective(0, 3)).toBeCloseTo(0.4 * 0.25 * 0.6, 14)
  expect(chances.defective(1, 2)).toBe(0.25)
  expect(chances.sound[3]).toBeCloseTo(0.9 * 0.5 * 0.1, 14)
  expect(chances.failed[0]).toBeCloseTo(0.4 * 0.25 * 0.6, 14)
})

test('a failed part has its own chance of showing', () => {
  const observations = [
    look(1, { failedDetection: 0.9 }),
    { kind: 'pair', age: 2, ifSound: 1, ifDefective: 1, ifFailed: 0.3 } as const,
  ]
  const chances = lookChances({ observations, untilAge: 5, repeatedLooks: 'independent' })
  expect([...chances.failed]).toEqual([expect.closeTo(0.1 * 0.3, 14), 0.3, 1])
})

test('another check starts afresh', () => {
  const observations = [look(1), look(2, { check: 'test' })]
  const chances = lookChances({ observations, untilAge: 5, repeatedLooks: 'persistent' })
  expect(chances.defective(0, 2)).toBeCloseTo(0.16, 14)
})

test('one symptom and several modes: by hand', () => {
  const others = [{ defectiveChance: 0.2, detection: 0.5 }]
  expect(sharedSymptom({ seen: true, falseAlarm: 0.1, detection: 0.8, others })).toEqual({
    ifSound: expect.closeTo(1 - 0.9 * 0.9, 14),
    ifDefective: expect.closeTo(1 - 0.9 * 0.2 * 0.9, 14),
  })
  expect(sharedSymptom({ seen: false, falseAlarm: 0.1, detection: 0.8, others })).toEqual({
    ifSound: expect.closeTo(0.81, 14),
    ifDefective: expect.closeTo(0.162, 14),
  })
})

test('the likelier another mode explains the symptom, the less it says of this one', () => {
  const ratio = (defectiveChance: number): number => {
    const others = [{ defectiveChance, detection: 0.9 }]
    const { ifSound, ifDefective } = sharedSymptom({ seen: true, falseAlarm: 0.02, detection: 0.7, others })
    return ifDefective / ifSound
  }
  expect(ratio(0)).toBeGreaterThan(ratio(0.3))
  expect(ratio(0.3)).toBeGreaterThan(ratio(1))
  expect(ratio(1)).toBeLessThan(1.1)
})

test('refuses chances that are none', () => {
  expect(() => sharedSymptom({ seen: true, falseAlarm: 2, detection: 0.8, others: [] })).toThrow(
    'falseAlarm must be',
  )
})
