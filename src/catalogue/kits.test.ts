import { join } from 'node:path'
import { expect, test } from 'vitest'
import { shippedKitFiles } from '../../test/shipped-kits.js'
import { readCatalogueFiles } from '../store/catalogue-files.js'
import { parseKits } from './kits.js'
import { figuresOf } from './path.js'

const files = readCatalogueFiles(join(import.meta.dirname, '../../catalogue/kit'))
const { kits, origins, catalogue } = shippedKitFiles()

test('every part has a kit that sees to all that the part also needs, with something asked before it is ordered', () => {
  expect(kits.kits.map(({ part }) => part).sort()).toEqual(catalogue.parts.map(({ id }) => id).sort())
  for (const { part, asks } of kits.kits) expect(asks.length, part).toBeGreaterThan(0)
  const pieces = kits.kits.flatMap((kit) => kit.pieces)
  expect(pieces.length).toBeGreaterThan(170)
  // spares are of what is small: never more than four, nor more than the pieces and one
  for (const { id, count, spares = 0 } of pieces)
    expect(spares, id).toBeLessThanOrEqual(Math.min(4, count + 1))
})

test('every question is asked of some part, tells the supplier something, and says why', () => {
  const asked = new Set(
    kits.kits.flatMap(({ asks, pieces, ready, settled }) => [
      ...asks,
      ...[...pieces, ...ready].flatMap((piece) => piece.asks),
      ...settled.flatMap(({ by }) => by),
    ]),
  )
  expect(kits.questions.filter(({ id }) => !asked.has(id)).map(({ id }) => id)).toEqual([])
  for (const { ask, why } of kits.questions) {
    expect(ask).toMatch(/\?$/)
    expect(why).toMatch(/\.$/)
  }
})

test('every figure has its origin, and no number is lost on the way', () => {
  const written = Object.entries(files)
    .filter(([name]) => name !== 'sources.json')
    .flatMap(([, file]) => figuresOf(file)).length
  expect(figuresOf(kits)).toHaveLength(written)
  for (const { path } of figuresOf(kits.sizes, 'sizes')) expect(origins.has(path), path).toBe(true)
})

test('a kit that forgets what its part needs, or asks what is no question, is refused with all its problems', () => {
  const wrong = structuredClone(files) as Record<
    string,
    { kits: { part: string; asks: string[]; pieces: unknown[] }[] }
  >
  const pump = wrong['kits-sea-water.json']!.kits.find(({ part }) => part === 'sea-pump-body')!
  pump.asks.push('colour')
  pump.pieces.shift()
  const parsed = parseKits(wrong, catalogue)
  expect(parsed.ok ? [] : parsed.problems.map(({ code, found }) => `${code} ${found}`)).toEqual([
    'unknown-name colour',
    'missing spacer or adaptor plate',
  ])
})
