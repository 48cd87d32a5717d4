import { join } from 'node:path'
import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { readCatalogueFiles } from '../store/catalogue-files.js'
import type { Catalogue } from './catalogue.js'
import { unitOf } from './figure-unit.js'
import { parseCatalogue } from './parse.js'
import type { Mode, Part } from './part-schema.js'
import { figuresOf } from './path.js'
import { openingHours } from './work-hours.js'

const files = readCatalogueFiles(join(import.meta.dirname, '../../catalogue'))
const catalogue = shipped()

function shipped(): Catalogue {
  const parsed = parseCatalogue(files)
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems, null, 1))
  return parsed.catalogue
}

function part(id: string): Part {
  return catalogue.parts.find((candidate) => candidate.id === id)!
}

const modes = catalogue.parts.flatMap((owner) => owner.modes.map((mode) => ({ owner, mode })))

test('there are 77 parts, each with a name of its own', () => {
  expect(catalogue.parts).toHaveLength(77)
  expect(new Set(catalogue.parts.map(({ name }) => name)).size).toBe(77)
})

test('every number in every file has a source, a place and says how it is held', () => {
  const { origins, ...values } = catalogue
  const figures = figuresOf(values)
  // As many numbers as stand in the files, so that none was lost on the way.
  const written = Object.values(files).flatMap((file) => figuresOf(file)).length
  expect(figures).toHaveLength(written)
  expect(written).toBeGreaterThan(3000)

  const sources = new Map(catalogue.sources.map((source) => [source.id, source]))
  const lacking = figures.filter(({ path }) => {
    const origin = origins.get(path)
    return (
      origin === undefined || !sources.has(origin.source) || origin.place === '' || origin.held === 'owner'
    )
  })
  expect(lacking).toEqual([])
})

test('a file has no origin for all it holds: each record names its own', () => {
  for (const file of Object.values(files)) expect(file).not.toHaveProperty('from')
})

test('every number has a unit', () => {
  const { origins, ...values } = catalogue
  for (const { path } of figuresOf(values)) expect(unitOf(catalogue, path), path).not.toBe('')
  expect(unitOf(catalogue, 'parts.sea-pump-impeller.modes.wear.scale')).toBe('h')
  expect(unitOf(catalogue, 'parts.sea-pump-impeller.modes.age.warning.median')).toBe('y')
  expect(unitOf(catalogue, 'parts.starter.modes.wear.scale')).toBe('start')
  expect(unitOf(catalogue, 'parts.starter.price.made.high')).toBe('USD')
  expect(unitOf(catalogue, 'wholeSet.labour.ratePerHour.typical')).toBe('USD/h')
  expect(() => unitOf(catalogue, 'parts.starter.colour')).toThrow('path must be one of a figure')
})

test('the three failures that only wear other parts faster name each mode they reach', () => {
  const reached = (id: string) =>
    part(id).modes.flatMap((mode) => mode.wearLinks.map((link) => [`${link.to}.${link.mode}`, link.factor]))
  expect(reached('anode')).toEqual([['exchanger-tubes.perforate', 3]])
  expect(reached('coolant').map(([, factor]) => factor)).toEqual([1.6, 1.6, 1.6])
  expect(reached('oil-and-filter').map(([, factor]) => factor)).toEqual([1.5, 1.5, 1.5])
  expect(modes.filter(({ mode }) => mode.wearLinks.length > 0)).toHaveLength(3)
})

// Practice: chance 0.35 without the flow trip, 0.1 with it.
test('a trip takes a link from its chance without to its chance with', () => {
  const link = part('seacock').modes[0]!.links.find(({ to }) => to === 'sea-pump-impeller')!
  expect(link.chance).toBe(0.35)
  expect(link.chance * (1 - link.tripSaves!)).toBeCloseTo(0.1, 6)
})

test('every mode has spans that can be', () => {
  fc.assert(
    fc.property(fc.constantFrom(...modes), ({ owner, mode }) => {
      const where = `${owner.id}.${mode.id}`
      expect(mode.shape, where).toBeGreaterThanOrEqual(1)
      expect(mode.shape, where).toBeLessThanOrEqual(4)
      expect(mode.scaleLogSd, where).toBeGreaterThanOrEqual(0.3)
      expect(mode.scaleLogSd, where).toBeLessThanOrEqual(0.7)
      const [least, most] = lifeSpan(mode)
      expect(mode.scale, where).toBeGreaterThanOrEqual(least)
      expect(mode.scale, where).toBeLessThanOrEqual(most)
      if (mode.warning?.clock === mode.clock) expect(mode.warning.median, where).toBeLessThan(mode.scale)
      if (mode.hidden) expect(mode.stops, `${where} is hidden`).toBeLessThanOrEqual(0.05)
      expect(mode.checks.length, where).toBeGreaterThan(0)
      for (const link of mode.links) {
        expect(link.chance, where).toBeGreaterThan(0)
        expect(link.to, where).not.toBe(owner.id)
      }
    }),
    { numRuns: 500 },
  )
})

function lifeSpan(mode: Mode): readonly [number, number] {
  return { hours: [400, 40_000], years: [1, 70], starts: [1000, 30_000], relinkings: [30, 40] }[
    mode.clock
  ] as [number, number]
}

test('a false alarm is rarer than a find', () => {
  for (const { owner, mode } of modes) {
    for (const { check, detects, falseAlarm } of mode.checks) {
      const usual = catalogue.checks.find(({ id }) => id === check)!.falseAlarm
      expect(falseAlarm ?? usual, `${owner.id}.${mode.id} ${check}`).toBeLessThan(detects)
    }
  }
})

test('opening for a job never takes longer than the job itself', () => {
  for (const { id, access, hours } of catalogue.parts) {
    const opening = openingHours(catalogue.access, access.opens)
    expect(opening.owner, id).toBeLessThanOrEqual(hours.owner)
    expect(opening.paid, id).toBeLessThanOrEqual(hours.paid)
  }
})

test('a service that falls due says what it does to the part', () => {
  const idle = catalogue.parts
    .filter(({ service }) => service.everyHours !== undefined || service.everyYears !== undefined)
    .filter(({ service }) => !service.renews && service.clears.length === 0 && service.tests.length === 0)
  expect(idle.map(({ id }) => id)).toEqual([])
})

test('a service that renews costs the part; one that does not costs less', () => {
  for (const { id, service } of catalogue.parts) {
    if (service.renews) expect(service.partShare, id).toBe(1)
    else expect(service.partShare, id).toBeLessThan(1)
  }
})

test('soot and salt move only modes that they can', () => {
  const named = (flag: 'salt' | 'lowLoad') =>
    modes.filter(({ mode }) => mode[flag]).map(({ owner, mode }) => `${owner.id}.${mode.id}`)
  // Practice: nozzles, bores, valves and the elbow are what soot ages.
  expect(named('lowLoad').sort()).toEqual([
    'exhaust-elbow.choke',
    'injectors.spray',
    'pistons-and-bores.wear',
    'valve-gear.burn',
  ])
  expect(named('salt')).toContain('anode.spent')
  expect(named('salt')).not.toContain('coolant-hoses.age')
})

test('each kind of danger can arise', () => {
  const arising = new Set(modes.flatMap(({ mode }) => mode.dangers))
  expect(catalogue.dangers.filter(({ id }) => !arising.has(id))).toEqual([])
})
