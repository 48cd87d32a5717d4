import { join } from 'node:path'
import { expect, test } from 'vitest'
import { readCatalogueFiles } from '../store/catalogue-files.js'
import { parseCatalogue } from './parse.js'
import { figuresOf, mapFigures, valueAt } from './path.js'
import { partOrigins } from './provenance.js'

const shipped = readCatalogueFiles(join(import.meta.dirname, '../../catalogue'))

/** The shipped files with one record changed; what is wrong with them. */
function problemsAfter(file: string, change: (content: Loose) => void): string[] {
  const files = structuredClone(shipped)
  change(new Loose(files[file]))
  return wordsOf(files)
}

function wordsOf(files: Readonly<Record<string, unknown>>): string[] {
  const parsed = parseCatalogue(files)
  return parsed.ok ? [] : parsed.problems.map(({ code, path, found }) => `${code} ${path} ${found}`)
}

/** A file's content that a test may spoil. */
class Loose {
  constructor(readonly root: unknown) {}
  at(path: string): Record<string, unknown> {
    return (path === '' ? this.root : valueAt(this.root, path)) as Record<string, unknown>
  }
}

test('a number under no origin is found, wherever it stands', () => {
  expect(problemsAfter('care.json', (file) => delete file.at('care').from)).toContain(
    'no-origin care.json:care.freshWaterFactor 1.8',
  )
  const noPart = problemsAfter('parts-cooling.json', (file) => delete file.at('parts.anode').from)
  expect(noPart).toContain('no-origin parts-cooling.json:parts.anode.price.original.low 10')
  expect(noPart.filter((words) => words.includes('.modes.'))).toEqual([])
})

test('an origin that the head does not list is found', () => {
  const words = problemsAfter('parts-cooling.json', (file) => {
    file.at('parts.anode').from = 'hearsay'
  })
  expect(words).toContain('unknown-origin parts-cooling.json:parts.anode.from "hearsay"')
})

test('an origin for a field that is not there is found', () => {
  const words = problemsAfter('parts-cooling.json', (file) => {
    file.at('parts.anode').fromOf = { colour: 'practice' }
  })
  expect(words).toEqual(['unknown-field parts-cooling.json:parts.anode.fromOf.colour colour'])
})

test('practice cannot pass for a source, nor a source for practice', () => {
  const words = problemsAfter('care.json', (file) => {
    file.at('origins.practice').held = 'seen'
  })
  expect(words).toContain('contradiction care.freshWaterFactor practice, seen')
})

test('the owner cannot have written the catalogue', () => {
  const words = problemsAfter('care.json', (file) => {
    file.at('origins.practice').held = 'owner'
  })
  expect(words).toEqual(['form care.json:origins.practice.held "owner"'])
})

test('names that lead nowhere are all found at once', () => {
  const words = problemsAfter('parts-cooling.json', (file) => {
    file.at('parts.anode.modes.spent.wearLinks.exchanger-tubes').mode = 'shrink'
    file.at('parts.thermostat.modes.shut.links.head-and-gasket').to = 'keel'
    file.at('parts.thermostat.access').opens = ['cellar']
    file.at('parts.thermostat.service').clears = ['age']
    file.at('parts.anode.modes.spent').dangers = ['sharks']
    file.at('parts.coolant.service').tests = ['taste']
  })
  expect(words).toEqual([
    'unknown-name parts.anode.modes.spent.dangers sharks',
    'unknown-name parts.anode.modes.spent.wearLinks.exchanger-tubes exchanger-tubes.shrink',
    'unknown-name parts.thermostat.access.opens cellar',
    'unknown-name parts.thermostat.service.clears thermostat.age',
    'unknown-name parts.thermostat.modes.shut.links.keel keel',
    'unknown-name parts.coolant.service.tests taste',
  ])
})

