/**
 * What the schema of the life model found wrong, worded for the person who wrote the file.
 *
 * @module
 */

import type * as z from 'zod'
import { namedPath } from '../catalogue/path.js'
import { type Problem, shown } from '../catalogue/problem.js'

type Issue = z.core.$ZodIssue

/** Everything that the schema found wrong with a value from outside, each under the names of its records. */
export function schemaProblems(issues: readonly Issue[], value: unknown): Problem[] {
  return issues.flatMap((issue) => problemsOfIssue(issue, value))
}

function problemsOfIssue(issue: Issue, value: unknown): Problem[] {
  if (issue.code === 'unrecognized_keys') {
    return issue.keys.map((key) => ({
      code: 'unknown-field',
      path: namedPath(value, [...issue.path, key]),
      found: shown(key),
      allowed: 'only the fields of docs/schema/life-model.schema.json',
    }))
  }
  if (issue.code === 'invalid_union') {
    const nearest = nearestForm(issue.errors)
    if (nearest !== undefined) {
      return nearest.flatMap((inner) =>
        problemsOfIssue({ ...inner, path: [...issue.path, ...inner.path] }, value),
      )
    }
  }
  const found = at(value, issue.path)
  return [
    {
      code: found === undefined ? 'missing' : (codes[issue.code] ?? 'not-allowed'),
      path: namedPath(value, issue.path),
      found: shown(found),
      allowed: allowedBy(issue),
    },
  ]
}

/** The places that an issue speaks of. */
export function placesOf(issue: Issue): readonly (readonly PropertyKey[])[] {
  if (issue.code === 'unrecognized_keys') return issue.keys.map((key) => [...issue.path, key])
  const nearest = issue.code === 'invalid_union' ? nearestForm(issue.errors) : undefined
  if (nearest === undefined) return [issue.path]
  return nearest.flatMap((inner) => placesOf({ ...inner, path: [...issue.path, ...inner.path] }))
}

/** The form that was most likely meant: one that fits at its root, with the fewest faults inside. */
export function nearestForm(forms: readonly (readonly Issue[])[]): readonly Issue[] | undefined {
  return forms
    .filter((issues) => issues.every((issue) => issue.path.length > 0 || issue.code === 'unrecognized_keys'))
    .sort((a, b) => weightOf(a) - weightOf(b))[0]
}

/** A field that no form knows speaks more against a form than one that is missing. */
function weightOf(issues: readonly Issue[]): number {
  return issues.reduce(
    (sum, issue) => sum + (issue.code === 'unrecognized_keys' ? 2 * issue.keys.length : 1),
    0,
  )
}

const codes: Readonly<Partial<Record<Issue['code'], string>>> = {
  invalid_type: 'wrong-type',
  too_small: 'out-of-range',
  too_big: 'out-of-range',
  invalid_format: 'wrong-form',
  invalid_value: 'not-one-of',
  invalid_key: 'wrong-form',
}

const types: Readonly<Record<string, string>> = {
  number: 'a number',
  int: 'a whole number',
  string: 'text',
  boolean: 'true or false',
  array: 'a list',
  tuple: 'a list',
  object: 'a record with named fields',
  record: 'a record with named fields',
}

function allowedBy(issue: Issue): string {
  switch (issue.code) {
    case 'invalid_type':
      return types[issue.expected] ?? issue.expected
    case 'invalid_value':
      return issue.values.length === 1
        ? shown(issue.values[0])
        : `one of: ${issue.values.map(String).join(', ')}`
    case 'too_small':
      if (issue.exact) return `a list of ${issue.minimum}`
      return `${measure(issue.origin, issue.inclusive === false ? 'more than' : 'at least')} ${issue.minimum}`
    case 'too_big':
      if (issue.exact) return `a list of ${issue.maximum}`
      return `${measure(issue.origin, issue.inclusive === false ? 'less than' : 'at most')} ${issue.maximum}`
    case 'invalid_union':
      return [...new Set(issue.errors.map((form) => form.map(allowedBy).join(' and ')))].join(', or ')
    case 'invalid_key':
      return issue.issues.map(allowedBy).join(', ')
    default:
      return issue.message
  }
}

function measure(origin: string, bound: string): string {
  if (origin === 'array') return `a list whose length is ${bound}`
  if (origin === 'string') return `text whose length is ${bound}`
  return bound
}

function at(value: unknown, path: readonly PropertyKey[]): unknown {
  let here = value
  for (const step of path) {
    if (typeof here !== 'object' || here === null || !Object.hasOwn(here, step)) return undefined
    here = (here as Readonly<Record<PropertyKey, unknown>>)[step]
  }
  return here
}
