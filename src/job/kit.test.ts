import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { shippedKitFiles } from '../../test/shipped-kits.js'
import type { Entry } from '../logbook/kinds.js'
import type { JobPart } from './jobs.js'
import { type Kit, kitOf } from './kit.js'
import { chanceOfAny, priceOfWait } from './kit-wait.js'

const { kits, catalogue } = shippedKitFiles()

let n = 0
function entryOf(kind: string, body: unknown, from = '2026-11-01'): Entry {
  n += 1
  return {
    ...{ version: 1, boat: 'trial', set: 'main', device: 'saloon', corrects: [] },
    noted: `2026-11-01T10:${String(Math.floor(n / 60) % 60).padStart(2, '0')}:${String(n % 60).padStart(2, '0')}Z`,
    ...{ id: `01HZZZZZZZ${String(n).padStart(16, '0')}`, n, kind, body, from, until: from },
  } as unknown as Entry
}

const renewed = (part: string): JobPart => ({ part, did: 'renewed', isDone: false })
function kit(parts: readonly JobPart[], entries: readonly Entry[] = []): Kit {
  return kitOf({
    job: { name: 'pump', parts },
    entries,
    set: 'main',
    asOf: '2026-11-26',
    kits,
    catalogue,
    terms: {},
  })
}
const keys = (list: Kit['needs']) => list.map(({ key }) => key)
const line = (state: string, lines: unknown, extra: object = {}) =>
  entryOf('order', { state, lines, ...extra })
const need = (made: Kit, key: string) => made.needs.find((one) => one.key === key)!

test('a pump body needs its adaptor plate, pulley, key, studs, gaskets, clips and O-ring, and says what is asked', () => {
  const made = kit([renewed('sea-pump-body')])
  expect(keys(made.needs)).toEqual([
    'sea-pump-body',
    ...['spacer-or-adaptor-plate', 'pulley', 'key', 'stud-with-nut', 'gasket', 'hose-clip', 'o-ring'].map(
      (piece) => `sea-pump-body/${piece}`,
    ),
  ])
  expect(need(made, 'sea-pump-body').asks.map(({ question }) => question.id)).toEqual(
    expect.arrayContaining([
      'turning-direction',
      'port-angle',
      'pulley-fitted',
      'pulley-line',
      'adaptor-needed',
    ]),
  )
  expect(need(made, 'sea-pump-body/gasket')).toMatchObject({ count: 2, spares: 1, always: true, stops: true })
  expect(made.stops.map(({ key, lacks }) => [key, lacks])[0]).toEqual([
    'sea-pump-body/spacer-or-adaptor-plate',
    'settle',
  ])
})

test('what the log tells answers the questions: the set, its space, a reading, particulars, and the last of each counts', () => {
  const made = kit(
    [renewed('excitation-capacitor'), renewed('exhaust-hose'), renewed('fuel-solenoid')],
    [
      entryOf('set', { hertz: 50, fuelSolenoid: 'energised-to-run' }),
      entryOf('space', { exhaustHoseMm: 51 }),
      entryOf('reading', {
        test: 'capacitor-test',
        values: [{ name: 'capacitance', value: 27, unit: 'uF' }],
        conditions: [{ name: 'marked', value: 30, unit: 'uF' }],
      }),
      entryOf('particulars', {
        part: 'excitation-capacitor',
        answers: [{ question: 'capacitor-volts', answer: '400 V' }],
      }),
      entryOf('particulars', {
        part: 'excitation-capacitor',
        answers: [{ question: 'capacitor-volts', answer: '450 V, class B' }],
      }),
    ],
  )
  const answers = (key: string) =>
    Object.fromEntries(need(made, key).asks.map(({ question, known }) => [question.id, known?.answer]))
  expect(answers('excitation-capacitor')).toMatchObject({
    capacitance: '30 µF',
    'capacitor-volts': '450 V, class B',
    'rated-hertz': '50 Hz',
    'capacitor-size': undefined,
  })
  expect(answers('exhaust-hose')).toMatchObject({ 'exhaust-bore': '51 mm' })
  expect(answers('fuel-solenoid')).toMatchObject({ 'solenoid-kind': 'energised to run' })
})

