import { describe, expect, it } from 'vitest'
import { chanceOfLooks } from './mode-looks.js'

const none = { missed: 0, seen: 0, missedFailed: 0, seenFailed: 0 }

describe('a row of looks by one check at one defect', () => {
  it('starts at the stated chance', () => {
    const check = { detection: 0.7, detectionFailed: 0.7 }
    expect(chanceOfLooks(check, { ...none, seen: 1 })).toBeCloseTo(0.7, 12)
    expect(chanceOfLooks(check, { ...none, missed: 1 })).toBeCloseTo(0.3, 12)
  })

  it('misses again likelier than it missed: Π (b + i)/(a + b + i)', () => {
    const check = { detection: 0.7, detectionFailed: 0.7 }
    expect(chanceOfLooks(check, { ...none, missed: 3 })).toBeCloseTo((0.6 * 1.6 * 2.6) / (2 * 3 * 4), 12)
    expect(chanceOfLooks(check, { ...none, missed: 2, missedFailed: 1 })).toBeCloseTo(0.104, 12)
  })

  it('is the same by products as by gamma functions', () => {
    const check = { detection: 0.4, detectionFailed: 0.4 }
    const many = chanceOfLooks(check, { ...none, missed: 40, seen: 21 })
    const fewer = chanceOfLooks(check, { ...none, missed: 40, seen: 20 })
    expect(many / fewer).toBeCloseTo((0.8 + 20) / (2 + 60), 9)
  })

  it('keeps one quantile before and after the failure', () => {
    const check = { detection: 0.5, detectionFailed: 0.9 }
    const both = chanceOfLooks(check, { ...none, missed: 1, missedFailed: 1 })
    // Beta(1, 1) has the quantile u; Beta(1.8, 0.2) follows it: more than independent, less than the rarer alone
    expect(both).toBeGreaterThan(0.5 * 0.1 * 1.3)
    expect(both).toBeLessThan(0.1)
  })

  it('is certain where a check cannot miss or cannot see', () => {
    expect(chanceOfLooks({ detection: 1, detectionFailed: 1 }, { ...none, missed: 1 })).toBe(0)
    expect(chanceOfLooks({ detection: 0, detectionFailed: 0 }, { ...none, missed: 5 })).toBe(1)
    expect(chanceOfLooks({ detection: 0, detectionFailed: 1 }, { ...none, missed: 2, seenFailed: 1 })).toBe(1)
  })
})
