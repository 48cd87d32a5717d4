/**
 * The lower half of a brief: what would change the answer, what to find out, when to replace, what it all rests on.
 *
 * @module
 */

import type { BriefBlock, BriefPassage } from './brief-blocks.js'
import { briefSources } from './brief-sources.js'
import type { BriefOf } from './brief-subject.js'
import { lower, sayAll, sayCount, sayEvents, upper } from './brief-words.js'
import { cautions } from './cautions.js'
import type { Compared } from './compared.js'
import { moneyIn } from './say.js'
import {
  sayBarred,
  sayFirst,
  sayInput,
  sayInputValue,
  sayQuantity,
  sayTurns,
  sayWhen,
} from './say-bearing.js'

export function groundPassages(of: BriefOf): BriefPassage[] {
  return [
    changes(of),
    findOut(of),
    whenNot(of),
    restsOn(of),
    ...assumed(of),
    dangers(of),
    sources(of),
    {
      title: 'Cautions',
      fine: true,
      blocks: [{ is: 'list', items: cautions }],
    },
    {
      title: 'Decided',
      blocks: [
        { is: 'signatures', lines: ['Owner', 'Read by', 'Day', `Quote accepted, ${of.model.currency}`] },
      ],
    },
  ]
}

function changes({ model, changes }: BriefOf): BriefPassage {
  const title = 'What would change it'
  if (changes === null) {
    return {
      title,
      blocks: [{ is: 'text', text: 'Only one alternative is open: nothing can change the answer.' }],
    }
  }
  const { inputs } = changes.turning
  const turns = inputs.filter(({ below, above }) => below !== undefined || above !== undefined)
  const others = inputs.filter((input) => !turns.includes(input)).map(({ id }) => sayInput(id))
  const items = [
    ...turns.map(
      (input) =>
        `${upper(sayInput(input.id))}${input.now === 1 ? '' : ` (now ${sayInputValue(model, input.id, input.now)})`}. ${sayTurns(model, input)}`,
    ),
    ...sayBarred(model, changes.turning),
  ]
  const nothing = `${turns.length === 0 ? 'Nothing that was tried changes it' : 'Nothing else that was tried does'}: ${sayAll(others)}.`
  return {
    title,
    says: 'Each by itself, most from half to twice.',
    fine: true,
    blocks: [
      ...(items.length === 0 ? [] : [{ is: 'list', items } as const]),
      ...(others.length === 0 ? [] : [{ is: 'text', text: nothing } as const]),
    ],
  }
}

function findOut({ model, findingOut }: BriefOf): BriefPassage {
  const money = moneyIn.bind(undefined, model.currency)
  const known = findingOut.quantities
    .filter(({ pays }) => pays)
    .slice(0, 2)
    .map(({ id, worth, error }) => {
      const { what, how } = sayQuantity(id)
      return `To know for certain ${what} would be worth ${money(worth)} ± ${money(error)} at the very most (${how}).`
    })
  return {
    title: 'What to find out first',
    says: '±: one standard error.',
    blocks: [sayFirst(model, findingOut), ...known].map((text): BriefBlock => ({ is: 'text', text })),
  }
}

/** Which year, and up to which job: what is paid beside it is told on the page of alternatives. */
function whenNot({ model, report, rows, when }: BriefOf): BriefPassage {
  const title = 'When to replace, if not now'
  const text = (said: string): BriefPassage => ({ title, blocks: [{ is: 'text', text: said }] })
  if (when === null) return text('Nothing can be said: no other set is among the alternatives.')
  const now = model.alternatives.find(({ id }) => id === report.verdict.best)?.now
  if (typeof now === 'object' && 'replaceWith' in now) return text('Now: that is the answer.')
  const [, ...said] = sayWhen(model, when)
  const keeping = rows.find(({ id }) => id === when.keeping)?.name ?? when.keeping
  const kept = report.verdict.best === when.keeping ? '' : `Were the set kept (${lower(keeping)}): `
  const [pays = '', limit = ''] = said
  return text(`${kept}${kept === '' ? pays : lower(pays)} ${limit}`)
}

