/**
 * Who may ask. The server listens on this machine alone, and even there a page of somewhere else, another program's port or a name
 * that was bent to this address get nothing.
 *
 * - Host must be the exact address served: a name that someone points at this machine (DNS rebinding) is turned away.
 * - `/api` wants the cookie of a browser that was let in, for reading too: any account on the machine can reach the port.
 * - `/api` turns away whatever a browser says comes from another site or another port (Sec-Fetch-Site).
 * - Writing wants this very Origin and a type that no page elsewhere can send without asking first; no such asking is answered.
 *
 * @module
 */

import type { Context, MiddlewareHandler } from 'hono'
import type { Problem } from '../catalogue/problem.js'
import type { Entrance } from './entrance.js'
import type { Refusal } from './http-types.js'

/** Headers of every answer. */
export const headers: Readonly<Record<string, string>> = {
  'Content-Security-Policy': [
    "default-src 'self'",
    "script-src 'self' 'wasm-unsafe-eval'",
    "worker-src 'self'",
    "connect-src 'self'",
    "img-src 'self' blob: data:",
    "base-uri 'none'",
    "form-action 'none'",
    "frame-ancestors 'none'",
    "object-src 'none'",
  ].join('; '),
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Cross-Origin-Opener-Policy': 'same-origin',
  // With the one above: workers of a page may share memory.
  'Cross-Origin-Embedder-Policy': 'require-corp',
  'Permissions-Policy': 'geolocation=(), microphone=()',
}

export function withHeaders(): MiddlewareHandler {
  return async (c, next) => {
    await next()
    for (const [name, value] of Object.entries(headers)) c.header(name, value)
    if (!c.res.headers.has('Cache-Control')) c.header('Cache-Control', 'no-store')
  }
}

/** Only the exact address served, without "http://". */
export function onlyHost(host: string): MiddlewareHandler {
  return async (c, next) => {
    if (c.req.header('host') === host) return next()
    const allowed = `the address that the program printed: http://${host}/`
    return refuse(c, 421, {
      code: 'wrong-host',
      path: 'Host',
      found: c.req.header('host') ?? 'none',
      allowed,
    })
  }
}

/** Only this server's own pages, in a browser that was let in. */
export function onlyOwnPages(host: string, entrance: Entrance): MiddlewareHandler {
  return async (c, next) => {
    const site = c.req.header('sec-fetch-site')
    if (site !== undefined && site !== 'same-origin' && site !== 'none') {
      return refuse(c, 403, {
        code: 'other-site',
        path: 'Sec-Fetch-Site',
        found: site,
        allowed: 'same-origin',
      })
    }
    if (!entrance.knows(c.req.header('cookie'))) {
      const allowed = 'a browser that opened the address printed by the program'
      return refuse(c, 401, { code: 'not-let-in', path: 'Cookie', found: 'a browser not let in', allowed })
    }
    if (c.req.method === 'GET' || c.req.method === 'HEAD') return next()
    const origin = c.req.header('origin')
    if (origin !== `http://${host}`) {
      return refuse(c, 403, {
        code: 'wrong-origin',
        path: 'Origin',
        found: origin ?? 'none',
        allowed: `http://${host}`,
      })
    }
    return next()
  }
}

/** Only bodies of these types. */
export function onlyTypes(...types: readonly string[]): MiddlewareHandler {
  return async (c, next) => {
    const type = c.req.header('content-type')?.split(';')[0]?.trim().toLowerCase()
    if (type !== undefined && types.includes(type)) return next()
    return refuse(c, 415, {
      code: 'wrong-type',
      path: 'Content-Type',
      found: type ?? 'none',
      allowed: types.join(', '),
    })
  }
}

type RefusalStatus = 400 | 401 | 403 | 404 | 405 | 409 | 413 | 415 | 421 | 422 | 500

export function refuse(c: Context, status: RefusalStatus, ...problems: readonly Problem[]): Response {
  return c.json({ problems } satisfies Refusal, status)
}
