import { expect, test } from 'vitest'
import { shippedKitFiles } from '../../test/shipped-kits.js'
import { shippedCatalogue as catalogue } from '../../test/shipped-limits.js'
import { trialEntry } from '../../test/trial-log.js'
import { openedWays } from '../catalogue/work-hours.js'
import type { Entry } from '../logbook/kinds.js'
import { limitsOf } from '../proof/limits.js'
import { owedOf } from '../proof/owed.js'
import { registerOf } from '../register/register.js'
import { setCatalogueOf } from '../register/set-kind-of.js'
import { insurerWants } from './insurer.js'
import { jobsOf } from './jobs.js'
import { type Kit, kitOf } from './kit.js'
import { jobSheetOf } from './sheet.js'

const at = { from: '2026-11-20', until: '2026-11-20' }
const known = [
  trialEntry(1, 'boat', { name: 'Trial', currency: 'EUR' }),
  trialEntry(2, 'set', { ratingKw: 10, volts: [230], hertz: 50, rpm: 1500, built: '2010' }),
]
const quote = trialEntry(
  3,
  'quote',
  {
    job: 'bearing',
    amount: 1000,
    tax: { included: true, percent: 20 },
    firmness: 'firm',
    subjectToStripDown: false,
    excludes: ['travel'],
    covers: {
      parts: [
        { part: 'outboard-bearing', did: 'renewed' },
        { part: 'drive-belt', did: 'renewed' },
      ],
    },
  },
  at,
)

function sheetOf(more: readonly Entry[], beside: { readonly kit?: Kit } = {}) {
  const entries = [...known, ...more]
  const register = registerOf({ entries, boat: 'trial', set: 'main', asOf: '2026-11-25', catalogue })
  const owed = owedOf({ ...catalogue, entries, register, limits: limitsOf(catalogue) })
  return jobSheetOf({
    register,
    job: jobsOf(entries, 'main', owed.tests)[0]!,
    catalogue,
    forSet: setCatalogueOf(register, catalogue).catalogue,
    owed,
    ...beside,
    demonstration: false,
    program: '0',
  })
}

const passage = (sheet: ReturnType<typeof sheetOf>, title: string) =>
  JSON.stringify(sheet.passages.find((one) => one.title === title)?.blocks ?? null)

test('each part is asked for, after its way in is open; what is opened is closed in reverse', () => {
  const order = passage(sheetOf([quote]), 'Order of work')
  const place = (words: string) => {
    const at = order.indexOf(words)
    if (at < 0) throw new Error(`the order must say "${words}"`)
    return at
  }
  for (const { part: id } of quote.body.covers.parts) {
    const { name, access } = catalogue.parts.find((part) => part.id === id)!
    for (const way of openedWays(catalogue.access, access.opens)) {
      expect(place(`Open: ${way.name}`)).toBeLessThan(place(`${name}: renew`))
      expect(place(`Close: ${way.name}`)).toBeGreaterThan(place(`${name}: renew`))
      for (const inner of way.includes) {
        const { name: outer } = catalogue.access.find((one) => one.id === inner)!
        expect(place(`Open: ${outer}`)).toBeLessThan(place(`Open: ${way.name}`))
        expect(place(`Close: ${outer}`)).toBeGreaterThan(place(`Close: ${way.name}`))
      }
    }
  }
})

test('money is told with its spread: a firm quote’s, and what it leaves out', () => {
  const money = passage(sheetOf([quote]), 'Money')
  // median 1.02, log standard deviation 0.06 of a firm quote: 1,020; 1,020 e^(±1.2816 · 0.06)
  expect(money).toContain('about €1,020')
  expect(money).toContain('under €945')
  expect(money).toContain('over €1,100')
  expect(money).toContain('leaves out usually comes to')
})

test('the tests that its work will ask for are told before it is done, with how they stand after it', () => {
  const before = passage(sheetOf([quote]), 'Tests owed')
  expect(before).toContain('Vibration')
  const work = trialEntry(
    4,
    'work',
    { job: 'bearing', by: 'workshop', why: 'found', parts: quote.body.covers.parts },
    { from: '2026-11-22', until: '2026-11-22' },
  )
  expect(passage(sheetOf([quote, work]), 'Tests owed')).toBe(before)
})

test('pieces and tools come from the kit; what is not in hand stops the job before it is begun', () => {
  const entries = [...known, quote]
  const register = registerOf({ entries, boat: 'trial', set: 'main', asOf: '2026-11-25', catalogue })
  const forSet = setCatalogueOf(register, catalogue).catalogue
  const [job] = jobsOf(entries, 'main')
  const { terms } = register
  const kit = kitOf({
    job: job!,
    entries,
    set: 'main',
    asOf: '2026-11-25',
    kits: shippedKitFiles().kits,
    catalogue: forSet,
    terms,
  })
  const sheet = sheetOf([quote], { kit })
  expect(sheet.passages[0]).toMatchObject({
    title: 'Stop lines',
    blocks: [{ is: 'stop', text: expect.stringContaining('Do not begin') }],
  })
  const rows = JSON.parse(passage(sheet, 'Pieces'))[0].rows as string[][]
  expect(rows).toHaveLength(kit.needs.length)
  expect(rows.map(([name]) => name)).toContain('Drive belt')
})

test('an open stop line stands first', () => {
  expect(sheetOf([quote]).passages[0]!.title).toBe('What it is to do')
  const opening = new Set(
    catalogue.stopLines.flatMap(({ opensByDangers }) => opensByDangers.map(({ danger }) => danger)),
  )
  const about = catalogue.parts.flatMap(({ id: part, modes }) =>
    modes
      .filter(({ dangers }) => dangers.some((one) => opening.has(one)))
      .map(({ id: mode }) => ({ part, mode })),
  )
  const body = { about: about.slice(0, 1), verdict: 'defect-seen' as const, seen: 'soot at the joint' }
  const danger = trialEntry(5, 'finding', body, at)
  const first = sheetOf([quote, danger]).passages[0]!
  if (first.title !== 'Stop lines') throw new Error(`a stop line must stand first; found ${first.title}`)
  expect(first.blocks[0]).toMatchObject({ is: 'stop' })
})

test('a stop line that was passed over stands there with its reason', () => {
  const line = trialEntry(
    5,
    'case',
    {
      name: 'spring',
      lines: [{ line: 'flooding', is: 'open' }],
      symptoms: [],
      checks: [],
    },
    at,
  )
  const over = trialEntry(6, 'passed-over', { about: 'flooding', because: 'the leak is of the sink' }, at)
  expect(passage(sheetOf([quote, line, over]), 'Stop lines')).toContain('The reason: the leak is of the sink')
})

test('what an insurer wants says where it is from, and claims to have read nothing that was not read', () => {
  for (const { what, why, source, held } of insurerWants) {
    expect(what.length * why.length * source.length).toBeGreaterThan(0)
    expect(held === 'practice').toBe(source === 'practice')
    expect(['practice', 'recalled']).toContain(held)
  }
})
