/**
 * The sheet of a job, for whoever does it: scope, order, pieces, tools, cautions and stop lines, time, money, tests owed.
 *
 * @module
 */

import { quoteTerms } from '../alternatives/quoted-job.js'
import { usual } from '../alternatives/renewal.js'
import { moneyIn } from '../alternatives/say.js'
import type { Catalogue } from '../catalogue/catalogue.js'
import type { SetCatalogue } from '../catalogue/scale.js'
import { labourOf } from '../forecast/build-money.js'
import { lifeModelSchema } from '../forecast/life-model.js'
import { isKind } from '../logbook/kinds.js'
import type { Owed } from '../proof/owed.js'
import type { SheetBlock, SheetPassage } from '../proof/shop-sheet-blocks.js'
import { proofTestOf } from '../proof/tests.js'
import type { SetRegister } from '../register/register-types.js'
import type { Calendar } from './calendar.js'
import { estimateOf, type JobEstimate, spanOf } from './estimate.js'
import { insurerWants } from './insurer.js'
import type { Job } from './jobs.js'
import type { Kit } from './kit.js'
import { shortName } from './kit-words.js'
import { heldByKit, piecesOf, sayDays, toolsOf } from './sheet-days.js'
import { asked, orderOfWork } from './sheet-order.js'

export interface JobSheetOf {
  readonly register: SetRegister
  readonly job: Job
  readonly catalogue: Catalogue
  /** Brought to the set. */
  readonly forSet: SetCatalogue
  readonly owed: Owed
  /** Left out: not known here. */
  readonly kit?: Kit | undefined
  readonly calendar?: Calendar | undefined
  readonly demonstration: boolean
  readonly program: string
}

export interface JobSheet {
  readonly title: string
  readonly boatName: string
  readonly invented?: string
  readonly day: string
  readonly passages: readonly SheetPassage[]
  readonly colophon: string
}

export function jobSheetOf(of: JobSheetOf): JobSheet {
  const { register, job, demonstration, program } = of
  const estimate = estimateOf(job.parts, { register, catalogue: of.forSet })
  return {
    title: `Job sheet: ${job.name.replaceAll('-', ' ')}`,
    boatName: register.boatFacts.name ?? register.boat,
    ...(demonstration ? { invented: 'Demonstration: boat and log are invented.' } : {}),
    day: register.asOf,
    passages: [
      ...stopLines(of),
      scope(of, estimate),
      cautionsOf(of),
      beforeStripping(of),
      ...(of.kit === undefined ? [] : [piecesOf(of.kit, nameOf(of)), ...toolsOf(of.kit)]),
      orderOfWork(estimate, of.forSet),
      time(estimate, of.calendar),
      money(of, estimate),
      testsOwed(of),
      cameTo(),
    ],
    colophon: `Gensettle ${program}, as of ${register.asOf}. Usual hours and prices are practice until your own log says better. Licensed people and local rules come first.`,
  }
}

function stopLines(of: JobSheetOf): SheetPassage[] {
  const { lines } = of.owed
  const open = lines.filter(({ passedOver }) => passedOver === undefined)
  const blocks: SheetBlock[] = [
    ...open.map(({ hazard, why, act, clearWhen }) => ({
      is: 'stop' as const,
      text: `${hazard}. ${why} ${act} Clear when: ${clearWhen.join('; ')}.`,
    })),
    ...lines.flatMap(({ hazard, why, passedOver }): SheetBlock[] =>
      passedOver === undefined
        ? []
        : [{ is: 'text', bold: `Passed over: ${hazard}.`, text: `${why} The reason: ${passedOver.because}` }],
    ),
    ...(of.kit === undefined ? [] : heldByKit(of.kit, nameOf(of))),
  ]
  if (blocks.length === 0) return []
  const says = open.length === 0 ? {} : { says: 'They close with a reading, not with a date.' }
  return [{ title: 'Stop lines', ...says, blocks }]
}

/** Parts as they are called in a sentence. */
function nameOf({ forSet }: Pick<JobSheetOf, 'forSet'>): (part: string) => string {
  return (part) => shortName(forSet.parts.find(({ id }) => id === part)?.name ?? part.replaceAll('-', ' '))
}

