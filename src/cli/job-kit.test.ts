import { mkdtempSync, readFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { beforeAll, expect, test } from 'vitest'
import { showFits, showKit } from './job-kit.js'
import { answerForm } from './json-forms.js'
import { addEntry } from './log.js'
import type { Result } from './result.js'

const data = mkdtempSync(join(tmpdir(), 'gensettle-'))
const at = { data, boat: 'petrel', asOf: '2026-11-26' }

beforeAll(async () => {
  await addEntry({ kind: 'boat', bare: [], flags: { name: ['Petrel'], currency: ['EUR'] } }, at0)
  const flags = { 'rating-kw': ['7'], volts: ['230'], hertz: ['50'], rpm: ['1500'] }
  await addEntry({ kind: 'set', bare: [], flags }, { ...at0, set: 'main' })
  const decided = { job: ['pump'], parts: ['sea-pump-body:renewed;outboard-bearing:renewed'] }
  await add('decision', ['renew the pump'], decided)
  await add('particulars', ['outboard-bearing', '6305-2RS/C3'], {})
  await add('order', ['ordered'], { lines: ['outboard-bearing:::6205-2RS/C3'], job: ['pump'] })
})
const at0 = { data, boat: 'petrel', from: '2026-11-01' }
const add = (
  kind: 'decision' | 'order' | 'particulars',
  bare: readonly string[],
  flags: Readonly<Record<string, readonly string[]>>,
) => addEntry({ kind, bare, flags }, { ...at0, from: '2026-11-10', set: 'main' })

function told(result: Result) {
  if (!result.ok) throw new Error(JSON.stringify(result.problems))
  const value = JSON.parse(JSON.stringify(result.json)) as Record<string, unknown>
  expect(answerForm.safeParse(value).error?.issues ?? []).toEqual([])
  return { value, text: result.text }
}

test('the kit of a job says on top that a piece does not match, and answers in its form', async () => {
  const { value, text } = told(await showKit({ ...at }))
  expect(value).toMatchObject({ job: 'pump', begin: false })
  expect(text.split('\n')[0]).toBe(
    'pump: Do not begin: alternator outboard bearing does not match (by its number, outside diameter 52 mm, not 62 mm; width 15 mm, not 17 mm). 10 more pieces are not ready.',
  )
  expect(text).toMatch(/25 in 100/)
  expect(text).toMatch(/turning-direction .*: Which way does it turn/)
})

test('messages are grouped by supplier and tell the set, each piece, and what is known of it', async () => {
  const { text } = told(await showKit({ ...at, messages: true }))
  expect(text).toMatch(/Engine parts/)
  expect(text).toMatch(/Bearing and seal house/)
  expect(text).toMatch(/7 kW, 230 V, 50 Hz, 1500 rpm/)
  expect(text).toMatch(/number on the old one: 6305-2RS\/C3/)
  expect(text).toMatch(/Gasket, for .*: 2 \+ 1 spare/)
  expect(text).not.toMatch(/Petrel/)
})

test('a page to print has a passage for each supplier, and room for what is not known', async () => {
  const html = join(data, 'kit.html')
  told(await showKit({ ...at, html }))
  const page = readFileSync(html, 'utf8')
  expect(page).toContain('<h2>Hose and clips</h2>')
  expect(page).toContain('<span class="blank">turning direction, seen from the drive end</span>')
  const again = await showKit({ ...at, html })
  expect(again).toMatchObject({ ok: false, problems: [{ path: '--html' }] })
})

test('parts without a job have a kit too; what is unknown is told all at once', async () => {
  const { value } = told(await showKit({ ...at, part: ['anode,drive-belt'] }))
  expect(value).toMatchObject({ job: null, begin: false })
  const wrong = await showKit({ ...at, job: 'pump', part: ['sail', 'anchor'] })
  expect(wrong.ok ? [] : wrong.problems.map(({ code, found }) => `${code} ${found}`)).toEqual([
    'contradiction pump',
    'unknown-part sail',
    'unknown-part anchor',
  ])
  expect(await showKit({ ...at, job: 'mast' })).toMatchObject({
    ok: false,
    problems: [{ code: 'unknown-job', found: 'mast' }],
  })
})

test('two numbers are held against one another without any boat', async () => {
  const { value, text } = told(await showFits({ old: '6205-2RS', replacement: '6205 DDU' }))
  expect(value).toMatchObject({ verdict: 'fits', standard: 'ISO 15' })
  expect(text).toMatch(/^These go in place of one another: bore 25, outside 52, width 15 mm \(ISO 15\)\./)
  expect(told(await showFits({ old: '6205', replacement: '6305' })).text).toBe(
    'They do not: outside diameter 62 mm, not 52 mm; width 17 mm, not 15 mm (ISO 15).',
  )
})
