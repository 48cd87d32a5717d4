import { expect, test } from 'vitest'
import { shippedCatalogue as catalogue } from '../../test/shipped-limits.js'
import type { LoadFact } from '../register/load-facts.js'
import { boatLoads, hasTwoLegs } from './boat-loads.js'
import { cyclesPerHour, meetingsPerHour } from './cycles.js'
import { switchedOn } from './demand.js'

const sixty = { volts: [240, 120], hertz: 60 }
const fifty = { volts: [230], hertz: 50 }

function read(facts: readonly Omit<LoadFact, 'entry'>[], supply = sixty) {
  return boatLoads(catalogue, { loads: facts.map((fact) => ({ ...fact, entry: 'e' })), rules: [] }, supply)
}

function one(fact: Omit<LoadFact, 'entry'>, supply = sixty) {
  const made = read([fact], supply)
  expect(made.problems).toEqual([])
  return made.loads[0]!
}

// NEMA DC 3, form; held: recalled. Two Poisson streams; held: derived.
test('a thermostat switches most often at a duty of one half, and starts seldom meet', () => {
  const starts = [0.55, 0.35, 0.15].map((duty) => cyclesPerHour({ duty, cyclesPerHourAtHalf: 3 }))
  ;[2.97, 2.73, 1.53].forEach((perHour, i) => {
    expect(starts[i]).toBeCloseTo(perHour, 9)
  })
  expect((60 * 0.55) / starts[0]!).toBeCloseTo(11.11, 2)
  const meetings = meetingsPerHour({ firstPerHour: 2.97, secondPerHour: 2.97, windowSeconds: 2 })
  expect(meetings).toBeCloseTo(0.009801, 6)
  expect(1000 * meetings).toBeCloseTo(9.8, 2)
})

test('a load of the catalogue is taken at the frequency of the set', () => {
  expect(one({ id: 'k', is: 'kettle' })).toMatchObject({
    watts: 1500,
    volts: 120,
    vars: 0,
    basis: 'catalogue',
  })
  expect(one({ id: 'k', is: 'kettle' }, fifty)).toMatchObject({ watts: 2200, volts: 230 })
  const cooler = one({ id: 'c', is: 'air-conditioner-16000' })
  expect(cooler.start).toMatchObject({ va: 7200, softVa: 0.35 * 7200, softStarter: false })
  expect(cooler.duty.hot).toEqual({ easy: 0.7, hard: 1 })
  expect(cooler.duty.warm.easy).toBeCloseTo(0.25, 9)
  expect(cooler.duty.warm.hard).toBeCloseTo(0.85, 9)
  expect(cooler.duty.cold).toEqual({ easy: 0, hard: 0 })
})

test('what a nameplate or a meter says takes its place', () => {
  const of = { id: 'c', is: 'air-conditioner-16000', runW: 1500, basis: 'measured' } as const
  expect(one(of)).toMatchObject({ watts: 1500, basis: 'measured' })
  expect(one({ ...of, lockedRotorA: 50 }).start!.va).toBeCloseTo(6000, 9)
  expect(one({ ...of, horsepower: 1.5, codeLetter: 'H' }).start!.va).toBeCloseTo(1500 * 7.1, 6)
  expect(one({ ...of, softStarter: true }).start!.va).toBeCloseTo(0.35 * 7200, 6)
  // Six times 16 A at 115 V: the table's, where there is no more than the power.
  expect(one({ id: 'p', runW: 900, horsepower: 1, hours: { day: 1 } }).start!.va).toBeCloseTo(6 * 16 * 115, 6)
  expect(one({ id: 'p', runW: 900, horsepower: 1, hours: { day: 1 } }).vars).toBeCloseTo(675, 6)
})

