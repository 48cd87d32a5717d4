/**
 * The product beside two programs in C: the same algorithm (`same.c`), and the life model written plainly (`plain.c`).
 *
 * @module
 */

import { execFile, execFileSync, spawnSync } from 'node:child_process'
import { mkdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { promisify } from 'node:util'
import type { Program } from '../src/alternatives/program.js'
import { column } from '../src/alternatives/sample.js'
import { playSpan } from '../src/alternatives/simulate.js'
import { writeModelFile } from './model-file.js'

const seed = 3
/** The plain program draws on its own; another seed keeps anyone from thinking otherwise. */
const seedOfPlain = 4
const here = import.meta.dirname
const out = join(here, 'out')
const spanOfProduct = 5000
/** The same program on the same draws may part in the last digits of exp, log and pow; beyond this a draw has turned. */
const lastDigits = 1e-9

type InC = 'same' | 'plain'

/** What histories of every alternative came to. */
interface Run {
  readonly histories: number
  /** Histories of one alternative in a second of processor time. */
  readonly perSecond: number
  /** Of each alternative. */
  readonly means: readonly number[]
  readonly standardErrors: readonly number[]
  /** History after history, the cost of each alternative; absent where nobody asks. */
  readonly costs?: Float64Array
}

/** One alternative as the three programs see it. */
export interface Agreement {
  readonly alternative: string
  /** Histories whose cost differs from the same history's in `same.c` by more than the last digits. */
  readonly parted: number
  /** Means less the product's: in standard errors, and as a share of the cost. */
  readonly same: Apart
  readonly plain: Apart
}

interface Apart {
  readonly errors: number
  readonly share: number
}

/** Whether a compiler for C is here. */
export function hasCompiler(): boolean {
  return spawnSync('cc', ['--version']).status === 0
}

/** Compiles both programs; their warnings are errors. */
export function compileC(): void {
  mkdirSync(out, { recursive: true })
  const flags = ['-std=c11', '-D_GNU_SOURCE', '-O3', '-Wall', '-Wextra', '-Werror']
  for (const name of ['same', 'plain']) {
    execFileSync('cc', [...flags, '-o', join(out, name), join(here, `${name}.c`), '-lm'])
  }
}

/** The best speed of each: they take turns `rounds` times, because other work on the machine slows all. */
export async function inTurns(
  program: Program,
  { histories, rounds }: { readonly histories: number; readonly rounds: number },
): Promise<Readonly<Record<InC | 'product', number>>> {
  const best = { product: 0, same: 0, plain: 0 }
  const path = modelFile(program, 'turns')
  playProduct(program, histories)
  for (let round = 0; round < rounds; round++) {
    best.product = Math.max(best.product, playProduct(program, histories).perSecond)
    for (const name of ['same', 'plain'] as const) {
      const { perSecond } = await playInC(name, { path, program, histories, passes: 2 })
      best[name] = Math.max(best[name], perSecond)
    }
  }
  return best
}

/** The same histories in the product and in `same.c`, others in `plain.c`, all three at once. */
export async function agreement(program: Program, histories: number): Promise<Agreement[]> {
  const path = modelFile(program, 'agreement')
  const others = (['same', 'plain'] as const).map((name) =>
    playInC(name, { path, program, histories, passes: 1 }),
  )
  const product = playProduct(program, histories)
  const [same, plain] = (await Promise.all(others)) as [Run, Run]
  return program.alternatives.map(({ id }, a) => ({
    alternative: id,
    parted: countParted({ product, same, alternative: a, alternatives: program.alternatives.length }),
    // On the same draws the errors of the two are not independent: that of one of them is the measure.
    same: apart(same.means[a]! - product.means[a]!, product.standardErrors[a]!, product.means[a]!),
    plain: apart(
      plain.means[a]! - product.means[a]!,
      Math.hypot(product.standardErrors[a]!, plain.standardErrors[a]!),
      product.means[a]!,
    ),
  }))
}

function apart(difference: number, standardError: number, cost: number): Apart {
  return { errors: difference / standardError, share: difference / cost }
}

function countParted(of: {
  readonly product: Run
  readonly same: Run
  readonly alternative: number
  readonly alternatives: number
}): number {
  let parted = 0
  for (let i = 0; i < of.product.histories; i++) {
    const at = i * of.alternatives + of.alternative
    const cost = of.product.costs![at]!
    if (Math.abs(of.same.costs![at]! - cost) > lastDigits * Math.abs(cost)) parted += 1
  }
  return parted
}

function modelFile(program: Program, name: string): string {
  mkdirSync(out, { recursive: true })
  const path = join(out, `${name}-${process.pid}.bin`)
  writeModelFile(program, path)
  return path
}

/** Plays in spans, so that what is kept of a million histories has room. */
function playProduct(program: Program, histories: number): Run {
  const count = program.alternatives.length
  const costs = new Float64Array(histories * count)
  const began = process.cpuUsage()
  for (let from = 0; from < histories; from += spanOfProduct) {
    const span = { seed, from, count: Math.min(spanOfProduct, histories - from) }
    playSpan(program, span).forEach((sample, a) => {
      column(sample, 'cost').forEach((cost, i) => {
        costs[(from + i) * count + a] = cost
      })
    })
  }
  const seconds = process.cpuUsage(began).user / 1e6
  const moments = program.alternatives.map((_, a) => momentsOf(costs, { from: a, step: count }))
  return {
    histories,
    perSecond: (histories * count) / seconds,
    means: moments.map(({ mean }) => mean),
    standardErrors: moments.map(({ standardError }) => standardError),
    costs,
  }
}

function momentsOf(values: Float64Array, { from, step }: { readonly from: number; readonly step: number }) {
  const count = values.length / step
  let sum = 0
  for (let i = from; i < values.length; i += step) sum += values[i]!
  const mean = sum / count
  let squares = 0
  for (let i = from; i < values.length; i += step) squares += (values[i]! - mean) ** 2
  return { mean, standardError: Math.sqrt(squares / (count - 1) / count) }
}

/** Plays histories in one of the programs in C; of several passes the quickest counts. */
async function playInC(
  name: InC,
  of: {
    readonly path: string
    readonly program: Program
    readonly histories: number
    readonly passes: number
  },
): Promise<Run> {
  const costsPath = join(out, `costs-${process.pid}.bin`)
  const isSame = name === 'same'
  const words = [of.path, String(isSame ? seed : seedOfPlain), '0', String(of.histories), String(of.passes)]
  const run = promisify(execFile)
  const { stdout } = await run(join(out, name), isSame ? [...words, costsPath] : words)
  const [seconds, ...lines] = stdout.trim().split('\n')
  const rows = lines.map((line) => line.split(' ').map(Number))
  return {
    histories: of.histories,
    perSecond: (of.histories * of.program.alternatives.length) / Number(seconds),
    means: rows.map((row) => row[0]!),
    standardErrors: rows.map((row) => row[1]!),
    ...(isSame ? { costs: doublesOf(readFileSync(costsPath)) } : {}),
  }
}

function doublesOf(bytes: Buffer): Float64Array {
  return new Float64Array(
    bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength) as ArrayBuffer,
  )
}
