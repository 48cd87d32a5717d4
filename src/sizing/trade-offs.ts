/**
 * What people would have to give up for a smaller set: the fewest rules of the house and soft starters, and among those the
 * ones that cost the least waiting.
 *
 * Every combination that overloads the set must be broken by a rule that keeps two of its loads apart, and every start that
 * dips the voltage too far on top of others by such a rule or by a soft starter: a hitting set. The combinations are too many to list, so they are found one by one: the best rules for those known so far, then one that they
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
  rulesKept,
} from './combinations.js'
import type { Load } from './load-type.js'
import { addChoice, emptyProgramme, optimumOf } from './plan-milp.js'
import { type DeepStart, deepStartsOf, dipsTooFar, softHelps } from './soft-starts.js'

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

/** Why nothing helps: a load or a start alone is too much, loads that cannot wait for one another, or more rules than people keep. */
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

/** A soft starter is bought and forgotten: among as many things it weighs as much as so many hours of waiting. Practice. */
export const softStarterHours = 5
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
  const known: Known = { overloads: [], starts: [] }
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

/** What was found to be too much, whichever set it was found for. */
interface Known {
  readonly overloads: Overload[]
  readonly starts: DeepStart[]
}

function tradeOffOf(
  highs: Highs,
  of: Combinations,
  { set, known }: { readonly set: SetLimits; readonly known: Known },
): Traded {
  const { loads } = of
  const limits = limitsOf(set)
  const before = apartBefore(of)
  const mayJoin = rulesKept(of)
  const isFitted = (i: number) => loads[i]!.start?.softStarter === true
  const overloads = known.overloads.filter(
    ({ resource, members }) => asksOf(of.draws[resource]!, members) > limits[resource] + 1e-9,
  )
  const starts = known.starts.filter((deep) =>
    dipsTooFar(of, set, { ...deep, isSoft: isFitted(deep.starter) }),
  )
  for (;;) {
    const rows = [
      ...overloads.map(({ members, resource }) => ({ members, resource, ways: pairsOf(of, members) })),
      ...starts.map((deep) => ({
        members: deep.members,
        resource: 'voltage-dip' as const,
        ways: [...pairsOf(of, deep.members), ...(softHelps(of, set, deep) ? [softKey(deep.starter)] : [])],
      })),
    ]
    const hopeless = rows.find(({ ways }) => ways.length === 0)
    if (hopeless !== undefined) return blocked(of, set, hopeless)
    const chosen = fewest(
      highs,
      of,
      rows.map(({ ways }) => ways),
    )
    if (chosen === undefined) return blocked(of, set, { members: [], resource: 'number-of-rules' })
    const apartNow = new Set([...before, ...chosen])
    const apart = (a: number, b: number) => apartNow.has(pairKey(a, b))
    const isSoft = (i: number) => isFitted(i) || apartNow.has(softKey(i))
    const overloadsLeft = overloadsOf(of, limits, apart)
    const startsLeft = deepStartsOf(of, set, { apart, isSoft, mayJoin })
    if (overloadsLeft.length + startsLeft.length === 0)
      return { ok: true, tradeOff: told(of, { set, chosen, rows: rows.length }) }
    overloads.push(...overloadsLeft)
    starts.push(...startsLeft)
    known.overloads.push(...overloadsLeft)
    known.starts.push(...startsLeft)
  }
}

function blocked(
  { loads }: Combinations,
  { id, ratingKW }: SetLimits,
  { members, resource }: { readonly members: readonly number[]; readonly resource: Blocked['resource'] },
): Traded {
  return { ok: false, blocked: { id, ratingKW, blockedBy: members.map((i) => loads[i]!.id), resource } }
}

function pairsOf(of: Combinations, members: readonly number[]): string[] {
  return members.flatMap((a, i) =>
    members.slice(i + 1).flatMap((b) => (canBeApart(of, a, b) ? [pairKey(a, b)] : [])),
  )
}

/** A soft starter among the ways; a pair has two numbers. */
function softKey(load: number): string {
  return `${load}`
}

/** The places of a way: two of a pair, one of a soft starter. */
function placesOf(way: string): readonly number[] {
  return way.split(' ').map(Number)
}

/** What is felt of a way, in hours of waiting a year. */
function feltOf(of: Combinations, way: string): number {
  const [a, b] = placesOf(way)
  return b === undefined ? softStarterHours : waitingOf(of, a!, b)
}

/** The ways that break everything: as few as can be, and then with the least waiting. Undefined: more rules than people keep. */
function fewest(highs: Highs, of: Combinations, rows: readonly (readonly string[])[]): string[] | undefined {
  const ways = [...new Set(rows.flat())]
  if (ways.length === 0) return []
  const weights = ways.map((way) => feltOf(of, way))
  // All the waiting together weighs less than one more of them.
  const scale =
    0.9 /
    Math.max(
      1e-9,
      weights.reduce((sum, one) => sum + one, 0),
    )
  const programme = emptyProgramme()
  const columns = new Map(ways.map((way, i) => [way, addChoice(programme, 1 + scale * weights[i]!)]))
  for (const row of rows)
    programme.rows.push({ terms: row.map((way) => [columns.get(way)!, 1] as const), least: 1 })
  const rules = ways.filter((way) => placesOf(way).length > 1)
  programme.rows.push({ terms: rules.map((way) => [columns.get(way)!, 1] as const), most: mostRules })
  const optimum = optimumOf(highs, programme, { seconds: solverSeconds })
  if (!optimum.ok && optimum.why === 'infeasible') return undefined
  if (!optimum.ok) throw new Error(`the fewest rules must be proved; found: ${optimum.words}`)
  return ways.filter((way) => optimum.values[columns.get(way)!]! > 0.5)
}

function told(
  of: Combinations,
  made: {
    readonly set: SetLimits
    readonly chosen: readonly string[]
    readonly rows: number
  },
): TradeOff {
  const { set, chosen, rows } = made
  const rules = chosen
    .flatMap((way): PairRule[] => {
      const [a, b] = placesOf(way)
      if (b === undefined) return []
      return [{ loads: [of.loads[a!]!.id, of.loads[b]!.id], waitingHours: waitingOf(of, a!, b) }]
    })
    .sort((a, b) => b.waitingHours - a.waitingHours)
  return {
    id: set.id,
    ratingKW: set.ratingKW,
    rules,
    softStarters: chosen.flatMap((way) => {
      const [load, other] = placesOf(way)
      return other === undefined ? [of.loads[load!]!.id] : []
    }),
    waitingHours: rules.reduce((sum, one) => sum + one.waitingHours, 0),
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
