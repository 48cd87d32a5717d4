import fc from 'fast-check'
import { expect, test } from 'vitest'
import { shippedCatalogue, shippedLimits } from '../../test/shipped-limits.js'
import { trialEntry } from '../../test/trial-log.js'
import { neverPassedOver } from '../catalogue/passable.js'
import { deeds } from '../logbook/bodies-work.js'
import type { Entry } from '../logbook/kinds.js'
import { registerOf } from '../register/register.js'
import { linesBarring, type Owed, owedOf } from './owed.js'
import { reportOf } from './report.js'
import type { Readings } from './test-type.js'
import { proofTestOf, proofTests } from './tests.js'

const { owed, links, stopLines } = shippedCatalogue
function owedAfter(entries: readonly Entry[], asOf = '2020-12-31'): Owed {
  const register = registerOf({ entries, boat: 'trial', set: 'main', asOf, catalogue: shippedCatalogue })
  return owedOf({ entries, register, owed, stopLines, links, limits: shippedLimits })
}

const day = (n: number) => `2020-06-${String(n).padStart(2, '0')}`
const work = (n: number, part: string, did: (typeof deeds)[number]) =>
  trialEntry(
    n,
    'work',
    { parts: [{ part, did }], by: 'workshop', why: 'found' },
    { from: day(n), noted: `2024-01-01T12:00:${String(n).padStart(2, '0')}Z` },
  )

/** A reading of a test, from its fields. */
function read(n: number, id: string, readings: Readings, part?: string): Entry {
  const of = proofTestOf(id)!
  const values = of.fields.flatMap((field) => {
    const value = readings[field.id]
    return field.kind === 'number' && typeof value === 'number'
      ? [{ name: field.id, value, unit: field.unit }]
      : []
  })
  const answers = of.fields.flatMap((field) => {
    const is = readings[field.id]
    return field.kind === 'choice' && typeof is === 'string' ? [{ name: field.id, is }] : []
  })
  return trialEntry(
    n,
    'reading',
    { test: id, values, ...(answers.length > 0 ? { answers } : {}), ...(part === undefined ? {} : { part }) },
    { from: day(n), noted: `2024-01-01T12:00:${String(n).padStart(2, '0')}Z` },
  )
}

const isOf = ({ tests }: Owed, id: string) => tests.find((one) => one.test === id)?.is
const gate = ({ gates }: Owed, id: string) => gates.find(({ stage }) => stage === id)!
const dry = { 'winding-to-frame': 40, winding: 30 }
const wet = { 'winding-to-frame': 1.8, winding: 18 }

const leads = (n: number, state: 'as-found' | 'as-left', joined: string[], lines: string[]) =>
  trialEntry(
    n,
    'links',
    { state, winding: 'four-leads', marks: 'nema', joined, lines },
    { from: day(n), noted: `2024-01-01T12:00:${String(n).padStart(2, '0')}Z` },
  )
const inSeries = [['T2-T3'], ['L=T1', 'N=T4']] as [string[], string[]]
const inParallel = [
  ['T1-T3', 'T2-T4'],
  ['L=T1', 'N=T2'],
] as [string[], string[]]
const opposed = [['T2-T4'], ['L=T1', 'N=T3']] as [string[], string[]]
const set230 = trialEntry(1, 'set', { ratingKw: 7, volts: [230], hertz: 50, built: '2004' }, { from: day(1) })
const asMeant = { photographed: 'yes', differences: 'meant', sensing: 'yes' }
const byLinks = (...entries: readonly Entry[]) =>
  owedAfter([set230, ...entries]).lines.find(({ line }) => line === 'links-unproven')?.why

test('leads put back otherwise than they were found bar energising, until the links are proved', () => {
  const found = leads(2, 'as-found', ...inSeries)
  expect(byLinks(found)).toBeUndefined()
  expect(byLinks(found, leads(3, 'as-left', ...inSeries))).toBeUndefined()
  const left = leads(3, 'as-left', ...inParallel)
  expect(byLinks(found, left)).toMatch(/^As left against as found: /)
  expect(gate(owedAfter([set230, found, left]), 'energising')).toMatchObject({ open: false })
  expect(isOf(owedAfter([set230, found, left]), 'winding-links')).toBe('owed')
  const proved = read(4, 'winding-links', asMeant)
  expect(byLinks(found, left, proved)).toBeUndefined()
  const nothing = read(4, 'winding-links', { ...asMeant, differences: 'none' })
  expect(byLinks(found, left, nothing)).toMatch(/^As left against as found: /)
})

