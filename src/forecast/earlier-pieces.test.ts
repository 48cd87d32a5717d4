import { describe, expect, test } from 'vitest'
import { meanLnTheta, type TrialPart, trialModel } from '../../test/trial-model.js'
import { type EarlierPieces, lnRenewalOver, renewedUnaskedPerYear } from './earlier-pieces.js'
import { meanLife } from './lives.js'
import { posteriorOf } from './posterior.js'
import { normalQuantile } from './special-normal.js'
import { threefryUniform } from './threefry.js'

const alone = (shape: number, scale: number, when: Partial<EarlierPieces> = {}): EarlierPieces => ({
  modes: [{ shape, scale, totalLogSd: 0.5 }],
  renewedAt: 12,
  watchedFrom: 12,
  ...when,
})

/** Density of the first known renewal at θ over that at θ = 1. */
const against = (pieces: EarlierPieces, theta: number) => {
  const ln = lnRenewalOver(pieces, 0)
  return Math.exp(ln(Math.log(theta)) - ln(0))
}

describe('the density of the first known renewal', () => {
  test('of what does not age is its rate, whenever it was', () => {
    // Poisson process: the renewal density is the rate of ending itself (closed form)
    for (const renewedAt of [1, 5, 20]) {
      const rate = (theta: number) => 1 / (4 * theta) + renewedUnaskedPerYear
      const pieces = alone(1, 4, { renewedAt, watchedFrom: renewedAt })
      for (const theta of [0.3, 0.8, 1.7, 3]) {
        expect(against(pieces, theta)).toBeCloseTo(rate(theta) / rate(1), 2)
      }
    }
  })

  test('is that of a first life where the log began with the set', () => {
    // f(T) = h(T) S(T), Weibull with the hazard of being renewed unasked (closed form)
    const density = (theta: number) => {
      const eta = 10 * theta
      const hazard = (3 / eta) * (12 / eta) ** 2 + renewedUnaskedPerYear
      return hazard * Math.exp(-((12 / eta) ** 3))
    }
    const pieces = alone(3, 10, { watchedFrom: 0 })
    for (const theta of [0.6, 0.9, 1.3, 2.5]) {
      expect(against(pieces, theta) / (density(theta) / density(1))).toBeCloseTo(1, 1)
    }
  })

  test('after many lives is one over the mean life', () => {
    // Blackwell's renewal theorem
    const pieces = alone(2, 1.5, { renewedAt: 60, watchedFrom: 60 })
    const perYear = (theta: number) => 1 / meanLife({ kind: 'weibull', shape: 2, scale: 1.5 * theta })
    // being renewed unasked shortens lives of about 1 year by about a hundredth
    for (const theta of [0.5, 0.8, 1.5]) {
      expect(against(pieces, theta) / (perYear(theta) / perYear(1))).toBeCloseTo(1, 1)
    }
  })

  test('of a watched Poisson process counts the years in which nothing came', () => {
    // λ e^(−λ (T − W)) (closed form)
    const density = (theta: number) => {
      const rate = 1 / (4 * theta) + renewedUnaskedPerYear
      return rate * Math.exp(-rate * 5)
    }
    const pieces = alone(1, 4, { renewedAt: 12, watchedFrom: 7 })
    for (const theta of [0.5, 1.5, 3]) {
      expect(against(pieces, theta) / (density(theta) / density(1))).toBeCloseTo(1, 1)
    }
  })
})

describe('places first seen long after the set was new', () => {
  const years = 16
  const logBegins = 10
  const life = { shape: 2.5, scale: 6, logSd: 0.5 }
  const places = 200

  interface Place {
    readonly lnTheta: number
    /** Fitting dates and ends since the set's first day, of lives that reach into the log. */
    readonly fitted: readonly number[]
  }

  /** A place lived from the first day: renewed at each failure. */
  function lived(place: number): Place {
    const lnTheta = life.logSd * normalQuantile(threefryUniform(7, 0, place, 0))
    const fitted = [0]
    for (let piece = 1; ; piece++) {
      const u = threefryUniform(7, 1, place, piece)
      const end = fitted.at(-1)! + life.scale * Math.exp(lnTheta) * (-Math.log(u)) ** (1 / life.shape)
      if (end > years) return { lnTheta, fitted }
      fitted.push(end)
    }
  }

  /** What is learnt of the place from a log of its last years and the fitting date of what was aboard at its beginning. */
  function learnt({ fitted }: Place, { dateKnown }: { readonly dateKnown: boolean }): number {
    const aboard = fitted.findLastIndex((at) => at <= logBegins)
    const first = dateKnown ? aboard : Math.min(aboard + 1, fitted.length - 1)
    const isOriginal = first === 0
    const known = fitted.slice(first)
    if (!dateKnown && aboard === fitted.length - 1 && !isOriginal) return Number.NaN
    const part: TrialPart = {
      id: 'a',
      age: { years: years - known.at(-1)! },
      ...(isOriginal
        ? {}
        : {
            firstRenewal: {
              yearsAgo: years - known[0]!,
              ...(dateKnown ? {} : { watchedFromYearsAgo: years - logBegins }),
            },
          }),
      pastLives: known
        .slice(1)
        .map((end, i) => ({ age: { years: end - known[i]! }, ended: { failed: 'm' } })),
      modes: [{ id: 'm', clock: 'years', ...life }],
    }
    const model = trialModel([part], { set: { ageYears: years } })
    return meanLnTheta(posteriorOf(model, { seed: 1 }), 0)
  }

  /** Mean of what was learnt less what is so, in standard errors. */
  function bias(errors: readonly number[]): number {
    const mean = errors.reduce((sum, error) => sum + error, 0) / errors.length
    const variance = errors.reduce((sum, error) => sum + (error - mean) ** 2, 0) / (errors.length - 1)
    return mean / Math.sqrt(variance / errors.length)
  }

  test('are believed neither better nor worse than they are', () => {
    const all = Array.from({ length: places }, (_, place) => lived(place))
    const errors = all.map((place) => learnt(place, { dateKnown: true }) - place.lnTheta)
    expect(Math.abs(bias(errors))).toBeLessThan(4)
  })

  test('nor where only what happened since the log began is known', () => {
    // of a piece that is still the one of the first day, or of one that nobody saw ending, other tests tell
    const all = Array.from({ length: places }, (_, place) => lived(place))
    const seen = all.map((place) => ({ place, mean: learnt(place, { dateKnown: false }) }))
    const errors = seen
      .filter(({ place, mean }) => !Number.isNaN(mean) && place.fitted.some((at) => at > logBegins))
      .map(({ place, mean }) => mean - place.lnTheta)
    expect(errors.length).toBeGreaterThan(places / 3)
    expect(Math.abs(bias(errors))).toBeLessThan(4)
  })
})
