/**
 * A boat's set as it stands on a day of its life, the lives of its parts begun, and the question that a job puts. Numbers in
 * round brackets are sentences of `docs/life-model.md`.
 *
 * @module
 */

import type { Name } from './chance.js'
import { emptyPurse, type Life, type Outage } from './ledger.js'
import type { NotedLook, SetLog } from './log.js'
import { drawn, hoursPerYear, lifeOf, type Nature, type PlainMode, plainModes, scaleLogs } from './nature.js'
import type { Supply } from './work.js'

/** A job that is about to be done. */
export interface Question {
  /** Years from now. */
  readonly at: number
  /** Parts in it by number; the first is where it began. */
  readonly parts: readonly number[]
  /** Modes that failed, or the one that was found. */
  readonly modes: readonly number[]
  /** Found before it failed. */
  readonly planned: boolean
  /** Whether the set is down with it. */
  readonly isDown: boolean
  /** What it should come to, before overrun (28). */
  readonly estimate: number
  readonly log: SetLog
  /** On the meter. */
  readonly hours: number
  /** All that the life has cost so far, discounted; no argument, but what was expected is held against what came. */
  readonly spent: number
  /** Looks of the present life of a mode that were noted, the latest last. */
  readonly looks: (mode: number) => NotedLook[]
  readonly modesOf: readonly PlainMode[]
}

export type Answer = 'mend' | 'replace'
export interface HowLived {
  /** Which of the boat's lives. */
  readonly life: number
  /** A set is replaced, failed or not, as soon as it is so old, or has run so long, or at a date. */
  readonly replaceAt?: { readonly ageYears?: number; readonly hours?: number; readonly year?: number }
}

export const SOUND = 0
export const DEFECTIVE = 1
export const rounding = 1e-6
/** What draws are for, within a life of a part. */
export const FOR = {
  onset: 1,
  delay: 2,
  quality: 3,
  seen: 4,
  made: 5,
  rest: 6,
  link: 7,
  supply: 8,
  price: 9,
  workshop: 10,
  overrun: 11,
  intrusion: 12,
  fault: 13,
  set: 14,
} as const

export interface ModeNow {
  readonly plain: PlainMode
  readonly number: number
  /** On its own clock since its last renewal. */
  age: number
  onset: number
  since: number
  delay: number
  state: number
  /** Running hours of the part up to which its looks have been followed. */
  looked: number
  found: {
    readonly at: number
    readonly supply: Supply
    readonly rested: boolean
  } | null
  left: boolean
  /** When and by what the defect was seen. */
  seen: { readonly at: number; readonly check: string } | null
}

export interface PartNow {
  /** Lives begun in this set before the present one. */
  life: number
  hours: number
  quality: number
  readonly modes: ModeNow[]
}

export interface Fault {
  readonly mode: number
  hoursLeft: number
}

export interface World {
  readonly nature: Nature
  readonly how: HowLived
  readonly plain: readonly PlainMode[]
  t: number
  set: number
  fittedAt: number
  hours: number
  guaranteeUntil: number
  parts: PartNow[]
  modes: ModeNow[]
  scales: Float64Array
  faults: Fault[]
  outage: Outage | null
  log: SetLog
  events: number
  readonly purse: Life
}

export function newWorld(nature: Nature, how: HowLived): World {
  const plain = plainModes(nature.model)
  const world: World = {
    nature,
    how,
    plain,
    t: -nature.ageYears,
    set: -1,
    fittedAt: 0,
    hours: 0,
    guaranteeUntil: Number.NEGATIVE_INFINITY,
    parts: [],
    modes: [],
    scales: new Float64Array(0),
    faults: [],
    outage: null,
    log: { set: 0, fittedAt: 0, parts: [], meter: [] },
    events: 0,
    purse: emptyPurse(),
  }
  fitSet(world)
  return world
}

/** A set with every part new. */
export function fitSet(world: World): void {
  const { nature, plain, t } = world
  world.set += 1
  world.fittedAt = t
  world.hours = 0
  world.faults = []
  world.scales = scaleLogs(nature, plain, { set: world.set, life: world.how.life }).map(Math.exp)
  world.modes = plain.map((mode, number) => ({
    plain: mode,
    number,
    age: 0,
    onset: 0,
    since: 0,
    delay: 0,
    state: SOUND,
    looked: 0,
    found: null,
    left: false,
    seen: null,
  }))
  world.parts = nature.model.parts.map((_, p) => ({
    life: 0,
    hours: 0,
    quality: 1,
    modes: world.modes.filter((mode) => mode.plain.part === p),
  }))
  world.log = {
    set: world.set,
    fittedAt: t,
    parts: world.parts.map(() => ({ fittedAt: t, fittedHours: 0, quality: 1, pastLives: [] })),
    meter: [{ at: t, hours: 0 }],
  }
  for (const mode of world.modes) beginLife(world, mode)
}

/** The name of what is drawn for the present life of a part. */
export function nameOf(world: World, part: number, ...rest: number[]): Name {
  return [world.nature.seed, 2, world.how.life, world.set, part, world.parts[part]!.life, ...rest]
}

export function ofMode(world: World, mode: ModeNow, ...rest: number[]): Name {
  return nameOf(world, mode.plain.part, mode.number, ...rest)
}

export function beginLife(world: World, mode: ModeNow): void {
  const { plain, number } = mode
  mode.age = 0
  mode.state = SOUND
  mode.looked = 0
  mode.since = 0
  mode.found = null
  mode.left = false
  mode.seen = null
  const scale = plain.onsetScale * world.scales[number]! * world.parts[plain.part]!.quality
  mode.onset = scale * lifeOf(world.nature.law, plain.shape, ofMode(world, mode, FOR.onset))
}

export function beginDefect(world: World, mode: ModeNow): void {
  mode.state = DEFECTIVE
  mode.since = 0
  mode.looked = world.parts[mode.plain.part]!.hours
  mode.delay = mode.plain.delay === null ? 0 : drawn(mode.plain.delay, ofMode(world, mode, FOR.delay))
}

/** Running hours a year, the set being up. */
export function rateNow(world: World): number {
  if (world.outage !== null) return 0
  return world.t < 0 ? world.nature.pastHoursPerYear : hoursPerYear(world.nature.model)
}

export type Steps = Generator<Question, void, Answer>
