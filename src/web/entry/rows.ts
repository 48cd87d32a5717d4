/**
 * Rows of a form put in and taken away.
 *
 * @module
 */

import type { Rows } from './fields/field.js'
import { rowsIn, type Values } from './values.js'

/** The rows to show: those in which something stands, at least as many as are usual, and those opened. */
export function rowsShown({ key, least }: Rows, values: Values, opened: number): readonly number[] {
  const last = rowsIn(values, key).at(-1) ?? -1
  return Array.from({ length: Math.max(last + 1, least, opened) }, (_, row) => row)
}

/** The form without one row; those after it move up. */
export function withoutRow(values: Values, key: string, gone: number): Values {
  return Object.fromEntries(
    Object.entries(values).flatMap(([name, text]) => {
      if (!name.startsWith(`${key}.`)) return [[name, text]]
      const [row, ...rest] = name.slice(key.length + 1).split('.')
      if (Number(row) === gone) return []
      const at = Number(row) > gone ? Number(row) - 1 : Number(row)
      return [[`${key}.${at}.${rest.join('.')}`, text]]
    }),
  )
}
