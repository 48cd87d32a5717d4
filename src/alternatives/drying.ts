/**
 * A wet winding is washed, dried and tested, then rinsed and varnished at a shop, before anyone pays for a rewind.
 *
 * @module
 */

import type { SetCatalogue } from '../catalogue/scale.js'
import type { Alternative, LifeModel } from '../forecast/life-model.js'
import { POSTERIOR_STEPS, type Posterior } from '../forecast/posterior-type.js'
import { type OpenStop, windingParts } from './open-stops.js'

/** Share of its age that varnish takes from a winding: catalogue, other remedies; practice. */
const takenAway = 0.5
/** Log-sd of the whole bill, which may or may not hold a rewind; practice. */
const billLogSd = 0.4

/**
 * The alternative for the first winding that reads too low or that a job would rewind; none if there is no such.
 * Its price is the shop's, with the hours to take it out and put it back, and the price of a rewind times the chance
 * that the winding is at fault in itself, so that it still tests low when it is dry.
 */
export function dryingOf(
  setting: {
    readonly model: LifeModel
    readonly catalogue: SetCatalogue
    readonly posterior: Posterior
    readonly stops: readonly OpenStop[]
  },
  inJob: readonly string[],
): Alternative | undefined {
  const { model, catalogue, posterior, stops } = setting
  const stopped = stops.flatMap(({ parts }) => parts)
  const winding = [...stopped, ...inJob].find(
    (id) => windingParts.has(id) && model.parts.some((part) => part.id === id),
  )
  const part = catalogue.parts.find(({ id }) => id === winding)
  if (winding === undefined || part === undefined) return undefined
  const { price, days } = catalogue.wholeSet.windings
  const atFault = chanceAtFault(model, posterior, winding)
  const rewind = (part.price.made ?? part.price.original).typical
  const refitting = part.hours.paid * model.labour.paidPerHour
  return {
    id: 'dry-and-varnish',
    name: 'Wash, dry and test the winding, varnish it at a shop, and rewind only if it still tests low',
    now: {
      parts: [{ part: winding, outcome: 'reconditioned', quality: 1, agesLess: takenAway }],
      price: { median: price.rinseBakeVarnish.typical + refitting + atFault * rewind, logSd: billLogSd },
      days: days.rinseBakeVarnish.typical + atFault * days.rewind.typical,
      wait: 0,
      intrusionChance: catalogue.wholeSet.intrusion.majorRepairChance,
    },
  }
}

/** Chance that any mode of a part is no longer sound. */
function chanceAtFault(model: LifeModel, posterior: Posterior, id: string): number {
  const modes = model.parts.reduce((sum, part) => sum + part.modes.length, 0)
  let first = 0
  for (const part of model.parts) {
    if (part.id === id) return 1 - soundShare(posterior, { modes, first, count: part.modes.length })
    first += part.modes.length
  }
  return 0
}

function soundShare(
  posterior: Posterior,
  row: { readonly modes: number; readonly first: number; readonly count: number },
): number {
  return posterior.kappaWeight.reduce((sum, weight, node) => {
    let sound = 1
    for (let m = row.first; m < row.first + row.count; m++) {
      const from = (node * row.modes + m) * POSTERIOR_STEPS
      const states = posterior.state.subarray(from, from + POSTERIOR_STEPS)
      sound *= states.reduce((count, state) => count + (state === 0 ? 1 : 0), 0) / POSTERIOR_STEPS
    }
    return sum + weight * sound
  }, 0)
}