test('a piece that is told as not needed is left out; one that other parts need too is bought once', () => {
  const none = entryOf('particulars', {
    part: 'sea-pump-body',
    answers: [{ question: 'adaptor-needed', answer: 'none: it bolts straight on' }],
  })
  expect(keys(kit([renewed('sea-pump-body')], [none]).needs)).not.toContain(
    'sea-pump-body/spacer-or-adaptor-plate',
  )
  const both = kit([renewed('coolant-pump'), renewed('pulleys-and-guard'), renewed('drive-belt')])
  expect(keys(both.needs).filter((key) => key.endsWith('belt'))).toEqual(['drive-belt'])
  expect(need(both, 'drive-belt').alsoFor).toEqual(['coolant-pump', 'pulleys-and-guard'])
  const two = kit([renewed('coolant-pump'), renewed('pulleys-and-guard')])
  expect(keys(two.needs).filter((key) => key.endsWith('belt'))).toEqual(['coolant-pump/drive-belt'])
})

test('only opened, a part itself is not bought, its gaskets are; looked at or topped up, nothing is', () => {
  const opened = kit([{ part: 'coolant-pump', did: 'cleaned', isDone: false }])
  expect(keys(opened.needs)).toContain('coolant-pump/gasket')
  expect(keys(opened.needs)).not.toContain('coolant-pump')
  expect(opened.needs.every(({ always }) => always)).toBe(true)
  expect(kit([{ part: 'coolant', did: 'topped-up', isDone: false }])).toMatchObject({
    needs: [],
    nothingFor: ['coolant'],
  })
})

test('what goes to the winding shop does not stand against beginning; what goes with it does', () => {
  const rewind = kit([renewed('stator-winding')])
  expect(need(rewind, 'stator-winding')).toMatchObject({ sentAway: true, supplier: 'winding' })
  expect(keys(rewind.stops)).not.toContain('stator-winding')
  expect(keys(rewind.stops)).toContain('stator-winding/marked-lead-lug')
})

test('do not begin while a piece differs, is missing, late or unchecked, the worst first; then nothing stands against it', () => {
  const parts = [renewed('anode'), renewed('thermostat'), renewed('drive-belt'), renewed('start-battery')]
  const entries = [
    line('ordered', [{ part: 'anode' }], { expected: '2026-11-20' }),
    line('ordered', [{ part: 'thermostat' }, { part: 'thermostat', piece: 'housing-gasket' }]),
    line('received', [{ part: 'thermostat' }, { part: 'thermostat', piece: 'housing-gasket' }]),
    line('checked', [
      { part: 'thermostat', fits: false, differs: 'opens at 82, not at 71 degrees' },
      { part: 'thermostat', piece: 'housing-gasket', fits: true },
    ]),
    line('received', [{ part: 'start-battery' }]),
  ]
  const made = kit(parts, entries)
  expect(made.stops.map(({ key, lacks }) => [key, lacks])).toEqual([
    ['thermostat', 'does-not-match'],
    ['drive-belt', 'to-order'],
    ['anode', 'late'],
    ['start-battery', 'unchecked'],
  ])
  const checked = line(
    'checked',
    parts.map(({ part }) => ({ part, fits: true })),
  )
  expect(kit(parts, [...entries, checked]).stops).toEqual([])
  expect(kit(parts, [...entries, checked]).inconvenient.length).toBeGreaterThan(0)
})

test('a number that does not fit the old one says so as soon as it is ordered, and even where it was said to fit', () => {
  const old = entryOf('particulars', { part: 'outboard-bearing', number: '6305-2RS/C3' })
  const wrong = line('ordered', [{ part: 'outboard-bearing', number: '6205-2RS/C3' }])
  const made = kit([renewed('outboard-bearing')], [old, wrong])
  expect(made.stops[0]).toMatchObject({ key: 'outboard-bearing', lacks: 'does-not-match' })
  expect(made.stops[0]?.byNumber?.differences.map(({ what }) => what)).toEqual(['outside diameter', 'width'])
  const said = line('checked', [{ part: 'outboard-bearing', fits: true }])
  expect(kit([renewed('outboard-bearing')], [old, wrong, said]).stops[0]?.lacks).toBe('does-not-match')
  const right = line('ordered', [{ part: 'outboard-bearing', number: '6305 DDU C3' }])
  expect(need(kit([renewed('outboard-bearing')], [old, right]), 'outboard-bearing')).toMatchObject({
    lacks: 'on-the-way',
    byNumber: { verdict: 'fits' },
  })
})

