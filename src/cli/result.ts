/**
 * What a command comes to, and how that is put before a person or a program.
 *
 * @module
 */

import type { Problem } from '../catalogue/problem.js'
import { errorColours } from './colours.js'

/** An answer as a value and as text, or everything that is wrong with what came in. */
export type Result =
  | { readonly ok: true; readonly json: Json; readonly text: string; readonly file?: never }
  | { readonly ok: false; readonly problems: readonly Problem[] }

/** Every answer names its type and the version of its form, as told in docs/command-line.md. */
export interface Json {
  readonly type: `gensettle/${string}`
  readonly version: 1
  readonly [field: string]: unknown
}

/** Exit status: 0 done, 1 something wrong with what came in, 2 the command line itself was wrong. */
export const exitStatus = { done: 0, badInput: 1, wrongUse: 2 } as const

export function refuse(...problems: readonly Problem[]): Result & { readonly ok: false } {
  return { ok: false, problems }
}

/** Prints a result and gives the exit status. */
export function print(result: Result, { json }: { readonly json?: boolean }): number {
  if (result.ok) {
    process.stdout.write(json ? `${JSON.stringify(result.json, null, 2)}\n` : `${result.text.trimEnd()}\n`)
    return exitStatus.done
  }
  if (json) {
    const value: Json = { type: 'gensettle/problems', version: 1, problems: result.problems }
    process.stdout.write(`${JSON.stringify(value, null, 2)}\n`)
  } else process.stderr.write(`${problemText(result.problems)}\n`)
  return exitStatus.badInput
}

/** All problems as lines of text. */
export function problemText(problems: readonly Problem[]): string {
  const head =
    problems.length === 1 ? 'Nothing was done:' : `Nothing was done: ${problems.length} things are wrong.`
  return [errorColours.bold(head), ...problems.map((problem) => `  ${problemLine(problem)}`)].join('\n')
}

function problemLine({ code, path, found, allowed }: Problem): string {
  if (code === 'in-use') {
    const how = found.startsWith('http')
      ? `is in use by the program at ${found} Enter it there, or stop`
      : 'is in use by another program that has told no address yet. Stop'
    return `The data folder ${path} ${how} that program first (Ctrl-C where it runs). What only reads works meanwhile; --data chooses another folder.`
  }
  const place = path === '' ? '' : `${asTyped(path)}: `
  return code === 'missing'
    ? `${place}missing; needs ${allowed}`
    : `${place}found ${found}; allowed is ${allowed}`
}

/** A field of a body by the option that it is typed with: `body.covers.parts.0.did` is the did of the first `--covers-parts`. */
function asTyped(path: string): string {
  const [first, ...steps] = path.split('.')
  if (first !== 'body' || steps.length === 0) return path
  const at = steps.findIndex((step) => /^\d+$/.test(step))
  const names = at < 0 ? steps : steps.slice(0, at)
  const flag = names.join('-').replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)
  const within = at < 0 ? [] : [String(Number(steps[at]) + 1), ...steps.slice(at + 1)]
  return [`--${flag}`, ...within].join(' ')
}

/** What of the log could not be used, under a head; nothing where all could. */
export function refusedText(head: string, problems: readonly Problem[]): string[] {
  if (problems.length === 0) return []
  const lines = problems.map(({ path, found, allowed }) => `  ${path}: found ${found}; allowed is ${allowed}`)
  return ['', `${head}:`, ...lines]
}
