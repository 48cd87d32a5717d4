import { createHash } from 'node:crypto'
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import * as fc from 'fast-check'
import { type Zippable, zipSync } from 'fflate'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { longTrialLog, trialEntry, trialId } from '../../test/trial-log.js'
import { canonicalText } from '../logbook/canonical.js'
import type { Entry } from '../logbook/kinds.js'
import type { Progress } from './boat-file-form.js'
import { exportBoat } from './export-boat.js'
import { importBoat } from './import-boat.js'
import { photographsIn } from './photographs.js'
import { openStore, type Store } from './store.js'

let place: string
let ours: Store
let theirs: Store

beforeEach(() => {
  place = mkdtempSync(join(tmpdir(), 'gensettle-boat-file-'))
  ours = open('ours')
  theirs = open('theirs')
})

afterEach(() => {
  ours.close()
  theirs.close()
  rmSync(place, { recursive: true, force: true })
})

function open(name: string): Store {
  const opened = openStore(join(place, name))
  if (!opened.ok) throw new Error(JSON.stringify(opened.problems))
  return opened.store
}

function jpeg(marks: string, length = 0): Buffer {
  const bytes = Buffer.alloc(Math.max(length, marks.length + 4), marks)
  bytes.writeUInt32BE(0xffd8ffe0)
  return bytes
}

function keep(store: Store, bytes: Buffer) {
  const kept = store.keepPhotograph(bytes)
  if (!kept.ok) throw new Error(JSON.stringify(kept.problems))
  return kept.photograph
}

const hours = (number: number, meterHours = number) => trialEntry(number, 'hours', { meterHours })

/** A boat of two photographs and three entries, and a file of it. */
async function fill(): Promise<string> {
  const photographs = [keep(ours, jpeg('before', 70_000)), keep(ours, jpeg('after'))]
  ours.append([hours(2), trialEntry(3, 'note', { text: 'the joint – “salt”', photographs }), hours(1)])
  const path = join(place, 'trial.gensettle')
  expect(await exportBoat(ours, 'trial', path)).toMatchObject({
    ok: true,
    entries: 3,
    photographs: 2,
    absent: 0,
  })
  return path
}

async function problemsOf(path: string): Promise<string[]> {
  const imported = await importBoat(theirs, path)
  const leftovers = readdirSync(theirs.folder).filter((name) => name.startsWith('incoming-'))
  expect(leftovers).toEqual([])
  if (imported.ok) return []
  expect(theirs.boats()).toEqual([])
  expect(photographsIn(theirs.folder)).toEqual([])
  return imported.problems.map(({ code }) => code)
}

test('out of one store and into another gives the same boat, byte for byte, and the same file again', async () => {
  const path = await fill()
  const imported = await importBoat(theirs, path)
  expect(imported).toEqual({ ok: true, boat: 'trial', added: 3, alreadyHeld: 0, photographs: 2 })
  expect(theirs.texts('trial')).toEqual(ours.texts('trial'))
  expect(photographsIn(theirs.folder)).toEqual(photographsIn(ours.folder))
  for (const sha256 of photographsIn(ours.folder))
    expect(theirs.photograph(sha256)).toEqual(ours.photograph(sha256))
  const again = join(place, 'again.gensettle')
  await exportBoat(theirs, 'trial', again)
  expect(readFileSync(again)).toEqual(readFileSync(path))
})

test('a long log survives the journey', async () => {
  ours.append(longTrialLog({ entries: 2000, years: 5 }))
  const path = join(place, 'long.gensettle')
  await exportBoat(ours, 'long-trial', path)
  expect(await importBoat(theirs, path)).toMatchObject({ ok: true, added: 2000 })
  expect(theirs.texts('long-trial')).toEqual(ours.texts('long-trial'))
})

