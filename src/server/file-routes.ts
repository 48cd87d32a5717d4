/**
 * Whole boats as files, out and in, the catalogue and the fault model.
 *
 * @module
 */

import { createHash } from 'node:crypto'
import { createReadStream, mkdtempSync, rmSync, statSync } from 'node:fs'
import { open } from 'node:fs/promises'
import { join } from 'node:path'
import { Readable } from 'node:stream'
import { Hono } from 'hono'
import { catalogueToJson } from '../catalogue/catalogue-json.js'
import type { Problem } from '../logbook/problems.js'
import { limits } from '../store/boat-file-form.js'
import { exportBoat } from '../store/export-boat.js'
import { importBoat } from '../store/import-boat.js'
import { leftoverPrefix } from '../store/store.js'
import { answerBytes } from './answer-bytes.js'
import { tooLarge } from './boat-routes.js'
import { onlyTypes, refuse } from './guards.js'
import type { BoatFileType, CatalogueAnswer, FaultsAnswer, ImportAnswer, KitsAnswer } from './http-types.js'
import { type Served, whose } from './served.js'

export const boatFileType: BoatFileType = 'application/x-gensettle'

export function fileRoutes(served: Served): Hono {
  const { store } = served
  const routes = new Hono()
  const reference = {
    catalogue: catalogueToJson(served.catalogue) satisfies CatalogueAnswer,
    faults: served.faults satisfies FaultsAnswer,
    kits: served.kits satisfies KitsAnswer,
  }
  for (const [name, value] of Object.entries(reference)) {
    const bytes = new TextEncoder().encode(JSON.stringify(value))
    const tag = `${name}-${createHash('sha256').update(bytes).digest('hex').slice(0, 32)}`
    routes.get(`/${name}`, (c) =>
      answerBytes(c, { bytes, type: 'application/json', tag, cache: 'private, no-cache', stays: true }),
    )
  }
  routes.get('/boats/:boat/file', async (c) => {
    const boat = c.req.param('boat')
    if (whose(served, boat) !== 'own') {
      const allowed = 'a boat of your own'
      return refuse(c, 404, { code: 'unknown-boat', path: 'boat', found: boat, allowed })
    }
    const folder = mkdtempSync(join(store.folder, leftoverPrefix))
    const path = join(folder, 'boat')
    const clear = () => rmSync(folder, { recursive: true, force: true })
    const exported = await exportBoat(store, boat, path, { signal: c.req.raw.signal }).catch((error) => {
      clear()
      throw error
    })
    if (!exported.ok) {
      clear()
      return refuse(c, 409, ...exported.problems)
    }
    const { size } = statSync(path)
    const file = createReadStream(path)
    file.once('close', clear)
    c.header('Content-Type', boatFileType)
    c.header('Content-Length', String(size))
    c.header('Content-Disposition', `attachment; filename="${boat}.gensettle"`)
    return c.body(Readable.toWeb(file) as ReadableStream)
  })
  routes.post('/boat-file', onlyTypes(boatFileType), async (c) => {
    const folder = mkdtempSync(join(store.folder, leftoverPrefix))
    try {
      const path = join(folder, 'boat')
      const received = await receive(c.req.raw.body, path)
      if (received !== undefined) return refuse(c, 413, received)
      const imported = await importBoat(store, path, { signal: c.req.raw.signal })
      if (!imported.ok) return refuse(c, 422, ...imported.problems)
      const { boat, added, alreadyHeld, photographs } = imported
      return c.json({ boat, added, alreadyHeld, photographs } satisfies ImportAnswer)
    } finally {
      rmSync(folder, { recursive: true, force: true })
    }
  })
  return routes
}

/** Puts a body into a file as it comes, so that memory does not grow with it. */
async function receive(body: ReadableStream<Uint8Array> | null, path: string): Promise<Problem | undefined> {
  const file = await open(path, 'wx', 0o600)
  try {
    let bytes = 0
    for await (const piece of body ?? []) {
      bytes += piece.length
      if (bytes > limits.totalBytes) return tooLarge(limits.totalBytes)
      await file.writeFile(piece)
    }
    return undefined
  } finally {
    await file.close()
  }
}
