/**
 * `gensettle job quotes`: the offers for a job on one scope, against the price to walk away from, and what is still to be asked.
 *
 * @module
 */

import { shortCaution } from '../alternatives/cautions.js'
import { lowerFirst, moneyIn } from '../alternatives/say.js'
import { readSet } from '../alternatives/settle.js'
import { learnedOverrunOf } from '../job/actual.js'
import { jobNamedOrLast, jobsOf } from '../job/jobs.js'
import { type Comparison, compareOffers, type RankedOffer } from '../job/quotes.js'
import { drawsOfQuotes } from '../job/quotes-draws.js'
import { offersOf } from '../job/quotes-offers.js'
import { type OpenQuestion, questionsTo } from '../job/quotes-questions.js'
import { standsStill } from '../job/quotes-wait.js'
import { keptWalkAway, type WalkAwayFound, walkAwayOf, withInHand } from '../job/quotes-walk-away.js'
import {
  figuresOfLine,
  messageTo,
  type Saying,
  sayAnswer,
  sayLine,
  sayQuestion,
  sayWho,
  sayWhy,
  sayWorth,
} from '../job/quotes-words.js'
import { answerFor } from './answer.js'
import { lessonsFor, lessonsText, lessonsValue } from './lessons.js'
import { type SetOptions, type SetQuestion, withSet } from './of-set.js'
import { shippedCatalogue } from './places.js'
import { type Result, refuse, refusedText } from './result.js'
import { chance, tableText } from './table.js'

export interface JobQuotesOptions extends SetOptions {
  readonly seed: number
  readonly histories?: number
  readonly job?: string
}

/** The offers for a job side by side. */
export function compareQuotes(options: JobQuotesOptions): Promise<Result> {
  return withSet(options, async (question) => {
    const { entries, set, boat, asOf } = question
    const { seed, histories } = options
    const jobs = jobsOf(entries, set).filter(({ entries: own }) => own.some(({ kind }) => kind === 'quote'))
    const job = jobNamedOrLast(jobs, options.job)
    if (job === undefined) {
      const allowed = `a job that something was offered for: ${jobs.map(({ name }) => name).join(', ') || 'none yet'}`
      return refuse({ code: 'not-one-of', path: 'job', found: options.job ?? 'none', allowed })
    }
    const lessons = lessonsFor(question, { seed })
    if (!lessons.ok) return lessons
    const { pooled } = lessons
    const learned = learnedOverrunOf({ ...question, catalogue: shippedCatalogue() })
    const read = readSet({ ...question, seed, pooled, catalogue: shippedCatalogue(), overrun: learned })
    const { bare: model, register } = read
    const { catalogue } = read.forSet
    const { offers, problems } = offersOf({
      entries,
      set,
      job: job.name,
      asOf,
      terms: register.terms,
      currency: model.currency,
    })
    const kept = keptWalkAway({ entries, set, job: job.name, asOf }, { model, catalogue, offers })
    const isOpen = register.openQuotes.some((open) => open.job === job.name)
    const found =
      kept.found ??
      (isOpen
        ? await reckoned(question, job.name, {
            seed,
            pooled,
            ...(histories === undefined ? {} : { histories }),
          })
        : undefined)
    const known = { model, catalogue, asOf, seed, walkAway: found, learned }
    const comparison = compareOffers(offers, known)
    const told = comparison.offers.map((offer) => ({
      ...offer,
      questions: questionsTo(offer, { comparison, known }),
    }))
    const stands = standsStill(model)
    const say = {
      money: (amount: number) => moneyIn(model.currency, amount),
      day: (date: string) => date,
      part: (id: string) => lowerFirst(catalogue.parts.find((part) => part.id === id)?.name ?? id),
      stands,
      job: job.name,
    }
    const wrong = [...problems, ...comparison.problems, ...kept.problems, ...read.forSet.problems]
    const answer = sayAnswer(comparison, say)
    return {
      ok: true,
      json: {
        type: 'gensettle/job-quotes',
        version: 1,
        boat,
        set,
        asOf,
        seed,
        draws: drawsOfQuotes,
        currency: model.currency,
        job: job.name,
        says: `${answer.lead}${answer.clause} ${answer.rest}`.trim(),
        stands,
        parts: comparison.scope.parts,
        walkAway: walkAwayValue(found, comparison),
        offers: told.map((offer, i) => offerValue(offer, { rank: i + 1, say })),
        problems: wrong,
        assumed: read.assumed,
        ...lessonsValue(pooled),
        caution: shortCaution,
      },
      text: [
        `${answer.lead}${answer.clause}`,
        answer.rest,
        ...walkAwayText(found, comparison, say),
        '',
        comparedText(comparison, say),
        ...told.flatMap((offer) => offerText(offer, say)),
        ...refusedText('What could not be used', wrong),
        '',
        ...lessonsText(pooled),
        shortCaution,
      ].join('\n'),
    }
  })
}

