/**
 * What the parts of the forecast's page share.
 *
 * @module
 */

import type { LifeSpan } from '../../alternatives/month-by-month.js'
import type { PartOdds } from '../../forecast/odds.js'
import { sayMoney, shortName } from '../words/say.js'
import type { ForecastView } from '../work/messages.js'
import type { OfBasis } from './behind-figures.js'

export interface OfForecast extends OfBasis {
  readonly view: ForecastView
}

/** One part with everything that is shown of it. */
export interface PartShown {
  readonly odds: PartOdds
  readonly name: string
  /** Chance of having failed by the end of each month. */
  readonly byMonth: readonly number[]
  readonly span: LifeSpan
  /** Entries that its figures rest on. */
  readonly entries: readonly string[]
  readonly money: (amount: number) => string
}

export const firstYearOf = ({ basis }: Pick<OfForecast, 'basis'>) => Number(basis.register.asOf.slice(0, 4))

/** All parts, the likeliest to fail within the two years first. */
export function likeliestFirst({ basis, view }: Pick<OfForecast, 'basis' | 'view'>): PartShown[] {
  const money = (amount: number) => sayMoney(basis.model.currency, amount)
  return view.forecast.parts
    .map((odds, i) => ({
      odds,
      name: shortName(basis.names.parts[odds.part] ?? odds.part),
      byMonth: view.months.parts[i]!.failing,
      span: view.spans[i]!,
      entries: basis.restsOn[odds.part] ?? [],
      money,
    }))
    .sort((a, b) => b.byMonth.at(-1)! - a.byMonth.at(-1)!)
}
