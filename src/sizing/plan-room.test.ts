import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { RunDay } from './plan-day.js'
import { fitsAnyway, roomFor } from './plan-room.js'

/** Every choice of some of a list. */
function choices<T>(list: readonly T[]): T[][] {
  return Array.from({ length: 2 ** list.length }, (_, bits) => list.filter((_one, i) => bits & (1 << i)))
}

const sum = (list: readonly number[]) => list.reduce((total, one) => total + one, 0)
const powers = fc.array(fc.constantFrom(0.2, 0.5, 1, 1.6, 2, 3.1), { minLength: 1, maxLength: 7 })
const rooms = fc.constantFrom(0, 0.9, 2.1, 4.5, 20)

test('what is said of the room at once holds for all that fits, and rules out something that does not', () => {
  fc.assert(
    fc.property(powers, rooms, (list, room) => {
      const drawings: { readonly mostKW: number }[] = list.map((mostKW) => ({ mostKW }))
      const all = choices(drawings)
      const fits = (some: readonly { mostKW: number }[]) =>
        sum(some.map(({ mostKW }) => mostKW)) <= room + 1e-9
      for (const { among, atMost } of roomFor(drawings, room)) {
        const count = (some: readonly { mostKW: number }[]) =>
          some.filter((one) => among.includes(one)).length
        expect(all.every((some) => !fits(some) || count(some) <= atMost)).toBe(true)
        expect(all.some((some) => count(some) > atMost)).toBe(true)
      }
    }),
    { numRuns: 40 },
  )
})

test('a store has room whatever runs, as by trying all that may run', () => {
  fc.assert(
    fc.property(powers, rooms, (list, room) => {
      const stores = list.map((kW, i) => ({ id: `s${i}`, kW })) as unknown as RunDay['stores']
      const day = { baseKW: [0], batches: [], stores, set: { mostKW: room } } as unknown as RunDay
      for (const store of stores) {
        const others = stores.filter((one) => one !== store)
        const tried = choices(others.map(({ kW }) => kW)).filter((some) => sum(some) <= room + 1e-9)
        const found = tried.every((some) => sum(some) + store.kW <= room + 1e-9)
        expect(fitsAnyway(day, store, room)).toBe(found)
      }
    }),
    { numRuns: 40 },
  )
})
