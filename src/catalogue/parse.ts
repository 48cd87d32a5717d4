/**
 * The catalogue's files read into one value, with the origin of every figure.
 *
 * @module
 */

import type * as z from 'zod'
import type { Catalogue } from './catalogue.js'
import { bodySchemas, headSchema, type Source } from './file-schema.js'
import type { Part } from './part-schema.js'
import { namedPath, valueAt } from './path.js'
import { type Problem, shown } from './problem.js'
import { type Provenance, partOrigins } from './provenance.js'
import { referenceProblems } from './references.js'

export type Parsed =
  | { readonly ok: true; readonly catalogue: Catalogue }
  | { readonly ok: false; readonly problems: readonly Problem[] }

/**
 * Reads the files of a catalogue, given by name. Says everything that is wrong at once.
 * Parts may be spread over several files; of the other kinds there is one each.
 */
export function parseCatalogue(files: Readonly<Record<string, unknown>>): Parsed {
  const read = Object.entries(files).map(([name, content]) => readFile(name, content))
  const problems = read.flatMap((file) => file.problems)
  const kinds = Object.keys(bodySchemas).map((type) => ({
    type,
    count: read.filter((file) => file.type === type).length,
  }))
  for (const { type, count } of kinds) {
    const enough = type === 'gensettle-parts' ? count >= 1 : count === 1
    if (!enough && problems.length === 0) {
      const allowed = type === 'gensettle-parts' ? 'at least one file' : 'exactly one file'
      problems.push({ code: 'file-count', path: type, found: `${count} files`, allowed })
    }
  }
  if (problems.length > 0) return { ok: false, problems }

  const bodies = read.flatMap((file) => (file.body === undefined ? [] : [file.body]))
  const merged = Object.assign({}, ...bodies, {
    parts: bodies.flatMap((body) => body.parts ?? []),
    origins: new Map(read.flatMap((file) => [...file.origins])),
  }) as Catalogue
  const broken = referenceProblems(merged)
  return broken.length > 0 ? { ok: false, problems: broken } : { ok: true, catalogue: merged }
}

interface Body {
  readonly parts?: readonly Part[]
}

interface ReadFile {
  readonly type?: string
  readonly body?: Body
  readonly origins: ReadonlyMap<string, Provenance>
  readonly problems: Problem[]
}

function readFile(name: string, content: unknown): ReadFile {
  const head = headSchema.safeParse(content)
  if (!head.success) return { origins: new Map(), problems: toProblems(head.error, name, content) }

  const { type, origins: listed } = head.data
  const headFields = Object.keys(headSchema.shape)
  const rest = Object.fromEntries(
    Object.entries(content as Readonly<Record<string, unknown>>).filter(([key]) => !headFields.includes(key)),
  )
  const parted = type === 'gensettle-sources' ? withoutOrigins(rest) : partOrigins(rest, listed, '')
  const problems = parted.problems.map((problem) => ({ ...problem, path: `${name}:${problem.path}` }))
  const body = bodySchemas[type].safeParse(parted.values)
  if (!body.success) problems.push(...toProblems(body.error, name, parted.values))
  return body.success
    ? { type, body: body.data as Body, origins: parted.origins, problems }
    : { type, origins: parted.origins, problems }
}

/** The list of sources: the one number in each, its year, comes from the source itself. */
function withoutOrigins(values: unknown): ReturnType<typeof partOrigins> {
  const { sources } = (values ?? {}) as { readonly sources?: readonly Partial<Source>[] }
  const origins = new Map(
    (Array.isArray(sources) ? sources : []).map((source) => [
      `sources.${source.id}.year`,
      { source: `${source.id}`, place: 'date of issue', held: source.held ?? 'recalled', alongside: [] },
    ]),
  )
  return { values, origins, problems: [] }
}

function toProblems(error: z.ZodError, name: string, content: unknown): Problem[] {
  return error.issues.map((issue) => {
    const path = namedPath(content, issue.path)
    const found = path === '' ? content : valueAt(content, path)
    return { code: 'form', path: `${name}:${path}`, found: shown(found), allowed: issue.message }
  })
}