test('a boat that is there already is merged; the same id with another text refuses the whole file', async () => {
  const path = await fill()
  theirs.append([hours(1), hours(7)])
  expect(await importBoat(theirs, path)).toMatchObject({ ok: true, added: 2, alreadyHeld: 1 })
  expect(theirs.texts('trial').map(({ id }) => id)).toEqual([1, 2, 3, 7].map(trialId))
  const third = open('third')
  third.append([hours(1, 99)])
  const refused = await importBoat(third, path)
  expect(refused).toMatchObject({ ok: false, problems: [{ code: 'same-id-other-text', path: trialId(1) }] })
  expect(third.texts('trial')).toHaveLength(1)
  expect(photographsIn(third.folder)).toEqual([])
  third.close()
})

test('a file already there, and a boat that is not, refuse an export; nothing half is left', async () => {
  const path = await fill()
  expect(await exportBoat(ours, 'trial', path)).toMatchObject({ problems: [{ code: 'already-there' }] })
  expect(await exportBoat(ours, 'nowhere', join(place, 'x'))).toMatchObject({
    problems: [{ code: 'no-such-boat' }],
  })
  expect(readdirSync(place).sort()).toEqual(['ours', 'theirs', 'trial.gensettle'])
})

test('bytes of a photograph that were lost or removed are told as absent and asked for by nobody', async () => {
  const path = await fill()
  const sha256 = photographsIn(ours.folder)[0] ?? ''
  ours.append([trialEntry(4, 'photograph-removed', { sha256, because: 'shows a guest' })])
  const later = join(place, 'later.gensettle')
  expect(await exportBoat(ours, 'trial', later)).toMatchObject({
    ok: true,
    entries: 4,
    photographs: 1,
    absent: 1,
  })
  expect(await importBoat(theirs, later)).toMatchObject({ ok: true, photographs: 1 })
  // The older file still has the bytes; they do not come back.
  expect(await importBoat(theirs, path)).toMatchObject({ ok: true, added: 0 })
  expect(theirs.photograph(sha256)).toBeUndefined()
})

test('long work tells how far it has come, and stops when it is told to, leaving nothing', async () => {
  const path = await fill()
  const steps: Progress[] = []
  await importBoat(theirs, path, { onProgress: (progress) => steps.push(progress) })
  expect(steps.length).toBeGreaterThan(1)
  expect(steps.at(-1)?.done).toBe(steps.at(-1)?.total)
  expect(steps.every(({ done }, index) => index === 0 || done > (steps[index - 1]?.done ?? 0))).toBe(true)

  const third = open('third')
  expect(await importBoat(third, path, { signal: AbortSignal.abort() })).toMatchObject({
    ok: false,
    problems: [{ code: 'stopped' }],
  })
  expect(third.boats()).toEqual([])
  third.close()
  const half = join(place, 'half.gensettle')
  expect(await exportBoat(ours, 'trial', half, { signal: AbortSignal.abort() })).toMatchObject({
    problems: [{ code: 'stopped' }],
  })
  expect(readdirSync(place).filter((name) => name.startsWith('half'))).toEqual([])
})

/** An archive made by hand, as an attacker would. */
function archive(
  options: { readonly entries?: readonly unknown[]; readonly header?: object; readonly more?: Zippable } = {},
) {
  const lines = (options.entries ?? [hours(1)]).map((entry) =>
    typeof entry === 'string' ? entry : canonicalText(entry),
  )
  const text = Buffer.from(lines.map((line) => `${line}\n`).join(''))
  const header = {
    type: 'gensettle-boat',
    version: 1,
    boat: 'trial',
    entries: lines.length,
    entriesSha256: createHash('sha256').update(text).digest('hex'),
    photographs: 0,
    absent: [],
    ...options.header,
  }
  return Buffer.from(
    zipSync({ 'header.json': Buffer.from(JSON.stringify(header)), 'entries.jsonl': text, ...options.more }),
  )
}

function written(bytes: Uint8Array): string {
  const path = join(place, 'attack.gensettle')
  writeFileSync(path, bytes)
  return path
}

/** Names are not checked by the archiver, so any can be put in. */
function renamed(bytes: Buffer, from: string, to: string): Buffer {
  expect(to).toHaveLength(from.length)
  return Buffer.from(bytes.toString('latin1').replaceAll(from, to), 'latin1')
}

