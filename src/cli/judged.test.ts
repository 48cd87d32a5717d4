import { mkdirSync, mkdtempSync, readdirSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { catalogueFromJson, catalogueToJson } from '../catalogue/catalogue-json.js'
import { type Judging, judgedFiles } from './judged.js'
import { shippedCatalogue, shippedFaultModel, shippedKits } from './shipped.js'

const folder = mkdtempSync(join(tmpdir(), 'gensettle-'))
const source = join(folder, 'source')
mkdirSync(source)
writeFileSync(join(source, 'parts.json'), '{}')
const judging: Judging = {
  catalogue: () => catalogueToJson(shippedCatalogue()),
  faults: shippedFaultModel,
  kits: shippedKits,
  demonstration: () => [{ boat: 'petrel', texts: ['{}'] }],
}
const of = { folder: join(folder, 'judged'), sources: [source] }

test('what was judged is read again as it was, for as long as its files are the same', () => {
  expect(judgedFiles(of).isThere()).toBe(false)
  judgedFiles(of).keep(judging)
  const kept = judgedFiles(of)
  expect(kept.isThere()).toBe(true)
  expect(catalogueFromJson(kept.read('catalogue'))).toEqual(shippedCatalogue())
  expect(kept.read('faults')).toEqual(shippedFaultModel())
  expect(kept.read('kits')).toEqual(shippedKits())
  expect(kept.read('demonstration')).toEqual(judging.demonstration())

  writeFileSync(join(source, 'parts.json'), '{ }')
  expect(judgedFiles(of).isThere()).toBe(false)
  judgedFiles(of).keep({
    ...judging,
    catalogue: () => ({ ...catalogueToJson(shippedCatalogue()), parts: [] }),
  })
  expect(readdirSync(of.folder)).toHaveLength(4)
  expect(judgedFiles(of).read('catalogue').parts).toEqual([])
})

test('a copy of which a file is not sound keeps nothing to be taken for judged', () => {
  const failing = () => {
    throw new TypeError('kits must be sound')
  }
  expect(() => judgedFiles(of).keep({ ...judging, kits: failing })).toThrow('kits must be sound')
  expect(judgedFiles(of).isThere()).toBe(false)
})
