import { existsSync } from 'node:fs'
import { defineConfig } from '@playwright/test'

const chromium = process.env.GENSETTLE_CHROMIUM ?? '/usr/bin/chromium'
if (!existsSync(chromium))
  throw new Error(`GENSETTLE_CHROMIUM must name a Chromium; found none at ${chromium}`)

export default defineConfig({
  testDir: 'test/browser',
  testMatch: '**/*.browser.ts',
  outputDir: 'node_modules/.cache/playwright',
  // A core each for the browser and for what it reckons.
  workers: 1,
  forbidOnly: true,
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
