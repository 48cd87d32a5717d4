/**
 * The odds of a set and of each of its parts over the months to come: failing, stopping, what it would cost and drag
 * down, and in what state each part is likely to be now.
 *
 * @module
 */

import type { LifeMode, LifeModel, LifePart } from './life-model.js'
import { lifeQuantile } from './lives.js'
import { modeLifeOf } from './mode-life.js'
import { meanJobCost } from './odds-cost.js'
import { type NodeOdds, playAhead, useToCome } from './odds-play.js'
import { POSTERIOR_STEPS, type Posterior } from './posterior-type.js'
import { threefry2x32, uniformOfWord } from './threefry.js'
import { type UseTrack, yearlyRates } from './track.js'

/** Spans of the odds. [months] */
export const monthsAhead = [3, 6, 12, 24] as const

/** Chances by the end of each of {@link monthsAhead}. */
export type OddsAhead = readonly number[]

/** Another part that a failure brings down. */
export interface DraggedDown {
  readonly part: string
  readonly mode: string | undefined
  readonly effect: 'ruins' | 'starts-defect'
  /** Chance that it happens in the year ahead (expected number). */
  readonly perYear: number
  /** That number × what mending it besides costs on average. */
  readonly cost: number
}

export interface PartOdds {
  readonly part: string
  /** A failure met in service. */
  readonly failing: OddsAhead
  /** One that stops the set. */
  readonly stopping: OddsAhead
  /** Failures met in service in the year ahead, expected number, and what they cost with all they drag down. */
  readonly failures: number
  readonly cost: number
  /** Of the cost, what falls on other parts. */
  readonly knockOnCost: number
  readonly dragsDown: readonly DraggedDown[]
  /** Chance that a mode is defective now, or has failed unnoticed. */
  readonly defectiveNow: number
  readonly failedUnnoticedNow: number
  /** Age by which half of such parts on this set have failed by one mode or another, in this use. [years] */
  readonly halfGoneYears: number
  /** Events a year of each danger, in the year ahead. */
  readonly dangers: Readonly<Record<string, number>>
  /** Standard error of the chance of failing within a year, from the number of lives played. */
  readonly standardError: number
}

export interface Forecast {
  readonly parts: readonly PartOdds[]
  readonly set: {
    readonly failing: OddsAhead
    readonly stopping: OddsAhead
    readonly failures: number
    readonly cost: number
    readonly dangers: Readonly<Record<string, number>>
  }
  readonly seed: number
  readonly livesPerPart: number
}

/** Lives played for each part, shared among the nodes of κ. */
const livesPerPart = 5632
/** Index of the span of one year. */
const oneYear = monthsAhead.indexOf(12)
const spans = monthsAhead.map((months) => months / 12)

/**
 * Plays every part ahead from its starting states, with care and services to come, each on its own.
 *
 * At set level, given κ parts are independent: Σκ p(κ)·[1 − Π(1 − P(κ))]. Knock-on takes one step:
 * failures × chance·(1 − e·w) × what the other part costs besides, w the chance that the guard is awake now. Costs are
 * money for work and pieces, without days lost.
 */
export function forecastOf(model: LifeModel, posterior: Posterior, how: { readonly seed: number }): Forecast {
  const { odds, firstModes, use } = playParts(model, posterior, { ...how, spans })
  const means = odds.map((nodes) => meanOverNodes(nodes, posterior))
  const asleep = means.map((mean) => 1 - mean.asleep.reduce((awake, chance) => awake * (1 - chance), 1))
  const parts = model.parts.map((part, index) =>
    partOdds({
      model,
      posterior,
      part,
      index,
      firstMode: firstModes[index]!,
      mean: means[index]!,
      asleep,
      use: use.track,
      seed: how.seed,
    }),
  )
  return {
    parts,
    set: {
      failing: atSetLevel(odds, posterior, (node) => node.failing),
      stopping: atSetLevel(odds, posterior, (node) => node.stopping),
      failures: parts.reduce((sum, part) => sum + part.failures, 0),
      cost: parts.reduce((sum, part) => sum + part.cost, 0),
      dangers: addDangers(parts.map((part) => part.dangers)),
    },
    seed: how.seed,
    livesPerPart,
  }
}

/**
 * The chances of {@link forecastOf} at one of its spans alone, in as much less time as less is played: of each part that
 * it fails in service, and of the set that it stops.
 */
export function chancesWithin(
  model: LifeModel,
  posterior: Posterior,
  how: { readonly seed: number; readonly months: (typeof monthsAhead)[number] },
): { readonly failing: Readonly<Record<string, number>>; readonly setStopping: number } {
  const spans = [how.months / 12]
  const { odds } = playParts(model, posterior, { ...how, spans })
  const failing = odds.map((nodes) => meanOverNodes(nodes, posterior).failing[0]!)
  return {
    failing: Object.fromEntries(model.parts.map(({ id }, p) => [id, failing[p]!])),
    setStopping: atSetLevel(odds, posterior, (node) => node.stopping)[0]!,
  }
}

/** Every part played ahead by itself, at every node of κ. */
function playParts(
  model: LifeModel,
  posterior: Posterior,
  how: { readonly seed: number; readonly spans: readonly number[] },
) {
  const livesPerNode = Math.ceil(livesPerPart / posterior.kappaLog.length)
  const use = useToCome(model, how.spans[how.spans.length - 1]!)
  const firstModes: number[] = []
  model.parts.reduce((first, part) => {
    firstModes.push(first)
    return first + part.modes.length
  }, 0)
  const odds = model.parts.map((_, index) =>
    playAhead(model, index, { ...how, posterior, firstMode: firstModes[index]!, use, livesPerNode }),
  )
  return { odds, firstModes, use }
}

