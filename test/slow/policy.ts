/**
 * Another set, or none, and when: sentences 28, 30 and 31 of `docs/life-model.md`.
 *
 * @module
 */

import type { Candidate } from '../../src/forecast/life-model.js'
import { newParts } from './life.js'
import { drawAmount, normal, pick, poisson } from './random.js'
import { book, closeOutage, daysAYear, isDown, putFaultIn, takeOut, type World } from './world.js'

/** (28) L(t): straight between knots at 0, half and the whole horizon. */
export function repairLimit(world: World): number {
  const limit = world.alternative.limit
  if (limit === undefined) return Infinity
  const [atStart, atHalf, atEnd] = limit.knots
  const way = (2 * world.t) / world.model.horizonYears
  return way < 1 ? atStart + way * (atHalf - atStart) : atHalf + (way - 1) * (atEnd - atHalf)
}

/** (28) What is done instead of a job above the limit. */
export function doInstead(world: World, job: { readonly stops: boolean }): void {
  const above = world.alternative.limit!.above
  if (above === 'give-up') {
    const failed = job.stops || isDown(world)
    if (job.stops && !isDown(world)) world.tally.stops += 1
    giveUp(world, { failed })
  } else {
    // A set that has been replaced before its year is not replaced again in that year.
    world.laterToCome = false
    replace(world, candidateOf(world, above.replaceWith), {
      lead: job.stops || isDown(world),
      stop: job.stops,
    })
  }
}

export function candidateOf(world: World, id: string): Candidate {
  const candidate = world.model.candidates.find((one) => one.id === id)
  if (candidate === undefined) throw new Error(`candidate must be one of the model; found ${id}`)
  return candidate
}

/** (30) `lead`: the set stands stopped, and is out while the new one is awaited. */
export function replace(
  world: World,
  candidate: Candidate,
  how: { readonly lead: boolean; readonly stop: boolean },
): void {
  const { chance, model } = world
  const price = drawAmount(chance, candidate.price) + drawAmount(chance, candidate.install)
  book(world, 'replacement', price - model.set.salvageAtReplacement)
  const leadDays = drawAmount(chance, candidate.leadDays)
  const installDays = drawAmount(chance, candidate.installDays)
  takeOut(world, { years: ((how.lead ? leadDays : 0) + installDays) / daysAYear, stop: how.stop })
  world.outage?.groups.clear()

  world.candidate = candidate
  world.fittedAt = world.t
  world.ageWhenFitted = candidate.used?.years ?? 0
  world.tally.replaced += 1
  const kappaLog = world.boatLog + model.setFactor.setLogSd * normal(chance)
  world.parts = newParts(model, chance, { kappaLog, hourLifeFactor: candidate.hourLifeFactor })
  world.faults = []
  if (candidate.used !== undefined) world.age(world, candidate)
  const built = poisson(chance, candidate.infantFaults)
  for (let n = 0; n < built; n++) putFaultIn(world, pick(chance, world.parts))
}

/** (31) */
export function giveUp(world: World, set: { readonly failed: boolean }): void {
  book(world, 'giveUp', drawAmount(world.chance, world.model.giveUp.costNow))
  book(world, 'resale', -worth(world, { dead: set.failed }))
  closeOutage(world, { givenUp: true })
  world.faults = []
  world.tally.gaveUp = true
}

/** (32) What the set would fetch now. */
export function worth(world: World, set: { readonly dead: boolean }): number {
  const resale = world.candidate === null ? world.model.set.resale : world.candidate.resale
  if (resale === undefined) return 0
  const age =
    world.candidate === null
      ? world.model.set.ageYears + world.t
      : world.ageWhenFitted + world.t - world.fittedAt
  const running = Math.max(resale.least, resale.newPrice * resale.share * Math.exp(-resale.fallPerYear * age))
  return running * (set.dead ? resale.deadShare : 1)
}
