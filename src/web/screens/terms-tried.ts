/**
 * Terms that were tried, as an entry to be written.
 *
 * @module
 */

import type { Basis } from '../../alternatives/figures.js'
import type { Problem } from '../../catalogue/problem.js'
import type { Draft } from '../../logbook/draft.js'
import type { Body } from '../../logbook/kinds.js'

export interface TermsTried {
  readonly yearsKept?: number
  readonly ownPerHour?: number
  readonly paidPerHour?: number
  readonly travelPerTrip?: number
  readonly mostInOneYear?: number
  readonly fuelPerLitre?: number
  readonly doWithoutPrice?: number
  readonly doWithoutPerYear?: number
  /** Every price of being without power, as a multiple of what it was. */
  readonly powerFactor?: number
}

export function draftOfTerms(basis: Basis, tried: TermsTried, day: string): Draft {
  const { powerFactor, ...plain } = tried
  return {
    kind: 'terms',
    boat: basis.register.boat,
    set: null,
    from: day,
    body: {
      ...plain,
      ...(powerFactor === undefined ? {} : { withoutPower: powerTimes(basis, powerFactor) }),
    },
  } as Draft
}

/** The curves of the log, or the one that was taken for granted, at another price. */
function powerTimes({ register, model }: Basis, factor: number): NonNullable<Body<'terms'>['withoutPower']> {
  const said = register.terms.withoutPower
  const round = (price: number) => Math.round(price * factor * 100) / 100
  if (said !== undefined) {
    return said.map(({ months, curve }) => ({
      months: [...months],
      curve: curve.map(({ days, price }) => ({ days, price: round(price) })),
    }))
  }
  const { curve, byMonth } = model.powerLoss
  const points = curve.filter(({ days }) => days > 0)
  return [
    {
      months: byMonth.flatMap((share, month) => (share > 0 ? [month + 1] : [])),
      curve: points.map(({ days, cost }) => ({ days, price: round(cost) })),
    },
  ]
}

/** Everything that was wrong with what was to be written, in one line. */
export function whatWasWrong(problems: readonly Problem[]): string {
  return problems.map(({ found, allowed }) => `Found ${found}; it must be ${allowed}.`).join(' ')
}