function scope({ register, job }: JobSheetOf, estimate: JobEstimate): SheetPassage {
  const { ratingKw, volts, hertz, rpm, name } = register.setFacts
  const set = [
    name ?? register.set,
    ratingKw === undefined ? '' : `${ratingKw} kW`,
    volts?.length ? `${volts.join('/')} V` : '',
    hertz === undefined ? '' : `${hertz} Hz`,
    rpm === undefined ? '' : `${rpm} rpm`,
  ]
  const quote = register.openQuotes.find((open) => open.job === job.name)
  const without = quote?.excludes ?? []
  return {
    title: 'What it is to do',
    says: 'This and nothing else; ask before more is done.',
    blocks: [
      { is: 'text', bold: `${set.filter(Boolean).join(', ')}.`, text: job.what ?? '' },
      ...(estimate.parts.length === 0
        ? [{ is: 'text' as const, text: 'Neither a quote nor a decision names its parts.' }]
        : [
            {
              is: 'list' as const,
              items: estimate.parts.map(({ name: part, did }) => `${part}: ${asked[did]}`),
            },
          ]),
      ...(estimate.unknown.length === 0
        ? []
        : [
            {
              is: 'text' as const,
              text: `Beside the catalogue: ${estimate.unknown.map((id) => id.replaceAll('-', ' ')).join(', ')}.`,
            },
          ]),
      ...(quote === undefined
        ? []
        : [
            {
              is: 'text' as const,
              bold: 'Quoted:',
              text: `${quote.offeredBy ?? 'offered'}, ${quote.firmness}${quote.subjectToStripDown ? ', subject to strip-down' : ''}${without.length === 0 ? '' : `; left out of it: ${without.join(', ')}`}.`,
            },
          ]),
    ],
  }
}

/** Of every job, whatever it is on. */
const always = ['injury', 'shock']

/** Hazards of the parts that are opened, and what is handed to licensed people. */
function cautionsOf({ job, catalogue, forSet }: JobSheetOf): SheetPassage {
  const parts = forSet.parts.filter(({ id }) => job.parts.some(({ part }) => part === id))
  const named = new Set([...always, ...parts.flatMap(({ modes }) => modes.flatMap(({ dangers }) => dangers))])
  return {
    title: 'Cautions',
    says: 'Before a hand goes in.',
    blocks: [
      {
        is: 'list',
        items: forSet.dangers
          .filter(({ id }) => named.has(id))
          .map(({ name, caution }) => `${name}: ${caution}`),
      },
      { is: 'text', bold: 'Not for the owner, however handy:', text: catalogue.owed.handOver.join(' ') },
    ],
  }
}

function beforeStripping({ job, register }: JobSheetOf): SheetPassage {
  const pictures = job.entries.reduce(
    (sum, { body }) => sum + ('photographs' in body ? (body.photographs?.length ?? 0) : 0),
    0,
  )
  const named = job.entries.some((entry) => isKind(entry, 'quote')) || register.openQuotes.length > 0
  return {
    title: 'Before anything is stripped',
    says: 'Where an insurer may be asked to pay. The policy itself goes before this list.',
    blocks: [
      {
        is: 'table',
        heads: ['', 'Why', 'From'],
        rows: insurerWants.map(({ what, why, source, held }) => [
          what,
          why,
          source === 'practice' ? 'practice' : `${source} (${held})`,
        ]),
      },
      {
        is: 'text',
        text: `${pictures === 0 ? 'No picture of this job is in the log yet.' : `${pictures} ${pictures === 1 ? 'picture' : 'pictures'} of this job in the log.`}${named ? '' : ' No quote is in the log yet.'}`,
      },
      { is: 'blanks', names: ['Policy, claim number', 'Told on, whom', 'Surveyor, when'] },
    ],
  }
}

