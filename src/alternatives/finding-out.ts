/**
 * What a look at the set is worth before choosing: the expected saving from knowing what it shows.
 *
 * @module
 */

import type { LifeModel } from '../forecast/life-model.js'
import { normalQuantile } from '../forecast/special-normal.js'
import { chanceSeen, type Look, looksOf, somethingThere } from './looks.js'
import { mean } from './mean.js'
import type { Play } from './policy.js'
import { bestRule, gainOf, isSame, type Open, type Pick, problemOf, type Stratum } from './pre-posterior.js'
import { renewalBeside } from './renewal.js'
import { column, type Sample } from './sample.js'
import { stakes } from './stakes.js'
import { notSound, type StartStates } from './start-states.js'

/** What is chosen: an alternative, with or without renewing the part looked at. */
export interface Choice {
  readonly alternative: string
  readonly renews: boolean
}

export interface LookWorth {
  readonly look: Look
  /** Chance that it shows something. */
  readonly chanceSeen: number
  /** Expected saving by choosing after the look, before what the look costs, with its standard error. */
  readonly worth: number
  readonly error: number
  /** Money that it takes, with what it may put in. */
  readonly cost: number
  /** What is best without looking: it may be to renew the part unseen. */
  readonly unlooked: Choice
  readonly ifSeen: Choice
  readonly ifNot: Choice
  /** Surely worth something, and worth more than it costs. */
  readonly pays: boolean
}

export interface WorthOfLooks {
  /** Those that were valued, best net worth first. */
  readonly looks: readonly LookWorth[]
  /** How many others were left out because they cannot be worth what they take. */
  readonly tooSmall: number
  /** The largest that any look can be worth that could still be worth its cost and was not valued, for want of time; 0 if none. */
  readonly unvalued: number
}

export interface Valuing {
  readonly model: LifeModel
  /** Histories of every alternative of the model, all from the first on. */
  readonly samples: readonly Sample[]
  readonly states: StartStates
  readonly seed: number
  readonly play: Play
  /** Looks that are valued at most, by what they could be worth at most. */
  readonly most?: number
}

const usualMost = 24
/** Histories in which renewing is played: at most so many where there is something to be found, and where there is not. */
const atFirst: Played = { there: 400, sound: 160 }
/** And where a look may pay, but that cannot be told yet. */
const further: Played = { there: 2_000, sound: 600 }
const mostFurther = 5

interface Played {
  readonly there: number
  readonly sound: number
}

/** Alternatives beside which renewing is played. */
const renewedBeside = 2

/**
 * Value of each look by pre-posterior analysis: min E[C] − Σ_o E[min E[C | o]] over the outcomes o, something seen or nothing,
 * each history weighted by P(o | its states); what is chosen after each outcome is picked on one half of the histories and
 * valued on the other, both ways, so that no picking of lucky figures is counted as worth.
 *
 * A look that cannot be worth its cost, by Σₘ P(m defective, and seen) × what a failure of m costs, is not valued.
 */
export async function worthOfLooks(of: Valuing): Promise<WorthOfLooks> {
  const { model, samples, states, most = usualMost } = of
  const open = openOnes(model, samples)
  const atStake = stakes(model, failuresPerHistory(samples))
  const looks = looksOf(model).map((look) => {
    const seen = chanceSeen(look, states)
    return {
      look,
      seen,
      bound: boundOf(look, { seen, states, atStake }),
      cost: wholeCost(model, look, atStake),
    }
  })
  const could = looks
    .filter(({ bound, cost }) => bound > cost)
    .sort((a, b) => b.bound - b.cost - (a.bound - a.cost))
  const asked = could.slice(0, most)
  const valuing = { ...of, asked: asked.length }
  let valued = await valuedTogether(asked, open, valuing, atFirst)
  const unsure = valued.filter(({ worth, cost, pays }) => !pays && worth > cost).slice(0, mostFurther)
  const again = await valuedTogether(
    asked.filter(({ look }) => unsure.some((one) => one.look === look)),
    open,
    valuing,
    further,
  )
  valued = valued.map((one) => again.find(({ look }) => look === one.look) ?? one)
  return {
    looks: valued.sort(byNetWorth),
    tooSmall: looks.length - could.length,
    unvalued: could[most]?.bound ?? 0,
  }
}

/**
 * Standard errors that a worth must have behind it: two, and more where so many are asked about that luck alone would show
 * one of them beyond two in more than 5 of 100 cases (Bonferroni).
 */
export function beyondLuck(asked: number): number {
  return Math.max(2, normalQuantile(1 - 0.05 / Math.max(1, asked)))
}

function byNetWorth(a: LookWorth, b: LookWorth): number {
  return b.worth - b.cost - (a.worth - a.cost)
}

interface Asked {
  readonly look: Look
  /** Chance that it shows something, by history. */
  readonly seen: Float64Array
  readonly cost: number
}

/** All are asked for at once, so that whoever plays always has something to play. */
async function valuedTogether(
  looks: readonly Asked[],
  open: readonly Open[],
  of: Valuing & { readonly asked: number },
  played: Played,
): Promise<LookWorth[]> {
  const valued = await Promise.all(looks.map((look) => worthOf(look, open, of, played)))
  return valued.sort(byNetWorth)
}

