import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect } from '@playwright/test'
import { openStore } from '../../src/store/store.js'
import { trialEntry, trialId } from '../trial-log.js'
import { keptEntries, letIn, putBoat, serveBuilt, test } from './boat.js'

const logbook = '/boats/petrel/main/logbook'

test('hours are written in a moment, from another page too', async ({ page, served }) => {
  await putBoat(served)
  await page.goto(`${served.address}boats/petrel/main/settings`)
  await page.getByRole('button', { name: 'Write an entry' }).first().click()
  await page.getByLabel('Hours on the meter').fill('5,240')
  await page.keyboard.press('Enter')
  await expect(page.getByText('Written: Hours. 5,240 h')).toBeVisible()
  await expect.poll(async () => (await keptEntries(served)).at(-1)?.body).toEqual({ meterHours: 5240 })
})

test('what is wrong is said at its field, and nothing typed is lost', async ({ page, served }) => {
  await putBoat(served)
  await page.goto(served.address + logbook.slice(1))
  await page.getByRole('radio', { name: 'Bill' }).check({ force: true })
  await page.getByLabel('Amount').fill('a lot')
  await page.getByLabel('For what').fill('filters')
  await page.getByRole('button', { name: 'Write it in' }).click()
  await expect(page.getByText('Type a number, such as 1,200 or 0.4.')).toBeVisible()
  await expect(page.getByLabel('Amount')).toBeFocused()
  await expect(page.getByLabel('For what')).toHaveValue('filters')
  await page.getByLabel('Amount').fill('£46')
  await page.getByRole('button', { name: 'Write it in' }).click()
  await expect(page.getByText('Written: Bill.')).toBeVisible()
})

test('what is typed survives a reload, and a correction stands beside what it corrects', async ({
  page,
  served,
}) => {
  await putBoat(served)
  await page.goto(served.address + logbook.slice(1))
  await page.getByRole('button', { name: /Correct Hours, 2 Oct/ }).click()
  const correcting = page.locator('.correcting')
  await correcting.getByLabel('Hours on the meter').fill('5321')
  await correcting.getByLabel('Why it is corrected').fill('figures changed round')
  await page.reload()
  await page.getByRole('button', { name: /Correct Hours, 2 Oct/ }).click()
  await expect(correcting.getByLabel('Hours on the meter')).toHaveValue('5321')
  await correcting.getByRole('button', { name: 'Write the correction in' }).click()
  const row = page.locator('.line', { hasText: 'figures changed round' })
  await expect(row.locator('del')).toHaveText(/5,231 h/)
  await expect(row).toContainText('5,321 h')
  await expect
    .poll(async () => (await keptEntries(served)).at(-1))
    .toMatchObject({ corrects: [trialId(4)], body: { meterHours: 5321 } })
})

test('an entry that is taken back stays in sight', async ({ page, served }) => {
  await putBoat(served)
  await page.goto(served.address + logbook.slice(1))
  await page.getByRole('button', { name: /Correct Hours, 2 Oct/ }).click()
  await page.getByText('Take it back: it never happened').first().click()
  await page.getByLabel('Why it is taken back').fill('another boat')
  await page.getByRole('button', { name: 'Take it back: it never happened' }).click()
  const row = page.locator('.line', { hasText: 'another boat' })
  await expect(row.locator('del')).toHaveText(/5,231 h/)
})

test('while the server is away an entry waits, is shown, and is sent once when it is back', async ({
  page,
  served,
}) => {
  await putBoat(served)
  await page.goto(served.address + logbook.slice(1))
  await expect(page.getByText('Last read 5,231 h')).toBeVisible()
  await served.stop()
  await page.getByLabel('Hours on the meter').fill('5,240')
  await page.getByRole('button', { name: 'Write it in' }).click()
  await expect(page.locator('.line', { hasText: '5,240 h' })).toContainText('Not sent yet')
  await expect(page.getByText('1 entry waits to be sent.').first()).toBeVisible()
  await page.getByLabel('Hours on the meter').fill('52')
  const again = await serveBuilt(served.folder)
  try {
    await expect(page.getByText('Not sent yet')).toHaveCount(0, { timeout: 40_000 })
    expect((await keptEntries(again)).map(({ body }) => body.meterHours)).toEqual([
      undefined,
      undefined,
      5100,
      5231,
      5240,
    ])
    await expect(page.getByLabel('Hours on the meter')).toHaveValue('52')
    await page.reload()
    await expect(page.getByLabel('Hours on the meter')).toHaveValue('52')
  } finally {
    await again.stop()
  }
})

