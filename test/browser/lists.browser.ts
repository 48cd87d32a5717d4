import { expect } from '@playwright/test'
import { keptEntries, putBoat, test } from './boat.js'
import { arrived, reckoning, stopRefining } from './pages.js'

test('months and the price of being without power are lists to add to and take from, all problems at once', async ({
  page,
  served,
}) => {
  await page.route('**/*.worker-*', (route) => route.abort())
  await putBoat(served)
  await page.goto(`${served.address}boats/petrel/main/settings`)
  const power = page.getByRole('group', { name: 'Price of being without power, by season' })
  await power.getByRole('checkbox', { name: 'May', exact: true }).check()
  await power.getByRole('checkbox', { name: 'June' }).check()
  await power.getByLabel('After so many days').fill('1')
  await power.getByLabel('it has cost in all').fill('forty')
  await power.getByRole('button', { name: 'One more length' }).click()
  await power.getByLabel('After so many days').nth(1).fill('7')
  await page.getByLabel('Your own hour').fill('twelve')
  const write = page.getByRole('button', { name: 'Write it into the log' })
  await write.click()
  await expect(page.getByText('Type a number, such as 1,200 or 0.4.')).toHaveCount(2)
  await page.reload()
  await expect(power.getByLabel('After so many days')).toHaveCount(2)
  await expect(power.getByRole('checkbox', { name: 'June' })).toBeChecked()
  await power.getByLabel('it has cost in all').first().fill('40')
  await power
    .getByRole('button', { name: /^Take this one away/ })
    .last()
    .click()
  await page.getByLabel('Your own hour').fill('12')
  await write.click()
  await expect(page.getByText('Written. All figures follow it.')).toBeVisible()
  await expect
    .poll(async () => (await keptEntries(served)).at(-1)?.body)
    .toEqual({ ownPerHour: 12, withoutPower: [{ months: [5, 6], curve: [{ days: 1, price: 40 }] }] })

  const year = page.getByRole('group', { name: 'A usual year, by month' })
  await page.getByRole('group', { name: 'Months in use' }).getByRole('checkbox', { name: 'July' }).check()
  await year.getByLabel('Month', { exact: true }).selectOption('July')
  await year.getByLabel('Running hours').fill('60')
  await page.getByRole('button', { name: 'Write the use into the log' }).click()
  await expect(page.getByText('Missing:')).toHaveCount(3)
  await year.getByLabel('Starts').fill('30')
  await year.getByLabel('Days that want power').fill('70')
  await year.getByLabel('Hours under a third of its load').fill('20')
  await page.getByRole('button', { name: 'Write the use into the log' }).click()
  await expect
    .poll(async () => (await keptEntries(served)).slice(-2).map(({ body }) => body))
    .toEqual([
      { monthsInUse: [7] },
      { months: [{ month: 7, hours: 60, starts: 30, needShare: 0.7, lowLoadShare: 0.2 }] },
    ])
})

test('an alternative of one’s own is laid out, kept while it is typed, and written', async ({
  page,
  served,
}) => {
  test.setTimeout(reckoning)
  await putBoat(served)
  await page.goto(`${served.address}boats/petrel/main/alternatives`)
  await arrived(page, 'alternatives')
  await stopRefining(page)
  await page.getByRole('button', { name: 'Add an alternative of your own' }).click()
  await page.getByLabel('What it is called').fill('Pump and belt')
  await page.getByLabel('Price of the whole job, tax in').fill('lots')
  await page.getByRole('button', { name: 'Write it into the log' }).click()
  await expect(page.getByText('Choose at least one part.')).toBeVisible()
  await expect(page.getByText('Type a number, such as 1,200 or 0.4.')).toBeVisible()
  await page.reload()
  await arrived(page, 'alternatives')
  await page.getByRole('button', { name: 'Add an alternative of your own' }).click()
  await expect(page.getByLabel('What it is called')).toHaveValue('Pump and belt')
  const parts = page.getByRole('group', { name: 'Parts put right' })
  await parts.getByLabel('Part', { exact: true }).selectOption('drive-belt')
  await parts.getByLabel('How it is put right').selectOption('renewed')
  await page.getByLabel('Price of the whole job, tax in').fill('900')
  await page.getByLabel('Days that the work takes').fill('2')
  await page.getByLabel('Fit another set after').fill('4')
  await page.getByLabel('Which set then').selectOption({ index: 2 })
  await page.getByRole('button', { name: 'Write it into the log' }).click()
  await expect
    .poll(async () => (await keptEntries(served)).at(-1))
    .toMatchObject({
      kind: 'alternative',
      body: {
        id: 'pump-and-belt',
        now: 'mend',
        parts: [{ part: 'drive-belt', outcome: 'renewed' }],
        price: 900,
        days: 2,
        later: { year: 4, with: expect.any(String) },
      },
    })
})
