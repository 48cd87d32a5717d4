/**
 * Listening on this machine alone, at an address that stays the same.
 *
 * @module
 */

import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import type { Server } from 'node:http'
import { join } from 'node:path'
import { createAdaptorServer } from '@hono/node-server'
import type { Problem } from '../catalogue/problem.js'
import { makeApp } from './app.js'
import { openEntrance } from './entrance.js'
import type { Served } from './served.js'

const loopback = '127.0.0.1'

export type Listening =
  | {
      readonly ok: true
      readonly address: string
      /** Lets one browser in, once. */
      readonly entrance: string
      /** Lets what is under way end, for a while, and closes. */
      readonly stop: () => Promise<void>
    }
  | { readonly ok: false; readonly problems: readonly Problem[] }

/** Serves at the port kept in the data folder; the first time one is chosen and kept. */
export async function listen(served: Served): Promise<Listening> {
  const { folder } = served.store
  const file = join(folder, 'port')
  const kept = keptPort(file)
  if (kept === 'unreadable') {
    const allowed = 'a file with a port from 1024 to 65535 in it, or no such file'
    return {
      ok: false,
      problems: [{ code: 'wrong-port', path: file, found: readFileSync(file, 'utf8').slice(0, 40), allowed }],
    }
  }
  const server = createAdaptorServer({ fetch: (request) => app.fetch(request) }) as Server
  const failure = await opened(server, kept ?? 0)
  if (failure !== undefined) {
    const found = `port ${kept ?? 'none'}: ${failure.code === 'EADDRINUSE' ? 'another program has it' : failure.message}`
    const allowed = `the port kept in ${file}; stop the other program, or remove that file to choose another port`
    return { ok: false, problems: [{ code: 'port-taken', path: 'port', found, allowed }] }
  }
  const { port } = server.address() as { port: number }
  const entrance = openEntrance(folder, port)
  const app = makeApp(served, { host: `${loopback}:${port}`, entrance })
  if (kept === undefined) writeFileSync(file, `${port}\n`, { mode: 0o600 })
  const address = `http://${loopback}:${port}/`
  return {
    ok: true,
    address,
    entrance: `${address}enter/${entrance.newCode()}`,
    stop: () => stopped(server),
  }
}

function keptPort(file: string): number | undefined | 'unreadable' {
  if (!existsSync(file)) return undefined
  const text = readFileSync(file, 'utf8').trim()
  const port = Number(text)
  return /^\d{4,5}$/.test(text) && port >= 1024 && port <= 65535 ? port : 'unreadable'
}

function opened(server: Server, port: number): Promise<NodeJS.ErrnoException | undefined> {
  return new Promise((resolve) => {
    server.once('error', resolve)
    server.listen(port, loopback, () => resolve(undefined))
  })
}

/** What is still under way after so long is cut off. [ms] */
const patience = 3_000

function stopped(server: Server): Promise<void> {
  return new Promise((resolve) => {
    const cut = setTimeout(() => server.closeAllConnections(), patience)
    server.close(() => {
      clearTimeout(cut)
      resolve()
    })
    server.closeIdleConnections()
  })
}
