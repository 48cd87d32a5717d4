/**
 * Files that commands read and write for the owner: read whole, written whole, and never in the place of another.
 *
 * @module
 */

import { existsSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import { dirname, resolve } from 'node:path'
import type { Problem } from '../catalogue/problem.js'

/** The largest file that is read. [bytes] */
const largestFile = 20_000_000

export type ReadJson = { readonly value: unknown } | { readonly problem: Problem }

/** The value of a file of JSON. `path` is where problems are told. */
export function readJsonFile(
  file: string,
  { path, holds }: { readonly path: string; readonly holds: string },
): ReadJson {
  const read = readTextFile(file, { path })
  if ('problem' in read) return read
  try {
    return { value: JSON.parse(read.text) as unknown }
  } catch (error) {
    const found = error instanceof Error ? error.message : 'no JSON'
    return { problem: { code: 'not-json', path, found, allowed: `${holds} as JSON` } }
  }
}

/** The text of a file. `path` is where problems are told. */
export function readTextFile(
  file: string,
  { path }: { readonly path: string },
): { readonly text: string } | { readonly problem: Problem } {
  const problem = (code: string, found: string, allowed: string) => ({
    problem: { code, path, found, allowed },
  })
  try {
    const { size } = statSync(file)
    if (size > largestFile) return problem('too-large', `${size} bytes`, `at most ${largestFile} bytes`)
    return { text: readFileSync(file, 'utf8') }
  } catch (error) {
    return problem('no-such-file', `${file}: ${plainError(error)}`, 'a file that can be read')
  }
}

/** A file that is to be written, by the option that asks for it. */
export interface NewFile {
  readonly path: string
  readonly file: string | undefined
}

/** What stands against writing new files, before any work for them is done. */
export function newFileProblems(files: readonly NewFile[]): Problem[] {
  const met = new Set<string>()
  return files.flatMap(({ path, file }) => {
    if (file === undefined) return []
    const place = resolve(file)
    if (existsSync(place) || met.has(place)) {
      return [{ code: 'already-there', path, found: file, allowed: 'a file that is not there yet' }]
    }
    met.add(place)
    if (existsSync(dirname(place))) return []
    return [{ code: 'no-such-folder', path, found: dirname(place), allowed: 'a folder that is there' }]
  })
}

/** Writes values as JSON into new files. */
export function writeJsonFiles(files: readonly (NewFile & { readonly value: unknown })[]): Problem[] {
  return files.flatMap(({ value, ...file }) =>
    writeNewFile({ ...file, text: `${JSON.stringify(value, null, 2)}\n` }),
  )
}

/** Writes a text into a new file, where one is named. */
export function writeNewFile({ path, file, text }: NewFile & { readonly text: string }): Problem[] {
  if (file === undefined) return []
  try {
    writeFileSync(file, text, { flag: 'wx', mode: 0o600 })
    return []
  } catch (error) {
    const found = `${file}: ${plainError(error)}`
    return [
      { code: 'cannot-be-written', path, found, allowed: 'a new file in a folder that can be written to' },
    ]
  }
}

const plainWords: Readonly<Record<string, string>> = {
  ENOENT: 'not there',
  ENOTDIR: 'not there',
  EACCES: 'not open to you',
  EPERM: 'not open to you',
  EISDIR: 'a folder',
  ENOSPC: 'no room is left',
  EROFS: 'nothing can be written there',
}

/** An error of the system in plain words, where we have any. */
export function plainError(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? String(error.code) : ''
  return plainWords[code] ?? (error instanceof Error ? error.message : String(error))
}