test('to enter them as found once more proves nothing; to find them otherwise than proved opens it again', () => {
  const [found, left] = [leads(2, 'as-found', ...inSeries), leads(3, 'as-left', ...inParallel)]
  expect(byLinks(found, left, leads(5, 'as-found', ...inParallel))).toMatch(/^As found against as found: /)
  const proved = read(4, 'winding-links', asMeant)
  expect(byLinks(found, left, proved, leads(5, 'as-found', ...inParallel))).toBeUndefined()
  expect(byLinks(found, left, proved, leads(5, 'as-found', ...inSeries))).toMatch(
    /^As found against as proved: /,
  )
})

test('leads that are joined wrongly bar energising, with nothing to compare them with', () => {
  expect(byLinks(leads(2, 'as-found', ...opposed))).toMatch(/^As found: .*no volts between L and N/)
  expect(byLinks(leads(2, 'as-left', ['T1-T2'], ['L=T1', 'N=T4']))).toMatch(/^As left: .*short inside/)
  expect(byLinks(leads(2, 'as-left', ...inParallel))).toBeUndefined()
})

test('the table names tests, bands, parts, deeds and lines that exist, and every test once', () => {
  const listed = owed.stages.flatMap(({ tests }) => tests)
  expect([...listed].sort()).toEqual(proofTests.map(({ id }) => id).sort())
  const parts = new Set(shippedCatalogue.parts.map(({ id }) => id))
  for (const rule of owed.rules) {
    for (const part of rule.parts) expect(parts, rule.id).toContain(part)
    for (const did of rule.did) expect(deeds, rule.id).toContain(did)
    for (const id of rule.tests) expect(listed, rule.id).toContain(id)
  }
  for (const { id: line, opensByTests } of stopLines) {
    for (const { test: id, bands } of opensByTests) {
      const of = proofTestOf(id)!
      for (const band of bands) {
        expect(of.bands.find((one) => one.id === band)?.verdict, `${line} ${id} ${band}`).toBe('fail')
      }
    }
  }
})

test('without work nothing is owed, and a log that tells nothing opens every step in those words', () => {
  const { tests, gates } = owedAfter([])
  expect(tests).toEqual([])
  expect(gates.map(({ open }) => open)).toEqual([true, true, true, true])
  expect(gates[1]?.says).toBe('Nothing that the log tells of stands against energising it.')
})

test('a rewound winding owes dead tests, the gap, the first run, load and a look after: in this order', () => {
  const { tests, gates } = owedAfter([work(1, 'stator-winding', 'reconditioned')])
  expect(tests.map(({ test: id }) => id)).toEqual([
    'turn-by-hand',
    'winding-links',
    'winding-resistance',
    'insulation-test',
    'bond-test',
    'neutral-bond',
    'breaker-of-set',
    'gap-volts',
    'no-load',
    'voltage-balance',
    'touch-volts',
    'trip-test',
    'residual-current',
    'carbon-monoxide',
    'load-step',
    'vibration',
    'load-run',
    'insulation-hot',
    'recheck-first',
    'recheck-second',
  ])
  expect(tests.find(({ test: id }) => id === 'insulation-test')).toMatchObject({
    part: 'stator-winding',
    stage: 'energising',
    is: 'owed',
    waitsFor: [],
    because: [{ rule: 'winding-out', part: 'stator-winding', date: '2020-06-01' }],
  })
  expect(gates.map(({ open }) => open)).toEqual([false, false, false, false])
  expect(gates[0]?.says).toMatch(/^Not yet: before turning it, this is owed: turned by hand/)
})

