import fc from 'fast-check'
import { expect, it } from 'vitest'
import { leastOnsetSlices, leastOnsets } from './least-onset.js'

it('bounds every onset of its slice from below, and by no more than the slice is wide', () => {
  const draw = fc.record({
    shape: fc.double({ min: 0.5, max: 8, noNaN: true }),
    uniform: fc.double({ min: 1e-9, max: 1 - 1e-9, noNaN: true }),
  })
  fc.assert(
    fc.property(draw, ({ shape, uniform }) => {
      const table = leastOnsets(shape)
      const slice = Math.floor(uniform * leastOnsetSlices)
      const onset = (-Math.log(uniform)) ** (1 / shape)
      expect(table[slice]!).toBeLessThanOrEqual(onset)
      if (slice > 0) expect(table[slice - 1]!).toBeGreaterThanOrEqual(onset * (1 - 1e-8))
    }),
  )
})
