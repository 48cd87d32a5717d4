import { type SpawnSyncReturns, spawn, spawnSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { beforeAll, expect, test } from 'vitest'
import { layOutProgram } from '../../test/own-program.js'

const root = join(import.meta.dirname, '../..')
const at = mkdtempSync(join(tmpdir(), 'gensettle-'))
const main = join(at, 'dist/cli/main.js')
const data = join(at, 'data')

beforeAll(() => {
  const folders = readdirSync(join(root, 'src'), { withFileTypes: true }).filter((one) => one.isDirectory())
  mkdirSync(join(at, 'dist'))
  layOutProgram(
    join(at, 'dist'),
    folders.map(({ name }) => name),
  )
  symlinkSync(join(root, 'catalogue'), join(at, 'catalogue'), 'dir')
  mkdirSync(join(at, 'demo'))
}, 120_000)

function gensettle(...words: string[]): SpawnSyncReturns<string> {
  return spawnSync(process.execPath, [main, ...words], { encoding: 'utf8' })
}

/** Lines of the first code block below a heading that run the program. */
function linesBelow(file: string, heading: string): readonly string[] {
  const text = readFileSync(join(root, file), 'utf8')
  const block = /```\w*\n([\s\S]*?)```/.exec(text.slice(text.indexOf(heading)))?.[1] ?? ''
  return block.split('\n').flatMap((line) => /^(?:\$ )?npx gensettle (.*)$/.exec(line)?.[1] ?? [])
}

/** The words of a line of a shell that knows double quotes only. */
function wordsOf(line: string): string[] {
  return [...line.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, bare]) => quoted ?? bare ?? '')
}

test('the boat from nothing of the documentation can be typed as it stands', () => {
  const lines = linesBelow('docs/command-line.md', '## A boat from nothing')
  const own = mkdtempSync(join(tmpdir(), 'gensettle-'))
  expect(lines.length).toBeGreaterThan(5)
  for (const line of lines) {
    const { status, stderr } = gensettle(...wordsOf(line), '--data', own)
    expect(`${line}: ${status} ${stderr}`).toBe(`${line}: 0 `)
  }
})

test('the model of the README is played', () => {
  const [line] = linesBelow('README.md', 'a model written by hand')
  expect(line).toBe('simulate docs/pump.json')
  const { stdout } = gensettle('simulate', join(root, 'docs/pump.json'), '--histories', '100')
  expect(stdout).toContain('Renew pump and bearing at the quote')
})

test('help is no fault, and shows an example', () => {
  const help = gensettle('log', 'add', 'hours', '--help')
  expect(help.status).toBe(0)
  expect(help.stdout).toContain('$ gensettle log add hours 5240')
})

test('wrong use is 2, bad input 1, and done 0', () => {
  expect(gensettle('tea').status).toBe(2)
  expect(gensettle('boats', '--colour').status).toBe(2)
  expect(gensettle('simulate', 'x.json', '--histories', 'many').status).toBe(2)
  const bad = gensettle('log', 'add', 'hours', 'many', '--boat', 'petrel', '--set', 'main', '--data', data)
  expect(bad.status).toBe(1)
  expect(bad.stderr).toContain('body.meterHours: found "many"; allowed is a number from 0 to 200000 h')
  expect(gensettle('boats', '--data', data).status).toBe(0)
})

test('--json tells problems as JSON too', () => {
  const { status, stdout } = gensettle('log', 'list', '--boat', 'none', '--json', '--data', data)
  expect(status).toBe(1)
  expect(JSON.parse(stdout)).toMatchObject({
    type: 'gensettle/problems',
    problems: [{ code: 'unknown-boat' }],
  })
})

test('many histories on workers give what few in one go give', () => {
  const file = join(at, 'model.json')
  const parts = [{ id: 'pump', modes: [{ id: 'seal', clock: 'years', shape: 2, scale: 2 }] }]
  writeFileSync(file, JSON.stringify({ type: 'gensettle/life-model', version: 1, horizonYears: 5, parts }))
  const { status, stdout, stderr } = gensettle('simulate', file, '--histories', '1600', '--json')
  expect(stderr).toBe('')
  expect(status).toBe(0)
  expect(JSON.parse(stdout)).toMatchObject({ histories: 1600, alternatives: [{ alternative: 'leave' }] })
})

test('serve says the cautions and the address, keeps others out, and stops cleanly when told', async () => {
  const served = spawn(process.execPath, [main, 'serve', '--data', data])
  let said = ''
  let failed = ''
  served.stderr.on('data', (piece) => {
    failed += String(piece)
  })
  await new Promise<void>((resolve, reject) => {
    served.stdout.on('data', (piece) => {
      said += String(piece)
      if (said.includes('http://127.0.0.1:')) resolve()
    })
    served.on('exit', () => reject(new Error(failed)))
  })
  const address = /http:\/\/127\.0\.0\.1:\d+\//.exec(said)![0]
  expect(said.indexOf('does not make electrical or engine work safe')).toBeLessThan(said.indexOf(address))
  expect(await (await fetch(address)).text()).toContain('does not make electrical or engine work safe')
  const second = gensettle('boats', '--data', data)
  expect(second.status).toBe(1)
  expect(second.stderr).toContain(address)
  const ended = new Promise((resolve) => served.on('exit', resolve))
  served.kill('SIGTERM')
  expect(await ended).toBe(0)
  expect(gensettle('boats', '--data', data).status).toBe(0)
})
