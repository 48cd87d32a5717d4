/**
 * What a winding gives as its leads are joined: volts, currents that go round inside, ohms at the terminals.
 *
 * @module
 */

import { type Branch, type Loop, loopsOf, type Solved, solveCircuit } from './circuit.js'
import { type Complex, complex, degreesOf, minus, polar, sizeOf } from './complex.js'
import { type CoilValues, type Joined, leadsOf, type Outlet, type Winding } from './winding.js'

/** Leads that are joined to one another, and what goes out from them. */
export interface Joint {
  readonly leads: readonly string[]
  /** Names of the lines that leave from here. */
  readonly lines: readonly string[]
}

/** Between two joints; none where nothing connects them. */
export interface PairVolts {
  readonly from: string
  readonly to: string
  /** In volts, or in multiples of a coil's EMF where that is not known. */
  readonly volts: number | null
  readonly degrees: number | null
  /** Through the copper, in ohms or in multiples of a coil's resistance; none where nothing connects them. */
  readonly ohms: number | null
}

/** A loop of coils in which EMFs are left over: current goes round with nothing switched on. */
export interface DrivenLoop {
  readonly coils: readonly string[]
  /** What is left over. */
  readonly volts: number
  /** What goes round through the coil that closes it; none where impedance is not known or there is none. [A] */
  readonly amps: number | null
}

/** The winding as it is joined. */
export interface JoinedWinding {
  readonly winding: Winding
  readonly values: CoilValues
  readonly joined: Joined
  readonly joints: readonly Joint[]
  readonly branches: readonly Branch[]
  readonly solved: Solved
  /** EMF of a coil as it was reckoned with. */
  readonly emf: number
  readonly impedanceKnown: boolean
}

/** Coils of unknown impedance share currents as coils that are all alike do. [Ω] */
const anyImpedance = complex(0.1, 1)

/** Puts the coils between the joints and solves them with nothing switched on. */
export function joinedWinding(winding: Winding, joined: Joined, values: CoilValues): JoinedWinding {
  const joints = jointsOf(winding, joined)
  const { emfV: emf = 1, resistanceOhm, reactanceOhm } = values
  const impedanceKnown = resistanceOhm !== undefined || reactanceOhm !== undefined
  const impedance = impedanceKnown ? complex(resistanceOhm ?? 0, reactanceOhm ?? 0) : anyImpedance
  const branches = winding.coils.map(({ start, end, degrees }) => ({
    from: jointOf(joints, start),
    to: jointOf(joints, end),
    emf: polar({ size: emf, degrees }),
    impedance,
  }))
  const solved = solveCircuit({ nodes: joints.length, branches })
  return { winding, values, joined, joints, branches, solved, emf, impedanceKnown }
}

/** Volts above one joint of another; undefined where nothing connects them. */
export function voltsBetween(
  { solved }: Pick<JoinedWinding, 'solved'>,
  { from, to }: { readonly from: number; readonly to: number },
): Complex | undefined {
  if (solved.parts[from] !== solved.parts[to]) return undefined
  return minus(solved.volts[from]!, solved.volts[to]!)
}

/** Volts and ohms between any two of the joints named, each by its line or its leads. */
export function pairsOf(of: JoinedWinding, among: readonly number[]): readonly PairVolts[] {
  return among.flatMap((from, at) =>
    among.slice(at + 1).map((to) => {
      const volts = voltsBetween(of, { from, to })
      const size = volts === undefined ? null : sizeOf(volts)
      return {
        from: nameOfJoint(of.joints[from]!),
        to: nameOfJoint(of.joints[to]!),
        volts: size === null ? null : tidy(size, of.emf),
        degrees: volts === undefined || size! < of.emf * 1e-9 ? null : degreesOf(volts),
        ohms: ohmsBetween(of, { from, to }),
      }
    }),
  )
}

/** Resistance between two joints, each coil as its own; the EMFs play no part in it. */
function ohmsBetween(
  { branches, joints, values, solved }: JoinedWinding,
  { from, to }: { readonly from: number; readonly to: number },
): number | null {
  if (solved.parts[from] !== solved.parts[to]) return null
  const { resistanceOhm = 1 } = values
  if (resistanceOhm === 0) return 0
  const coils = branches.map((branch) => ({
    ...branch,
    emf: complex(0),
    impedance: complex(resistanceOhm),
  }))
  const drawn = joints.map((_, at) => complex(at === from ? -1 : at === to ? 1 : 0))
  const { volts } = solveCircuit({ nodes: joints.length, branches: coils, drawn })
  return sizeOf(minus(volts[from]!, volts[to]!))
}

/** Loops in which current goes round with nothing switched on. */
export function drivenLoops(of: JoinedWinding): readonly DrivenLoop[] {
  const { branches, joints, solved, emf, impedanceKnown, winding } = of
  return loopsOf(joints.length, branches)
    .filter(({ emf: rest }) => sizeOf(rest) > emf * 1e-6)
    .map((loop: Loop) => {
      const current = solved.amps[loop.branches[0]!.branch]
      return {
        coils: loop.branches.map(({ branch }) => winding.coils[branch]!.name),
        volts: sizeOf(loop.emf),
        amps: impedanceKnown && current !== undefined ? sizeOf(current) : null,
      }
    })
}

/** How a joint is spoken of: by its lines, or by its first leads. */
export function nameOfJoint({ leads, lines }: Joint): string {
  return lines.length > 0 ? lines.join('/') : leads.join('-')
}

/** The joint that a lead belongs to. */
export function jointOf(joints: readonly Joint[], lead: string): number {
  const at = joints.findIndex(({ leads }) => leads.includes(lead))
  if (at < 0) throw new RangeError(`lead must be one of the winding; found ${lead}`)
  return at
}

/** The joints that something goes out from, as the lines were named. */
export function jointsOfOutlets(joints: readonly Joint[], outlets: readonly Outlet[]): readonly number[] {
  return [...new Set(outlets.map(({ lead }) => jointOf(joints, lead)))]
}

/** Which leads are one point: those joined to one another, and each other lead by itself. */
function jointsOf(winding: Winding, { joints, lines }: Joined): readonly Joint[] {
  const leads = leadsOf(winding)
  const groups = new Map(leads.map((lead) => [lead, lead]))
  for (const [first, ...others] of joints) {
    for (const other of others) {
      const [into, away] = [groups.get(first!), groups.get(other)]
      for (const [lead, group] of groups) if (group === away) groups.set(lead, into!)
    }
  }
  return [...new Set(groups.values())].map((group) => {
    const members = leads.filter((lead) => groups.get(lead) === group)
    const out = lines.filter(({ lead }) => members.includes(lead)).map(({ name }) => name)
    return { leads: members, lines: out }
  })
}

/** Nought where only the reckoning's own dust is left. */
function tidy(volts: number, emf: number): number {
  return volts < emf * 1e-9 ? 0 : volts
}
