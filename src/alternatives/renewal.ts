/**
 * Parts put right beside what an alternative does now, as one job with it.
 *
 * @module
 */

import type { Alternative, Amount, LifeMode, LifeModel, LifePart, Repair } from '../forecast/life-model.js'
import type { Look } from './looks.js'
import type { Action } from './quoted-job.js'

type Item = Action['parts'][number]

/** Log-sd of what comes on top of a quote for them; practice. */
const besidesLogSd = 0.2

/** The same alternative with what a look may have shown put right too, planned; none where it is put right anyway, or nothing is mended. */
export function renewalBeside(
  model: LifeModel,
  alternative: Alternative,
  { part: id, sees }: Pick<Look, 'part' | 'sees'>,
): Alternative | undefined {
  const { now } = alternative
  if (now === 'give-up' || (typeof now === 'object' && 'replaceWith' in now)) return undefined
  if (now !== 'leave' && now.parts.some(({ part }) => part === id)) return undefined
  const first = model.parts
    .slice(
      0,
      model.parts.findIndex((part) => part.id === id),
    )
    .reduce((sum, { modes }) => sum + modes.length, 0)
  const part = model.parts.find((one) => one.id === id)!
  const [mode] = sees.length === 1 ? [part.modes[sees[0]!.mode - first]!] : []
  const item = itemOf(part, mode)
  const repair = item.mode === undefined ? part.repair : (mode!.remedy.repair ?? part.repair)
  const action: Action =
    now === 'leave' ? { parts: [item], wait: 0, intrusionChance: repair.intrusionChance } : now
  return {
    ...alternative,
    id: `${alternative.id.slice(0, 40)}.and-renew`,
    now: now === 'leave' ? action : withItems(action, [item], usualPrice(model, repair)),
  }
}

/** A single mode that is cleared by its mend is cleared; anything else is put right by renewing the part. */
function itemOf(part: LifePart, mode: LifeMode | undefined): Item {
  const cleared = mode?.remedy.outcome === 'cleared' ? mode.id : undefined
  return {
    part: part.id,
    outcome: cleared === undefined ? 'renewed' : 'cleared',
    quality: 1,
    agesLess: 1,
    ...(cleared === undefined ? {} : { mode: cleared }),
  }
}

/** A job with more parts in it. What is priced as a whole grows by what they cost by themselves, opening left out: it is open. */
export function withItems(job: Action, items: readonly Item[], price: number): Action {
  const parts = [...job.parts, ...items]
  const { quote } = job
  if (quote !== undefined) {
    const besides = { median: usual(quote.besides) + price, logSd: besidesLogSd }
    return { ...job, parts, quote: { ...quote, besides } }
  }
  if (job.price === undefined) return { ...job, parts }
  const whole = job.price
  const grown =
    typeof whole === 'number'
      ? whole + price
      : 'median' in whole
        ? { ...whole, median: whole.median + price }
        : { exponentialMean: whole.exponentialMean + price }
  return { ...job, parts, price: grown }
}

/** Usual price of a repair by itself: piece, and hands at their rate. */
export function usualPrice({ labour }: LifeModel, repair: Repair): number {
  const rate = repair.by === 'owner' ? labour.ownPerHour : labour.paidPerHour
  return usual(repair.price) + repair.hours * rate
}

/** The level of an amount that a person would name. */
export function usual(amount: Amount): number {
  if (typeof amount === 'number') return amount
  return 'median' in amount ? amount.median : amount.exponentialMean
}
