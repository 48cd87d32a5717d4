import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, expect, test } from 'vitest'
import { trialEntry } from '../../test/trial-log.js'
import { exportBoat } from './export-boat.js'
import { openToRead } from './read-store.js'
import { openStore } from './store.js'

const place = mkdtempSync(join(tmpdir(), 'gensettle-read-'))
afterAll(() => rmSync(place, { recursive: true, force: true }))

function opened<T extends { readonly ok: boolean }>(result: T): Extract<T, { ok: true }> {
  if (!result.ok) throw new Error(JSON.stringify(result))
  return result as Extract<T, { ok: true }>
}

test('what is written can be read while the folder is held, entry by entry', async () => {
  const folder = join(place, 'held')
  const { store } = opened(openStore(folder))
  opened(store.append([trialEntry(1, 'hours', { meterHours: 5 })]))
  const reading = opened(openToRead(folder)).store
  expect(reading.boats()).toEqual(['trial'])
  expect(opened(reading.read('trial')).entries).toHaveLength(1)
  opened(store.append([trialEntry(2, 'hours', { meterHours: 6 })]))
  expect(opened(reading.read('trial')).entries).toHaveLength(2)
  expect(await exportBoat(reading, 'trial', join(place, 'trial.boat'))).toMatchObject({
    ok: true,
    entries: 2,
  })
  reading.close()
  opened(store.append([trialEntry(3, 'hours', { meterHours: 7 })]))
  store.close()
})

test('reading makes no folder where there is none', () => {
  const folder = join(place, 'none')
  const { store } = opened(openToRead(folder))
  expect(store.boats()).toEqual([])
  expect(store.read('trial')).toEqual({ ok: true, entries: [] })
  expect(existsSync(folder)).toBe(false)
})

test('a file where the folder should be, and a file of another program, are told', () => {
  const file = join(place, 'file')
  writeFileSync(file, 'x')
  const folder = mkdtempSync(join(place, 'other-'))
  writeFileSync(join(folder, 'logbook.db'), 'not a database, but long enough to be looked at'.repeat(100))
  for (const path of [file, folder]) {
    expect(openToRead(path)).toMatchObject({ ok: false, problems: [{ code: 'cannot-be-opened', path }] })
  }
})

test('a folder that cannot be made is told at once, for reading it is empty', () => {
  const folder = '/proc/no-such-thing/logbook'
  expect(openStore(folder)).toMatchObject({ ok: false, problems: [{ code: 'cannot-be-opened' }] })
  expect(opened(openToRead(folder)).store.boats()).toEqual([])
})
