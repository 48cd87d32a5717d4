/**
 * Reading a life model that a person wrote: its form, and everything in it that does not hang together.
 *
 * @module
 */

import * as z from 'zod'
import { namedPath } from '../catalogue/path.js'
import type { Problem } from '../catalogue/problem.js'
import { type LifeModel, lifeModelSchema } from './life-model.js'
import { type Contradiction, contradictionsIn } from './life-model-contradictions.js'
import { placesOf, schemaProblems } from './life-model-problems.js'
import { patched } from './patched-value.js'

/** The model with every left-out value filled in, or everything that is wrong with it. */
export type ReadLifeModel =
  | { readonly ok: true; readonly model: LifeModel }
  | { readonly ok: false; readonly problems: readonly Problem[] }

/** Wrong values are put right one layer at a time, so that what hangs on them can be looked at too. */
const mostPatches = 12

/** Records within records; a model needs less than a dozen. */
const deepest = 40

/** Reads a life model from a value, as a file of JSON gives it. Every problem is told at once. */
export function readLifeModel(value: unknown): ReadLifeModel {
  if (isDeeperThan(deepest, value)) {
    const found = `records or lists more than ${deepest} deep`
    return { ok: false, problems: [{ code: 'too-deep', path: '', found, allowed: `at most ${deepest}` }] }
  }
  const parsed = lifeModelSchema.safeParse(value)
  if (parsed.success) {
    const contradictions = contradictionsIn(parsed.data)
    if (contradictions.length === 0) return { ok: true, model: parsed.data }
    return { ok: false, problems: contradictions.map((one) => problemOf(one, value)) }
  }
  const wrong = parsed.error.issues.flatMap(placesOf)
  const further = contradictionsDespite(value).filter(
    ({ steps, against }) =>
      !wrong.some(
        (other) =>
          isWithin(steps, other) ||
          isWithin(other, steps) ||
          (against !== undefined && isWithin(against, other)),
      ),
  )
  return {
    ok: false,
    problems: [...schemaProblems(parsed.error.issues, value), ...further.map((one) => problemOf(one, value))],
  }
}

/** JSON Schema (draft 2020-12) of a life model as it may be written: what has a usual value may be left out. */
export function lifeModelJsonSchema(): Readonly<Record<string, unknown>> {
  const { $schema, ...form } = z.toJSONSchema(lifeModelSchema, { io: 'input' })
  return {
    $comment: 'Generated from src/forecast/life-model.ts; do not edit. Meanings: docs/life-model.md.',
    $schema,
    title: 'Gensettle life model',
    ...form,
  }
}

/** What contradicts itself in a value whose form is wrong here and there, with the wrong places patched; none if that fails. */
function contradictionsDespite(value: unknown): readonly Contradiction[] {
  let mended = value
  for (let round = 0; round < mostPatches; round++) {
    const parsed = lifeModelSchema.safeParse(mended)
    if (parsed.success) return contradictionsIn(parsed.data)
    mended = patched(mended, parsed.error.issues)
  }
  return []
}

function problemOf({ code, steps, found, allowed }: Contradiction, value: unknown): Problem {
  return { code, path: namedPath(value, steps), found, allowed }
}

function isWithin(steps: readonly PropertyKey[], other: readonly PropertyKey[]): boolean {
  return other.every((step, i) => steps[i] === step)
}

/** Layer by layer, so that no depth is too much for it. */
function isDeeperThan(most: number, value: unknown): boolean {
  let layer: readonly unknown[] = [value]
  for (let depth = 0; layer.length > 0; depth++) {
    if (depth > most) return true
    layer = layer.flatMap((one) => (typeof one === 'object' && one !== null ? Object.values(one) : []))
  }
  return false
}
