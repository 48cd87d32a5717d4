import { readFileSync } from 'node:fs'
import { createServer } from 'node:http'
import type { AddressInfo } from 'node:net'
import { expect } from '@playwright/test'
import { trialId } from '../trial-log.js'
import { keptEntries, putBoat, test } from './boat.js'
import { goTo } from './pages.js'

test('a newcomer comes from an empty store to an answer for a boat of their own', async ({
  page,
  served,
}) => {
  await expect(page.getByText('No boat of yours is here yet.')).toBeVisible()
  await page.getByRole('link', { name: 'Enter your boat' }).click()
  await page.getByRole('button', { name: 'Show the first forecast' }).click()
  await expect(page.getByText('5 answers are still needed.')).toBeVisible()
  await expect(page.getByLabel('What do you call her?')).toBeFocused()
  await page.getByLabel('What do you call her?').fill('Sea Petrel')
  await page.getByLabel('Rating, kW').fill('7')
  await page.getByLabel('Year', { exact: true }).fill('2004')
  await page.reload()
  await expect(page.getByLabel('Rating, kW')).toHaveValue('7')
  await page.getByLabel('Hours on the meter').fill('5,240')
  await page.getByLabel('Lived aboard in the season').check()
  await page.getByLabel('Times you wanted power and had none').fill('2')
  await page.getByRole('button', { name: 'Show the first forecast' }).click()
  await expect(page).toHaveURL(/boats\/sea-petrel\/main\/alternatives$/)
  await expect.poll(async () => (await keptEntries(served, 'sea-petrel')).length).toBe(5)
  await expect(page.locator('.say')).toBeVisible({ timeout: 55_000 })
  await page.getByRole('link', { name: 'Logbook' }).first().click()
  await expect(page.getByText('What would sharpen it most')).toBeVisible()
})

test('a boat goes out as a file and comes in again, whole; a file that is none is refused', async ({
  page,
  served,
}) => {
  await putBoat(served)
  await page.goto(served.address)
  const downloading = page.waitForEvent('download')
  await page.getByRole('link', { name: 'Boat file of Petrel' }).click()
  const download = await downloading
  expect(download.suggestedFilename()).toBe('petrel.gensettle')
  const bytes = readFileSync((await download.path())!)
  const choose = page.getByLabel('Boat file, ending in .gensettle')
  await choose.setInputFiles({ name: 'petrel.gensettle', mimeType: '', buffer: bytes })
  await expect(page.getByText('petrel: 0 entries added, 4 entries were here already')).toBeVisible()
  await choose.setInputFiles({ name: 'petrel.gensettle', mimeType: '', buffer: bytes.subarray(0, 300) })
  await expect(page.getByText('Nothing was written.')).toBeVisible()
  expect(await keptEntries(served)).toHaveLength(4)
})

test('a browser that was not let in is told how to come in, and sees nothing', async ({
  browser,
  served,
}) => {
  await putBoat(served)
  const stranger = await browser.newPage()
  await stranger.goto(`${served.address}boats/petrel/main/logbook`)
  await expect(stranger.getByText('This browser has not been let in.')).toBeVisible()
  await expect(stranger.getByText('5,231')).toHaveCount(0)
  await stranger.close()
})

test('a hostile page on another origin gets nothing and writes nothing', async ({
  page,
  served,
  context,
}) => {
  await putBoat(served)
  await expect(page.getByRole('heading', { name: 'Boats' })).toBeVisible()
  const hostilePage = await context.newPage()
  const hostile = createServer((_, answer) => {
    answer.setHeader('Content-Type', 'text/html')
    answer.end('<!doctype html><title>hostile</title>')
  })
  await new Promise<void>((resolve) => hostile.listen(0, '127.0.0.1', resolve))
  const { port } = hostile.address() as AddressInfo
  await hostilePage.goto(`http://127.0.0.1:${port}/`)
  const got = await hostilePage.evaluate(async (address) => {
    const asked: string[] = []
    const note = async (name: string, asking: Promise<Response>) => {
      try {
        const answer = await asking
        asked.push(`${name} ${answer.type} ${(await answer.text()).length}`)
      } catch {
        asked.push(`${name} nothing`)
      }
    }
    const path = `${address}api/boats/petrel/entries`
    const body = JSON.stringify({ entries: ['{}'] })
    await note('read', fetch(path, { credentials: 'include' }))
    await note('opaque', fetch(path, { credentials: 'include', mode: 'no-cors' }))
    await note(
      'write',
      fetch(path, {
        method: 'POST',
        credentials: 'include',
        body,
        headers: { 'Content-Type': 'application/json' },
      }),
    )
    await note('blind', fetch(path, { method: 'POST', credentials: 'include', mode: 'no-cors', body }))
    const frame = document.createElement('iframe')
    frame.src = address
    document.body.append(frame)
    await new Promise((resolve) => setTimeout(resolve, 500))
    const script = document.createElement('script')
    script.src = path
    const loaded = await new Promise((resolve) => {
      script.onload = () => resolve('script loaded')
      script.onerror = () => resolve('script nothing')
      document.body.append(script)
    })
    let framed = 'frame nothing'
    try {
      if (frame.contentDocument?.body.textContent) framed = 'frame read'
    } catch {
      framed = 'frame nothing'
    }
    return [...asked, loaded, framed]
  }, served.address)
  // Chromium keeps even the empty answer from a page of another origin.
  expect(got.filter((one) => !/nothing$|opaque 0$/.test(String(one)))).toEqual([])
  expect(await keptEntries(served)).toHaveLength(4)
  hostile.close()
})

