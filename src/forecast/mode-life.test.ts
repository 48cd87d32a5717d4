import { expect, test } from 'vitest'
import { trialModel } from '../../test/trial-model.js'
import { detectionQuantiles, modeLifeOf } from './mode-life.js'

test.each([0, 0.02, 0.1, 0.3, 0.5, 0.75, 0.95, 0.98, 1])(
  'a check of detection %f is that good in the mean over defects, within 1e-4',
  (detection) => {
    const table = detectionQuantiles(detection)
    const mean = table.reduce((sum, quality) => sum + quality, 0) / table.length
    expect(Math.abs(mean - detection)).toBeLessThan(1e-4)
  },
)

test('a life factor stretches the onset and leaves the delay; left out, nothing is changed', () => {
  const delay = { clock: 'years', median: 1, logSd: 0.3 } as const
  const plain = { id: 'm', clock: 'years', shape: 2, scale: 10, delay } as const
  const model = trialModel([{ id: 'p', modes: [plain, { ...plain, id: 'n', lifeFactor: 1.5 }] }])
  const use = { rates: { hours: 100, years: 1, starts: 10 }, lowLoadShare: 0 }
  const [without, stretched] = model.parts[0]!.modes.map((mode) => modeLifeOf(mode, use))
  expect(stretched!.onsetScale).toBeCloseTo(1.5 * without!.onsetScale, 12)
  expect(stretched!.delay).toEqual(without!.delay)
  expect(model.parts[0]!.modes[0]).not.toHaveProperty('lifeFactor')
})
