import { createHash } from 'node:crypto'
import { expect } from '@playwright/test'
import { trialEntry } from '../trial-log.js'
import { keptEntries, putBoat, test } from './boat.js'
import { expectAccessible, expectContrast, expectNothingCutOff } from './pages.js'

const at = { boat: 'petrel', from: '2026-10-03', until: '2026-10-03' }
const aboard = [
  trialEntry(5, 'load', { id: 'hob', is: 'induction-hob' }, at),
  trialEntry(6, 'load', { id: 'charger', is: 'charger-12v-100' }, at),
  trialEntry(7, 'load', { id: 'watermaker', is: 'watermaker-small' }, at),
  trialEntry(8, 'habits', { setHours: { cooking: 2, charging: 3 }, days: { warm: 100 } }, at),
]

const sha256Of = (bytes: Buffer) => createHash('sha256').update(bytes).digest('hex')

test('the day is planned and kept; a recording is mapped, written in and followed', async ({
  page,
  served,
}) => {
  test.setTimeout(120_000)
  await putBoat(served, 'petrel', aboard)
  await page.goto(`${served.address}boats/petrel/main/plan`)
  await expect(page.getByRole('img', { name: /^The set by the hour/ })).toBeVisible({ timeout: 60_000 })
  for (const width of [390, 1280]) {
    await page.setViewportSize({ width, height: 900 })
    await expectNothingCutOff(page)
  }
  await expectAccessible(page)
  for (const light of ['Day', 'Dark', 'Red']) {
    await page.getByRole('banner').getByText(light, { exact: true }).click()
    await expectContrast(page)
  }

  const rows = [...Array(600).keys()].map(
    (n) => `2026-07-01 ${18 + Math.floor(n / 300)}:${String(n % 60).padStart(2, '0')}:00`,
  )
  const buffer = Buffer.from(`when,reading\n${[...new Set(rows)].map((time) => `${time},1200`).join('\n')}\n`)
  await page
    .getByLabel('Recording', { exact: true })
    .setInputFiles({ name: 'week.csv', mimeType: 'text/csv', buffer })
  await expect(page.getByText('It cannot be read yet:')).toBeVisible()
  await page.getByLabel('Time is in').selectOption('when')
  await page.getByLabel('Power or current is in').selectOption('reading')
  await page.getByLabel('Its unit').selectOption('W')
  await expect(page.getByText(/at most 1.2 kW/)).toBeVisible()
  await page.getByRole('button', { name: 'Write it into the log' }).click()
  await expect(page.getByRole('img', { name: /^Measured load/ })).toBeVisible()
  await page.getByText('The recording', { exact: true }).click()
  await expect(page.getByRole('rowheader', { name: 'Today, as recorded' })).toHaveCount(1)
  await expect
    .poll(async () => (await keptEntries(served)).find(({ kind }) => kind === 'measured')?.body)
    .toMatchObject({ file: { name: 'week.csv', bytes: buffer.length, sha256: sha256Of(buffer) } })

  const stream = [...Array(120).keys()].flatMap((n) =>
    ['genset', 'shore'].map((source) => {
      const timestamp = new Date(Date.UTC(2026, 6, 1, 18) + 60_000 * n).toISOString()
      const values = [{ path: `electrical.ac.${source}.phase.single.realPower`, value: 2150 }]
      return JSON.stringify({ updates: [{ timestamp, values }] })
    }),
  )
  const log = Buffer.from(`${stream.join('\n')}\n`)
  await page
    .getByLabel('Recording', { exact: true })
    .setInputFiles({ name: 'day.jsonl', mimeType: 'application/json', buffer: log })
  await page.getByLabel(/^Signal K source/).selectOption('electrical.ac.genset')
  await expect(page.getByText(/at most 2.15 kW/)).toBeVisible()
  await page.getByRole('button', { name: 'Write it into the log' }).click()
  await page.getByText('The list, corrected by it', { exact: true }).click()
  await page.getByRole('button', { name: 'Keep it as the use from now on' }).click({ timeout: 60_000 })
  await expect
    .poll(async () =>
      (await keptEntries(served))
        .filter(({ kind }) => kind === 'measured' || kind === 'use')
        .map(({ kind }) => kind),
    )
    .toEqual(expect.arrayContaining(['measured', 'use']))
})
