/**
 * What may be drawn from a winding as it is joined, so that no coil carries more than it can for ever.
 *
 * @module
 */

import { solveCircuit } from './circuit.js'
import { type Complex, complex, conjugate, minus, nought, plus, scaled, sizeOf, times } from './complex.js'
import { drivenLoops, type JoinedWinding, jointOf, voltsBetween } from './solve-links.js'

/** The most that one way of loading it allows. */
export interface Capacity {
  /** What is loaded: `all` lines at once and alike, or two outlets and nothing else. */
  readonly load: 'all' | readonly [string, string]
  /** In each line, in amps or in multiples of a coil's. */
  readonly lineAmps: number
  /** Volts times amps, in those units. */
  readonly voltAmps: number
  /** Of what all coils could give, each by itself. */
  readonly share: number
  /** Coils that reach their limit first. */
  readonly hottest: readonly string[]
}

/** What the neutral is called. */
export const neutral = 'N'

/**
 * Each way of loading: all lines alike, then two outlets alone. None where current goes round inside already, or where
 * nothing goes out.
 *
 * A current is laid in step with its voltage, the coil currents that it makes are solved from the coils' impedances, and the
 * whole is made larger until the first coil carries its limit. `S = |Σ V·I*|`.
 */
export function capacities(of: JoinedWinding): readonly Capacity[] {
  const { lines } = of.joined
  if (lines.length < 2 || drivenLoops(of).length > 0) return []
  const names = lines.map(({ name }) => name)
  const pairs = names.flatMap((from, at) => names.slice(at + 1).map((to) => [from, to] as const))
  return [
    ...(names.length > 2 ? [capacityOf(of, 'all')] : []),
    ...pairs.map((pair) => capacityOf(of, pair)),
  ].filter((one) => one !== undefined)
}

function capacityOf(of: JoinedWinding, load: Capacity['load']): Capacity | undefined {
  const { branches, joints, winding, values, emf } = of
  const { amps: limit = 1 } = values
  const drawn = load === 'all' ? drawnFromAll(of) : drawnFromPair(of, load)
  if (drawn === undefined) return undefined
  const dead = branches.map((branch) => ({ ...branch, emf: nought }))
  const unit = sharingImpedance(dead)
  const { amps } = solveCircuit({ nodes: joints.length, branches: unit, drawn })
  const sizes = amps.map((current) => (current === undefined ? 0 : sizeOf(current)))
  const most = Math.max(...sizes)
  if (!(most > 1e-9)) return undefined
  const factor = limit / most
  const power = drawn.reduce(
    (sum, current, node) => plus(sum, times(of.solved.volts[node]!, conjugate(current))),
    nought,
  )
  const voltAmps = sizeOf(power) * factor
  return {
    load,
    lineAmps: Math.max(...lineSizes(of, drawn)) * factor,
    voltAmps,
    share: voltAmps / (winding.coils.length * emf * limit),
    hottest: winding.coils.filter((_, at) => sizes[at]! > most * (1 - 1e-6)).map(({ name }) => name),
  }
}

/** Coils without impedance share a current as coils that are all alike do. */
function sharingImpedance(branches: JoinedWinding['branches']): JoinedWinding['branches'] {
  if (branches.every(({ impedance }) => sizeOf(impedance) > 0)) return branches
  return branches.map((branch) => ({ ...branch, impedance: complex(1) }))
}

/** One amp in step with the voltage between two outlets; none where there is no voltage. */
function drawnFromPair(
  of: JoinedWinding,
  [from, to]: readonly [string, string],
): readonly Complex[] | undefined {
  const at = (name: string) => jointOf(of.joints, of.joined.lines.find((line) => line.name === name)!.lead)
  const volts = voltsBetween(of, { from: at(from), to: at(to) })
  if (volts === undefined || sizeOf(volts) < of.emf * 1e-6) return undefined
  const current = scaled(volts, 1 / sizeOf(volts))
  return of.joints.map((_, node) =>
    node === at(from) ? current : node === at(to) ? minus(nought, current) : nought,
  )
}

/**
 * One amp in each line, in step with its voltage above the neutral, which takes what is left over. Where there is no neutral,
 * or three lines stand unequally above it, above the middle of the lines, as a three-phase load sees them.
 */
function drawnFromAll(of: JoinedWinding): readonly Complex[] | undefined {
  const { joined, joints, solved, emf } = of
  const nodeOf = (lead: string) => jointOf(joints, lead)
  const lines = joined.lines.filter(({ name }) => name !== neutral).map(({ lead }) => nodeOf(lead))
  const middle = joined.lines.find(({ name }) => name === neutral)
  const part = solved.parts[lines[0]!]
  if (new Set(lines).size < lines.length || lines.some((node) => solved.parts[node] !== part))
    return undefined
  const mean = scaled(
    lines.reduce((sum, node) => plus(sum, solved.volts[node]!), nought),
    1 / lines.length,
  )
  const overNeutral =
    middle === undefined || solved.parts[nodeOf(middle.lead)] !== part
      ? undefined
      : lines.map((node) => minus(solved.volts[node]!, solved.volts[nodeOf(middle.lead)]!))
  const isEven = (volts: readonly Complex[]) =>
    Math.max(...volts.map(sizeOf)) - Math.min(...volts.map(sizeOf)) < emf * 0.02
  const toNeutral = overNeutral !== undefined && (lines.length === 2 || isEven(overNeutral))
  const volts = toNeutral ? overNeutral : lines.map((node) => minus(solved.volts[node]!, mean))
  if (volts.some((one) => sizeOf(one) < emf * 1e-6)) return undefined
  const drawn = new Array<Complex>(joints.length).fill(nought)
  const units = volts.map((one) => scaled(one, 1 / sizeOf(one)))
  const rest = units.reduce(plus, nought)
  lines.forEach((node, at) => {
    drawn[node] = toNeutral ? units[at]! : minus(units[at]!, scaled(rest, 1 / lines.length))
  })
  if (toNeutral) drawn[nodeOf(middle!.lead)] = minus(drawn[nodeOf(middle!.lead)]!, rest)
  return drawn
}

/** Currents in the lines proper, the neutral left out. */
function lineSizes({ joined, joints }: JoinedWinding, drawn: readonly Complex[]): readonly number[] {
  const lines = joined.lines.filter(({ name }) => name !== neutral)
  return (lines.length > 0 ? lines : joined.lines).map(({ lead }) => sizeOf(drawn[jointOf(joints, lead)]!))
}