test('claims that contradict each other are found', () => {
  const words = problemsAfter('parts-cooling.json', (file) => {
    file.at('parts.thermostat.modes.shut').derates = 0.5
    file.at('parts.thermostat.modes.shut.remedy').supply = 'made'
    file.at('parts.thermostat.modes.open.remedy').outcome = 'reconditioned'
    delete file.at('parts.thermostat.modes.shut.links.head-and-gasket').trip
    delete file.at('parts.thermostat.modes.open.links.pistons-and-bores').brings
  })
  expect(words.map((text) => text.split(' ').slice(0, 2).join(' '))).toEqual([
    'contradiction parts.thermostat.modes.shut',
    'contradiction parts.thermostat.modes.shut',
    'contradiction parts.thermostat.modes.shut',
    'contradiction parts.thermostat.modes.open',
    'contradiction parts.thermostat.modes.open',
  ])
})

test('a name used twice is found', () => {
  const words = problemsAfter('parts-cooling.json', (file) => {
    file.at('parts.thermostat').id = 'seacock'
  })
  expect(words).toContain('twice parts seacock')
})

test('a wrong form is found, and what stands there is told', () => {
  const words = problemsAfter('parts-cooling.json', (file) => {
    file.at('parts.anode.modes.spent').shape = -1
    file.at('parts.anode.modes.spent').clock = 'days'
    file.at('parts.anode').colour = 'grey'
    file.at('parts.anode.price.original').low = 99
  })
  expect(words).toHaveLength(4)
  expect(words.join('\n')).toMatch(/parts\.anode\.modes\.spent\.shape -1/)
  expect(words.join('\n')).toMatch(/parts\.anode\.modes\.spent\.clock "days"/)
  expect(words.join('\n')).toMatch(/parts\.anode\.price\.original \{"low":99/)
})

test('each kind of file is needed, and only parts may be spread over several', () => {
  const { 'care.json': care, ...others } = shipped
  expect(wordsOf(others)).toEqual(['file-count gensettle-care 0 files'])
  expect(wordsOf({ ...others, a: care, b: care })).toEqual(['file-count gensettle-care 2 files'])
  expect(wordsOf({ ...shipped, 'care.json': { care: {} } })[0]).toMatch(/^form care\.json:type nothing/)
  expect(wordsOf({ ...shipped, 'more.json': null })[0]).toMatch(/^form more\.json: null/)
})

test('an origin reaches down until another takes its place', () => {
  const practice = { source: 'practice', place: 'judgement', held: 'practice' as const, alongside: [] }
  const manual = { source: 'manual', place: 'page 3', held: 'seen' as const, alongside: [] }
  const content = {
    from: 'practice',
    deep: {
      far: [
        { id: 'first', x: 1 },
        { id: 'second', from: 'manual', x: 2, y: { z: 3 } },
      ],
      w: 4,
    },
    fromOf: { v: 'manual' },
    v: 5,
  }
  const parted = partOrigins(content, { practice, manual }, '')
  expect(parted.problems).toEqual([])
  expect(parted.values).toEqual({
    deep: {
      far: [
        { id: 'first', x: 1 },
        { id: 'second', x: 2, y: { z: 3 } },
      ],
      w: 4,
    },
    v: 5,
  })
  expect([...parted.origins].map(([path, { source }]) => `${path} ${source}`)).toEqual([
    'deep.far.first.x practice',
    'deep.far.second.x manual',
    'deep.far.second.y.z manual',
    'deep.w practice',
    'v manual',
  ])
})

test('a path names records by what names them', () => {
  const node = { list: [{ id: 'a', x: 1 }, { to: 'b', x: 2 }, { check: 'c', x: 3 }, { x: 4 }, 5] }
  expect(figuresOf(node)).toEqual([
    { path: 'list.a.x', value: 1 },
    { path: 'list.b.x', value: 2 },
    { path: 'list.c.x', value: 3 },
    { path: 'list.3.x', value: 4 },
    { path: 'list.4', value: 5 },
  ])
  for (const { path, value } of figuresOf(node)) expect(valueAt(node, path)).toBe(value)
  expect(valueAt(node, 'list.a.y')).toBeUndefined()
  expect(mapFigures(node, (value, path) => (path === 'list.b.x' ? 20 : value)).list[1]).toEqual({
    to: 'b',
    x: 20,
  })
})
