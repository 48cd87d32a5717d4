/**
 * `gensettle job kit` and `gensettle job fits`: what a job needs in hand, and whether one piece goes in the place of another.
 *
 * @module
 */

import { shortCaution } from '../alternatives/cautions.js'
import { moneyIn } from '../alternatives/say.js'
import type { Problem } from '../catalogue/problem.js'
import { jobNamedOrLast, jobsOf } from '../job/jobs.js'
import { type Kit, kitOf, type Need } from '../job/kit.js'
import { compareNumbers } from '../job/kit-compare.js'
import { supplierLists } from '../job/kit-message.js'
import { inSentence, sayCompared, sayCount, sayHold, sayLack, sayNeed, shortName } from '../job/kit-words.js'
import { registerOf } from '../register/register.js'
import { setCatalogueOf } from '../register/set-kind-of.js'
import { colours } from './colours.js'
import { type KitPage, kitHtml } from './job-kit-html.js'
import { newFileProblems, writeNewFile } from './new-file.js'
import { type SetOptions, withSet } from './of-set.js'
import { shippedCatalogue } from './places.js'
import { type Result, refuse } from './result.js'
import { shippedKits } from './shipped.js'
import { chance, figure, tableText } from './table.js'

export interface JobKitOptions extends SetOptions {
  readonly job?: string | undefined
  /** Parts in the place of a job. */
  readonly part?: readonly string[]
  readonly html?: string
  /** The messages alone. */
  readonly messages?: boolean
}

/** What a job, or parts that are to be renewed, need in hand. */
export function showKit(options: JobKitOptions): Promise<Result> {
  return withSet(options, ({ entries, boat, set, asOf, named }) => {
    const register = registerOf({ entries, boat, set, asOf, catalogue: shippedCatalogue() })
    const { catalogue, problems: refused } = setCatalogueOf(register, shippedCatalogue())
    const kits = shippedKits()
    const file = { path: '--html', file: options.html }
    const parts = options.part?.flatMap((text) => text.split(',').map((word) => word.trim()))
    const jobs = jobsOf(entries, set)
    const job = parts === undefined ? jobNamedOrLast(jobs, options.job) : undefined
    const problems = [
      ...newFileProblems([file]),
      ...askedProblems({ options, parts, known: kits.kits.map(({ part }) => part) }),
      ...(parts === undefined && job === undefined
        ? [
            noJob(
              options.job,
              jobs.map(({ name }) => name),
            ),
          ]
        : []),
    ]
    if (problems.length > 0) return refuse(...problems)
    const kit = kitOf({
      ...(job === undefined ? { parts: parts ?? [] } : { job }),
      entries,
      set,
      asOf,
      kits,
      catalogue,
      terms: register.terms,
    })
    const nameOf = (part: string) =>
      shortName(shippedCatalogue().parts.find(({ id }) => id === part)?.name ?? part)
    const lists = supplierLists(kit, { kits, nameOf, setFacts: register.setFacts })
    const page: KitPage = {
      kit,
      lists,
      nameOf,
      boatName: register.boatFacts.name ?? boat,
      asOf,
      invented: named.demonstration,
    }
    const unwritten = writeNewFile({ ...file, text: options.html === undefined ? '' : kitHtml(page) })
    if (unwritten.length > 0) return refuse(...unwritten)
    return {
      ok: true,
      json: {
        type: 'gensettle/job-kit',
        version: 1,
        boat,
        set,
        asOf,
        job: kit.job ?? null,
        begin: kit.stops.length === 0,
        needs: kit.needs.map(needValue),
        stops: kit.stops.map(({ key }) => key),
        inconvenient: kit.inconvenient.map(({ key }) => key),
        ready: kit.ready,
        heeds: kit.heeds,
        done: kit.done,
        nothingFor: kit.nothingFor,
        besides: kit.besides.map(({ key }) => key),
        wrong: kit.wrong,
        lists,
        refusedFigures: refused,
        caution: shortCaution,
      },
      text: options.messages
        ? lists.map(({ name, message }) => `${colours.bold(name)}\n\n${message}`).join('\n\n\n')
        : [
            ...kitText(page, register.boatFacts.currency ?? 'USD'),
            ...(options.html === undefined ? [] : ['', `Written: ${options.html}`]),
          ].join('\n'),
    }
  })
}

function askedProblems(of: {
  readonly options: JobKitOptions
  readonly parts: readonly string[] | undefined
  readonly known: readonly string[]
}): Problem[] {
  const { options, parts = [], known } = of
  const both =
    options.job !== undefined && options.part !== undefined
      ? [
          {
            code: 'contradiction',
            path: '--part',
            found: options.job,
            allowed: 'a job, or parts without one',
          },
        ]
      : []
  const unknown = parts
    .filter((part) => !known.includes(part))
    .map((part) => ({
      code: 'unknown-part',
      path: '--part',
      found: part,
      allowed: 'a part of the catalogue',
    }))
  return [...both, ...unknown]
}

function noJob(found: string | undefined, names: readonly string[]): Problem {
  const allowed =
    names.length === 0
      ? 'a job of the log, which speaks of none yet, or parts: --part sea-pump-body'
      : `one of: ${names.join(', ')}; or parts: --part sea-pump-body`
  return {
    code: found === undefined ? 'missing' : 'unknown-job',
    path: 'job',
    found: found ?? 'none',
    allowed,
  }
}

