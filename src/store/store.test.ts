import { createHash } from 'node:crypto'
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import Database from 'libsql'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { longTrialLog, trialEntry, trialId } from '../../test/trial-log.js'
import { canonicalText } from '../logbook/canonical.js'
import { countsOfDevices } from '../logbook/merge.js'
import { compose } from './compose.js'
import { dataFolder } from './data-folder.js'
import { openDemonstration } from './demonstration.js'
import { photographPath } from './photographs.js'
import { openStore, type Store } from './store.js'

let place: string
let store: Store

beforeEach(() => {
  place = mkdtempSync(join(tmpdir(), 'gensettle-store-'))
  store = open(join(place, 'data'))
})

afterEach(() => {
  store.close()
  rmSync(place, { recursive: true, force: true })
})

function open(folder: string): Store {
  const opened = openStore(folder)
  if (!opened.ok) throw new Error(JSON.stringify(opened.problems))
  return opened.store
}

function reopen(): void {
  store.close()
  store = open(join(place, 'data'))
}

function read(boat = 'trial') {
  const result = store.read(boat)
  if (!result.ok) throw new Error(JSON.stringify(result.problems))
  return result.entries
}

const hours = (number: number, meterHours = number) => trialEntry(number, 'hours', { meterHours })
const jpeg = (marks: string) => Buffer.concat([Buffer.from([0xff, 0xd8, 0xff, 0xe0]), Buffer.from(marks)])

/** Changes the file behind the store's back, triggers and all. */
function tamper(sql: string): void {
  store.close()
  const database = new Database(join(place, 'data', 'logbook.db'))
  database.exec(sql)
  database.close()
  store = open(join(place, 'data'))
}

test('entries come back as they went in, text for text, after the store was closed', () => {
  const entries = [hours(2), hours(1), trialEntry(3, 'note', { text: 'µ – “fine”\n' }, { boat: 'other' })]
  expect(store.append(entries.map((entry) => JSON.stringify(entry, null, 1)))).toEqual({
    ok: true,
    added: 3,
    alreadyHeld: 0,
  })
  reopen()
  expect(store.boats()).toEqual(['other', 'trial'])
  expect(read()).toEqual([hours(2), hours(1)])
  expect(store.texts('trial')).toEqual([1, 2].map((n) => ({ id: trialId(n), text: canonicalText(hours(n)) })))
  expect(read('nowhere')).toEqual([])
})

test('one wrong entry among many: nothing is written and everything wrong is told', () => {
  const result = store.append([hours(1), { ...hours(2), n: 0 }, '{', hours(3), hours(3, 99)])
  expect(result.ok ? [] : result.problems.map(({ code, path }) => [code, path])).toEqual([
    ['out-of-range', 'entry 2 n'],
    ['not-json', 'entry 3'],
    ['same-id-other-text', trialId(3)],
  ])
  expect(store.boats()).toEqual([])
})

test('an entry that is there already is passed over; another text under its id is refused', () => {
  store.append([hours(1)])
  expect(store.append([hours(1), hours(2)])).toEqual({ ok: true, added: 1, alreadyHeld: 1 })
  expect(store.append([hours(1, 77), hours(3)])).toMatchObject({
    ok: false,
    problems: [{ code: 'same-id-other-text', path: trialId(1) }],
  })
  expect(read()).toHaveLength(2)
})

test.each([
  ['update', "UPDATE entries SET text = '{}'"],
  ['delete', 'DELETE FROM entries'],
  [
    'replace by id',
    "INSERT OR REPLACE INTO entries SELECT 99, id, boat, device, n, '{}', sha256 FROM entries",
  ],
  [
    'replace by place',
    "INSERT OR REPLACE INTO entries SELECT seq, 'x', boat, device, n, '{}', sha256 FROM entries",
  ],
])('the file itself refuses to %s', (_, sql) => {
  store.append([hours(1)])
  store.close()
  const database = new Database(join(place, 'data', 'logbook.db'))
  expect(() => database.exec(sql)).toThrow('entries are never changed: write a correction')
  database.close()
  store = open(join(place, 'data'))
  expect(read()).toEqual([hours(1)])
})

test('what was changed behind the back of the program is told, sealed or not', () => {
  const noTriggers = 'DROP TRIGGER entries_no_update; DROP TRIGGER entries_no_delete;'
  store.append([hours(1), hours(2)])
  store.append(longTrialLog({ entries: 600, years: 2 }))
  tamper(
    `${noTriggers} UPDATE entries SET text = replace(text, '"meterHours":2', '"meterHours":3') WHERE id = '${trialId(2)}'`,
  )
  expect(store.read('trial')).toMatchObject({ ok: false, problems: [{ code: 'damaged', path: trialId(2) }] })
  expect(store.read('long-trial').ok).toBe(true)
})

