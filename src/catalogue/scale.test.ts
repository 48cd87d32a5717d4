import { join } from 'node:path'
import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { readCatalogueFiles } from '../store/catalogue-files.js'
import type { Catalogue } from './catalogue.js'
import { parseCatalogue } from './parse.js'
import { figuresOf, valueAt } from './path.js'
import { referenceProblems } from './references.js'
import { catalogueFor } from './scale.js'
import { fitsKind, isTwoPole, type SetKind } from './set-kind.js'

const catalogue = shipped()
const tenKW: SetKind = { ratingKW: 10, rpm: 1500, excitation: 'brushless-regulator' }

function shipped(): Catalogue {
  const parsed = parseCatalogue(readCatalogueFiles(join(import.meta.dirname, '../../catalogue')))
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems))
  return parsed.catalogue
}

function figure(kind: SetKind, path: string): number {
  return valueAt(catalogueFor(catalogue, kind), path) as number
}

function partIds(kind: SetKind): string[] {
  return catalogueFor(catalogue, kind).parts.map(({ id }) => id)
}

test('a set of 10 kW at 1,500 rpm in salt water has the catalogue as it stands', () => {
  const made = catalogueFor(catalogue, tenKW)
  for (const { path, value } of figuresOf(made.parts)) {
    expect(value, path).toBe(valueAt(catalogue.parts, path))
  }
  expect(made.wholeSet).toEqual(catalogue.wholeSet)
  expect(made.access).toEqual(catalogue.access)
})

// Practice: parts grow with the rating to the power 0.35, hours of work to the power 0.2.
test('twice the rating: parts dearer by 2^0.35, hours longer by 2^0.2, lives the same', () => {
  const twenty = { ...tenKW, ratingKW: 20 }
  expect(figure(twenty, 'parts.starter.price.original.typical')).toBeCloseTo(430 * 2 ** 0.35, 9)
  expect(figure(twenty, 'parts.valve-gear.shopCharge.low')).toBeCloseTo(400 * 2 ** 0.35, 9)
  expect(figure(twenty, 'parts.starter.hours.paid')).toBeCloseTo(1.8 * 2 ** 0.2, 9)
  expect(figure(twenty, 'parts.starter.service.hours.paid')).toBeCloseTo(1.8 * 2 ** 0.2, 9)
  expect(figure(twenty, 'access.set-out.setUpHours.paid')).toBeCloseTo(12 * 2 ** 0.2, 9)
  expect(figure(twenty, 'wholeSet.windings.price.stator.typical')).toBeCloseTo(1900 * 2 ** 0.35, 9)
  expect(figure(twenty, 'wholeSet.overhaul.major.labourHours.high')).toBeCloseTo(120 * 2 ** 0.2, 9)
  expect(figure(twenty, 'wholeSet.labour.ratePerHour.typical')).toBe(130)
  expect(figure(twenty, 'parts.starter.modes.wear.scale')).toBe(6500)
})

// Practice: modes on running hours live 0.55 as long at 3,000 and 3,600 rpm.
test.each([3000, 3600])('at %i rpm running hours count for more, years and starts do not', (rpm) => {
  const fast = { ...tenKW, rpm }
  expect(isTwoPole(fast)).toBe(true)
  expect(figure(fast, 'parts.sea-pump-impeller.modes.wear.scale')).toBeCloseTo(1300 * 0.55, 9)
  expect(figure(fast, 'parts.sea-pump-impeller.modes.age.scale')).toBe(6.5)
  expect(figure(fast, 'parts.starter.modes.wear.scale')).toBe(6500)
})

// Practice: salt-driven modes last 1.8 times as long in fresh water.
test('fresh water slows what salt drives and nothing else', () => {
  const lake = { ...tenKW, water: 'fresh' as const }
  expect(figure(lake, 'parts.exchanger-tubes.modes.perforate.scale')).toBeCloseTo(24 * 1.8, 9)
  expect(figure(lake, 'parts.coolant-hoses.modes.age.scale')).toBe(14)
  const both = { ...lake, rpm: 3000 }
  expect(figure(both, 'parts.exhaust-elbow.modes.choke.scale')).toBeCloseTo(2600 * 1.8 * 0.55, 9)
})

test('doubling the local prices doubles every price and moves nothing else', () => {
  const money = { currency: 'GBP', currencyPerUsd: 0.8, localFactor: 1.25, priceYear: 2025 }
  const once = catalogueFor(catalogue, { ...tenKW, money })
  const twice = catalogueFor(catalogue, { ...tenKW, money: { ...money, localFactor: 2.5 } })
  const price =
    /price\.|shopCharge\.|fee\.|(?:materials|lifting|haulOut|cutAccess|ratePerHour|callOut)\.|salvage\.parts|Price\.|priceAt1KW|loor$|scrapPerKg|boatGains/
  for (const list of ['parts', 'access', 'checks', 'wholeSet'] as const) {
    for (const { path, value } of figuresOf(once[list])) {
      const factor = price.test(path) ? 2 : 1
      expect(valueAt(twice[list], path), path).toBeCloseTo(value * factor, 9)
    }
  }
  expect(once.wholeSet.money).toEqual({ currency: 'GBP', priceYear: 2025 })
  expect(valueAt(once, 'parts.seacock.price.original.typical')).toBeCloseTo(160, 9)
})

