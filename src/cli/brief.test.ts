import { existsSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { showBrief } from './brief.js'
import { answerForm } from './json-forms.js'

const data = mkdtempSync(join(tmpdir(), 'gensettle-'))
const asked = { data, boat: 'teasel', asOf: '2026-11-25', seed: 1, histories: 60 }

test('a brief has its form, is told as text, and written as one file that needs nothing else', async () => {
  const write = join(data, 'brief.html')
  const shown = await showBrief({ ...asked, write })
  if (!shown.ok) throw new Error(JSON.stringify(shown.problems))
  const parsed = answerForm.safeParse(JSON.parse(JSON.stringify(shown.json)))
  expect(parsed.error?.issues ?? []).toEqual([])
  const { brief } = shown.json as unknown as { brief: { passages: { title: string }[]; colophon: string } }
  const html = readFileSync(write, 'utf8')
  expect(html).not.toMatch(/<script|<link|<img|url\(|@import|<button|<input/)
  for (const { title } of brief.passages) {
    expect(shown.text).toContain(title)
    expect(html).toContain(`<h2>${title}</h2>`)
  }
  expect(html).toContain(brief.colophon)
  expect(shown.text).toContain('Demonstration: boat and log are invented.')
  expect(shown.text).toContain(`Written: ${write}`)
  expect(Math.max(...shown.text.split('\n').map((line) => line.length))).toBeLessThan(160)
}, 300_000)

test('a file that is there is never written over, and no work is done for it', async () => {
  const write = join(data, 'there.html')
  writeFileSync(write, 'mine')
  const shown = await showBrief({ ...asked, write })
  expect(shown.ok ? [] : shown.problems.map(({ code, path }) => `${code} ${path}`)).toEqual([
    'already-there --write',
  ])
  expect(readFileSync(write, 'utf8')).toBe('mine')
  const nowhere = join(data, 'none', 'brief.html')
  expect((await showBrief({ ...asked, write: nowhere })).ok).toBe(false)
  expect(existsSync(nowhere)).toBe(false)
})
