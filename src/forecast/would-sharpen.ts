/**
 * Which fitting date, if someone looked it up, would move the coming year's money most.
 *
 * @module
 */

import type { Part } from '../catalogue/part-schema.js'
import type { SetCatalogue } from '../catalogue/scale.js'
import type { SetRegister } from '../register/register-types.js'
import { survival } from './lives.js'

/** A part of which nobody said when it was fitted. */
export interface WouldSharpen {
  readonly part: string
  /** Chance that it fails in the coming year if it is new, and if it came with the set. */
  readonly chanceIfNew: number
  readonly chanceIfOld: number
  /** Money that hangs on it: the difference of the two chances by what the part costs with its work. [boat's money] */
  readonly atStake: number
}

/** What the set runs on, for the clocks of the parts. */
interface Clocks {
  /** [a] */
  readonly years: number
  /** [h] */
  readonly hours: number
  /** [h/a] */
  readonly hoursPerYear: number
}

/** Where nothing is known of the running hours. Practice. [h/a] */
const usualHoursPerYear = 200
const daysPerYear = 365.2425

/** Every part of unknown age, the one on which most money hangs first. */
export function wouldSharpen(register: SetRegister, catalogue: SetCatalogue): readonly WouldSharpen[] {
  const clocks = clocksOf(register)
  const paidPerHour = register.terms.paidPerHour ?? catalogue.wholeSet.labour.ratePerHour.typical
  return catalogue.parts
    .flatMap((part) => {
      const known = register.parts.get(part.id)
      if (known !== undefined && (known.age !== 'unknown' || known.removed)) return []
      const chanceIfNew = chanceWithinYear(part, clocks, 0)
      const chanceIfOld = chanceWithinYear(part, clocks, 1)
      const price = part.price.original.typical + part.hours.paid * paidPerHour
      return [
        { part: part.id, chanceIfNew, chanceIfOld, atStake: Math.abs(chanceIfOld - chanceIfNew) * price },
      ]
    })
    .sort((a, b) => b.atStake - a.atStake || (a.part < b.part ? -1 : 1))
}

function clocksOf({ asOfDay, builtDay, hours }: SetRegister): Clocks {
  const run = hours.points.at(-1)?.hours ?? 0
  const years = builtDay === undefined ? 0 : Math.max(0, (asOfDay - builtDay) / daysPerYear)
  const hoursPerYear = hours.perYear ?? (years > 0 && run > 0 ? run / years : usualHoursPerYear)
  return { years, hours: run, hoursPerYear }
}

/**
 * Chance that any of a part's modes fails within a year, as the catalogue has it: 1 − Π S(a + 1 year) / S(a), at a share of the
 * set's age on each clock.
 */
function chanceWithinYear(part: Part, clocks: Clocks, shareOfAge: number): number {
  let survives = 1
  for (const { clock, shape, scale } of part.modes) {
    if (clock !== 'hours' && clock !== 'years') continue
    const age = shareOfAge * clocks[clock]
    const year = clock === 'hours' ? clocks.hoursPerYear : 1
    const life = { kind: 'weibull', shape, scale } as const
    const now = survival(life, age)
    if (now > 0) survives *= survival(life, age + year) / now
    else survives = 0
  }
  return 1 - survives
}
