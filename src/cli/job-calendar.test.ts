import { mkdtempSync, readFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { showJobCalendar } from './job-calendar.js'
import { answerForm } from './json-forms.js'

const folder = mkdtempSync(join(tmpdir(), 'gensettle-'))
const at = { data: folder, boat: 'marram', asOf: '2026-11-26', seed: 1 }

test('the calendar of a job is told in its form, and its days go out as iCalendar', async () => {
  const ics = join(folder, 'rewind.ics')
  const told = await showJobCalendar({ ...at, readyBy: '2027-01-15', ics })
  if (!told.ok) throw new Error(JSON.stringify(told.problems))
  const value = JSON.parse(JSON.stringify(told.json)) as {
    rows: { name: string }[]
    target: { chance: number }
  }
  expect(answerForm.safeParse(value).error?.issues ?? []).toEqual([])
  expect(value.rows.map(({ name }) => name)).toContain('shop-stator-winding')
  expect(value.target.chance).toBeGreaterThan(0.5)
  expect(told.text).toContain('ready by 2027-01-15: ')
  expect(told.text).toContain('Licensed people')
  const text = readFileSync(ics, 'utf8')
  expect(text.match(/BEGIN:VEVENT/g)).toHaveLength(value.rows.length + 1)
  expect(text).toContain('UID:marram.main.rewind-2026.shop-stator-winding@gensettle.invalid')

  const again = await showJobCalendar({ ...at, readyBy: '2026-11-25', ics })
  expect(again).toMatchObject({
    ok: false,
    problems: [{ code: 'before-today' }, { code: 'already-there', path: '--ics' }],
  })
})

test('a job that the log does not speak of is refused, with those it speaks of', async () => {
  expect(await showJobCalendar({ ...at, job: 'painting' })).toMatchObject({
    ok: false,
    problems: [{ code: 'not-one-of', found: 'painting', allowed: expect.stringContaining('rewind-2026') }],
  })
})
