import { mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { planJob } from './job.js'
import { answerForm } from './json-forms.js'

const at = {
  data: mkdtempSync(join(tmpdir(), 'gensettle-')),
  boat: 'teasel',
  asOf: '2026-11-25',
  seed: 1,
}

test('a job is told with what belongs with it, in its form, within the money that there is', async () => {
  const plan = await planJob({ ...at, alternative: 'leave', mostMoney: 60 })
  if (!plan.ok) throw new Error(JSON.stringify(plan.problems))
  const value = JSON.parse(JSON.stringify(plan.json)) as {
    job: string
    best: { price: number; parts: string[] }
  }
  expect(answerForm.safeParse(value).error?.issues ?? []).toEqual([])
  expect(value.job).toBe('leave')
  expect(value.best.price).toBeLessThanOrEqual(60)
  expect(plan.text).toMatch(
    value.best.parts.length === 0 ? /nothing else is worth renewing/ : /renew as well/,
  )
  expect(plan.text).toContain('Licensed people')
})

test('a job that leaves no set to renew anything in is refused, with those that do', async () => {
  const plan = await planJob({ ...at, alternative: 'give-up' })
  expect(plan).toMatchObject({ ok: false, problems: [{ code: 'not-one-of', path: '--alternative' }] })
})

test('a job that the log does not speak of is refused, with those that it does', async () => {
  expect(await planJob({ ...at, boat: 'marram', job: 'rewind-1926' })).toMatchObject({
    ok: false,
    problems: [{ code: 'not-one-of', path: 'job', allowed: expect.stringContaining('rewind-2026') }],
  })
})