test('the first run waits for the dead tests, each of the first run for the one before it', () => {
  const owedTests = owedAfter([work(1, 'stator-winding', 'relinked')]).tests
  const waits = (id: string) => owedTests.find((one) => one.test === id)!.waitsFor
  expect(waits('gap-volts')).toContain('insulation resistance of a winding to the frame (stator winding)')
  expect(waits('gap-volts')).not.toContain('volts and frequency, unloaded')
  expect(waits('no-load')).toContain('volts across the gap that a link will close')
  expect(waits('load-run')).toContain('volts on metalwork')
})

test('a reading passes what is owed; one from before the work does not', () => {
  const after = owedAfter([
    work(2, 'stator-winding', 'cleaned'),
    read(3, 'insulation-test', dry, 'stator-winding'),
  ])
  expect(isOf(after, 'insulation-test')).toBe('passed')
  const before = owedAfter([
    read(1, 'insulation-test', dry, 'stator-winding'),
    work(2, 'stator-winding', 'cleaned'),
  ])
  expect(isOf(before, 'insulation-test')).toBe('owed')
  const other = owedAfter([
    work(2, 'stator-winding', 'cleaned'),
    read(3, 'insulation-test', dry, 'rotor-winding'),
  ])
  expect(isOf(other, 'insulation-test')).toBe('owed')
  const untold = owedAfter([
    work(2, 'stator-winding', 'cleaned'),
    read(3, 'insulation-test', { 'winding-to-frame': 40 }, 'stator-winding'),
  ])
  expect(isOf(untold, 'insulation-test')).toBe('cannot tell')
})

test('a wet winding opens its stop line, bars energising in words, and closes with a reading', () => {
  const entries = [work(1, 'stator-winding', 'cleaned'), read(2, 'insulation-test', wet, 'stator-winding')]
  const now = owedAfter(entries)
  expect(isOf(now, 'insulation-test')).toBe('failed')
  expect(now.lines).toMatchObject([
    { line: 'insulation', bars: 'energising', never: false, closedBy: ['insulation-test', 'insulation-hot'] },
  ])
  expect(gate(now, 'energising').says).toMatch(
    /^Stop before energising it\. Do not energise the set: the stator winding reads 0\.392/,
  )
  expect(now.tests.find((one) => one.test === 'no-load')?.waitsFor[0]).toBe('stop line: insulation too low')
  const later = owedAfter([...entries, read(3, 'insulation-test', dry, 'stator-winding')])
  expect(later.lines).toEqual([])
  expect(isOf(later, 'insulation-test')).toBe('passed')
})

test('a reading without its temperature cannot be told, and still stops where it is too low as it stands', () => {
  const now = owedAfter([read(1, 'insulation-test', { 'winding-to-frame': 0.4 }, 'stator-winding')])
  expect(now.results[0]?.judgement.verdict).toBe('cannot tell')
  expect(now.lines.map(({ line }) => line)).toEqual(['insulation'])
})

const passOver = (n: number, about: string) =>
  trialEntry(
    n,
    'passed-over',
    { about, because: 'no meter until spring' },
    { from: day(n), noted: `2024-01-01T12:00:${String(n).padStart(2, '0')}Z` },
  )

test('a reason passes over what may be, stays in sight, and never lifts what no reason lifts', () => {
  const low = [read(1, 'insulation-test', wet, 'stator-winding')]
  const line = owedAfter([...low, passOver(2, 'insulation')])
  expect(line.lines[0]?.passedOver).toMatchObject({ because: 'no meter until spring' })
  expect(gate(line, 'energising').open).toBe(true)
  const bond = [read(1, 'bond-test', { bond: 4, leads: 0.1, what: 'frame' }), passOver(2, 'earth-path')]
  expect(owedAfter(bond).lines[0]).toMatchObject({ line: 'earth-path', never: true })
  expect(owedAfter(bond).lines[0]).not.toHaveProperty('passedOver')
  expect(gate(owedAfter(bond), 'energising').open).toBe(false)
})

