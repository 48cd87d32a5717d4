/**
 * Where measured power comes from: a table or a recorded stream on disk, or a server that is listened to.
 *
 * @module
 */

import { createHash } from 'node:crypto'
import { createReadStream, statSync } from 'node:fs'
import { basename } from 'node:path'
import { readAnyRecording } from '../sizing/measured-any.js'
import { readSignalK, type SignalKOptions, signalKPaths } from '../sizing/measured-signalk.js'
import type { MeasuredBody } from '../sizing/measured-summary.js'
import type { Measured, MeasuredOptions } from '../sizing/measured-table.js'
import { plainError } from './new-file.js'
import { progressOf } from './progress.js'
import { listen } from './websocket.js'

export type Recording = {
  readonly measured: Measured
  readonly about: Pick<MeasuredBody, 'file' | 'source'>
}

const pieceBytes = 1 << 18

/** Reads a file in pieces, never all of it: a table, or messages of Signal K one a line. */
export async function readRecording(
  path: string,
  options: MeasuredOptions & SignalKOptions,
): Promise<Recording> {
  const refused = (found: string): Recording => ({
    measured: {
      ok: false,
      problems: [{ code: 'no-such-file', path: 'RECORDING', found, allowed: 'a file that can be read' }],
      bad: [],
    },
    about: {},
  })
  let bytes: number
  try {
    const stat = statSync(path)
    if (!stat.isFile()) return refused(`${path}, which is no file`)
    bytes = stat.size
  } catch (error) {
    return refused(`${path}: ${plainError(error)}`)
  }
  const hash = createHash('sha256')
  const bar = progressOf('reading')
  const reader = readAnyRecording(options)
  let decoder = new TextDecoder('utf-8')
  let done = 0
  try {
    for await (const chunk of createReadStream(path, {
      highWaterMark: pieceBytes,
    }) as AsyncIterable<Buffer>) {
      hash.update(chunk)
      if (done === 0 && chunk[0] === 0xff && chunk[1] === 0xfe) decoder = new TextDecoder('utf-16le')
      reader.take(decoder.decode(chunk, { stream: true }))
      done += chunk.length
      bar.show(done, bytes)
    }
  } catch (error) {
    return refused(`${path}: ${plainError(error)}`)
  } finally {
    bar.end()
  }
  const sha256 = hash.digest('hex')
  const file = { name: basename(path).slice(0, 200), sha256, bytes: Math.max(1, bytes) }
  return { measured: reader.end(), about: { file } }
}

/** Listens to a Signal K server for some seconds. */
export async function listenTo(
  address: string,
  options: SignalKOptions & { readonly seconds: number },
): Promise<Recording> {
  const about = { source: `${address} ${options.path ?? signalKPaths}`.slice(0, 300) }
  const reader = readSignalK(options)
  const bar = progressOf('listening')
  try {
    const stream = await streamOf(address)
    const listening = await listen(`${stream}?subscribe=none`, (text) => reader.take(text))
    const path = options.path === undefined ? signalKPaths : `${options.path}.*`
    listening.send(
      JSON.stringify({
        context: 'vessels.self',
        subscribe: [{ path, period: 1000, format: 'delta', policy: 'instant' }],
      }),
    )
    const began = Date.now()
    const timer = setInterval(
      () => bar.show(Math.min(options.seconds, (Date.now() - began) / 1000), options.seconds),
      500,
    )
    const wait = new Promise<void>((resolve) => setTimeout(resolve, 1000 * options.seconds))
    await Promise.race([wait, listening.ended])
    clearInterval(timer)
    listening.close()
  } catch (error) {
    const found = `${address}: ${error instanceof Error ? (error.cause instanceof Error ? error.cause.message : error.message) : String(error)}`
    const allowed = 'the address of a Signal K server, such as http://localhost:3000'
    return {
      measured: { ok: false, problems: [{ code: 'no-server', path: 'RECORDING', found, allowed }], bad: [] },
      about,
    }
  } finally {
    bar.end()
  }
  return { measured: reader.end(), about }
}

/** The address of the stream, as the server tells it. */
async function streamOf(address: string): Promise<string> {
  const answer = await fetch(new URL('/signalk', address), { signal: AbortSignal.timeout(10_000) })
  if (!answer.ok) throw new Error(`it answers ${answer.status}`)
  const told = (await answer.json()) as { endpoints?: Record<string, Record<string, unknown>> }
  const stream = told.endpoints?.v1?.['signalk-ws']
  if (typeof stream !== 'string') throw new Error('it names no stream of version 1')
  return stream.replace(/^http/, 'ws')
}
