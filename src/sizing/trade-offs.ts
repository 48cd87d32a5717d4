/**
 * What people would have to give up for a smaller set: the fewest rules of the house and soft starters, and among those the
 * ones that cost the least waiting.
 *
 * Every combination that overloads the set must be broken by a rule that keeps two of its loads apart: a hitting set. The
 * combinations are too many to list, so they are found one by one: the best rules for those known so far, then one that they
 * leave open, until there is none. As the programme with few rows never asks for more than the one with all, what it comes
 * to then is the optimum.
 *
 * @module
 */

import type { Highs } from 'highs'
import {
  asksOf,
  type Combinations,
  hoursTogether,
  type Overload,
  overloadsOf,
  type Resource,
} from './combinations.js'
import type { Load } from './load-type.js'
import { startOn } from './overload.js'
import { addChoice, emptyProgramme, optimumOf } from './plan-milp.js'
import { voltageDip } from './voltage-dip.js'

/** What a set has. */
export interface SetLimits {
  readonly id: string
  readonly ratingKW: number
  /** Left of the engine and of the alternator where it stands. [kW, kVA] */
  readonly engineKW: number
  readonly alternatorKVA: number
  /** Rating and reactance of the alternator, for the dip. */
  readonly kVA: number
  readonly reactance: number
  readonly dip: number
}

/** Two loads that are never on together. */
export interface PairRule {
  readonly loads: readonly [string, string]
  /** Hours in a year in which one would wait for the other, the less the easier it can. */
  readonly waitingHours: number
}

/** What one set asks of the people aboard. */
export interface TradeOff {
  readonly id: string
  readonly ratingKW: number
  readonly rules: readonly PairRule[]
  readonly softStarters: readonly string[]
  readonly waitingHours: number
  /** Combinations that had to be looked at before none was left. */
  readonly combinations: number
}

/** Why no rule helps: one load alone is too much, loads that cannot wait for one another, or more rules than people keep. */
export interface Blocked {
  readonly id: string
  readonly ratingKW: number
  /** Empty where it is the number of rules. */
  readonly blockedBy: readonly string[]
  readonly resource: Resource | 'voltage-dip' | 'number-of-rules'
}

export type Traded =
  | { readonly ok: true; readonly tradeOff: TradeOff }
  | { readonly ok: false; readonly blocked: Blocked }

/** How much an hour of waiting is felt, by whether the load can wait at all. Practice. */
const felt: Readonly<Record<Load['canWait'], number>> = {
  not: 1,
  'a-little': 0.7,
  'with-climate': 0.5,
  'to-another-hour': 0.3,
  'turned-down': 0.2,
  'in-pieces': 0.15,
}

/** A soft starter is bought and forgotten; as much as so many hours of waiting. Practice. */
const softStarterHours = 5
const solverSeconds = 10

/** More rules than this nobody keeps; what draws less than this [W] is not worth one. Practice. */
export const mostRules = 6
export const leastRuleW = 500

/**
 * The fewest rules and soft starters with which each set carries all that matters, and among those the least waiting.
 * Proved, or told why none do. Sets in any order; combinations found for one are used for all that they overload.
 *
 * @throws Error if the solver gives anything but a proved optimum.
 */
export function tradeOffsOf(highs: Highs, of: Combinations, sets: readonly SetLimits[]): Traded[] {
  const known: Overload[] = []
  const larger = [...sets].sort((a, b) => b.ratingKW - a.ratingKW)
  const made = new Map(larger.map((set) => [set.id, tradeOffOf(highs, of, { set, known })]))
  return sets.map(({ id }) => made.get(id)!)
}

/** What a set has of each resource; of a leg half. */
export function limitsOf(set: SetLimits): Record<Resource, number> {
  const leg = set.alternatorKVA / 2
  return { engine: set.engineKW, alternator: set.alternatorKVA, 'leg-one': leg, 'leg-two': leg }
}

/** Numbers of a pair in a list of so many. */
function pairKey(a: number, b: number): string {
  return a < b ? `${a} ${b}` : `${b} ${a}`
}

/** Whether two loads are kept apart already. */
function apartBefore({ loads, rules }: Combinations): ReadonlySet<string> {
  const place = new Map(loads.map(({ id }, i) => [id, i]))
  return new Set(
    rules
      .filter(({ atMost }) => atMost === 1)
      .flatMap(({ loads: of }) =>
        of.flatMap((a, i) => of.slice(i + 1).map((b) => pairKey(place.get(a)!, place.get(b)!))),
      ),
  )
}

/** Loads of which the use may move to another part of the day. */
const movable: readonly Load['canWait'][] = ['to-another-hour', 'in-pieces', 'turned-down']

/** Whether two loads can be kept apart: both are worth a rule, and one can move or there is room for one after the other. */
function canBeApart({ loads, moments }: Combinations, a: number, b: number): boolean {
  if (loads[a]!.watts < leastRuleW || loads[b]!.watts < leastRuleW) return false
  const isAlwaysOn = (i: number) => moments.every(({ shares }) => shares[i]! > 1 - 1e-9)
  if (isAlwaysOn(a) || isAlwaysOn(b)) return false
  return (
    movable.includes(loads[a]!.canWait) ||
    movable.includes(loads[b]!.canWait) ||
    moments.every(({ shares }) => shares[a]! + shares[b]! <= 1 + 1e-9)
  )
}

function waitingOf(of: Combinations, a: number, b: number): number {
  return hoursTogether(of, [a, b]) * Math.min(felt[of.loads[a]!.canWait], felt[of.loads[b]!.canWait])
}