function restsOn(of: BriefOf): BriefPassage {
  const { model, report, register, restsOn, entries, numbers, seed, heard = [] } = of
  const money = moneyIn.bind(undefined, model.currency)
  const parts = Object.entries(restsOn)
    .filter(([, ids]) => ids.length > 0)
    .sort((a, b) => b[1].length - a[1].length)
  const all = new Set(parts.flatMap(([, ids]) => ids))
  const name = (id: string) => lower((model.parts.find((part) => part.id === id)?.name ?? id).split(',')[0]!)
  const most = parts.slice(0, 3).map(([part, ids]) => `${name(part)} (${entries(ids, 4)})`)
  const log =
    all.size === 0
      ? 'The catalogue only: no entry bears on any part of the set yet.'
      : `The catalogue, and ${all.size.toLocaleString('en-GB')} of the log’s ${sayCount(numbers.size, 'entry', 'entries')}, on ${sayCount(parts.length, 'part')} of the set; most on the ${sayAll(most)}.`
  const given = (field: string) => {
    const entry = register.given[`terms.${field}`]
    return entry === undefined ? 'taken' : entries([entry])
  }
  const { labour, use, mostPayableInOneYear, realInterestPerYear } = model
  const hours = Math.round(use.hoursByMonth.reduce((sum, each) => sum + each, 0))
  const terms = [
    `${sayCount(model.horizonYears, 'year')} kept (${given('yearsKept')})`,
    `${hours.toLocaleString('en-GB')}\u00a0h a year (${register.use === undefined ? 'taken' : entries([register.use.entry])})`,
    `a paid hour ${money(labour.paidPerHour)} (${given('paidPerHour')})`,
    `an hour of one’s own ${money(labour.ownPerHour)} (${given('ownPerHour')})`,
    `real interest ${Number((100 * Math.expm1(realInterestPerYear)).toFixed(1))}\u00a0% (${given('realInterestPercent')})`,
    ...(mostPayableInOneYear === undefined
      ? []
      : [`at most ${money(mostPayableInOneYear)} in one year (${given('mostInOneYear')})`]),
  ]
  return {
    title: 'What it rests on',
    fine: true,
    blocks: [
      { is: 'text', text: log },
      {
        is: 'text',
        text: `Reckoned with ${sayAll(terms)}. ${report.histories.toLocaleString('en-GB')} histories of each alternative, seed ${seed}, each with the same weather and luck for all of them.`,
      },
      ...heard.map((text) => ({ is: 'text', text }) as const),
    ],
  }
}

function assumed({ assumed, problems }: BriefOf): BriefPassage[] {
  const items = [
    ...assumed.map((line) => `${upper(line)}.`),
    ...problems.map(({ path, found }) => `Could not be used: ${path}, ${found}.`),
  ]
  return items.length === 0
    ? []
    : [
        {
          title: 'Taken for granted',
          says: 'Because nobody said.',
          fine: true,
          blocks: [{ is: 'text', text: items.join(' ') }],
        },
      ]
}

function dangers(of: BriefOf): BriefPassage {
  const { register, rows, report, catalogue } = of
  const { best, next } = report.verdict
  const row = (id: string | null) => rows.find((one) => one.id === id)
  const name = (id: string) => lower(catalogue.dangers.find((one) => one.id === id)?.name ?? id)
  const told = ({ name: alternative, dangersPerYear }: Compared) => {
    const kinds = Object.entries(dangersPerYear)
      .filter(([, perYear]) => perYear > 0)
      .sort((a, b) => b[1] - a[1])
      .slice(0, 3)
      .map(([id, perYear]) => `${name(id)} ${sayEvents(perYear)}`)
    return kinds.length === 0
      ? `${alternative}: none of the set is counted. What stands in its place has its own, not counted.`
      : `${alternative}: ${kinds.join('; ')}.`
  }
  const items = [
    ...register.openDangers
      .filter(({ madeSafeBy }) => madeSafeBy === undefined)
      .map(({ danger, entry }) => `Found and not made safe: ${name(danger)} (${of.entries([entry])}).`),
    ...[row(best), row(next)].flatMap((one) => (one === undefined ? [] : [told(one)])),
  ]
  return {
    title: 'Dangers',
    says: 'Counted, never priced.',
    fine: true,
    blocks: [{ is: 'list', items }],
  }
}

function sources(of: BriefOf): BriefPassage {
  const { register, model, catalogue, changes, rows, report, entries } = of
  const { best, next } = report.verdict
  const row = [best, next]
    .map((id) => rows.find((one) => one.id === id))
    .find((one) => one !== undefined && one.oftenest.length > 0)
  const told = briefSources({
    register,
    model,
    catalogue,
    inputs: changes?.turning.inputs ?? [],
    row,
    entry: (id) => entries([id]),
  })
  return {
    title: 'Sources',
    says: 'Of what moves the answer most, and fails oftenest.',
    fine: true,
    blocks: [
      {
        is: 'table',
        heads: ['Figure', 'Taken at', 'Comes from', 'How it is held'],
        rows: told.map(({ figure, value, from, held }) => [upper(figure), value, from, held]),
      },
    ],
  }
}
