import {
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  truncateSync,
  utimesSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, expect, test } from 'vitest'
import { trialEntry } from '../../test/trial-log.js'
import { lifeModelSchema } from '../forecast/life-model.js'
import { packed, unpacked } from '../forecast/packed.js'
import { posteriorOf } from '../forecast/posterior.js'
import { computedIn, digestOf, keyOf } from './computed.js'
import { exportBoat } from './export-boat.js'
import { memoryIn } from './posterior-memory.js'
import { openStore } from './store.js'

const place = mkdtempSync(join(tmpdir(), 'gensettle-computed-'))
afterAll(() => rmSync(place, { recursive: true, force: true }))
const folder = () => mkdtempSync(join(place, 'data-'))
const bytesOf = (text: string) => new TextEncoder().encode(text)

const model = lifeModelSchema.parse({
  type: 'gensettle/life-model',
  version: 1,
  horizonYears: 3,
  setFactor: { boatLogSd: 0.2, setLogSd: 0.2 },
  parts: [
    {
      id: 'pump',
      age: { years: 4 },
      modes: [{ id: 'seal', clock: 'years', shape: 2, scale: 5, logSd: 0.3 }],
    },
  ],
})

test('what is kept is read back; what is not kept is not there', () => {
  const data = folder()
  expect(computedIn(data).read('a')).toBeUndefined()
  computedIn(data).keep('a', bytesOf('some bytes'))
  expect(computedIn(data).read('a')).toEqual(bytesOf('some bytes'))
  expect(readdirSync(join(data, 'computed'))).toEqual(['a'])
})

test('a file that was cut off, or has a hole, is not there', () => {
  const data = folder()
  const path = join(data, 'computed', 'a')
  const whole = bytesOf('0123456789'.repeat(100))
  for (const damage of [
    () => truncateSync(path, 500),
    () => truncateSync(path, 3),
    () => writeFileSync(path, ''),
    () => {
      const bytes = readFileSync(path)
      bytes.fill(0, 100, 104)
      writeFileSync(path, bytes)
    },
  ]) {
    computedIn(data).keep('a', whole)
    damage()
    expect(computedIn(data).read('a')).toBeUndefined()
  }
})

test.each([
  ['so many', { files: 3, bytes: 1e9 }],
  ['so many bytes', { files: 99, bytes: 3 * (8 + 1) }],
])('only %s are kept, those that were used last', (_, bounds) => {
  const data = folder()
  const computed = computedIn(data, bounds)
  for (const [age, key] of ['a', 'b', 'c'].entries()) {
    computed.keep(key, bytesOf(key))
    utimesSync(join(data, 'computed', key), 1000 + age, 1000 + age)
  }
  computed.read('a')
  computed.keep('d', bytesOf('d'))
  expect(readdirSync(join(data, 'computed')).sort()).toEqual(['a', 'c', 'd'])
})

test('a file left half written goes when it is old, and not while it may still be written', () => {
  const data = folder()
  const computed = computedIn(data)
  computed.keep('a', bytesOf('a'))
  for (const name of ['old.part', 'new.part']) writeFileSync(join(data, 'computed', name), 'half')
  utimesSync(join(data, 'computed', 'old.part'), 1000, 1000)
  computed.keep('b', bytesOf('b'))
  expect(readdirSync(join(data, 'computed')).sort()).toEqual(['a', 'b', 'new.part'])
})

test('where nothing can be written nothing is kept, and nothing stops', () => {
  const computed = computedIn('/proc/none/deeper')
  computed.keep('a', bytesOf('a'))
  expect(computed.read('a')).toBeUndefined()
})

test('a key changes with what it rests on and with the program, not with the order of fields', () => {
  expect(digestOf({ a: 1, b: 2 })).toBe(digestOf({ b: 2, a: 1 }))
  expect(new Set([keyOf('a', 'x'), keyOf('b', 'x'), keyOf('a', 'y')]).size).toBe(3)
})

test('a posterior comes back from its bytes to the bit, and from no other bytes', () => {
  const posterior = posteriorOf(model, { seed: 2 })
  const bytes = packed(posterior)
  expect(unpacked(bytes)).toEqual(posterior)
  expect(unpacked(bytes.slice(0, bytes.length - 1))).toBeUndefined()
  expect(unpacked(bytesOf('{}'))).toBeUndefined()
  expect(unpacked(bytesOf('nothing of the kind'))).toBeUndefined()
})

test('a memory makes a thing once, and again after the program has changed', () => {
  const data = folder()
  let made = 0
  const ask = (program: string) =>
    memoryIn(computedIn(data), program).posterior({ model, seed: 2 }, () => {
      made++
      return posteriorOf(model, { seed: 2 })
    })
  const first = ask('one')
  expect(ask('one')).toEqual(first)
  expect(made).toBe(1)
  ask('two')
  expect(made).toBe(2)
  const memory = memoryIn(computedIn(data), 'one')
  expect(memory.find('what')).toBeUndefined()
  memory.keep('what', { list: [1, null] })
  expect(memoryIn(computedIn(data), 'one').find('what')).toEqual({ value: { list: [1, null] } })
  expect(memoryIn(computedIn(data), 'two').find('what')).toBeUndefined()
})

test('exports and backups leave out what was worked out', async () => {
  const data = folder()
  const opened = openStore(data)
  if (!opened.ok) throw new Error(JSON.stringify(opened.problems))
  const { store } = opened
  store.append([trialEntry(1, 'hours', { meterHours: 5 })])
  const [plain, after] = [join(place, 'plain.boat'), join(place, 'after.boat')]
  await exportBoat(store, 'trial', plain)
  computedIn(data).keep('a', bytesOf('worked out'))
  await exportBoat(store, 'trial', after)
  expect(readFileSync(after)).toEqual(readFileSync(plain))
  expect(store.backUp(join(place, 'backup'))).toEqual({ ok: true })
  expect(readdirSync(join(place, 'backup'))).not.toContain('computed')
  store.close()
})
