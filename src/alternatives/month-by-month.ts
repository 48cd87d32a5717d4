/**
 * What is likely when: the odds of a set and its parts by the end of each calendar month to come, and by which age parts go.
 *
 * @module
 */

import type { LifeModel } from '../forecast/life-model.js'
import { lifeQuantile } from '../forecast/lives.js'
import { modeLifeOf } from '../forecast/mode-life.js'
import { type NodeOdds, playAhead, useToCome } from '../forecast/odds-play.js'
import { POSTERIOR_STEPS, type Posterior } from '../forecast/posterior-type.js'
import { threefry2x32, uniformOfWord } from '../forecast/threefry.js'
import { yearlyRates } from '../forecast/track.js'

/** A calendar month to come. */
export interface MonthAhead {
  /** From 0, January, to 11. */
  readonly month: number
  /** Years after the one that the forecast begins in. */
  readonly yearsOn: number
  readonly laidUp: boolean
  /** When it ends, from now. [years] */
  readonly ends: number
}

export interface MonthByMonth {
  readonly months: readonly MonthAhead[]
  /** Chance of a failure met in service by the end of each month. */
  readonly parts: readonly { readonly part: string; readonly failing: readonly number[] }[]
  /** Chance of at least one stop by the end of each month: expected, and as good and bad as such sets are. */
  readonly stopping: {
    readonly expected: readonly number[]
    readonly low: readonly number[]
    readonly high: readonly number[]
  }
  readonly livesPerPart: number
}

export interface MonthsAsked {
  readonly seed: number
  /** Calendar months, the present one included. */
  readonly months: number
  /** Lives of each part at each node of the set factor. */
  readonly livesPerNode: number
}

/**
 * Plays every part ahead month by month. At set level parts are independent given κ: `1 − Π(1 − P)` at each node, its mean
 * expected, and its 10 and 90 hundredths over the nodes' weights as low and high, since nobody knows how good this set is.
 */
export function monthByMonth(model: LifeModel, posterior: Posterior, asked: MonthsAsked): MonthByMonth {
  const months = monthsAhead(model, asked.months)
  // What shows on the first day of a month belongs to it, and not to the one before.
  const spans = months.map(({ ends }) => ends - aMoment)
  const use = useToCome(model, spans[spans.length - 1]!)
  let firstMode = 0
  const odds = model.parts.map((part, index) => {
    const { seed, livesPerNode } = asked
    const nodes = playAhead(model, index, { posterior, firstMode, use, spans, livesPerNode, seed })
    firstMode += part.modes.length
    return nodes
  })
  const { kappaWeight } = posterior
  const atNode = (node: number, month: number) =>
    1 - odds.reduce((none, nodes) => none * (1 - nodes[node]!.stopping[month]!), 1)
  const stopping = months.map((_, month) => Array.from(kappaWeight, (__, node) => atNode(node, month)))
  const weighted = (values: readonly number[]) =>
    values.reduce((sum, value, node) => sum + value * kappaWeight[node]!, 0)
  return {
    months,
    parts: model.parts.map((part, index) => ({
      part: part.id,
      failing: months.map((_, month) => weighted(odds[index]!.map((node: NodeOdds) => node.failing[month]!))),
    })),
    stopping: {
      expected: stopping.map(weighted),
      low: stopping.map((values) => weightedQuantile({ values, weights: kappaWeight, share: 0.1 })),
      high: stopping.map((values) => weightedQuantile({ values, weights: kappaWeight, share: 0.9 })),
    },
    livesPerPart: asked.livesPerNode * kappaWeight.length,
  }
}

/** Some seconds. [years] */
const aMoment = 1e-6

/** The calendar months from the one that the model starts in. */
export function monthsAhead(model: Pick<LifeModel, 'startMonth' | 'use'>, count: number): MonthAhead[] {
  const first = Math.floor(model.startMonth)
  const partOfFirst = first + 1 - model.startMonth
  return Array.from({ length: count }, (_, k) => ({
    month: (first + k) % 12,
    yearsOn: Math.floor((first + k) / 12),
    laidUp: !(model.use.hoursByMonth[(first + k) % 12]! > 0),
    ends: (partOfFirst + k) / 12,
  }))
}

