import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { trialEntry, trialId } from '../../test/trial-log.js'
import { currentEntries } from './current.js'
import type { Entry } from './kinds.js'

function hours(number: number, more: Parameters<typeof trialEntry>[3] = {}): Entry {
  return trialEntry(number, 'hours', { meterHours: number }, more)
}

function voiding(number: number, ...ids: number[]): Entry {
  return trialEntry(
    number,
    'note',
    { text: 'was wrong' },
    { voids: true, corrects: ids.map(trialId), ...notedAt(number) },
  )
}

function correcting(number: number, ...ids: number[]): Entry {
  return hours(number, { corrects: ids.map(trialId), ...notedAt(number) })
}

function notedAt(number: number) {
  return { noted: `2024-01-01T12:00:${String(number).padStart(2, '0')}Z` }
}

function numbers(entries: readonly Entry[]): number[] {
  return entries.map(({ n }) => n)
}

test('entries stand in the order of their dates, whatever order they came in', () => {
  const entries = [
    hours(1, { from: '2021' }),
    hours(2, { from: '2020-12-31' }),
    hours(3, { from: '2021-01' }),
  ]
  expect(numbers(currentEntries(entries).entries)).toEqual([2, 3, 1])
})

test('a correction takes the place of what it corrects, and a correction of that takes its place in turn', () => {
  const { entries, disputes, troubles } = currentEntries([
    hours(1),
    correcting(3, 2),
    hours(4),
    correcting(2, 1),
  ])
  expect(numbers(entries).sort()).toEqual([3, 4])
  expect([disputes, troubles]).toEqual([[], []])
})

test('what is voided is gone with all it had corrected, and a correction of the void brings an entry back', () => {
  expect(numbers(currentEntries([hours(1), correcting(2, 1), voiding(3, 2), hours(9)]).entries)).toEqual([9])
  expect(numbers(currentEntries([hours(1), voiding(2, 1), correcting(3, 2)]).entries)).toEqual([3])
})

test('two corrections that do not know of one another stand side by side until one names both', () => {
  const apart = [hours(1), correcting(2, 1), correcting(3, 1)]
  const { entries, disputes } = currentEntries(apart)
  expect(disputes.map(({ tips }) => numbers(tips))).toEqual([[3, 2]])
  expect(numbers(entries)).toEqual([3])
  const settled = currentEntries([...apart, correcting(4, 2, 3)])
  expect([numbers(settled.entries), settled.disputes]).toEqual([[4], []])
})

test('a void against a correction is a dispute as well', () => {
  const { entries, disputes } = currentEntries([hours(1), correcting(2, 1), voiding(3, 1)])
  expect(disputes.map(({ tips }) => numbers(tips))).toEqual([[3, 2]])
  expect(entries).toEqual([])
})

test('one entry may take the place of several', () => {
  expect(numbers(currentEntries([hours(1), hours(2), correcting(3, 1, 2)]).entries)).toEqual([3])
})

test('a correction of what is missing stands, and is told', () => {
  const { entries, troubles } = currentEntries([correcting(2, 1), voiding(4, 3)])
  expect(numbers(entries)).toEqual([2])
  expect(troubles.map(({ code, path, found }) => [code, path, found])).toEqual([
    ['corrects-what-is-missing', trialId(2), trialId(1)],
    ['corrects-what-is-missing', trialId(4), trialId(3)],
  ])
})

test('corrections in a circle are told, and the latest noted is reckoned with', () => {
  const { entries, disputes, troubles } = currentEntries([
    correcting(1, 2),
    correcting(2, 3),
    correcting(3, 1),
  ])
  expect(numbers(entries)).toEqual([3])
  expect(disputes.map(({ tips }) => numbers(tips))).toEqual([[3, 2, 1]])
  expect(troubles).toMatchObject([{ code: 'corrections-in-a-circle', path: trialId(1) }])
})

test('as noted by then: what was noted later counts for nothing', () => {
  const entries = [hours(1, notedAt(1)), correcting(2, 1), voiding(3, 2)]
  const by = (second: number) => numbers(currentEntries(entries, { notedBy: notedAt(second).noted }).entries)
  expect([by(0), by(1), by(2), by(3)]).toEqual([[], [1], [2], []])
})

test('a chain of twenty thousand corrections ends in one entry', () => {
  const chain = Array.from({ length: 20_000 }, (_, index) =>
    hours(index + 1, { corrects: index === 0 ? [] : [trialId(index)] }),
  )
  expect(numbers(currentEntries(chain).entries)).toEqual([20_000])
})

test('without circles exactly the entries that nothing corrects are shown, in whatever order they came', () => {
  const log = fc.array(fc.record({ back: fc.array(fc.nat(8), { maxLength: 3 }), voids: fc.boolean() }), {
    maxLength: 30,
  })
  fc.assert(
    fc.property(log, fc.infiniteStream(fc.nat()), (plan, luck) => {
      const entries = plan.map(({ back, voids }, index) => {
        const ids = [...new Set(back.map((steps) => index - steps).filter((number) => number >= 1))]
        return voids && ids.length > 0 ? voiding(index + 1, ...ids) : correcting(index + 1, ...ids)
      })
      const shuffled = entries
        .map((entry) => ({ entry, key: luck.next().value }))
        .sort((a, b) => a.key - b.key)
        .map(({ entry }) => entry)
      const current = currentEntries(shuffled)
      const corrected = new Set(entries.flatMap(({ corrects }) => corrects))
      const tips = entries.filter(({ id }) => !corrected.has(id))
      const outvoted = current.disputes.flatMap(({ tips: [, ...others] }) => others)
      const hidden = current.disputes.map(({ tips: [taken] }) => taken).filter(({ voids }) => voids)
      const shown = [...current.entries, ...outvoted, ...hidden]
      const lonelyVoids = tips.filter((tip) => tip.voids && !shown.includes(tip))
      expect(numbers([...shown, ...lonelyVoids]).sort()).toEqual(numbers(tips).sort())
      expect(current.entries.some(({ voids }) => voids)).toBe(false)
      expect(current.troubles).toEqual([])
      expect(current).toEqual(currentEntries(entries))
    }),
  )
})
