import { expect, type Page } from '@playwright/test'
import { trialEntry } from '../trial-log.js'
import { keptEntries, putBoat, test } from './boat.js'
import { expectAccessible, expectContrast, expectNothingCutOff, reckoning } from './pages.js'

const looks = (page: Page) => page.getByRole('button', { name: 'Look back', exact: true })

test('looking back: asked for, stopped, gone on with, kept; in three lights and two widths', async ({
  page,
  served,
}) => {
  test.setTimeout(2 * reckoning)
  await page.goto(`${served.address}boats/teasel/main/looking-back`)
  await expect(looks(page)).toBeVisible()
  await looks(page).click()
  await page.getByRole('button', { name: 'stop', exact: true }).click()
  await expect(page.getByText('Stopped before all days were told.')).toBeVisible({ timeout: reckoning })
  await page.getByRole('button', { name: 'go on', exact: true }).click()

  // The answer first, then the drawing with the table behind it.
  const say = page.locator('.say')
  await expect(say).toHaveText(/Too few events to judge by: 0\sparts failed where [\d.]+ were expected\./, {
    timeout: reckoning,
  })
  const drawing = page.getByRole('img', { name: /^All together: 0 came; [\d.]+ expected, likely 0 to \d+$/ })
  await expect(drawing).toBeVisible()
  await page.getByText('The table behind the picture').click()
  await page.locator('.lead button.figure').first().click()
  await expect(page.locator('.opened')).toContainText('as they were told')
  await expect(page.getByRole('row', { name: /Jan\s2026.*did not stop/ })).toBeVisible()
  await expect(page.getByText('No decision and no quote lies behind you yet.')).toBeVisible()
  for (const light of ['Day', 'Dark', 'Red'] as const) {
    await page.getByRole('radio', { name: light }).check({ force: true })
    for (const width of [390, 1280]) {
      await page.setViewportSize({ width, height: 900 })
      if (light === 'Day') await expectAccessible(page)
      else await expectContrast(page)
      await expectNothingCutOff(page)
    }
  }

  // Kept: opened again it is there at once, and nothing starts by itself for other days.
  const said = await say.textContent()
  await page.reload()
  await expect(say).toHaveText(said!)
  await page.getByLabel('24 months').check()
  await expect(page.getByText('Ask, and it is worked out.')).toBeVisible()
  await page.getByLabel('all that had happened by then').check()
  await expect(page.getByText('Nobody could have been told this at the time.')).toBeVisible()
})

test('looking back on a log that says nothing early enough: told, with the other way to go', async ({
  page,
  served,
}) => {
  test.setTimeout(2 * reckoning)
  // Typed in at once, just now.
  const today = { boat: 'petrel', noted: new Date().toISOString() }
  const entries = [
    trialEntry(1, 'boat', { name: 'Petrel', currency: 'GBP' }, today),
    trialEntry(2, 'set', { ratingKw: 7, volts: [230], hertz: 50, rpm: 1500, built: '2004' }, today),
    trialEntry(
      3,
      'quote',
      {
        job: 'starter',
        amount: 640,
        firmness: 'firm',
        subjectToStripDown: false,
        excludes: [],
        covers: { parts: [{ part: 'starter', did: 'renewed' }] },
      },
      { ...today, from: '2024-05-01', until: '2024-05-01' },
    ),
  ]
  const body = JSON.stringify({ entries: entries.map((entry) => JSON.stringify(entry)) })
  await served.ask('/api/boats/petrel/entries', { method: 'POST', body })
  await page.goto(`${served.address}boats/petrel/main/looking-back`)
  await looks(page).click()
  await expect(page.getByText('nothing was noted early enough.')).toBeVisible({ timeout: reckoning })
  await expectAccessible(page)
  await page.getByRole('button', { name: 'Go by the day things happened instead' }).click()
  await page.getByLabel('24 months').check()
  await looks(page).click()

  // No answer was kept with the offer of the time: what would have been said is worked out.
  await expect(page.getByText(/^It would have said then: .+ (saves|to call)/)).toBeVisible({
    timeout: reckoning,
  })
  await expectAccessible(page)
})

test('a decision is kept with its answer, and opens in the logbook; a demonstration says why not', async ({
  page,
  served,
}) => {
  test.setTimeout(2 * reckoning)
  await putBoat(served)
  await page.goto(`${served.address}boats/petrel/main/alternatives`)
  const keep = page.getByRole('region', { name: 'Keep this decision' })
  await expect(keep.getByText('Opens when the answer has settled or was stopped.')).toBeVisible({
    timeout: reckoning,
  })
  // Figures that are first ones only are not kept.
  await expect(page.getByText(/^First figures/)).toBeHidden({ timeout: reckoning })
  const stop = page.getByRole('button', { name: 'stop', exact: true }).first()
  if (await stop.isVisible()) await stop.click()
  await keep.getByLabel('Why').fill('Two summers left')
  for (const width of [390, 1280]) {
    await page.setViewportSize({ width, height: 900 })
    await expectAccessible(page)
    await expectNothingCutOff(page)
  }
  await keep.getByRole('button', { name: 'Keep this decision' }).click()
  await expect(keep.getByText('Kept. It stands in the logbook with its answer.')).toBeVisible()
  await expect
    .poll(async () => (await keptEntries(served)).find(({ kind }) => kind === 'decision')?.body)
    .toMatchObject({ because: 'Two summers left', kept: { seed: 1, program: '0.1.0' } })
  await page.goto(`${served.address}boats/petrel/main/logbook`)
  await page.getByText('The answer it rested on').click()
  await expect(page.getByText('Because: Two summers left')).toBeVisible()
  await expect(page.getByRole('row', { name: /^Leave it, and mend what fails £/ })).toBeVisible()
  await expect(page.getByText(/histories, seed 1, version 0\.1\.0/)).toBeVisible()
  await expectAccessible(page)

  await page.goto(`${served.address}boats/teasel/main/alternatives`)
  await expect(page.getByText('A demonstration boat is only read')).toBeVisible({ timeout: reckoning })
})
