/**
 * What past lives say of a one-stage Weibull life, where some failed, some were still sound, some were only known to
 * have failed between two looks, and some came under watch already aged.
 *
 * @module
 */

import { hazardAhead, type WeibullLife } from '../../src/forecast/lives.js'

/** How one life, or several alike, ended or stands. Ages on the clock of the life. */
export type KnownLife = {
  /** Age at which it came under watch; left out if from new. It must be told how it ended later. */
  readonly entryAge?: number
  /** Lives alike; 1 if left out. */
  readonly count?: number
} & (
  | { readonly ended: 'failed'; readonly age: number }
  /** Still sound at this age, or taken out sound. */
  | { readonly ended: 'sound'; readonly age: number }
  /** Sound at the first age and failed by the second. */
  | { readonly ended: 'failed-between'; readonly afterAge: number; readonly byAge: number }
)

/**
 * ln of the likelihood of a shape and scale:
 *
 *     Σ failed ln f(t) + Σ sound ln S(t) + Σ between ln(S(a) − S(b)) − Σ all ln S(entry)
 *
 * A part's own survival so far is one life that is sound at its age; it is counted once. Lives are trusted;
 * {@link requireLives} checks those that come from outside.
 */
export function weibullLogLikelihood(
  lives: readonly KnownLife[],
  at: { readonly shape: number; readonly scale: number },
): number {
  const life: WeibullLife = { kind: 'weibull', ...at }
  return lives.reduce((sum, known) => sum + (known.count ?? 1) * logChance(known, life), 0)
}

/**
 * Refuses lives that cannot have been.
 *
 * @throws RangeError if a life ends before it came under watch, an age is negative, or a count is not above 0.
 */
export function requireLives(lives: readonly KnownLife[]): void {
  for (const known of lives) {
    const { entryAge = 0, count = 1 } = known
    if (!(count > 0 && count < Infinity)) throw new RangeError(`count must be above 0; found ${count}`)
    if (!(entryAge >= 0)) throw new RangeError(`entryAge must be 0 or above; found ${entryAge}`)
    const end = known.ended === 'failed-between' ? known.byAge : known.age
    const start = known.ended === 'failed-between' ? known.afterAge : entryAge
    if (!(start >= entryAge)) throw new RangeError(`afterAge must be entryAge or above; found ${start}`)
    if (!(end >= entryAge && end < Infinity))
      throw new RangeError(`age must be entryAge or above; found ${end}`)
    const failed = known.ended !== 'sound'
    if (failed && !(end > 0)) throw new RangeError(`age of a failure must be above 0; found ${end}`)
    if (known.ended === 'failed-between' && !(end > start)) {
      throw new RangeError(`byAge must be above afterAge; found ${end}`)
    }
  }
}

/** ln of the chance (or density) of one life, given that it had reached its entry age. */
function logChance(known: KnownLife, life: WeibullLife): number {
  const age = known.entryAge ?? 0
  switch (known.ended) {
    case 'failed':
      return lnHazard(life, known.age) - hazardAhead(life, { age, ahead: known.age - age })
    case 'sound':
      return -hazardAhead(life, { age, ahead: known.age - age })
    case 'failed-between': {
      const before = hazardAhead(life, { age, ahead: known.afterAge - age })
      const within = hazardAhead(life, { age: known.afterAge, ahead: known.byAge - known.afterAge })
      return Math.log(-Math.expm1(-within)) - before
    }
  }
}

function lnHazard(life: WeibullLife, age: number): number {
  return Math.log(life.shape / life.scale) + (life.shape - 1) * Math.log(age / life.scale)
}
