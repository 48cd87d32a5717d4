/**
 * `npm run bench -- advice`: Gensettle against rules of thumb, on random boats whose truth it does not know.
 * `--boats`, `--lives` (for the rules), `--advised` (for Gensettle and the one who knows), `--workers`, `--seed`, and
 * `--minutes`, after which no further boat is begun.
 *
 * @module
 */

import { type ChildProcess, fork } from 'node:child_process'
import { mkdirSync, writeFileSync } from 'node:fs'
import { availableParallelism } from 'node:os'
import { join } from 'node:path'
import { parseArgs } from 'node:util'
import { tell } from './tell.js'
import type { BoatResult, Trial } from './trial.js'

const out = join(import.meta.dirname, '..', 'out')

export async function benchAdvice(args: readonly string[]): Promise<void> {
  const { values } = parseArgs({
    args: [...args],
    options: {
      boats: { type: 'string', default: '500' },
      lives: { type: 'string', default: '10' },
      advised: { type: 'string', default: '10' },
      workers: { type: 'string', default: String(availableParallelism()) },
      seed: { type: 'string', default: '4' },
      minutes: { type: 'string', default: 'Infinity' },
    },
  })
  const trial: Trial = {
    seed: Number(values.seed),
    lives: Number(values.lives),
    advised: Number(values.advised),
    histories: 2000,
  }
  const began = performance.now()
  const results = await tryAll({
    boats: Number(values.boats),
    workers: Number(values.workers),
    minutes: Number(values.minutes),
    trial,
  })
  const boats = results.length
  const minutes = (performance.now() - began) / 60_000
  mkdirSync(out, { recursive: true })
  const file = join(out, `advice-${trial.seed}-${boats}x${trial.lives}x${trial.advised}.json`)
  writeFileSync(file, JSON.stringify({ trial, boats: results }))
  const asked = results.reduce((sum, boat) => sum + boat.asked, 0)
  const askedMs = results.reduce((sum, boat) => sum + boat.askedMs, 0)
  console.log(
    `${boats} boats, seed ${trial.seed}; ${trial.lives} lives each by the rules, ${trial.advised} by advice; ` +
      `${asked} times asked, ${(askedMs / Math.max(1, asked)).toFixed(0)} ms each; ${minutes.toFixed(1)} min. ${file}`,
  )
  tell(results, trial)
}

/** Hands out boats one by one; what comes back is put in their order, so that no number of processes changes it. */
async function tryAll(of: {
  readonly boats: number
  readonly workers: number
  readonly minutes: number
  readonly trial: Trial
}): Promise<BoatResult[]> {
  const results: BoatResult[] = []
  let next = 0
  let done = 0
  const began = performance.now()
  const work = (): Promise<void> =>
    new Promise((resolve, reject) => {
      const child: ChildProcess = fork(join(import.meta.dirname, '..', 'run.ts'), ['advice-shard'], {
        execArgv: ['--import', 'tsx'],
      })
      const hand = () => {
        if (next < of.boats && performance.now() - began < of.minutes * 60_000)
          child.send({ boat: next++, trial: of.trial })
        else {
          child.disconnect()
          resolve()
        }
      }
      child.on('message', (result: BoatResult) => {
        results[result.boat] = result
        done++
        if (done % 25 === 0) {
          const left = ((performance.now() - began) / done) * (of.boats - done)
          process.stderr.write(
            `${done} of ${of.boats} boats, about ${(left / 60_000).toFixed(1)} min to go\n`,
          )
        }
        hand()
      })
      child.on('exit', (code) => {
        if (code !== 0) reject(new Error('a process that tries boats has failed'))
      })
      hand()
    })
  await Promise.all(Array.from({ length: Math.min(of.workers, of.boats) }, work))
  return results
}
