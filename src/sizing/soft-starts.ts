/**
 * Starts that dip the voltage too far on top of what runs, found one by one; a soft starter on the motor may be the end of them.
 *
 * @module
 */

import { type Apart, asksOf, type Combinations, letBeHours } from './combinations.js'
import { startOn } from './overload.js'
import { type MotorStart, type Running, voltageDip } from './voltage-dip.js'

/** An alternator, and the dip that is not to be exceeded on it, as a share. */
export interface DipLimits {
  readonly kVA: number
  readonly reactance: number
  readonly dip: number
}

/** A motor that starts while others run, each of them needed for the dip to be too deep. */
export interface DeepStart {
  readonly starter: number
  /** Places in the list, rising, the starter among them. */
  readonly members: readonly number[]
}

/** Keeping two loads apart, and a soft starter on a motor. */
export interface Kept {
  readonly apart: Apart
  readonly isSoft: (load: number) => boolean
  /** Whether a load may join those chosen under the rules that let more than one be on. */
  readonly mayJoin: (chosen: readonly number[], joining: number) => boolean
}

/** Rounding of shares. */
const slack = 1e-12

/** Whether the start dips the voltage too far. Everything but the starter runs already. */
export function dipsTooFar(
  of: Combinations,
  limits: DipLimits,
  { starter, members, isSoft }: DeepStart & { readonly isSoft: boolean },
): boolean {
  const motor = startOn(of.loads[starter]!, limits)
  if (motor === undefined) return false
  const { softVa } = of.loads[starter]!.start!
  const start = isSoft && softVa !== undefined ? { ...motor, startKVA: softVa / 1000 } : motor
  const running = sumsOf(
    of,
    members.filter((member) => member !== starter),
  )
  return voltageDip(start, running) > limits.dip + slack
}

/** Whether a soft starter can be fitted where there is none, and keeps the dip within the limit. */
export function softHelps(of: Combinations, limits: DipLimits, deep: DeepStart): boolean {
  const start = of.loads[deep.starter]!.start
  if (start?.softVa === undefined || start.softStarter) return false
  return !dipsTooFar(of, limits, { ...deep, isSoft: true })
}

/**
 * For each motor and moment one start that is too deep, without those that are kept from coming about. None: proved, for
 * every combination that counts was looked at or bounded.
 */
export function deepStartsOf(of: Combinations, limits: DipLimits, kept: Kept): DeepStart[] {
  const found = new Map<string, DeepStart>()
  of.loads.forEach(({ start }, starter) => {
    if (start === undefined) return
    for (const moment of of.moments) {
      const isSoft = kept.isSoft(starter)
      const members = deepest(of, limits, { starter, moment, kept })
      if (members === undefined) continue
      const least = leastOf(of, limits, { starter, members, isSoft })
      found.set(`${starter}: ${least.join(' ')}`, { starter, members: least })
    }
  })
  return [...found.values()]
}

/**
 * Loads with which a start is too deep: branch and bound, the most active power for the chance given up first. Reactive power
 * that runs already flattens a dip, so that what the rest of the chance still buys of the active alone is a bound.
 */
function deepest(
  of: Combinations,
  limits: DipLimits,
  at: { readonly starter: number; readonly moment: Combinations['moments'][number]; readonly kept: Kept },
): number[] | undefined {
  const { starter, moment, kept } = at
  const motor = startOn(of.loads[starter]!, limits)!
  const { softVa } = of.loads[starter]!.start!
  const startKVA = kept.isSoft(starter) && softVa !== undefined ? softVa / 1000 : motor.startKVA
  const start = { ...motor, startKVA }
  const isTooDeep = (running: Running) => voltageDip(start, running) > limits.dip + slack
  const mayBeTooDeep = (running: Running, more: number) =>
    running.kW * motor.reactance > motor.setKVA ||
    isTooDeep({ kvar: running.kvar, kW: deepestKW(start, running, running.kW + more) })
  const budget = Math.log(moment.hours / letBeHours) + Math.log(moment.shares[starter]!)
  if (!(budget >= 0)) return undefined
  const draws = of.draws.alternator!
  const items = moment.shares
    .map((share, i) => ({ i, cost: -Math.log(share), ...draws[i]! }))
    .filter(({ i, cost, p }) => i !== starter && Number.isFinite(cost) && p > 0)
    .sort((a, b) => b.p * (a.cost + 1e-12) - a.p * (b.cost + 1e-12))
  const chosen = [starter]

  function buys(from: number, left: number): number {
    let sum = 0
    let rest = left
    for (const { p, cost } of items.slice(from)) {
      if (cost > rest) return sum + (p * rest) / cost
      sum += p
      rest -= cost
    }
    return sum
  }

  function search(
    k: number,
    state: { readonly kW: number; readonly kvar: number; readonly left: number },
  ): boolean {
    if (isTooDeep(state)) return true
    if (k === items.length || !mayBeTooDeep(state, buys(k, state.left))) return false
    const { i, cost, p, q } = items[k]!
    if (cost <= state.left && chosen.every((other) => !kept.apart(i, other)) && kept.mayJoin(chosen, i)) {
      chosen.push(i)
      if (search(k + 1, { kW: state.kW + p, kvar: state.kvar + q, left: state.left - cost })) return true
      chosen.pop()
    }
    return search(k + 1, state)
  }

  return search(0, { kW: 0, kvar: 0, left: budget }) ? chosen : undefined
}

/**
 * The active power between what runs and so much at which the dip is deepest. [kW] At the top of it
 * `c·a² + (2ub + b² + c²)·a = c·u²`, a = XP, u = 1 + XQ, b and c the start's reactive and active parts per unit.
 *
 * Source: derived from `voltageDip`; where XP < 1.
 */
export function deepestKW(start: MotorStart, running: Running, most: number): number {
  const perKVA = start.reactance / start.setKVA
  const c = perKVA * start.startKVA * start.startPowerFactor
  const b = perKVA * start.startKVA * Math.sqrt(1 - start.startPowerFactor ** 2)
  const u = 1 + perKVA * running.kvar
  const half = (2 * u * b + b * b + c * c) / (2 * c)
  const top = (Math.sqrt(half * half + u * u) - half) / perKVA
  return Math.min(most, Math.max(running.kW, top))
}

/** The same without what is not needed for it, the smallest left out first. */
function leastOf(
  of: Combinations,
  limits: DipLimits,
  { starter, members, isSoft }: DeepStart & { readonly isSoft: boolean },
): number[] {
  const others = members.filter((member) => member !== starter)
  let left = [...members]
  for (const i of others.sort(
    (a, b) => asksOf(of.draws.alternator!, [a]) - asksOf(of.draws.alternator!, [b]),
  )) {
    const without = left.filter((one) => one !== i)
    if (dipsTooFar(of, limits, { starter, members: without, isSoft })) left = without
  }
  return left.sort((a, b) => a - b)
}

function sumsOf({ draws }: Combinations, members: readonly number[]): { kW: number; kvar: number } {
  return members.reduce(
    ({ kW, kvar }, i) => ({ kW: kW + draws.alternator![i]!.p, kvar: kvar + draws.alternator![i]!.q }),
    { kW: 0, kvar: 0 },
  )
}