const shown = jpeg('shown', 3000)
const sha256 = createHash('sha256').update(shown).digest('hex')
const showing = trialEntry(1, 'note', {
  text: 'x',
  photographs: [{ sha256, type: 'image/jpeg', bytes: shown.length }],
}) as Entry
const withPhotograph = {
  entries: [showing],
  header: { photographs: 1 },
  more: { [`photographs/${sha256}`]: shown },
}

test('an archive made by hand in the right form is taken', async () => {
  expect(await problemsOf(written(archive(withPhotograph)))).toEqual([])
})

test.each([
  ['../../../../outside', 'the folder above'],
  ['/etc/cron.d/gensettle', 'an absolute path'],
  ['..\\..\\..\\start-up.bat', 'a path of another system'],
  ['photographs/../header', 'a way around'],
  ['C:\\start.bat', 'a drive'],
  [`photographs/${sha256}.jpg`, 'an ending'],
  [`photographs/${sha256.toUpperCase()}`, 'capital letters'],
  [`photographs/${sha256}\u0000`, 'a name that ends early'],
  ['header.json\n', 'a line break'],
  ['photographs/', 'a folder'],
])('a name that is not ours is refused: %j, %s', async (name) => {
  expect(await problemsOf(written(archive({ more: { [name]: Buffer.from('x') } })))).toContain('foreign-name')
  expect(existsSync(join(place, 'outside'))).toBe(false)
})

test('a link is refused', async () => {
  const more: Zippable = {
    [`photographs/${sha256}`]: [Buffer.from('/etc/passwd'), { os: 3, attrs: 0o120777 << 16 }],
  }
  expect(await problemsOf(written(archive({ ...withPhotograph, more })))).toContain('no-plain-file')
})

test('an archive that breaks off anywhere is refused', async () => {
  const whole = archive(withPhotograph)
  await fc.assert(
    fc.asyncProperty(fc.integer({ min: 0, max: whole.length - 1 }), async (length) => {
      expect(await problemsOf(written(whole.subarray(0, length)))).not.toEqual([])
    }),
    { numRuns: 40 },
  )
})

test('a flipped bit anywhere is refused, or changes nothing that is read', async () => {
  const whole = archive(withPhotograph)
  await fc.assert(
    fc.asyncProperty(fc.integer({ min: 0, max: whole.length * 8 - 1 }), async (bit) => {
      const bytes = Buffer.from(whole)
      bytes.writeUInt8(bytes.readUInt8(bit >> 3) ^ (1 << (bit & 7)), bit >> 3)
      const fresh = open(`bit-${bit}`)
      const imported = await importBoat(fresh, written(bytes))
      const kept = [fresh.texts('trial').map(({ text }) => text), photographsIn(fresh.folder)]
      fresh.close()
      rmSync(fresh.folder, { recursive: true, force: true })
      expect(kept).toEqual(imported.ok ? [[canonicalText(showing)], [sha256]] : [[], []])
    }),
    { numRuns: 60 },
  )
})

test('something else than an archive, and no file at all, are refused', async () => {
  expect(await problemsOf(written(Buffer.alloc(0)))).toEqual(['broken-archive'])
  expect(await problemsOf(written(Buffer.alloc(100_000, 'PK\u0005\u0006')))).toEqual(['broken-archive'])
  expect(await problemsOf(join(place, 'not-there'))).toEqual(['no-such-file'])
})

test('a little that unpacks to very much is refused by its ratio, before it is unpacked', async () => {
  expect(await problemsOf(written(archive({ entries: [' '.repeat(2_000_000)] })))).toEqual([
    'packed-too-tight',
  ])
})

test('a member that unpacks to more than the directory promises is refused', async () => {
  const bytes = archive({ entries: [`${canonicalText(hours(1))}${' '.repeat(50_000)}`] })
  const size = bytes.lastIndexOf('entries.jsonl') - 46 + 24
  const told = bytes.readUInt32LE(size)
  expect(told).toBeGreaterThan(50_000)
  bytes.writeUInt32LE(300, size)
  expect(await problemsOf(written(bytes))).toEqual(['broken-member'])
})

