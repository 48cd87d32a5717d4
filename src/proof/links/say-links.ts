/**
 * Joined leads in words, the same at the prompt, on screen and on paper.
 *
 * @module
 */

import type { Capacity } from './capacity.js'
import type { LinksAnswer } from './look-at-links.js'
import type { DrivenLoop, PairVolts } from './solve-links.js'

type Units = LinksAnswer['units']

/** "415.7 V", or "3.46 × E" where the EMF of a coil is not known. */
export function sayVolts({ volts }: Pick<PairVolts, 'volts'>, units: Units): string {
  if (volts === null) return 'not connected'
  return units.volts ? `${trimmed(volts, 1)} V` : `${trimmed(volts, 3)} × E`
}

/** "0.62 Ω", or "2 × R" where the resistance of a coil is not known. */
export function sayOhms({ ohms }: Pick<PairVolts, 'ohms'>, units: Units): string {
  if (ohms === null) return 'not connected'
  return units.ohms ? `${Number(ohms.toPrecision(3))} Ω` : `${trimmed(ohms, 3)} × R`
}

export function sayAmps(amps: number, units: Units): string {
  return units.amps ? `${trimmed(amps, 1)} A` : `${trimmed(amps, 3)} × I`
}

/** "all lines alike" or "L1 to N alone" */
export function sayLoad({ load }: Pick<Capacity, 'load'>): string {
  return load === 'all' ? 'all lines alike' : `${load[0]} to ${load[1]} alone`
}

/** "15 kVA", or "50 in 100 of what the coils can give" where it is not known what that is. */
export function sayPower({ voltAmps, share }: Capacity, units: Units): string {
  const part = `${Math.round(share * 100)} in 100 of what the coils can give`
  return units.volts && units.amps ? `${trimmed(voltAmps / 1000, 2)} kVA, ${part}` : part
}

/** What is left over in a loop, and what it drives. */
export function sayLoop({ coils, volts, amps }: DrivenLoop, units: Units): string {
  const left = sayVolts({ volts }, units)
  return `${coils.join(', ')}: ${left} left over round the loop${amps === null ? '' : `, ${Math.round(amps)} A`}`
}

/** What the regulator does as it looks; undefined where its leads are not named. */
export function saySensed({
  sensed,
  units,
}: LinksAnswer): { readonly says: string; readonly stops: boolean } | undefined {
  if (sensed === null) return undefined
  const { multiple, drivesToV, timesRated } = sensed
  if (multiple === null || multiple <= 0.02) {
    return {
      stops: true,
      says: 'The regulator sees no volts where it looks, and drives the field to its limit: volts run away.',
    }
  }
  const sees = `The regulator sees ${trimmed(multiple, 3)} times the EMF of a coil`
  if (drivesToV === null) return { stops: false, says: `${sees}.` }
  const drives = `${sees} and drives each coil to ${trimmed(drivesToV, 1)} V`
  if (timesRated === null || !units.volts) return { stops: false, says: `${drives}.` }
  const off = Math.abs(timesRated - 1)
  if (off < 0.05) return { stops: false, says: `${drives}, which is right.` }
  return {
    stops: true,
    says: `${drives}, ${trimmed(timesRated, 2)} times what it is made for: ${timesRated > 1 ? 'overvoltage, never load it' : 'too little'}. Its leads are on the wrong points.`,
  }
}

/** What goes before all work on links. */
export const linksCaution =
  'Set stopped and locked out, shore lead out, inverter off, capacitors bled; prove it dead with a meter just proved live. Take a picture before and after. Right volts alone never prove links. Local rules and licensed electricians come first.'

/** At most so many digits behind the point, none of them a nought at the end. */
function trimmed(value: number, digits: number): string {
  return value.toLocaleString('en-GB', { maximumFractionDigits: digits })
}
