/**
 * One file of reference data: its head judged, its figures parted from their origins, and its body by the form of its type.
 *
 * @module
 */

import type * as z from 'zod'
import { namedPath, valueAt } from './path.js'
import { type Problem, shown } from './problem.js'
import { type Provenance, partOrigins } from './provenance.js'

interface Head {
  readonly type: string
  readonly origins: Readonly<Record<string, Provenance>>
}

export interface FileForms<H extends Head> {
  readonly head: z.ZodObject & z.ZodType<H>
  /** By the file's type. */
  readonly bodies: Readonly<Record<H['type'], z.ZodType>>
  /** The type whose numbers come from the records themselves: a list of sources. */
  readonly plain: H['type']
}

export interface TypedFile<B> {
  /** Empty where the file is refused. */
  readonly body: Partial<B>
  /** Path of a figure to where it comes from. */
  readonly origins: ReadonlyMap<string, Provenance>
  readonly problems: readonly Problem[]
}

/** Reads a file, given by its name, and says everything that is wrong with it. */
export function readTypedFile<B, H extends Head>(
  { name, content }: { readonly name: string; readonly content: unknown },
  { head: headForm, bodies, plain }: FileForms<H>,
): TypedFile<B> {
  const head = headForm.safeParse(content)
  if (!head.success) return { body: {}, origins: new Map(), problems: toProblems(head.error, name, content) }
  const { type, origins: listed } = head.data
  const headFields = Object.keys(headForm.shape)
  const rest = Object.fromEntries(
    Object.entries(content as Readonly<Record<string, unknown>>).filter(([key]) => !headFields.includes(key)),
  )
  const parted =
    type === plain
      ? { values: rest, origins: new Map<string, Provenance>(), problems: [] }
      : partOrigins(rest, listed, '')
  const problems = parted.problems.map((problem) => ({ ...problem, path: `${name}:${problem.path}` }))
  const body = bodies[type as H['type']].safeParse(parted.values)
  if (!body.success) problems.push(...toProblems(body.error, name, parted.values))
  return { body: body.success ? (body.data as Partial<B>) : {}, origins: parted.origins, problems }
}

function toProblems(error: z.ZodError, name: string, content: unknown): Problem[] {
  return error.issues.map((issue) => {
    const path = namedPath(content, issue.path)
    const found = path === '' ? content : valueAt(content, path)
    return { code: 'form', path: `${name}:${path}`, found: shown(found), allowed: issue.message }
  })
}
