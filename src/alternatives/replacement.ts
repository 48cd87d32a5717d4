/**
 * Another set, or none: what a policy does when it does not mend.
 *
 * @module
 */

import { amountsOf, drawAmount, normalFrom } from './amounts.js'
import { draw, drawLimits, purpose, uniformFrom, WHOLE_SET } from './draws.js'
import { discount, type History, K, pay } from './history.js'
import { fuelPerHour, goDown, lastSlope, staysStopped } from './outage.js'
import type { Program } from './program.js'
import { clear } from './queue.js'
import { plantFault, startNew, startUsed, visibleModeOf } from './start.js'
import { discountedYears, totalAt } from './use.js'

/** A model that asks for more than can be counted. */
export class TooManyEvents extends Error {}

const compiledAmounts = new WeakMap<Program, ReturnType<typeof amountsOf>>()
const perCandidate = 4

/** Price, installation, lead and days to install of each candidate, then the cost of giving up. */
function amountsOfProgram(program: Program): ReturnType<typeof amountsOf> {
  let amounts = compiledAmounts.get(program)
  if (amounts === undefined) {
    const { candidates, giveUp } = program.model
    amounts = amountsOf([
      ...candidates.flatMap((c) => [c.price, c.install, c.leadDays, c.installDays]),
      giveUp.costNow,
    ])
    compiledAmounts.set(program, amounts)
  }
  return amounts
}

/** Fits candidate `c` at `t`. Planned: the set comes while the old one still runs. */
export function replaceSet(
  h: History,
  t: number,
  how: { readonly candidate: number; readonly planned: boolean; readonly isStop: boolean },
): void {
  const { program } = h
  const { model } = program
  const candidate = model.candidates[how.candidate]!
  if (h.set + 1 >= drawLimits.sets) throw new TooManyEvents('the set is replaced more than 255 times')
  h.set++
  h.candidate = how.candidate
  if (h.sums[K.replacedAt]! < 0) h.sums[K.replacedAt] = t
  const amounts = amountsOfProgram(program)
  const row = how.candidate * perCandidate
  draw(h.draws, h.set, WHOLE_SET, 0, purpose.replacement, 0)
  const price = drawAmount(amounts, row, h.draws.words[0]!)
  const install = drawAmount(amounts, row + 1, h.draws.words[1]!)
  pay(h, K.replacement, t, price + install - model.set.salvageAtReplacement)
  draw(h.draws, h.set, WHOLE_SET, 0, purpose.replacementDays, 0)
  const lead = drawAmount(amounts, row + 2, h.draws.words[0]!)
  const days = drawAmount(amounts, row + 3, h.draws.words[1]!)

  changeFuel(h, t)
  draw(h.draws, h.set, WHOLE_SET, 0, purpose.newSet, 0)
  h.kappa = Math.exp(h.boatLog + model.setFactor.setLogSd * normalFrom(h.draws.words[0]!))
  h.partPriceFactor = candidate.partPriceFactor
  h.labourFactor = candidate.labourFactor
  h.lowLoadShare = candidate.lowLoadShare ?? model.use.lowLoadShare
  h.guaranteeUntil = t + candidate.guaranteeYears
  h.setBorn = t - (candidate.used?.years ?? 0)
  goDown(h, t, { waitDays: how.planned ? 0 : lead, workDays: days, isStop: how.isStop })
  h.jobs.fill(0)
  h.services.fill(0)
  const used = program.used.get(how.candidate)
  if (used === undefined) startNew(h, t)
  else startUsed(h, t, used)
  plantInfantFaults(h, t, candidate.infantFaults)
}

/** Faults built in: a Poisson number, each in a part drawn evenly. */
function plantInfantFaults(h: History, t: number, mean: number): void {
  if (mean === 0) return
  draw(h.draws, h.set, WHOLE_SET, 0, purpose.infants, 0)
  const count = poisson(mean, uniformFrom(h.draws.words[0]!))
  for (let i = 0; i < count; i++) {
    draw(h.draws, h.set, WHOLE_SET, 0, purpose.infant, i)
    const part = Math.floor(uniformFrom(h.draws.words[0]!) * h.program.parts.count)
    const mode = visibleModeOf(h, part, h.draws.words[1]!)
    draw(h.draws, h.set, WHOLE_SET, 0, purpose.infantOnset, i)
    if (mode >= 0) plantFault(h, t, { mode, onsetWord: h.draws.words[0]! })
  }
}

function poisson(mean: number, u: number): number {
  let chance = Math.exp(-mean)
  let sum = chance
  let count = 0
  while (u > sum && chance > 0) {
    count++
    chance *= mean / count
    sum += chance
  }
  return count
}

/** Running hours that were booked at the old set's fuel go on at the new one's. */
function changeFuel(h: History, t: number): void {
  const { use } = h.program
  const old = h.fuelPrice
  h.fuelPrice = fuelPerHour(h)
  const from = Math.max(t, Math.min(h.downUntil, h.horizon))
  const ahead = totalAt(use, use.discountedHours, h.horizon) - totalAt(use, use.discountedHours, from)
  h.sums[K.fuel]! += ahead * (h.fuelPrice - old)
}

/** Lives on without a set from `t`: sells it, pays what stands in for it, and does without the rest. */
export function giveUp(h: History, t: number, standsFailed: boolean): void {
  const { model, use } = h.program
  const amounts = amountsOfProgram(h.program)
  draw(h.draws, h.set, WHOLE_SET, 0, purpose.giveUp, 0)
  pay(h, K.giveUp, t, drawAmount(amounts, model.candidates.length * perCandidate, h.draws.words[0]!))
  h.sums[K.resale]! -= resaleValue(h, t, standsFailed) * discount(h, t)
  staysStopped(h, t)
  h.gaveUpAt = t
  clear(h.queue)
  const years = h.horizon - t
  const annuity = discountedYears(h.interest, t, h.horizon)
  h.sums[K.giveUp]! += model.giveUp.costPerYear * annuity
  for (let y = Math.floor(t); y < h.horizon; y++) {
    h.years[y]! += model.giveUp.costPerYear * (Math.min(y + 1, h.horizon) - Math.max(y, t))
  }
  const meanMonth = model.powerLoss.byMonth.reduce((a, b) => a + b, 0) / model.powerLoss.byMonth.length
  h.sums[K.daysWithout]! += model.giveUp.daysWithoutPerYear * years
  h.sums[K.power]! += model.giveUp.daysWithoutPerYear * lastSlope(model.powerLoss.curve) * meanMonth * annuity
  const from = Math.max(t, Math.min(h.downUntil, h.horizon))
  const ahead = totalAt(use, use.discountedHours, h.horizon) - totalAt(use, use.discountedHours, from)
  h.sums[K.fuel]! -= ahead * h.fuelPrice
  h.sums[K.upkeep]! -= model.upkeepPerYear * annuity
}

/** What the set in place would fetch at `t`. */
export function resaleValue(h: History, t: number, standsFailed: boolean): number {
  const { model } = h.program
  const resale = (h.candidate >= 0 ? model.candidates[h.candidate]!.resale : undefined) ?? model.set.resale
  if (resale === undefined) return 0
  const age = Math.max(0, t - h.setBorn)
  const running = Math.max(resale.least, resale.newPrice * resale.share * Math.exp(-resale.fallPerYear * age))
  return standsFailed ? running * resale.deadShare : running
}
