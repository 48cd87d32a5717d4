import { expect } from '@playwright/test'
import { trialEntry } from '../trial-log.js'
import { keptEntries, putBoat, test } from './boat.js'
import { expectAccessible, expectContrast, expectNothingCutOff } from './pages.js'

const at = { boat: 'petrel', from: '2026-10-03', until: '2026-10-03' }
const offer = {
  job: 'rewind',
  covers: { parts: [{ part: 'stator-winding', did: 'renewed' as const }] },
} as const
const offers = [
  trialEntry(
    5,
    'quote',
    {
      ...offer,
      amount: 2900,
      offeredBy: 'the winding shop',
      firmness: 'estimate',
      subjectToStripDown: true,
      excludes: ['removal', 'refitting', 'carriage'],
      tax: { included: false, percent: 20 },
    },
    at,
  ),
  trialEntry(
    6,
    'quote',
    {
      ...offer,
      amount: 5200,
      offeredBy: 'the yard',
      firmness: 'firm',
      subjectToStripDown: false,
      excludes: [],
      includes: ['removal', 'refitting', 'carriage', 'testing'],
      guaranteeMonths: 12,
      daysOut: 25,
      stagePayments: [
        { when: 'order', share: 0.5 },
        { when: 'tested', share: 0.5 },
      ],
    },
    at,
  ),
  trialEntry(
    7,
    'quote',
    {
      ...offer,
      amount: 3900,
      offeredBy: 'a mainland shop',
      currency: 'EUR',
      firmness: 'firm',
      subjectToStripDown: false,
      excludes: [],
    },
    at,
  ),
  trialEntry(
    8,
    'decision',
    { choice: 'rewind it if it stays cheap', job: 'rewind', walkAwayPrice: 5100 },
    at,
  ),
]

test('offers stand side by side with why, a figure is set, and what is to be asked is copied', async ({
  page,
  served,
  context,
}) => {
  await context.grantPermissions(['clipboard-read', 'clipboard-write'])
  await putBoat(served, 'petrel', offers)
  await page.goto(`${served.address}boats/petrel/main/job-quotes?job=rewind`)
  await expect(page.getByRole('img', { name: /^The yard: one in ten below/ })).toBeVisible({
    timeout: 30_000,
  })
  await expect(page.getByText('where something else is better.')).toBeVisible()
  await expect(page.getByText('It is in another money than the boat’s')).toBeVisible()
  await expect(page.getByText(/is paid before any work\.$/)).toBeVisible()

  // the figures of a line open, and one is set
  const lines = page.getByRole('table', { name: 'The winding shop' })
  await page
    .getByRole('region', { name: 'Line by line' })
    .getByText('The winding shop', { exact: true })
    .click()
  await lines.getByRole('button', { name: /^Left out: carriage/ }).click()
  await expect(page.getByText('Usual price of carriage')).toBeVisible()
  for (const width of [390, 1280]) {
    await page.setViewportSize({ width, height: 900 })
    await expectNothingCutOff(page)
  }
  await expectAccessible(page)
  for (const light of ['Day', 'Dark', 'Red']) {
    await page.getByRole('banner').getByText(light, { exact: true }).click()
    await expectContrast(page)
  }
  await page.getByLabel(/Usual price of carriage/).fill('900')
  await page.getByLabel(/Usual price of carriage/).press('Enter')
  await expect
    .poll(async () => (await keptEntries(served)).find(({ kind }) => kind === 'overrule')?.body)
    .toEqual({ path: 'offers.carriage.price.typical', value: 900 })

  // what is to be asked
  await page
    .getByRole('button', { name: /^Copy the message/ })
    .first()
    .click()
  await expect(page.getByText('Copied.')).toBeVisible()
  const copied = await page.evaluate(() => navigator.clipboard.readText())
  expect(copied).toMatch(/^Hello,\n\nthank you for your offer of 3.Oct.2026 \(rewind\)/)
  expect(copied).toMatch(/1\. .+\?/)
  expect(copied).not.toContain('@')
})