test('members that are too large, or too many, are refused by what the directory says', async () => {
  const bytes = archive(withPhotograph)
  const at = bytes.lastIndexOf('photographs/') - 46
  bytes.writeUInt32LE(60_000_000, at + 20)
  bytes.writeUInt32LE(60_000_000, at + 24)
  expect(await problemsOf(written(bytes))).toContain('too-large')
  const many = Object.fromEntries(
    Array.from({ length: 10_001 }, (_, n) => [
      `photographs/${String(n).padStart(64, '0')}`,
      new Uint8Array(),
    ]),
  )
  expect(await problemsOf(written(archive({ more: many })))).toEqual(['too-many-files'])
})

test('two members of one name are refused', async () => {
  const twin = sha256.replace(/./, (digit) => (digit === '0' ? '1' : '0'))
  const more = { ...withPhotograph.more, [`photographs/${twin}`]: shown }
  expect(await problemsOf(written(renamed(archive({ ...withPhotograph, more }), twin, sha256)))).toContain(
    'name-twice',
  )
})

test('a head that says another name than the directory, and members over one another, are refused', async () => {
  const bytes = archive(withPhotograph)
  bytes.write('entries.jsonX', bytes.indexOf('entries.jsonl'))
  expect(await problemsOf(written(bytes))).toEqual(['heads-differ'])
  const over = archive(withPhotograph)
  const at = over.lastIndexOf('photographs/') - 46
  over.writeUInt32LE(over.readUInt32LE(at + 20) + 5, at + 20)
  expect(await problemsOf(written(over))).toEqual(['members-overlap'])
})

test('a photograph with other bytes than its name, or another length than its entry, is refused', async () => {
  const other = { [`photographs/${sha256}`]: jpeg('other', 3000) }
  expect(await problemsOf(written(archive({ ...withPhotograph, more: other })))).toEqual(['wrong-digest'])
  const short = { [`photographs/${sha256}`]: shown.subarray(0, 2999) }
  expect(await problemsOf(written(archive({ ...withPhotograph, more: short })))).toEqual(['wrong-length'])
})

test('photographs that are missing, or that nobody names, are refused', async () => {
  expect(await problemsOf(written(archive({ entries: [showing], header: { photographs: 1 } })))).toEqual([
    'photograph-missing',
    'wrong-count',
  ])
  expect(
    await problemsOf(written(archive({ header: { photographs: 1 }, more: withPhotograph.more }))),
  ).toEqual(['foreign-photograph'])
})

test('what the header tells must be so, and everything wrong is told at once', async () => {
  expect(await problemsOf(written(archive({ header: { version: 2, entries: -1 } })))).toEqual([
    'not-one-of',
    'out-of-range',
  ])
  expect(await problemsOf(written(archive({ header: { entries: 2, entriesSha256: sha256 } })))).toEqual([
    'wrong-digest',
    'wrong-count',
  ])
  expect(await problemsOf(written(archive({ header: { boat: 'other' } })))).toEqual(['other-boat'])
  const wrong = [{ ...hours(1), n: 0 }, '{}', hours(3)]
  expect(await problemsOf(written(archive({ entries: wrong })))).toContain('out-of-range')
  expect(await problemsOf(written(zipSync({ 'header.json': Buffer.from('{') }) as Buffer))).toEqual([
    'not-json',
  ])
  expect(await problemsOf(written(zipSync({ 'entries.jsonl': Buffer.from('') }) as Buffer))).toEqual([
    'missing',
  ])
})

test('memory does not grow with the photographs', async () => {
  const photographs = Array.from({ length: 16 }, (_, n) => keep(ours, jpeg(`photograph ${n} `, 5_000_000)))
  ours.append([trialEntry(1, 'note', { text: 'many', photographs })])
  const path = join(place, 'large.gensettle')
  const before = process.memoryUsage().rss
  let most = before
  const onProgress = () => {
    most = Math.max(most, process.memoryUsage().rss)
  }
  expect((await exportBoat(ours, 'trial', path, { onProgress })).ok).toBe(true)
  expect((await importBoat(theirs, path, { onProgress })).ok).toBe(true)
  expect(theirs.texts('trial')).toEqual(ours.texts('trial'))
  // The photographs are 80 MB.
  expect(most - before).toBeLessThan(40_000_000)
})
