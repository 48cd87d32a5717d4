import { mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { beforeAll, expect, test } from 'vitest'
import { proofTestOf } from '../proof/tests.js'
import { answerForm } from './json-forms.js'
import { addEntry } from './log.js'
import { showOwed } from './owed.js'
import { listTests, prove } from './prove.js'
import type { Result } from './result.js'

const data = mkdtempSync(join(tmpdir(), 'gensettle-'))

beforeAll(async () => {
  const set = { 'rating-kw': ['7'], volts: ['230'], hertz: ['50'], built: ['2004'] }
  await addEntry({ kind: 'set', bare: [], flags: set }, { data, boat: 'petrel', set: 'main' })
  const work = { parts: ['stator-winding:cleaned'], by: ['owner'], why: ['found'] }
  await addEntry({ kind: 'work', bare: [], flags: work }, { data, from: '2026-05-01' })
})

/** The answer as it is printed, in the form that is published. */
function told(result: Result): { readonly text: string; readonly json: Record<string, never> } {
  if (!result.ok) throw new Error(JSON.stringify(result.problems))
  const printed: unknown = JSON.parse(JSON.stringify(result.json))
  expect(answerForm.safeParse(printed).error?.issues ?? []).toEqual([])
  return { text: result.text, json: printed as Record<string, never> }
}

const stator = proofTestOf('insulation-test')!
const owed = async () => told(await showOwed(undefined, { data, asOf: '2026-06-01', lockOut: true }))

test('the list of tests, and one of them with its steps and its fields', async () => {
  expect(told(listTests()).text).toMatch(/insulation-test/)
  const { text } = told(await prove(proofTestOf('gap-volts')!, {}, { data }))
  expect(text).toMatch(/Type nothing while it runs/)
  expect(text).toMatch(/ {2}--gap {2}Across the gap \[V, mV, kV\]/)
  const steps = told(await prove(proofTestOf('load-step')!, {}, { data, boat: 'petrel' }))
  expect(steps.text).toMatch(/For 7 kW:\n {2}Step 1: 3\.5\u00a0kW more/)
  expect(steps.json.plan).toHaveLength(3)
})

test('a reading is judged and written, and what is owed follows it', async () => {
  expect((await owed()).text).toMatch(/owed +insulation-test --part stator-winding/)
  const wet = await prove(
    stator,
    { 'winding-to-frame': '1800 kohm', winding: '64.4F' },
    { data, from: '2026-05-02', by: 'the keeper' },
  )
  expect(told(wet).text).toMatch(
    /^FAILS: Too low to be energised\nDo not energise the set\. The winding reads 0\.392\u00a0MΩ/,
  )
  const after = await owed()
  expect(after.text).toMatch(/STOP: Insulation too low/)
  expect(after.text).toMatch(/before it carries load: Stop before carrying load: insulation too low\./)
  expect(after.text).toMatch(/Locking out, in this order:/)
  await prove(stator, { 'winding-to-frame': '44', winding: '31' }, { data, from: '2026-05-03' })
  expect((await owed()).text).not.toMatch(/STOP/)
  expect((await owed()).text).toMatch(/passed +insulation-test/)
})

test('a reading with no temperature is written and asked about', async () => {
  const { text, json } = told(
    await prove(stator, { 'winding-to-frame': '44' }, { data, from: '2026-05-04', part: 'rotor-winding' }),
  )
  expect(text).toMatch(/^Cannot tell\nAsked: Not given: temperature of the winding itself/)
  expect(json).toMatchObject({ judgement: { verdict: 'cannot tell' }, entry: { kind: 'reading' } })
})

test('a live test takes nothing until somebody stands clear, and says what it came too soon for', async () => {
  const live = proofTestOf('touch-volts')!
  expect(await prove(live, { open: '0.3' }, { data })).toMatchObject({
    ok: false,
    problems: [{ code: 'missing', path: '--clear' }],
  })
  const { text } = told(await prove(live, { open: '0.3' }, { data, clear: true, from: '2026-05-05' }))
  expect(text).toMatch(/^Passes: Quiet/)
  expect(text).toMatch(/Came too soon: it waits for\n {2}turned by hand/)
})

test('what cannot be is refused all at once, and trying writes nothing', async () => {
  const wrong = await prove(stator, { 'winding-to-frame': 'dry', winding: '20 V' }, { data, part: 'mast' })
  expect(wrong).toMatchObject({
    ok: false,
    problems: [{ path: '--winding-to-frame' }, { path: '--winding' }, { path: '--part' }],
  })
  const tried = told(
    await prove(
      stator,
      { 'winding-to-frame': '550', winding: '20', 'tester-top': '550' },
      { data, try: true },
    ),
  )
  expect(tried.text).toMatch(/it is so: --sure at-top/)
  expect(tried.text).toMatch(/nothing was written/)
  const sure = told(
    await prove(
      stator,
      { 'winding-to-frame': '550', winding: '20', 'tester-top': '550' },
      { data, try: true, sure: ['at-top'] },
    ),
  )
  expect(sure.text).toMatch(/^Passes/)
})
