/**
 * The catalogue's files read from disk, unjudged.
 *
 * @module
 */

import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'

/**
 * Every JSON file of a folder, by file name.
 *
 * @throws Error if the folder cannot be read, or a file is no JSON; the file is named.
 */
export function readCatalogueFiles(folder: string): Record<string, unknown> {
  const names = readdirSync(folder)
    .filter((name) => name.endsWith('.json'))
    .sort()
  return Object.fromEntries(names.map((name) => [name, readJson(join(folder, name))]))
}

function readJson(path: string): unknown {
  try {
    return JSON.parse(readFileSync(path, 'utf8'))
  } catch (cause) {
    throw new Error(`${path} must be JSON; found ${cause instanceof Error ? cause.message : cause}`, {
      cause,
    })
  }
}
