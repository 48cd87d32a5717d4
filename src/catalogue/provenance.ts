/**
 * Where every figure comes from, and how firmly it is held.
 *
 * In the files a record names its origin once: `"from": "practice"`, a name listed under `origins` in the head of
 * that file; everything beneath it inherits that origin. `"fromOf": {"scale": "oldSetManual"}` overrules it for single fields.
 *
 * @module
 */

import * as z from 'zod'
import { childrenOf, join } from './path.js'
import { type Problem, shown } from './problem.js'

/**
 * How firmly a figure is held. `seen`: its place was read whole, in the document. `quoted`: read in an excerpt, an abstract or a
 * part of that place, or in a text quoting it. `recalled`: from memory, still to be checked. `practice`: common practice, no source. `derived`: computed. `owner`: set by the keeper of this boat.
 */
export const heldKinds = ['seen', 'quoted', 'recalled', 'practice', 'derived', 'owner'] as const
export type Held = (typeof heldKinds)[number]

/** A document that speaks for a figure without giving it. */
export interface Support {
  readonly source: string
  readonly place: string
  readonly held: Held
}

/** Where one figure comes from. */
export interface Provenance extends Support {
  /** Documents that point the same way. */
  readonly alongside: readonly Support[]
}

const support = z.strictObject({
  source: z.string().min(1),
  place: z.string().min(1),
  held: z.enum(heldKinds).exclude(['owner']),
})

/** An origin as the head of a file lists it. */
export const originSchema = support.extend({ alongside: z.array(support).default([]) })

/** A file's content parted into its plain values and the origin of every number in it. */
export interface Parted {
  readonly values: unknown
  /** Path to origin. */
  readonly origins: ReadonlyMap<string, Provenance>
  readonly problems: readonly Problem[]
}

/**
 * Takes `from` and `fromOf` out of a file's content and gives every number its origin.
 * A number under no `from` is a problem, and so is a name that `origins` does not list.
 */
export function partOrigins(
  content: unknown,
  listed: Readonly<Record<string, Provenance>>,
  atPath: string,
): Parted {
  const origins = new Map<string, Provenance>()
  const problems: Problem[] = []

  function lookUp(name: unknown, path: string): Provenance | undefined {
    const origin = typeof name === 'string' && Object.hasOwn(listed, name) ? listed[name] : undefined
    if (origin === undefined) {
      const allowed = `one of ${Object.keys(listed).join(', ')}`
      problems.push({ code: 'unknown-origin', path, found: shown(name), allowed })
    }
    return origin
  }

  function visit(node: unknown, path: string, inherited: Provenance | undefined): unknown {
    if (typeof node === 'number') {
      if (inherited === undefined) {
        problems.push({ code: 'no-origin', path, found: shown(node), allowed: 'a number beneath a "from"' })
      } else {
        origins.set(path, inherited)
      }
      return node
    }
    if (Array.isArray(node)) {
      return childrenOf(node).map(([step, child]) => visit(child, join(path, step), inherited))
    }
    if (typeof node !== 'object' || node === null) return node

    const { from, fromOf, ...fields } = node as Readonly<Record<string, unknown>>
    const own = from === undefined ? inherited : lookUp(from, join(path, 'from'))
    const single = (typeof fromOf === 'object' && fromOf !== null ? fromOf : {}) as Record<string, unknown>
    for (const name of Object.keys(single)) {
      if (!Object.hasOwn(fields, name)) {
        const problem = { code: 'unknown-field', path: join(path, `fromOf.${name}`), found: name }
        problems.push({ ...problem, allowed: 'a field of the same record' })
      }
    }
    return Object.fromEntries(
      Object.entries(fields).map(([name, child]) => {
        const origin = Object.hasOwn(single, name) ? lookUp(single[name], join(path, `fromOf.${name}`)) : own
        return [name, visit(child, join(path, name), origin)]
      }),
    )
  }

  return { values: visit(content, atPath, undefined), origins, problems }
}