test('a test that is owed may be passed over too, but for those that close such a line', () => {
  const after = owedAfter([work(1, 'mounts', 'renewed'), passOver(2, 'vibration')])
  expect(isOf(after, 'vibration')).toBe('passed over')
  const exhaust = owedAfter([work(1, 'exhaust-elbow', 'renewed'), passOver(2, 'carbon-monoxide')])
  expect(isOf(exhaust, 'carbon-monoxide')).toBe('owed')
  expect([...neverPassedOver(stopLines)].sort()).toEqual([
    'bond-test',
    'carbon-monoxide',
    'gap-volts',
    'stray-volts',
    'touch-volts',
    'turn-by-hand',
    'winding-links',
    'winding-resistance',
  ])
  const earlier = owedAfter([passOver(1, 'vibration'), work(2, 'mounts', 'renewed')])
  expect(isOf(earlier, 'vibration')).toBe('owed')
})

test('each source has its own neutral bond: a good one of the set does not close that of the inverter', () => {
  const bonds = (n: number, source: string, count: number) =>
    read(n, 'neutral-bond', { system: 'earthed', source, 'neutral-switched': 'yes', bonds: count })
  const entries = [work(1, 'changeover-switch', 'renewed'), bonds(2, 'inverter', 0), bonds(3, 'set', 1)]
  expect(isOf(owedAfter(entries), 'neutral-bond')).toBe('failed')
  expect(owedAfter(entries).lines.map(({ line }) => line)).toEqual(['neutral-unknown'])
  expect(isOf(owedAfter([...entries, bonds(4, 'inverter', 1)]), 'neutral-bond')).toBe('passed')
})

test('running proves work on the engine, never work on what can kill', () => {
  const hours = (n: number, meterHours: number) => trialEntry(n, 'hours', { meterHours }, { from: day(n) })
  const ran = [
    hours(1, 1000),
    work(2, 'sea-pump-impeller', 'renewed'),
    work(3, 'terminal-block', 'opened'),
    hours(20, 1060),
  ]
  const { tests } = owedAfter(ran, '2020-06-20')
  expect(tests.some(({ test: id }) => id === 'exhaust-temperature')).toBe(false)
  expect(tests.some(({ test: id }) => id === 'bond-test')).toBe(true)
  expect(owedAfter(ran, '2022-12-31').tests).toEqual([])
})

test('a line that stands open in a case is open here too, until the case is closed or clears it', () => {
  const inCase = (n: number, is: 'open' | 'cleared') =>
    trialEntry(
      n,
      'case',
      { name: 'spring', lines: [{ line: 'flooding', is }], symptoms: [], checks: [] },
      { from: day(n) },
    )
  expect(owedAfter([inCase(1, 'open')]).lines).toMatchObject([{ line: 'flooding', bars: 'turning' }])
  expect(owedAfter([inCase(1, 'cleared')]).lines).toEqual([])
})

test('a danger found and not made safe opens its line', () => {
  const entries = [
    trialEntry(
      1,
      'finding',
      { about: [{ part: 'exhaust-elbow', mode: 'corrode' }], verdict: 'defect-seen' },
      { from: day(1) },
    ),
  ]
  const register = registerOf({
    entries,
    boat: 'trial',
    set: 'main',
    asOf: day(2),
    catalogue: shippedCatalogue,
  })
  const dangers = register.openDangers.map(({ danger }) => danger)
  const lines = owedAfter(entries, day(2)).lines
  expect(dangers.length === 0 || lines.length > 0).toBe(true)
})

test('whatever is passed, no later step opens while an earlier one is shut', () => {
  const someWork = fc.constantFrom(
    work(1, 'stator-winding', 'relinked'),
    work(1, 'exhaust-elbow', 'renewed'),
    work(1, 'terminal-block', 'opened'),
    work(1, 'head-and-gasket', 'renewed'),
  )
  const some = fc.subarray([
    read(2, 'turn-by-hand', { turns: 'free', water: 'no' }),
    read(3, 'insulation-test', dry, 'stator-winding'),
    read(4, 'insulation-test', wet, 'stator-winding'),
    read(5, 'bond-test', { bond: 0.1, leads: 0.05, what: 'frame' }),
    read(6, 'touch-volts', { open: 40 }),
    read(7, 'carbon-monoxide', { highest: 2, leak: 'no', unwell: 'no' }),
  ])
  fc.assert(
    fc.property(someWork, some, (done, readings) => {
      const { gates, tests } = owedAfter([done, ...readings])
      const open = gates.map((one) => one.open)
      expect(open).toEqual([...open].sort((a, b) => Number(b) - Number(a)))
      for (const one of tests) expect(one.waitsFor).not.toContain(one.name)
    }),
    { numRuns: 40 },
  )
})

