import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'

/** The order of the folders is the order in which data flows; a folder may import only from folders named before it. */
const order = [
  'units',
  'catalogue',
  'logbook',
  'register',
  'proof',
  'faults',
  'forecast',
  'sizing',
  'alternatives',
  'job',
  'upkeep',
  'store',
  'server',
  'web',
  'cli',
]
/**
 * Programs that people start. None imports another, except that `cli` may start the server, and that `web` takes from the server the
 * types of what the two say to one another.
 */
const shells = ['server', 'web', 'cli']
const mayTouchTheMachine = ['store', 'server', 'cli']

const root = import.meta.dirname
const folders = readdirSync(root, { withFileTypes: true })
  .filter((entry) => entry.isDirectory())
  .map((entry) => entry.name)

/** Names in `from '…'` and `import('…')`, of modules that are no test. */
function imports(folder: string): { file: string; from: string }[] {
  return readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .filter((file) => /\.tsx?$/.test(file) && !/\.test\.tsx?$/.test(file))
    .flatMap((file) => {
      const text = readFileSync(join(root, folder, file), 'utf8')
      return [...text.matchAll(/(?:from|import)\s*\(?\s*'([^']+)'/g)].map((match) => ({
        file,
        from: match[1]!,
      }))
    })
}

test('every folder has a place in the order', () => {
  expect(folders.length).toBeGreaterThan(0)
  expect(folders.filter((name) => !order.includes(name))).toEqual([])
})

test.each(folders)('%s imports only what comes before it', (folder) => {
  for (const { file, from } of imports(folder)) {
    const other = /^(?:\.\.\/)+([a-z]+)\//.exec(from)?.[1]
    if (other !== undefined && other !== folder) {
      const backwards = order.indexOf(other) > order.indexOf(folder)
      const ofContract = folder === 'web' && /^(?:\.\.\/)+server\/http-types\.js$/.test(from)
      const betweenShells = shells.includes(other) && !(folder === 'cli' && other === 'server') && !ofContract
      expect(backwards || betweenShells, `${folder}/${file} must not import ${other}`).toBe(false)
    }
    const machine = from.startsWith('node:') || from === 'libsql'
    expect(machine && !mayTouchTheMachine.includes(folder), `${folder}/${file} must not use ${from}`).toBe(
      false,
    )
    expect(from === 'libsql' && folder !== 'store', 'only store may know SQL').toBe(false)
  }
})

test('the core asks neither the clock nor chance', () => {
  const core = order.slice(0, order.indexOf('store')).filter((name) => folders.includes(name))
  for (const folder of core) {
    for (const file of readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })) {
      if (!/\.ts$/.test(file) || /\.test\.ts$/.test(file)) continue
      const text = readFileSync(join(root, folder, file), 'utf8')
      expect(text, `${folder}/${file}`).not.toMatch(
        /Date\.now|new Date\(\)|Math\.random|performance\.now|Temporal\.Now/,
      )
    }
  }
})