function tradeOffOf(
  highs: Highs,
  of: Combinations,
  { set, known }: { readonly set: SetLimits; readonly known: Overload[] },
): Traded {
  const { loads } = of
  const blocked = (members: readonly number[], resource: Blocked['resource']): Traded => ({
    ok: false,
    blocked: { id: set.id, ratingKW: set.ratingKW, blockedBy: members.map((i) => loads[i]!.id), resource },
  })
  const soft = softStartersOf(of, set)
  if (!soft.ok) return blocked([soft.load], 'voltage-dip')

  const limits = limitsOf(set)
  const before = apartBefore(of)
  const rows = known.filter(
    ({ resource, members }) => asksOf(of.draws[resource]!, members) > limits[resource] + 1e-9,
  )
  for (;;) {
    const pairsOf = ({ members }: Overload) =>
      members.flatMap((a, i) =>
        members.slice(i + 1).flatMap((b) => (canBeApart(of, a, b) ? [pairKey(a, b)] : [])),
      )
    const hopeless = rows.find((row) => pairsOf(row).length === 0)
    if (hopeless !== undefined) return blocked(hopeless.members, hopeless.resource)
    const chosen = fewest(highs, of, rows.map(pairsOf))
    if (chosen === undefined) return blocked([], 'number-of-rules')
    const apart = new Set([...before, ...chosen])
    const open = overloadsOf(of, limits, (a, b) => apart.has(pairKey(a, b)))
    if (open.length === 0)
      return { ok: true, tradeOff: told(of, { set, chosen, soft: soft.loads, rows: rows.length }) }
    rows.push(...open)
    known.push(...open)
  }
}

/** Soft starters without which the largest starts dip the voltage too far even alone; or the load that none helps. */
function softStartersOf(
  { loads, moments }: Combinations,
  set: SetLimits,
): { readonly ok: true; readonly loads: readonly number[] } | { readonly ok: false; readonly load: number } {
  const wanted: number[] = []
  for (const [i, load] of loads.entries()) {
    const motor = startOn(load, set)
    const runs = moments.some(({ shares }) => shares[i]! > 0)
    if (motor === undefined || !runs || voltageDip(motor) <= set.dip) continue
    const { softVa, softStarter } = load.start!
    if (softVa === undefined || softStarter || voltageDip({ ...motor, startKVA: softVa / 1000 }) > set.dip) {
      return { ok: false, load: i }
    }
    wanted.push(i)
  }
  return { ok: true, loads: wanted }
}

/** The pairs that break every combination: as few as can be, and then with the least waiting. Undefined: more than people keep. */
function fewest(highs: Highs, of: Combinations, rows: readonly (readonly string[])[]): string[] | undefined {
  const pairs = [...new Set(rows.flat())]
  if (pairs.length === 0) return []
  const waiting = pairs.map((pair) => {
    const [a, b] = pair.split(' ').map(Number)
    return waitingOf(of, a!, b!)
  })
  // All the waiting together weighs less than one rule more.
  const scale =
    0.9 /
    Math.max(
      1e-9,
      waiting.reduce((sum, one) => sum + one, 0),
    )
  const programme = emptyProgramme()
  const columns = new Map(pairs.map((pair, i) => [pair, addChoice(programme, 1 + scale * waiting[i]!)]))
  for (const row of rows)
    programme.rows.push({ terms: row.map((pair) => [columns.get(pair)!, 1] as const), least: 1 })
  programme.rows.push({ terms: pairs.map((pair) => [columns.get(pair)!, 1] as const), most: mostRules })
  const optimum = optimumOf(highs, programme, { seconds: solverSeconds })
  if (!optimum.ok && optimum.why === 'infeasible') return undefined
  if (!optimum.ok) throw new Error(`the fewest rules must be proved; found: ${optimum.words}`)
  return pairs.filter((pair) => optimum.values[columns.get(pair)!]! > 0.5)
}

function told(
  of: Combinations,
  made: {
    readonly set: SetLimits
    readonly chosen: readonly string[]
    readonly soft: readonly number[]
    readonly rows: number
  },
): TradeOff {
  const { set, chosen, soft, rows } = made
  const rules = chosen
    .map((pair): PairRule => {
      const [a, b] = pair.split(' ').map(Number)
      return { loads: [of.loads[a!]!.id, of.loads[b!]!.id], waitingHours: waitingOf(of, a!, b!) }
    })
    .sort((a, b) => b.waitingHours - a.waitingHours)
  return {
    id: set.id,
    ratingKW: set.ratingKW,
    rules,
    softStarters: soft.map((i) => of.loads[i]!.id),
    waitingHours: rules.reduce((sum, one) => sum + one.waitingHours, 0) + soft.length * softStarterHours,
    combinations: rows,
  }
}

/** The smallest set for each number of rules and soft starters, fewest first; only what is smaller than all before. */
export function smallestByNumber(traded: readonly Traded[]): TradeOff[] {
  const open = traded.flatMap((one) => (one.ok ? [one.tradeOff] : []))
  const count = ({ rules, softStarters }: TradeOff) => rules.length + softStarters.length
  const inOrder = [...open].sort((a, b) => count(a) - count(b) || a.ratingKW - b.ratingKW)
  const list: TradeOff[] = []
  for (const one of inOrder) if (list.every(({ ratingKW }) => one.ratingKW < ratingKW)) list.push(one)
  return list
}
