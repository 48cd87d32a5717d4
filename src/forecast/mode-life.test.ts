import { expect, test } from 'vitest'
import { detectionQuantiles } from './mode-life.js'

test.each([0, 0.02, 0.1, 0.3, 0.5, 0.75, 0.95, 0.98, 1])(
  'a check of detection %f is that good in the mean over defects, within 1e-4',
  (detection) => {
    const table = detectionQuantiles(detection)
    const mean = table.reduce((sum, quality) => sum + quality, 0) / table.length
    expect(Math.abs(mean - detection)).toBeLessThan(1e-4)
  },
)
