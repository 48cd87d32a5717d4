/**
 * What a schema found wrong, in plain words.
 *
 * @module
 */

import type * as z from 'zod'
import { type Problem, shown } from '../catalogue/problem.js'

export type { Problem }

/** Everything that a schema found wrong with a value from outside. */
export function problemsOf(error: z.ZodError, value: unknown): Problem[] {
  return error.issues.flatMap((issue) => {
    const path = issue.path.map(String)
    if (issue.code === 'unrecognized_keys') {
      return issue.keys.map((key) => ({
        code: 'unknown-field',
        path: [...path, key].join('.'),
        found: shown(key),
        allowed: 'only the fields of this kind',
      }))
    }
    const found = valueAt(value, path)
    return [
      {
        code: found === undefined ? 'missing' : (codes[issue.code] ?? 'not-allowed'),
        path: path.join('.'),
        found: shown(found),
        allowed: isOurs(issue.message) ? issue.message : 'a record with named fields',
      },
    ]
  })
}

/** Each thing once: one wrong text can break several rules that are worded alike. */
export function withoutRepeats(problems: readonly Problem[]): Problem[] {
  const seen = new Set<string>()
  return problems.filter(({ code, path, allowed }) => {
    const key = `${code}\n${path}\n${allowed}`
    return seen.size !== seen.add(key).size
  })
}

const codes: Readonly<Record<string, string>> = {
  invalid_type: 'wrong-type',
  too_small: 'out-of-range',
  too_big: 'out-of-range',
  invalid_format: 'wrong-form',
  invalid_value: 'not-one-of',
}

/** The schemas word everything but "this must be an object". */
function isOurs(message: string): boolean {
  return !message.startsWith('Invalid input')
}

function valueAt(value: unknown, path: readonly string[]): unknown {
  let here: unknown = value
  for (const step of path) {
    if (typeof here !== 'object' || here === null || !Object.hasOwn(here, step)) return undefined
    here = (here as Readonly<Record<string, unknown>>)[step]
  }
  return here
}
