/**
 * What the fields of an entry are asked as.
 *
 * @module
 */

import type { Kind } from '../../../logbook/kinds.js'
import { apartFields } from './apart.js'
import { seenFields } from './seen.js'
import { setFields } from './set.js'
import { sizeFields } from './size.js'
import { workFields } from './work.js'

const names: Readonly<Record<string, string>> = {
  ...seenFields,
  ...workFields,
  ...setFields,
  ...sizeFields,
  ...apartFields,
}

export function fieldName(kind: Kind, key: string): string {
  return names[`${kind}.${key}`] ?? names[key] ?? key
}
