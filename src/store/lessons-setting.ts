/**
 * Whether the boats of a data folder hear one another's lessons: kept in the folder, in no boat's log and no boat file.
 *
 * @module
 */

import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Problem } from '../logbook/problems.js'
import { makeFolder, writeDurably } from './durable.js'

const fileName = 'lessons'

/** Whether lessons are heard, or why that cannot be told. Where nothing was ever said they are not. */
export function lessonsHeard(
  folder: string,
):
  | { readonly ok: true; readonly heard: boolean }
  | { readonly ok: false; readonly problems: readonly Problem[] } {
  const file = join(folder, fileName)
  if (!existsSync(file)) return { ok: true, heard: false }
  let found: string
  try {
    found = readFileSync(file, 'utf8').trim()
  } catch (error) {
    found = error instanceof Error ? error.message : String(error)
  }
  if (found === 'on' || found === 'off') return { ok: true, heard: found === 'on' }
  const allowed = 'a file with "on" or "off" in it, or no such file'
  return { ok: false, problems: [{ code: 'wrong-setting', path: file, found: found.slice(0, 80), allowed }] }
}

/** Keeps whether lessons are heard; what could not be written is told. */
export function hearLessons(folder: string, heard: boolean): readonly Problem[] {
  const file = join(folder, fileName)
  try {
    makeFolder(folder)
    writeDurably(file, new TextEncoder().encode(heard ? 'on\n' : 'off\n'))
    return []
  } catch (error) {
    const found = error instanceof Error ? error.message : String(error)
    return [{ code: 'cannot-be-written', path: file, found, allowed: 'a folder that can be written to' }]
  }
}
