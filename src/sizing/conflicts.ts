/**
 * Loads that rules of the house keep apart: which of them are on together, and how often.
 *
 * A rule moves the use of a load to another hour, it does not do away with it: each load is on for the same share of the
 * time as without the rule. Of all ways to keep to the rules and to these shares the one that says least beyond them is
 * taken (greatest entropy). For loads of which one may be on that is: each with its own share, and none for the rest.
 *
 * @module
 */

import type { HouseRule } from './load-type.js'

/** A group of loads hung together by rules. */
export interface Conflict {
  /** Numbers of the loads in the list. */
  readonly members: readonly number[]
  readonly rules: readonly { readonly members: readonly number[]; readonly atMost: number }[]
}

/** One set of loads on together, as bits by their place in the group. */
export interface State {
  readonly on: number
  readonly chance: number
}

/** How the states of a group come out. */
export interface States {
  readonly states: readonly State[]
  /** Share of the wanted time that the rules leave room for; 1 where all of it. */
  readonly kept: number
}

/** The most loads that rules may hang together in one group: every set of them is looked at. */
export const mostInConflict = 12

/** Loads of the list grouped by the rules that hang them together; those under no rule are left out. */
export function conflictsOf(ids: readonly string[], rules: readonly HouseRule[]): Conflict[] {
  const place = new Map(ids.map((id, i) => [id, i]))
  const known = rules
    .map(({ loads, atMost }) => ({ members: loads.flatMap((id) => place.get(id) ?? []), atMost }))
    .filter(({ members, atMost }) => members.length > atMost)
  const group = ids.map((_, i) => i)
  const rootOf = (i: number): number => (group[i] === i ? i : rootOf(group[i]!))
  for (const { members } of known) for (const i of members) group[rootOf(i)] = rootOf(members[0]!)
  const roots = [...new Set(known.flatMap(({ members }) => members.map(rootOf)))]
  return roots.map((root) => ({
    members: ids.flatMap((_, i) => (rootOf(i) === root ? [i] : [])),
    rules: known.filter(({ members }) => rootOf(members[0]!) === root),
  }))
}

/** The states of a group whose members are on for these shares of the time. */
export function statesOf(conflict: Conflict, shares: readonly number[]): States {
  const { members, rules } = conflict
  const wanted = members.map((i) => shares[i]!)
  const [only] = rules
  if (rules.length === 1 && only!.atMost === 1 && only!.members.length === members.length) {
    return oneAtMost(wanted)
  }
  return byEnumeration(conflict, wanted)
}

function oneAtMost(wanted: readonly number[]): States {
  const sum = wanted.reduce((total, share) => total + share, 0)
  const kept = sum > 1 ? 1 / sum : 1
  const states = wanted.map((share, i) => ({ on: 1 << i, chance: kept * share }))
  return { states: [{ on: 0, chance: Math.max(0, 1 - kept * sum) }, ...states], kept }
}

const closeEnough = 1e-12
const mostRounds = 1000
const lessEachTime = 0.95

/**
 * Greatest entropy over all sets that keep to the rules, by fitting each load's share in turn (iterative proportional
 * fitting). Where the rules leave no room for all that is wanted, all of it is cut alike until they do.
 */
function byEnumeration({ members, rules }: Conflict, wanted: readonly number[]): States {
  if (members.length > mostInConflict) {
    throw new RangeError(`members must be at most ${mostInConflict}; found ${members.length}`)
  }
  const masks = rules.map(({ members: of, atMost }) => ({
    mask: of.reduce((bits, i) => bits | (1 << members.indexOf(i)), 0),
    atMost,
  }))
  const open: number[] = []
  for (let on = 0; on < 1 << members.length; on += 1) {
    if (masks.every(({ mask, atMost }) => bitsIn(on & mask) <= atMost)) open.push(on)
  }
  // No more than so much time can be had at all under each rule.
  const room = masks.map(({ mask, atMost }) => {
    const sum = wanted.reduce((total, share, i) => total + (mask & (1 << i) ? share : 0), 0)
    return sum > atMost ? atMost / sum : 1
  })
  for (let kept = Math.min(1, ...room); ; kept *= lessEachTime) {
    const states = fitted(
      open,
      wanted.map((share) => kept * share),
    )
    if (states !== undefined) return { states, kept }
  }
}

function fitted(open: readonly number[], shares: readonly number[]): State[] | undefined {
  const chance = open.map((on) =>
    shares.reduce((product, share, i) => product * (on & (1 << i) ? share : 1 - share), 1),
  )
  for (let round = 0; round < mostRounds; round += 1) {
    let worst = 0
    for (let i = 0; i < shares.length; i += 1) {
      let [on, off] = [0, 0]
      for (let k = 0; k < open.length; k += 1) {
        if (open[k]! & (1 << i)) on += chance[k]!
        else off += chance[k]!
      }
      const share = shares[i]!
      if ((share > 0 && on === 0) || (share < 1 && off === 0)) return undefined
      worst = Math.max(worst, Math.abs(on / (on + off) - share))
      const [toOn, toOff] = [share === 0 ? 0 : share / on, share === 1 ? 0 : (1 - share) / off]
      for (let k = 0; k < open.length; k += 1) chance[k]! *= open[k]! & (1 << i) ? toOn : toOff
    }
    if (worst < closeEnough) return open.map((on, k) => ({ on, chance: chance[k]! }))
  }
  return undefined
}

function bitsIn(bits: number): number {
  let count = 0
  for (let left = bits; left !== 0; left &= left - 1) count += 1
  return count
}
