/**
 * Everything there is to say of joined leads, and what is wrong with them.
 *
 * @module
 */

import { type Capacity, capacities, neutral } from './capacity.js'
import { degreesOf, minus, sizeOf } from './complex.js'
import { type Sensed, sensedBy } from './sensing.js'
import {
  type DrivenLoop,
  drivenLoops,
  type JoinedWinding,
  type Joint,
  joinedWinding,
  jointOf,
  jointsOfOutlets,
  type PairVolts,
  pairsOf,
  voltsBetween,
} from './solve-links.js'
import type { CoilValues, Joined, Winding } from './winding.js'

/** What is wrong; `stops` where it must not be started so. */
export interface LinksFinding {
  readonly code:
    | 'shorted-coil'
    | 'driven-loop'
    | 'opposed-coils'
    | 'dead-pair'
    | 'reversed-phase'
    | 'legs-add-in-neutral'
    | 'idle-coils'
    | 'apart'
  readonly stops: boolean
  readonly says: string
}

export interface LinksAnswer {
  readonly joints: readonly Joint[]
  /** Whether volts are volts, amps amps and ohms ohms, or multiples of one coil's. */
  readonly units: { readonly volts: boolean; readonly amps: boolean; readonly ohms: boolean }
  /** Between outlets. */
  readonly outlets: readonly PairVolts[]
  /** Between any two joints or leads. */
  readonly everyPair: readonly PairVolts[]
  readonly loops: readonly DrivenLoop[]
  readonly capacities: readonly Capacity[]
  readonly sensed: Sensed | null
  readonly findings: readonly LinksFinding[]
  /** Largest miss of Kirchhoff's laws. */
  readonly residual: number
}

export interface LookOptions {
  /** What the regulator is set to hold between its leads. [V] */
  readonly setToV?: number | undefined
}

export function lookAtLinks(
  winding: Winding,
  joined: Joined,
  values: CoilValues = {},
  { setToV }: LookOptions = {},
): LinksAnswer {
  const of = joinedWinding(winding, joined, values)
  const can = capacities(of)
  const loops = drivenLoops(of)
  return {
    joints: of.joints,
    units: {
      volts: values.emfV !== undefined,
      amps: values.amps !== undefined,
      ohms: values.resistanceOhm !== undefined,
    },
    outlets: pairsOf(of, jointsOfOutlets(of.joints, joined.lines)),
    everyPair: pairsOf(
      of,
      of.joints.map((_, at) => at),
    ),
    loops,
    capacities: can,
    sensed: sensedBy(of, { setToV, ratedEmfV: values.emfV }) ?? null,
    findings: [
      ...loopFindings(loops),
      ...opposedFindings(of),
      ...outletFindings(of),
      ...phaseFindings(of),
      ...idleFindings(of, can),
    ],
    residual: of.solved.residual,
  }
}

function loopFindings(loops: readonly DrivenLoop[]): LinksFinding[] {
  return loops.map(({ coils }) =>
    coils.length === 1
      ? {
          code: 'shorted-coil',
          stops: true,
          says: `Both ends of coil ${coils[0]} are joined: it is a short inside the machine, which no breaker can clear.`,
        }
      : {
          code: 'driven-loop',
          stops: true,
          says: `Coils ${listed(coils)} make a loop in which EMF is left over: current goes round inside, which no breaker can clear.`,
        },
  )
}

/**
 * Coils of one phase that are joined end to end, with nothing else at the joint and nothing going out from it, and cancel:
 * within 30° of opposite. Two phases of a star or a delta are never so near.
 */
