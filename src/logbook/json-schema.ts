/**
 * The published JSON Schema of an entry.
 *
 * @module
 */

import * as z from 'zod'
import { forms } from './kind-forms.js'
import { kinds, presentVersion } from './kinds.js'

/**
 * JSON Schema (draft 2020-12) of one entry, kind by kind.
 *
 * It tells the form of every field; rules between fields (an end not before its beginning, a list naming each once) are
 * checked by the program alone.
 */
export function logbookJsonSchema(): Readonly<Record<string, unknown>> {
  const $defs = Object.fromEntries(
    kinds.map((kind) => {
      const { $schema: _, ...form } = z.toJSONSchema(forms[kind], { io: 'input' })
      return [kind, form]
    }),
  )
  return {
    $comment: 'Generated from the schemas in src/logbook; do not edit.',
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    title: 'Entry of a Gensettle logbook',
    type: 'object',
    'x-version': presentVersion,
    oneOf: kinds.map((kind) => ({ $ref: `#/$defs/${kind}` })),
    $defs,
  }
}
