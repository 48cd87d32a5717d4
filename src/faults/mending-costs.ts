/**
 * What mending each fault is expected to cost on this set, and what an hour of looking costs.
 *
 * @module
 */

import type { Fault } from '../catalogue/fault-schema.js'
import type { Remedy } from '../catalogue/part-schema.js'
import { valueAt } from '../catalogue/path.js'
import type { FaultModel } from '../catalogue/read-fault-model.js'
import type { SetCatalogue } from '../catalogue/scale.js'
import type { Terms } from '../register/register-types.js'
import type { MendingCosts } from './total-cost.js'

/** An hour of the owner's own work as a share of a paid one, and minutes to try it after a mend. Practice. */
const ownShareOfPaid = 0.15
const tryingMinutes = 15
/** Hours that a paid hand needs on average to find it. Practice. [h] */
const searchingHours = 3

export interface FaultMoney extends MendingCosts {
  readonly currency: string
  /** Of the owner's own work. [money/h] */
  readonly ownPerHour: number
  /** What a dollar of the fault model is in this money. */
  readonly perUsd: number
}

/** Costs in the set's own money: pieces, hours and a visit where it is handed over. Prices are those of the catalogue. */
export function faultMoneyOf(model: FaultModel, catalogue: SetCatalogue, terms: Terms): FaultMoney {
  const { money } = catalogue.kind
  const perUsd = money === undefined ? 1 : money.currencyPerUsd * money.localFactor
  const { labour } = catalogue.wholeSet
  const paidPerHour = terms.paidPerHour ?? labour.ratePerHour.typical
  const ownPerHour = terms.ownPerHour ?? ownShareOfPaid * paidPerHour
  const visit = terms.travelPerTrip ?? labour.callOut.typical
  const trying = (tryingMinutes / 60) * ownPerHour
  const byFault = model.faults.map((fault) => {
    const piece = pieceOf(fault, catalogue)
    const handed = fault.handOver !== undefined
    if (piece === undefined) return trying + (handed ? model.rule.handOverUsd : model.rule.repairUsd) * perUsd
    const hours = handed ? piece.paidHours : piece.ownHours
    return trying + piece.price + hours * (handed ? paidPerHour : ownPerHour) + (handed ? visit : 0)
  })
  return {
    currency: money?.currency ?? catalogue.wholeSet.money.currency,
    ownPerHour,
    perUsd,
    byFault,
    handOverFee: visit + searchingHours * paidPerHour,
  }
}

interface Piece {
  readonly price: number
  readonly ownHours: number
  readonly paidHours: number
}

/** The remedy of the part that a fault sits in; none where it has no part in the catalogue, or none on this set. */
function pieceOf({ parts }: Fault, catalogue: SetCatalogue): Piece | undefined {
  for (const { part: id, mode: modeId } of parts) {
    const part = catalogue.parts.find((one) => one.id === id)
    const mode = part?.modes.find((one) => modeId === undefined || one.id === modeId)
    if (part === undefined || mode === undefined) continue
    const { remedy } = mode
    return {
      price: priceOf(part.price, remedy) + wholePrice(remedy, catalogue),
      ownHours: part.hours.owner * remedy.hoursShare,
      paidHours: part.hours.paid * remedy.hoursShare,
    }
  }
  return undefined
}

type Prices = SetCatalogue['parts'][number]['price']

function priceOf({ original, made }: Prices, { supply, partShare }: Remedy): number {
  if (supply === 'none') return 0
  return partShare * (supply === 'made' && made !== undefined ? made : original).typical
}

function wholePrice({ wholeSetPrice }: Remedy, { wholeSet }: SetCatalogue): number {
  if (wholeSetPrice === undefined) return 0
  return Number(valueAt(wholeSet, `${wholeSetPrice}.typical`) ?? 0)
}
