import { expect, test } from 'vitest'
import { betaQuantileSteps } from './beta-steps.js'
import { betaQuantile } from './special-beta.js'

test.each([0.01, 0.02, 0.1, 0.3, 0.5, 0.62, 0.75, 0.9, 0.98, 0.99])(
  'the steps of a detection of %f are its quantiles one by one',
  (detection) => {
    const beta = { towardsOne: 2 * detection, towardsZero: 2 - 2 * detection }
    const steps = betaQuantileSteps(beta, 256)
    for (let i = 0; i < 256; i++) {
      const exact = betaQuantile({ ...beta, chance: (i + 0.5) / 256 })
      expect(Math.abs(steps[i]! - exact)).toBeLessThanOrEqual(1e-9 * exact)
    }
  },
)
