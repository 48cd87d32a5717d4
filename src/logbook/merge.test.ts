import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { trialEntry, trialId } from '../../test/trial-log.js'
import { canonicalText } from './canonical.js'
import { countsOfDevices, mergeCopies } from './merge.js'

function kept(number: number, meterHours = number) {
  return { id: trialId(number), text: canonicalText(trialEntry(number, 'hours', { meterHours })) }
}

function merge(
  ours: readonly { id: string; text: string }[],
  theirs: readonly { id: string; text: string }[],
) {
  const held = new Map(ours.map(({ id, text }) => [id, text]))
  return mergeCopies((id) => held.get(id), theirs)
}

test('two copies become their union', () => {
  expect(merge([kept(1), kept(2)], [kept(2), kept(3)])).toEqual({
    ok: true,
    added: [kept(3)],
    alreadyHeld: 1,
  })
})

test('the same id with another text is refused and named, every time it happens', () => {
  const merged = merge([kept(1), kept(2)], [kept(1, 7), kept(3), kept(3, 8), kept(2)])
  expect(merged).toMatchObject({
    ok: false,
    problems: [
      { code: 'same-id-other-text', path: trialId(1) },
      { code: 'same-id-other-text', path: trialId(3) },
    ],
  })
})

test('merging a second time adds nothing, and both ways give the same entries', () => {
  const copy = fc
    .uniqueArray(fc.integer({ min: 1, max: 30 }))
    .map((numbers) => numbers.map((number) => kept(number)))
  fc.assert(
    fc.property(copy, copy, (ours, theirs) => {
      const union = (a: typeof ours, b: typeof ours) => {
        const merged = merge(a, b)
        return merged.ok ? [...a, ...merged.added].map(({ text }) => text).sort() : []
      }
      expect(union(ours, theirs)).toEqual(union(theirs, ours))
      const once = merge(ours, theirs)
      const all = [...ours, ...(once.ok ? once.added : [])]
      expect(merge(all, theirs)).toEqual({ ok: true, added: [], alreadyHeld: theirs.length })
    }),
  )
})

test('a jump in what a device counted shows what is missing, device by device and boat by boat', () => {
  const entry = (n: number, device: string, boat = 'trial') =>
    trialEntry(n, 'hours', { meterHours: n }, { device, boat })
  const counts = countsOfDevices([
    entry(7, 'saloon'),
    entry(1, 'saloon'),
    entry(2, 'saloon'),
    entry(3, 'telephone'),
    entry(1, 'saloon', 'other'),
    trialEntry(99, 'hours', { meterHours: 4 }, { n: 7 }),
  ])
  expect(counts).toEqual({
    gaps: [
      { boat: 'trial', device: 'saloon', first: 3, last: 6 },
      { boat: 'trial', device: 'telephone', first: 1, last: 2 },
    ],
    doubled: [{ boat: 'trial', device: 'saloon', n: 7, ids: [trialId(7), trialId(99)] }],
  })
})
