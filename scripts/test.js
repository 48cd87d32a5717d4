// `npm test`: everything that must hold, in the order in which a failure is cheapest to find.
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { findChromium } from './chromium.js'
import { installIfNeeded, run } from './install.js'

installIfNeeded()
const folder = mkdtempSync(join(tmpdir(), 'gensettle-tests-'))
const outcome = join(folder, 'tests.json')
const pagesOutcome = join(folder, 'pages.json')
const steps = [
  ['types', 'npx', 'tsc', '-p', 'tsconfig.json'],
  ['types of the pages', 'npx', 'tsc', '-p', 'src/web/tsconfig.json'],
  ['types of the pages’ tests', 'npx', 'tsc', '-p', 'test/browser/tsconfig.json'],
  ['lint', 'npx', 'biome', 'ci', '--error-on-warnings', '.'],
  ['dead code', 'npx', 'knip'],
  ['import order and cycles', process.execPath, 'scripts/cruise.js'],
  ['build', 'npm', 'run', '--silent', 'build'],
  ['tests', 'npx', 'vitest', 'run', '--reporter=default', '--reporter=json', `--outputFile.json=${outcome}`],
  ['tests of the pages', 'npx', 'playwright', 'test', '--reporter=list,json'],
]
try {
  process.env.GENSETTLE_CHROMIUM = findChromium()
  process.env.PLAYWRIGHT_JSON_OUTPUT_NAME = pagesOutcome
  for (const [name, command, ...args] of steps) {
    console.log(`\n== ${name}`)
    run(command, ...args)
  }
} catch (error) {
  console.error(`\n${error instanceof Error ? error.message : error}`)
  process.exitCode = 1
}
sayCounts()
rmSync(folder, { recursive: true })

/** The counts as the two test runners wrote them. A runner that did not come to its end, or ran nothing, is a failure. */
function sayCounts() {
  const unit = readJson(outcome)
  const pages = readJson(pagesOutcome)
  const all = [
    {
      name: 'tests',
      passed: unit?.numPassedTests ?? 0,
      failed: (unit?.numFailedTests ?? 0) + (unit?.numFailedTestSuites ?? 0),
    },
    {
      name: 'tests of the pages',
      passed: pages?.stats.expected ?? 0,
      // One that passes only when it is tried again, or that is skipped, is no pass.
      failed: pages === undefined ? 0 : pages.stats.unexpected + pages.stats.flaky + pages.stats.skipped,
    },
  ]
  for (const { name, passed, failed } of all) {
    if (passed === 0) console.error(`No ${name} were run to their end.`)
    if (passed === 0 || failed > 0) process.exitCode = 1
  }
  const sum = (of) => all.reduce((total, one) => total + one[of], 0)
  console.log(`${sum('passed')} passed, ${sum('failed')} failed`)
}

function readJson(path) {
  try {
    return JSON.parse(readFileSync(path, 'utf8'))
  } catch {
    return undefined
  }
}
