/**
 * What a job takes: pieces and how they come, hands, opening and travel. Numbers in round brackets are sentences of
 * `docs/life-model.md`.
 *
 * @module
 */

import type { Amount, LifeModel, Repair } from '../../src/forecast/life-model.js'
import { happens, type Name, uniform } from './chance.js'
import { drawn } from './nature.js'

export interface Supply {
  readonly days: number
  readonly priceFactor: number
  readonly quality: number
}

/** (21) */
export function drawnSupply(repair: Repair, how: { readonly t: number; readonly name: Name }): Supply {
  const options = suppliesAt(repair, how.t)
  let chosen = options.at(-1)
  let u = uniform([...how.name, 0])
  for (const option of options) {
    u -= option.chance
    if (u < 0) {
      chosen = option
      break
    }
  }
  if (chosen === undefined) return { days: 0, priceFactor: 1, quality: 1 }
  let days = drawn(chosen.days, [...how.name, 1])
  if (happens([...how.name, 2], repair.wrongPartChance)) days += drawn(chosen.days, [...how.name, 3])
  return { days, priceFactor: chosen.priceFactor, quality: chosen.quality }
}

/** (21) The options some years on: the last grows likelier, the others shrink in proportion. */
export function suppliesAt(repair: Repair, t: number): Repair['supply'] {
  const last = repair.supply.at(-1)
  if (last === undefined) return []
  const lastChance = Math.min(1, last.chance + repair.lastLikelierPerYear * t)
  const shrunk = last.chance < 1 ? (1 - lastChance) / (1 - last.chance) : 0
  return repair.supply.map((option) => ({
    ...option,
    chance: option === last ? lastChance : option.chance * shrunk,
  }))
}

export function meanOf(amount: Amount): number {
  if (typeof amount === 'number') return amount
  if ('exponentialMean' in amount) return amount.exponentialMean
  return amount.median * Math.exp(amount.logSd ** 2 / 2)
}

/** (28) What a job should come to. */
export function estimateOf(model: LifeModel, parts: readonly number[]): number {
  let pieces = 0
  for (const p of parts) {
    const { price, supply } = model.parts[p]!.repair
    pieces += meanOf(price) * (supply[0]?.priceFactor ?? 1)
  }
  const { owner, paid } = workOf(model, parts, new Set())
  const { ownPerHour, paidPerHour, perTrip } = model.labour
  return pieces + owner * ownPerHour + paid * paidPerHour + tripsOf(model, parts) * perTrip
}

/** (20) */
export function workOf(
  model: LifeModel,
  parts: readonly number[],
  open: ReadonlySet<string>,
): { readonly owner: number; readonly paid: number; readonly opened: ReadonlySet<string> } {
  let owner = 0
  let paid = 0
  const opened = new Set<string>()
  for (const p of parts) {
    const { repair, access } = model.parts[p]!
    if (repair.by === 'owner') owner += repair.hours
    else paid += repair.hours
    for (const group of access) opened.add(group)
  }
  let opening = 0
  for (const { id, hours } of model.access) if (opened.has(id) && !open.has(id)) opening += hours
  if (parts.every((p) => model.parts[p]!.repair.by === 'owner'))
    owner += opening * model.labour.ownerAccessFactor
  else paid += opening
  return { owner, paid, opened }
}

export function tripsOf(model: LifeModel, parts: readonly number[]): number {
  return Math.max(...parts.map((p) => model.parts[p]!.repair.trips))
}
