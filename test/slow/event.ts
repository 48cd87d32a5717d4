/**
 * A failure of the slow simulator with all that follows from it: sentences 17 to 19 of `docs/life-model.md`.
 *
 * @module
 */

import type { LifeMode } from '../../src/forecast/life-model.js'
import { doJob, type Member } from './job.js'
import type { ModeNow, PartNow } from './life.js'
import { happens } from './random.js'
import { beginDefect, forgetDefect, isDown, isLayUp, lookAge, settleWear, type World } from './world.js'

/** (17) A mode fails by its own clocks: now, or, in lay-up and visible, when the set is next wanted. */
export function failByItself(world: World, part: PartNow, mode: ModeNow): void {
  if (!mode.model.hidden && isLayUp(world)) {
    forgetDefect(mode)
    mode.state = 'laid-up'
  } else {
    fail(world, { part, mode })
  }
}

/** (17) The first day of use after lay-up. */
export function fitOut(world: World): void {
  for (const part of [...world.parts]) {
    for (const mode of part.modes) {
      // An earlier job of the same morning may have renewed it, or the set may be gone.
      if (mode.state !== 'laid-up' || !world.parts.includes(part)) continue
      if (world.tally.gaveUp) return
      if (happens(world.chance, world.model.care.fittingOutShare)) {
        world.tally.plannedJobs += 1
        doJob(world, [{ part, modes: [mode], plain: false }], {
          unplanned: false,
          stops: false,
          purse: 'planned',
          ashore: true,
        })
      } else {
        fail(world, { part, mode })
      }
    }
  }
}

interface Root {
  readonly part: PartNow
  readonly mode: ModeNow
  /** By a fault that work put in (26). */
  readonly intruded?: boolean
  /** Known to stand failed at the start: no links (29), and whether it stops the set was settled already. */
  readonly standing?: { readonly stops: boolean }
}

/** What has come together in one event so far. */
interface Happening {
  readonly members: Map<PartNow, { modes: ModeNow[]; plain: boolean }>
  readonly asleep: Set<PartNow>
  stops: boolean
  hits: number
  /** Whether it began with a hidden mode. */
  readonly hiddenRoot: boolean
}

/** (18, 19) */
export function fail(world: World, root: Root): void {
  const happening: Happening = {
    members: new Map(),
    asleep: new Set(),
    stops: false,
    hits: 0,
    hiddenRoot: root.mode.model.hidden,
  }
  const wasDown = isDown(world)
  strike(world, happening, root.part, root.mode, root.standing?.stops)
  if (root.standing === undefined) follow(world, happening, root.mode.model)

  const unnoticed = root.mode.model.hidden && root.standing === undefined && happening.hits === 0
  if (unnoticed) {
    // (14) Looks go on with the detection drawn for this defect.
    root.mode.state = 'asleep'
    root.mode.looked = lookAge(world, root.mode)
    root.mode.found = null
    root.mode.left = false
    settleWear(world)
    return
  }

  // (19) Shutdowns that were needed and slept are found out.
  for (const part of happening.asleep) {
    const why = happening.members.get(part) ?? { modes: [], plain: false }
    for (const mode of part.modes) {
      if (mode.state === 'asleep' && !why.modes.includes(mode)) why.modes.push(mode)
    }
    happening.members.set(part, why)
  }
  const members: Member[] = [...happening.members].map(([part, why]) => ({ part, ...why }))
  const first = world.tally.first === null ? { of: root.mode.key, atYears: world.t, cost: 0 } : null
  if (first !== null) world.tally.first = first
  const money = doJob(world, members, {
    unplanned: true,
    // (22) A failure met while down is no stop of its own.
    stops: happening.stops && !wasDown,
    purse: root.intruded ? 'intrusion' : 'failure',
  })
  if (first !== null) first.cost = money
}

/** A mode fails within an event: it is counted, its dangers too, and whether it stops the set is drawn. */
function strike(
  world: World,
  happening: Happening,
  part: PartNow,
  mode: ModeNow,
  settledStop?: boolean,
): void {
  happening.members.set(part, { modes: [mode], plain: false })
  const { failures, dangers } = world.tally
  failures[mode.key] = (failures[mode.key] ?? 0) + 1
  for (const danger of mode.model.dangers) {
    dangers[danger] = (dangers[danger] ?? 0) + (world.model.dangers[danger] ?? 0)
  }
  if (mode.model.hidden) return
  // (18)
  const { stops, derates } = mode.model
  if (settledStop ?? happens(world.chance, stops)) happening.stops = true
  else if (stops < 1 && happens(world.chance, Math.min(1, derates / (1 - stops)))) world.tally.derates += 1
}

/** (19) The links of a failed mode, and of every mode that they ruin, one after another. */
function follow(world: World, happening: Happening, root: LifeMode): void {
  const queue: LifeMode[] = [root]
  for (let failed = queue.shift(); failed !== undefined; failed = queue.shift()) {
    for (const link of failed.links) {
      const target = world.parts.find((part) => part.model.id === link.part)
      if (target === undefined || happening.members.has(target)) continue
      const guard = guardOf(world, link.guard)
      const isHit = happens(world.chance, link.chance * guard.factor)
      if (guard.asleep !== null && (isHit || !happening.hiddenRoot)) happening.asleep.add(guard.asleep)
      if (!isHit) continue

      const mode = target.modes.find((one) => one.model.id === link.mode)
      if (mode === undefined) {
        happening.members.set(target, { modes: [], plain: true })
        happening.hits += 1
      } else if (link.effect === 'ruins' || mode.model.delay === undefined) {
        if (link.effect === 'starts-defect' && mode.state !== 'sound') continue
        strike(world, happening, target, mode)
        queue.push(mode.model)
        happening.hits += 1
      } else if (mode.state === 'sound') {
        beginDefect(world, mode)
        happening.hits += 1
      }
    }
  }
}

/** (19) What a shutdown leaves of the chance: all of it where it is missing or asleep. */
function guardOf(
  world: World,
  guard: { readonly part: string; readonly effectiveness: number } | undefined,
): { readonly factor: number; readonly asleep: PartNow | null } {
  const part = world.parts.find((one) => one.model.id === guard?.part)
  if (guard === undefined || part === undefined) return { factor: 1, asleep: null }
  if (part.modes.some((mode) => mode.state === 'asleep')) return { factor: 1, asleep: part }
  return { factor: 1 - guard.effectiveness, asleep: null }
}
