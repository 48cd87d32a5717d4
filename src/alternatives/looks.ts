/**
 * What could be looked at on the set today: by which check, at which part, what it may show and what it takes.
 *
 * @module
 */

import type { CheckEffort, LifeMode, LifeModel, LifePart } from '../forecast/life-model.js'
import { yearlyRates } from '../forecast/track.js'
import { DEFECTIVE, notSound, type StartStates } from './start-states.js'

/** One check made once at one part. */
export interface Look {
  readonly check: string
  readonly part: string
  /** Chance that it shows something where nothing is. */
  readonly falseAlarm: number
  readonly sees: readonly Sight[]
  readonly effort: CheckEffort
  /** Opening and hands at their rates, trips and price; without what it may put in. */
  readonly cost: number
}

/** A mode that a look may show. */
export interface Sight {
  /** In model order. */
  readonly mode: number
  readonly detection: number
  readonly detectionFailed: number
  /** How long ago the same check was made and showed nothing, on the clock of the mode's delay. */
  readonly missed: readonly number[]
}

const noEffort: CheckEffort = {
  hours: 0,
  shareOfRepairHours: 0,
  by: 'owner',
  trips: 0,
  price: 0,
  access: [],
  opensPart: false,
  intrusionChance: 0,
}

/** Every check of the model at every part that it may tell something of, except at what stands broken. */
export function looksOf(model: LifeModel): Look[] {
  const looks: Look[] = []
  let firstMode = 0
  for (const part of model.parts) {
    for (const { id, effort = noEffort } of model.checks) {
      const sees = part.modes.flatMap((mode, m) => sightOf(model, mode, { check: id, mode: firstMode + m }))
      if (sees.length === 0 || part.broken !== undefined) continue
      const falseAlarm = Math.max(
        ...part.modes.flatMap(({ checks }) =>
          checks.flatMap((one) => (one.check === id ? [one.falseAlarm] : [])),
        ),
      )
      const cost = costOf(model, part, effort)
      looks.push({ check: id, part: part.id, falseAlarm, sees, effort, cost })
    }
    firstMode += part.modes.length
  }
  return looks
}

function sightOf(
  model: LifeModel,
  mode: LifeMode,
  of: { readonly check: string; readonly mode: number },
): Sight[] {
  const known = mode.checks.find(({ check }) => check === of.check)
  if (known === undefined) return []
  const { detection, detectionFailed = detection } = known
  if (detection === 0 && !(mode.hidden && detectionFailed > 0)) return []
  const perYear = yearlyRates(model)[mode.delay?.clock ?? 'years']
  const missed = mode.observations.flatMap((seen) =>
    'check' in seen && seen.check === of.check && !seen.seen ? [seen.yearsAgo * perYear] : [],
  )
  return [{ mode: of.mode, detection, detectionFailed, missed }]
}

/** Money that a look takes: its price and trips, and its hours with what has to be opened at the rate of who does it. */
function costOf({ access, labour }: LifeModel, part: LifePart, effort: CheckEffort): number {
  const opened = new Set<string>()
  const open = (id: string) => {
    if (opened.has(id)) return
    opened.add(id)
    for (const other of access.find((group) => group.id === id)?.includes ?? []) open(other)
  }
  for (const id of [...effort.access, ...(effort.opensPart ? part.access : [])]) open(id)
  const opening = access.reduce((sum, { id, hours }) => sum + (opened.has(id) ? hours : 0), 0)
  const hands = effort.hours + effort.shareOfRepairHours * part.repair.hours
  const { ownPerHour, paidPerHour, perTrip, ownerAccessFactor } = labour
  const hours =
    effort.by === 'owner'
      ? (hands + opening * ownerAccessFactor) * ownPerHour
      : (hands + opening) * paidPerHour
  return hours + effort.trips * perTrip + effort.price
}

/**
 * Chance, in each history, that a look shows something: 1 − (1 − f)·Π(1 − dₘ) over the modes m that are defective or failed
 * unnoticed in it, f the chance of a false alarm. A look is never fresh where the same check has missed the same defect k
 * times: with d ~ Beta(a, b), a = 2d, b = 2(1 − d), it finds it with a / (a + b + k).
 */
export function chanceSeen(look: Look, states: StartStates): Float64Array {
  const n = states.histories
  const seen = new Float64Array(n).fill(1 - look.falseAlarm)
  for (const { mode, detection, detectionFailed, missed } of look.sees) {
    for (const i of notSound(states, mode)) {
      const at = mode * n + i
      const since = states.since[at]!
      let misses = 0
      for (const ago of missed) if (ago <= since) misses++
      seen[i]! *= 1 - afterMisses(states.state[at] === DEFECTIVE ? detection : detectionFailed, misses)
    }
  }
  for (let i = 0; i < n; i++) seen[i] = 1 - seen[i]!
  return seen
}

/** A check that always or never finds stays as it is. */
function afterMisses(detection: number, misses: number): number {
  return detection === 0 || detection === 1 ? detection : (2 * detection) / (2 + misses)
}

/** In how many histories something that the look may show is there, as a mark for each. */
export function somethingThere(look: Look, states: StartStates): Uint8Array {
  const there = new Uint8Array(states.histories)
  for (const { mode } of look.sees) for (const i of notSound(states, mode)) there[i] = 1
  return there
}
