import { existsSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { answerForm } from './json-forms.js'
import { findUnmarked } from './leads.js'
import { showLinks } from './links.js'
import { showCompared } from './links-compared.js'
import { showWiredFor } from './links-wired.js'
import { addEntry } from './log.js'
import type { Result } from './result.js'

const folder = mkdtempSync(join(tmpdir(), 'gensettle-'))

/** The answer as it is printed, which must have the form that is published. */
function answered(result: Result): { readonly json: Record<string, unknown>; readonly text: string } {
  if (!result.ok) throw new Error(JSON.stringify(result.problems))
  const json = JSON.parse(JSON.stringify(result.json)) as Record<string, unknown>
  expect(answerForm.safeParse(json).error?.issues ?? []).toEqual([])
  return { json, text: result.text }
}

function refused(result: Result): string[] {
  return result.ok ? [] : result.problems.map(({ code, path }) => `${code} ${path}`)
}

test('a pattern is told in volts, ohms and amps, and drawn on a page that needs nothing else', () => {
  const html = join(folder, 'star.html')
  const { json, text } = answered(
    showLinks({ pattern: 'series-star', emf: 120, amps: 20, resistance: 0.2, marks: 'iec', html }),
  )
  expect(json).toMatchObject({ type: 'gensettle/links', pattern: 'series-star', loops: [], findings: [] })
  expect(text).toContain('U2-U5, V2-V5, W2-W5, U6-V6-W6')
  expect(text).toMatch(/L1 and L2 +415\.7 V +0\.8 Ω/)
  expect(text).toMatch(/all lines alike +20 A +14\.4 kVA, 100 in 100/)
  const page = readFileSync(html, 'utf8')
  expect(page).not.toMatch(/<script|<link|<img|url\(|@import/)
  expect(page).toContain('<svg class="links"')
  expect(page).toContain('>U6<')
  expect(refused(showLinks({ pattern: 'series-star', html }))).toEqual(['already-there --html'])
})

test('a file of joined leads is known again as a pattern, or told to be wrong', () => {
  const file = join(folder, 'found.txt')
  writeFileSync(file, 'winding: four-leads\njoined: T2-T3\nlines: L1=T1, N=T2, L2=T4\nemf: 120\n')
  const loaded = answered(showLinks({ joined: file, load: 'L1-N 12, L2-N 48', open: ['n'], resistance: 0 }))
  expect(loaded.json).toMatchObject({ pattern: 'halves-series-three-wire' })
  expect(loaded.text).toMatch(/L1 to N +12 +48\.0/)
  const { text } = answered(
    showLinks({
      winding: 'four-leads',
      leads: 'T2-T4',
      lines: 'L=T1, N=T3',
      sensing: 'S1=T1, S2=T3',
      setTo: 230,
    }),
  )
  expect(text).toContain('against one another')
  expect(text).toContain('drives the field to its limit')
})

test('all that is wrong is told at once, and nothing is written', () => {
  const html = join(folder, 'never.html')
  expect(refused(showLinks({ winding: 'four-leads', leads: 'T1-T9, T2', lines: 'L', html }))).toEqual([
    'unknown-lead joined',
    'wrong-form joined',
    'wrong-form lines',
  ])
  expect(existsSync(html)).toBe(false)
  expect(refused(showLinks({ pattern: 'tea' }))).toEqual(['unknown-pattern --pattern'])
  expect(refused(showLinks({ pattern: 'series-star', leads: 'T1-T2' }))).toEqual([
    'contradiction --pattern, --joined, --leads',
  ])
  expect(refused(showLinks({ joined: join(folder, 'none.txt') }))).toEqual(['no-such-file --joined'])
  expect(refused(showLinks({ pattern: 'halves-series', load: 'L-M 3', open: ['q'] }))).toEqual([
    'unknown-line --load',
    'unknown-line --open',
  ])
  expect(refused(showWiredFor({ wiredFor: 'tea', emf: 120 }))).toEqual([
    'unknown-name --wired-for',
    'missing --winding',
    'missing --emf, --hertz',
  ])
})

test('every pattern and supply is listed with where it comes from', () => {
  const { json, text } = answered(showLinks({}))
  for (const { id } of json.patterns as { id: string }[]) expect(text).toContain(id)
  for (const { id } of json.supplies as { id: string }[]) expect(text).toContain(id)
})

test('wired for another supply: the links, and all that hangs on the change', () => {
  const { json, text } = answered(
    showWiredFor({
      wiredFor: '240-60',
      now: '230-50',
      winding: 'twelve-leads',
      emf: 120,
      hertz: 60,
      rpm: 1500,
      kva: 10,
    }),
  )
  expect(json).toMatchObject({
    ways: [{ pattern: 'double-delta', fits: 'as-made' }, {}, {}],
    move: { rpm: { after: 1800 } },
  })
  expect(text).toContain('Joined: T1-T6, T3-T5, T2-T4-T7-T12, T8-T10, T9-T11')
  expect(text).toContain('leave the set')
})

test('leads as found against leads as left, of files and of the log', async () => {
  const write = (name: string, text: string) => {
    writeFileSync(join(folder, name), `winding: four-leads\n${text}`)
    return join(folder, name)
  }
  const found = write('before.txt', 'joined: T2-T3\nlines: L=T1, N=T4\nsensing: S1=T1, S2=T4\nemf: 115\n')
  const left = write('after.txt', 'joined: T2-T4\nlines: L=T1, N=T3\nsensing: S1=T1, S2=T3\n')
  const html = join(folder, 'compared.html')
  const { json, text } = answered(await showCompared({ found, left, html }))
  expect(json).toMatchObject({ found: { pattern: 'halves-series' }, left: { pattern: null } })
  expect(text).toMatch(/Stop.* Do not start it\. As left, L to N: 0 V; as found: 230 V/)
  expect(text).toMatch(/T2 +with T3 +with T4 +with T3/)
  expect(readFileSync(html, 'utf8')).toMatch(/>gone<[\s\S]*>new</)
  expect(answered(await showCompared({ found, left: found })).text).toContain('As left is as found.')
  expect(refused(await showCompared({ found, left: join(folder, 'no.txt') }))).toEqual([
    'no-such-file --left',
  ])
  expect(refused(await showCompared({ left }))).toEqual(['missing --found'])

  const data = mkdtempSync(join(tmpdir(), 'gensettle-'))
  const add = (kind: 'set' | 'links', flags: Record<string, string[]>, from: string) =>
    addEntry({ kind, bare: [], flags }, { data, boat: 'petrel', set: 'main', from })
  answered(await add('set', { 'rating-kw': ['7'], volts: ['230'], built: ['2004'] }, '2020-01-01'))
  expect(refused(await showCompared({ data, boat: 'petrel' }))).toEqual(['missing --boat'])
  const joined = { winding: ['four-leads'], joined: ['T1-T3,T2-T4'], lines: ['L=T1,N=T2'] }
  answered(await add('links', { ...joined, state: ['as-found'] }, '2026-11-15'))
  expect(answered(await showCompared({ data, boat: 'petrel' })).text).toContain(
    'As left: nothing is entered yet.',
  )
  answered(await add('links', { ...joined, joined: ['T1-T3'], state: ['as-left'] }, '2026-12-09'))
  const half = answered(await showCompared({ data, boat: 'petrel', resistance: 0.3 }))
  expect(half.text).toContain('No voltmeter finds that.')
  expect(half.text).toMatch(/L to N, through the copper +0\.15 Ω +0\.3 Ω/)
})

test('unmarked leads: what to measure next, then which is which', () => {
  const asked = { winding: 'four-leads', pairs: 'a-b 0.31, c-d 0.36' }
  const first = answered(findUnmarked(asked))
  expect(first.json).toMatchObject({ left: 2, next: { join: ['a', 'c'], read: ['b', 'd'] } })
  expect(first.text).toContain('Ohms differ by more than 5 in 100')
  const found = answered(findUnmarked({ ...asked, each: 20, readings: 'a-c 40', marks: 'iec' }))
  expect(found.json).toMatchObject({ left: 1, next: null })
  expect(found.json.marks).toEqual([
    { lead: 'a', mark: 'U1' },
    { lead: 'b', mark: 'U2' },
    { lead: 'd', mark: 'U5' },
    { lead: 'c', mark: 'U6' },
  ])
  expect(refused(findUnmarked({ ...asked, each: 20, readings: 'a-c 28' }))).toEqual(['unclear --readings'])
  expect(refused(findUnmarked({ ...asked, readings: 'a-c 28' }))).toEqual(['missing --each'])
  expect(refused(findUnmarked({ winding: 'tea', pairs: '' }))).toEqual(['unknown-winding --winding'])
})