// NEMA MG 1 10.37.2; held: quoted. 60 A at 230 V and 1.5 hp are 9.2 kVA/hp.
test('a nameplate’s current and horsepower make its letter, and another one told is asked about', () => {
  const hours = { day: 1 }
  const pump = { id: 'pump', runW: 1400, volts: 230, lockedRotorA: 60, horsepower: 1.5, hours }
  expect(one(pump, fifty).start).toMatchObject({ va: 13_800, letter: 'L' })
  expect(one({ ...pump, codeLetter: 'L' }, fifty).start!.letter).toBe('L')
  const { loads, problems } = read([{ ...pump, codeLetter: 'H' }], fifty)
  expect(loads[0]!.start!.va).toBeCloseTo(13_800, 9)
  expect(problems).toMatchObject([{ code: 'contradicted', path: 'load pump: codeLetter', found: 'H' }])
  expect(problems[0]!.allowed).toContain('L, the letter of 60 A')
})

test('a load of which nobody says when it is on is asked about', () => {
  const { loads, problems } = read([{ id: 'pump', runW: 900 }])
  expect(loads).toHaveLength(1)
  expect(problems).toMatchObject([{ code: 'missing', path: 'load pump: hours' }])
  expect(read([{ id: 'pump', runW: 900, hours: { day: 0 } }]).problems).toEqual([])
})

test('a 240 V load hangs across both legs; the others go where less hangs, or where they are said to', () => {
  const { loads } = read([
    { id: 'pump', is: 'watermaker-large' },
    { id: 'a', is: 'kettle' },
    { id: 'b', is: 'toaster' },
    { id: 'c', is: 'coffee-maker', leg: 'one' },
  ])
  expect(loads.map(({ leg }) => leg)).toEqual(['both', 'two', 'one', 'one'])
  expect(hasTwoLegs(sixty)).toBe(true)
  expect(hasTwoLegs(fifty)).toBe(false)
  expect(hasTwoLegs({ volts: [230, 115], hertz: 50 })).toBe(true)
})

test('hours on an occasion count against its length; where there are none, those of what it falls within', () => {
  const microwave = one({ id: 'm', is: 'microwave' })
  expect(switchedOn(microwave, catalogue.loadRules, 'cooking')).toBeCloseTo(0.35 / 2, 9)
  expect(switchedOn(microwave, catalogue.loadRules, 'evening')).toBe(0)
  const fridge = one({ id: 'f', is: 'refrigerator' })
  expect(switchedOn(fridge, catalogue.loadRules, 'cooking')).toBe(1)
  expect(switchedOn(fridge, catalogue.loadRules, 'laundry')).toBe(1)
})

test('the pump of the air conditioners runs in the seasons in which one of them does', () => {
  const { loads } = read([
    { id: 'c', is: 'air-conditioner-10000' },
    { id: 'p', is: 'cooling-sea-pump' },
  ])
  const pump = loads[1]!
  expect(pump.duty.hot.hard).toBe(1)
  expect(pump.duty.cold.hard).toBe(0)
})

test('several alike are several, under numbers of their own', () => {
  const { loads } = read([{ id: 'cabin', is: 'air-conditioner-6000', count: 3 }])
  expect(loads.map(({ id }) => id)).toEqual(['cabin.1', 'cabin.2', 'cabin.3'])
})

test('what cannot be read is told, and the rest is reckoned with', () => {
  const made = boatLoads(
    catalogue,
    {
      loads: [
        { id: 'a', is: 'mast', entry: 'e' },
        { id: 'b', entry: 'e' },
        { id: 'c', is: 'watermaker-large', entry: 'e' },
        { id: 'd', is: 'kettle', entry: 'e' },
      ],
      rules: [{ id: 'r', loads: ['d', 'x'], entry: 'e' }],
    },
    { volts: [120], hertz: 60 },
  )
  expect(made.problems.map(({ code, path }) => `${code} ${path}`)).toEqual([
    'unknown-load load a: is',
    'missing load b: runW',
    'no-such-voltage load c: volts',
    'unknown-load house-rule r: loads',
  ])
  expect(made.loads.map(({ id }) => id)).toEqual(['d'])
})
