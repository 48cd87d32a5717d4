/**
 * Reading entries that are kept already, without what judges new ones.
 *
 * @module
 */

import { shown } from '../catalogue/problem.js'
import { type Entry, presentVersion } from './kinds.js'
import { readOldVersion } from './versions.js'

/**
 * Reads the text of an entry that was checked before it was kept. Quick: nothing is checked again.
 *
 * @throws if the text is none that `parseEntry` gave.
 */
export function readKept(text: string): Entry {
  const value = JSON.parse(text) as Entry
  if (value.version === presentVersion) return value
  const present = readOldVersion(value)
  if (!present.ok) throw new TypeError(`text must be an entry that was checked; found ${shown(text)}`)
  return present.value as Entry
}
