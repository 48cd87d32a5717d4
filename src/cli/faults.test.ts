import { existsSync, mkdtempSync, readFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { answerCase, closeCase, listCases, nextOfCase, showSymptoms, startCase, whyOfCase } from './faults.js'
import { showSheet } from './faults-sheet.js'
import { answerForm } from './json-forms.js'
import { addEntry } from './log.js'
import { listEntries } from './log-list.js'
import type { Result } from './result.js'

const data = mkdtempSync(join(tmpdir(), 'gensettle-'))
const of = { data, asOf: '2026-11-20' }

// biome-ignore lint/suspicious/noExplicitAny: fields of answers, whose form is checked against the published one.
function told(result: Result): any {
  if (!result.ok) throw new Error(JSON.stringify(result.problems))
  const printed: unknown = JSON.parse(JSON.stringify(result.json))
  const parsed = answerForm.safeParse(printed)
  expect(parsed.error?.issues ?? []).toEqual([])
  return printed
}

const codes = (result: Result) => (result.ok ? [] : result.problems.map(({ code }) => code))

test('a case from the first question to what it really was', async () => {
  const flags = { 'rating-kw': ['7'], built: ['2004'], volts: ['230'], hertz: ['50'] }
  await addEntry({ kind: 'set', bare: [], flags }, { data, boat: 'petrel', set: 'main', from: '2026-11-01' })
  expect(codes(await nextOfCase(of))).toEqual(['unknown-case'])

  const begun = told(await startCase(['it', 'overheats'], of))
  expect(begun).toMatchObject({ case: 'case-1', about: 'it overheats', answers: [] })
  expect(begun.first).toHaveLength(6)
  // no symptom before the stop questions
  expect(codes(await answerCase(['steam', 'present'], of))).toEqual(['asked-first'])
  for (const { line } of begun.first) told(await answerCase([line, 'no'], of))

  told(await answerCase(['little-water', 'present'], of))
  expect(codes(await answerCase(['teapot', 'present'], of))).toEqual(['unknown-name'])
  expect(codes(await answerCase(['impeller', 'sings'], of))).toEqual(['answer'])
  const hot = told(await answerCase(['hot-on-load', 'present'], of))
  expect(hot.mayBe[0].fault).toBe('impeller-worn')
  expect(hot.next).toHaveLength(3)

  const read = told(await answerCase(['water-flow', '9'], { ...of, against: 20 }))
  expect(read.answers.at(-1)).toEqual({
    of: 'water-flow',
    name: 'Raw water by bucket and watch',
    says: '40 to 80 % (9 against 20 l/min)',
  })
  const open = told(await answerCase(['gas-in-space', 'present'], of))
  expect(open.lines.find((line: { line: string }) => line.line === 'carbon-monoxide').is).toBe('open')
  expect(codes(await answerCase(['water-flow', 'good'], of))).toEqual(['barred'])
  expect(codes(await answerCase(['carbon-monoxide', 'overruled'], { ...of, because: 'no time' }))).toEqual([
    'never-overruled',
  ])
  told(await answerCase(['gas-in-space', 'take-back'], of))

  const why = told(await whyOfCase('impeller-worn', of))
  expect(why.faults[0].speaks).toHaveLength(3)
  const sheet = join(mkdtempSync(join(tmpdir(), 'gensettle-')), 'case.html')
  told(await showSheet({ ...of, write: sheet }))
  expect(existsSync(sheet) && readFileSync(sheet, 'utf8')).toMatch(/<h1>it overheats<\/h1>/)

  told(await answerCase(['impeller', 'vanes-gone'], of))
  const closed = told(await closeCase('impeller-worn', of))
  expect(closed.closed).toMatchObject({ as: 'listed', fault: 'impeller-worn', place: 1 })
  expect(closed.job.parts).toEqual([{ part: 'sea-pump-impeller', mode: 'wear' }])
  expect(codes(await answerCase(['steam', 'present'], of))).toEqual(['closed'])

  const log = told(await listEntries(of))
  const kinds = log.entries.map(({ kind }: { kind: string }) => kind)
  // one entry stands for the case however often it was answered; what was seen stands beside it
  expect(kinds.filter((kind: string) => kind === 'case')).toHaveLength(1)
  expect(kinds.filter((kind: string) => kind === 'finding')).toHaveLength(1)
  expect(kinds.filter((kind: string) => kind === 'reading')).toHaveLength(1)

  const listed = told(await listCases(of))
  expect(listed.cases).toMatchObject([{ case: 'case-1', open: false, place: 1 }])
  const next = told(await startCase([], { ...of, nothingDangerous: true, idle: 200 }))
  expect(next.first).toEqual([])
  const prior = (of: { mayBe: { fault: string; prior: { closed: number } }[] }) =>
    of.mayBe.find(({ fault }) => fault === 'impeller-worn')!.prior.closed
  expect(prior(next)).toBeGreaterThan(1)
}, 30_000)

test('symptoms are found by plain words', () => {
  expect(told(showSymptoms(['electric', 'shock'])).symptoms[0].id).toBe('tingle')
})