/** Alternatives that may be chosen; where all are barred there is no choice, and nothing to find out for it. */
function openOnes(model: LifeModel, samples: readonly Sample[]): Open[] {
  return samples.flatMap((sample, a) => {
    const alternative = model.alternatives[a]!
    return alternative.barred === undefined ? [{ alternative, cost: column(sample, 'cost') }] : []
  })
}

/** Of each mode, in the alternative in which it fails most. */
function failuresPerHistory(samples: readonly Sample[]): Float64Array {
  const n = column(samples[0]!, 'cost').length
  return samples[0]!.failuresOfMode.map(
    (_, m) => Math.max(...samples.map(({ failuresOfMode }) => failuresOfMode[m]!)) / n,
  )
}

function boundOf(
  { sees }: Look,
  of: { readonly seen: Float64Array; readonly states: StartStates; readonly atStake: Float64Array },
): number {
  const { states, seen, atStake } = of
  return sees.reduce((sum, { mode }) => {
    let there = 0
    for (const i of notSound(states, mode)) there += seen[i]!
    return sum + (there / states.histories) * atStake[mode]!
  }, 0)
}

/** Money of the look, and of the fault that it may put into the part. */
function wholeCost(model: LifeModel, look: Look, atStake: Float64Array): number {
  const { intrusionChance } = look.effort
  if (intrusionChance === 0) return look.cost
  const first = model.parts.slice(
    0,
    model.parts.findIndex(({ id }) => id === look.part),
  )
  const from = first.reduce((sum, { modes }) => sum + modes.length, 0)
  const visible = model.parts
    .find(({ id }) => id === look.part)!
    .modes.flatMap(({ hidden }, m) => (hidden ? [] : [atStake[from + m]!]))
  const fault = visible.length === 0 ? 0 : visible.reduce((sum, cost) => sum + cost, 0) / visible.length
  return look.cost + intrusionChance * (1 - model.intrusion.testsCatch) * fault
}

async function worthOf(
  { look, seen, cost }: Asked,
  open: readonly Open[],
  of: Valuing & { readonly asked: number },
  played: Played,
): Promise<LookWorth> {
  const there = somethingThere(look, of.states)
  const strata = await renewalsPlayed(look, { there, seen, open, played }, of)
  const problem = problemOf({ open, seen, strata })
  const halves = ([0, 1] as const).map((half) => {
    const rule = bestRule(problem, half)
    return gainOf(problem, rule, half === 0 ? 1 : 0)
  })
  const worth = (halves[0]!.mean + halves[1]!.mean) / 2
  const error = Math.hypot(halves[0]!.error, halves[1]!.error) / 2
  const rule = bestRule(problem)
  const named = ({ a, renews }: Pick): Choice => ({ alternative: open[a]!.alternative.id, renews })
  return {
    look,
    chanceSeen: mean(seen),
    worth,
    error,
    cost,
    unlooked: named(rule.unlooked),
    ifSeen: named(rule.ifSeen),
    ifNot: named(rule.ifNot),
    pays: worth > beyondLuck(of.asked) * error && worth > cost && !isSame(rule.ifSeen, rule.ifNot),
  }
}

async function renewalsPlayed(
  look: Look,
  of: {
    readonly there: Uint8Array
    readonly seen: Float64Array
    readonly open: readonly Open[]
    readonly played: Played
  },
  { model, samples, play, seed }: Valuing,
): Promise<Stratum[]> {
  const renewable = of.open.flatMap(({ alternative, cost }) => {
    const renewed = renewalBeside(model, alternative, look)
    return renewed === undefined ? [] : [{ renewed, cost, ifSeen: dot(of.seen, cost), of: alternative.id }]
  })
  const beside = renewable.sort((a, b) => a.ifSeen - b.ifSeen).slice(0, renewedBeside)
  if (beside.length === 0) return []
  const n = of.there.length
  const kinds = [1, 0].map((kind) => {
    const all: number[] = []
    for (let i = 0; i < n; i++) if (of.there[i] === kind) all.push(i)
    return {
      all,
      share: all.length / n,
      histories: thinned(all, kind === 1 ? of.played.there : of.played.sound),
    }
  })
  const numbers = Int32Array.from(kinds.flatMap(({ histories }) => histories)).sort()
  if (numbers.length === 0 || samples.length === 0) return []
  const played = await play(
    beside.map(({ renewed }) => renewed),
    { seed, histories: numbers },
  )
  const placeOf = new Int32Array(n)
  numbers.forEach((history, i) => {
    placeOf[history] = i
  })
  return kinds.flatMap(({ histories, share }) =>
    histories.length === 0
      ? []
      : [
          {
            histories: Int32Array.from(histories),
            share,
            added: new Map(
              beside.map(({ of: id, cost }, b) => {
                const costs = column(played[b]!, 'cost')
                return [id, Float64Array.from(histories, (i) => costs[placeOf[i]!]! - cost[i]!)]
              }),
            ),
          },
        ],
  )
}

/** Evenly spread over the list, of both even and odd places. */
function thinned(list: readonly number[], most: number): number[] {
  if (list.length <= most) return [...list]
  return Array.from({ length: most }, (_, i) => list[Math.floor((i * list.length) / most)]!)
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!
  return sum
}