type Told = RankedOffer & { readonly questions: readonly OpenQuestion[] }
type Sayings = Saying & { readonly stands: boolean; readonly job: string }

/** The price to walk away from as `alternatives` reckons it, with the job as the one in hand. */
async function reckoned(
  question: SetQuestion,
  job: string,
  how: Pick<Parameters<typeof answerFor>[0], 'seed' | 'histories' | 'pooled'>,
): Promise<WalkAwayFound | undefined> {
  const { report, model } = await answerFor({
    ...question,
    ...how,
    entries: withInHand(question.entries, job),
  })
  const found = report.walkAway === null ? undefined : walkAwayOf(report.walkAway, model)
  return found === undefined ? undefined : { ...found, from: 'reckoned' }
}

function walkAwayValue(found: WalkAwayFound | undefined, { walkAway }: Comparison) {
  if (found === undefined || walkAway === undefined) return null
  const { price, low, high, from, entry = null, otherwise = null } = found
  return {
    price,
    low,
    high,
    from,
    entry,
    otherwise,
    cost: walkAway.cost,
    costLow: walkAway.low,
    costHigh: walkAway.high,
  }
}

function offerValue(told: Told, { rank, say }: { readonly rank: number; readonly say: Sayings }) {
  const {
    offer,
    expected,
    spread,
    cheapest,
    room = null,
    walkAwayPrice = null,
    lines,
    ahead,
    questions,
  } = told
  return {
    rank,
    entry: offer.entry,
    offeredBy: offer.offeredBy ?? null,
    given: offer.from,
    inPlaceOf: offer.inPlaceOf,
    amount: offer.amount,
    withTax: offer.withTax,
    expired: offer.expired,
    expected,
    spread,
    cheapest,
    room,
    walkAwayPrice,
    lines: lines.map((line) => ({
      about: line.about,
      name: sayLine(line, say),
      money: line.money,
      why: sayWhy(line, say),
      figures: figuresOfLine(line),
    })),
    paidAhead: ahead,
    questions: questions.map((question) => ({ ...question, asks: sayQuestion(question, offer, say) })),
    message: messageTo(offer, questions, say) ?? null,
  }
}

function walkAwayText(
  found: WalkAwayFound | undefined,
  { walkAway }: Comparison,
  { money }: Saying,
): string[] {
  if (found === undefined || walkAway === undefined)
    return [
      'No price to walk away from is known for this job: none was kept, and its offers are no longer open.',
    ]
  const from = {
    kept: `kept with the decision ${found.entry}`,
    entered: `entered with the decision ${found.entry}`,
    reckoned: 'reckoned now',
  }[found.from]
  const to = found.otherwise === undefined ? '' : `, and then: ${lowerFirst(found.otherwise)}`
  const moves =
    walkAway.low < walkAway.high
      ? `; what could still be found out moves it from ${money(walkAway.low)} to ${money(walkAway.high)}`
      : ''
  if (walkAway.cost <= 0) return [`Not even free: every price is too much (${from}${moves})${to}.`]
  return [
    `Walk away where all that the job costs comes to more than ${money(walkAway.cost)} (${from}${moves})${to}.`,
  ]
}

function comparedText({ offers }: Comparison, say: Saying): string {
  const right = (head: string) => ({ head, align: 'right' }) as const
  return tableText(
    [
      { head: 'offer', wrap: 34 },
      ...['as offered', 'in all', '10 in 100', 'half', '90 in 100', 'cheapest', 'walk away above'].map(right),
    ],
    offers.map(({ offer, expected, spread, cheapest, walkAwayPrice }) => [
      sayWho(offer, say),
      say.money(offer.amount),
      ...[expected, spread.low, spread.middle, spread.high].map(say.money),
      chance(cheapest),
      walkAwayPrice === undefined ? '' : walkAwayPrice > 0 ? say.money(walkAwayPrice) : 'not even free',
    ]),
  )
}

function offerText(told: Told, say: Sayings): string[] {
  const { offer, lines, expected, questions } = told
  const rows = [
    ...lines
      .filter(({ about, money }) => about !== 'tax' || money !== 0 || offer.taxUnknown)
      .map((line) => [sayLine(line, say), say.money(line.money), sayWhy(line, say)]),
    ['In all', say.money(expected), ''],
  ]
  const message = messageTo(offer, questions, say)
  return [
    '',
    `${sayWho(offer, say)}, ${offer.from}`,
    tableText([{ head: '' }, { head: 'money', align: 'right' }, { head: 'why', wrap: 80 }], rows),
    ...(questions.length === 0
      ? ['Nothing that it leaves unsaid could change the order or pass the price to walk away from.']
      : [
          'Still to be asked, what is worth most first:',
          ...questions.map(
            (question) => `  ${sayQuestion(question, offer, say)} (${sayWorth(question, say)})`,
          ),
          '',
          ...message!.split('\n').map((line) => `  | ${line}`.trimEnd()),
        ]),
  ]
}