test('an entry changed or gone from among the sealed ones is told', () => {
  store.append(longTrialLog({ entries: 600, years: 2 }))
  store.append([trialEntry(700, 'hours', { meterHours: 1 }, { boat: 'long-trial' })])
  expect(read('long-trial')).toHaveLength(601)
  tamper(`DROP TRIGGER entries_no_delete; DELETE FROM entries WHERE id = '${trialId(5)}'`)
  expect(store.read('long-trial')).toMatchObject({
    ok: false,
    problems: [{ code: 'damaged', found: 'entries gone or put in' }],
  })
  tamper(
    `DROP TRIGGER entries_no_update; UPDATE entries SET text = replace(text, 'h', 'k') WHERE id = '${trialId(9)}'`,
  )
  expect(store.read('long-trial')).toMatchObject({ problems: [{ code: 'damaged', path: trialId(9) }] })
})

test('however entries arrive in small lots, all are read and stay sealed', () => {
  const log = longTrialLog({ entries: 900, years: 3 })
  for (let at = 0; at < log.length; at += 90) store.append(log.slice(at, at + 90))
  reopen()
  expect(read('long-trial')).toEqual(log)
})

test('a second program gets the address of the first one, and the folder when that has ended', () => {
  store.announce('http://127.0.0.1:4177/')
  const second = openStore(join(place, 'data'))
  expect(second).toMatchObject({ ok: false, problems: [{ code: 'in-use', found: 'http://127.0.0.1:4177/' }] })
  reopen()
  expect(openStore(join(place, 'data'))).toMatchObject({
    problems: [{ code: 'in-use', found: 'another program that has told no address yet' }],
  })
})

test('a file that is no logbook, or of a newer program, is left alone and told', () => {
  const folder = join(place, 'other')
  mkdirSync(folder)
  writeFileSync(join(folder, 'logbook.db'), 'a list of flags'.repeat(100))
  expect(openStore(folder)).toMatchObject({ ok: false, problems: [{ code: 'cannot-be-opened' }] })
  expect(readFileSync(join(folder, 'logbook.db'), 'utf8')).toMatch(/^a list of flags/)
  store.close()
  const database = new Database(join(place, 'data', 'logbook.db'))
  database.exec('PRAGMA user_version = 9')
  database.close()
  const opened = openStore(join(place, 'data'))
  expect(opened).toMatchObject({ ok: false, problems: [{ code: 'cannot-be-opened' }] })
  store = open(join(place, 'again'))
})

test('a place where no folder can be is told', () => {
  const file = join(place, 'a-file')
  writeFileSync(file, '')
  expect(openStore(join(file, 'data'))).toMatchObject({ ok: false, problems: [{ code: 'cannot-be-opened' }] })
})

test('new entries get ids in order, the device of the folder and counts without gaps', () => {
  const draft = (boat: string) =>
    ({ boat, set: 'main', from: '2024', kind: 'hours', body: { meterHours: 1 } }) as const
  const now = new Date('2024-05-01T10:00:00Z')
  store.append(compose(store, [draft('trial'), draft('trial'), draft('other')], now))
  reopen()
  const later = compose(store, [draft('trial')], now)
  expect(store.append(later).ok).toBe(true)
  const entries = read()
  expect(entries.map(({ n }) => n)).toEqual([1, 2, 3])
  expect(new Set(entries.map(({ device }) => device))).toEqual(new Set([store.device]))
  expect(entries[0]).toMatchObject({ until: '2024', noted: '2024-05-01T10:00:00.000Z', corrects: [] })
  expect(countsOfDevices(entries)).toEqual({ gaps: [], doubled: [] })
  expect(entries.map(({ id }) => id)).toEqual(entries.map(({ id }) => id).sort())
})

test('a photograph is kept under its digest, and named only when it is there', () => {
  const bytes = jpeg('salt crust at the joint')
  const sha256 = createHash('sha256').update(bytes).digest('hex')
  const note = trialEntry(1, 'note', {
    text: 'before',
    photographs: [{ sha256, type: 'image/jpeg', bytes: bytes.length }],
  })
  expect(store.append([note])).toMatchObject({ problems: [{ code: 'photograph-missing', path: trialId(1) }] })
  expect(store.keepPhotograph(bytes)).toEqual({
    ok: true,
    photograph: { sha256, type: 'image/jpeg', bytes: bytes.length },
  })
  expect(store.append([note]).ok).toBe(true)
  reopen()
  expect(store.photograph(sha256)).toEqual(bytes)
  expect(statSync(photographPath(store.folder, sha256)).mode & 0o077).toBe(0)
})

