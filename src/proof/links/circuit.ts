/**
 * A circuit of branches, each an EMF behind an impedance, solved for every voltage and current.
 *
 * @module
 */

import { type Complex, complex, minus, nought, plus, sizeOf, solveLinear, times } from './complex.js'

/** Between two nodes, counted from 0. `from` stands above `to` by the EMF less what the current loses in the impedance. */
export interface Branch {
  readonly from: number
  readonly to: number
  /** [V] */
  readonly emf: Complex
  /** [Ω] */
  readonly impedance: Complex
}

export interface Circuit {
  readonly nodes: number
  readonly branches: readonly Branch[]
  /** Current drawn out of each node, none where left out; within each connected part they add up to nothing. [A] */
  readonly drawn?: readonly Complex[]
}

/** A loop of branches, `forward` where it is gone through from `to` to `from`, up its EMF. */
export interface Loop {
  readonly branches: readonly { readonly branch: number; readonly forward: boolean }[]
  /** Sum of the EMFs round it. [V] */
  readonly emf: Complex
}

export interface Solved {
  /** Of each node above the first node of the same connected part. [V] */
  readonly volts: readonly Complex[]
  /** Out of `from` of each branch; undefined where a loop without impedance leaves it open. [A] */
  readonly amps: readonly (Complex | undefined)[]
  /** Which connected part each node belongs to. */
  readonly parts: readonly number[]
  /** Loops that have no impedance at all. */
  readonly bareLoops: readonly Loop[]
  /** Largest miss of Kirchhoff's two laws, as a share of the largest voltage and current. */
  readonly residual: number
}

/**
 * Modified nodal analysis: at each node the currents of its branches add up to what is drawn from it (all but one node of
 * each connected part, whose voltage is 0); along each branch `V(from) − V(to) = E − Z·I`.
 *
 * Branches without impedance are allowed. One that closes a loop of such branches is set aside: its current is without
 * bounds where EMFs are left over in the loop, and not to be told where they cancel.
 */
export function solveCircuit(circuit: Circuit): Solved {
  const { nodes, branches, drawn = [] } = circuit
  const parts = partsOf(circuit)
  const bare = branches.map(({ impedance }) => sizeOf(impedance) === 0)
  const bareLoops = loopsOf(nodes, branches, (at) => bare[at]!)
  const aside = new Set(bareLoops.map(({ branches: [chord] }) => chord!.branch))
  const kept = branches.map((_, at) => at).filter((at) => !aside.has(at))
  const size = nodes + kept.length
  const matrix = Array.from({ length: size }, () => new Array<Complex>(size).fill(nought))
  const right = new Array<Complex>(size).fill(nought)
  const one = complex(1)
  for (let node = 0; node < nodes; node++) {
    if (parts.indexOf(parts[node]!) === node) matrix[node]![node] = one
    else right[node] = drawn[node] ?? nought
  }
  kept.forEach((at, i) => {
    const { from, to, emf, impedance } = branches[at]!
    const column = nodes + i
    for (const [node, sign] of [
      [from, 1],
      [to, -1],
    ] as const) {
      if (parts.indexOf(parts[node]!) !== node) {
        matrix[node]![column] = plus(matrix[node]![column]!, complex(sign))
      }
      matrix[column]![node] = plus(matrix[column]![node]!, complex(sign))
    }
    matrix[column]![column] = impedance
    right[column] = emf
  })
  const solved = solveLinear(matrix, right)
  const volts = solved.slice(0, nodes)
  const amps = branches.map((_, at) => (aside.has(at) ? undefined : solved[nodes + kept.indexOf(at)]!))
  return { volts, amps, parts, bareLoops, residual: residualOf(circuit, { volts, amps }) }
}

/** Loops closed by each branch that a spanning tree leaves over, the branch itself first. */
export function loopsOf(
  nodes: number,
  branches: readonly Branch[],
  among: (branch: number) => boolean = () => true,
): Loop[] {
  const inTree: number[] = []
  const loops: Loop[] = []
  branches.forEach(({ from, to, emf }, at) => {
    if (!among(at)) return
    const way = from === to ? [] : wayBetween(nodes, branches, inTree, { from, to })
    if (way === undefined) {
      inTree.push(at)
      return
    }
    const all = [{ branch: at, forward: true }, ...way]
    const rest = way.reduce(
      (sum, { branch, forward }) =>
        forward ? plus(sum, branches[branch]!.emf) : minus(sum, branches[branch]!.emf),
      emf,
    )
    loops.push({ branches: all, emf: rest })
  })
  return loops
}

/** From one node to another through branches of a tree. */
function wayBetween(
  nodes: number,
  branches: readonly Branch[],
  tree: readonly number[],
  { from, to }: { readonly from: number; readonly to: number },
): { readonly branch: number; readonly forward: boolean }[] | undefined {
  const cameBy = new Array<{ branch: number; forward: boolean; node: number } | undefined>(nodes)
  const waiting = [from]
  const met = new Set(waiting)
  for (const node of waiting) {
    for (const branch of tree) {
      const ends = branches[branch]!
      if (ends.from !== node && ends.to !== node) continue
      const next = ends.from === node ? ends.to : ends.from
      if (met.has(next)) continue
      met.add(next)
      cameBy[next] = { branch, forward: ends.to === node, node }
      waiting.push(next)
    }
  }
  if (!met.has(to)) return undefined
  const way: { branch: number; forward: boolean }[] = []
  for (let node = to; node !== from; node = cameBy[node]!.node) {
    const { branch, forward } = cameBy[node]!
    way.unshift({ branch, forward })
  }
  return way
}

function partsOf({ nodes, branches }: Circuit): readonly number[] {
  const parts = Array.from({ length: nodes }, (_, node) => node)
  for (const { from, to } of branches) {
    const [a, b] = [parts[from]!, parts[to]!]
    if (a === b) continue
    parts.forEach((part, node) => {
      if (part === b) parts[node] = a
    })
  }
  return parts
}

function residualOf(
  { nodes, branches, drawn = [] }: Circuit,
  { volts, amps }: Pick<Solved, 'volts' | 'amps'>,
): number {
  const sums = Array.from({ length: nodes }, (_, node) => minus(nought, drawn[node] ?? nought))
  let miss = 0
  let largestVolts = 1e-12
  let largestAmps = 1e-12
  branches.forEach(({ from, to, emf, impedance }, at) => {
    const current = amps[at]
    largestVolts = Math.max(largestVolts, sizeOf(emf))
    if (current === undefined) return
    largestAmps = Math.max(largestAmps, sizeOf(current))
    sums[from] = plus(sums[from]!, current)
    sums[to] = minus(sums[to]!, current)
    const along = minus(emf, times(impedance, current))
    miss = Math.max(miss, sizeOf(minus(minus(volts[from]!, volts[to]!), along)))
  })
  for (const current of drawn) largestAmps = Math.max(largestAmps, sizeOf(current))
  return Math.max(miss / largestVolts, Math.max(0, ...sums.map(sizeOf)) / largestAmps)
}
