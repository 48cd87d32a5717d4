/**
 * Photographs in and out, as they are; small ones made from them; and copies that tell no place, to be sent on.
 *
 * @module
 */

import { type Context, Hono } from 'hono'
import { bodyLimit } from 'hono/body-limit'
import { photographTypes } from '../logbook/photograph-types.js'
import { largestPhotograph, photographType, thumbnailWidths } from '../logbook/photographs.js'
import { keepPicture, type Made, thumbnailOf, withoutPlace } from '../store/pictures.js'
import { answerBytes } from './answer-bytes.js'
import { tooLarge } from './boat-routes.js'
import { onlyTypes, refuse } from './guards.js'
import type { PhotographAnswer } from './http-types.js'
import type { Served } from './served.js'

/** Asked again each time, since the bytes may have been taken away on request. */
const cache = 'private, no-cache'

export function photographRoutes({ store, demonstration }: Served): Hono {
  const routes = new Hono()
  const bytesOf = (sha256: string) => store.photograph(sha256) ?? demonstration.photograph(sha256)
  routes.post(
    '/photographs',
    onlyTypes(...photographTypes),
    bodyLimit({ maxSize: largestPhotograph, onError: (c) => refuse(c, 413, tooLarge(largestPhotograph)) }),
    async (c) => {
      const kept = await keepPicture(store, new Uint8Array(await c.req.arrayBuffer()))
      if (!kept.ok) return refuse(c, 422, ...kept.problems)
      return c.json({ photograph: kept.photograph } satisfies PhotographAnswer)
    },
  )
  routes.get('/photographs/:sha256{[0-9a-f]{64}}', (c) => {
    const sha256 = c.req.param('sha256')
    const bytes = bytesOf(sha256)
    const type = bytes && photographType(bytes)
    if (bytes === undefined || type === undefined) return unknown(c, sha256)
    return answerBytes(c, { bytes, type, tag: sha256, cache })
  })
  routes.get('/photographs/:sha256{[0-9a-f]{64}}/copy', async (c) => {
    const sha256 = c.req.param('sha256')
    const bytes = bytesOf(sha256)
    if (bytes === undefined) return unknown(c, sha256)
    return answerMade(c, `${sha256}-copy`, await withoutPlace(bytes))
  })
  routes.get('/photographs/:sha256{[0-9a-f]{64}}/:width{[0-9]+}', async (c) => {
    const sha256 = c.req.param('sha256')
    const width = thumbnailWidths.find((one) => String(one) === c.req.param('width'))
    if (width === undefined) {
      const allowed = `one of: ${thumbnailWidths.join(', ')}`
      return refuse(c, 404, { code: 'unknown-width', path: 'width', found: c.req.param('width'), allowed })
    }
    const bytes = bytesOf(sha256)
    if (bytes === undefined) return unknown(c, sha256)
    return answerMade(
      c,
      `${sha256}-${width}`,
      await thumbnailOf({ folder: store.folder, sha256, bytes, width }),
    )
  })
  return routes
}

function answerMade(c: Context, tag: string, made: Made): Response | Promise<Response> {
  return made.ok ? answerBytes(c, { ...made, tag, cache }) : refuse(c, 422, made.problem)
}

function unknown(c: Context, sha256: string): Response {
  const allowed = 'the digest of a photograph that is here'
  return refuse(c, 404, { code: 'unknown-photograph', path: 'sha256', found: sha256, allowed })
}