function needValue(need: Need) {
  const { asks, tally, byNumber, oldNumber, lacks, piece, ...rest } = need
  return {
    ...rest,
    piece: piece ?? null,
    lacks: lacks ?? null,
    oldNumber: oldNumber ?? null,
    asks: asks.map(({ question: { id, ask, why, seen }, known }) => ({
      question: id,
      ask,
      why,
      seen,
      answer: known?.answer ?? null,
      entry: known?.entry ?? null,
    })),
    tally,
    byNumber: byNumber ?? null,
  }
}

function kitText({ kit, nameOf }: KitPage, currency: string): string[] {
  const { job, stops, inconvenient, needs } = kit
  const inHand = needs.filter((need) => need.lacks === undefined)
  return [
    `${job === undefined ? '' : `${colours.bold(job)}: `}${sayHold(kit, nameOf)}`,
    ...sayWrong(kit, { nameOf, currency }),
    ...needsText('Stands against beginning', stops, nameOf),
    ...needsText('Only a nuisance without it', inconvenient, nameOf),
    ...(inHand.length === 0 ? [] : needsText('Here, or goes to a shop once it is out', inHand, nameOf)),
    ...(kit.ready.length === 0 ? [] : ['', colours.bold('To have ready')]),
    ...kit.ready.map(({ name, is, for: of }) => `- ${name} (${readyWords[is]}), for ${listed(of, nameOf)}`),
    ...kit.heeds.map(({ part, heed }) => `${nameOf(part)}: ${heed}`),
    ...(kit.besides.length === 0
      ? []
      : ['', `Ordered beyond this list: ${kit.besides.map(({ key }) => key).join(', ')}`]),
    ...questionsText(kit, nameOf),
    '',
    'Counts are those of a usual set (practice): count yours, and write it as --answers count:8. As messages to suppliers: --messages; as a page to print: --html FILE. What is ordered, comes or is checked: "gensettle log add order".',
    shortCaution,
  ]
}

const readyWords = { tool: 'tool', stuff: 'used up', arrange: 'to be arranged' } as const

function listed(parts: readonly string[], nameOf: (part: string) => string): string {
  return parts.map((part) => inSentence(nameOf(part))).join(', ')
}

/** The chance of a wrong part by the catalogue, and what the second wait costs. */
function sayWrong(
  { wrong }: Kit,
  { nameOf, currency }: { readonly nameOf: (part: string) => string; readonly currency: string },
): string[] {
  if (wrong.parts.length === 0) return []
  const each = wrong.parts.map(({ part, chance: p, days, piece, price }) => {
    const cost = price === undefined || price < 0.5 ? '' : ` or ${moneyIn(currency, price)} without power`
    const lost = `and ${moneyIn(currency, piece)} where it is not taken back`
    return `${inSentence(nameOf(part))} ${chance(p)}, then about ${figure(days)} days more${cost}, ${lost}`
  })
  const any = wrong.parts.length === 1 ? '' : ` At least one of them: ${chance(wrong.anyChance)}.`
  return [`Chance that what is bought is the wrong one (practice): ${each.join('; ')}.${any}`]
}

function needsText(title: string, needs: readonly Need[], nameOf: (part: string) => string): string[] {
  if (needs.length === 0) return []
  return [
    '',
    colours.bold(title),
    tableText(
      [
        { head: 'piece', wrap: 48 },
        { head: 'how many' },
        { head: 'by its short name', wrap: 34 },
        { head: '', wrap: 46 },
      ],
      needs.map((need) => [
        sayNeed(need, nameOf),
        sayCount(need),
        [need.part, need.piece].filter(Boolean).join(' '),
        need.sentAway ? 'goes to the shop; agreed beforehand' : sayLack(need),
      ]),
    ),
  ]
}

/** What is still to be settled, each question once with the pieces that it is about. */
function questionsText({ needs }: Kit, nameOf: (part: string) => string): string[] {
  const open = needs.flatMap((need) =>
    need.state === 'fits'
      ? []
      : need.asks.filter(({ known }) => known === undefined).map((asked) => ({ need, asked })),
  )
  if (open.length === 0) return []
  const ids = [...new Set(open.map(({ asked }) => asked.question.id))]
  return [
    '',
    colours.bold('To settle before ordering ("gensettle log add particulars PART --answers NAME:ANSWER")'),
    ...ids.map((id) => {
      const of = open.filter(({ asked }) => asked.question.id === id)
      const { ask, why, seen } = of[0]!.asked.question
      const parts = [...new Set(of.map(({ need }) => inSentence(nameOf(need.part))))].join(', ')
      return `- ${id} (${parts}): ${ask} ${why}${seen === 'open' ? ' Shows once it is open.' : ''}`
    }),
  ]
}

export interface FitsOptions {
  readonly old: string
  readonly replacement: string
}

/** Whether one piece goes in the place of another, by what stands on both. */
export async function showFits(numbers: FitsOptions): Promise<Result> {
  const compared = compareNumbers(numbers, shippedKits().sizes)
  const { both, standard, ...rest } = compared
  return {
    ok: true,
    json: {
      type: 'gensettle/job-fits',
      version: 1,
      ...numbers,
      ...rest,
      both: both ?? null,
      standard: standard ?? null,
    },
    text: sayCompared(compared),
  }
}
