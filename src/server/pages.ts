/**
 * The files of the pages as the build made them, held in memory.
 *
 * @module
 */

import { createHash } from 'node:crypto'
import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { extname, join, sep } from 'node:path'
import type { Bytes } from './answer-bytes.js'

/** A file to be sent as it is, by its path from the root: `/assets/main-1a2b.js`. */
export type Pages = ReadonlyMap<string, Bytes>

/** Reads every file beneath a folder of known type. No folder: no pages. */
export function readPages(folder: string): Pages {
  if (!existsSync(folder)) return new Map()
  const pages = new Map<string, Bytes>()
  for (const name of readdirSync(folder, { recursive: true, encoding: 'utf8' })) {
    const type = types[extname(name)]
    if (type === undefined) continue
    const bytes = readFileSync(join(folder, name))
    const path = `/${name.split(sep).join('/')}`
    const tag = createHash('sha256').update(bytes).digest('hex').slice(0, 32)
    // Names in `assets` change with what they hold.
    const cache = path.startsWith('/assets/') ? 'public, max-age=31536000, immutable' : 'no-cache'
    pages.set(path, { bytes, type, tag, cache, stays: true })
  }
  return pages
}

const types: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.wasm': 'application/wasm',
  '.webmanifest': 'application/manifest+json',
}
