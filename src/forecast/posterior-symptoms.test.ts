import { describe, expect, it } from 'vitest'
import { chanceOfState, type TrialPart, trialModel } from '../../test/trial-model.js'
import { posteriorOf } from './posterior.js'

describe('one symptom of several modes', () => {
  const suspect = (id: string, age: TrialPart['age']): TrialPart => ({
    id,
    age,
    modes: [
      { id: 'm', clock: 'years', shape: 1, scale: 60, delay: { clock: 'years', median: 1, logSd: 0.3 } },
    ],
  })
  const symptom = {
    yearsAgo: 0,
    falseAlarm: 0.01,
    seen: true,
    modes: ['a', 'b', 'c'].map((part) => ({ part, mode: 'm', detection: 0.8 })),
  }
  for (const age of [{ years: 8 }, 'unknown'] as const) {
    it(`never makes three defects (${age === 'unknown' ? 'played' : 'known age'})`, () => {
      const parts = ['a', 'b', 'c'].map((id) => suspect(id, age))
      const rest = { set: { ageYears: 8 } }
      const before = posteriorOf(trialModel(parts, rest), { seed: 6 })
      const after = posteriorOf(trialModel(parts, { ...rest, symptoms: [symptom] }), { seed: 6 })
      const sum = (posterior: typeof before) =>
        [0, 1, 2].reduce((all, m) => all + chanceOfState(posterior, m, 1), 0)
      expect(sum(before)).toBeLessThan(0.07)
      expect(sum(after)).toBeGreaterThan(0.6)
      expect(sum(after)).toBeLessThan(1.05)
      const silent = posteriorOf(trialModel(parts, { ...rest, symptoms: [{ ...symptom, seen: false }] }), {
        seed: 6,
      })
      expect(sum(silent)).toBeLessThan(0.5 * sum(before))
    })
  }
})

describe('one symptom, by hand', () => {
  // so long a delay that none has failed: the onset keeps half the mean life, and p = 1 − e^(−age/(scale/2))
  const suspects = [
    { id: 'a', scale: 40, detection: 0.8 },
    { id: 'b', scale: 20, detection: 0.5 },
    { id: 'c', scale: 90, detection: 0.9 },
  ]
  const delay = { clock: 'years', median: 1e6, logSd: 0.1 } as const
  const parts = suspects.map(
    ({ id, scale }): TrialPart => ({
      id,
      age: { years: 4 },
      modes: [{ id: 'm', clock: 'years', shape: 1, scale, delay }],
    }),
  )
  const falseAlarm = 0.05
  const prior = suspects.map(({ scale }) => -Math.expm1(-4 / (scale / 2)))
  const silent = (i: number) =>
    suspects.reduce(
      (all, { detection }, k) => (k === i ? all : all * (1 - detection * prior[k]!)),
      1 - falseAlarm,
    )

  it.each([true, false])('weighs each mode by what the others explain (seen: %s)', (seen) => {
    const modes = suspects.map(({ id, detection }) => ({ part: id, mode: 'm', detection }))
    const model = trialModel(parts, { symptoms: [{ yearsAgo: 0, falseAlarm, seen, modes }] })
    const posterior = posteriorOf(model, { seed: 1 })
    suspects.forEach(({ detection }, i) => {
      const defective = seen ? 1 - silent(i) * (1 - detection) : 1 - detection
      const sound = seen ? 1 - silent(i) : 1
      const p = prior[i]!
      const expected = (p * defective) / (p * defective + (1 - p) * sound)
      expect(Math.abs(chanceOfState(posterior, i, 1) - expected)).toBeLessThan(1.01 / 1024)
    })
  })
})
