import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { parseCatalogue } from '../catalogue/parse.js'
import { readCatalogueFiles } from './catalogue-files.js'

test('the catalogue that is shipped reads without a problem', () => {
  const parsed = parseCatalogue(readCatalogueFiles(join(import.meta.dirname, '../../catalogue')))
  expect(parsed.ok ? [] : parsed.problems).toEqual([])
})

test('a file that is no JSON is named', () => {
  const folder = mkdtempSync(join(tmpdir(), 'catalogue-'))
  try {
    writeFileSync(join(folder, 'parts.json'), '{"parts": [')
    writeFileSync(join(folder, 'notes.txt'), 'not read')
    expect(() => readCatalogueFiles(folder)).toThrow(/parts\.json must be JSON; found /)
    writeFileSync(join(folder, 'parts.json'), '{"parts": []}')
    expect(readCatalogueFiles(folder)).toEqual({ 'parts.json': { parts: [] } })
  } finally {
    rmSync(folder, { recursive: true })
  }
})