/**
 * Quantile of weighted values: straight between the middles of their weights once sorted, and level past the outermost.
 */
export function weightedQuantile(of: {
  readonly values: readonly number[]
  readonly weights: ArrayLike<number>
  readonly share: number
}): number {
  const { values, weights, share } = of
  const sorted = values.map((value, i) => ({ value, weight: weights[i]! })).sort((a, b) => a.value - b.value)
  const whole = sorted.reduce((sum, { weight }) => sum + weight, 0)
  let below = 0
  let before: { readonly value: number; readonly at: number } | undefined
  for (const { value, weight } of sorted) {
    const at = (below + weight / 2) / whole
    if (at >= share) {
      if (before === undefined || at === before.at) return value
      return before.value + ((value - before.value) * (share - before.at)) / (at - before.at)
    }
    before = { value, at }
    below += weight
  }
  return before?.value ?? Number.NaN
}

/** Ages by which one part in ten, half, and nine in ten of its kind on this set have failed. [years] */
export interface LifeSpan {
  readonly part: string
  readonly tenth: number
  readonly half: number
  readonly ninth: number
}

const lives = 1023
const lifeKey = 0xc2000000
const longestYears = 1000

/** Ages at the first failure of any mode, in this set's use, with nobody looking: θ from the posterior, onset and delay drawn. */
export function lifeSpans(
  model: LifeModel,
  posterior: Posterior,
  how: { readonly seed: number },
): readonly LifeSpan[] {
  const yearly = (values: readonly number[]) => values.reduce((a, b) => a + b, 0)
  const { hoursByMonth, startsByMonth, lowLoadShare } = model.use
  const rates = { years: 1, hours: yearly(hoursByMonth), starts: yearly(startsByMonth) }
  const nodes = posterior.kappaLog.length
  const modes = posterior.theta.length / nodes / POSTERIOR_STEPS
  const nodeOf = nodesByWeight(posterior.kappaWeight, lives)
  const words = new Uint32Array(2)
  let firstMode = 0
  return model.parts.map((part) => {
    const modeLives = part.modes.map((mode) => modeLifeOf(mode, { rates: yearlyRates(model), lowLoadShare }))
    const ages = Float64Array.from({ length: lives }, (_, i) => {
      let first = longestYears
      modeLives.forEach((life, m) => {
        threefry2x32(how.seed | 0, lifeKey, firstMode + m, i, words)
        const entry = (nodeOf[i]! * modes + firstMode + m) * POSTERIOR_STEPS + ((i * 389) % POSTERIOR_STEPS)
        const scale = posterior.theta[entry]! * life.onsetScale
        const onset = lifeQuantile({ kind: 'weibull', shape: life.shape, scale }, uniformOfWord(words[0]!))
        const delay = life.delay.kind === 'none' ? 0 : lifeQuantile(life.delay, uniformOfWord(words[1]!))
        const years = yearsOf(onset / life.pace, rates[life.clock]) + yearsOf(delay, rates[life.delayClock])
        first = Math.min(first, years)
      })
      return first
    }).sort()
    firstMode += part.modes.length
    const at = (share: number) => ages[Math.round(share * (lives - 1))]!
    return { part: part.id, tenth: at(0.1), half: at(0.5), ninth: at(0.9) }
  })
}

/** Which node each of so many lives is played at, so that each has its share of them. */
function nodesByWeight(weights: ArrayLike<number>, count: number): Int32Array {
  let node = 0
  let upTo = weights[0]!
  return Int32Array.from({ length: count }, (_, i) => {
    while ((i + 0.5) / count > upTo && node < weights.length - 1) upTo += weights[++node]!
    return node
  })
}

function yearsOf(span: number, perYear: number): number {
  return span === 0 ? 0 : perYear > 0 ? Math.min(longestYears, span / perYear) : longestYears
}
