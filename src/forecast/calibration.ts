/**
 * How well past chances have held: the Brier score with its parts, and band by band what was expected and what came.
 *
 * @module
 */

import { requireWithin } from '../units/require.js'
import { type Bounds, expectedCounts, shareInterval } from './calibration-counts.js'

/** A chance that was given, and whether it came true. */
export interface ToldAndSeen {
  readonly chance: number
  readonly came: boolean
}

/** Bounds of the bands of chance. Practice: narrower where most parts lie. */
export const bandBounds = [0, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1] as const
/** With fewer expected in a band nothing is said of it: one failure more or less would turn the answer. Practice. */
export const fewestExpected = 10
/** Of the bounds that are shown. */
export const confidence = 0.9

/** What became of the chances of one band. */
export interface Band {
  readonly from: number
  /** Below this; the last band holds its end too. */
  readonly to: number
  readonly told: number
  readonly meanChance: number
  readonly expected: number
  readonly came: number
  /** Counts that these chances lead one to expect, 90 in 100 (Poisson-binomial). */
  readonly expectedBounds: Bounds
  /** The share behind what came, 90 % (Clopper and Pearson). */
  readonly shareBounds: Bounds
  /** `too-few`: fewer than ten expected; `as-told`: within the bounds expected. */
  readonly judged: 'too-few' | 'as-told' | 'came-oftener' | 'came-seldomer'
}

/** The bands in which any chance was given, lowest first. */
export function bandsOf(all: readonly ToldAndSeen[]): Band[] {
  return groupsOf(all).map(({ from, to, pairs }) => bandOf(pairs, { from, to }))
}

/** What became of chances that are taken as one band; there must be some. */
export function bandOf(pairs: readonly ToldAndSeen[], bounds: Pick<Band, 'from' | 'to'>): Band {
  const chances = pairs.map(({ chance }) => chance)
  const expected = sum(chances)
  const came = pairs.filter((pair) => pair.came).length
  const expectedBounds = expectedCounts(chances, confidence)
  return {
    ...bounds,
    told: pairs.length,
    meanChance: expected / pairs.length,
    expected,
    came,
    expectedBounds,
    shareBounds: shareInterval({ events: came, trials: pairs.length, confidence }),
    judged: judge({ expected, came, expectedBounds }),
  }
}

function judge({
  expected,
  came,
  expectedBounds: { low, high },
}: Pick<Band, 'expected' | 'came' | 'expectedBounds'>): Band['judged'] {
  if (expected < fewestExpected) return 'too-few'
  return came > high ? 'came-oftener' : came < low ? 'came-seldomer' : 'as-told'
}

/** The score and what it is made of. */
export interface Brier {
  readonly told: number
  /** Mean of (chance − came)²: 0 at best, 1 at worst. */
  readonly score: number
  /** Σ nₖ(p̄ₖ − ōₖ)²/n: how far the bands lie off what came in them. 0 at best. */
  readonly reliability: number
  /** Σ nₖ(ōₖ − ō)²/n: how far the bands tell apart what came and what did not. The more the better. */
  readonly resolution: number
  /** ō(1 − ō): the score of one who always names the share ō that came. */
  readonly uncertainty: number
  /** What is left because chances within a band differ: Σ(p − p̄ₖ)²/n − 2Σ(p − p̄ₖ)(o − ōₖ)/n. */
  readonly withinBands: number
  /** 1 − score/uncertainty: 1 at best, 0 no better than naming the share that came; null where all or none came. */
  readonly skill: number | null
}

/**
 * Brier score and its parts: score = reliability − resolution + uncertainty + withinBands.
 *
 * Source: Brier 1950 for the score; Murphy 1973 (J. Appl. Meteorol. 12, 595) for its three parts; Stephenson, Coelho and
 * Jolliffe 2008 (Weather and Forecasting 23, 752) for the terms within bands. Held: quoted.
 *
 * @throws RangeError if nothing was told, or a chance is outside 0 to 1.
 */
export function brierOf(all: readonly ToldAndSeen[]): Brier {
  requireWithin('told', all.length, 1, Number.MAX_SAFE_INTEGER, '')
  for (const { chance } of all) requireWithin('chance', chance, 0, 1, '')
  const n = all.length
  const seen = ({ came }: ToldAndSeen) => (came ? 1 : 0)
  const share = sum(all.map(seen)) / n
  let [reliability, resolution, withinBands] = [0, 0, 0]
  for (const { pairs } of groupsOf(all)) {
    const told = sum(pairs.map(({ chance }) => chance)) / pairs.length
    const came = sum(pairs.map(seen)) / pairs.length
    reliability += (pairs.length * (told - came) ** 2) / n
    resolution += (pairs.length * (came - share) ** 2) / n
    for (const pair of pairs) {
      const off = pair.chance - told
      withinBands += (off ** 2 - 2 * off * (seen(pair) - came)) / n
    }
  }
  const uncertainty = share * (1 - share)
  const score = sum(all.map((pair) => (pair.chance - seen(pair)) ** 2)) / n
  return {
    told: n,
    score,
    reliability,
    resolution,
    uncertainty,
    withinBands,
    skill: uncertainty > 0 ? 1 - score / uncertainty : null,
  }
}

function groupsOf(
  all: readonly ToldAndSeen[],
): { readonly from: number; readonly to: number; readonly pairs: readonly ToldAndSeen[] }[] {
  return bandBounds.slice(1).flatMap((to, i) => {
    const from = bandBounds[i]!
    const isLast = i === bandBounds.length - 2
    const pairs = all.filter(({ chance }) => chance >= from && (chance < to || (isLast && chance === to)))
    return pairs.length === 0 ? [] : [{ from, to, pairs }]
  })
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0)
}
