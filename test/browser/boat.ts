/**
 * A real server on a data folder of its own with a real browser that was let in: what every test here begins with.
 *
 * @module
 */

import { join } from 'node:path'
import { test as base, type Page } from '@playwright/test'
import { type ServedFolder, serveFolder } from '../served-folder.js'
import { trialEntry } from '../trial-log.js'

const root = join(import.meta.dirname, '../..')

/** Starts a server as the program does, with the pages as they were built. */
export function serveBuilt(folder?: string): Promise<ServedFolder> {
  return serveFolder({
    ...(folder === undefined ? {} : { folder }),
    pagesFolder: join(root, 'dist/web'),
    workedOutIn: process.env.GENSETTLE_WORKED_OUT,
  })
}

export const test = base.extend<{ served: ServedFolder; page: Page }>({
  // biome-ignore lint/correctness/noEmptyPattern: the form that the runner asks for
  served: async ({}, use) => {
    const served = await serveBuilt()
    await use(served)
    await served.stop().catch(() => undefined)
  },
  page: async ({ page, served }, use) => {
    const failures: string[] = []
    page.on('pageerror', (error) => failures.push(error.message))
    page.on('console', (message) => {
      // What does not answer is told by the browser too; the pages say it themselves.
      const ofNet = /ERR_|Failed to load resource/.test(message.text())
      if (message.type() === 'error' && !ofNet) failures.push(message.text())
    })
    await letIn(page, served)
    await use(page)
    if (failures.length > 0) throw new Error(`the page must not fail; found ${failures.join('; ')}`)
  },
})

/** Opens an address that lets this browser in. */
export async function letIn(page: Page, served: ServedFolder): Promise<void> {
  const asked = await served.ask('/api/code', { method: 'POST', body: '{}' })
  await page.goto(asked.json<{ address: string }>().address)
}

/** A boat with a set and a few readings, put in without the pages. */
export async function putBoat(
  served: ServedFolder,
  boat = 'petrel',
  more: readonly object[] = [],
): Promise<void> {
  const at = (from: string) => ({ boat, from, until: from })
  const entries = [
    trialEntry(1, 'boat', { name: 'Petrel', currency: 'GBP', words: 'british' }, at('2020-01-01')),
    trialEntry(
      2,
      'set',
      { ratingKw: 7, volts: [230], hertz: 50, rpm: 1500, built: '2004' },
      at('2020-01-01'),
    ),
    trialEntry(3, 'hours', { meterHours: 5100 }, at('2026-04-01')),
    trialEntry(4, 'hours', { meterHours: 5231 }, at('2026-10-02')),
    ...more,
  ]
  const body = JSON.stringify({ entries: entries.map((entry) => JSON.stringify(entry)) })
  const answer = await served.ask(`/api/boats/${boat}/entries`, { method: 'POST', body })
  const { results } = answer.json<{ results: readonly { result: string }[] }>()
  if (results.some(({ result }) => result === 'refused')) throw new Error(answer.text)
}

/** Entries of a boat as the server keeps them. */
export async function keptEntries(
  served: ServedFolder,
  boat = 'petrel',
): Promise<
  readonly { id: string; kind: string; corrects: readonly string[]; body: Record<string, unknown> }[]
> {
  const { text } = await served.ask(`/api/boats/${boat}/entries`)
  return text
    .split('\n')
    .filter(Boolean)
    .map((line) => JSON.parse(line))
}
