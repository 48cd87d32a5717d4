/**
 * Works out once what the demonstration boats' answers rest on: every test finds it, as a page does after a start.
 *
 * @module
 */

import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { workOutAnswers } from '../served-folder.js'

export default async function workOut(): Promise<() => void> {
  const folder = mkdtempSync(join(tmpdir(), 'gensettle-worked-out-'))
  await workOutAnswers(folder)
  process.env.GENSETTLE_WORKED_OUT = folder
  return () => rmSync(folder, { recursive: true, force: true })
}
