/**
 * A winding as it is joined, with loads on its lines: what each load gets, and what each line carries.
 *
 * @module
 */

import type { Problem } from '../../catalogue/problem.js'
import { solveCircuit } from './circuit.js'
import { complex, minus, nought, plus, sizeOf } from './complex.js'
import { type JoinedWinding, jointOf } from './solve-links.js'

/** A resistance between two outlets. */
export interface Load {
  readonly from: string
  readonly to: string
  readonly ohms: number
}

export interface Loaded {
  readonly loads: readonly (Load & { readonly volts: number; readonly amps: number })[]
  /** Through each line that is whole. */
  readonly lines: readonly { readonly name: string; readonly amps: number }[]
}

const loadWords = 'two lines and ohms, such as L1-N 12; the next load after a comma'

/** "L1-N 12, L2-N 48" */
export function readLoads(
  text: string,
  { names, path }: { readonly names: readonly string[]; readonly path: string },
): { readonly loads: readonly Load[]; readonly problems: readonly Problem[] } {
  const problems: Problem[] = []
  const loads = text.split(/[,;]/).flatMap((piece) => {
    const [, from = '', to = '', size] =
      /^\s*(\w+)\s*[-–]\s*(\w+)\s+(\d+(?:\.\d+)?)\s*(?:ohm|Ω)?\s*$/i.exec(piece) ?? []
    const ohms = Number(size)
    if (!(ohms > 0)) {
      problems.push({ code: 'wrong-form', path, found: piece.trim(), allowed: loadWords })
      return []
    }
    const ends = [from, to].map((name) => name.toUpperCase())
    const unknown = ends.filter((name) => !names.includes(name))
    for (const name of unknown) {
      problems.push({ code: 'unknown-line', path, found: name, allowed: `one of: ${names.join(', ')}` })
    }
    return unknown.length > 0 ? [] : [{ from: ends[0]!, to: ends[1]!, ohms }]
  })
  return { loads, problems }
}

/** Solves it with its loads; lines in `open` are broken between the set and the loads. */
export function loadedWinding(
  of: JoinedWinding,
  { loads, open }: { readonly loads: readonly Load[]; readonly open: readonly string[] },
): Loaded {
  const { joints, branches, joined } = of
  const beyond = new Map(open.map((name, at) => [name, joints.length + at]))
  const nodeOf = (name: string) =>
    beyond.get(name) ?? jointOf(joints, joined.lines.find((line) => line.name === name)!.lead)
  const all = [
    ...branches,
    ...loads.map(({ from, to, ohms }) => ({
      from: nodeOf(from),
      to: nodeOf(to),
      emf: nought,
      impedance: complex(ohms),
    })),
  ]
  const { volts, amps } = solveCircuit({ nodes: joints.length + open.length, branches: all })
  // A load's current comes out of the end named second where the first stands above it.
  const into = (name: string) =>
    loads.reduce((sum, { from, to }, at) => {
      const current = amps[branches.length + at] ?? nought
      return from === name ? minus(sum, current) : to === name ? plus(sum, current) : sum
    }, nought)
  return {
    loads: loads.map((load, at) => ({
      ...load,
      volts: sizeOf(minus(volts[nodeOf(load.from)]!, volts[nodeOf(load.to)]!)),
      amps: sizeOf(amps[branches.length + at] ?? nought),
    })),
    lines: joined.lines
      .filter(({ name }) => !open.includes(name))
      .map(({ name }) => ({ name, amps: sizeOf(into(name)) })),
  }
}
