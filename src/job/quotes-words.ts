/**
 * Offers side by side in words: the answer, the reason for each line, and the questions as a message.
 *
 * @module
 */

import type { LeavableWork, LeftOut } from '../alternatives/left-out.js'
import { meanOf } from '../alternatives/sum-of-amounts.js'
import type { Comparison } from './quotes.js'
import type { Offer } from './quotes-offers.js'
import type { OpenQuestion } from './quotes-questions.js'
import type { OfferLine } from './quotes-scope.js'

/** How amounts, days and parts are said. */
export interface Saying {
  readonly money: (amount: number) => string
  readonly day: (date: string) => string
  readonly part: (id: string) => string
}

export const workWords: Readonly<Record<LeavableWork, string>> = {
  removal: 'removal',
  refitting: 'refitting',
  lifting: 'lifting',
  testing: 'testing',
  carriage: 'carriage',
  travel: 'travel',
  parts: 'the pieces',
  consumables: 'consumables',
  'haul-out': 'the haul-out',
  disposal: 'disposal',
}

/** Who offers, or the day of an offer without a name. */
export function sayWho({ offeredBy, from }: Pick<Offer, 'offeredBy' | 'from'>, { day }: Saying): string {
  return offeredBy ?? `the offer of ${day(from)}`
}

/** The answer: which to take, or none, its deciding clause apart; and what it rests on. */
export function sayAnswer(
  { offers, walkAway }: Comparison,
  say: Saying,
): { readonly lead: string; readonly clause: string; readonly rest: string } {
  const [best, next] = offers
  if (best === undefined)
    return { lead: '', clause: 'There is no offer that can be reckoned with.', rest: '' }
  const who = sayWho(best.offer, say)
  const all = `${say.money(best.expected)} in all`
  const room = best.room ?? 0
  const [lead, clause] =
    walkAway === undefined
      ? ['', `${upperFirst(who)}: ${all}.`]
      : room >= 0
        ? [`${upperFirst(who)}: ${all}, `, `${say.money(room)} under where something else is better.`]
        : [
            offers.length === 1
              ? `Walk away from it: ${who} comes to ${all}, `
              : `Walk away from all of them: the best, ${who}, comes to ${all}, `,
            `${say.money(-room)} above where something else is better.`,
          ]
  if (next === undefined) return { lead, clause, rest: 'It is the only offer.' }
  const hundred = Math.round(100 * best.cheapest)
  const apart = say.money(next.expected - best.expected)
  const close = best.cheapest < 0.7 ? 'Too close to call: ' : ''
  const rest = `${close}${close === '' ? 'It' : 'it'} is ${apart} under the next, ${sayWho(next.offer, say)}, and the cheapest in ${hundred} cases of 100.`
  return { lead, clause, rest }
}

/** What a line is called. */
export function sayLine(line: OfferLine, { part }: Saying): string {
  switch (line.about) {
    case 'price':
      return 'Price'
    case 'tax':
      return 'Tax'
    case 'lapsed':
      return 'Its time has run out'
    case 'overrun':
      return 'Bill over price'
    case 'left-out':
      return `Left out: ${workWords[line.leftOut.work]}`
    case 'not-covered':
      return `Not covered: ${part(line.part)}`
    case 'wait':
      return 'Days without the set'
    case 'guarantee':
      return 'Guarantee'
    case 'paid-ahead':
      return 'Paid ahead of the work'
  }
}

/** Why a line is what it is. */
export function sayWhy(line: OfferLine, say: Saying): string {
  switch (line.about) {
    case 'price':
      return 'as offered'
    case 'tax':
      if (line.unknown) return 'nothing was said of it: taken as in the price'
      return line.money === 0 ? 'in the price' : `${number(line.percent)} % on top`
    case 'lapsed':
      return `it held until ${say.day(line.validUntil)}; asked for again, such prices come out a little dearer`
    case 'overrun': {
      const firm = line.firm ? 'a firm price' : 'an estimate'
      const open = line.stripDown ? ', subject to strip-down' : ''
      return `${firm}${open}: such bills come to ${line.factor.toFixed(2)} of the price on average`
    }
    case 'left-out':
      return sayLeftOut(line.leftOut)
    case 'not-covered':
      return 'another offer holds it, this one does not: its usual price'
    case 'wait':
      return sayWait(line)
    case 'guarantee':
      return sayGuarantee(line, say)
    case 'paid-ahead':
      return sayAhead(line, say)
  }
}

function sayLeftOut({ by, hours = 0, visits = 0, work }: LeftOut): string {
  switch (by) {
    case 'opening': {
      const doing =
        work === 'removal' ? 'to open it and take out what goes ashore' : 'to put it back and close it'
      return `${number(hours)} paid hours ${doing}`
    }
    case 'hours':
      return `${number(hours)} paid hours, as is usual`
    case 'visits':
      return visits === 1 ? 'one visit' : `${number(visits)} visits: there, and back from the shop`
    case 'pieces':
      return 'the pieces at their usual prices'
    case 'share':
      return 'a usual share of such a price'
    case 'price':
      return 'the usual price'
  }
}

