import { join } from 'node:path'
import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { readCatalogueFiles } from '../store/catalogue-files.js'
import { parseCatalogue } from './parse.js'
import { fuelLitresPerHour, hatchTooSmallChance, newSetPrice, resaleValue, weightKg } from './whole-set.js'

const whole = shippedWholeSet()

function shippedWholeSet() {
  const parsed = parseCatalogue(readCatalogueFiles(join(import.meta.dirname, '../../catalogue')))
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems))
  return parsed.catalogue.wholeSet
}

const rating = fc.double({ min: 3, max: 30, noNaN: true })

// Practice: the compiler's table of new prices, printed to 100 USD.
test.each([
  [4, 9600],
  [6, 11_400],
  [8, 13_000],
  [10, 14_300],
  [12, 15_500],
  [16, 17_600],
  [20, 19_400],
  [25, 21_400],
  [30, 23_200],
])('a new set of %i kW costs %i USD', (kw, tabled) => {
  const { median, logSd } = newSetPrice(whole, kw)
  expect(Math.abs(median - tabled)).toBeLessThanOrEqual(50)
  expect(logSd).toBe(0.18)
})

// Practice: the compiler's table for a running 10 kW set of usual hours, printed to about 2 %.
test.each([
  [2, 6640],
  [5, 5140],
  [10, 3360],
  [15, 2200],
  [20, 1440],
  [25, 940],
  [30, 610],
])('a running 10 kW set of %i years fetches %i USD', (age, tabled) => {
  const { median } = resaleValue(whole, { ratingKW: 10, age, running: true })
  expect(Math.abs(median / tabled - 1)).toBeLessThanOrEqual(0.02)
})

test('a set fetches less for more hours, and never less than its floor', () => {
  const used = { ratingKW: 10, age: 10, running: true }
  const usual = resaleValue(whole, used).median
  expect(resaleValue(whole, { ...used, hours: 1500 }).median).toBe(usual)
  // Practice: exp(−0.00005 · 4000).
  expect(resaleValue(whole, { ...used, hours: 5500 }).median).toBeCloseTo(usual * Math.exp(-0.2), 9)
  expect(resaleValue(whole, { ...used, age: 60 }).median).toBe(600)
})

test('a set that does not run fetches three tenths, and never less than its own floor', () => {
  const used = { ratingKW: 10, age: 5, running: false }
  expect(resaleValue(whole, used).median).toBeCloseTo(
    0.3 * resaleValue(whole, { ...used, running: true }).median,
    9,
  )
  expect(resaleValue(whole, { ...used, age: 60 }).median).toBe(180)
})

test('a set never gains by age', () => {
  const age = fc.double({ min: 0, max: 60, noNaN: true })
  fc.assert(
    fc.property(rating, age, age, fc.boolean(), (ratingKW, a, b, running) => {
      const [younger, older] = a < b ? [a, b] : [b, a]
      const value = (years: number) => resaleValue(whole, { ratingKW, age: years, running }).median
      expect(value(older)).toBeLessThanOrEqual(value(younger))
      expect(value(younger)).toBeLessThan(newSetPrice(whole, ratingKW).median)
    }),
  )
})

// Practice: an aged 10 kW set, printed to two decimals.
test.each([
  [2.5, 1.58],
  [5, 2.3],
  [7.5, 3.03],
  [10, 3.75],
])('an aged 10 kW set burns at %f kW about %f l/h', (loadKW, tabled) => {
  const litres = fuelLitresPerHour(whole, { ratingKW: 10, loadKW, condition: 'aged' })
  expect(Math.abs(litres - tabled)).toBeLessThanOrEqual(0.006)
})

// Practice: 0.06 and 0.27.
test('a healthy set burns less', () => {
  expect(fuelLitresPerHour(whole, { ratingKW: 10, loadKW: 5, condition: 'healthy' })).toBeCloseTo(1.95, 9)
})

// Practice: the compiler's table of weights.
test.each([
  [8, 237],
  [10, 275],
  [15, 370],
  [20, 465],
  [30, 655],
])('a set of %i kW weighs %i kg', (ratingKW, tabled) => {
  expect(weightKg(whole, { ratingKW, rpm: 1800 }).typical).toBeCloseTo(tabled, 9)
})

// Practice: the table gives 160 kg at 4 kW, one below its own formula.
test('a set of 4 kW weighs about 160 kg, give or take 15 %, and a fast one 0.7 of it', () => {
  const { low, typical, high } = weightKg(whole, { ratingKW: 4, rpm: 1500 })
  expect(Math.abs(typical - 160)).toBeLessThanOrEqual(1)
  expect(low).toBeCloseTo(typical * 0.85, 9)
  expect(high).toBeCloseTo(typical * 1.15, 9)
  expect(weightKg(whole, { ratingKW: 4, rpm: 3000 }).typical).toBeCloseTo(0.7 * typical, 9)
})

// Practice: 0.15 to ten years, 0.3 at twenty.
test.each([
  [0, 0.15],
  [10, 0.15],
  [15, 0.225],
  [20, 0.3],
  [45, 0.3],
])('replacing a set of %i years, the hatch is too small with chance %f', (age, chance) => {
  expect(hatchTooSmallChance(whole, age)).toBeCloseTo(chance, 12)
})

test('what is out of its span is refused and named', () => {
  expect(() => newSetPrice(whole, 0)).toThrow('ratingKW must be 0.5 to 100 kW; found 0')
  expect(() => resaleValue(whole, { ratingKW: 10, age: -1, running: true })).toThrow(
    'age must be 0 to 100 years',
  )
  expect(() => resaleValue(whole, { ratingKW: 10, age: 1, hours: -1, running: true })).toThrow(
    'hours must be 0',
  )
  expect(() => fuelLitresPerHour(whole, { ratingKW: 10, loadKW: 11.1, condition: 'aged' })).toThrow(
    'loadKW must be',
  )
  expect(() => weightKg(whole, { ratingKW: 101, rpm: 1500 })).toThrow('ratingKW must be')
  expect(() => hatchTooSmallChance(whole, Number.NaN)).toThrow('ageYears must be')
})
