/**
 * The pages of a set, and what is asked of each of them alike.
 *
 * @module
 */

import { AxeBuilder } from '@axe-core/playwright'
import { expect, type Locator, type Page } from '@playwright/test'
import type { ServedFolder } from '../served-folder.js'

/** Where each page of a set has come to its figures. */
export const hasCome = {
  alternatives: '.alternatives .row',
  forecast: '.boats .row',
  set: '.side-view',
} as const
export type SetPage = keyof typeof hasCome

export const demonstration = { marram: 'main', quillback: 'port', teasel: 'main' } as const
export type DemonstrationBoat = keyof typeof demonstration

/** Reckoning takes its time on a machine that does other things. */
export const reckoning = 120_000

export async function openPage(
  page: Page,
  served: ServedFolder,
  of: { readonly boat: DemonstrationBoat; readonly name: SetPage },
): Promise<void> {
  await page.goto(`${served.address}boats/${of.boat}/${demonstration[of.boat]}/${of.name}`)
  await arrived(page, of.name)
}

/** Waits until the page has its figures. */
export async function arrived(page: Page, name: SetPage): Promise<void> {
  await expect(page.locator(hasCome[name]).first()).toBeVisible({ timeout: reckoning })
}

/** Goes to another page by the words of the loop, on a phone by those at the foot. */
export async function goTo(page: Page, name: 'Set' | 'Forecast' | 'Alternatives'): Promise<void> {
  await page
    .getByRole('navigation', { name: 'Round the loop' })
    .getByRole('link', { name, exact: true })
    .click()
  await arrived(page, name.toLowerCase() as SetPage)
}

/** Lets it be: what was played so far is enough for a test. */
export async function stopRefining(page: Page): Promise<void> {
  const stop = page.getByRole('button', { name: 'stop', exact: true })
  if (await stop.isVisible()) await stop.click()
  await expect(
    page.getByRole('button', { name: 'go on' }).or(page.getByText(/^[\d,]+ histories$/)),
  ).toBeVisible({
    timeout: reckoning,
  })
}

/** Whatever the machine can see of WCAG 2.2 AA. */
export async function expectAccessible(page: Page): Promise<void> {
  const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']
  const { violations } = await new AxeBuilder({ page })
    .setLegacyMode()
    .options({ resultTypes: ['violations'] })
    .withTags(tags)
    .analyze()
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target).join(', ')}`)).toEqual(
    [],
  )
}

/** Of the rules those that hang on colours; the others are the same in every light. */
export async function expectContrast(page: Page): Promise<void> {
  const { violations } = await new AxeBuilder({ page })
    // No frames here: without a page of its own to gather from them it is quicker.
    .setLegacyMode()
    .options({ resultTypes: ['violations'] })
    .withRules(['color-contrast', 'link-in-text-block'])
    .analyze()
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target).join(', ')}`)).toEqual(
    [],
  )
}

export async function expectNothingCutOff(page: Page): Promise<void> {
  const past = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)
  expect(past, 'the page is no wider than its window').toBeLessThanOrEqual(0)
}

export async function textOf(locator: Locator): Promise<string> {
  return (await locator.textContent()) ?? ''
}
