// `npm test`: everything that must hold, in the order in which a failure is cheapest to find.
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { installIfNeeded, run } from './install.js'

installIfNeeded()
const folder = mkdtempSync(join(tmpdir(), 'gensettle-tests-'))
const outcome = join(folder, 'tests.json')
const steps = [
  ['types', 'npx', 'tsc', '-p', 'tsconfig.json'],
  ['lint', 'npx', 'biome', 'ci', '--error-on-warnings', '.'],
  ['dead code', 'npx', 'knip'],
  ['import order and cycles', process.execPath, 'scripts/cruise.js'],
  ['build', 'npm', 'run', '--silent', 'build'],
  ['tests', 'npx', 'vitest', 'run', '--reporter=default', '--reporter=json', `--outputFile.json=${outcome}`],
]
try {
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

/** The counts as the test runner wrote them; nothing where it did not come so far. */
function sayCounts() {
  let counts
  try {
    counts = JSON.parse(readFileSync(outcome, 'utf8'))
  } catch {
    console.error('No tests were run to their end.')
    process.exitCode = 1
    return
  }
  const { numPassedTests, numFailedTests, numTotalTests, numFailedTestSuites } = counts
  if (numTotalTests === 0 || numFailedTests > 0 || numFailedTestSuites > 0) process.exitCode = 1
  console.log(`${numPassedTests} passed, ${numFailedTests} failed`)
}
