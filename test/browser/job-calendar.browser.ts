import { expect } from '@playwright/test'
import { trialEntry } from '../trial-log.js'
import { keptEntries, putBoat, test } from './boat.js'
import { expectAccessible, expectContrast, expectNothingCutOff } from './pages.js'

const at = { boat: 'petrel', from: '2026-10-03', until: '2026-10-03' }
const job = [
  trialEntry(
    5,
    'decision',
    {
      ...{ choice: 'Elbow and pump seal', job: 'spring' },
      parts: [
        { part: 'exhaust-elbow', did: 'renewed' },
        { part: 'sea-pump-seal', did: 'renewed' },
      ],
    },
    at,
  ),
  trialEntry(6, 'free-days', { who: 'owner', weekdays: ['saturday', 'sunday'] }, at),
]

test('the days of a job are told, held against a day, moved on by what is done, and handed out as a file', async ({
  page,
  served,
}) => {
  test.setTimeout(120_000)
  await putBoat(served, 'petrel', job)
  await page.setViewportSize({ width: 390, height: 844 })
  await page.goto(`${served.address}boats/petrel/main/job-calendar`)
  await expect(page.getByText(/^Ready by \d+\s\w+\s20\d\d, eight times in ten\.$/)).toBeVisible({
    timeout: 30_000,
  })
  await expect(page.getByRole('img', { name: /^Hold every piece/ })).toBeVisible()
  await expectNothingCutOff(page)
  await expectAccessible(page)
  for (const light of ['Dark', 'Red']) {
    await page.getByRole('banner').getByText(light, { exact: true }).click()
    await expectContrast(page)
  }
  await page.setViewportSize({ width: 1280, height: 900 })
  await expectNothingCutOff(page)
  await page.setViewportSize({ width: 390, height: 844 })

  await page.getByLabel('To be ready by').fill('soon')
  await expect(page.getByText('This is no day.')).toBeVisible()
  await page.getByLabel('To be ready by').fill('1 Apr 2099')
  await expect(page.getByText(/^Ready by 1\sApr\s2099: over 99 in 100\.$/)).toBeVisible()
  const file = page.getByRole('link', { name: 'The days as a file for your calendar' })
  const answer = await page.request.get(new URL((await file.getAttribute('href'))!, served.address).href)
  expect(answer.headers()['content-type']).toContain('text/calendar')
  expect(await answer.text()).toContain('DTSTART;VALUE=DATE:20990401')

  const row = page.getByRole('listitem').filter({ hasText: 'Order the raw-water pump shaft seal' })
  await row.getByText('Days, order, who').click()
  await row.getByRole('button', { name: 'Done today' }).click()
  await expect(page.getByText('What is done (1)')).toBeVisible()
  await expect
    .poll(async () =>
      (await keptEntries(served)).filter(({ kind }) => kind === 'activity').map(({ body }) => body),
    )
    .toEqual([{ job: 'spring', name: 'get-sea-pump-seal', state: 'done' }])

  await page.getByRole('button', { name: 'Something more to be done' }).click()
  const form = page.locator('form').filter({ hasText: 'What is done' })
  await form.getByLabel(/^Its short name/).fill('paint')
  await form.getByLabel('What must be done before, by short names').fill('tide')
  await form.getByLabel('As a rule, days').fill('2')
  await form.getByRole('button', { name: 'Write it in' }).click()
  await expect(page.getByText('It cannot be worked out yet')).toBeVisible()
  await expect(page.getByText(/^tide; allowed is one of: /)).toBeVisible()
})
