import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, type Locator, type Page } from '@playwright/test'
import sharp from 'sharp'
import type { ServedFolder } from '../served-folder.js'
import { trialEntry } from '../trial-log.js'
import { keptEntries, putBoat, test } from './boat.js'
import { expectAccessible, expectContrast, expectNothingCutOff, reckoning, stopRefining } from './pages.js'
import { textOfPdf, withoutSpaces } from './pdf-text.js'

const at = (day: string) => ({ boat: 'petrel', from: `2026-10-${day}`, until: `2026-10-${day}` })
const parts = [{ part: 'outboard-bearing', did: 'renewed' }] as const
const offered = trialEntry(
  20,
  'quote',
  {
    job: 'bearing',
    what: 'Outboard bearing',
    amount: 700,
    tax: { included: true, percent: 20 },
    firmness: 'firm',
    subjectToStripDown: false,
    excludes: ['travel'],
    covers: { parts },
  },
  at('03'),
)
const decided = trialEntry(21, 'decision', { choice: 'Have it done', job: 'bearing' }, at('05'))
const belt = trialEntry(
  22,
  'work',
  {
    job: 'belt',
    by: 'owner',
    why: 'found',
    cost: 60,
    workHours: { owner: 2 },
    parts: [{ part: 'drive-belt', did: 'renewed' }],
  },
  at('04'),
)

test('the pages of a job in three lights and two widths; work with its hours; the sheet on paper', async ({
  page,
  served,
}) => {
  await page.route('**/*.worker-*', (route) => route.abort())
  await putBoat(served, 'petrel', [offered, decided, belt])
  const address = `${served.address}boats/petrel/main/job`
  for (const path of ['', '-sheet', '?job=belt']) {
    await page.goto(address + path)
    await expect(page.locator('h1').first()).toBeVisible()
    for (const width of [1280, 390]) {
      await page.setViewportSize({ width, height: 900 })
      await expectAccessible(page)
      await expectNothingCutOff(page)
    }
    for (const light of ['Dark', 'Red', 'Day'] as const) {
      await page.getByRole('radio', { name: light, exact: true }).check({ force: true })
      if (light !== 'Day') await expectContrast(page)
    }
  }
  // what it took is heard only when it is asked for
  await expect(page.getByText('too few to speak for themselves')).toBeVisible()
  const heard = page.getByLabel('Take it into what work is expected to come to')
  await heard.click()
  await expect(heard).toBeChecked()
  await expect.poll(async () => (await keptEntries(served)).at(-1)?.body).toEqual({ learnFromJobs: true })

  await page.getByRole('combobox', { name: 'Job', exact: true }).selectOption('bearing')
  await expect(page.getByRole('heading', { name: 'When it is done' })).toBeVisible()
  await page.getByLabel('Paid hours').fill('four')
  await page.getByRole('button', { name: 'Write the work into the log' }).click()
  await expect(page.getByText('Paid hours: a number such as 2.5 is wanted.')).toBeVisible()
  await page.getByLabel('Paid hours').fill('4.5')
  await page.getByRole('button', { name: 'Write the work into the log' }).click()
  await expect
    .poll(async () => (await keptEntries(served)).at(-1)?.body)
    .toEqual({ job: 'bearing', parts, by: 'owner', why: 'found', workHours: { paid: 4.5 } })
  await expect(page.getByText('the work is done, and not proved yet.')).toBeVisible()

  await page.getByRole('link', { name: 'Job sheet' }).click()
  await expect(page.getByRole('heading', { level: 1 })).toContainText('Job sheet: bearing')
  for (const format of ['A4', 'Letter'] as const) {
    const printed = textOfPdf(await page.pdf({ format }))
    expect(printed.pages).toBeLessThanOrEqual(6)
    for (const words of [
      'Alternator outboard bearing: renew',
      'Before anything is stripped',
      'Tests owed',
      'Done by',
    ])
      expect(printed.text).toContain(withoutSpaces(words))
    for (const control of ['Write an entry', 'Print this page', 'other pages'])
      expect(printed.text).not.toContain(withoutSpaces(control))
  }
})

