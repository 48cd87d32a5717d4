import { existsSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { createServer } from 'node:http'
import type { AddressInfo } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { makeApp } from './app.js'
import { listen } from './listen.js'
import type { PageContent } from './page.js'

const host = '127.0.0.1:4321'
const content: PageContent = {
  cautions: ['It makes no work safe.'],
  boats: [
    {
      name: '<b>Petrel & Co</b>',
      demonstration: true,
      set: '7 kW',
      verdict: 'Have it mended.',
      walkAway: 'Walk away above £3,150.',
      barred: ['Leave it: the winding reads 0.4 MΩ.'],
      assumed: [],
    },
  ],
}

function ask(path: string, init: RequestInit = {}, at = host) {
  return makeApp(content, host).request(`http://${at}${path}`, { ...init, headers: { host: at } })
}

test('the page tells verdict, price and cautions, and takes no markup from a boat', async () => {
  const answer = await ask('/')
  const page = await answer.text()
  expect(answer.status).toBe(200)
  for (const words of [
    'Have it mended.',
    'Walk away above £3,150.',
    'It makes no work safe.',
    'reads 0.4 MΩ',
  ]) {
    expect(page).toContain(words)
  }
  expect(page).toContain('&lt;b&gt;Petrel &amp; Co&lt;/b&gt;')
  expect(page).not.toContain('<b>')
  expect(page).toContain('lang="en"')
})

test('nothing but this machine’s own page is let in', async () => {
  const { headers } = await ask('/')
  expect(headers.get('content-security-policy')).toContain("default-src 'self'")
  expect(headers.get('x-content-type-options')).toBe('nosniff')
  expect(headers.has('access-control-allow-origin')).toBe(false)
  expect((await ask('/', {}, 'elsewhere.example')).status).toBe(421)
  expect((await ask('/', {}, '127.0.0.1:80')).status).toBe(421)
  expect((await ask('/', { method: 'POST' })).status).toBe(405)
  expect((await ask('/log')).status).toBe(404)
  expect((await ask('/page.css')).headers.get('content-type')).toContain('text/css')
})

test('refusals bear the same guards as the page', async () => {
  for (const answer of [await ask('/', {}, 'elsewhere.example'), await ask('/none')]) {
    expect(answer.headers.get('x-content-type-options')).toBe('nosniff')
  }
})

test('the port is chosen once and kept', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'gensettle-'))
  const first = await listen(folder, content)
  if (!first.ok) throw new Error('must listen')
  const page = await fetch(first.address)
  expect(await page.text()).toContain('Have it mended.')
  await first.stop()
  const again = await listen(folder, content)
  expect(again.ok && again.address).toBe(first.address)
  if (again.ok) await again.stop()
})

test('a port that is taken is told, and nothing else is chosen', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'gensettle-'))
  const other = createServer()
  await new Promise<void>((resolve) => other.listen(0, '127.0.0.1', resolve))
  const { port } = other.address() as AddressInfo
  writeFileSync(join(folder, 'port'), `${port}\n`)
  const refused = await listen(folder, content)
  expect(refused).toMatchObject({ ok: false, problems: [{ code: 'port-taken' }] })
  expect(readFileSync(join(folder, 'port'), 'utf8')).toBe(`${port}\n`)
  other.close()
})

test('a kept port that is none is told', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'gensettle-'))
  writeFileSync(join(folder, 'port'), 'eighty')
  expect(await listen(folder, content)).toMatchObject({
    ok: false,
    problems: [{ code: 'wrong-port', found: 'eighty' }],
  })
  expect(existsSync(join(folder, 'port'))).toBe(true)
})
