/**
 * The upper half of a brief: stop lines, question, answer, the number for the telephone, the range, the alternatives.
 *
 * @module
 */

import type { BriefBlock, BriefPassage, BriefRange } from './brief-blocks.js'
import type { BriefOf } from './brief-subject.js'
import { lower, sayAYear, sayBriefDate, sayCount, sayEvents, sayOnceIn, upper } from './brief-words.js'
import type { Compared } from './compared.js'
import { moneyIn } from './say.js'

/** One and two thirds standard errors: 90 in 100. */
const ninety = 1.645

export function answerPassages(of: BriefOf): BriefPassage[] {
  return [...stops(of), question(of), telephone(of), alternatives(of), range(of)]
}

function stops({ stops: standing, model }: BriefOf): BriefPassage[] {
  const open = standing.flatMap(({ why, passedOver }) => (passedOver === undefined ? [why] : []))
  const others = model.alternatives.flatMap(({ barred }) =>
    barred === undefined || open.some((why) => barred.includes(why)) ? [] : [barred],
  )
  const whys = [...new Set([...open, ...others])]
  const passedOver = standing.flatMap(({ why, passedOver: over }): BriefBlock[] => {
    if (over === undefined) return []
    const text = `The owner’s reason of ${sayBriefDate(over.date)}: ${over.because}`
    return [{ is: 'text', bold: `Passed over, and bars nothing: ${lower(why)}`, text }]
  })
  if (whys.length + passedOver.length === 0) return []
  const blocks = whys.map((why): BriefBlock => {
    const bars = model.alternatives.filter(({ barred }) => barred?.includes(why))
    const names = bars.map(({ id, name }) => name ?? id).join('; ')
    const closes = 'This closes with an entry that shows it put right, not with a date.'
    return { is: 'stop', title: why, text: names === '' ? closes : `It bars: ${names}. ${closes}` }
  })
  return [{ title: 'Before it is started', blocks: [...blocks, ...passedOver] }]
}

function question(of: BriefOf): BriefPassage {
  const { boatName, model, report } = of
  const { walkAway } = report
  const money = moneyIn.bind(undefined, model.currency)
  const years = sayCount(model.horizonYears, 'year')
  const worth = walkAway === null ? '' : `, and is the quote of ${money(walkAway.quote)} worth taking`
  return {
    title: 'The question',
    says: `Over ${years}; money of today, nothing already spent counted.`,
    blocks: [
      {
        is: 'text',
        text: `What is to be done about the generating set of ${boatName} for the ${years} that the boat is kept${worth}?`,
      },
      ...answer(of),
    ],
  }
}

function answer(of: BriefOf): BriefBlock[] {
  const { model, report, rows } = of
  const { best, next, saving, savingError, chanceBest, clearness } = report.verdict
  const money = moneyIn.bind(undefined, model.currency)
  const name = nameIn(of)
  const row = (id: string) => rows.find((one) => one.id === id)!
  const chosen = row(best)
  if (chosen.barred !== undefined) {
    return [
      { is: 'say', text: 'Nothing can be chosen as things stand: ', bold: 'every alternative is barred.' },
      {
        is: 'text',
        text: `Of least cost, once what bars it is put right: ${lower(chosen.name)}, ${money(chosen.cost.mean)}.`,
      },
    ]
  }
  if (next === null) return [{ is: 'say', text: '', bold: `${chosen.name}: nothing else is open.` }]
  const apart = `${money(saving)} ± ${money(ninety * savingError)}`
  const cases = `in ${Math.round(100 * chanceBest)} cases of 100 nothing that could still be learnt would change that`
  const danger = moreDanger(chosen, row(next))
  if (clearness === 'too-close') {
    return [
      {
        is: 'say',
        text: 'Too close to call between two: ',
        bold: `${lower(chosen.name)}, or ${lower(name(next))}.`,
      },
      {
        is: 'text',
        bold: `A toss-up: ${apart} apart.`,
        text: `${upper(differences(chosen, row(next)))}.${danger} The first is the cheaper on average; ${cases}.`,
      },
    ]
  }
  return [
    sentence(of, chosen.name),
    {
      is: 'text',
      bold: clearness === 'clear' ? 'Clear.' : 'Leaning, not clear.',
      text: `It saves ${apart} over ${sayCount(model.horizonYears, 'year')} against the next best (${lower(name(next))}), and ${cases}.${danger}`,
    },
  ]
}

function sentence({ report, model }: BriefOf, best: string): BriefBlock {
  const { walkAway } = report
  if (walkAway === null) return { is: 'say', text: '', bold: `${best}.` }
  const { price, quote } = walkAway
  const at = moneyIn(model.currency, price)
  if (price <= 0 && quote > price) {
    return { is: 'say', text: `${best}: `, bold: 'the job that is quoted would not pay even for nothing.' }
  }
  const clause = quote <= price ? `if the quote stays under ${at}.` : `unless the quote falls to ${at}.`
  return { is: 'say', text: `${best}, `, bold: clause }
}

function moreDanger(best: Compared, next: Compared): string {
  if (!(best.dangers > next.dangers * 1.05)) return ''
  return ` It carries more danger: a dangerous event ${sayEvents(best.dangers)}, against ${sayEvents(next.dangers)}.`
}

function differences(a: Compared, b: Compared): string {
  const days = ({ daysWithoutPerYear }: Compared) => sayAYear(daysWithoutPerYear.mean)
  const stopped = ({ stopsPerYear }: Compared) => sayAYear(stopsPerYear.mean)
  return `days without power, ${days(a)} a year against ${days(b)}; stops of a day or longer, ${stopped(a)} against ${stopped(b)}`
}

