import { expect } from '@playwright/test'
import { test } from './boat.js'
import { expectAccessible, openPage, reckoning, textOf } from './pages.js'

test('what is worth finding out, what would change the answer and when to replace follow once the figures stand', async ({
  page,
  served,
}) => {
  test.setTimeout(4 * reckoning)
  await openPage(page, served, { boat: 'teasel', name: 'alternatives' })
  const passage = (title: string) =>
    page.locator('section', { has: page.getByRole('heading', { name: title }) })
  const finding = passage('Worth finding out first')
  const changes = passage('What would change it')
  const when = passage('When to replace, if not now')
  await expect(finding.locator('.lead')).toContainText(
    /^(Do this first|Nothing is worth finding out first)/,
    {
      timeout: 2 * reckoning,
    },
  )
  await expect(when).toContainText('As money goes,', { timeout: reckoning })

  const rows = changes.locator('.inputs .row:not(.head)')
  expect(await rows.count()).toBeGreaterThan(8)
  for (const row of await rows.all()) {
    await expect(row.getByRole('img')).toHaveAttribute(
      'aria-label',
      /at its low value the first choice is ahead by/,
    )
    await expect(row).toContainText(/Nowhere from |Under |Over /)
  }
  // Where other years change it stands as a tick on their track, between its two ends.
  const turns = (await textOf(rows.filter({ hasText: 'The years you keep the boat' }))).match(/Under |Over /g)
  const years = page.locator('.fields .field', { hasText: 'Years you will keep the boat' })
  await expect(years.locator('.track-marks i')).toHaveCount(2 + (turns?.length ?? 0))
  await finding.getByText('Looks that do not pay').click()
  const worth = finding.locator('tbody button.figure').first()
  await worth.click()
  await expect(finding).toContainText('Comes from')
  await changes.getByText('The numbers behind').click()
  await changes.getByText('Two inputs at once').click()
  const maps = changes.locator('figure').getByRole('img')
  await expect(maps).toHaveCount(2)
  await expect(maps.first()).toHaveAttribute('aria-label', /^Best alternative by /)
  await when.getByText('Year by year', { exact: true }).click()
  await expect.poll(() => when.locator('tbody tr').count()).toBeGreaterThan(3)
  await expectAccessible(page)
  await page.setViewportSize({ width: 390, height: 844 })
  await expectAccessible(page)
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390)

  // Kept: opened again it is there without being worked out again.
  const said = await textOf(finding.locator('.lead'))
  await page.reload()
  await expect(finding.locator('.lead')).toHaveText(said, { timeout: 10_000 })
})
