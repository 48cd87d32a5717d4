/**
 * What was worked out at the prompt or at the start, so that a page opened cold need not begin with its own.
 *
 * @module
 */

import { Hono } from 'hono'
import type { Served } from './served.js'

export function computedRoutes({ computed, pages }: Served): Hono {
  const routes = new Hono()
  /** `by`: the script that asks. A page left open over a change of the program reads other tables, and gets none. */
  routes.get('/computed/:digest{[0-9a-f]{64}}', (c) => {
    const bytes = pages.has(c.req.query('by') ?? '') ? computed(c.req.param('digest')) : undefined
    c.header('Cache-Control', 'no-store')
    // none is an answer like another, and no fault
    if (bytes === undefined) return c.body(null, 204)
    return c.body(bytes as Uint8Array<ArrayBuffer>, 200, { 'Content-Type': 'application/octet-stream' })
  })
  return routes
}
