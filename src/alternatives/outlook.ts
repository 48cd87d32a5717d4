/**
 * What is coming if nothing is done ahead: the chance that each part, and the set, fails or stops within so many months.
 *
 * @module
 */

import type { LifeModel } from '../forecast/life-model.js'
import type { Posterior } from '../forecast/posterior-type.js'
import { compile } from './program.js'
import { column, playSpan, type Sample } from './simulate.js'

export interface ChanceWithin {
  readonly months: number
  /** Chance of at least one failure, and of at least one stop. */
  readonly fails: number
  readonly stops: number
}

export interface PartOutlook {
  readonly part: string
  readonly within: readonly ChanceWithin[]
  /** Mean cost of the event when this part is the first to fail, with all it drags down; null if it never was. */
  readonly costWhenFirst: number | null
  /** Parts that fail with it most often, and in what share of its failures by direct links. */
  readonly dragsDown: readonly { readonly part: string; readonly chance: number }[]
}

export interface Outlook {
  readonly histories: number
  /** The whole set. */
  readonly within: readonly ChanceWithin[]
  /** Likeliest to fail within the last of the spans first. */
  readonly parts: readonly PartOutlook[]
}

export const outlookMonths = [3, 6, 12, 24] as const

/**
 * Plays `histories` short histories of leaving the set as it is, one span at a time on the same chances.
 *
 * Chance of failing: share of histories with a failure of the part. Chance of stopping: mean of
 * 1 − Π(1 − stops)^failures over its visible modes; for the set the share of histories with a stop.
 */
export function outlookOf(
  model: LifeModel,
  posterior: Posterior,
  how: { readonly seed: number; readonly histories: number },
): Outlook {
  const spans = outlookMonths.map((months) => playWithin(model, posterior, { ...how, months }))
  const last = spans.at(-1)!
  const parts = model.parts.map((part, p) => ({
    part: part.id,
    within: spans.map(({ months, parts: counted }) => ({ months, ...counted[p]! })),
    costWhenFirst: last.firstCost[p]!,
    dragsDown: dragsDownOf(part),
  }))
  return {
    histories: how.histories,
    within: spans.map(({ months, set }) => ({ months, ...set })),
    parts: parts.sort((a, b) => b.within.at(-1)!.fails - a.within.at(-1)!.fails),
  }
}

interface Within {
  readonly months: number
  readonly set: { readonly fails: number; readonly stops: number }
  readonly parts: readonly { readonly fails: number; readonly stops: number }[]
  readonly firstCost: readonly (number | null)[]
}

function playWithin(
  model: LifeModel,
  posterior: Posterior,
  how: { readonly seed: number; readonly histories: number; readonly months: number },
): Within {
  const { seed, histories, months } = how
  const short: LifeModel = {
    ...model,
    horizonYears: months / 12,
    alternatives: [{ id: 'leave', now: 'leave' }],
  }
  const program = compile(short, posterior)
  const counts = model.parts.map(() => ({ fails: 0, stops: 0 }))
  const first = model.parts.map(() => ({ count: 0, cost: 0 }))
  const partOfMode = model.parts.flatMap((part, p) => part.modes.map(() => p))
  const set = { fails: 0, stops: 0 }
  for (let i = 0; i < histories; i++) {
    const [sample] = playSpan(program, { seed, from: i, count: 1 })
    countHistory(model, sample!, counts)
    if (sample!.failuresOfMode.some((failures) => failures > 0)) set.fails++
    if (column(sample!, 'stops')[0]! + column(sample!, 'sameDayStops')[0]! > 0) set.stops++
    const mode = column(sample!, 'firstMode')[0]!
    if (mode < 0) continue
    first[partOfMode[mode]!]!.count++
    first[partOfMode[mode]!]!.cost += column(sample!, 'firstCost')[0]!
  }
  const share = (sum: number) => sum / histories
  return {
    months,
    set: { fails: share(set.fails), stops: share(set.stops) },
    parts: counts.map(({ fails, stops }) => ({ fails: share(fails), stops: share(stops) })),
    firstCost: first.map(({ count, cost }) => (count === 0 ? null : cost / count)),
  }
}

function countHistory(model: LifeModel, sample: Sample, counts: { fails: number; stops: number }[]): void {
  let m = 0
  model.parts.forEach((part, p) => {
    let failures = 0
    let runsOn = 1
    for (const mode of part.modes) {
      const failed = sample.failuresOfMode[m++]!
      failures += failed
      if (failed > 0 && !mode.hidden) runsOn *= (1 - mode.stops) ** failed
    }
    if (failures > 0) counts[p]!.fails++
    counts[p]!.stops += 1 - runsOn
  })
}

/** Chance that a failure of the part by its likeliest linking mode brings another down. */
function dragsDownOf(part: LifeModel['parts'][number]): PartOutlook['dragsDown'] {
  const chances = new Map<string, number>()
  for (const mode of part.modes) {
    for (const link of mode.links) chances.set(link.part, Math.max(chances.get(link.part) ?? 0, link.chance))
  }
  return [...chances].map(([to, chance]) => ({ part: to, chance })).sort((a, b) => b.chance - a.chance)
}
