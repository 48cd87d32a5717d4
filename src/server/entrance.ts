/**
 * Letting browsers in: a code in the printed address is good for one browser, once; what that browser then holds is a cookie.
 *
 * The data folder keeps the digests of the cookies, never the cookies, so that a browser stays let in when the program is started
 * again. A cookie is sent to every port of this machine: its name bears the port, and its path keeps it from the pages of others.
 *
 * @module
 */

import { createHash, randomBytes } from 'node:crypto'
import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import * as z from 'zod'
import { sha256Schema } from '../logbook/atoms.js'
import { writeDurably } from '../store/durable.js'

export interface Entrance {
  /** A new code, good for one browser. */
  newCode(): string
  /** The cookie for the browser that brings a code; undefined where the code is none, or was used. */
  enter(code: string): string | undefined
  /** Whether a request's cookies are those of a browser that was let in. */
  knows(cookies: string | undefined): boolean
}

/** So many browsers stay let in; the one that came first goes first. */
const mostBrowsers = 40
/** Unused codes that stay good. */
const mostCodes = 10
/** Browsers keep no cookie for longer: 400 days. RFC 6265bis. Held: recalled. [s] */
const longestCookie = 34_560_000

const fileSchema = z.strictObject({
  type: z.literal('gensettle-browsers'),
  version: z.literal(1),
  sha256: z.array(sha256Schema),
})

/** The entrance of the server at a port, with the browsers that its data folder knows. */
export function openEntrance(folder: string, port: number): Entrance {
  const file = join(folder, 'browsers.json')
  const name = `gensettle-${port}`
  let browsers: readonly string[] = readBrowsers(file)
  let codes: readonly string[] = []
  return {
    newCode: () => {
      const code = secret()
      codes = [...codes, digestOf(code)].slice(-mostCodes)
      return code
    },
    enter: (code) => {
      const digest = digestOf(code)
      if (!codes.includes(digest)) return undefined
      codes = codes.filter((one) => one !== digest)
      const token = secret()
      browsers = [...browsers, digestOf(token)].slice(-mostBrowsers)
      const text = JSON.stringify({ type: 'gensettle-browsers', version: 1, sha256: browsers })
      writeDurably(file, new TextEncoder().encode(text))
      return `${name}=${token}; Path=/api; Max-Age=${longestCookie}; HttpOnly; SameSite=Strict`
    },
    knows: (cookies) =>
      (cookies ?? '')
        .split(';')
        .map((cookie) => cookie.trim())
        .filter((cookie) => cookie.startsWith(`${name}=`))
        .some((cookie) => browsers.includes(digestOf(cookie.slice(name.length + 1)))),
  }
}

/** A file that cannot be read lets nobody in; the printed address does. */
function readBrowsers(file: string): readonly string[] {
  if (!existsSync(file)) return []
  try {
    return fileSchema.parse(JSON.parse(readFileSync(file, 'utf8'))).sha256
  } catch {
    return []
  }
}

/** 144 bits by chance, as letters and digits that an address may hold. */
function secret(): string {
  return randomBytes(18).toString('base64url')
}

function digestOf(text: string): string {
  return createHash('sha256').update(text).digest('hex')
}
