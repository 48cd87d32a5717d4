import { mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { beforeAll, expect, test } from 'vitest'
import { compareQuotes } from './job-quotes.js'
import { answerForm } from './json-forms.js'
import { addEntry } from './log.js'

const data = mkdtempSync(join(tmpdir(), 'gensettle-'))
const at = { data, boat: 'petrel', asOf: '2026-11-26', seed: 1 }
const entered = { data, boat: 'petrel', from: '2026-11-01' }

type Flags = Readonly<Record<string, readonly string[]>>
const add = (kind: 'quote' | 'decision', bare: readonly string[], flags: Flags) =>
  addEntry({ kind, bare, flags }, { ...entered, set: 'main' })
const offer = (amount: string, flags: Flags) =>
  add('quote', ['rewind', amount], {
    'covers-parts': ['stator-winding:renewed'],
    'subject-to-strip-down': ['no'],
    firmness: ['firm'],
    ...flags,
  })

beforeAll(async () => {
  await addEntry({ kind: 'boat', bare: [], flags: { currency: ['GBP'] } }, entered)
  const flags = { 'rating-kw': ['7'], volts: ['230'], hertz: ['50'], rpm: ['1500'], built: ['2004'] }
  await addEntry({ kind: 'set', bare: [], flags }, { ...entered, set: 'main' })
  await offer('2900', {
    'offered-by': ['the winding shop'],
    firmness: ['estimate'],
    'subject-to-strip-down': ['yes'],
    excludes: ['removal,refitting,carriage'],
    'tax-included': ['no'],
    'tax-percent': ['20'],
  })
  await offer('5200', {
    'offered-by': ['the yard'],
    includes: ['removal,refitting,carriage,testing'],
    'guarantee-months': ['12'],
    'days-out': ['25'],
    'stage-payments': ['order:0.5;tested:0.5'],
  })
  await offer('3900', { 'offered-by': ['a mainland shop'], currency: ['EUR'] })
  await add('decision', ['rewind it if it stays cheap'], { job: ['rewind'], 'walk-away-price': ['5100'] })
})

async function told(job?: string) {
  const result = await compareQuotes({ ...at, ...(job === undefined ? {} : { job }) })
  if (!result.ok) throw new Error(JSON.stringify(result.problems))
  const value = JSON.parse(JSON.stringify(result.json)) as {
    offers: { offeredBy: string; message: string | null; lines: { about: string; money: number }[] }[]
    problems: { code: string }[]
  }
  expect(answerForm.safeParse(value).error?.issues ?? []).toEqual([])
  return { value, text: result.text }
}

test('offers stand side by side in their form, with why, what is not usable, and what to ask', async () => {
  const { value, text } = await told()
  expect(value).toMatchObject({
    job: 'rewind',
    walkAway: { from: 'entered', price: 5100 },
    offers: [
      { offeredBy: 'the yard', rank: 1 },
      { offeredBy: 'the winding shop', rank: 2 },
    ],
  })
  expect(value.problems.map(({ code }) => code)).toContain('other-money')
  const [best, next] = value.offers
  expect(best!.lines.find(({ about }) => about === 'guarantee')!.money).toBeLessThan(0)
  expect(next!.lines.filter(({ about }) => about === 'left-out')).toHaveLength(3)
  expect(best!.message).toMatch(/^Hello,\n\nthank you for your offer of 2026-11-01 \(rewind\)/)
  expect(best!.message).toMatch(/1\. .+\?/)
  expect(text).toMatch(/paid hours to open it/)
  expect(text).toContain('found EUR')
  expect(text).toContain('Licensed people')
})

test('a job without offers is refused, with those that have some', async () => {
  expect(await compareQuotes({ ...at, job: 'elbow' })).toMatchObject({
    ok: false,
    problems: [
      { code: 'not-one-of', path: 'job', found: 'elbow', allowed: expect.stringContaining('rewind') },
    ],
  })
})
