import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import sharp from 'sharp'
import { expect, test } from 'vitest'
import type { ShopSheet } from '../proof/shop-sheet.js'
import { answerForm } from './json-forms.js'
import { addEntry } from './log.js'
import type { Result } from './result.js'
import { showShopSheet } from './shop-sheet.js'

const data = mkdtempSync(join(tmpdir(), 'gensettle-'))
const of = { data, boat: 'petrel', asOf: '2026-11-25' }

function answered(result: Result): {
  readonly sheet: ShopSheet
  readonly text: string
  readonly jobs: unknown
} {
  if (!result.ok) throw new Error(JSON.stringify(result.problems))
  const json = JSON.parse(JSON.stringify(result.json))
  expect(answerForm.safeParse(json).error?.issues ?? []).toEqual([])
  return { sheet: json.sheet, jobs: json.jobs, text: result.text }
}

function refused(result: Result): string[] {
  return result.ok ? [] : result.problems.map(({ code, path }) => `${code} ${path}`)
}

const titles = ({ passages }: ShopSheet) => passages.map(({ title }) => title)

test('jobs are what open quotes ask; leads that nobody wrote down are a stop', async () => {
  const { sheet, text, jobs } = answered(await showShopSheet({ data, boat: 'marram', asOf: '2026-11-25' }))
  expect(jobs).toEqual(['rewind-stator'])
  expect(sheet.invented).toContain('invented')
  expect(text).toContain('Joined: T2-T3. Out: L=T1, N=T4. Regulator: S1=T1, S2=T4.')
  const bare = answered(await showShopSheet({ data, boat: 'teasel', asOf: '2026-11-25', ask: ['test'] }))
  expect(bare.text).toContain('Stop. How the leads were joined is not in the log')
})

test('a sheet for a rewind: leads as found drawn, what is required, data, tests with limits, price', async () => {
  const photograph = join(data, 'terminals.png')
  writeFileSync(
    photograph,
    await sharp({ create: { width: 9, height: 6, channels: 3, background: '#444' } })
      .png()
      .toBuffer(),
  )
  const add = (kind: 'set' | 'links', flags: Record<string, string[]>, pictures: string[] = []) =>
    addEntry(
      { kind, bare: [], flags },
      { data, boat: 'petrel', set: 'main', from: '2026-10-01', photograph: pictures },
    )
  for (const written of [
    await addEntry(
      { kind: 'boat', bare: [], flags: { currency: ['EUR'] } },
      { data, boat: 'petrel', from: '2026-10-01' },
    ),
    await add('set', { 'rating-kw': ['7'], volts: ['230'], hertz: ['50'], rpm: ['1500'], built: ['2004'] }),
  ]) {
    if (!written.ok) throw new Error(JSON.stringify(written.problems))
  }
  expect(refused(await showShopSheet({ ...of, ask: ['tea'], linked: 'milk' }))).toEqual([
    'unknown-job --ask',
    'unknown-pattern --linked',
  ])
  expect(refused(await showShopSheet(of))).toEqual(['missing --ask'])
  expect(refused(await showShopSheet({ ...of, ask: ['test'], linked: 'halves-parallel' }))).toEqual([
    'contradiction --linked',
  ])
  await add(
    'links',
    {
      state: ['as-found'],
      winding: ['four-leads'],
      joined: ['T2-T3'],
      lines: ['L=T1,N=T4'],
      sensing: ['S1=T1,S2=T4'],
      labels: ['T2=blue sleeve'],
    },
    [photograph],
  )
  const scorched = join(data, 'scorched.png')
  writeFileSync(
    scorched,
    await sharp({ create: { width: 6, height: 9, channels: 3, background: '#222' } })
      .png()
      .toBuffer(),
  )
  const finding = { part: ['stator-winding'], 'defect-seen': ['scorched'] }
  await addEntry(
    { kind: 'finding', bare: [], flags: finding },
    { data, boat: 'petrel', set: 'main', from: '2026-10-02', photograph: [scorched, photograph] },
  )
  const html = join(data, 'sheet.html')
  const { sheet, text } = answered(
    await showShopSheet({ ...of, ask: ['rewind-stator, bearings'], askAbove: 2400, resistance: 0.31, html }),
  )
  expect(titles(sheet)).toEqual([
    'What it is',
    'What is asked',
    'Leads as found',
    'Volts and frequency required',
    'To be written down before stripping',
    'Core test',
    'Bearings and fits',
    'Balance',
    'Insulation and varnish',
    'Tests wanted',
    'Report to return',
    'Price above which to ask first',
    'Photographs',
    'Cautions',
  ])
  expect(text).toMatch(/L and N +230 V +0\.62 Ω/)
  expect(text).toContain('T2=blue sleeve')
  // 2 U + 1,000 V at 230 V; IEC 60034-1, recalled.
  expect(text).toContain('1460 V')
  // G 2.5 at 1,500 rpm: 2.5 mm/s over 157.08 1/s; ISO 21940-11, recalled.
  expect(text).toContain('15.9 g·mm')
  expect(text).toContain('2,400 EUR, tax in.')
  const page = readFileSync(html, 'utf8')
  expect(page).not.toMatch(/<script|<link|<img src="(?!data:)|url\(|@import|<button|<input/)
  for (const title of titles(sheet)) expect(page).toContain(`<h2>${title}</h2>`)
  expect(page.match(/<svg class="links"/g)).toHaveLength(2)
  expect(page.match(/<img src="data:image\/[a-z]+;base64,[^"]+" alt="1: leads as found">/g)).toHaveLength(1)
  expect(page).toContain('alt="2: stator winding, 2026-10-02"')
  expect(page).not.toContain('alt="3: ')
  expect(text).toMatch(/- 1: leads as found \([0-9a-f]{8}\)/)

  const anew = answered(await showShopSheet({ ...of, ask: ['dry-and-varnish'], linked: 'halves-parallel' }))
  expect(anew.text).toContain('halves in parallel, joined T1-T3, T2-T4')
  expect(anew.text).toMatch(/L and N +115 V/)
  expect(titles(anew.sheet)).not.toContain('Core test')
  expect(titles(answered(await showShopSheet({ ...of, ask: ['test'] })).sheet)).not.toContain('Balance')
})
