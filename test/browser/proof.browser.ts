import { expect } from '@playwright/test'
import { trialEntry } from '../trial-log.js'
import { keptEntries, putBoat, test } from './boat.js'
import { expectAccessible, expectContrast, expectNothingCutOff } from './pages.js'
import { textOfPdf, withoutSpaces } from './pdf-text.js'

const at = { boat: 'petrel', from: '2026-10-20', until: '2026-10-20' }
const washed = trialEntry(
  20,
  'work',
  { parts: [{ part: 'stator-winding', did: 'cleaned' }], by: 'owner', why: 'found' },
  at,
)

test('on a phone: what is owed, one test with its steps, a doubt, a stop, an entry, and the report on paper', async ({
  page,
  served,
}) => {
  await putBoat(served, 'petrel', [washed])
  await page.setViewportSize({ width: 390, height: 844 })
  await page.goto(`${served.address}boats/petrel/main/proof`)
  await expect(page.getByText('Before turning it: one test is owed.')).toBeVisible()
  await expectAccessible(page)
  await expectNothingCutOff(page)

  await page.getByRole('button', { name: /Make it.*Volts on metalwork/ }).click()
  await expect(page.getByRole('heading', { level: 1, name: 'Volts on metalwork' })).toBeFocused()
  await expect(page.getByRole('textbox', { name: /Metal to bond or water/ })).toBeHidden()
  await page.getByRole('button', { name: /I stand clear/ }).click()
  await expect(page.getByRole('textbox', { name: /Metal to bond or water/ })).toBeVisible()
  await page.getByRole('button', { name: 'Leave it for now' }).click()

  await page.getByRole('button', { name: /Make it.*Insulation resistance/ }).click()
  await page.getByRole('textbox', { name: /Winding to frame/ }).fill('1800')
  await page.getByLabel(/came on: unit/).selectOption('kohm')
  await page.getByRole('button', { name: 'See the verdict' }).click()
  await expect(page.getByText('Not given: temperature of the winding itself.')).toBeVisible()
  await page.getByRole('textbox', { name: 'Temperature of the winding itself' }).fill('18')
  await page.getByLabel(/Who measured it/).fill('the keeper')
  await page.getByRole('button', { name: 'See the verdict' }).click()
  await expect(page.getByText(/The winding reads 0\.392\sMΩ at 40\s°C/)).toBeVisible()
  await expectAccessible(page)
  await expectNothingCutOff(page)
  await page.getByRole('button', { name: 'Write it into the log' }).click()

  await expect(page.getByText('Stop before energising it: insulation too low.')).toBeVisible()
  for (const light of ['Dark', 'Red'] as const) {
    await page.getByRole('radio', { name: light }).check({ force: true })
    await expectContrast(page)
  }
  await page.getByRole('radio', { name: 'Day' }).check({ force: true })
  await expect
    .poll(async () => (await keptEntries(served)).at(-1)?.body)
    .toMatchObject({ test: 'insulation-test', part: 'stator-winding', testedBy: 'the keeper' })

  await page.getByRole('link', { name: 'Proof report, to be printed' }).click()
  await expect(page.getByRole('heading', { level: 1, name: 'Proof report' })).toBeVisible()
  await expectAccessible(page)
  await expectNothingCutOff(page)
  for (const format of ['A4', 'Letter'] as const) {
    const printed = textOfPdf(await page.pdf({ format }))
    expect(printed.pages).toBeLessThanOrEqual(2)
    for (const words of [
      'Stop line, Insulation too low',
      'the keeper',
      'US Army',
      'Tested by, day',
      'Licensed people and local rules',
    ]) {
      expect(printed.text).toContain(withoutSpaces(words))
    }
    expect(printed.text).not.toContain(withoutSpaces('Write an entry'))
  }
})
