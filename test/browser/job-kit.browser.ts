import { expect } from '@playwright/test'
import { trialEntry } from '../trial-log.js'
import { keptEntries, putBoat, test } from './boat.js'
import { expectAccessible, expectContrast, expectNothingCutOff } from './pages.js'
import { textOfPdf, withoutSpaces } from './pdf-text.js'

const at = { boat: 'petrel', from: '2026-10-20', until: '2026-10-20' }
const decided = trialEntry(
  20,
  'decision',
  {
    choice: 'Renew bearing and belt',
    job: 'bearing',
    parts: [
      { part: 'outboard-bearing', did: 'renewed' },
      { part: 'drive-belt', did: 'renewed' },
    ],
  },
  at,
)
const old = trialEntry(21, 'particulars', { part: 'outboard-bearing', number: '6305-2RS/C3' }, at)

test('on a phone: a kit from what is settled over an order that does not match to a job that can begin, and its lists on paper', async ({
  page,
  served,
}) => {
  await putBoat(served, 'petrel', [decided, old])
  await page.setViewportSize({ width: 390, height: 844 })
  await page.goto(`${served.address}boats/petrel/main/job-kit`)
  await expect(
    page.getByText(/Do not begin: alternator outboard bearing is still to be ordered/),
  ).toBeVisible()

  // what is found out is written, and told to the supplier
  await page.getByText(/^Drive belt: \d of \d open$/).click()
  await page.getByLabel(/Which length stands on the belt/).fill('1,000 mm inside')
  await page.getByRole('button', { name: 'Write them down' }).click()
  await expect
    .poll(async () => (await keptEntries(served)).at(-1)?.body)
    .toMatchObject({ part: 'drive-belt', answers: [{ question: 'belt-length', answer: '1,000 mm inside' }] })
  await expectAccessible(page)
  await expectNothingCutOff(page)

  // the wrong bearing is told as soon as it is ordered
  await page.getByText('Write down what was ordered, or is aboard: bearing and seal house').click()
  await page.getByLabel(/Number of the alternator outboard bearing/).fill('6205-2RS/C3')
  await page.getByLabel('From whom').fill('the bearing house')
  await page.getByLabel('Expected').fill('soon')
  await expect(page.getByText('A day, a month or a year: 4 Dec 2026.')).toBeVisible()
  await page.getByLabel('Expected').fill('4 Dec 2026')
  await page.getByRole('button', { name: 'Write: ordered' }).click()
  await expect
    .poll(async () => (await keptEntries(served)).at(-1)?.body)
    .toMatchObject({
      state: 'ordered',
      job: 'bearing',
      supplier: 'the bearing house',
      expected: '2026-12-04',
    })
  await expect(page.getByText(/Do not begin: alternator outboard bearing does not match/)).toBeVisible()
  await expect(page.getByText(/outside diameter 52 mm, not 62 mm/).first()).toBeVisible()

  // one of the pieces comes, and differs
  await page.getByRole('button', { name: 'It came: drive belt' }).click()
  await page.getByRole('button', { name: 'It differs: drive belt' }).click()
  await page.getByLabel('What differs from the old one').fill('25 mm longer')
  await page.getByRole('button', { name: 'Write: it does not match' }).click()
  await expect(page.getByText(/Does not match \(25 mm longer\)/)).toBeVisible()
  for (const light of ['Dark', 'Red'] as const) {
    await page.getByRole('radio', { name: light }).check({ force: true })
    await expectContrast(page)
  }
  await page.getByRole('radio', { name: 'Day' }).check({ force: true })
  await page.setViewportSize({ width: 1280, height: 900 })
  await expectNothingCutOff(page)
  const printed = textOfPdf(await page.pdf({ format: 'A4' }))
  for (const words of ['Bearing and seal house', 'number on the old one: 6305-2RS/C3', '1,000 mm inside']) {
    expect(printed.text).toContain(withoutSpaces(words))
  }
  expect(printed.text).not.toContain(withoutSpaces('Copy as a message'))

  // the right ones lie aboard; what was on its way comes and is held against the old
  await page.getByLabel(/Number of the alternator outboard bearing/).fill('6305 DDU C3')
  await page.getByRole('button', { name: 'Write: aboard, and like the old' }).click()
  for (const piece of ['O-ring of the housing', 'circlip']) {
    await page.getByRole('button', { name: `It came: ${piece}` }).click()
    await page.getByRole('button', { name: `It is like the old one: ${piece}` }).click()
  }
  await expect(page.getByText('You can begin.')).toBeVisible()
})
