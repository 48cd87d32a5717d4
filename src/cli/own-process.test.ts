import { type ChildProcess, type SpawnSyncReturns, spawn, spawnSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { beforeAll, expect, test } from 'vitest'
import { layOutProgram } from '../../test/own-program.js'

const root = join(import.meta.dirname, '../..')
const at = mkdtempSync(join(tmpdir(), 'gensettle-'))
const main = join(at, 'dist/cli/main.js')
const data = join(at, 'data')

beforeAll(async () => {
  const folders = readdirSync(join(root, 'src'), { withFileTypes: true }).filter((one) => one.isDirectory())
  mkdirSync(join(at, 'dist'))
  // The pages are built by other means.
  const ran = folders.map(({ name }) => name).filter((name) => name !== 'web')
  await layOutProgram(join(at, 'dist'), ran)
  symlinkSync(join(root, 'catalogue'), join(at, 'catalogue'), 'dir')
  mkdirSync(join(at, 'demo'))
  const judged = spawnSync(process.execPath, [join(at, 'dist/cli/judge-shipped.js')], { encoding: 'utf8' })
  expect(judged.stderr).toBe('')
}, 120_000)

/** As on a build server, where libraries of colours take a pipe for a terminal. */
const env = { ...process.env, CI: 'true' }

function gensettle(...words: string[]): SpawnSyncReturns<string> {
  return spawnSync(process.execPath, [main, ...words], { encoding: 'utf8', env })
}

/** A server that has told its address. */
async function serving(folder: string): Promise<{ served: ChildProcess; address: string; said: string }> {
  const served = spawn(process.execPath, [main, 'serve', '--data', folder], { env })
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
  return { served, address: /http:\/\/127\.0\.0\.1:\d+\//.exec(said)![0], said }
}

function endedBy(served: ChildProcess, signal: NodeJS.Signals): Promise<number | null> {
  const ended = new Promise<number | null>((resolve) => served.on('exit', resolve))
  served.kill(signal)
  return ended
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
  const alternatives = linesBelow('docs/command-line.md', '## Alternatives of your own')
  const lookingBack = linesBelow('docs/command-line.md', '## Looking back')
  expect(lines.length).toBeGreaterThan(5)
  expect(alternatives.length).toBeGreaterThan(3)
  expect(lookingBack.length).toBeGreaterThan(5)
  for (const line of [...lines, ...alternatives, ...lookingBack]) {
    const { status, stderr } = gensettle(...wordsOf(line), '--data', own)
    expect(`${line}: ${status} ${stderr}`).toBe(`${line}: 0 `)
  }
}, 300_000)

test('the model of the README is played, and what comes out is what stands there', () => {
  const [line] = linesBelow('README.md', 'a model written by hand')
  expect(line).toBe('simulate docs/pump.json')
  const { stdout } = gensettle('simulate', join(root, 'docs/pump.json'))
  expect(readFileSync(join(root, 'README.md'), 'utf8')).toContain(`\n${stdout.trim()}\n`)
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
  expect(bad.stderr).toContain('--meter-hours: found "many"; allowed is a number from 0 to 200000 h')
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
  const { served, address, said } = await serving(data)
  expect(said.indexOf('does not make electrical or engine work safe')).toBeLessThan(said.indexOf(address))
  expect((await fetch(`${address}api/boats`)).status).toBe(401)
  const entered = await fetch(/http\S+enter\S+/.exec(said)![0], { redirect: 'manual' })
  const cookie = /^[^;]+/.exec(entered.headers.get('set-cookie') ?? '')![0]
  const boats = await (await fetch(`${address}api/boats`, { headers: { cookie } })).json()
  expect(boats).toEqual({ boats: [] })
  expect(gensettle('boats', '--data', data).status).toBe(0)
  const writing = ['log', 'add', 'hours', '12', '--boat', 'petrel', '--set', 'main', '--data', data]
  const second = gensettle(...writing)
  expect(second.status).toBe(1)
  expect(second.stderr).toContain(
    `is in use by the program at ${address} Enter it there, or stop that program`,
  )
  expect(JSON.parse(gensettle(...writing, '--json').stdout).problems).toMatchObject([
    { code: 'in-use', found: address },
  ])
  expect(await endedBy(served, 'SIGTERM')).toBe(0)
  expect(gensettle(...writing).status).toBe(0)
})

test('what is in the log can be read while it is served', async () => {
  const own = mkdtempSync(join(tmpdir(), 'gensettle-'))
  const add = (...words: string[]) => gensettle('log', 'add', ...words, '--data', own)
  expect(add('set', '--boat', 'petrel', '--set', 'main', '--rating-kw', '7', '--built', '2004').status).toBe(
    0,
  )
  const { served, address } = await serving(own)
  for (const [holds, ...words] of [
    ['petrel', 'boats'],
    ['built 2004', 'log', 'list'],
    ['7 kW', 'set'],
    ['petrel', 'export', join(own, 'petrel.boat')],
  ]) {
    const { status, stdout, stderr } = gensettle(...words, '--data', own)
    expect(`${words[0]}: ${status} ${stderr}`).toBe(`${words[0]}: 0 `)
    expect(stdout).toContain(holds)
  }
  expect((await fetch(`${address}api/health`)).status).toBe(401)
  expect(await endedBy(served, 'SIGINT')).toBe(0)
}, 60_000)

test('a stop during the first answers is heard within a moment, even where it comes twice', async () => {
  const own = mkdtempSync(join(tmpdir(), 'gensettle-'))
  for (const set of ['main', 'spare']) {
    gensettle('log', 'add', 'set', '--boat', 'petrel', '--set', set, '--rating-kw', '7', '--data', own)
  }
  const served = spawn(process.execPath, [main, 'serve', '--data', own])
  await new Promise((resolve) => served.stdout.once('data', resolve))
  const ended = endedBy(served, 'SIGINT')
  served.kill('SIGINT')
  const began = performance.now()
  expect(await ended).toBe(0)
  expect(performance.now() - began).toBeLessThan(15_000)
  expect(gensettle('log', 'add', 'hours', '12', '--set', 'main', '--data', own).status).toBe(0)
}, 60_000)

test('a data folder that cannot be made is told', () => {
  const { status, stderr } = spawnSync(process.execPath, [main, 'serve', '--data', '/proc/none/such'], {
    encoding: 'utf8',
    timeout: 20_000,
  })
  expect(status).toBe(1)
  expect(stderr).toContain('/proc/none/such')
})