test('the report holds every test with what was read, its limits, and all that stands open', () => {
  const low = read(3, 'insulation-test', wet, 'stator-winding')
  const report = reportOf(owedAfter([work(2, 'stator-winding', 'cleaned'), low, passOver(4, 'no-load')]))
  expect(report.rows).toMatchObject([
    {
      name: 'Insulation resistance of a winding to the frame',
      read: [
        'Winding to frame, 60 s after the volts came on: 1.8\u00a0MΩ',
        'Temperature of the winding itself: 18\u00a0°C',
      ],
    },
  ])
  expect(report.rows[0]?.limits.map(({ held }) => held)).toEqual(['seen', 'recalled'])
  expect(report.open[0]).toMatch(
    /^Stop line, Insulation too low: Do not energise the set: the stator winding/,
  )
  expect(report.open).toContain('Passed over: Volts and frequency, unloaded. no meter until spring')
  expect(report.open.some((line) => line.startsWith('Owed: Continuity from metal'))).toBe(true)
  expect(report.open.some((line) => line.startsWith('Failed: Insulation resistance'))).toBe(true)
})

test('a line that was passed over stands in the report with the reason', () => {
  const low = read(3, 'insulation-test', wet, 'stator-winding')
  const report = reportOf(owedAfter([low, passOver(4, 'insulation')]))
  expect(report.open[0]).toMatch(
    /^Stop line passed over on 2020-06-04, Insulation too low: .*The reason: no meter until spring$/,
  )
})

test('every danger that can be found opens a line, and one of a trip not that of a residual-current device', () => {
  const opened = new Set(
    stopLines.flatMap(({ opensByDangers }) => opensByDangers.map(({ danger }) => danger)),
  )
  expect(shippedCatalogue.dangers.filter(({ id }) => !opened.has(id))).toEqual([])
  const about = [{ part: 'oil-pressure-trip', mode: 'asleep' }]
  const asleep = trialEntry(1, 'finding', { about, verdict: 'defect-seen' }, { from: day(1) })
  expect(owedAfter([asleep]).lines.map(({ line }) => line)).toEqual(['bypassed-trip'])
  expect(owedAfter([asleep]).lines[0]?.clearWhen).toEqual([
    'what was found at the oil pressure trip is mended or made safe, and entered',
  ])
})

test('a wet exhaust past its stop bars loading until it reads lower; the test itself does not wait for that', () => {
  const hot = (n: number, hose: number) => read(n, 'exhaust-temperature', { hose })
  const now = owedAfter([work(1, 'exhaust-elbow', 'renewed'), hot(2, 84)])
  expect(now.lines).toMatchObject([{ line: 'exhaust-heat', bars: 'load', never: false }])
  expect(gate(now, 'energising').says).not.toMatch(/^Stop/)
  expect(gate(now, 'load').says).toMatch(/^Stop before carrying load\. Stop the engine\. 84\u00a0°C/)
  const waits = now.tests.find((one) => one.test === 'exhaust-temperature')!.waitsFor
  expect(waits.filter((one) => one.startsWith('stop line'))).toEqual([])
  expect(owedAfter([hot(2, 84), hot(3, 52)]).lines).toEqual([])
  expect(owedAfter([hot(2, 75)]).lines).toEqual([])
})

test('an open line bars a live test that nobody owes, never a dead one, nor the one that closes it', () => {
  const { lines } = owedAfter([read(1, 'bond-test', { bond: 4, leads: 0.1, what: 'frame' })])
  const barring = (id: string) => linesBarring(id, { lines, owed }).map(({ line }) => line)
  expect(barring('touch-volts')).toEqual(['earth-path'])
  expect(barring('insulation-test')).toEqual([])
  expect(barring('bond-test')).toEqual([])
})
