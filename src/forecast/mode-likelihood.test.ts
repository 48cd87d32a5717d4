import { describe, expect, it } from 'vitest'
import { readLife, stateAt } from '../../test/oracles/delay-time.js'
import type { Delay } from './lives.js'
import type { ModeLife } from './mode-life.js'
import { massesAt, pastTerms, presentTerms } from './mode-likelihood.js'
import type { Look } from './mode-looks.js'
import { evenPast } from './track.js'

const life = (rest: Partial<ModeLife>): ModeLife => ({
  clock: 'years',
  shape: 2.5,
  onsetScale: 10,
  delay: { kind: 'weibull', shape: 1.5, scale: 2 },
  delayClock: 'years',
  hidden: false,
  pace: 1,
  ...rest,
})
const part = (years: number, hoursPerYear = 100) => {
  const ages = { years, hours: years * hoursPerYear, starts: 0 }
  return { past: evenPast({ ...ages, lowLoadShare: 0 }), ages }
}
const masses = (terms: Parameters<typeof massesAt>[0], lambda: number) => {
  const out = { sound: 0, defective: 0, failed: 0 }
  massesAt(terms, lambda, out)
  return out
}
const pair = (yearsAgo: number, sound: number, defective: number, failed: number): Look => ({
  yearsAgo,
  seen: { sound, defective, failed },
})
const look = (yearsAgo: number, defect: boolean): Look => ({
  yearsAgo,
  seen: { check: 'c', detection: 0.6, detectionFailed: 0.6, falseAlarm: 0.05, defect },
})

describe('the masses of the three states', () => {
  // the single-clock delay-time model of this folder, good to 1e-10, written apart from this quadrature
  const delays: Delay[] = [
    { kind: 'weibull', shape: 1.5, scale: 2 },
    { kind: 'lognormal', median: 0.5, logSd: 0.7 },
    { kind: 'none' },
  ]
  for (const delay of delays) {
    for (const hidden of [false, true]) {
      for (const shape of [0.7, 1, 3, 8]) {
        it(`agree with the delay-time model: ${delay.kind}, shape ${shape}, ${hidden ? 'hidden' : 'visible'}`, () => {
          const mode = life({ delay, hidden, shape })
          const looks = [pair(1, 0.9, 0.4, 0.3), pair(3, 1, 0.7, 0.6), pair(6.5, 0.8, 0.5, 0.2)]
          const terms = presentTerms(mode, { part: part(9), looks, broken: false })
          const other = readLife({
            mode,
            age: 9,
            repeatedLooks: 'independent',
            observations: looks.map(({ yearsAgo, seen }) => {
              if ('check' in seen) throw new Error('pairs only')
              const { sound: ifSound, defective: ifDefective, failed: ifFailed } = seen
              return { kind: 'pair', age: 9 - yearsAgo, ifSound, ifDefective, ifFailed }
            }),
          })
          for (const theta of [0.5, 1, 2]) {
            const found = masses(terms, theta ** -shape)
            const expected = stateAt(other, 10 * theta)
            const whole = Math.exp(expected.logEvidence)
            expect(found.sound).toBeCloseTo(expected.sound * whole, 9)
            expect(Math.abs(found.defective - expected.defective * whole)).toBeLessThan(2e-5)
            expect(Math.abs(found.failed - expected.failed * whole)).toBeLessThan(2e-5)
          }
        })
      }
    }
  }

  it('hang repeated looks of one check together as the delay-time model does', () => {
    const looks = [look(0.5, false), look(2, false), look(4, true), look(7, false)]
    const found = masses(presentTerms(life({}), { part: part(9), looks, broken: false }), 1)
    const expected = stateAt(
      readLife({
        mode: life({}),
        age: 9,
        repeatedLooks: 'persistent',
        observations: looks.map(({ yearsAgo, seen }) => ({
          kind: 'look',
          age: 9 - yearsAgo,
          check: 'c',
          detection: 0.6,
          falseAlarm: 0.05,
          seen: 'check' in seen && seen.defect,
        })),
      }),
      10,
    )
    expect((found.sound + found.defective) / Math.exp(expected.logEvidence)).toBeCloseTo(1, 6)
    expect(found.defective / (found.sound + found.defective)).toBeCloseTo(expected.defective, 6)
  })

  it('come out the same whatever even clock the delay runs on', () => {
    const years = masses(presentTerms(life({}), { part: part(9), looks: [], broken: false }), 1)
    const delay = { kind: 'weibull', shape: 1.5, scale: 200 } as const
    const mixed = life({ delay, delayClock: 'hours' })
    const hours = masses(presentTerms(mixed, { part: part(9), looks: [], broken: false }), 1)
    expect(hours.defective).toBeCloseTo(years.defective, 12)
    const run = life({ clock: 'hours', onsetScale: 1000 })
    const other = masses(presentTerms(run, { part: part(9), looks: [], broken: false }), 1)
    expect(other.sound).toBeCloseTo(years.sound, 12)
    expect(other.defective).toBeCloseTo(years.defective, 12)
  })

  it('hasten a sooted hour clock', () => {
    const run = life({ clock: 'hours', onsetScale: 1000, delay: { kind: 'none' }, pace: 1.5 })
    const found = masses(presentTerms(run, { part: part(9), looks: [], broken: false }), 1)
    expect(found.sound).toBeCloseTo(Math.exp(-((1350 / 1000) ** 2.5)), 12)
  })
})

describe('an earlier life', () => {
  const ages = { years: 6, hours: 600, starts: 0 }

  it('survived, failed and found defective add up: density is the fall of survival', () => {
    const mode = life({})
    const at = (years: number, end: 'failed' | 'survived' | 'defective') => {
      const found = masses(pastTerms(mode, { ages: { ...ages, years }, end }), 1)
      return found.sound + found.defective
    }
    const fall = (at(6 - 1e-3, 'survived') - at(6 + 1e-3, 'survived')) / 2e-3
    expect(at(6, 'failed')).toBeCloseTo(fall, 5)
    const sound = Math.exp(-((6 / 10) ** 2.5))
    expect(at(6, 'survived')).toBeCloseTo(sound + at(6, 'defective'), 12)
  })

  it('without a delay has the density of the onset', () => {
    const found = masses(pastTerms(life({ delay: { kind: 'none' } }), { ages, end: 'failed' }), 1)
    expect(found.defective).toBeCloseTo((2.5 / 10) * 0.6 ** 1.5 * Math.exp(-(0.6 ** 2.5)), 12)
  })
})