test('settings are entries of the log, and one more browser can be let in', async ({
  page,
  served,
  browser,
}) => {
  await putBoat(served)
  await page.goto(`${served.address}boats/petrel/main/settings`)
  await page.getByLabel('Pressure').selectOption('psi')
  await expect
    .poll(async () => (await keptEntries(served)).at(-1)?.body)
    .toEqual({ units: { pressure: 'psi' } })
  await page.getByLabel('Ground, GFCI or ELCI, wrench').click()
  await expect.poll(async () => (await keptEntries(served)).at(-1)?.body).toEqual({ words: 'american' })
  await page.getByLabel('Price factor').fill('1.2')
  await page.getByLabel('Your own hour').fill('12')
  await page.getByRole('button', { name: 'Write it into the log' }).click()
  await expect.poll(async () => (await keptEntries(served)).at(-1)?.body).toEqual({ ownPerHour: 12 })
  await page.getByRole('button', { name: 'Make an address for one more browser' }).click()
  const address = await page.locator('b', { hasText: '/enter/' }).textContent()
  const other = await browser.newPage()
  await other.goto(address!)
  await expect(other.getByRole('heading', { name: 'Petrel' })).toBeVisible()
  await other.close()
})

test('the boats of one owner hear one another once that is wanted, and it is said where they did', async ({
  page,
  served,
}) => {
  await putBoat(served)
  // Teasel's log as that of another boat of the owner's
  const { text } = await served.ask('/api/boats/teasel/entries')
  const entries = text
    .split('\n')
    .filter(Boolean)
    .map((line, i) => ({ ...JSON.parse(line), boat: 'willet', id: trialId(1000 + i), corrects: [] }))
  const body = JSON.stringify({ entries: entries.map((entry) => JSON.stringify(entry)) })
  expect((await served.ask('/api/boats/willet/entries', { method: 'POST', body })).status).toBe(200)
  await page.goto(`${served.address}boats/petrel/main/settings`)
  const asked = async () => (await served.ask('/api/lessons')).json<{ heard: boolean }>().heard
  await page.getByLabel('Let my boats hear one another’s lessons').check()
  await expect.poll(asked).toBe(true)
  await goTo(page, 'Forecast')
  await expect(page.getByText('Heard: the lessons of one of your other boats.')).toBeVisible()
  await page.goto(`${served.address}boats/petrel/main/settings`)
  const box = page.getByLabel('Let my boats hear one another’s lessons')
  await expect(box).toBeChecked()
  await box.uncheck()
  await expect.poll(asked).toBe(false)
  await goTo(page, 'Forecast')
  await expect(page.getByText('Heard: the lessons')).toHaveCount(0)
})

test('by keyboard alone: into the logbook, an entry written, and corrected', async ({ page, served }) => {
  await putBoat(served)
  await page.goto(`${served.address}boats/petrel/main/logbook`)
  await expect(page.getByText('Last read 5,231 h')).toBeVisible()
  const reach = async (name: RegExp) => {
    for (let step = 0; step < 80; step += 1) {
      await page.keyboard.press('Tab')
      const says = await page.evaluate(() => {
        const at = document.activeElement
        const labels =
          at instanceof HTMLInputElement ? [...(at.labels ?? [])].map((one) => one.textContent) : []
        return [...labels, at?.textContent ?? ''].join(' ')
      })
      if (name.test(says)) return
    }
    throw new Error(`focus must come to ${name}`)
  }
  await reach(/Hours on the meter/)
  await page.keyboard.type('5,262')
  await page.keyboard.press('Enter')
  await expect(page.getByText('Written: Hours. 5,262 h')).toBeVisible()
  await reach(/show all 3/)
  await page.keyboard.press('Enter')
  await reach(/Correct.*2\s+Oct/)
  await page.keyboard.press('Enter')
  await reach(/Hours on the meter/)
  await page.keyboard.press('Control+A')
  await page.keyboard.type('5,232')
  await page.keyboard.press('Enter')
  await expect(page.locator('.line del')).toHaveText(/5,231 h/)
})
