import { expect, type Page } from '@playwright/test'
import { keptEntries, putBoat, test } from './boat.js'
import { arrived, goTo, openPage, reckoning, stopRefining, textOf } from './pages.js'

test('every figure of the alternatives opens in place to what it is and what it comes from', async ({
  page,
  served,
}) => {
  test.setTimeout(reckoning)
  await openPage(page, served, { boat: 'marram', name: 'alternatives' })
  await stopRefining(page)
  for (const cell of await page.locator('.alternatives .row:not(.head) > .number').all()) {
    await expect(cell.locator('button.figure').first()).toBeVisible()
  }
  const row = page.locator('.alternatives .row:not(.head)').nth(2)
  const names: string[] = []
  for (const figure of await row.locator('button.figure').all()) {
    const said = await textOf(figure)
    // What a screen reader says holds the number that is seen.
    expect(await figure.getAttribute('aria-label')).toContain(said)
    await figure.focus()
    await page.keyboard.press('Enter')
    await expect(figure).toHaveAttribute('aria-expanded', 'true')
    const opened = row.locator('.opened')
    await expect(opened).toHaveCount(1)
    await expect(opened).toContainText('Comes from')
    names.push(await textOf(opened.locator('b').first()))
    await page.keyboard.press('Space')
    await expect(opened).toHaveCount(0)
  }
  expect(new Set(names).size, 'each of them is another figure').toBe(5)

  const saving = page.locator('.lead button.figure').first()
  const amount = await textOf(saving)
  await saving.click()
  const opened = page.locator('.lead + .opened')
  await expect(opened).toContainText(amount)
  await expect(opened).toContainText('history by history')
  await expect(opened).toContainText(/entry \d+ of the log/)

  await page.getByText('The table behind the picture').click()
  await page.getByText('How it was worked out').click()
  for (const cell of await page.locator('table.numbers tbody td').all()) {
    await expect(cell.locator('button.figure')).toHaveCount(1)
  }
})

test('figures of the forecast and the set open to the catalogue’s source, on a phone by their whole row, and are set by an entry', async ({
  page,
  served,
}) => {
  test.setTimeout(reckoning)
  await putBoat(served)
  await page.goto(`${served.address}boats/petrel/main/forecast`)
  await arrived(page, 'forecast')
  const leads = page.locator('.lead button.figure')
  await expect(leads).toHaveCount(4)
  await page.getByText('All parts, in figures').click()
  for (const cell of await page.locator('table.numbers tbody tr').first().locator('td').all()) {
    await expect(cell.locator('button.figure')).toHaveCount(1)
  }
  const row = page.locator('.boats .row.opens').first()
  const name = row.locator('b').first()
  await page.setViewportSize({ width: 390, height: 844 })
  // The number covers its row.
  await name.click({ force: true })
  await expect(row.locator('.opened')).toContainText('within 3 months')
  await name.click({ force: true })
  await expect(row.locator('.opened')).toHaveCount(0)
  await page.setViewportSize({ width: 1280, height: 900 })
  await name.click()
  await expect(row.locator('.opened'), 'with a pointer the number alone opens').toHaveCount(0)
  await goTo(page, 'Set')
  const time = page.locator('.group h3 button.figure').first()
  await time.click()
  const opened = page.locator('.group .opened').first()
  await expect(opened).toContainText('common practice')
  const field = opened.getByRole('textbox').first()
  await expect(field).toHaveAccessibleName(/^Overrule: /)
  await field.fill('nonsense')
  await field.press('Enter')
  await expect(opened).toContainText('Type a number')
  await field.fill('1.5')
  await field.press('Enter')
  await expect
    .poll(async () => (await keptEntries(served)).at(-1))
    .toMatchObject({ kind: 'overrule', body: { path: expect.stringMatching(/^access\./), value: 1.5 } })
  await followed(page)
})

/** The figures follow the log. */
async function followed(page: Page): Promise<void> {
  await expect(page.getByText('The log has changed; the figures follow.')).toHaveCount(0, {
    timeout: reckoning,
  })
}
