/**
 * Units as spoken aboard, and the ones in which readings are kept. Temperatures and differences of two are apart.
 *
 * @module
 */

/** kept = spoken · factor + offset */
interface Conversion {
  readonly kept: string
  readonly factor: number
  readonly offset?: number
}

/**
 * Units that are spoken and never kept. Factors are exact by definition: international foot and pound of 1959, standard gravity,
 * US gallon of 231 cubic inches, imperial gallon of 4.54609 l, horsepower of 550 foot-pounds a second. Held: recalled.
 */
const spokenUnits = {
  F: { kept: 'C', factor: 5 / 9, offset: -160 / 9 },
  bar: { kept: 'kPa', factor: 100 },
  psi: { kept: 'kPa', factor: 6.894757293168361 },
  'US gal': { kept: 'l', factor: 3.785411784 },
  'imp gal': { kept: 'l', factor: 4.54609 },
  ft: { kept: 'm', factor: 0.3048 },
  hp: { kept: 'kW', factor: 0.7456998715822702 },
} as const satisfies Readonly<Record<string, Conversion>>

export type SpokenUnit = keyof typeof spokenUnits

/** A number with its unit. */
export interface Quantity {
  readonly value: number
  readonly unit: string
}

/** A quantity in the unit in which it is kept; as it is where that is the unit it has. */
export function toKept({ value, unit }: Quantity): Quantity {
  const conversion: Conversion | undefined = isSpoken(unit) ? spokenUnits[unit] : undefined
  if (conversion === undefined) return { value, unit }
  return { value: rounded(value * conversion.factor + (conversion.offset ?? 0)), unit: conversion.kept }
}

/** A kept quantity in a unit as spoken. */
export function toSpoken(value: number, unit: SpokenUnit): number {
  const { factor, offset = 0 }: Conversion = spokenUnits[unit]
  return rounded((value - offset) / factor)
}

/** Units that a boat may choose, by the name of the choice; those that are kept are not named. */
const chosenUnits: Readonly<Record<string, { readonly kept: string; readonly spoken: SpokenUnit }>> = {
  fahrenheit: { kept: 'C', spoken: 'F' },
  bar: { kept: 'kPa', spoken: 'bar' },
  psi: { kept: 'kPa', spoken: 'psi' },
  'us-gallon': { kept: 'l', spoken: 'US gal' },
  'imperial-gallon': { kept: 'l', spoken: 'imp gal' },
  horsepower: { kept: 'kW', spoken: 'hp' },
}

/** The unit in which a kept one is spoken aboard, by what the boat chose: `['fahrenheit', 'psi']`. */
export function spokenUnit(kept: string, choices: readonly (string | undefined)[]): string {
  const chosen = choices.flatMap((choice) => (choice === undefined ? [] : (chosenUnits[choice] ?? [])))
  return chosen.find((one) => one.kept === kept)?.spoken ?? kept
}

/** Whether a unit is spoken and never kept. */
export function isSpoken(unit: string): unit is SpokenUnit {
  return Object.hasOwn(spokenUnits, unit)
}

/** Without the last digits that only the conversion put there. */
function rounded(value: number): number {
  return Number(value.toPrecision(10))
}
