/**
 * How long a long logbook takes to open, and a large boat file to travel.
 *
 * @module
 */

import { mkdtempSync, rmSync, statSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { knownThings, shippedCatalogue } from '../src/cli/places.js'
import { currentEntries } from '../src/logbook/current.js'
import { oddities } from '../src/logbook/oddities.js'
import { registerOf } from '../src/register/register.js'
import { exportBoat } from '../src/store/export-boat.js'
import { importBoat } from '../src/store/import-boat.js'
import { openStore } from '../src/store/store.js'
import { longTrialLog, trialEntry } from '../test/trial-log.js'

/** Milliseconds of each step. */
export interface LogbookTimes {
  readonly entries: number
  readonly appendMs: number
  readonly openMs: number
  readonly readMs: number
  readonly currentMs: number
  /** Opening the file, reading, parsing and current forms together: to stay under 300. */
  readonly totalMs: number
  /** Folding it into what the set is, from the current forms: to stay under 500. */
  readonly registerMs: number
  /** Looking for what is odd in it, as each entry that is written does. */
  readonly odditiesMs: number
}

/** Writes a log of 20,000 entries over 20 years, then opens it as a program does that starts; the middle of `repeats` runs. */
export function benchLogbook({ repeats = 5 } = {}): LogbookTimes {
  const folder = mkdtempSync(join(tmpdir(), 'gensettle-bench-'))
  try {
    const log = longTrialLog({ entries: 20_000, years: 20 })
    const first = orThrow(openStore(folder)).store
    const began = performance.now()
    orThrow(first.append(log))
    const appendMs = performance.now() - began
    first.close()
    const runs = Array.from({ length: repeats }, () => openOnce(folder)).sort((a, b) => a.totalMs - b.totalMs)
    const middle = runs[Math.floor(repeats / 2)]!
    return { entries: log.length, appendMs, ...middle }
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

/** How long a boat file takes to write and to read, and by how much memory grows meanwhile. */
export interface BoatFileFigures {
  readonly fileMb: number
  readonly exportMs: number
  readonly importMs: number
  /** Growth of resident memory over what it was before. */
  readonly mostMemoryMb: number
}

/** A boat with 200 MB of photographs is written to a file and read into another store. */
export async function benchBoatFile({ photographs = 50 } = {}): Promise<BoatFileFigures> {
  const folder = mkdtempSync(join(tmpdir(), 'gensettle-bench-'))
  try {
    const from = orThrow(openStore(join(folder, 'from'))).store
    const to = orThrow(openStore(join(folder, 'to'))).store
    const path = join(folder, 'boat.gensettle')
    for (let number = 1; number <= photographs; number += 1) {
      const bytes = Buffer.alloc(4_000_000, `photograph ${number} `)
      bytes.writeUInt32BE(0xffd8ffe0)
      const { photograph } = orThrow(from.keepPhotograph(bytes))
      orThrow(from.append([trialEntry(number, 'note', { text: 'seen', photographs: [photograph] })]))
    }
    const before = process.memoryUsage().rss
    let most = before
    const onProgress = () => {
      most = Math.max(most, process.memoryUsage().rss)
    }
    const times = [performance.now()]
    orThrow(await exportBoat(from, 'trial', path, { onProgress }))
    times.push(performance.now())
    orThrow(await importBoat(to, path, { onProgress }))
    times.push(performance.now())
    from.close()
    to.close()
    const [start = 0, exported = 0, imported = 0] = times
    return {
      fileMb: statSync(path).size / 1e6,
      exportMs: exported - start,
      importMs: imported - exported,
      mostMemoryMb: (most - before) / 1e6,
    }
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

function openOnce(folder: string) {
  const times = [performance.now()]
  const lap = () => times.push(performance.now())
  const { store } = orThrow(openStore(folder))
  lap()
  const { entries } = orThrow(store.read('long-trial'))
  lap()
  const now = currentEntries(entries).entries
  lap()
  const catalogue = shippedCatalogue()
  lap()
  registerOf({ entries: now, boat: 'long-trial', set: 'main', asOf: '2024-01-01', catalogue })
  lap()
  oddities(now, knownThings())
  lap()
  store.close()
  const [start = 0, opened = 0, read = 0, current = 0, catalogued = 0, registered = 0, asked = 0] = times
  return {
    openMs: opened - start,
    readMs: read - opened,
    currentMs: current - read,
    totalMs: current - start,
    registerMs: registered - catalogued,
    odditiesMs: asked - registered,
  }
}

function orThrow<T extends { readonly ok: boolean }>(result: T): Extract<T, { ok: true }> {
  if (!result.ok) throw new Error(JSON.stringify(result))
  return result as Extract<T, { ok: true }>
}
