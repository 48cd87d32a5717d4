/**
 * Looks: what they find, what is ordered then, and which of them the log holds. Numbers in round brackets are sentences of
 * `docs/life-model.md`.
 *
 * @module
 */

import { happens, uniform } from './chance.js'
import { daysAYear, takeOut } from './ledger.js'
import { dateOf, type NotedLook } from './log.js'
import { detectionOf, hoursPerYear } from './nature.js'
import { FOR, type ModeNow, nameOf, ofMode, rounding, type World } from './state.js'
import { drawnSupply, type Supply } from './work.js'

/** (13) Hours until a defective mode is next looked at in any way. */
export function hoursToLook(world: World, mode: ModeNow): number {
  const { hours } = world.parts[mode.plain.part]!
  let least = Number.POSITIVE_INFINITY
  for (const check of mode.plain.checks) {
    const multiple = Math.floor(mode.looked / check.every + rounding) + 1
    least = Math.min(least, multiple * check.every - hours)
  }
  return least
}

/** (13, 14, 16) */
export function look(world: World, mode: ModeNow): undefined {
  const { hours } = world.parts[mode.plain.part]!
  const { looked } = mode
  mode.looked = hours
  for (const [c, check] of mode.plain.checks.entries()) {
    const multiple = Math.floor(looked / check.every + rounding) + 1
    if (multiple * check.every - hours > rounding * check.every) continue
    if (!happens(ofMode(world, mode, FOR.made, c, multiple), check.diligence)) continue
    const good = detectionOf(check.detection, uniform(ofMode(world, mode, FOR.quality, c)))
    if (!happens(ofMode(world, mode, FOR.seen, c, multiple), good)) continue
    const supply = supplyOf(world, mode.plain.part, 'found')
    const wait = supply.days / daysAYear
    const yearly = mode.plain.byHours
      ? world.t < 0
        ? world.nature.pastHoursPerYear
        : hoursPerYear(world.nature.model)
      : 1
    const found = { at: world.t + wait, supply }
    mode.seen = { at: world.t, check: check.id }
    if ((mode.delay - mode.since) / yearly > wait) mode.found = { ...found, rested: false }
    else if (happens(ofMode(world, mode, FOR.rest), world.nature.model.care.restChance)) {
      takeOut(world, { years: wait, stop: false })
      mode.found = { ...found, rested: true }
    } else mode.left = true
    return
  }
}

/** (21) Ordered when something is found, or once it has failed: two different draws. */
export function supplyOf(world: World, part: number, when: 'found' | 'failed'): Supply {
  const { repair } = world.nature.model.parts[part]!
  const name = nameOf(world, part, FOR.supply, when === 'found' ? 1 : 0)
  return drawnSupply(repair, { t: Math.max(0, world.t), name })
}

/** Looks noted of each check at most. */
const notedPerCheck = 2
/** Looks nearer to one another than this are one but for rounding. [years] */
const lookApart = 1e-6

/** Looks of the present life that were made: the latest of each check, and the one that found something. */
export function notedLooks(world: World, mode: ModeNow): NotedLook[] {
  const { part } = mode.plain
  const { hours } = world.parts[part]!
  const { fittedHours } = world.log.parts[part]!
  const looks: NotedLook[] = []
  mode.plain.checks.forEach((check, c) => {
    let noted = 0
    for (let k = Math.floor(hours / check.every + rounding); k > 0 && noted < notedPerCheck; k--) {
      const at = dateOf(world.log, fittedHours + k * check.every)
      if (at <= -world.nature.logYears) break
      if (mode.seen !== null && at >= mode.seen.at - lookApart) continue
      if (!happens(ofMode(world, mode, FOR.made, c, k), check.diligence)) continue
      looks.push({ at, check: check.id, seen: false })
      noted++
    }
  })
  if (mode.seen !== null) looks.push({ ...mode.seen, seen: true })
  return looks.sort((a, b) => a.at - b.at)
}
