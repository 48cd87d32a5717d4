/**
 * What kind of set it is: all that the catalogue's figures depend on.
 *
 * @module
 */

import { requireWithin } from '../units/require.js'
import type { Excitation, Fits } from './part-schema.js'

/** Money in which prices are wanted. */
export interface Money {
  /** Three letters, as banks write it. */
  readonly currency: string
  /** What one unit of the catalogue's currency costs in this one. */
  readonly currencyPerUsd: number
  /** Prices here and in `priceYear`, as a multiple of the catalogue's at par. */
  readonly localFactor: number
  readonly priceYear: number
}

/** A set as far as the catalogue cares. What is left out is taken from `usualKind`. */
export interface SetKind {
  /** [kW] */
  readonly ratingKW: number
  /** [1/min] */
  readonly rpm: number
  readonly excitation: Excitation
  readonly bearings?: 'one' | 'two'
  readonly governor?: 'mechanical' | 'electronic'
  readonly fuelSolenoid?: 'energised-to-run' | 'energised-to-stop'
  readonly water?: 'salt' | 'fresh'
  /** Whether the rotor can be drawn without lifting the set; left out: not known. */
  readonly rotorDrawsInPlace?: boolean
  /** Parts that some boats have and some have not, by id. */
  readonly fitted?: Readonly<Record<string, boolean>>
  /** Left out: the catalogue's own money. */
  readonly money?: Money
}

/** What most small sets are. Practice. */
export const usualKind = {
  bearings: 'one',
  governor: 'mechanical',
  fuelSolenoid: 'energised-to-run',
  water: 'salt',
} as const

/** Whether the set runs at 3,000 or 3,600 rpm. */
export function isTwoPole(kind: Pick<SetKind, 'rpm'>): boolean {
  requireWithin('rpm', kind.rpm, 500, 6000, '1/min')
  return kind.rpm >= 2800
}

/** Whether something with these demands belongs to this kind of set; `whenFitted` is asked elsewhere. */
export function fitsKind(fits: Fits | undefined, kind: SetKind): boolean {
  if (fits === undefined) return true
  const full = { ...usualKind, ...kind }
  return (
    (fits.excitation === undefined || fits.excitation.includes(full.excitation)) &&
    (fits.bearings === undefined || fits.bearings === full.bearings) &&
    (fits.governor === undefined || fits.governor === full.governor) &&
    (fits.fuelSolenoid === undefined || fits.fuelSolenoid === full.fuelSolenoid)
  )
}
