import { expect } from '@playwright/test'
import { trialEntry } from '../trial-log.js'
import { keptEntries, putBoat, test } from './boat.js'
import { goTo, hasCome, reckoning, stopRefining } from './pages.js'

test('an American boat reads of ground and GFCI on every page, and nowhere of earth or petrol', async ({
  page,
  served,
}) => {
  test.setTimeout(2 * reckoning)
  const at = { boat: 'petrel', from: '2026-10-03', until: '2026-10-03' }
  const about = [{ part: 'stator-winding', mode: 'insulation' }]
  await putBoat(served, 'petrel', [
    trialEntry(5, 'boat', { words: 'american', units: { volume: 'us-gallon' } }, at),
    trialEntry(6, 'finding', { about, verdict: 'unsure', seen: 'damp' }, at),
    trialEntry(7, 'set', { has: ['residual-current-device'] }, at),
  ])
  const british = /\bearth|\bRCD\b|petrol|\blitre/i
  const own = page.locator('main')
  await page.goto(`${served.address}boats/petrel/main/logbook`)
  await expect(page.locator('.line', { hasText: 'Damp' }).first()).toBeVisible()
  await page.getByRole('radio', { name: 'Finding', exact: true }).check({ force: true })
  await page.getByLabel('Part', { exact: true }).selectOption('stator-winding')
  await expect(page.getByLabel('How it fails, if that is known')).toContainText('to ground')
  await expect(own).not.toContainText(british)
  await page.getByRole('link', { name: 'Set', exact: true }).first().click()
  await expect(page.locator(hasCome.set).first()).toBeVisible({ timeout: reckoning })
  await expect(own).toContainText('Battery and ground cables')
  await expect(own).toContainText('GFCI or ELCI')
  await expect(own).not.toContainText(british)
  for (const name of ['Forecast', 'Alternatives'] as const) {
    await goTo(page, name)
    if (name === 'Alternatives') await stopRefining(page)
    for (const summary of await page.locator('details.behind > summary').all()) await summary.click()
    const all = page.getByRole('button', { name: /^Show all/ })
    if (await all.isVisible()) await all.click()
    await expect(own).not.toContainText(british)
  }
  await expect(own).toContainText('shore cord out')
  await page.getByRole('link', { name: 'Settings' }).first().click()
  await page.getByLabel('Fuel, a US gallon').fill('4')
  await page.getByRole('button', { name: 'Write it into the log' }).click()
  await expect.poll(async () => (await keptEntries(served)).at(-1)?.body).toEqual({ fuelPerLitre: 1.05669 })
})
