/**
 * What the server answers: one page, its style, and nothing else. It reads no requests but GET and keeps nothing.
 *
 * @module
 */

import { Hono } from 'hono'
import { type PageContent, pageOf } from './page.js'
import { pageStyle } from './page-style.js'

/** The server's answers. `host` is the exact address served, without "http://"; requests that name another are refused. */
export function makeApp(content: PageContent, host: string): Hono {
  const app = new Hono()
  app.use(async (c, next) => {
    await next()
    for (const [name, value] of Object.entries(guards)) c.header(name, value)
  })
  app.use(async (c, next) => {
    if (c.req.header('host') !== host) return c.text(`This is http://${host}/ only.\n`, 421)
    if (c.req.method !== 'GET' && c.req.method !== 'HEAD')
      return c.text('Only reading.\n', 405, { Allow: 'GET' })
    return next()
  })
  app.get('/', (c) => c.html(pageOf(content)))
  app.get('/page.css', (c) => c.body(pageStyle, 200, { 'Content-Type': 'text/css; charset=utf-8' }))
  app.notFound((c) => c.text('There is only one page: /\n', 404))
  return app
}

const guards: Readonly<Record<string, string>> = {
  'Content-Security-Policy':
    "default-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'; object-src 'none'",
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cache-Control': 'no-store',
}
