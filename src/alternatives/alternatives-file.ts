/**
 * The alternatives of a set as a file that its owner may edit, to try what the log does not hold.
 *
 * @module
 */

import * as z from 'zod'
import { type Alternative, type LifeModel, lifeModelSchema } from '../forecast/life-model.js'
import { readLifeModel } from '../forecast/read-life-model.js'
import { type Problem, problemsOf } from '../logbook/problems.js'

const fileType = 'gensettle/alternatives-list'

const head = {
  type: z.literal(fileType, { error: fileType }),
  version: z.literal(1, { error: '1' }),
  /** Whose they are; only to be read by people. */
  boat: z.string({ error: 'text' }).max(60, 'at most 60 characters').optional(),
  set: z.string({ error: 'text' }).max(60, 'at most 60 characters').optional(),
  asOf: z.string({ error: 'text' }).max(10, 'at most 10 characters').optional(),
}
const form = z.strictObject({ ...head, alternatives: lifeModelSchema.shape.alternatives.unwrap() })
const listWords = 'a list of 1 to 40 alternatives'
/** The list itself is read with the model that it belongs to. */
const outer = z.strictObject({
  ...head,
  alternatives: z.array(z.unknown(), { error: listWords }).min(1, listWords).max(40, listWords),
})

export type AlternativesFile = z.infer<typeof form>

/** A model's alternatives, ready to be written. */
export function alternativesFile(
  { alternatives }: LifeModel,
  of: { readonly boat: string; readonly set: string; readonly asOf: string },
): AlternativesFile {
  return { type: fileType, version: 1, ...of, alternatives }
}

export type ReadAlternatives =
  | { readonly ok: true; readonly alternatives: readonly Alternative[] }
  | { readonly ok: false; readonly problems: readonly Problem[] }

/** Reads an edited list for the set of a model. Everything that is wrong is told at once. */
export function readAlternativesFile(value: unknown, model: LifeModel): ReadAlternatives {
  const parsed = outer.safeParse(value)
  const problems = parsed.success ? [] : problemsOf(parsed.error, value)
  const list = (value as { readonly alternatives?: unknown } | null)?.alternatives
  if (Array.isArray(list) && list.length > 0 && list.length <= 40) {
    const read = readLifeModel({ ...model, alternatives: list })
    if (read.ok && parsed.success) return { ok: true, alternatives: read.model.alternatives }
    if (!read.ok) problems.push(...read.problems.filter(({ path }) => path.startsWith('alternatives')))
  }
  return { ok: false, problems }
}

/** JSON Schema (draft 2020-12) of a list of alternatives as it may be written. */
export function alternativesJsonSchema(): Readonly<Record<string, unknown>> {
  const { $schema, ...rest } = z.toJSONSchema(form, { io: 'input' })
  return {
    $comment:
      'Generated from src/alternatives/alternatives-file.ts; do not edit. Meanings: docs/life-model.md, 28 to 31.',
    $schema,
    title: 'Alternatives of a Gensettle set',
    ...rest,
  }
}
