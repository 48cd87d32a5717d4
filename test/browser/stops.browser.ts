import { expect } from '@playwright/test'
import { trialEntry } from '../trial-log.js'
import { keptEntries, putBoat, test } from './boat.js'
import { arrived, reckoning } from './pages.js'

test('a stop opens the entry that closes it, with kind, test and part filled in', async ({
  page,
  served,
}) => {
  test.setTimeout(reckoning)
  const at = { boat: 'petrel', from: '2026-10-20', until: '2026-10-20' }
  await putBoat(served, 'petrel', [
    trialEntry(
      5,
      'reading',
      {
        test: 'insulation-test',
        part: 'stator-winding',
        values: [{ name: 'winding-to-frame', value: 0.4, unit: 'Mohm' }],
        conditions: [{ name: 'winding', value: 20, unit: 'C' }],
      },
      at,
    ),
  ])
  await page.goto(`${served.address}boats/petrel/main/set`)
  await arrived(page, 'set')
  const stop = page.locator('.stop', { hasText: 'Do not energise the set' })
  await stop.getByRole('button', { name: 'Enter a reading' }).click()
  await expect(stop.getByLabel('Of which part')).toHaveValue('stator-winding')
  await expect(stop.getByLabel('Test', { exact: true })).toHaveValue('insulation-test')
  await expect(stop.getByLabel('Unit').first()).toHaveValue('Mohm')
  await stop.getByLabel('Value').first().fill('150')
  await stop.getByRole('button', { name: 'Write it in' }).click()
  await expect
    .poll(async () => (await keptEntries(served)).at(-1))
    .toMatchObject({ kind: 'reading', body: { part: 'stator-winding', values: [{ value: 150 }] } })
  await expect(stop).toHaveCount(0, { timeout: reckoning })
})
