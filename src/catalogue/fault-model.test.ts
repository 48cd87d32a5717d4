import { join } from 'node:path'
import { expect, test } from 'vitest'
import { readCatalogueFiles } from '../store/catalogue-files.js'
import { parseFaultModel } from './fault-model.js'
import { parseCatalogue } from './parse.js'
import { figuresOf } from './path.js'

const folder = join(import.meta.dirname, '../../catalogue')
const files = readCatalogueFiles(join(folder, 'faults'))
const parsedCatalogue = parseCatalogue(readCatalogueFiles(folder))
if (!parsedCatalogue.ok) throw new Error(JSON.stringify(parsedCatalogue.problems))
const { catalogue } = parsedCatalogue

function shipped() {
  const parsed = parseFaultModel(files, catalogue)
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems.slice(0, 5), null, 1))
  return parsed
}

test('the fault model that is shipped reads without a problem', () => {
  const { model } = shipped()
  expect(model.faults).toHaveLength(80)
  expect(model.symptoms).toHaveLength(50)
  expect(model.checks).toHaveLength(60)
  expect(model.stopLines).toHaveLength(26)
})

test('every figure of it has a source, a place, and says how it is held', () => {
  const { model, origins, sources } = shipped()
  const known = new Set([...catalogue.sources, ...sources].map(({ id }) => id))
  const figures = figuresOf(model)
  expect(figures.length).toBeGreaterThan(1500)
  const lacking = figures.filter(({ path }) => {
    const origin = origins.get(path)
    return origin === undefined || !known.has(origin.source) || origin.place === ''
  })
  expect(lacking).toEqual([])
})

test('every source of its own is leaned on', () => {
  const { sources } = shipped()
  const heads = Object.values(files) as {
    origins?: Record<string, { source: string; alongside?: { source: string }[] }>
  }[]
  const used = new Set(
    heads.flatMap(({ origins = {} }) =>
      Object.values(origins).flatMap(({ source, alongside = [] }) => [
        source,
        ...alongside.map((one) => one.source),
      ]),
    ),
  )
  expect(sources.filter(({ id }) => !used.has(id))).toEqual([])
})

test('every fault shows in some way, and every symptom has a cause', () => {
  const { model } = shipped()
  for (const { id, symptoms } of model.faults) expect(Object.keys(symptoms).length, id).toBeGreaterThan(0)
  const caused = new Set(model.faults.flatMap(({ symptoms }) => Object.keys(symptoms)))
  expect(model.symptoms.filter(({ id }) => !caused.has(id))).toEqual([])
})

test('all that is wrong is told at once', () => {
  const [name, faults] = Object.entries(files).find(([file]) => file.startsWith('faults-electrical'))!
  const bad = structuredClone(faults) as { faults: Record<string, unknown>[] }
  bad.faults[0]!.parts = [{ part: 'teapot' }]
  bad.faults[1]!.dragsDown = ['rust']
  bad.faults[2]!.symptoms = { 'sings-hymns': 0.5 }
  const parsed = parseFaultModel({ ...files, [name]: bad }, catalogue)
  const found = parsed.ok ? [] : parsed.problems.map((problem) => problem.found)
  expect(found).toEqual(['teapot', 'rust', 'sings-hymns'])
})

test.each([
  ['a hole before the last', (bands: Band[]) => bands.splice(1, 1, { outcome: bands[1]!.outcome })],
  ['an end that falls', (bands: Band[]) => bands.splice(1, 1, { ...bands[1]!, upTo: 0.001 })],
  ['an outcome that is none', (bands: Band[]) => bands.splice(0, 1, { ...bands[0]!, outcome: 'teapot' })],
])('bands with %s are refused', (_, spoil) => {
  const [name, content] = Object.entries(files).find(([file]) => file.startsWith('checks-electrical'))!
  const bad = structuredClone(content) as { checks: { id: string; reading?: { bands: Band[] } }[] }
  spoil(bad.checks.find(({ id }) => id === 'stator-insulation')!.reading!.bands)
  const parsed = parseFaultModel({ ...files, [name]: bad }, catalogue)
  expect(parsed.ok ? [] : parsed.problems.map(({ code }) => code)).toContain('bands')
})

test('chances that make no whole are refused', () => {
  const [name, content] = Object.entries(files).find(([file]) => file.startsWith('checks-electrical'))!
  const bad = structuredClone(content) as { checks: { id: string; usual: Record<string, number> }[] }
  bad.checks[0]!.usual.right = 0.5
  const parsed = parseFaultModel({ ...files, [name]: bad }, catalogue)
  expect(parsed.ok ? [] : parsed.problems.map(({ code }) => code)).toEqual(['no-whole'])
})

interface Band {
  readonly outcome: string
  readonly upTo?: number
  readonly of?: string
}