test('who has counted the pieces of the set needs so many', () => {
  const counted = (answer: string) =>
    entryOf('particulars', {
      part: 'sea-water-hoses',
      piece: 'stainless-hose-clip',
      answers: [{ question: 'count', answer }],
    })
  const clips = (...entries: Entry[]) =>
    need(kit([renewed('sea-water-hoses')], entries), 'sea-water-hoses/stainless-hose-clip')
  expect(clips()).toMatchObject({ count: 12, counted: false })
  expect(clips(counted('8'))).toMatchObject({ count: 8, counted: true })
  expect(clips(counted('a few'))).toMatchObject({ count: 12, counted: false })
})

test('a size that was told in answer to a question is what the new one is held against', () => {
  const told = entryOf('particulars', {
    part: 'sea-pump-seal',
    answers: [{ question: 'seal-size', answer: '16x30x7' }],
  })
  const ordered = line('ordered', [{ part: 'sea-pump-seal', number: '16-32-7' }])
  expect(need(kit([renewed('sea-pump-seal')], [told, ordered]), 'sea-pump-seal')).toMatchObject({
    oldNumber: '16x30x7',
    lacks: 'does-not-match',
    byNumber: { standard: 'ISO 6194-1' },
  })
})

test('done parts need nothing more, and what is ordered beyond the kit is told', () => {
  const made = kit(
    [{ ...renewed('anode'), isDone: true }, renewed('drive-belt')],
    [line('ordered', [{ part: 'drive-belt', piece: 'belt-dressing' }], { job: 'pump' })],
  )
  expect(keys(made.needs)).toEqual(['drive-belt', 'drive-belt/tension-bolt'])
  expect(made.done).toEqual(['anode'])
  expect(made.besides.map(({ key }) => key)).toEqual(['drive-belt/belt-dressing'])
})

test('the wrong part: its chance and lead time of the catalogue, the wait at the price of a day', () => {
  const withoutPower = [
    {
      months: [11],
      curve: [
        { days: 1, price: 30 },
        { days: 5, price: 230 },
      ],
    },
  ]
  // by hand: 1 day 30, then 50 a day; 15 days: 30 + 14 × 50
  expect(priceOfWait({ withoutPower }, { days: 15, month: 11 })).toBeCloseTo(730)
  expect(priceOfWait({ withoutPower }, { days: 0.5, month: 11 })).toBeCloseTo(15)
  expect(priceOfWait({ withoutPower }, { days: 15, month: 1 })).toBe(0)
  expect(priceOfWait({}, { days: 15, month: 11 })).toBeUndefined()
  expect(chanceOfAny([0.25, 0.2])).toBeCloseTo(0.4)
  expect(chanceOfAny([])).toBe(0)
  const { wrong } = kit([renewed('sea-pump-body'), renewed('drive-belt')])
  expect(wrong.parts).toEqual([
    { part: 'sea-pump-body', chance: 0.25, days: 14, piece: priceOf('sea-pump-body') },
    { part: 'drive-belt', chance: 0.15, days: 6, piece: priceOf('drive-belt') },
  ])
  expect(wrong.anyChance).toBeCloseTo(1 - 0.75 * 0.85)
})

function priceOf(part: string): number {
  return catalogue.parts.find(({ id }) => id === part)!.price.original.typical
}

const somePart = fc.constantFrom(...kits.kits.map(({ part }) => part))

test('of any parts: everything listed comes from the kits, no piece twice, and with all of it checked nothing stands against it', () => {
  fc.assert(
    fc.property(fc.uniqueArray(somePart, { minLength: 1, maxLength: 6 }), (parts) => {
      const asked = parts.map(renewed)
      const made = kit(asked)
      expect(new Set(keys(made.needs)).size).toBe(made.needs.length)
      for (const part of parts) expect(keys(made.needs)).toContain(part)
      for (const one of made.needs) expect(one.count).toBeGreaterThan(0)
      const all = line(
        'checked',
        made.needs.map(({ part, piece }) => ({ part, ...(piece && { piece }), fits: true })),
      )
      const after = kit(asked, [all])
      expect([...after.stops, ...after.inconvenient]).toEqual([])
      expect(after.wrong.parts).toEqual([])
    }),
    { numRuns: 40 },
  )
})