function telephone(of: BriefOf): BriefPassage {
  const { model, report, register, entries } = of
  const { walkAway } = report
  const title = 'For the telephone'
  if (walkAway === null) {
    const says =
      'No quote is in hand. Once one is in the log, the price above which to walk away stands here.'
    return { title, blocks: [{ is: 'text', text: says }] }
  }
  const money = moneyIn.bind(undefined, model.currency)
  const { price, findingOut, simulation, quote, otherwise } = walkAway
  const open = register.openQuotes.findLast(({ withTax }) => withTax === quote)
  const stands = quote <= price ? 'under it' : 'above it'
  const conditions =
    open === undefined
      ? []
      : [
          open.firmness === 'firm' ? 'firm' : 'an estimate',
          ...(open.subjectToStripDown ? ['subject to what is found on stripping down'] : []),
          open.taxUnknown ? 'whether tax is in it is not said' : 'tax in',
          ...(open.expired ? ['expired'] : []),
        ]
  const named = open === undefined ? '' : ` for ${open.job.replaceAll('-', ' ')} (${entries([open.entry])})`
  const text = [
    price < 0 ? 'Not even free.' : 'Above this, walk away.',
    `Then: ${lower(nameIn(of)(otherwise))}.`,
    `The quote${named} is ${money(quote)}${conditions.length === 0 ? '' : `, ${conditions.join(', ')}`}: ${stands}.`,
    `Thin line: what could still be found out before signing makes it ${money(findingOut.low)} to ${money(findingOut.high)}, 10 to 90 in 100.`,
    `Thick part: the simulation alone leaves ${money(simulation.low)} to ${money(simulation.high)}, 90 in 100; more histories narrow this one only.`,
  ].join(' ')
  const said = {
    price: money(price),
    low: money(findingOut.low),
    high: money(findingOut.high),
    quote: `Quote ${money(quote)}`,
  }
  return {
    title,
    blocks: [
      {
        is: 'number',
        number: price < 0 ? 'Not even free' : money(price),
        text,
        widths: {
          price,
          findingOut,
          simulation,
          quote,
          said,
          drawn: `A scale of money. Walk away above ${said.price}; finding out could make that ${said.low} to ${said.high}. The quote is ${money(quote)}.`,
        },
      },
    ],
  }
}

function range({ report, rows, model }: BriefOf): BriefPassage {
  const { best, next, saving, savingError, chanceBest } = report.verdict
  const money = moneyIn.bind(undefined, model.currency)
  const row = rows.find(({ id }) => id === best)!
  const { low, middle, high } = row.costSpread
  const against =
    next === null
      ? []
      : [
          [
            'Less than the next best',
            `${money(saving)} ± ${money(ninety * savingError)}`,
            'simulation, 90 in 100; same luck for both',
          ],
          ['Best of all', `in ${Math.round(100 * chanceBest)} of 100 cases`, 'what could still be learnt'],
        ]
  return {
    title: 'The range',
    fine: true,
    says: `All that it will cost: ${lower(row.name)}.`,
    blocks: [
      {
        is: 'table',
        heads: ['', 'Money', 'Kind of doubt'],
        rows: [
          [
            'Expected',
            `${money(row.cost.mean)} ± ${money(ninety * row.cost.standardError)}`,
            'simulation, 90 in 100; more runs narrow it',
          ],
          [
            '10, 50 and 90 in 100 below',
            `${money(low)}; ${money(middle)}; ${money(high)}`,
            'the world; no running narrows it',
          ],
          ...against,
        ],
      },
    ],
  }
}

function alternatives({ rows, model, report }: BriefOf): BriefPassage {
  const { best } = report.verdict
  const whole = (amount: number) => Math.round(amount).toLocaleString('en-GB')
  const money = moneyIn.bind(undefined, model.currency)
  const told = rows.map((row): BriefRange => {
    const { low, middle, high } = row.costSpread
    const isBest = row.id === best && row.barred === undefined
    const dearer = `${row.against.mean < 0 ? '−' : '+'}\u00a0${whole(Math.abs(row.against.mean))}\u00a0±\u00a0${whole(ninety * row.against.standardError)}`
    return {
      name: row.name,
      ...(isBest ? { tag: 'Best in money' as const } : {}),
      ...(row.barred === undefined ? {} : { tag: 'Barred' as const, why: row.barred }),
      low,
      middle,
      high,
      expected: row.cost.mean,
      drawn: `${row.name}: one in ten below ${money(low)}, even chance ${money(middle)}, one in ten above ${money(high)}`,
      cells: [
        whole(row.cost.mean),
        row.id === best ? '' : dearer,
        sayAYear(row.daysWithoutPerYear.mean),
        sayAYear(row.stopsPerYear.mean),
        sayOnceIn(row.dangers),
      ],
    }
  })
  const years = sayCount(model.horizonYears, 'year')
  return {
    title: 'Alternatives',
    says: `All that each costs over ${years}. Line: eight histories in ten; bar: even chance; ring: expected. ±: the simulation’s doubt of the difference, history by history, 90 in 100. Ranges overlap and settle nothing; the difference does.`,
    blocks: [
      {
        is: 'ranges',
        heads: [
          'Alternative',
          `${model.currency} thousand: 10, 50, 90 in 100`,
          `Expected, ${model.currency}`,
          'Dearer by',
          'Days without power a year',
          'Stops a year',
          'A danger once in',
        ],
        rows: told,
      },
    ],
  }
}

function nameIn({ rows }: Pick<BriefOf, 'rows'>): (id: string) => string {
  return (id) => rows.find((row) => row.id === id)?.name ?? id
}
