import { existsSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { answerForm } from './json-forms.js'
import { findUnmarked } from './leads.js'
import { showLinks } from './links.js'
import { showWiredFor } from './links-wired.js'
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
