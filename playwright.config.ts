import { existsSync } from 'node:fs'
import { availableParallelism } from 'node:os'
import { defineConfig } from '@playwright/test'

const chromium = process.env.GENSETTLE_CHROMIUM ?? '/usr/bin/chromium'
if (!existsSync(chromium))
  throw new Error(`GENSETTLE_CHROMIUM must name a Chromium; found none at ${chromium}`)

const timed = /@timed/

export default defineConfig({
  testDir: 'test/browser',
  testMatch: '**/*.browser.ts',
  globalSetup: './test/browser/work-out.ts',
  outputDir: 'node_modules/.cache/playwright',
  workers: Math.max(1, Math.min(4, availableParallelism())),
  fullyParallel: true,
  forbidOnly: true,
  projects: [
    { name: 'pages', grepInvert: timed },
    // What takes the time of pages has the machine to itself, and a core each for the browser and for what it reckons.
    { name: 'timed', grep: timed, workers: 1, dependencies: ['pages'] },
  ],
  timeout: 60_000,
  expect: { timeout: 15_000 },
  use: {
    launchOptions: {
      executablePath: chromium,
      args: process.getuid?.() === 0 ? ['--no-sandbox'] : [],
    },
    viewport: { width: 1280, height: 900 },
    locale: 'en-GB',
  },
})