function opposedFindings({ winding, joints, branches }: JoinedWinding): LinksFinding[] {
  return joints.flatMap(({ lines }, node) => {
    if (lines.length > 0) return []
    const here = branches.flatMap((branch, at) =>
      branch.from === branch.to || (branch.from !== node && branch.to !== node) ? [] : [at],
    )
    const [a, b] = here
    if (here.length !== 2 || a === undefined || b === undefined) return []
    const [one, other] = [branches[a]!, branches[b]!]
    if (new Set([one.from, one.to, other.from, other.to]).size < 3) return []
    const sameWay = (one.from === node) !== (other.from === node)
    const apart = Math.abs(winding.coils[a]!.degrees - winding.coils[b]!.degrees) % 360
    const angle = Math.min(apart, 360 - apart)
    const between = sameWay ? angle : 180 - angle
    if (between < 150) return []
    return [
      {
        code: 'opposed-coils' as const,
        stops: true,
        says: `Coils ${winding.coils[a]!.name} and ${winding.coils[b]!.name} are in series and against one another: together they give nothing.`,
      },
    ]
  })
}

function outletFindings(of: JoinedWinding): LinksFinding[] {
  const nodes = jointsOfOutlets(of.joints, of.joined.lines)
  return pairsOf(of, nodes).flatMap(({ from, to, volts }): LinksFinding[] => {
    if (volts === null) {
      return [
        {
          code: 'apart',
          stops: true,
          says: `Nothing connects ${from} and ${to}: a meter between them reads only what strays over.`,
        },
      ]
    }
    if (volts > of.emf * 0.02) return []
    return [{ code: 'dead-pair', stops: true, says: `There are no volts between ${from} and ${to}.` }]
  })
}

function phaseFindings(of: JoinedWinding): LinksFinding[] {
  const { joined, joints } = of
  const nodeOf = (lead: string) => jointOf(joints, lead)
  const lines = joined.lines.filter(({ name }) => name !== neutral)
  const middle = joined.lines.find(({ name }) => name === neutral)
  if (middle === undefined || lines.length < 2 || lines.length > 3) return []
  const above = lines.map(({ lead }) => voltsBetween(of, { from: nodeOf(lead), to: nodeOf(middle.lead) }))
  if (above.some((volts) => volts === undefined || sizeOf(volts) < of.emf * 0.02)) return []
  const volts = above.map((one) => one!)
  const even = (sizes: readonly number[]) => Math.max(...sizes) - Math.min(...sizes) < of.emf * 0.02
  const lineToLine = volts.map((one, at) => sizeOf(minus(one, volts[(at + 1) % volts.length]!)))
  if (lines.length === 3) {
    if (!even(volts.map(sizeOf)) || even(lineToLine)) return []
    return [
      {
        code: 'reversed-phase',
        stops: true,
        says: 'Every line stands alike above the neutral, but the lines do not stand alike above one another: one phase is the other way round. Volts to neutral alone cannot find this.',
      },
    ]
  }
  const between = Math.abs(degreesOf(volts[0]!) - degreesOf(volts[1]!)) % 360
  if (Math.min(between, 360 - between) > 100) return []
  return [
    {
      code: 'legs-add-in-neutral',
      stops: true,
      says: `${lines.map(({ name }) => name).join(' and ')} are in step: the neutral carries the sum of their currents, not the difference.`,
    },
  ]
}

/** Coils that carry nothing however the lines are loaded, though they can give something. */
function idleFindings(of: JoinedWinding, can: readonly Capacity[]): LinksFinding[] {
  const { winding, joints, branches, joined } = of
  if (joined.lines.length === 0 || can.length === 0) return []
  const loose = winding.coils.filter((_, at) => {
    const { from, to } = branches[at]!
    return [from, to].some((node) => joints[node]!.leads.length === 1 && joints[node]!.lines.length === 0)
  })
  if (loose.length === 0) return []
  return [
    {
      code: 'idle-coils',
      stops: false,
      says: `${loose.length === 1 ? 'Coil' : 'Coils'} ${listed(loose.map(({ name }) => name))} ${loose.length === 1 ? 'gives' : 'give'} nothing: an end is joined to nothing. Where it belongs beside another, volts are right all the same, ohms are double and only half may be drawn.`,
    },
  ]
}

function listed(names: readonly string[]): string {
  return names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`
}
