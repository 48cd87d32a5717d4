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
  type Symptom,
} from './fault-schema.js'
import type { Source } from './file-schema.js'
import type { Problem } from './problem.js'
import type { FaultModel, ReadFaultModel } from './read-fault-model.js'
import { readTypedFile } from './typed-file.js'

export type ParsedFaultModel =
  | ({ readonly ok: true } & ReadFaultModel)
  | { readonly ok: false; readonly problems: readonly Problem[] }

type Lists = Partial<Record<'faults' | 'symptoms' | 'checks' | 'sources', readonly unknown[]>> & {
  readonly rule?: FaultRule
}

/**
 * Reads the files, given by name, and says everything that is wrong at once. Parts, modes, looks and stop lines that they name must
 * be of the catalogue.
 */
export function parseFaultModel(
  files: Readonly<Record<string, unknown>>,
  catalogue: Pick<Catalogue, 'parts' | 'checks' | 'sources' | 'stopLines'>,
): ParsedFaultModel {
  const read = Object.entries(files).map(([name, content]) =>
    readTypedFile<Lists, z.infer<typeof forms.head>>({ name, content }, forms),
  )
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
    stopLines: catalogue.stopLines,
    rule,
  }
  const sources = all<Source>('sources')
  const origins = new Map(read.flatMap((file) => [...file.origins]))
  const broken = faultReferenceProblems({ model, sources, origins }, catalogue)
  return broken.length > 0 ? { ok: false, problems: broken } : { ok: true, model, sources, origins }
}

const forms = {
  head: faultHeadSchema,
  bodies: faultBodySchemas,
  plain: 'gensettle-fault-sources',
} as const