test('each way of exciting has its own parts', () => {
  const ends = [
    'exciter',
    'rotor-diodes',
    'voltage-regulator',
    'excitation-capacitor',
    'compounding-transformer',
    'slip-rings',
  ]
  const has = (excitation: SetKind['excitation']) => {
    const ids = partIds({ ...tenKW, excitation })
    return ends.filter((id) => ids.includes(id))
  }
  expect(has('brushless-regulator')).toEqual(['exciter', 'rotor-diodes', 'voltage-regulator'])
  expect(has('brushed-regulator')).toEqual(['voltage-regulator', 'slip-rings'])
  expect(has('capacitor')).toEqual(['rotor-diodes', 'excitation-capacitor'])
  expect(has('compound')).toEqual(['exciter', 'rotor-diodes', 'compounding-transformer'])
  expect(has('brushed-compound')).toEqual(['compounding-transformer', 'slip-rings'])
})

test('what only some boats have is there when its keeper says so', () => {
  expect(partIds(tenKW)).not.toContain('co-alarm')
  expect(partIds({ ...tenKW, fitted: { 'co-alarm': true } })).toContain('co-alarm')
  expect(partIds(tenKW)).not.toContain('drive-end-bearing')
  expect(partIds({ ...tenKW, bearings: 'two' })).toContain('drive-end-bearing')
})

// Practice: 60 % of old sets have the exhaust trip and 25 % the flow trip.
test('a trip of which nothing is said is there by chance', () => {
  const chance = (kind: SetKind, id: string) =>
    catalogueFor(catalogue, kind).parts.find((part) => part.id === id)?.fittedChance
  expect(chance(tenKW, 'exhaust-heat-trip')).toBe(0.6)
  expect(chance(tenKW, 'sea-flow-trip')).toBe(0.25)
  expect(chance(tenKW, 'oil-pressure-trip')).toBeUndefined()
  expect(chance({ ...tenKW, fitted: { 'sea-flow-trip': true } }, 'sea-flow-trip')).toBeUndefined()
  expect(partIds({ ...tenKW, fitted: { 'sea-flow-trip': false } })).not.toContain('sea-flow-trip')
})

test('a trip that is not there saves nothing', () => {
  const without = catalogueFor(catalogue, { ...tenKW, fitted: { 'sea-flow-trip': false } })
  const links = without.parts.flatMap((part) => part.modes.flatMap((mode) => mode.links))
  expect(links.filter((link) => link.trip === 'sea-flow-trip')).toEqual([])
  expect(links.filter((link) => link.trip === undefined && link.tripSaves !== undefined)).toEqual([])
})

test('the fuel solenoid fails by the way it is fed', () => {
  const coils = (kind: SetKind) =>
    catalogueFor(catalogue, kind)
      .parts.find(({ id }) => id === 'fuel-solenoid')!
      .modes.map(({ id }) => id)
  expect(coils(tenKW)).toEqual(['coil', 'coil-hours', 'cycles'])
  expect(coils({ ...tenKW, fuelSolenoid: 'energised-to-stop' })).toEqual(['coil-stop', 'cycles'])
})

test('where the rotor cannot be drawn in place the set comes out first', () => {
  const includes = (kind: SetKind) =>
    catalogueFor(catalogue, kind).access.find(({ id }) => id === 'alternator-apart')!.includes
  expect(includes(tenKW)).toEqual(['alternator-end'])
  expect(includes({ ...tenKW, rotorDrawsInPlace: false })).toEqual(['alternator-end', 'set-out'])
})

test('whatever the kind of set, every name in its catalogue leads somewhere', () => {
  const kinds = fc.record({
    ratingKW: fc.double({ min: 3, max: 30, noNaN: true }),
    rpm: fc.constantFrom(1500, 1800, 3000, 3600),
    excitation: fc.constantFrom<SetKind['excitation']>(
      'brushless-regulator',
      'brushed-regulator',
      'capacitor',
      'compound',
      'brushed-compound',
    ),
    bearings: fc.constantFrom('one' as const, 'two' as const),
    governor: fc.constantFrom('mechanical' as const, 'electronic' as const),
    fuelSolenoid: fc.constantFrom('energised-to-run' as const, 'energised-to-stop' as const),
    water: fc.constantFrom('salt' as const, 'fresh' as const),
    fitted: fc.dictionary(fc.constantFrom(...catalogue.parts.map(({ id }) => id)), fc.boolean()),
  })
  fc.assert(
    fc.property(kinds, (kind) => {
      const made = catalogueFor(catalogue, kind)
      expect(referenceProblems(made)).toEqual([])
      const { parts, access, checks, wholeSet } = made
      for (const list of [{ parts }, { access }, { checks }, { wholeSet }]) {
        for (const { path } of figuresOf(list)) expect(made.origins.has(path), path).toBe(true)
      }
    }),
    { numRuns: 30 },
  )
})

test.each([
  [{ ratingKW: 0.4 }, 'ratingKW must be 0.5 to 100 kW; found 0.4'],
  [{ ratingKW: Number.NaN }, 'ratingKW must be 0.5 to 100 kW; found NaN'],
  [{ rpm: 400 }, 'rpm must be 500 to 6000 1/min; found 400'],
  [
    { money: { currency: 'EUR', currencyPerUsd: 0, localFactor: 1, priceYear: 2025 } },
    'currencyPerUsd must be 0.000001 to 1000000 per USD; found 0',
  ],
])('refuses %j and says so', (wrong, message) => {
  expect(() => catalogueFor(catalogue, { ...tenKW, ...wrong })).toThrow(message)
})

test('a demand left out does not matter', () => {
  expect(fitsKind(undefined, tenKW)).toBe(true)
  expect(fitsKind({}, tenKW)).toBe(true)
  expect(fitsKind({ governor: 'electronic' }, tenKW)).toBe(false)
})
