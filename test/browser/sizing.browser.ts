import { expect } from '@playwright/test'
import { trialEntry } from '../trial-log.js'
import { keptEntries, putBoat, test } from './boat.js'
import { expectAccessible, expectContrast, expectNothingCutOff } from './pages.js'

const at = { boat: 'petrel', from: '2026-10-03', until: '2026-10-03' }
const aboard = [
  trialEntry(5, 'load', { id: 'oven', is: 'oven' }, at),
  trialEntry(6, 'load', { id: 'hob', is: 'induction-hob' }, at),
  trialEntry(7, 'load', { id: 'water-heater', is: 'water-heater-75' }, at),
  trialEntry(8, 'habits', { setHours: { cooking: 1.5, evening: 2 }, days: { warm: 100 } }, at),
]

test('the page of a boat without loads begins her list, and sizes what is put on it', async ({
  page,
  served,
}) => {
  await putBoat(served)
  await page.goto(`${served.address}boats/petrel/main/sizing`)
  await expect(page.getByText('no load is in this log')).toBeVisible()
  await page.getByLabel('Find a load in the catalogue').fill('heater water')
  await expect(page.getByText('2 loads')).toBeVisible()
  await page.getByRole('button', { name: 'Put on the list: Water heater, 75 litres' }).click()
  await expect(page.getByRole('rowheader', { name: 'water heater 75' })).toBeVisible()
  await expect(page.getByRole('heading', { name: 'What carries it' })).toBeVisible()
  await expect
    .poll(async () => (await keptEntries(served)).find(({ kind }) => kind === 'load')?.body)
    .toEqual({ id: 'water-heater-75', is: 'water-heater-75' })
  await page.getByText('Take something off the list').click()
  await page.getByRole('button', { name: 'Take off: water heater 75' }).click()
  await expect(page.getByText('no load is in this log')).toBeVisible()
})

test('what a smaller set asks is found, written as rules and reckoned with', async ({ page, served }) => {
  await putBoat(served, 'petrel', aboard)
  await page.goto(`${served.address}boats/petrel/main/sizing`)
  await expect(page.getByText(/Saved in the 10 years/)).toBeVisible({ timeout: 40_000 })
  const drawing = page.getByRole('img', { name: /Load and how long it lasts/ })
  await expect(drawing).toBeVisible()
  await page.getByText('Cooking', { exact: true }).click()
  await expect(page.getByRole('img', { name: /how long it lasts, cooking/ })).toBeVisible()
  await page
    .getByRole('button', { name: /^Keep to these rules/ })
    .first()
    .click()
  await expect(page.getByRole('heading', { name: 'Rules of the house' })).toBeVisible()
  const rules = async () => (await keptEntries(served)).filter(({ kind }) => kind === 'house-rule').length
  await expect.poll(rules).toBeGreaterThan(0)

  await page.getByRole('button', { name: 'Say where it stands' }).click()
  await page.getByLabel('Air in the engine space, at its warmest').fill('58')
  await page.getByRole('button', { name: 'Write it', exact: false }).last().click()
  await expect(page.getByText('does not suit the place').first()).toBeVisible()
})

test('nothing to fault in three lights and two widths', async ({ page, served }) => {
  await page.route('**/*.worker-*', (route) => route.abort())
  await putBoat(served, 'petrel', aboard)
  await page.goto(`${served.address}boats/petrel/main/sizing`)
  await expect(page.getByRole('heading', { name: 'What carries it' })).toBeVisible()
  await page
    .getByText(/things that speak against it/)
    .first()
    .click()
  for (const light of ['Day', 'Dark', 'Red']) {
    await page.getByRole('radio', { name: light, exact: true }).check({ force: true })
    for (const width of [390, 1280]) {
      await page.setViewportSize({ width, height: 900 })
      if (light === 'Day') await expectAccessible(page)
      else await expectContrast(page)
      await expectNothingCutOff(page)
    }
  }
  await page.setViewportSize({ width: 360, height: 800 })
  await expectNothingCutOff(page)
})
