/**
 * The fault model's files read into one value, every name in them looked up and every figure with its origin.
 *
 * @module
 */

import type * as z from 'zod'
import type { Catalogue } from './catalogue.js'
import { faultReferenceProblems } from './fault-references.js'
import {
  type Fault,
  type FaultCheck,
  type FaultRule,
  faultBodySchemas,
  faultHeadSchema,
  type StopLine,
  type Symptom,
} from './fault-schema.js'
import type { Source } from './file-schema.js'
import { namedPath, valueAt } from './path.js'
import { type Problem, shown } from './problem.js'
import { type Provenance, partOrigins } from './provenance.js'
import type { FaultModel, ReadFaultModel } from './read-fault-model.js'

export type ParsedFaultModel =
  | ({ readonly ok: true } & ReadFaultModel)
  | { readonly ok: false; readonly problems: readonly Problem[] }

type Lists = Partial<
  Record<'faults' | 'symptoms' | 'checks' | 'stopLines' | 'sources', readonly unknown[]>
> & {
  readonly rule?: FaultRule
}

/**
 * Reads the files, given by name, and says everything that is wrong at once. Parts, modes and looks that they name must be
 * of the catalogue.
 */
export function parseFaultModel(
  files: Readonly<Record<string, unknown>>,
  catalogue: Pick<Catalogue, 'parts' | 'checks' | 'sources'>,
): ParsedFaultModel {
  const read = Object.entries(files).map(([name, content]) => readFile(name, content))
  const problems = read.flatMap((file) => file.problems)
  if (problems.length > 0) return { ok: false, problems }
  const bodies = read.map((file) => file.body)
  const all = <T>(list: keyof Lists) =>
    bodies.flatMap((body) => (body[list] as readonly T[] | undefined) ?? [])
  const rules = bodies.flatMap(({ rule }) => (rule === undefined ? [] : [rule]))
  const [rule] = rules
  if (rule === undefined || rules.length > 1) {
    const found = `${rules.length} files`
    const path = 'gensettle-fault-rule'
    return { ok: false, problems: [{ code: 'file-count', path, found, allowed: 'exactly one file' }] }
  }
  const model: FaultModel = {
    faults: all<Fault>('faults'),
    symptoms: all<Symptom>('symptoms'),
    checks: all<FaultCheck>('checks'),
    stopLines: all<StopLine>('stopLines'),
    rule,
  }
  const sources = all<Source>('sources')
  const origins = new Map(read.flatMap((file) => [...file.origins]))
  const broken = faultReferenceProblems({ model, sources, origins }, catalogue)
  return broken.length > 0 ? { ok: false, problems: broken } : { ok: true, model, sources, origins }
}

interface ReadFile {
  readonly body: Lists
  readonly origins: ReadonlyMap<string, Provenance>
  readonly problems: readonly Problem[]
}

function readFile(name: string, content: unknown): ReadFile {
  const head = faultHeadSchema.safeParse(content)
  if (!head.success) return { body: {}, origins: new Map(), problems: toProblems(head.error, name, content) }
  const { type, origins: listed } = head.data
  const headFields = Object.keys(faultHeadSchema.shape)
  const rest = Object.fromEntries(
    Object.entries(content as Readonly<Record<string, unknown>>).filter(([key]) => !headFields.includes(key)),
  )
  const parted =
    type === 'gensettle-fault-sources'
      ? { values: rest, origins: new Map<string, Provenance>(), problems: [] }
      : partOrigins(rest, listed, '')
  const problems = parted.problems.map((problem) => ({ ...problem, path: `${name}:${problem.path}` }))
  const body = faultBodySchemas[type].safeParse(parted.values)
  if (!body.success) problems.push(...toProblems(body.error, name, parted.values))
  return { body: body.success ? (body.data as Lists) : {}, origins: parted.origins, problems }
}

function toProblems(error: z.ZodError, name: string, content: unknown): Problem[] {
  return error.issues.map((issue) => {
    const path = namedPath(content, issue.path)
    const found = path === '' ? content : valueAt(content, path)
    return { code: 'form', path: `${name}:${path}`, found: shown(found), allowed: issue.message }
  })
}