test('bytes that are no photograph are refused', () => {
  expect(store.keepPhotograph(Buffer.from('<svg onload=x>'))).toMatchObject({
    problems: [{ code: 'no-photograph' }],
  })
  expect(store.keepPhotograph(new Uint8Array(50_000_001))).toMatchObject({
    problems: [{ code: 'too-large' }],
  })
})

test('the bytes of a photograph go on request; digest and reason stay; another boat that shows it keeps them', () => {
  const kept = store.keepPhotograph(jpeg('shared'))
  if (!kept.ok) throw new Error('not kept')
  const { sha256 } = kept.photograph
  const note = (number: number, boat: string) =>
    trialEntry(number, 'note', { text: 'x', photographs: [kept.photograph] }, { boat })
  const removal = (number: number, boat: string) =>
    trialEntry(number, 'photograph-removed', { sha256, because: 'shows a guest' }, { boat })
  store.append([note(1, 'trial'), note(2, 'other')])
  store.append([removal(3, 'trial')])
  expect(store.photograph(sha256)).toBeDefined()
  store.append([removal(4, 'other')])
  expect(store.photograph(sha256)).toBeUndefined()
  expect(read().map(({ kind }) => kind)).toEqual(['note', 'photograph-removed'])
})

test('a backup is a data folder with the same in it', () => {
  store.keepPhotograph(jpeg('one'))
  store.append([hours(1), hours(2)])
  const to = join(place, 'backup')
  expect(store.backUp(to)).toEqual({ ok: true })
  expect(store.backUp(to)).toMatchObject({ ok: false, problems: [{ code: 'already-there' }] })
  store.append([hours(3)])
  const copy = open(to)
  expect(copy.texts('trial')).toEqual(store.texts('trial').slice(0, 2))
  const sha256 = createHash('sha256').update(jpeg('one')).digest('hex')
  expect(copy.photograph(sha256)).toEqual(jpeg('one'))
  expect(copy.append([hours(9)]).ok).toBe(true)
  copy.close()
})

test('what a broken-off import had gathered is swept away at the next start', () => {
  const leftover = join(place, 'data', 'incoming-abc')
  mkdirSync(leftover)
  writeFileSync(join(leftover, 'x'), 'half')
  reopen()
  expect(existsSync(leftover)).toBe(false)
})

test('demonstration boats are read from files, all of them or none', () => {
  const folder = join(place, 'demo')
  mkdirSync(folder)
  const header = {
    type: 'gensettle-boat-lines',
    version: 1,
    boat: 'trial',
    units: 'SI',
    date: '2024',
    source: 'invented',
  }
  writeFileSync(
    join(folder, 'trial.jsonl'),
    [header, hours(1), hours(2)].map((line) => JSON.stringify(line)).join('\n'),
  )
  const opened = openDemonstration(folder)
  expect(opened.ok && opened.store.boats()).toEqual(['trial'])
  expect(opened.ok && opened.store.read('trial')).toEqual({ ok: true, entries: [hours(1), hours(2)] })
  expect(opened.ok && Object.keys(opened.store).sort()).toEqual([
    'boats',
    'close',
    'lines',
    'photograph',
    'read',
  ])
  writeFileSync(join(folder, 'twin.jsonl'), JSON.stringify(header))
  writeFileSync(join(folder, 'wrong.jsonl'), `${JSON.stringify({ ...header, boat: 'wrong' })}\n{}`)
  const again = openDemonstration(folder)
  const codes = again.ok ? [] : again.problems.map(({ code, path }) => `${code} ${path}`)
  expect(codes[0]).toBe('boat-twice twin.jsonl')
  expect(codes[1]).toMatch(/^missing wrong.jsonl line 2/)
})

test('the data folder follows the custom of the system, and --data before all', () => {
  const home = '/home/someone'
  expect(dataFolder('/elsewhere/log', { home })).toBe('/elsewhere/log')
  expect(dataFolder(undefined, { platform: 'linux', env: {}, home })).toBe(
    '/home/someone/.local/share/gensettle',
  )
  expect(dataFolder(undefined, { platform: 'linux', env: { XDG_DATA_HOME: '/data' }, home })).toBe(
    '/data/gensettle',
  )
  expect(dataFolder(undefined, { platform: 'linux', env: { XDG_DATA_HOME: 'data' }, home })).toBe(
    '/home/someone/.local/share/gensettle',
  )
  expect(dataFolder(undefined, { platform: 'darwin', env: {}, home })).toBe(
    '/home/someone/Library/Application Support/Gensettle',
  )
  expect(dataFolder(undefined, { platform: 'win32', env: { LOCALAPPDATA: '/c/local' }, home })).toBe(
    '/c/local/Gensettle',
  )
})
