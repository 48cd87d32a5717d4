import { mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, type Page } from '@playwright/test'
import { openStore } from '../../src/store/store.js'
import { longTrialLog, trialEntry, trialId } from '../trial-log.js'
import { keptEntries, letIn, putBoat, serveBuilt, test } from './boat.js'
import { expectAccessible, expectContrast, expectNothingCutOff } from './pages.js'

const at = (from: string) => ({ boat: 'petrel', from, until: from })

/** A log in which every part of the page has something to show. */
const eventful = [
  trialEntry(5, 'hours', { meterHours: 5198 }, at('2026-11-12')),
  trialEntry(6, 'hours', { meterHours: 5232 }, { ...at('2026-10-02'), corrects: [trialId(4)] }),
  trialEntry(7, 'finding', { about: [{ part: 'drive-belt' }], verdict: 'nothing-seen' }, at('2026-10-03')),
  trialEntry(
    8,
    'finding',
    { about: [{ part: 'drive-belt' }], verdict: 'unsure', seen: 'glazed on one side' },
    { ...at('2026-10-03'), corrects: [trialId(7)], device: 'phone', n: 1 },
  ),
  trialEntry(
    9,
    'finding',
    { about: [{ part: 'drive-belt' }], verdict: 'defect-seen', seen: 'two cracks' },
    { ...at('2026-10-03'), corrects: [trialId(7)], device: 'chart-table', n: 1 },
  ),
  trialEntry(
    10,
    'overrule',
    { path: 'parts.anode.modes.spent.scale', value: 2, because: 'mine last' },
    at('2026-10-04'),
  ),
  trialEntry(11, 'bill', { amount: 46, what: 'filters' }, at('2026-08-03')),
]

const paths = {
  boats: '',
  'new boat': 'new',
  logbook: 'boats/petrel/main/logbook',
  settings: 'boats/petrel/main/settings',
} as const

for (const [name, path] of Object.entries(paths)) {
  test(`${name}: nothing to fault in three lights and two widths, nothing cut off at 360`, async ({
    page,
    served,
  }) => {
    // What is reckoned beside it has tests of its own, and would take the time of these.
    await page.route('**/*.worker-*', (route) => route.abort())
    await putBoat(served, 'petrel', eventful)
    await page.goto(served.address + path)
    await expect(page.locator('h1').first()).toBeVisible()
    if (name === 'logbook') await openForms(page)
    for (const light of ['Day', 'Dark', 'Red']) {
      await page.getByRole('radio', { name: light, exact: true }).check({ force: true })
      for (const width of [390, 1280]) {
        await page.setViewportSize({ width, height: 900 })
        await test.step(`${light}, ${width}`, async () => {
          if (light === 'Day') await expectAccessible(page)
          else await expectContrast(page)
          await expectNothingCutOff(page)
        })
      }
    }
    await page.setViewportSize({ width: 360, height: 800 })
    await expectNothingCutOff(page)
  })
}

async function openForms(page: Page): Promise<void> {
  await page.getByRole('radio', { name: 'Quote' }).check({ force: true })
  await page.getByText('Say more').first().click()
  await page.getByRole('button', { name: 'Write it in' }).first().click()
  await expect(page.locator('.problem').first()).toBeVisible()
  await page.getByRole('button', { name: /Correct Bill/ }).click()
  await expect(page.locator('.correcting')).toBeVisible()
}

test('everything to touch is large enough on a phone', async ({ page, served }) => {
  await putBoat(served, 'petrel', eventful)
  await page.setViewportSize({ width: 390, height: 844 })
  for (const path of Object.values(paths)) {
    await page.goto(served.address + path)
    await expect(page.locator('h1').first()).toBeVisible()
    const small = await page
      .locator(
        'main :is(button, select, textarea, summary, label:has(input), input:not([type=radio], [type=checkbox]))',
      )
      .evaluateAll((all) =>
        all.flatMap((one) => {
          const { width, height } = one.getBoundingClientRect()
          const inSentence = one.closest('p, .words, .opened') !== null && one.tagName === 'BUTTON'
          return width === 0 || inSentence || (height >= 43.5 && width >= 43.5)
            ? []
            : [`${one.tagName} ${one.textContent?.slice(0, 30)} ${Math.round(width)} × ${Math.round(height)}`]
        }),
      )
    expect(small).toEqual([])
  }
})

test('twenty thousand entries are shown without a stutter', { tag: '@timed' }, async ({ page }) => {
  const folder = mkdtempSync(join(tmpdir(), 'gensettle-'))
  const opened = openStore(folder)
  if (!opened.ok) throw new Error('the store must open')
  opened.store.append(longTrialLog({ entries: 20_000, years: 20 }))
  opened.store.close()
  const served = await serveBuilt(folder)
  await letIn(page, served)
  await page.goto(`${served.address}boats/long-trial/main/logbook`)
  await expect(page.locator('.year-head').first()).toBeVisible({ timeout: 30_000 })
  await page.waitForTimeout(500)
  await page.evaluate(() => {
    const tasks: number[] = []
    new PerformanceObserver((list) => {
      for (const { duration } of list.getEntries()) tasks.push(duration)
    }).observe({ entryTypes: ['longtask'] })
    Object.assign(window, { longTasks: tasks })
  })
  for (let step = 0; step < 15; step += 1) await page.mouse.wheel(0, 700)
  await page.getByLabel('Hours on the meter').pressSequentially('74512')
  const longest = await page.evaluate(() =>
    Math.max(0, ...(window as unknown as { longTasks: number[] }).longTasks),
  )
  expect(longest).toBeLessThan(100)
  await page.getByRole('button', { name: 'Open 2010' }).click()
  await expect(page.locator('.year.open')).toHaveCount(2)
  expect((await keptEntries(served, 'long-trial')).length).toBe(20_000)
  await served.stop()
})
