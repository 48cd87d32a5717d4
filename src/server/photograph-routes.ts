/**
 * Photographs in and out, as they are: only what leaves the boat is made anew without its place.
 *
 * @module
 */

import { Hono } from 'hono'
import { bodyLimit } from 'hono/body-limit'
import { photographTypes } from '../logbook/atoms.js'
import { largestPhotograph, photographType } from '../store/photographs.js'
import { answerBytes } from './answer-bytes.js'
import { tooLarge } from './boat-routes.js'
import { onlyTypes, refuse } from './guards.js'
import type { PhotographAnswer } from './http-types.js'
import type { Served } from './served.js'

export function photographRoutes({ store, demonstration }: Served): Hono {
  const routes = new Hono()
  routes.post(
    '/photographs',
    onlyTypes(...photographTypes),
    bodyLimit({ maxSize: largestPhotograph, onError: (c) => refuse(c, 413, tooLarge(largestPhotograph)) }),
    async (c) => {
      const kept = store.keepPhotograph(new Uint8Array(await c.req.arrayBuffer()))
      if (!kept.ok) return refuse(c, 422, ...kept.problems)
      return c.json({ photograph: kept.photograph } satisfies PhotographAnswer)
    },
  )
  routes.get('/photographs/:sha256{[0-9a-f]{64}}', (c) => {
    const sha256 = c.req.param('sha256')
    const bytes = store.photograph(sha256) ?? demonstration.photograph(sha256)
    const type = bytes && photographType(bytes)
    if (bytes === undefined || type === undefined) {
      const allowed = 'the digest of a photograph that is here'
      return refuse(c, 404, { code: 'unknown-photograph', path: 'sha256', found: sha256, allowed })
    }
    // Asked again each time, since its bytes may have been taken away on request.
    return answerBytes(c, { bytes, type, tag: sha256, cache: 'private, no-cache' })
  })
  return routes
}
