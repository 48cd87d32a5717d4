import fc from 'fast-check'
import { expect, test } from 'vitest'
import { againstList } from './measured-against.js'
import { chancesWhileOn, curveOf, loadAt, measuredBody, recordedDay } from './measured-summary.js'
import { readMeasured } from './measured-table.js'

/** A day with two hours at 2 kW from eight on, and one at 0.6 kW from twenty on, by the minute. */
function day(days = 1) {
  const reader = readMeasured({})
  reader.take('time,kW\n')
  for (let minute = 0; minute < days * 1440; minute++) {
    const hour = Math.floor(minute / 60) % 24
    const kW = hour === 8 || hour === 9 ? 2 : hour === 20 ? 0.6 : 0
    reader.take(`${new Date(Date.UTC(2024, 6, 1) + 60_000 * minute).toISOString().slice(0, 19)},${kW}\n`)
  }
  const measured = reader.end()
  if (!measured.ok) throw new Error(JSON.stringify(measured.problems))
  return measuredBody(measured.folded, measured.read, { of: 'set', source: 'a test' })
}

test('a recorded day: hours, starts, energy, and how much of it is light load', () => {
  const found = recordedDay(day(), 7)
  expect(found).toMatchObject({ hours: 3, starts: 2, kWh: 4.6 })
  // 2.1 kW is three tenths of seven: all three hours are light
  expect(found.lowLoadShare).toBe(1)
  expect(recordedDay(day(), 5).lowLoadShare).toBeCloseTo(1 / 3, 9)
  expect(found.onByHour.map((share, hour) => (share > 0.5 ? hour : -1)).filter((hour) => hour >= 0)).toEqual([
    8, 9, 20,
  ])
  expect(found.meanByHour[8]).toBeCloseTo(2.05, 9)
})

test('days that repeat come to the same day', () => {
  expect(recordedDay(day(3), 7)).toMatchObject({ hours: 3, starts: 2 })
})

test('the curve while power is drawn', () => {
  const chances = chancesWhileOn(day())
  const curve = curveOf(chances, 0.1)
  expect(curve.map(({ kW, share }) => [Number(kW.toFixed(2)), Number(share.toFixed(6))])).toEqual([
    [2.05, 0.666667],
    [0.65, 1],
  ])
  expect(loadAt(curve, 0.5)).toBeCloseTo(2.05, 9)
  expect(loadAt(curve, 0.9)).toBeCloseTo(0.65, 9)
})

test('a list that is right is corrected by nothing; one of twice the load by half', () => {
  const chances = chancesWhileOn(day())
  const measured = { chances, stepKW: 0.1, at: 'middle', mostKW: 2 } as const
  expect(againstList(measured, { chances, stepKW: 0.1, at: 'middle' })).toMatchObject({
    factor: 1,
    widest: { measured: 1, list: 1 },
  })
  expect(againstList(measured, { chances, stepKW: 0.2, at: 'middle' }).factor).toBeCloseTo(0.5, 9)
})

test('curves fall, and end at the whole of the time', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 0, max: 100 }), { minLength: 2, maxLength: 30 }), (weights) => {
      const total = weights.reduce((sum, each) => sum + each, 0)
      fc.pre(total > 0)
      const curve = curveOf(
        weights.map((each) => each / total),
        0.1,
      )
      expect(curve.at(-1)!.share).toBeCloseTo(1, 9)
      expect(curve.every(({ kW }, at) => at === 0 || kW < curve[at - 1]!.kW)).toBe(true)
    }),
    { numRuns: 40 },
  )
})
