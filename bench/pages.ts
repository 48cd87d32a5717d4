/**
 * The pages in a real Chromium, opened cold: how soon one is usable, how soon it has a verdict, whether it stutters.
 *
 * @module
 */

import { execFileSync } from 'node:child_process'
import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { gzipSync } from 'node:zlib'
import { type Browser, chromium, type Page } from '@playwright/test'
import { type ServedFolder, serveFolder, workOutAnswers } from '../test/served-folder.js'

const root = join(import.meta.dirname, '..')
const pages = join(root, 'dist/web')
const path = process.env.GENSETTLE_CHROMIUM ?? '/usr/bin/chromium'
const place = 'boats/marram/main/alternatives'
/** The first drawing of a verdict is behind it, and from here on the page only refines. [ms] */
const drawnAfterMs = 1_000
const watchedMs = 8_000

export interface PageFigures {
  /** From opening the address to the page's first sentence drawn, its controls with it. [ms] */
  readonly usableMs: number
  /** To the first verdict drawn. [ms] */
  readonly verdictMs: number
  /** Processor time of the page and its workers until then, which what else the machine does lengthens less. [ms] */
  readonly processorMs: number
  /** Tasks of the page's own thread over 50 ms while it refined. [ms] */
  readonly longTasksMs: readonly number[]
  /** Scripts that the page and its workers fetch for it, compressed. [kB] */
  readonly scriptKb: number
}

export function hasChromium(): boolean {
  return existsSync(path)
}

/**
 * Builds the pages and opens one cold so many times; of times the shortest counts, and of long tasks the fewest.
 * `verdictsTold`: after a start has told its verdicts, with whose figures the page begins; else it works them out itself.
 */
export async function benchPages({ rounds = 3, verdictsTold = true } = {}): Promise<PageFigures> {
  execFileSync('npx', ['vite', 'build', '--logLevel', 'error'], { cwd: root, stdio: 'inherit' })
  const served = await serveFolder({ pagesFolder: pages })
  if (verdictsTold) await workOutAnswers(served.folder)
  const browser = await chromium.launch({
    executablePath: path,
    args: process.getuid?.() === 0 ? ['--no-sandbox'] : [],
  })
  try {
    const all: PageFigures[] = []
    for (let round = 0; round < rounds; round++) all.push(await openCold(browser, served))
    const least = (read: (of: PageFigures) => number) => Math.min(...all.map(read))
    return {
      usableMs: least(({ usableMs }) => usableMs),
      verdictMs: least(({ verdictMs }) => verdictMs),
      processorMs: least(({ processorMs }) => processorMs),
      longTasksMs: all.map(({ longTasksMs }) => longTasksMs).reduce((a, b) => (b.length < a.length ? b : a)),
      scriptKb: least(({ scriptKb }) => scriptKb),
    }
  } finally {
    await browser.close()
    await served.stop()
  }
}

/** What the page itself notes down, in its own words of time. */
interface Marks {
  usable?: number
  verdict?: number
  readonly long: number[]
}

/** In the page, before anything of it runs. */
const watching = `
  window.marks = { long: [] }
  new PerformanceObserver((list) => {
    for (const { duration } of list.getEntries()) window.marks.long.push(Math.round(duration))
  }).observe({ type: 'longtask' })
  const drawn = (mark) => requestAnimationFrame(() => requestAnimationFrame(() => {
    window.marks[mark] ??= performance.now()
  }))
  new MutationObserver(() => {
    if (document.querySelector('main .say')) drawn('usable')
    if (document.querySelector('.alternatives .row')) drawn('verdict')
  }).observe(document, { childList: true, subtree: true })
`

async function openCold(browser: Browser, served: ServedFolder): Promise<PageFigures> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 900 }, locale: 'en-GB' })
  try {
    const [name = '', value = ''] = served.cookie.split('=')
    await context.addCookies([{ name, value, url: served.address }])
    const scripts = new Set<string>()
    context.on('response', (response) => {
      const path = new URL(response.url()).pathname
      if (path.endsWith('.js')) scripts.add(path)
    })
    const page = await context.newPage()
    await page.addInitScript({ content: watching })
    const before = await processorMs(browser)
    await page.goto(`${served.address}${place}`)
    await page.locator('.alternatives .row').first().waitFor({ timeout: 120_000 })
    while ((await marksOf(page)).verdict === undefined) await page.waitForTimeout(20)
    const spent = (await processorMs(browser)) - before
    const { usable = Number.NaN, verdict = Number.NaN } = await marksOf(page)
    await page.waitForTimeout(drawnAfterMs)
    const first = (await marksOf(page)).long.length
    await page.waitForTimeout(watchedMs)
    const { long } = await marksOf(page)
    return {
      usableMs: usable,
      verdictMs: verdict,
      processorMs: spent,
      longTasksMs: long.slice(first),
      scriptKb: compressedKb(scripts),
    }
  } finally {
    await context.close()
  }
}

function marksOf(page: Page): Promise<Marks> {
  return page.evaluate<Marks>('window.marks')
}

/** Of all pages and their workers so far. */
async function processorMs(browser: Browser): Promise<number> {
  const session = await browser.newBrowserCDPSession()
  const { processInfo } = await session.send('SystemInfo.getProcessInfo')
  await session.detach()
  return processInfo
    .filter(({ type }) => type === 'renderer')
    .reduce((sum, { cpuTime }) => sum + cpuTime * 1000, 0)
}

function compressedKb(scripts: Iterable<string>): number {
  let sum = 0
  for (const path of scripts) sum += gzipSync(readFileSync(join(pages, path)), { level: 9 }).length / 1000
  return sum
}
