// `npm test`: everything that must hold, in the order in which a failure is cheapest to find.
import { execFile } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { findChromium } from './chromium.js'
import { installIfNeeded, root, run } from './install.js'

installIfNeeded()
const folder = mkdtempSync(join(tmpdir(), 'gensettle-tests-'))
const outcome = join(folder, 'tests.json')
const pagesOutcome = join(folder, 'pages.json')
const checks = [
  ['build', 'npm', 'run', '--silent', 'build'],
  ['types', 'npx', 'tsc', '-p', 'tsconfig.json'],
  ['types of the pages', 'npx', 'tsc', '-p', 'src/web/tsconfig.json'],
  ['types of the pages’ tests', 'npx', 'tsc', '-p', 'test/browser/tsconfig.json'],
  ['lint', 'npx', 'biome', 'ci', '--error-on-warnings', '.'],
  ['dead code', 'npx', 'knip'],
  ['import order and cycles', process.execPath, 'scripts/cruise.js'],
]
const steps = [
  ['tests', 'npx', 'vitest', 'run', '--reporter=default', '--reporter=json', `--outputFile.json=${outcome}`],
  ['tests of the pages', 'npx', 'playwright', 'test', '--reporter=list,json'],
]
try {
  process.env.GENSETTLE_CHROMIUM = findChromium()
  process.env.PLAYWRIGHT_JSON_OUTPUT_NAME = pagesOutcome
  await twoAtATime(checks)
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

/** Each of them keeps one core busy. What one prints comes out whole when it is done; all that fail are told. */
async function twoAtATime(list) {
  const waiting = [...list]
  const failed = []
  const hand = async () => {
    for (let next = waiting.shift(); next !== undefined; next = waiting.shift()) {
      const [name, command, ...args] = next
      const { output, ok } = await outputOf(command, args)
      console.log(`\n== ${name}\n${output}`)
      if (!ok) failed.push(name)
    }
  }
  await Promise.all([hand(), hand()])
  if (failed.length > 0) throw new Error(`These checks fail: ${failed.join(', ')}.`)
}

function outputOf(command, args) {
  return new Promise((resolve) => {
    execFile(command, args, { cwd: root, maxBuffer: 1e8 }, (error, out, err) =>
      resolve({ output: out + err, ok: error === null }),
    )
  })
}

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
