import { join } from 'node:path'
import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { readCatalogueFiles } from '../store/catalogue-files.js'
import { describeFigure, type Overruling, overrule } from './overrule.js'
import { parseCatalogue } from './parse.js'
import { figuresOf, valueAt } from './path.js'
import { catalogueFor, type SetCatalogue } from './scale.js'

const sevenKW = catalogueOf()
const reason = 'Three impellers of this set'
const wear = 'parts.sea-pump-impeller.modes.wear.scale'

function catalogueOf(): SetCatalogue {
  const parsed = parseCatalogue(readCatalogueFiles(join(import.meta.dirname, '../../catalogue')))
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems))
  const money = { currency: 'GBP', currencyPerUsd: 0.8, localFactor: 1.2, priceYear: 2025 }
  return catalogueFor(parsed.catalogue, { ratingKW: 7, rpm: 3000, excitation: 'brushless-regulator', money })
}

function overruled(overrulings: readonly Overruling[]): SetCatalogue {
  const result = overrule(sevenKW, overrulings)
  if (!result.ok) throw new Error(JSON.stringify(result.problems))
  return result.catalogue
}

function problemsOf(path: string, value: number) {
  const result = overrule(sevenKW, [{ path, value, reason }])
  return result.ok ? [] : result.problems.map(({ code, path: where, found }) => [code, where, found])
}

test("the owner's figure is taken as it stands, neither scaled nor exchanged", () => {
  const price = 'parts.sea-pump-impeller.price.original.typical'
  const made = overruled([
    { path: wear, value: 450, reason },
    { path: price, value: 44, reason: 'Bill of 12 May' },
  ])
  expect(valueAt(made, wear)).toBe(450)
  expect(describeFigure(made, price)).toMatchObject({
    value: 44,
    unit: 'GBP',
    held: 'owner',
    place: 'Bill of 12 May',
  })
  expect(describeFigure(made, wear)).toEqual({
    path: wear,
    value: 450,
    unit: 'h',
    catalogueValue: 1300,
    source: 'owner',
    place: reason,
    held: 'owner',
    alongside: [],
  })
})

test('overruling one figure moves no other, and not the catalogue it was made from', () => {
  const made = overruled([{ path: wear, value: 450, reason }])
  for (const list of ['parts', 'access', 'checks', 'dangers', 'wholeSet', 'care'] as const) {
    for (const { path, value } of figuresOf(sevenKW[list], list)) {
      expect(valueAt(made, path), path).toBe(path === wear ? 450 : value)
    }
  }
  expect(valueAt(sevenKW, wear)).toBeCloseTo(1300 * 0.55, 9)
  expect(made.overruled).toEqual(new Map([[wear, reason]]))
})

test('the later of two overrulings of a figure wins', () => {
  const twice = overruled([
    { path: wear, value: 450, reason },
    { path: wear, value: 500, reason: 'A fourth' },
  ])
  expect(describeFigure(twice, wear)).toMatchObject({ value: 500, place: 'A fourth' })
  const again = overrule(twice, [{ path: wear, value: 550, reason: 'A fifth' }])
  expect(again.ok && valueAt(again.catalogue, wear)).toBe(550)
})

test('a figure tells where it comes from', () => {
  expect(describeFigure(sevenKW, 'parts.anode.modes.spent.scale')).toMatchObject({
    value: 1.2,
    unit: 'y',
    source: 'seaWaterCarePress',
    held: 'quoted',
  })
  expect(describeFigure(sevenKW, wear)).toMatchObject({
    catalogueValue: 1300,
    source: 'practice',
    place: "compiler's judgement",
    held: 'practice',
    alongside: [{ source: 'seaWaterCarePress', held: 'quoted' }],
  })
  expect(describeFigure(sevenKW, 'parts.seacock.name')).toBeUndefined()
  expect(describeFigure(sevenKW, 'parts.keel.price')).toBeUndefined()
  expect(describeFigure(sevenKW, '')).toBeUndefined()
})

test('a path that leads to no figure is refused', () => {
  expect(problemsOf('parts.keel.modes.wear.scale', 1)).toEqual([
    ['unknown-path', 'parts.keel.modes.wear.scale', '1'],
  ])
  expect(problemsOf('parts.seacock.name', 1)).toEqual([['unknown-path', 'parts.seacock.name', '1']])
  expect(problemsOf('kind.ratingKW', 8)).toEqual([['unknown-path', 'kind.ratingKW', '8']])
})

test('a figure out of its span is refused', () => {
  expect(problemsOf(wear, 0)).toEqual([['out-of-span', wear, '0']])
  expect(problemsOf(wear, Number.NaN)[0]).toEqual(['out-of-span', wear, 'NaN'])
  expect(problemsOf('parts.seacock.modes.blocked.stops', 1.1)[0]).toEqual([
    'out-of-span',
    'parts.seacock.modes.blocked.stops',
    '1.1',
  ])
  // Low, typical and high must still rise; stopping and derating must still sum to at most one.
  expect(problemsOf('parts.seacock.price.original.low', 1000)[0]?.slice(0, 2)).toEqual([
    'out-of-span',
    'parts.seacock.price.original',
  ])
  expect(problemsOf('parts.seacock.modes.blocked.stops', 0.7)[0]?.[0]).toBe('contradiction')
})

test('a typical figure set beyond the ends of its spread takes them along, unless they are set too', () => {
  const path = 'parts.seacock.price.original'
  const before = valueAt(sevenKW, path) as { low: number; typical: number; high: number }
  const value = 3 * before.typical
  const spread = valueAt(overruled([{ path: `${path}.typical`, value, reason }]), path)
  expect(spread).toEqual({
    low: expect.closeTo(3 * before.low, 9),
    typical: value,
    high: expect.closeTo(3 * before.high, 9),
  })
  const within = before.typical * 1.01
  expect(valueAt(overruled([{ path: `${path}.typical`, value: within, reason }]), path)).toEqual({
    ...before,
    typical: within,
  })
  const both = [
    { path: `${path}.typical`, value, reason },
    { path: `${path}.high`, value: value + 1, reason },
  ]
  expect(valueAt(overruled(both), `${path}.high`)).toBe(value + 1)
})

test('what has done its work already is refused rather than taken without effect', () => {
  for (const path of [
    'wholeSet.rating.partPriceExponent',
    'care.twoPoleFactor',
    'sources.telecomSites2018.year',
  ]) {
    expect(problemsOf(path, 1)[0]?.[0], path).toBe('fixed-figure')
  }
})

test('one wrong overruling refuses them all, and each is told', () => {
  const result = overrule(sevenKW, [
    { path: wear, value: 450, reason },
    { path: 'parts.keel.scale', value: 1, reason },
    { path: 'care.freshWaterFactor', value: 1, reason },
  ])
  expect(result.ok ? [] : result.problems.map(({ code }) => code)).toEqual(['unknown-path', 'fixed-figure'])
})

test('any figure can be set to what it is', () => {
  const open = figuresOf({ parts: sevenKW.parts, wholeSet: sevenKW.wholeSet, checks: sevenKW.checks }).filter(
    ({ path }) => !path.startsWith('wholeSet.money') && !path.startsWith('wholeSet.rating'),
  )
  fc.assert(
    fc.property(fc.constantFrom(...open), ({ path, value }) => {
      expect(describeFigure(overruled([{ path, value, reason }]), path)).toMatchObject({
        value,
        held: 'owner',
      })
    }),
    { numRuns: 25 },
  )
})