test('on a phone: from a finding on Quillback through alternatives, bundle, kit, take-apart with two photographs and proof to the closed job', async ({
  page,
  served,
}) => {
  test.setTimeout(3 * reckoning)
  await copyOfQuillback(served)
  await page.clock.setFixedTime(new Date('2026-11-25T10:00:00Z'))
  await page.setViewportSize({ width: 390, height: 844 })
  const at = (name: string) => `${served.address}boats/petrel/port/${name}`
  const bodies = async (kind: string) =>
    (await keptEntries(served)).filter((entry) => entry.kind === kind).map(({ body }) => body)

  await test.step('the finding', async () => {
    await page.goto(at('logbook'))
    await page.getByRole('radio', { name: 'Finding', exact: true }).check({ force: true })
    await page.getByLabel(/^Part/).first().selectOption('sea-pump-impeller')
    await page.getByLabel('What the look showed').selectOption('defect-seen')
    await page.getByLabel('What was seen, in your words').fill('two vanes cracked')
    await page.getByRole('button', { name: 'Write it in' }).click()
    await expect
      .poll(async () => (await bodies('finding')).at(-1))
      .toMatchObject({ seen: 'two vanes cracked' })
  })

  await test.step('alternatives and decision', async () => {
    await page.goto(at('alternatives'))
    await expect(page.locator('.alternatives .row').first()).toBeVisible({ timeout: reckoning })
    await expect(page.getByText('First figures: from few lives', { exact: false })).toBeHidden({
      timeout: reckoning,
    })
    await stopRefining(page)
    await page.getByRole('radio', { name: /^Mend what was found/ }).check({ force: true })
    await page.getByLabel('Why', { exact: true }).fill('cheap, and the season begins')
    await page.getByRole('button', { name: 'Keep this decision' }).click()
    await expect
      .poll(async () => (await bodies('decision')).at(-1))
      .toMatchObject({
        job: expect.stringMatching(/^mend-/),
        parts: [{ part: 'sea-pump-impeller', did: 'renewed' }],
      })
  })

  await test.step('what belongs with it', async () => {
    await page.goto(at('job'))
    await expect(page.getByText('Mend what was found: it is settled.')).toBeVisible()
    const take = page.locator('.job-take input')
    await expect(take.first()).toBeVisible({ timeout: reckoning })
    await tickOnly(page, take, 'Drive belt')
    await page.getByRole('button', { name: 'Take these into the job' }).click()
    await expect
      .poll(async () => (await bodies('decision')).at(-1))
      .toMatchObject({
        parts: [{ part: 'sea-pump-impeller' }, { part: 'drive-belt', did: 'renewed' }],
      })
  })

  await test.step('the kit', async () => {
    await page.getByRole('link', { name: 'Kit', exact: true }).click()
    await expect(page.getByText(/Do not begin/)).toBeVisible()
    const orders = page.getByText(/^Write down what was ordered, or is aboard/)
    for (let left = await orders.count(); left > 0; left--) {
      await orders.first().click()
      await page.getByRole('button', { name: 'Write: aboard, and like the old' }).first().click()
      await expect(orders).toHaveCount(left - 1)
    }
    await expect(page.getByText('You can begin.')).toBeVisible()
  })

  await test.step('taking apart, with two pictures, and putting back', async () => {
    await page.goto(at('job-apart'))
    const ticks = page.locator('.apart-ticks').getByRole('checkbox')
    await expect(ticks.first()).toBeVisible()
    for (let tick = 0; tick < (await ticks.count()); tick++) await ticks.nth(tick).check()
    const slots = page.getByLabel(/^Picture: /)
    await slots.nth(0).setInputFiles(await photograph('before.jpg', '#557799'))
    await slots.nth(1).setInputFiles(await photograph('tag.jpg', '#997755'))
    // each is looked at before it stands there
    await expect(page.getByRole('button', { name: 'Add an arrow' })).toHaveCount(2)
    await page.getByRole('button', { name: 'It is apart: write it in' }).click()
    await expect
      .poll(async () => (await bodies('apart-step')).at(-1))
      .toMatchObject({ job: expect.stringMatching(/^mend-/), photographs: [{}, {}] })
    await page.getByRole('button', { name: 'It is back as it was: write it in' }).click()
    await expect.poll(async () => (await bodies('refit-step')).length).toBe(1)
  })

  await test.step('the work, the proof, the closed job', async () => {
    await page.goto(at('job'))
    await expect(page.getByText('the set is apart.')).toBeVisible()
    await page.getByLabel('Your own hours').fill('3')
    await page.getByLabel(/^Paid where no bill comes/).fill('140')
    await page.getByRole('button', { name: 'Write the work into the log' }).click()
    await expect(page.getByText('the work is done, and not proved yet.')).toBeVisible()
    await page.getByRole('link', { name: 'The tests that are owed' }).click()
    await page.getByRole('button', { name: /Make it.*Wet exhaust/ }).click()
    await page.getByRole('button', { name: /I stand clear/ }).click()
    await page.getByRole('textbox', { name: /Hose after the elbow/ }).fill('48')
    await page.getByLabel(/Hose after the elbow: unit/).selectOption('C')
    await page.getByRole('button', { name: 'See the verdict' }).click()
    await page.getByRole('button', { name: 'Write it into the log' }).click()
    await expect
      .poll(async () => (await bodies('reading')).at(-1))
      .toMatchObject({ test: 'exhaust-temperature' })
    await page.goto(`${at('job')}?job=mend-2026-11`)
    await expect(page.getByText('done and proved.')).toBeVisible()
    await expect(page.getByText(/It came to \$/)).toBeVisible()
    await expectAccessible(page)
    await expectNothingCutOff(page)
  })
})

/** The log of the demonstration boat under another name, to be written on. */
async function copyOfQuillback(served: ServedFolder): Promise<void> {
  const file = readFileSync(join(import.meta.dirname, '../../demo/quillback.jsonl'), 'utf8')
  const lines = file.trim().split('\n').slice(1)
  const entries = lines.map((line) => line.replace('"boat":"quillback"', '"boat":"petrel"'))
  for (let from = 0; from < entries.length; from += 100) {
    const body = JSON.stringify({ entries: entries.slice(from, from + 100) })
    const answer = await served.ask('/api/boats/petrel/entries', { method: 'POST', body })
    const { results } = answer.json<{ results: readonly { result: string }[] }>()
    if (results.some(({ result }) => result === 'refused')) throw new Error(answer.text)
  }
}

/** Of everything that is offered one part is taken. */
async function tickOnly(page: Page, boxes: Locator, name: string): Promise<void> {
  const more = page.getByText(/more that (was|were) played$/)
  if (await more.isVisible()) await more.click()
  for (let at = 0; at < (await boxes.count()); at++) await boxes.nth(at).uncheck()
  await page.getByLabel(name, { exact: true }).check()
}

async function photograph(name: string, background: string) {
  const size = { width: 640, height: 480, channels: 3 as const, background }
  return { name, mimeType: 'image/jpeg', buffer: await sharp({ create: size }).jpeg().toBuffer() }
}