interface PartSources {
  readonly model: LifeModel
  readonly posterior: Posterior
  readonly part: LifePart
  readonly index: number
  readonly firstMode: number
  readonly mean: NodeOdds
  /** Chance of each part that one of its modes has failed unnoticed. */
  readonly asleep: readonly number[]
  readonly use: UseTrack
  readonly seed: number
}

function partOdds(from: PartSources): PartOdds {
  const { model, part, mean } = from
  const visible = part.modes.map((mode, m) => (mode.hidden ? 0 : mean.failures[m]!))
  const ownCost = part.modes.reduce(
    (sum, mode, m) => sum + visible[m]! * meanJobCost(model, { part, mode }),
    0,
  )
  const dragsDown = part.modes.flatMap((mode, m) => draggedDownBy(from, mode, mean.failures[m]!))
  const knockOnCost = dragsDown.reduce((sum, { cost }) => sum + cost, 0)
  const chance = mean.failing[oneYear]!
  const without = (chances: Float64Array) => 1 - chances.reduce((none, each) => none * (1 - each), 1)
  return {
    part: part.id,
    failing: [...mean.failing],
    stopping: [...mean.stopping],
    failures: visible.reduce((a, b) => a + b, 0),
    cost: ownCost + knockOnCost,
    knockOnCost,
    dragsDown,
    defectiveNow: without(mean.defective),
    failedUnnoticedNow: without(mean.asleep),
    halfGoneYears: halfGoneYears(from),
    dangers: addDangers(part.modes.map((mode, m) => dangersOf(model, mode, mean.failures[m]!))),
    standardError: Math.sqrt((chance * (1 - chance)) / livesPerPart),
  }
}

function draggedDownBy(from: PartSources, mode: LifeMode, failures: number): DraggedDown[] {
  const { model, part, asleep } = from
  return mode.links.flatMap((link) => {
    const target = model.parts.find(({ id }) => id === link.part)
    if (target === undefined) return []
    const guard = model.parts.findIndex(({ id }) => id === link.guard?.part)
    const held = guard < 0 ? 0 : link.guard!.effectiveness * (1 - asleep[guard]!)
    const perYear = failures * link.chance * (1 - held)
    const hit = { part: target, mode: target.modes.find(({ id }) => id === link.mode) }
    const cost = perYear * meanJobCost(model, hit, { part, mode })
    return [{ part: link.part, mode: link.mode, effect: link.effect, perYear, cost }]
  })
}

function dangersOf(model: LifeModel, mode: LifeMode, failures: number): Record<string, number> {
  return Object.fromEntries(mode.dangers.map((kind) => [kind, failures * (model.dangers[kind] ?? 0)]))
}

function addDangers(lists: readonly Readonly<Record<string, number>>[]): Record<string, number> {
  const sum: Record<string, number> = {}
  for (const list of lists)
    for (const [kind, value] of Object.entries(list)) sum[kind] = (sum[kind] ?? 0) + value
  return sum
}

function meanOverNodes(nodes: readonly NodeOdds[], posterior: Posterior): NodeOdds {
  const mean = (read: (node: NodeOdds) => Float64Array) =>
    read(nodes[0]!).map((_, k) =>
      nodes.reduce((sum, node, n) => sum + posterior.kappaWeight[n]! * read(node)[k]!, 0),
    )
  return {
    failing: mean((node) => node.failing),
    stopping: mean((node) => node.stopping),
    failures: mean((node) => node.failures),
    defective: mean((node) => node.defective),
    asleep: mean((node) => node.asleep),
  }
}

function atSetLevel(
  odds: readonly (readonly NodeOdds[])[],
  posterior: Posterior,
  read: (node: NodeOdds) => Float64Array,
): number[] {
  return Array.from(read(odds[0]![0]!), (_, s) =>
    posterior.kappaWeight.reduce((sum, weight, n) => {
      const none = odds.reduce((product, nodes) => product * (1 - read(nodes[n]!)[s]!), 1)
      return sum + weight * (1 - none)
    }, 0),
  )
}

const halfGoneLives = 1023
const halfGoneKey = 0xc1000000
const longestYears = 1000

/** Median over lives of the age at the first failure of any mode: θ from the tables, use even, nobody looking. */
function halfGoneYears(from: PartSources): number {
  const { model, posterior, part, firstMode, use } = from
  const lives = part.modes.map((mode) =>
    modeLifeOf(mode, { rates: yearlyRates(model), lowLoadShare: use.lowLoadShare }),
  )
  const rates = { years: 1, hours: use.hoursPerYear, starts: use.startsPerYear }
  const nodes = posterior.kappaLog.length
  const modes = posterior.theta.length / nodes / POSTERIOR_STEPS
  const words = new Uint32Array(2)
  const ages = Float64Array.from({ length: halfGoneLives }, (_, i) => {
    let first = longestYears
    lives.forEach((life, m) => {
      threefry2x32(from.seed | 0, halfGoneKey, firstMode + m, i, words)
      const entry = ((i % nodes) * modes + firstMode + m) * POSTERIOR_STEPS + ((i * 389) % POSTERIOR_STEPS)
      const scale = posterior.theta[entry]! * life.onsetScale
      const onset = lifeQuantile({ kind: 'weibull', shape: life.shape, scale }, uniformOfWord(words[0]!))
      const delay = life.delay.kind === 'none' ? 0 : lifeQuantile(life.delay, uniformOfWord(words[1]!))
      const years = yearsOf(onset / life.pace, rates[life.clock]) + yearsOf(delay, rates[life.delayClock])
      first = Math.min(first, years)
    })
    return first
  })
  return ages.sort()[(halfGoneLives - 1) / 2]!
}

function yearsOf(span: number, perYear: number): number {
  return span === 0 ? 0 : perYear > 0 ? span / perYear : longestYears
}
