import { expect } from '@playwright/test'
import { test } from './boat.js'
import {
  demonstration,
  expectAccessible,
  expectContrast,
  expectNothingCutOff,
  reckoning,
  textOf,
} from './pages.js'
import { textOfPdf, withoutSpaces } from './pdf-text.js'

test('the brief waits in words, stands in three lights and two widths, and prints on two pages', async ({
  page,
  served,
}) => {
  test.setTimeout(8 * reckoning)
  await page.goto(`${served.address}boats/teasel/${demonstration.teasel}/alternatives`)
  await page.getByRole('link', { name: 'Decision brief' }).click({ timeout: reckoning })
  await expect(page.getByText('The brief waits until the answer stands.')).toBeVisible()
  await expect(page.locator('.brief .signatures')).toBeVisible({ timeout: 6 * reckoning })
  for (const light of ['Day', 'Dark', 'Red'] as const) {
    await page.setViewportSize({ width: 1280, height: 900 })
    await page.getByRole('radio', { name: light }).check({ force: true })
    for (const width of [390, 1280]) {
      await page.setViewportSize({ width, height: 900 })
      await test.step(`${light}, ${width}`, async () => {
        if (light === 'Day') await expectAccessible(page)
        else await expectContrast(page)
        await expectNothingCutOff(page)
      })
    }
  }
  const titles = await page.locator('.brief .passage h2').allInnerTexts()
  const names = await page.locator('.brief .ranges tbody th').allInnerTexts()
  const answer = await textOf(page.locator('.brief .say'))
  expect(titles.length).toBeGreaterThan(8)
  for (const format of ['A4', 'Letter'] as const) {
    const printed = textOfPdf(await page.pdf({ format }))
    expect(printed.pages).toBeLessThanOrEqual(2)
    for (const words of [answer, ...titles, ...names, 'Licensed people and local rules come first']) {
      expect(printed.text).toContain(withoutSpaces(words))
    }
    for (const control of ['Write an entry', 'To the alternatives', 'print this page', 'other pages']) {
      expect(printed.text).not.toContain(withoutSpaces(control))
    }
  }
})
