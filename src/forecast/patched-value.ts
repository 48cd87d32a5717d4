/**
 * A value with its wrong places replaced by something that its schema allows, only so that the rest can be looked at.
 *
 * @module
 */

import type * as z from 'zod'
import { nearestForm } from './life-model-problems.js'

type Issue = z.core.$ZodIssue
type Container = Record<PropertyKey, unknown>

/** A copy of `value` in which each place that an issue names is nearer to what is allowed. */
export function patched(value: unknown, issues: readonly Issue[]): unknown {
  const root = { value: structuredClone(value) }
  for (const issue of issues) patch(root, ['value', ...issue.path], issue)
  return root.value
}

function patch(root: Container, path: readonly PropertyKey[], issue: Issue): void {
  let parent: Container = root
  for (const step of path.slice(0, -1)) {
    const child = parent[step]
    if (typeof child !== 'object' || child === null) return
    parent = child as Container
  }
  const last = path.at(-1)!
  const here = parent[last]
  switch (issue.code) {
    case 'unrecognized_keys':
      if (isContainer(here)) for (const key of issue.keys) delete here[key]
      break
    case 'invalid_union':
      for (const inner of nearestForm(issue.errors) ?? issue.errors[0] ?? [])
        patch(root, [...path, ...inner.path], inner)
      break
    case 'invalid_key':
      delete parent[last]
      break
    case 'too_small':
      parent[last] = Array.isArray(here) ? [...here, ...padding(here, Number(issue.minimum))] : lowest(issue)
      break
    case 'too_big':
      parent[last] = Array.isArray(here) ? here.slice(0, Number(issue.maximum)) : highest(issue, here)
      break
    case 'invalid_type':
      parent[last] = plainValues[issue.expected]?.()
      break
    case 'invalid_value':
      parent[last] = issue.values[0]
      break
    default:
      parent[last] = 'patched'
  }
}

const plainValues: Readonly<Record<string, () => unknown>> = {
  number: () => 1,
  int: () => 1,
  string: () => 'patched',
  boolean: () => false,
  array: () => [],
  tuple: () => [0, 0, 0],
  object: () => ({}),
  record: () => ({}),
}

function isContainer(value: unknown): value is Container {
  return typeof value === 'object' && value !== null
}

function padding(list: readonly unknown[], length: number): unknown[] {
  return Array(Math.max(0, length - list.length)).fill(undefined)
}

function lowest(issue: Extract<Issue, { code: 'too_small' }>): unknown {
  if (issue.origin === 'string') return 'patched'
  return issue.inclusive === false ? Number(issue.minimum) + 1 : Number(issue.minimum)
}

function highest(issue: Extract<Issue, { code: 'too_big' }>, here: unknown): unknown {
  return typeof here === 'string' ? here.slice(0, Number(issue.maximum)) : Number(issue.maximum)
}
