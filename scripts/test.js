// `npm test`: everything that must hold, in the order in which a failure is cheapest to find.
import { installIfNeeded, run } from './install.js'

installIfNeeded()
const steps = [
  ['types', 'npx', 'tsc', '-p', 'tsconfig.json'],
  ['lint', 'npx', 'biome', 'ci', '--error-on-warnings', '.'],
  ['dead code', 'npx', 'knip'],
  ['import order and cycles', process.execPath, 'scripts/cruise.js'],
  ['build', 'npm', 'run', '--silent', 'build'],
  ['tests', 'npx', 'vitest', 'run'],
]
for (const [name, command, ...args] of steps) {
  console.log(`\n== ${name}`)
  run(command, ...args)
}