test('two tabs agree, on what is typed and on what is written', async ({ page, served, context }) => {
  await putBoat(served)
  await page.goto(served.address + logbook.slice(1))
  const other = await context.newPage()
  await other.goto(served.address + logbook.slice(1))
  await page.getByLabel('Hours on the meter').fill('5,255')
  await expect(other.getByLabel('Hours on the meter')).toHaveValue('5,255')
  await page.getByRole('button', { name: 'Write it in' }).click()
  await expect(other.locator('.line', { hasText: '5,255 h' })).toBeVisible()
  await other.getByLabel('Hours on the meter').fill('5,260')
  await other.getByRole('button', { name: 'Write it in' }).click()
  await expect(page.locator('.line', { hasText: '5,260 h' })).toBeVisible()
  await expect.poll(async () => (await keptEntries(served)).length).toBe(6)
  const counts = (await served.ask('/api/boats/petrel/entries')).text.match(/"n":\d+/g)
  expect(counts?.slice(4)).toEqual(['"n":1', '"n":2'])
})

test('what is odd is asked, answered by a button, or left for now', async ({ page, served }) => {
  await putBoat(served)
  await page.goto(served.address + logbook.slice(1))
  await page.getByLabel('Hours on the meter').fill('5,198')
  await page.getByRole('button', { name: 'Write it in' }).click()
  const asked = page.locator('.asked')
  await expect(asked).toContainText('Is one of them wrong, or was the meter changed?')
  await asked.getByRole('button', { name: 'Leave it for now' }).click()
  await expect(asked).toHaveCount(0)
  await page.getByRole('button', { name: 'Ask again' }).click()
  await asked.getByRole('button', { name: 'The meter was changed' }).click()
  await expect(asked).toHaveCount(0)
  await expect.poll(async () => (await keptEntries(served)).at(-1)?.kind).toBe('meter-changed')
})

test('two corrections stand side by side until one is said to be right', async ({ page, served }) => {
  const at = { boat: 'petrel', from: '2026-10-02', until: '2026-10-02' }
  await putBoat(served, 'petrel', [
    trialEntry(
      5,
      'hours',
      { meterHours: 5241 },
      { ...at, corrects: [trialId(4)], device: 'chart-table', n: 1 },
    ),
    trialEntry(6, 'hours', { meterHours: 5251 }, { ...at, corrects: [trialId(4)], device: 'phone', n: 1 }),
  ])
  await page.goto(served.address + logbook.slice(1))
  const tip = page.locator('.tip', { hasText: '5,241 h' })
  await tip.getByRole('button', { name: 'This one is right' }).click()
  await expect(page.locator('.tip')).toHaveCount(0)
  await expect
    .poll(async () => (await keptEntries(served)).at(-1)?.corrects.toSorted())
    .toEqual([trialId(5), trialId(6)])
})

test('a picture is attached, kept and shown', async ({ page, served }) => {
  await putBoat(served)
  await page.goto(served.address + logbook.slice(1))
  await page.getByRole('radio', { name: 'Note or picture' }).check({ force: true })
  await page.getByLabel('In your words').fill('the elbow before it was undone')
  await page
    .locator('input[type=file][multiple]')
    .setInputFiles({ name: 'elbow.png', mimeType: 'image/png', buffer: onePixel })
  await expect(page.getByRole('list', { name: 'Pictures chosen' })).toContainText('elbow.png')
  await page.getByRole('button', { name: 'Write it in' }).click()
  const row = page.locator('.line', { hasText: 'the elbow before' })
  await row.getByRole('button', { name: '1 picture' }).click()
  await expect(row.locator('img')).toHaveJSProperty('naturalWidth', 1)
})

test('a picture that was chosen is kept before the entry is written, and goes with it', async ({
  page,
  served,
  context,
}) => {
  await putBoat(served)
  await page.goto(served.address + logbook.slice(1))
  await page.getByRole('radio', { name: 'Note or picture' }).check({ force: true })
  await page.getByLabel('In your words').fill('the elbow, still in place')
  const choose = page.locator('input[type=file][multiple]')
  await choose.setInputFiles({ name: 'elbow.png', mimeType: 'image/png', buffer: onePixel })
  await choose.setInputFiles({ name: 'wrong.png', mimeType: 'image/png', buffer: onePixel })
  const chosen = page.getByRole('list', { name: 'Pictures chosen' }).getByRole('listitem')
  await page.getByRole('button', { name: /^Take it away.*wrong.png/ }).click()
  await expect(chosen).toHaveText([/elbow\.png/])
  // As after a crash: another tab, and this one gone.
  const other = await context.newPage()
  await page.close()
  await other.goto(served.address + logbook.slice(1))
  const kept = other.getByRole('list', { name: 'Pictures chosen' }).getByRole('listitem')
  await expect(kept).toHaveText([/elbow\.png/])
  await other.getByRole('button', { name: 'Write it in' }).click()
  await expect(kept).toHaveCount(0)
  await expect
    .poll(async () => (await keptEntries(served)).at(-1)?.body)
    .toMatchObject({ text: 'the elbow, still in place', photographs: [{ type: 'image/png' }] })
  await other.reload()
  await expect(other.getByText('Last read 5,231 h')).toBeVisible()
  await expect(kept).toHaveCount(0)
})

