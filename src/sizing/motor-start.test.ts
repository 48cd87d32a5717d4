import { expect, test } from 'vitest'
import { shippedCatalogue } from '../../test/shipped-limits.js'
import {
  apparentVa,
  fullLoadAmps,
  letterBand,
  letterOf,
  letterValue,
  lineAmps,
  lockedRotorAmps,
  startVaOfLetter,
} from './motor-start.js'

const { motors, loads } = shippedCatalogue

// NEMA MG 1 10.37.2 through a handbook of motor repairers; held: quoted. Tolerance 0.1 %, as the ends are printed.
test('the current of a 5 hp motor of letter H at 230 V, and of a 10 hp one at 460 V in three phases', () => {
  const { from, below } = letterBand(motors, 'H')
  const amps = (perHp: number, of: { horsepower: number; volts: number; phases: 1 | 3 }) =>
    lineAmps({ va: 1000 * perHp * of.horsepower, ...of })
  expect(amps(from, { horsepower: 5, volts: 230, phases: 1 })).toBeCloseTo(136.96, 1)
  expect(amps(below!, { horsepower: 5, volts: 230, phases: 1 })).toBeCloseTo(154.35, 1)
  expect(amps(from, { horsepower: 10, volts: 460, phases: 3 })).toBeCloseTo(79.07, 1)
  expect(amps(below!, { horsepower: 10, volts: 460, phases: 3 })).toBeCloseTo(89.11, 1)
  expect(startVaOfLetter(motors, { horsepower: 5, letter: 'H' })).toBeCloseTo(35_500, 6)
})

// An owner forum's currents; held: seen.
test('apparent power of 62 and of 41 A at 115 V', () => {
  expect(apparentVa({ amps: 62, volts: 115, phases: 1 })).toBeCloseTo(7130, 9)
  expect(apparentVa({ amps: 41, volts: 115, phases: 1 })).toBeCloseTo(4715, 9)
})

test('the letter of a motor from its nameplate, and at the ends of the bands', () => {
  const value = letterValue({ lockedRotorA: 60, volts: 230, phases: 1, horsepower: 1.5 })
  expect(value).toBeCloseTo(9.2, 9)
  expect(letterOf(motors, value)).toBe('L')
  expect([3.15, 3.1499, 22.4, 7.1].map((perHp) => letterOf(motors, perHp))).toEqual(['B', 'A', 'V', 'J'])
  expect(letterOf(motors, 0)).toBe('A')
  expect(() => letterOf(motors, Number.NaN)).toThrow('kVAPerHp must be')
  expect(() => letterBand(motors, 'I')).toThrow('letter must be one of')
})

test('the bands leave no gap and run through the alphabet without I, O and Q', () => {
  expect(motors.letters.map(({ letter }) => letter).join('')).toBe('ABCDEFGHJKLMNPRSTUV')
  motors.letters.slice(1).forEach(({ fromKVAPerHp }, i) => {
    expect(fromKVAPerHp).toBe(motors.letters[i]!.belowKVAPerHp)
  })
})

// National Electrical Code, tables 430.248 and 430.250; held: quoted. 430.251(A); held: recalled.
test('full-load and locked-rotor currents of the tables', () => {
  const kva = (horsepower: number, phases: 1 | 3) =>
    apparentVa({ amps: fullLoadAmps(motors, { horsepower, volts: 230, phases })!, volts: 230, phases }) / 1000
  expect(kva(1, 1)).toBeCloseTo(1.84, 3)
  expect(kva(5, 1)).toBeCloseTo(6.44, 3)
  expect(kva(5, 3)).toBeCloseTo(6.055, 3)
  expect(lockedRotorAmps(motors, { horsepower: 1, volts: 230 })).toBe(48)
  expect(lockedRotorAmps(motors, { horsepower: 5, volts: 230 })).toBe(168)
  expect(fullLoadAmps(motors, { horsepower: 3, volts: 115, phases: 3 })).toBeUndefined()
  expect(lockedRotorAmps(motors, { horsepower: 4, volts: 230 })).toBeUndefined()
  // Rows that newer copies print wrongly.
  expect(fullLoadAmps(motors, { horsepower: 0.5, volts: 230, phases: 3 })).toBe(2.2)
  expect(fullLoadAmps(motors, { horsepower: 1.5, volts: 208, phases: 3 })).toBe(6.6)
  expect(motors.singlePhase).toHaveLength(12)
  expect(motors.threePhase).toHaveLength(13)
})

test('currents of the tables rise with the power and fall with the voltage', () => {
  for (const table of [motors.singlePhase, motors.threePhase]) {
    table.slice(1).forEach(({ amps }, i) => {
      for (const { volts, amps: here } of amps) {
        const below = table[i]!.amps.find((one) => one.volts === volts)
        if (below !== undefined) expect(here).toBeGreaterThan(below.amps)
      }
    })
    for (const { amps } of table) {
      amps.slice(1).forEach(({ amps: here }, i) => {
        expect(here).toBeLessThan(amps[i]!.amps)
      })
    }
  }
})

test('fifty loads, each at both frequencies, that start with more than they run on', () => {
  expect(loads).toHaveLength(50)
  for (const { id, sixty, fifty, motor } of loads) {
    expect(fifty.volts, id).toBe(230)
    expect([120, 240], id).toContain(sixty.volts)
    for (const { volts, runW, powerFactor, lockedRotorA } of [sixty, fifty]) {
      expect(lockedRotorA === undefined, id).toBe(motor === undefined)
      if (motor?.besideHeater || lockedRotorA === undefined) continue
      expect(lockedRotorA, id).toBeGreaterThan(runW / (powerFactor * volts))
    }
  }
})
