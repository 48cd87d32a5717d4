/**
 * The product beside the same algorithm in C, on the alternative that leaves the set as it is.
 *
 * @module
 */

import { execFileSync, spawnSync } from 'node:child_process'
import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import type { Program } from '../src/alternatives/program.js'
import { column, playSpan } from '../src/alternatives/simulate.js'
import { dumpProgram } from './dump.js'

const seed = 3
const here = import.meta.dirname
const out = join(here, 'out')
/** The two take turns this often, and the best of each counts: other work on the machine slows both. */
const rounds = 3

export interface BesideC {
  readonly histories: number
  /** Histories per second of processor time. */
  readonly product: number
  readonly inC: number
  readonly productMean: number
  readonly meanInC: number
  readonly standardError: number
}

/** Whether a compiler for C is here. */
export function hasCompiler(): boolean {
  return spawnSync('cc', ['--version']).status === 0
}

/** Compiles `source`, plays the same histories in both, and times them in turn. */
export function besideC(program: Program, source: string, histories: number): BesideC {
  mkdirSync(out, { recursive: true })
  const binary = join(out, source.replace(/\.c$/, ''))
  execFileSync('cc', ['-O3', '-o', binary, join(here, source), '-lm'])
  const tables = join(out, 'program.bin')
  dumpProgram(program, tables)
  const left: Program = { ...program, alternatives: [{ id: 'leave', now: 'leave' }] }
  const one = (count: number) => playSpan(left, { seed, from: 0, count })[0]!
  one(200)
  let product = 0
  let inC = 0
  let productMean = 0
  let meanInC = 0
  let standardError = 0
  for (let round = 0; round < (histories > 100_000 ? 1 : rounds); round++) {
    const began = process.cpuUsage()
    const costs = column(one(histories), 'cost')
    const { user, system } = process.cpuUsage(began)
    product = Math.max(product, histories / ((user + system) / 1e6))
    productMean = costs.reduce((a, b) => a + b, 0) / histories
    const printed = execFileSync(binary, [tables, String(seed), '0', String(histories)], { encoding: 'utf8' })
    const [mean, error, seconds] = printed.split(' ').map(Number)
    inC = Math.max(inC, histories / seconds!)
    meanInC = mean!
    standardError = error!
  }
  return { histories, product, inC, productMean, meanInC, standardError }
}
