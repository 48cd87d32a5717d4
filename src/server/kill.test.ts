import { spawn } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, expect, test } from 'vitest'
import { layOutProgram } from '../../test/own-program.js'
import { trialEntry } from '../../test/trial-log.js'
import { openStore } from '../store/store.js'

const place = mkdtempSync(join(tmpdir(), 'gensettle-kill-'))
afterAll(() => rmSync(place, { recursive: true, force: true }))

/** Serves as the program does, and says how to come in. */
const serving = `
import { writeSync } from 'node:fs'
import { listen } from './server/listen.js'
import { openStore } from './store/store.js'
const opened = openStore(process.argv[2])
if (!opened.ok) throw new Error(JSON.stringify(opened.problems))
const { store } = opened
const demonstration = { boats: () => [], lines: () => ({ ok: true, texts: [] }), photograph: () => undefined }
const listening = await listen({ store, demonstration, catalogue: { origins: [] }, faults: {}, kits: {}, pages: new Map(), onError: console.error })
if (!listening.ok) throw new Error(JSON.stringify(listening.problems))
writeSync(1, listening.entrance + '\\n')
`

/** Sends entries one request after the other until the server is killed; gives the numbers of those it acknowledged. */
async function sendUntilKilled(folder: string, first: number, afterMs: number): Promise<readonly number[]> {
  const child = spawn(process.execPath, [join(place, 'serving.js'), folder])
  const entrance = await new Promise<string>((resolve, reject) => {
    child.stdout.once('data', (piece) => resolve(String(piece).trim()))
    child.stderr.once('data', (piece) => reject(new Error(String(piece))))
  })
  const { origin } = new URL(entrance)
  const entered = await fetch(entrance, { redirect: 'manual' })
  const cookie = /^[^;]+/.exec(entered.headers.get('set-cookie') ?? '')![0]
  const headers = { cookie, origin, 'content-type': 'application/json' }
  const acknowledged: number[] = []
  for (let number = first; ; number += 3) {
    const numbers = [number, number + 1, number + 2]
    const entries = numbers.map((one) => JSON.stringify(trialEntry(one, 'hours', { meterHours: 1 })))
    try {
      const answer = await fetch(`${origin}/api/boats/trial/entries`, {
        method: 'POST',
        headers,
        body: JSON.stringify({ entries }),
      })
      if (number === first) setTimeout(() => child.kill('SIGKILL'), afterMs)
      const { results } = (await answer.json()) as { results: readonly { result: string }[] }
      results.forEach(({ result }, index) => {
        if (result === 'written') acknowledged.push(numbers[index]!)
      })
    } catch {
      return acknowledged
    }
  }
}

test('killed in the middle of appending, the server loses nothing that it said was written', async () => {
  await layOutProgram(place, ['units', 'catalogue', 'logbook', 'store', 'server'])
  writeFileSync(join(place, 'serving.js'), serving)
  const folder = join(place, 'data')
  for (let time = 0; time < 4; time += 1) {
    const acknowledged = await sendUntilKilled(folder, 1 + time * 100_000, 40 + time * 35)
    const opened = openStore(folder)
    if (!opened.ok) throw new Error(JSON.stringify(opened.problems))
    const read = opened.store.read('trial')
    opened.store.close()
    if (!read.ok) throw new Error(JSON.stringify(read.problems))
    const kept = new Set(read.entries.map(({ n }) => n))
    expect(acknowledged.length).toBeGreaterThan(0)
    expect(acknowledged.filter((number) => !kept.has(number))).toEqual([])
  }
}, 120_000)