function sayWait({ wait }: Extract<OfferLine, { about: 'wait' }>): string {
  const days = number(meanOf(wait.days))
  const begins = wait.beginsIn >= 1 ? `, from ${number(wait.beginsIn)} days on` : ''
  const stands = wait.stands ? '; it stands already, so all of the wait counts' : ''
  return wait.by === 'promised'
    ? `${days} days on average${begins}: as promised, with the usual slip${stands}`
    : `${days} days on average${begins}: nothing was said, so as such work usually takes${stands}`
}

function sayGuarantee(
  { months, worth }: Extract<OfferLine, { about: 'guarantee' }>,
  { money }: Saying,
): string {
  if (months === 0) return 'none was given'
  const hundred = number(100 * worth.again)
  const from = worth.by === 'lives' ? 'by the lives of its parts' : 'by a plain share'
  return `${number(months)} months: ${from}, in ${hundred} of 100 it has to be done again within them, at ${money(worth.costs)}`
}

function sayAhead({ ahead }: Extract<OfferLine, { about: 'paid-ahead' }>, { money }: Saying): string {
  if (ahead.stages.length === 0) return 'no stages were named: taken as paid when it is done'
  if (ahead.most === 0) return 'nothing is paid ahead of the work'
  return `${money(ahead.beforeWork)} is paid before any work, at most ${money(ahead.most)} is ahead of it; now and then that is lost`
}

/** A question as it is put to one who offers. */
export function sayQuestion(
  { about, works }: OpenQuestion,
  offer: Offer,
  { stands, day }: Saying & { readonly stands: boolean },
): string {
  const list = sayList(works.map((work) => workWords[work]))
  switch (about) {
    case 'tax':
      return 'Is tax in your price, and at which rate?'
    case 'left-out':
    case 'left-out-together':
      if (works.length > 1) return `Are ${list} in your price? What do those come to that are not?`
      return works.some((work) => work === 'parts' || work === 'consumables')
        ? `Are ${list} in your price? If they are not, what do they come to?`
        : `Is ${list} in your price? If it is not, what does it come to?`
    case 'also-left-out':
      return `What does that come to which you leave out besides: “${offer.alsoExcludes}”?`
    case 'days':
      return stands
        ? 'From my order, how many days is it until the set runs again?'
        : 'For how many days will the set be out of use?'
    case 'guarantee':
      return 'What guarantee do you give on the work, and for how long?'
    case 'firm':
      return 'Would you make your estimate a fixed price, or name the most that it can come to?'
    case 'strip-down':
      return 'What is the most that the price can come to once the set is stripped down?'
    case 'validity':
      return `Your price held until ${offer.validUntil === undefined ? 'then' : day(offer.validUntil)}. Does it still hold?`
    case 'stages':
      return 'Which part of the price is to be paid when?'
  }
}

/** What asking is for, to the owner. */
export function sayWorth(
  { worth, swing, changesOrder, passesWalkAway, about }: OpenQuestion,
  { money }: Saying,
): string {
  if (about === 'also-left-out') return 'said in words only: it has no price yet'
  const could = [
    ...(changesOrder ? ['make another offer the best'] : []),
    ...(passesWalkAway ? ['carry it past the price to walk away from'] : []),
  ].join(', or ')
  const size = swing < 0 ? `take ${money(-swing)} off` : `add ${money(swing)}`
  const pays = worth < 0.5 ? '' : `worth ${money(worth)} to ask: `
  return `${pays}it could ${size} and ${could}`
}

/** The questions as a message to be sent; undefined where there is nothing to ask. */
export function messageTo(
  offer: Offer,
  questions: readonly OpenQuestion[],
  say: Saying & { readonly stands: boolean; readonly job: string },
): string | undefined {
  if (questions.length === 0) return undefined
  const list = questions.map((question, i) => `${i + 1}. ${sayQuestion(question, offer, say)}`)
  return [
    'Hello,',
    '',
    `thank you for your offer of ${say.day(offer.from)} (${say.job.replaceAll('-', ' ')}). Before I settle it I would be glad to know:`,
    '',
    ...list,
    '',
    'A line to each is enough. Many thanks.',
  ].join('\n')
}

function number(value: number): string {
  return value >= 9.95 ? String(Math.round(value)) : String(Number(value.toFixed(1)))
}

function sayList(words: readonly string[]): string {
  return words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`
}

function upperFirst(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}

/** Figures of the catalogue that a line rests on: each can be overruled. */
export function figuresOfLine(line: OfferLine): readonly string[] {
  switch (line.about) {
    case 'lapsed':
      return ['offers.lapsed.priceFactor']
    case 'left-out':
      return line.leftOut.figures
    case 'not-covered':
      return [`parts.${line.part}.price.original.typical`, `parts.${line.part}.hours.paid`]
    case 'wait':
      return line.wait.by === 'promised' ? ['offers.promised.daysFactor', 'offers.promised.logSd'] : []
    case 'guarantee':
      if (line.months === 0) return []
      return [
        'offers.guarantee.honouredShare',
        ...(line.worth.by === 'plain' ? ['offers.guarantee.againChance'] : []),
      ]
    case 'paid-ahead':
      return line.ahead.stages.length === 0 ? [] : ['offers.stages.lostChance']
    default:
      return []
  }
}
