/**
 * What an alternative does at t = 0, and what stands broken then: sentence 29 of `docs/life-model.md`.
 *
 * @module
 */

import type { Alternative, Outcome } from '../../src/forecast/life-model.js'
import { fail } from './event.js'
import { applyMend, drawSupply, intrude, type Mend, patch, priceOf, tripsOf, workOf } from './job.js'
import type { ModeNow, PartNow } from './life.js'
import { candidateOf, giveUp, replace } from './policy.js'
import { drawAmount, happens, lognormal } from './random.js'
import { beginLife, book, daysAYear, settleWear, takeOut, type World } from './world.js'

type Action = Exclude<Alternative['now'], string | { replaceWith: string }>

interface Broken {
  readonly part: PartNow
  readonly mode: ModeNow
  readonly stops: boolean
}

/** (29, 30, 31) */
export function actNow(world: World): void {
  const broken = brokenModes(world)
  const stands = broken.some((one) => one.stops)
  const { now } = world.alternative
  if (now === 'give-up') {
    giveUp(world, { failed: stands })
    return
  }
  if (typeof now === 'object' && 'replaceWith' in now) {
    replace(world, candidateOf(world, now.replaceWith), { lead: stands, stop: false })
    settleWear(world)
    return
  }
  if (now !== 'leave') putRight(world, now, stands)
  for (const { part, mode, stops } of broken) {
    if (world.tally.gaveUp || !world.parts.includes(part)) return
    const mended =
      now !== 'leave' &&
      now.parts.some(
        (line) =>
          line.part === part.model.id &&
          (line.mode === undefined || line.mode === mode.model.id || reachesAll(line.outcome)),
      )
    if (!mended) fail(world, { part, mode, standing: { stops } })
  }
}

/** (25, 29) Whether the whole part is put right, whichever mode prices it. */
function reachesAll(outcome: Outcome): boolean {
  return outcome === 'renewed' || outcome === 'reconditioned'
}

function brokenModes(world: World): Broken[] {
  return world.parts.flatMap((part) =>
    part.modes
      .filter((mode) => mode.model.id === part.model.broken)
      .map((mode) => ({ part, mode, stops: !mode.model.hidden && happens(world.chance, mode.model.stops) })),
  )
}

/** (29) Parts put right as one planned job. */
function putRight(world: World, action: Action, stands: boolean): void {
  const { chance, model } = world
  const mends = action.parts.map((line): Mend => {
    const part = world.parts.find((one) => one.model.id === line.part)
    if (part === undefined) throw new Error(`part must be one of the model; found ${line.part}`)
    const modes = part.modes.filter((mode) => line.mode === undefined || mode.model.id === line.mode)
    const own = line.mode === undefined ? undefined : modes[0]?.model.remedy.repair
    const { outcome, agesLess } = line
    return { part, modes, outcome, agesLess, repair: own ?? part.model.repair }
  })

  let pieces = 0
  let workshopDays = 0
  for (const { outcome, repair } of mends) {
    if (outcome !== 'cleared') {
      pieces += drawAmount(chance, repair.price) * (drawSupply(chance, repair, 0)?.priceFactor ?? 1)
    }
    workshopDays = Math.max(workshopDays, drawAmount(chance, repair.workshopDays))
  }
  const work = workOf(world, mends, false)
  if (action.quote === undefined) {
    const price =
      action.price === undefined
        ? priceOf(world, { pieces, work, trips: tripsOf(mends) })
        : drawAmount(chance, action.price)
    book(world, 'now', price * lognormal(chance, model.labour.overrun))
  } else {
    const { price, overrun, besides } = action.quote
    book(world, 'now', price * lognormal(chance, overrun) + drawAmount(chance, besides))
  }

  const wait = drawAmount(chance, action.wait)
  const days =
    action.days === undefined
      ? workshopDays + (work.owner + work.paid) / model.labour.hoursPerDay
      : drawAmount(chance, action.days)
  takeOut(world, { years: ((stands ? wait : 0) + days) / daysAYear, stop: false })
  for (const group of work.opened) world.outage?.groups.add(group)

  mends.forEach((mend, k) => {
    const line = action.parts[k]!
    if (mend.outcome === 'patched') patchStanding(world, mend)
    else applyMend(world, mend, { quality: line.quality })
  })
  settleWear(world)
  // (26, 29) Whoever prices the job as a whole has a chance of their own.
  if (action.quote === undefined && action.price === undefined) {
    for (const { part, repair } of mends) intrude(world, [part], repair.intrusionChance)
  } else {
    const worked = mends.map((mend) => mend.part)
    intrude(world, worked, action.intrusionChance)
  }
}

/** A part that is patched is so in every mode that has a defect; without a delay that is as good as cleared (25). */
function patchStanding(world: World, mend: Mend): void {
  for (const mode of mend.modes) {
    if (mode.state === 'sound' && mode.model.id !== mend.part.model.broken) continue
    if (mode.model.delay === undefined) beginLife(world, mode)
    else patch(world, mode)
  }
}
