import { expect, type Page } from '@playwright/test'
import { test } from './boat.js'
import {
  expectAccessible,
  expectContrast,
  expectNothingCutOff,
  goTo,
  openPage,
  reckoning,
  stopRefining,
  textOf,
} from './pages.js'
import { textOfPdf, withoutSpaces } from './pdf-text.js'

test('the pages of a set in three lights and two widths: nothing to fault, nothing cut off, and red is red alone', async ({
  page,
  served,
}) => {
  test.setTimeout(6 * reckoning)
  await openPage(page, served, { boat: 'marram', name: 'alternatives' })
  await stopRefining(page)
  for (const name of ['Alternatives', 'Forecast', 'Set'] as const) {
    await page.setViewportSize({ width: 1280, height: 900 })
    if (name !== 'Alternatives') await goTo(page, name)
    await openEverything(page)
    for (const light of ['Day', 'Dark', 'Red'] as const) {
      await page.getByRole('radio', { name: light }).check({ force: true })
      for (const width of [390, 1280]) {
        await page.setViewportSize({ width, height: 900 })
        await test.step(`${name}, ${light}, ${width}`, async () => {
          if (light === 'Day') await expectAccessible(page)
          else await expectContrast(page)
          await expectNothingCutOff(page)
          if (light === 'Red') expect(await brightestOtherThanRed(page)).toBe(0)
        })
      }
    }
    for (const width of [360, 1920]) {
      await page.setViewportSize({ width, height: 900 })
      await expectNothingCutOff(page)
    }
  }
})

/** Opens what is folded away, a figure in a sentence and one in a row. */
async function openEverything(page: Page): Promise<void> {
  for (const summary of await page.locator('details.behind > summary').all()) await summary.click()
  for (const figure of ['.lead button.figure', '.opens button.figure']) {
    await page.locator(figure).first().click()
  }
  await expect(page.locator('.opened[role=group]')).toHaveCount(2)
}

/** The most green or blue in any pixel of what is on the screen, of 255. */
async function brightestOtherThanRed(page: Page): Promise<number> {
  const picture = await page.screenshot({ type: 'png' })
  return page.evaluate(async (base64) => {
    const bytes = Uint8Array.from(atob(base64), (char) => char.charCodeAt(0))
    const bitmap = await createImageBitmap(new Blob([bytes], { type: 'image/png' }))
    const canvas = new OffscreenCanvas(bitmap.width, bitmap.height)
    const context = canvas.getContext('2d')!
    context.drawImage(bitmap, 0, 0)
    const { data } = context.getImageData(0, 0, bitmap.width, bitmap.height)
    let most = 0
    for (let i = 0; i < data.length; i += 4) most = Math.max(most, data[i + 1]!, data[i + 2]!)
    return most
  }, picture.toString('base64'))
}

test('alternatives and forecast print on both papers, whole and without their controls', async ({
  page,
  served,
}) => {
  test.setTimeout(4 * reckoning)
  await openPage(page, served, { boat: 'marram', name: 'alternatives' })
  await stopRefining(page)
  const answer = await textOf(page.locator('.say'))
  const stop = await textOf(page.locator('.stop h3').first())
  const names = await page.locator('.alternatives .name b').allInnerTexts()
  for (const format of ['A4', 'Letter'] as const) {
    const printed = textOfPdf(await page.pdf({ format }))
    expect(printed.pages).toBeLessThanOrEqual(3)
    for (const words of [answer, stop, ...names, 'Carbon monoxide', 'Your quote']) {
      expect(printed.text).toContain(withoutSpaces(words))
    }
    for (const control of [
      'Write an entry',
      'go on',
      'The table behind the picture',
      'To the page',
      'other pages',
    ]) {
      expect(printed.text).not.toContain(withoutSpaces(control))
    }
  }
  await goTo(page, 'Forecast')
  const coming = await textOf(page.locator('.say'))
  const parts = await page.locator('.boats .row b').allInnerTexts()
  for (const format of ['A4', 'Letter'] as const) {
    const printed = textOfPdf(await page.pdf({ format }))
    expect(printed.pages).toBeLessThanOrEqual(3)
    for (const words of [coming, ...parts]) expect(printed.text).toContain(withoutSpaces(words))
    expect(printed.text).not.toContain(withoutSpaces('Show all'))
  }
})
