import { expect, test } from 'vitest'
import { lifeModelSchema } from './life-model.js'
import { forecastOf } from './odds.js'
import { posteriorOf } from './posterior.js'
import { standingDefective } from './standing.js'

const delay = { clock: 'years', median: 0.5, logSd: 0.5 } as const
const model = lifeModelSchema.parse({
  type: 'gensettle/life-model',
  version: 1,
  horizonYears: 5,
  parts: [
    { id: 'pump', modes: [{ id: 'seal', clock: 'years', shape: 2, scale: 3, delay }] },
    { id: 'mute', modes: [{ id: 'break', clock: 'years', shape: 1, scale: 9 }] },
  ],
})

test('a part stands defective as often as its starting states do, and one that gives no warning never', () => {
  const posterior = posteriorOf(model, { seed: 1 })
  const standing = standingDefective(model, posterior)
  const [pump] = forecastOf(model, posterior, { seed: 1 }).parts
  expect(standing.pump).toBeCloseTo(pump!.defectiveNow + pump!.failedUnnoticedNow, 6)
  expect(standing.mute).toBe(0)
})
