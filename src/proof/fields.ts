/**
 * Fields of tests, by what they measure: the unit they are taken in, what a meter may show, and what can be at all.
 *
 * @module
 */

import type { ChoiceField, NumberField } from './test-type.js'

type Measure = Pick<NumberField, 'unit' | 'units' | 'least' | 'most'>
type Told = Omit<NumberField, 'kind' | keyof Measure> & Partial<Measure>

function measuring(measure: Measure) {
  return (told: Told): NumberField => ({ kind: 'number', ...measure, ...told })
}

export const volts = measuring({ unit: 'V', units: ['V', 'mV', 'kV'], least: 0, most: 1000 })
export const amps = measuring({ unit: 'A', units: ['A', 'mA'], least: 0, most: 1000 })
export const milliamps = measuring({ unit: 'mA', units: ['mA', 'A', 'uA'], least: 0, most: 100_000 })
export const ohms = measuring({ unit: 'ohm', units: ['ohm', 'mohm', 'kohm'], least: 0, most: 1e7 })
export const kilohms = measuring({ unit: 'kohm', units: ['kohm', 'Mohm', 'ohm'], least: 0, most: 1e7 })
export const megohms = measuring({
  unit: 'Mohm',
  units: ['Mohm', 'Gohm', 'kohm', 'ohm'],
  least: 0,
  most: 1e7,
})
export const microfarads = measuring({ unit: 'uF', units: ['uF', 'nF', 'mF'], least: 0, most: 10_000 })
export const hertz = measuring({ unit: 'Hz', units: ['Hz'], least: 0, most: 200 })
export const kilowatts = measuring({ unit: 'kW', units: ['kW', 'W', 'hp'], least: 0, most: 200 })
export const kilovoltAmps = measuring({ unit: 'kVA', units: ['kVA'], least: 0.1, most: 200 })
export const degrees = measuring({ unit: 'C', units: ['C', 'F'], least: -40, most: 800 })
export const kelvins = measuring({ unit: 'K', units: ['K'], least: 0, most: 500 })
export const kilopascals = measuring({
  unit: 'kPa',
  units: ['kPa', 'inH2O', 'inHg', 'psi', 'mbar', 'mmHg'],
  least: 0,
  most: 200,
})
export const flows = measuring({ unit: 'l/min', units: ['l/min', 'gal/min'], least: 0, most: 1000 })
export const revolutions = measuring({ unit: 'rpm', units: ['rpm'], least: 100, most: 10_000 })
export const seconds = measuring({ unit: 's', units: ['s', 'ms'], least: 0, most: 3600 })
export const minutes = measuring({ unit: 'min', units: ['min', 'h'], least: 0, most: 10_000 })
export const hours = measuring({ unit: 'h', units: ['h', 'min'], least: 0, most: 10_000 })
export const speeds = measuring({ unit: 'mm/s', units: ['mm/s', 'in/s'], least: 0, most: 1000 })
export const parts = measuring({ unit: 'ppm', units: ['ppm'], least: 0, most: 100_000 })
export const metres = measuring({ unit: 'm', units: ['m', 'ft'], least: 0, most: 500 })
export const squares = measuring({ unit: 'mm2', units: ['mm2'], least: 0.1, most: 500 })
export const counts = measuring({ unit: '1', units: ['1'], least: 0, most: 1000 })

/** One of several things, by id and words. */
export function choice(
  told: Omit<ChoiceField, 'kind' | 'choices'> & { readonly of: Readonly<Record<string, string>> },
): ChoiceField {
  const { of, ...rest } = told
  return { kind: 'choice', ...rest, choices: Object.entries(of).map(([id, name]) => ({ id, name })) }
}

export function yesNo(told: Omit<ChoiceField, 'kind' | 'choices'>): ChoiceField {
  return choice({ ...told, of: { yes: 'yes', no: 'no' } })
}

/** The performance class of ISO 8528-5 that is wanted. */
export const classWanted = choice({
  id: 'class',
  name: 'Class wanted',
  help: 'Left out: G1, the least. G2 for electronics, air conditioning and chargers; G3 for what is finer.',
  of: { g1: 'G1, lamps and heat', g2: 'G2, as from the mains', g3: 'G3, finer' },
})
