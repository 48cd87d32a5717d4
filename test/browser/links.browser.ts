import { expect } from '@playwright/test'
import { keptEntries, putBoat, test } from './boat.js'
import { expectAccessible, expectContrast, expectNothingCutOff } from './pages.js'
import { textOfPdf, withoutSpaces } from './pdf-text.js'

test('leads are drawn by tapping, written as found and as left, compared, and go on the sheet for the workshop', async ({
  page,
  served,
}) => {
  await putBoat(served)
  await page.setViewportSize({ width: 390, height: 844 })
  await page.goto(`${served.address}boats/petrel/main/links`)
  await expect(page.getByText('draw the leads as they are before one of them is undone')).toBeVisible()
  const lead = (mark: string) => page.getByRole('button', { name: new RegExp(`^Lead ${mark},`) })
  const joined = page.getByLabel('Joined', { exact: true })
  await lead('T2').click()
  await lead('T3').click()
  await expect(joined).toHaveValue('T2-T3')
  for (const [name, mark] of [
    ['L', 'T1'],
    ['N', 'T4'],
    ['S1', 'T1'],
    ['S2', 'T4'],
  ] as const) {
    await page.getByRole('button', { name, exact: true }).click()
    await lead(mark).click()
  }
  await expect(page.getByLabel('Lines and neutral')).toHaveValue('L=T1, N=T4')
  await page.getByRole('button', { name: 'Write it into the log' }).click()
  await expect(page.getByText('As found: 230 V between L and N')).toBeVisible()

  await expect(page.getByRole('radio', { name: 'as left' })).toBeChecked()
  await joined.fill('T2-T9')
  await expect(page.getByText('T9: one of: T1, T2, T3, T4')).toBeVisible()
  await joined.fill('T2-T4')
  await page.getByLabel('Lines and neutral').fill('L=T1, N=T3')
  await expect(page.getByText('together they give nothing').first()).toBeVisible()
  await page.getByRole('button', { name: 'Write it into the log' }).click()
  const stop = page.getByRole('heading', { name: 'Do not start it. As left, L to N: 0 V; as found: 230 V.' })
  await expect(stop).toBeVisible()
  await expect(page.getByRole('row', { name: 'T2 with T3 with T4' })).toBeVisible()
  const states = async () =>
    (await keptEntries(served)).filter(({ kind }) => kind === 'links').map(({ body }) => body.state)
  await expect.poll(states).toEqual(['as-found', 'as-left'])
  await page.getByLabel('Wired for').selectOption('115-50')
  await expect(page.getByRole('row', { name: /Halves in parallel T1-T3, T2-T4.*as made/ })).toBeVisible()

  const box = (name: string | RegExp) => page.getByLabel(name)
  await box(/^Volts of one pair/).fill('20')
  await box(/^The 2 pairs/).fill('a-b 0.31, c-d 0.31')
  await expect(page.getByText('Join a and c, and measure between b and d.')).toBeVisible()
  await box('It reads, volts').fill('28')
  await page.getByRole('button', { name: 'Take it over' }).click()
  await expect(page.getByText('a-c 28: lies between two answers')).toBeVisible()
  await box(/^Measured so far/).fill('a-c 40')
  await expect(page.getByRole('row', { name: 'd T3' })).toBeVisible()

  for (const width of [1280, 390]) {
    await page.setViewportSize({ width, height: 900 })
    await expectAccessible(page)
    await expectNothingCutOff(page)
  }
  for (const light of ['Dark', 'Red'] as const) {
    await page.getByRole('radio', { name: light }).check({ force: true })
    await expectContrast(page)
  }
  const compared = textOfPdf(await page.pdf({ format: 'A4' }))
  expect(compared.text).toContain(withoutSpaces('Do not start it'))
  expect(compared.text).toContain('gone')
  expect(compared.text).not.toContain(withoutSpaces('Write it into the log'))

  await page.getByRole('radio', { name: 'Day' }).check({ force: true })
  await page.getByRole('link', { name: 'Sheet for the workshop' }).click()
  await page.getByRole('checkbox', { name: 'rewind the stator' }).check()
  await page.getByLabel(/^Ask first above/).fill('2,400')
  await expect(page.getByText('2,400 GBP, tax in.')).toBeVisible()
  await expectAccessible(page)
  await expectNothingCutOff(page)
  for (const format of ['A4', 'Letter'] as const) {
    const printed = textOfPdf(await page.pdf({ format }))
    expect(printed.pages).toBeLessThanOrEqual(4)
    for (const words of ['Core test', 'Tests wanted', '1460 V', 'Joined: T2-T3', 'Received by']) {
      expect(printed.text).toContain(withoutSpaces(words))
    }
    expect(printed.text).not.toContain(withoutSpaces('In your words'))
  }
})
