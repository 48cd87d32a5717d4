import { expect, type Page } from '@playwright/test'
import { keptEntries, putBoat, test } from './boat.js'
import { expectAccessible, expectContrast, expectNothingCutOff } from './pages.js'
import { textOfPdf, withoutSpaces } from './pdf-text.js'

type Light = 'Day' | 'Dark' | 'Red'

async function faultless(page: Page, ...lights: readonly Light[]): Promise<void> {
  for (const light of lights) {
    await page.getByRole('radio', { name: light }).check({ force: true })
    if (light === 'Day') await expectAccessible(page)
    else await expectContrast(page)
    await expectNothingCutOff(page)
    await shot(page, light)
  }
  await page.getByRole('radio', { name: 'Day' }).check({ force: true })
}

let at = 0
async function shot(page: Page, light: string): Promise<void> {
  const folder = process.env.GENSETTLE_SHOTS
  if (folder) await page.screenshot({ path: `${folder}/faults-${++at}-${light}.png`, fullPage: true })
}

/** Written and shown: the answer of the case that the server has. */
async function answered(
  served: Parameters<typeof keptEntries>[0],
  part: Record<string, unknown>,
): Promise<void> {
  await expect.poll(async () => (await keptEntries(served)).at(-1)?.body).toMatchObject(part)
}

test('a case on a phone: stop questions first, one thing at a time with back, gone on with after a reload, and closed', async ({
  page,
  served,
}) => {
  test.setTimeout(120_000)
  await page.setViewportSize({ width: 390, height: 844 })
  await putBoat(served)
  await page.goto(`${served.address}boats/petrel/main/faults`)
  await page.getByLabel('What it does, or does not do').fill('no water from exhaust')
  await page.getByRole('button', { name: 'Begin', exact: true }).click()

  // nothing of the list before the stop questions
  await expect(page.locator('.stop h3')).toContainText('carbon monoxide')
  await expect(page.getByLabel('What is seen, heard, smelt or felt')).toHaveCount(0)
  await expect(page.locator('.maybe')).toHaveCount(0)
  await faultless(page, 'Day')
  await page.getByRole('button', { name: 'Yes', exact: true }).click()
  await expect(page.locator('.stop').first()).toContainText('Everyone out into fresh air, now.')
  await page.getByRole('button', { name: 'None of these is so' }).click()
  await expect(page.getByLabel('What is seen, heard, smelt or felt')).toBeVisible()

  await page.getByRole('button', { name: /^Little, thin or no water/ }).click()
  await answered(served, { symptoms: [{ symptom: 'little-water', is: 'present' }] })
  await expect(page.locator('.maybe > li').first()).toContainText('Raw-water impeller worn')
  // back, and again
  await page.getByRole('button', { name: 'Back' }).first().click()
  await answered(served, { symptoms: [] })
  await page.getByRole('button', { name: /^Little, thin or no water/ }).click()
  await page.getByRole('button', { name: 'Yes, it is there' }).click()
  await expect
    .poll(async () => (await keptEntries(served)).at(-1)?.body)
    .toMatchObject({
      symptoms: [{ symptom: 'little-water' }, { is: 'present' }],
    })

  await page.reload()
  await page.getByRole('button', { name: 'On to the next look instead' }).click()
  // gas is still open: no look with the engine running is offered, and what bars it is said
  await expect(page.getByText(/barred until this is cleared: carbon monoxide/).first()).toBeVisible()
  const outcome = page.locator('.look .acts button').first()
  await expect(outcome).toBeDisabled()
  await faultless(page, 'Day', 'Dark', 'Red')
  await page.getByRole('button', { name: 'Yes, all of it' }).click()
  await expect(outcome).toBeEnabled()
  await page.getByRole('button', { name: 'Couldn’t do it' }).click()
  await answered(served, { checks: [{ couldNot: true }] })

  for (const box of await page.locator('.stop input[type=checkbox]').all()) await box.check()
  await page.getByRole('button', { name: 'All of this holds: cleared' }).click()
  await expect(page.locator('.stop').filter({ hasText: 'Everyone out' })).toHaveCount(0)

  await page
    .getByText(/^Why: /)
    .first()
    .click()
  await expect(page.locator('.why').first()).toContainText('times for it')
  await page.setViewportSize({ width: 1280, height: 900 })
  await faultless(page, 'Day', 'Red')
  for (const format of ['A4', 'Letter'] as const) {
    const printed = textOfPdf(await page.pdf({ format }))
    expect(printed.pages).toBeLessThanOrEqual(2)
    for (const words of ['no water from exhaust', 'What it may be', 'Look next', 'It really was']) {
      expect(printed.text).toContain(withoutSpaces(words))
    }
    for (const control of ['Couldn’t do it', 'Close the case', 'Change']) {
      expect(printed.text).not.toContain(withoutSpaces(control))
    }
  }

  await page.getByRole('radio', { name: 'Seacock, hull inlet or strainer blocked or shut' }).check()
  await page.getByRole('button', { name: 'Close the case' }).click()
  await expect(page.getByText('It was: Seacock, hull inlet or strainer blocked or shut.')).toBeVisible()
  const keptOf = async (of: string) => (await keptEntries(served)).filter(({ kind }) => kind === of)
  await expect
    .poll(async () => (await keptOf('case')).at(-1)?.body)
    .toMatchObject({ closed: { as: 'listed', fault: 'intake-blocked' } })
  await expect.poll(() => keptOf('finding')).toHaveLength(1)
})