function time({ parts, ways, hours, days }: JobEstimate, calendar: Calendar | undefined): SheetPassage {
  const h = (value: number) => `${round(value)} h`
  return {
    title: 'Time',
    says: 'Usual hours; waiting and workshops come on top.',
    blocks: [
      ...(calendar === undefined ? [] : sayDays(calendar)),
      {
        is: 'table',
        heads: ['', 'Hours', 'Whose', 'Took'],
        rows: [
          ...parts.map(({ name, hours: hands, by }) => [
            name,
            h(hands),
            by === 'owner' ? 'owner' : 'paid',
            '',
          ]),
          [
            `Opening and closing, ${ways.length} ways in`,
            h(hours.owner + hours.paid - parts.reduce((sum, one) => sum + one.hours, 0)),
            hours.paid > 0 ? 'paid' : 'owner',
            '',
          ],
          ['All', h(hours.owner + hours.paid), `${round(days)} days`, ''],
        ],
      },
    ],
  }
}

function money(of: JobSheetOf, estimate: JobEstimate): SheetPassage {
  const { register, job, forSet } = of
  const say = (amount: number) => moneyIn(register.boatFacts.currency ?? '', amount)
  const between = ({ low, middle, high }: JobEstimate['span']) =>
    `Most likely about ${say(middle)}; one in ten ends under ${say(low)}, one in ten over ${say(high)}.`
  const quote = register.openQuotes.find((open) => open.job === job.name)
  const blocks: SheetBlock[] = []
  if (quote !== undefined) {
    const labour = lifeModelSchema.shape.labour.parse(labourOf(register, forSet, []))
    const terms = quoteTerms({ model: { labour }, catalogue: forSet }, quote)
    blocks.push({
      is: 'text',
      bold: `Quoted ${say(quote.withTax)}, tax in.`,
      text: between(spanOf(terms.price, terms.overrun)),
    })
    const besides = usual(terms.besides)
    if (besides > 0)
      blocks.push({ is: 'text', text: `What the quote leaves out usually comes to ${say(besides)} on top.` })
  }
  blocks.push({
    is: 'text',
    bold: quote === undefined ? `About ${say(estimate.money)} at usual prices.` : 'By usual prices:',
    text: `${quote === undefined ? '' : `${say(estimate.money)}. `}${between(estimate.span)}`,
  })
  const walkAway = job.entries
    .filter((entry) => isKind(entry, 'decision'))
    .findLast(({ body }) => body.walkAwayPrice !== undefined)?.body.walkAwayPrice
  if (walkAway !== undefined)
    blocks.push({
      is: 'text',
      bold: `Ask first above ${say(walkAway)}.`,
      text: 'That is the price at which something else is better, as it stood when this was settled.',
    })
  return { title: 'Money', says: 'The spread is that of bills over what was said.', blocks }
}

/** What is owed once its work is done, in the order in which it is safe to find out. */
function testsOwed({ job, catalogue, owed }: JobSheetOf): SheetPassage {
  const { rules, stages } = catalogue.owed
  const wanted = new Set(
    rules
      .filter((rule) =>
        job.parts.some(({ part, did }) => rule.parts.includes(part) && rule.did.includes(did)),
      )
      .flatMap(({ tests }) => tests),
  )
  const is = (test: string) => owed.tests.find((one) => one.test === test)?.is ?? ''
  const rows = stages.flatMap(({ name, tests }) =>
    tests
      .filter((test) => wanted.has(test))
      .map((test) => [proofTestOf(test)?.name ?? test, name, is(test) === 'owed' ? '' : is(test)]),
  )
  return {
    title: 'Tests owed',
    says: 'After the work, before it is trusted. A test that cannot tell has not passed.',
    blocks:
      rows.length === 0
        ? [
            {
              is: 'text',
              text: 'This work asks for no test in the table. Silence proves nothing: run it, and look.',
            },
          ]
        : [{ is: 'table', heads: ['Test', 'When', 'Result'], rows }],
  }
}

function cameTo(): SheetPassage {
  return {
    title: 'What it came to',
    says: 'Written into the log under the job’s name, it teaches what the next one will take.',
    blocks: [
      {
        is: 'blanks',
        names: ['Own hours', 'Paid hours', 'Bills, tax in', 'Found besides', 'Left for next time'],
      },
      { is: 'signatures', lines: ['Done by', 'Date', 'Looked over by', 'Date'] },
    ],
  }
}

function round(value: number): string {
  return value.toLocaleString('en-GB', { maximumFractionDigits: 1 })
}
