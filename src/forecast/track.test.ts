import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { trialModel } from '../../test/trial-model.js'
import { ageAt, completeAges, evenPast, pastUseOf, readingAt, timeOfReading, yearsAgoOfAge } from './track.js'

const mode = { id: 'm', clock: 'years', shape: 2, scale: 9 } as const
const tracked = pastUseOf(
  trialModel([{ id: 'a', modes: [mode] }], {
    past: {
      track: [
        { yearsAgo: 10, hours: 0, starts: 0 },
        { yearsAgo: 6, hours: 400, starts: 100 },
        { yearsAgo: 4, hours: 400, starts: 100 },
        { yearsAgo: 0, hours: 1200, starts: 500 },
      ],
    },
  }),
)

describe('past use', () => {
  it('is straight between the points of its track', () => {
    expect(readingAt(tracked, 'hours', 2)).toBe(200)
    expect(readingAt(tracked, 'hours', 5)).toBe(400)
    expect(readingAt(tracked, 'hours', 8)).toBe(800)
    expect(readingAt(tracked, 'starts', 9)).toBe(400)
  })

  it('gives back the time of a reading wherever the clock ran', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 10, noNaN: true }), (time) => {
        const reading = readingAt(tracked, 'hours', time)
        expect(readingAt(tracked, 'hours', timeOfReading(tracked, 'hours', reading))).toBeCloseTo(reading, 9)
      }),
    )
  })

  it('goes on at the mean rate past its end', () => {
    expect(timeOfReading(tracked, 'hours', 1320)).toBeCloseTo(11, 9)
    expect(readingAt(tracked, 'hours', 11)).toBeCloseTo(1320, 9)
  })

  it('never reaches a reading on a clock that stands still', () => {
    const idle = evenPast({ years: 5, hours: 0, starts: 0, lowLoadShare: 0 })
    expect(timeOfReading(idle, 'hours', 1)).toBe(Infinity)
  })

  it('is carried back to nought before a first reading that is not the first day', () => {
    const late = pastUseOf(
      trialModel([{ id: 'a', modes: [mode] }], {
        past: {
          track: [
            { yearsAgo: 4, hours: 300 },
            { yearsAgo: 0, hours: 700 },
          ],
        },
      }),
    )
    expect(late.years).toBeCloseTo(7, 9)
    expect(readingAt(late, 'hours', 3)).toBeCloseTo(300, 9)
  })

  it('is the use to come, even, where there is no track', () => {
    const even = pastUseOf(
      trialModel([{ id: 'a', modes: [mode] }], {
        use: { hoursByMonth: [0, 0, 0, 0, 60, 60, 60, 0, 0, 0, 0, 0] },
        set: { ageYears: 4 },
      }),
    )
    expect(readingAt(even, 'hours', 4)).toBeCloseTo(720, 9)
    expect(readingAt(even, 'hours', 1)).toBeCloseTo(180, 9)
  })
})

describe('the ages of a part', () => {
  it('are read from the track where they are missing', () => {
    expect(completeAges(tracked, { years: 5 })).toEqual({ years: 5, hours: 800, starts: 400 })
    expect(completeAges(tracked, { hours: 600 }).years).toBeCloseTo(3, 9)
    expect(completeAges(tracked, {})).toEqual({ years: 10, hours: 1200, starts: 500 })
  })

  it('run with the track, stretched so that they meet what was said', () => {
    const part = { past: tracked, ages: { years: 8, hours: 500, starts: 450 } }
    expect(ageAt(part, 'hours', 8)).toBe(0)
    expect(ageAt(part, 'hours', 0)).toBe(500)
    expect(ageAt(part, 'hours', 5)).toBeCloseTo(100, 9)
    expect(yearsAgoOfAge(part, 'hours', 100)).toBeCloseTo(6, 9)
    expect(yearsAgoOfAge(part, 'hours', 300)).toBeCloseTo(2, 9)
  })
})
