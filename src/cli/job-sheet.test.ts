import { mkdtempSync, readFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { showJobSheet } from './job-sheet.js'
import { answerForm } from './json-forms.js'

const folder = mkdtempSync(join(tmpdir(), 'gensettle-'))
const at = { data: folder, boat: 'marram', asOf: '2026-11-25' }

test('the sheet of the job in hand is printed in its form, and written as a page', async () => {
  const html = join(folder, 'sheet.html')
  const made = await showJobSheet({ ...at, html })
  if (!made.ok) throw new Error(JSON.stringify(made.problems))
  const value = JSON.parse(JSON.stringify(made.json)) as { job: string; state: string }
  expect(answerForm.safeParse(value).error?.issues ?? []).toEqual([])
  expect(value).toMatchObject({ job: 'rewind-2026', state: 'offered' })
  expect(made.text).toMatch(/Quoted .*2,900/)
  const page = readFileSync(html, 'utf8')
  for (const title of ['Stop lines', 'Order of work', 'Tests owed', 'Before anything is stripped']) {
    expect(page).toContain(`<h2>${title}</h2>`)
  }
  expect(page).not.toMatch(/<script|https?:/)
})

test('a job that the log does not speak of, and a file that is there, are refused at once', async () => {
  const html = join(folder, 'there.html')
  await showJobSheet({ ...at, html })
  expect(await showJobSheet({ ...at, job: 'rewind-1926', html })).toMatchObject({
    ok: false,
    problems: [{ path: '--html' }, { code: 'not-one-of', path: 'job' }],
  })
})
