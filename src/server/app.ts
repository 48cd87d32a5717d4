/**
 * What the server answers: entries in, files out. It reckons nothing but a job's days for a calendar; the pages do the rest.
 *
 * @module
 */

import { randomBytes } from 'node:crypto'
import { Hono } from 'hono'
import { answerBytes } from './answer-bytes.js'
import { boatRoutes } from './boat-routes.js'
import { calendarRoutes } from './calendar-routes.js'
import { computedRoutes } from './computed-routes.js'
import type { Entrance } from './entrance.js'
import { fileRoutes } from './file-routes.js'
import { onlyHost, onlyOwnPages, onlyTypes, refuse, withHeaders } from './guards.js'
import type { CodeAnswer, HealthAnswer } from './http-types.js'
import { lessonsRoutes } from './lessons-routes.js'
import type { Pages } from './pages.js'
import { photographRoutes } from './photograph-routes.js'
import type { Served } from './served.js'

/** The address served, without "http://", and who may come in. */
export interface Place {
  readonly host: string
  readonly entrance: Entrance
}

export function makeApp(served: Served, { host, entrance }: Place): Hono {
  const run = randomBytes(8).toString('hex')
  const app = new Hono()
  app.use(withHeaders())
  app.use(onlyHost(host))
  app.get('/enter/:code', (c) => {
    const cookie = entrance.enter(c.req.param('code'))
    if (cookie !== undefined) c.header('Set-Cookie', cookie)
    // The page itself says where a browser is not let in.
    return c.redirect('/', 303)
  })
  app.use('/api/*', onlyOwnPages(host, entrance))
  app.get('/api/health', (c) => c.json({ program: 'gensettle', run } satisfies HealthAnswer))
  app.post('/api/code', onlyTypes('application/json'), (c) =>
    c.json({ address: `http://${host}/enter/${entrance.newCode()}` } satisfies CodeAnswer),
  )
  app.route('/api', boatRoutes(served))
  app.route('/api', fileRoutes(served))
  app.route('/api', photographRoutes(served))
  app.route('/api', calendarRoutes(served))
  app.route('/api', lessonsRoutes(served))
  app.route('/api', computedRoutes(served))
  app.all('/api/*', (c) =>
    refuse(c, 404, {
      code: 'unknown-address',
      path: c.req.path,
      found: c.req.method,
      allowed: 'see http-types',
    }),
  )
  app.get('*', (c) => answerPage(c, served.pages))
  app.onError((error, c) => {
    served.onError(error)
    return refuse(c, 500, { code: 'failed', path: c.req.path, found: error.message, allowed: 'try again' })
  })
  app.notFound((c) => c.text('Nothing here.\n', 404))
  return app
}

/** A file of the pages; every other address is one of the pages' own, and they show it. */
function answerPage(c: Parameters<typeof answerBytes>[0], pages: Pages): Response | Promise<Response> {
  const page = pages.get(c.req.path)
  if (page !== undefined) return answerBytes(c, page)
  const index = pages.get('/index.html')
  const asksForPage = !/\.[a-z0-9]+$/i.test(c.req.path)
  if (index !== undefined && asksForPage) return answerBytes(c, index)
  const missing = index === undefined ? 'The pages are not built: npm run build\n' : 'Nothing here.\n'
  return c.text(missing, 404)
}
