import { mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { dayJsonSchema } from '../sizing/plan-file.js'
import { answerForm } from './json-forms.js'
import { addEntry } from './log.js'
import { listEntries } from './log-list.js'
import { measure } from './measured.js'
import { type PlanOptions, showPlan } from './plan.js'
import type { Result } from './result.js'

const folder = () => mkdtempSync(join(tmpdir(), 'gensettle-'))

const usual: PlanOptions = {
  batteryKind: 'lithium',
  inverterKw: 4,
  chargerKw: 2,
  sunWatts: 0,
  sunHours: 4,
  shoreKw: 0,
  seed: 1,
}

function answerOf(result: Result) {
  if (!result.ok) throw new Error(JSON.stringify(result.problems))
  const printed = JSON.parse(JSON.stringify(result.json)) as Record<string, never>
  expect(answerForm.safeParse(printed).error?.issues ?? []).toEqual([])
  return printed as unknown as {
    plan: { hours: number; starts: number; cost: number }
    habit: { hours: number; starts: number; cost: number }
    [field: string]: unknown
  }
}

async function boatWithLoads(): Promise<string> {
  const data = folder()
  const of = { data, boat: 'petrel' }
  await addEntry(
    { kind: 'set', bare: [], flags: { 'rating-kw': ['7'], rpm: ['1500'], built: ['2010'] } },
    { ...of, set: 'main' },
  )
  for (const is of ['induction-hob', 'lights', 'charger-12v-100', 'watermaker-small', 'washing-machine']) {
    await addEntry({ kind: 'load', bare: [is, is], flags: {} }, of)
  }
  const flags = {
    'set-hours-cooking': ['2'],
    'set-hours-charging': ['3'],
    'set-hours-laundry': ['1'],
    'days-warm': ['90'],
  }
  await addEntry({ kind: 'habits', bare: [], flags }, { ...of, set: 'main' })
  return data
}

test('a day is planned, held against the habit, written out, read again, and kept as the use from now on', async () => {
  const data = await boatWithLoads()
  const file = join(folder(), 'day.json')
  const answer = answerOf(await showPlan({ ...usual, data, write: file, keep: true }))
  expect(answer.plan.hours).toBeLessThan(answer.habit.hours)
  expect(answer.plan.cost).toBeLessThan(answer.habit.cost)
  expect(answer.entries).toMatchObject([{ kind: 'use', body: { changesFromNow: true } }])
  const again = answerOf(await showPlan({ ...usual, with: file }))
  expect(again.plan.cost).toBeCloseTo(answer.plan.cost, 6)
  const listed = await listEntries({ data, kind: 'use' })
  expect(listed.ok && listed.text).toContain('changes from now yes')
})

test('a recording corrects the list and tells the day as it is; --by list leaves it as it is', async () => {
  const data = await boatWithLoads()
  const recording = join(folder(), 'week.csv')
  const rows = [...Array(2880).keys()].map((n) => {
    const hour = Math.floor(n / 60) % 24
    return `${new Date(Date.UTC(2024, 6, 1) + 60_000 * n).toISOString().slice(0, 19)},${hour >= 17 && hour < 21 ? 2.6 : 0}`
  })
  writeFileSync(recording, `time,kW\n${rows.join('\n')}\n`)
  await measure(recording, { data, of: 'set', seconds: 1 })
  const answer = answerOf(await showPlan({ ...usual, data }))
  expect(answer.recorded).toMatchObject({ hours: 4, starts: 1 })
  expect(answer.basis).toBe('corrected')
  const base = (one: typeof answer) => (one.day as { baseKW: number[] }).baseKW[18]!
  const listed = answerOf(await showPlan({ ...usual, data, by: 'list' }))
  expect(base(answer)).toBeGreaterThan(base(listed))
  const asRecorded = answerOf(await showPlan({ ...usual, data, by: 'recording' }))
  expect(asRecorded.habit).toMatchObject({ hours: 4, starts: 1 })
})

test('a battery beside the set and in its place, a set of another size, and what the plan is worth', async () => {
  const data = await boatWithLoads()
  const answer = answerOf(
    await showPlan({
      ...usual,
      data,
      batteryKwh: 10,
      sunWatts: 800,
      sizeKw: 5,
      worth: true,
    }),
  )
  const { beside, alone } = answer.battery as { beside: { hours: number }; alone: { unmetKWh: number } }
  expect(beside.hours).toBeLessThan(answer.plan.hours)
  expect(alone.unmetKWh).toBeGreaterThan(0)
  const { habit, plan } = answer.worth as Record<
    'habit' | 'plan',
    { hoursPerYear: number; failuresPerYear: number }
  >
  expect(plan.hoursPerYear).toBeLessThan(habit.hoursPerYear)
  expect(plan.failuresPerYear).toBeLessThan(habit.failuresPerYear)
})

test('what cannot be planned is told', async () => {
  const bare = folder()
  await addEntry(
    { kind: 'set', bare: [], flags: { 'rating-kw': ['7'] } },
    { data: bare, boat: 'petrel', set: 'main' },
  )
  expect(await showPlan({ ...usual, data: bare })).toMatchObject({ ok: false, problems: [{ path: 'loads' }] })
  const data = await boatWithLoads()
  expect(await showPlan({ ...usual, data, quiet: 'nights' })).toMatchObject({
    ok: false,
    problems: [{ path: '--quiet' }],
  })
  expect(await showPlan({ ...usual, data, quiet: '17-22' })).toMatchObject({
    ok: false,
    problems: [{ code: 'quiet' }, { code: 'quiet' }],
  })
  const file = join(folder(), 'day.json')
  writeFileSync(file, '{"type":"gensettle/day","version":1,"baseKW":["tea"]}')
  const wrong = await showPlan({ ...usual, with: file })
  expect(!wrong.ok && wrong.problems.map(({ path }) => path)).toEqual(
    expect.arrayContaining(['baseKW.0', 'slotHours', 'set', 'costs']),
  )
})

test('the published form of a day is the one in force', async () => {
  const text = `${JSON.stringify(dayJsonSchema(), null, 2)}\n`
  await expect(text).toMatchFileSnapshot('../../docs/schema/day.schema.json')
})
