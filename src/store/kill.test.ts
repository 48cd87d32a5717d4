import { spawn } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, expect, test } from 'vitest'
import { layOutProgram } from '../../test/own-program.js'
import { openStore } from './store.js'

const place = mkdtempSync(join(tmpdir(), 'gensettle-kill-'))
afterAll(() => rmSync(place, { recursive: true, force: true }))

/** Appends as the program does. */
const appending = `
import { writeSync } from 'node:fs'
import { compose } from './store/compose.js'
import { openStore } from './store/store.js'
const opened = openStore(process.argv[2])
if (!opened.ok) throw new Error(JSON.stringify(opened.problems))
const { store } = opened
const draft = { boat: 'trial', set: 'main', from: '2024-01-01', kind: 'hours', body: { meterHours: 1 } }
for (;;) {
  const entries = compose(store, [draft, draft, draft], new Date())
  const appended = store.append(entries)
  if (!appended.ok) throw new Error(JSON.stringify(appended.problems))
  writeSync(1, entries.map(({ id }) => id + '\\n').join(''))
}
`

/** The writing alone, without the check of each entry: starts in a third of the time. */
const writing = `
import { writeSync } from 'node:fs'
import { join } from 'node:path'
import { ulid } from 'ulid'
import { canonicalText } from './logbook/canonical.js'
import { lockFolder } from './store/lock.js'
import { insertRows } from './store/rows.js'
import { openTables } from './store/tables.js'
if (!lockFolder(process.argv[2]).ok) throw new Error('the folder must be free')
const database = openTables(join(process.argv[2], 'logbook.db'), { newDevice: () => 'trial' })
for (;;) {
  const rows = [1, 2, 3].map((n) => {
    const entry = { version: 1, id: ulid(), boat: 'trial', device: 'trial', n, kind: 'hours', body: { meterHours: 1 } }
    return { entry, text: canonicalText(entry) }
  })
  insertRows(database, rows)
  writeSync(1, rows.map(({ entry }) => entry.id + '\\n').join(''))
}
`

/** Starts a program that appends without end, kills it after a while and gives the ids it had acknowledged. */
function appendUntilKilled(run: { script: string; folder: string; afterMs: number }): Promise<string[]> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [join(place, run.script), run.folder], {
      stdio: ['ignore', 'pipe', 'pipe'],
    })
    let acknowledged = ''
    let complaint = ''
    child.stderr.on('data', (chunk) => {
      complaint += chunk
    })
    child.stdout.on('data', (chunk) => {
      if (acknowledged === '') setTimeout(() => child.kill('SIGKILL'), run.afterMs)
      acknowledged += chunk
    })
    child.on('close', (_, signal) => {
      if (signal === 'SIGKILL') resolve(acknowledged.split('\n').slice(0, -1))
      else reject(new Error(complaint))
    })
  })
}

test('fifty times killed in the middle of appending, no acknowledged entry is lost', async () => {
  await layOutProgram(place, ['catalogue', 'logbook', 'store'])
  writeFileSync(join(place, 'appending.js'), appending)
  writeFileSync(join(place, 'writing.js'), writing)
  const killings = async (folder: string, times: number) => {
    for (let time = 0; time < times; time += 1) {
      const script = time % 5 === 0 ? 'appending.js' : 'writing.js'
      const acknowledged = await appendUntilKilled({ script, folder, afterMs: (time * 7) % 40 })
      const opened = openStore(folder)
      if (!opened.ok) throw new Error(JSON.stringify(opened.problems))
      const { store } = opened
      const read = store.read('trial')
      store.close()
      if (!read.ok) throw new Error(JSON.stringify(read.problems))
      const kept = new Set(read.entries.map(({ id }) => id))
      expect(acknowledged.length).toBeGreaterThan(0)
      expect(acknowledged.filter((id) => !kept.has(id))).toEqual([])
      expect(kept.size % 3).toBe(0)
    }
  }
  await Promise.all([killings(join(place, 'one'), 25), killings(join(place, 'two'), 25)])
}, 300_000)
