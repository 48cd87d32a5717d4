/**
 * The measure in which fuel is bought where the boat is: its price is kept by the litre.
 *
 * @module
 */

import type { BoatFacts } from '../../register/register-types.js'
import { toKept } from '../../units/spoken.js'

export interface FuelMeasure {
  readonly name: string
  readonly litres: number
}

export function fuelMeasureOf({ units }: Pick<BoatFacts, 'units'>): FuelMeasure {
  if (units?.volume === 'us-gallon') return { name: 'a US gallon', litres: litresIn('US gal') }
  if (units?.volume === 'imperial-gallon') return { name: 'an imperial gallon', litres: litresIn('imp gal') }
  return { name: 'a litre', litres: 1 }
}

function litresIn(unit: string): number {
  return toKept({ value: 1, unit }).value
}

/** A price by the litre as it is spoken, and back. Six figures. */
export function spokenPrice(perLitre: number, { litres }: FuelMeasure): number {
  return Number((perLitre * litres).toPrecision(6))
}

export function keptPrice(spoken: number, { litres }: FuelMeasure): number {
  return Number((spoken / litres).toPrecision(6))
}
