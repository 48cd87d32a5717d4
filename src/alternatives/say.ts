/**
 * The answer in a sentence or two, as an owner would be told it.
 *
 * @module
 */

import type { LifeModel } from '../forecast/life-model.js'
import { moneyIn } from '../units/money.js'
import type { Report } from './report.js'
import { column, type Sample } from './sample.js'

export { moneyIn }

export interface Saying {
  /** The answer. */
  readonly verdict: string
  /** What to say at the telephone, or that no quote is in hand. */
  readonly walkAway: string
  /** Alternatives that are barred, and why. */
  readonly barred: readonly string[]
}

/** Words for a report. Money is rounded to what its doubt can bear. */
export function sayReport(model: LifeModel, samples: readonly Sample[], report: Report): Saying {
  const money = (amount: number) => moneyIn(model.currency, amount)
  const name = (id: string) => lowerFirst(model.alternatives.find((a) => a.id === id)?.name ?? id)
  const barred = model.alternatives.flatMap((a) =>
    a.barred === undefined ? [] : [`${a.name ?? a.id}: ${a.barred}`],
  )
  return {
    verdict: verdictWords(model, samples, report, { money, name }),
    walkAway: walkAwayWords(report, { money, name }),
    barred,
  }
}

interface Words {
  readonly money: (amount: number) => string
  readonly name: (id: string) => string
}

function verdictWords(model: LifeModel, samples: readonly Sample[], report: Report, words: Words): string {
  const { best, next, saving, savingError, chanceBest, clearness } = report.verdict
  if (next === null) return `${upperFirst(words.name(best))}: nothing else is open.`
  const hundred = Math.round(chanceBest * 100)
  const danger = dangerWords(model, samples, best, next)
  if (clearness === 'too-close') {
    return `Too close to call between two: ${words.name(best)}, or ${words.name(next)} (${words.money(saving)} ± ${words.money(2 * savingError)} apart). ${differenceWords(model, samples, best, next)}${danger}`
  }
  const how = clearness === 'clear' ? 'Clear' : 'Leaning, not clear'
  return `${upperFirst(words.name(best))}. ${how}: it saves ${words.money(saving)} over ${years(model)} against the next best (${words.name(next)}), and in ${hundred} cases of 100 nothing you could still learn would change that.${limitWords(model, best, words)}${danger}`
}

/** The policy that the figures rest on: nobody should take them for those of mending for ever. */
function limitWords(model: LifeModel, best: string, words: Words): string {
  const limit = model.alternatives.find(({ id }) => id === best)?.limit
  if (limit === undefined) return ''
  const [low, high] = [Math.min(...limit.knots), Math.max(...limit.knots)].map(words.money)
  const { above } = limit
  const instead =
    above === 'give-up'
      ? 'do without from then on'
      : `fit ${model.candidates.find(({ id }) => id === above.replaceWith)?.name ?? above.replaceWith}`
  const from = low === high ? `above ${low}` : `above ${low} to ${high}, by when it comes,`
  return ` A later job ${from} is not mended any more: ${instead}.`
}

function years(model: LifeModel): string {
  return `${model.horizonYears} year${model.horizonYears === 1 ? '' : 's'}`
}

function walkAwayWords(report: Report, words: Words): string {
  const { walkAway } = report
  if (walkAway === null) {
    return 'No quote is in hand. Enter one, and this line says above which price to walk away.'
  }
  const { price, findingOut, simulation, quote, otherwise } = walkAway
  const wide = `what you could still find out could move that from ${words.money(findingOut.low)} to ${words.money(findingOut.high)}; the simulation alone leaves it between ${words.money(simulation.low)} and ${words.money(simulation.high)}`
  if (price < 0) return `Not even free: ${words.name(otherwise)} instead (${wide}).`
  const stands = quote <= price ? 'stays under it' : 'is above it'
  return `Walk away above ${words.money(price)}, and then: ${words.name(otherwise)}. The quote of ${words.money(quote)} ${stands} (${wide}).`
}

/** A choice with more danger is never named without it. */
function dangerWords(model: LifeModel, samples: readonly Sample[], best: string, next: string): string {
  const own = yearly(model, samples, best, 'dangers')
  const other = yearly(model, samples, next, 'dangers')
  if (!(own > other * 1.05)) return ''
  return ` It carries more danger: 1 dangerous event in ${Math.round(1 / own)} years against 1 in ${Math.round(1 / other)}.`
}

function differenceWords(model: LifeModel, samples: readonly Sample[], best: string, next: string): string {
  const days = (id: string) => yearly(model, samples, id, 'daysWithout').toFixed(1)
  return `They differ in days without power: ${days(best)} a year against ${days(next)}.`
}

function yearly(
  model: LifeModel,
  samples: readonly Sample[],
  id: string,
  quantity: 'dangers' | 'daysWithout',
): number {
  const values = column(samples.find(({ alternative }) => alternative === id)!, quantity)
  return values.reduce((sum, value) => sum + value, 0) / values.length / model.horizonYears
}

export function lowerFirst(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1)
}

function upperFirst(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}