test('an entry that the server will not take is shown with its reason, mended, and taken', async ({
  page,
  served,
}) => {
  await putBoat(served)
  await page.goto(served.address + logbook.slice(1))
  await page.getByRole('radio', { name: 'Note or picture' }).check({ force: true })
  await page.getByLabel('In your words').fill('hose before it was changed')
  const choose = page.locator('input[type=file][multiple]')
  const file = (name: string, text: string) => ({
    name,
    mimeType: 'image/png',
    buffer: Buffer.from(text, 'latin1'),
  })
  await choose.setInputFiles(file('letter.png', 'no picture at all'))
  await expect(page.getByText('letter.png is not taken: it is no JPEG, PNG or WebP.')).toBeVisible()
  await choose.setInputFiles(file('hose.png', '\x89PNG\r\n\x1a\n and then it breaks off'))
  await expect(page.getByRole('list', { name: 'Pictures chosen' })).toContainText('hose.png')
  await page.getByRole('button', { name: 'Write it in' }).click()
  const refused = page.locator('.asked', { hasText: 'Not taken' })
  await expect(refused).toContainText('Hose before it was changed')
  await expect(refused).toContainText('a picture that is cut off or damaged')
  await expect(refused).toContainText('The picture is still in this browser')
  expect(await keptEntries(served)).toHaveLength(4)
  await refused.getByRole('button', { name: 'Mend it' }).click()
  await refused.getByLabel('In your words').fill('hose before it was changed, no picture')
  await refused.getByRole('button', { name: 'Send it again' }).click()
  await refused.getByRole('button', { name: 'Send it without that picture' }).click()
  await expect(refused).toHaveCount(0)
  await expect
    .poll(async () => (await keptEntries(served)).at(-1)?.body)
    .toEqual({ text: 'hose before it was changed, no picture' })
})

test('readings are typed and told in the units of the boat, and kept in their own', async ({
  page,
  served,
}) => {
  await putBoat(served, 'petrel', [
    trialEntry(
      5,
      'boat',
      { units: { temperature: 'fahrenheit' } },
      { boat: 'petrel', from: '2026-10-01', until: '2026-10-01' },
    ),
  ])
  await page.goto(served.address + logbook.slice(1))
  await page.getByRole('radio', { name: 'Reading', exact: true }).check({ force: true })
  await page.getByLabel('Test', { exact: true }).selectOption('insulation-test')
  await page.getByLabel('Of which part').selectOption('stator-winding')
  await page.getByLabel('Value').first().fill('1.8')
  await page.getByText('Say more').click()
  await page.getByLabel('Value, Under these conditions 1').fill('64.4')
  await page.getByLabel('Value, Under these conditions 2').fill('500')
  await page.getByRole('button', { name: 'Write it in' }).click()
  await expect(
    page.locator('.line', {
      hasText: 'Stator winding: winding to frame 1.8 MΩ (winding 64.4 °F, tester 500 V)',
    }),
  ).toBeVisible()
  await expect
    .poll(async () => (await keptEntries(served)).at(-1)?.body.conditions)
    .toEqual([
      { name: 'winding', value: 18, unit: 'C' },
      { name: 'tester', value: 500, unit: 'V' },
    ])
})

test('an old paper log is read, judged by its lines, and written in whole', async ({ page, served }) => {
  await putBoat(served)
  await page.goto(served.address + logbook.slice(1))
  const choose = page.getByLabel('The table, as a file of comma-separated values')
  const file = (text: string) => ({ name: 'log.csv', mimeType: 'text/csv', buffer: Buffer.from(text) })
  await choose.setInputFiles(file('date,hours,what\n2019-05-12,4000,ok\nsome day,4010,ok\n'))
  await expect(page.getByText('Nothing is written.')).toBeVisible()
  await expect(page.locator('td', { hasText: 'row 3' })).toBeVisible()
  await choose.setInputFiles(file('date,hours,what\n2019-05-12,4000,impeller renewed\n2019-06-12,4010,\n'))
  await page.getByRole('button', { name: 'Write them in' }).click()
  await expect(page.locator('.year-head', { hasText: '2019' })).toBeVisible()
  await expect.poll(async () => (await keptEntries(served)).length).toBeGreaterThan(5)
})

const onePixel = Buffer.from(
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==',
  'base64',
)

test('a log that was damaged on disk is told as such, and is no empty log', async ({ page }) => {
  const folder = mkdtempSync(join(tmpdir(), 'gensettle-'))
  const before = await serveBuilt(folder)
  await putBoat(before)
  await before.stop()
  const opened = openStore(folder)
  if (!opened.ok) throw new Error('the store must open')
  // A backup is one file without a journal beside it.
  const copy = join(folder, 'copy')
  opened.store.backUp(copy)
  opened.store.close()
  const file = join(copy, 'logbook.db')
  const bytes = readFileSync(file)
  const at = bytes.indexOf('"meterHours":5231')
  expect(at).toBeGreaterThan(0)
  bytes.write('"meterHours":5232', at)
  writeFileSync(file, bytes)
  const served = await serveBuilt(copy)
  try {
    await letIn(page, served)
    await page.goto(served.address + logbook.slice(1))
    await expect(page.getByText('The log cannot be read.')).toBeVisible()
    await expect(page.getByText(trialId(4))).toBeVisible()
  } finally {
    await served.stop()
  }
})
