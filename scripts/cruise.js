// Import cycles and orphans. An empty result is a failure: a cruiser that reads nothing finds nothing.
import { cruise } from 'dependency-cruiser'
import extractTSConfig from 'dependency-cruiser/config-utl/extract-ts-config'
import config from '../.dependency-cruiser.cjs'

const result = await cruise(
  ['src'],
  { ruleSet: { forbidden: config.forbidden }, validate: true, ...config.options, tsConfig: undefined },
  { extensionAlias: { '.js': ['.ts', '.tsx', '.js'] } },
  { tsConfig: extractTSConfig('tsconfig.json') },
)
const { summary } = result.output
for (const { rule, from, to } of summary.violations) console.error(`${rule.name}: ${from} → ${to}`)
console.log(`${summary.totalCruised} modules, ${summary.violations.length} problems`)
if (summary.totalCruised === 0 || summary.violations.length > 0) process.exitCode = 1
