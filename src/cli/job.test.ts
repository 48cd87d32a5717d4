import { mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { planJob } from './job.js'
import { showJobActual } from './job-actual.js'
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

test('what jobs took is told against their quotes, by kind, with too few said so', async () => {
  const told = await showJobActual({ ...at, boat: 'marram' })
  if (!told.ok) throw new Error(JSON.stringify(told.problems))
  const value = JSON.parse(JSON.stringify(told.json)) as { jobs: readonly { job: string }[] }
  expect(answerForm.safeParse(value).error?.issues ?? []).toEqual([])
  expect(value).toMatchObject({
    heard: false,
    jobs: [
      { job: 'diodes-2016', kind: 'alternator', money: { from: 'quote', came: 318 } },
      // a firm quote of 780 that was billed at 845, of parts of two systems
      { job: 'bearing-2018', kind: 'whole-set', money: { expected: 780, came: 845 } },
    ],
  })
  expect(told.text).toContain('too few to speak for themselves')
  const none = await showJobActual({ ...at, boat: 'marram', job: 'rewind-2026' })
  expect(none).toMatchObject({
    ok: false,
    problems: [{ path: 'job', allowed: 'a job that is done: diodes-2016, bearing-2018' }],
  })
})
