import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { parseCatalogue } from '../catalogue/parse.js'
import { readBoatLines } from '../logbook/boat-lines.js'
import { currentEntries } from '../logbook/current.js'
import { oddities } from '../logbook/oddities.js'
import { registerOf, setsOf } from '../register/register.js'
import { setCatalogueOf } from '../register/set-kind-of.js'
import { readCatalogueFiles } from '../store/catalogue-files.js'
import { buildLifeModel } from './build-life-model.js'
import { lifeModelSchema } from './life-model.js'
import { contradictionsIn } from './life-model-contradictions.js'

const root = join(import.meta.dirname, '../..')
const parsed = parseCatalogue(readCatalogueFiles(join(root, 'catalogue')))
if (!parsed.ok) throw new Error(`the catalogue must be readable; found ${parsed.problems.length} problems`)
const { catalogue } = parsed
const known = {
  parts: new Map(catalogue.parts.map(({ id, modes }) => [id, new Set(modes.map((mode) => mode.id))])),
  checks: new Set(catalogue.checks.map(({ id }) => id)),
}

function demonstration(boat: string) {
  const lines = readBoatLines(readFileSync(join(root, 'demo', `${boat}.jsonl`), 'utf8'))
  if (!lines.ok)
    throw new Error(`${boat} must be readable; found ${JSON.stringify(lines.problems.slice(0, 5))}`)
  const { entries, disputes, troubles } = currentEntries(lines.entries.map(({ entry }) => entry))
  const asOf = lines.header.date
  const [set] = setsOf(entries, asOf)
  const register = registerOf({ entries, boat, set: set!, asOf, catalogue })
  const ofSet = setCatalogueOf(register, catalogue)
  return {
    entries,
    disputes,
    troubles,
    asOf,
    register,
    ofSet,
    built: buildLifeModel(register, ofSet.catalogue),
  }
}

describe.each([
  { boat: 'marram', hours: 5240, years: 20 },
  { boat: 'quillback', hours: 6900, years: 10 },
  { boat: 'teasel', hours: 310, years: 14 },
])('$boat', ({ boat, hours, years }) => {
  const demo = demonstration(boat)

  test('has a log of its years in which nothing is odd', () => {
    expect(demo.entries.length).toBeGreaterThan(8 * years)
    const spanned = Number(demo.asOf.slice(0, 4)) - Number(demo.entries[0]!.from.slice(0, 4))
    expect(spanned).toBeGreaterThanOrEqual(years)
    expect(oddities(demo.entries, { ...known, today: demo.asOf })).toEqual([])
    expect(demo.disputes).toEqual([])
    expect(demo.troubles).toEqual([])
  })

  test('has run the hours it should have', () => {
    expect(demo.register.hours.points.at(-1)!.hours).toBeGreaterThan(hours - 3)
    expect(demo.register.hours.points.at(-1)!.hours).toBeLessThan(hours + 8)
  })

  test('builds a life model that hangs together', () => {
    expect(demo.ofSet.problems).toEqual([])
    const model = lifeModelSchema.parse(demo.built.model)
    expect(contradictionsIn(model)).toEqual([])
    expect(model.parts.length).toBeGreaterThan(60)
    expect(model.candidates.map(({ id }) => id)).toEqual([
      'new-smaller',
      'new-same',
      'new-larger',
      'used-same',
    ])
    const resting = Object.values(demo.built.restsOn).filter((ids) => ids.length > 0)
    expect(resting.length).toBeGreaterThan(25)
  })
})

test('Marram has her rewind on offer, her low reading, and two findings open', () => {
  const { register, built } = demonstration('marram')
  expect(register.openQuotes).toMatchObject([
    {
      job: 'rewind-2026',
      withTax: 2900,
      subjectToStripDown: true,
      excludes: ['removal', 'refitting'],
      covers: { parts: [{ part: 'stator-winding', did: 'renewed' }] },
    },
  ])
  expect(register.openDefects.map(({ about }) => about[0]?.part)).toEqual(['exhaust-elbow', 'sea-pump-seal'])
  const low = lifeModelSchema
    .parse(built.model)
    .symptoms.filter(({ modes }) => modes.every(({ part }) => part === 'stator-winding'))
  expect(low).toHaveLength(1)
  expect(register.overruns.map(({ ratio }) => ratio.toFixed(3))).toEqual(['1.223', '1.083'])
})

test('Quillback shakes for one of several reasons', () => {
  const { built } = demonstration('quillback')
  const shakes = lifeModelSchema.parse(built.model).symptoms
  expect(shakes.map(({ modes }) => modes.map(({ part }) => part))).toEqual([
    ['outboard-bearing', 'drive-plate', 'mounts'],
    ['outboard-bearing', 'drive-plate', 'mounts'],
  ])
})

test('nothing is wrong with Teasel', () => {
  const { register, built } = demonstration('teasel')
  expect(register.openDefects).toEqual([])
  expect(register.openDangers).toEqual([])
  expect(register.broken).toEqual([])
  expect(register.openQuotes).toEqual([])
  expect(lifeModelSchema.parse(built.model).symptoms).toEqual([])
})
