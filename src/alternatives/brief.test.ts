import { expect, test } from 'vitest'
import { shippedCatalogue as catalogue } from '../../test/shipped-limits.js'
import { trialEntry, trialId } from '../../test/trial-log.js'
import { type LifeModelInput, lifeModelSchema } from '../forecast/life-model.js'
import { posteriorOf } from '../forecast/posterior.js'
import type { Entry } from '../logbook/kinds.js'
import { registerOf } from '../register/register.js'
import type { WhatChanges, WorthFindingOut } from './bearing.js'
import { type Brief, briefInWords, briefOf } from './brief.js'
import type { BriefBlock } from './brief-blocks.js'
import type { BriefSubject } from './brief-subject.js'
import { cautions } from './cautions.js'
import { comparedRows } from './compared.js'
import { reportOf } from './report.js'
import { moneyIn } from './say.js'
import { sayTurns } from './say-bearing.js'
import { simulate } from './simulate.js'

const money = (amount: number) => moneyIn('GBP', amount)
const nothingToFindOut: WorthFindingOut = { looks: [], tooSmall: 3, unvalued: 0, quantities: [] }
const wet = 'Do not energise the set: the winding reads 0.30 MΩ and must read 1 MΩ or more.'

/** An old pump that fails often, a quote to renew it where there is one, and a new set. */
function modelOf({ quote = 0, bar = [] as readonly string[], newPrice = 9000 }): LifeModelInput {
  const job = { parts: [{ part: 'pump' }], ...(quote > 0 ? { quote: { price: quote } } : {}) }
  const all = [
    { id: 'leave', name: 'Leave it', now: 'leave' as const },
    { id: 'mend', name: 'Mend the pump', now: job },
    { id: 'replace', name: 'Fit a new set', now: { replaceWith: 'new' } },
  ]
  return {
    type: 'gensettle/life-model',
    version: 1,
    currency: 'GBP',
    horizonYears: 8,
    setFactor: { boatLogSd: 0.2, setLogSd: 0.2 },
    candidates: [{ id: 'new', name: 'a new set', price: { median: newPrice, logSd: 0.1 } }],
    dangers: { flood: 0.003 },
    parts: [
      {
        id: 'pump',
        name: 'Raw-water pump shaft seal',
        age: { years: 9 },
        repair: { price: 2500 },
        modes: [{ id: 'weeping', clock: 'years', shape: 3, scale: 7, dangers: ['flood'] }],
      },
    ],
    alternatives: all.map((one) => (bar.includes(one.id) ? { ...one, barred: wet } : one)),
  }
}

const log: readonly Entry[] = [
  trialEntry(1, 'boat', { name: 'Trial', currency: 'GBP', words: 'british' }, { from: '2020-01-01' }),
  trialEntry(2, 'set', { ratingKw: 7, built: '2010' }, { from: '2020-01-01' }),
  trialEntry(3, 'terms', { yearsKept: 8, paidPerHour: 60 }, { from: '2021-01-01' }),
  trialEntry(
    4,
    'quote',
    {
      job: 'pump',
      amount: 900,
      firmness: 'estimate',
      subjectToStripDown: true,
      excludes: [],
      covers: { parts: [] },
    },
    { from: '2024-01-01' },
  ),
]

function subjectOf(of: Parameters<typeof modelOf>[0], more: Partial<BriefSubject> = {}): BriefSubject {
  const model = lifeModelSchema.parse(modelOf(of))
  const samples = simulate(model, posteriorOf(model, { seed: 2 }), { seed: 4, from: 0, count: 2000 })
  const report = reportOf(model, samples, 4)
  return {
    register: registerOf({ entries: log, boat: 'trial', set: 'main', asOf: '2024-05-12', catalogue }),
    model,
    stops: [],
    report,
    rows: comparedRows(model, samples, report.verdict.best),
    findingOut: nothingToFindOut,
    changes: null,
    when: null,
    restsOn: { pump: [trialId(4)] },
    assumed: ['nobody said a thing'],
    problems: [],
    catalogue,
    numbers: new Map(log.map(({ id }, at) => [id, at + 1])),
    seed: 4,
    program: '0.1.0',
    demonstration: false,
    ...more,
  }
}

function textOf(block: BriefBlock): string {
  return JSON.stringify(block).replaceAll('\u00a0', ' ')
}

/** What a passage says; empty where there is none of that title. */
function passage(brief: Brief, title: string): string {
  return brief.passages
    .filter((one) => one.title === title)
    .flatMap(({ blocks }) => blocks.map(textOf))
    .join('\n')
}

test('each number of the answer, the range and the table is the report’s own', () => {
  const subject = subjectOf({ quote: 900 })
  const { report, rows } = subject
  const brief = briefOf(subject)
  const { price, findingOut, simulation, quote } = report.walkAway!
  const question = passage(brief, 'The question')
  const best = rows.find(({ id }) => id === report.verdict.best)!
  expect(question).toContain(best.name)
  expect(question).toContain(money(report.verdict.saving))
  expect(question).toContain(`in ${Math.round(100 * report.verdict.chanceBest)} cases of 100`)
  const telephone = passage(brief, 'For the telephone')
  for (const amount of [price, findingOut.low, findingOut.high, simulation.low, simulation.high, quote]) {
    expect(telephone).toContain(money(amount))
  }
  expect(telephone).toContain('subject to what is found on stripping down')
  expect(telephone).toContain('entry 4')
  const range = passage(brief, 'The range')
  const { low, middle, high } = best.costSpread
  for (const amount of [best.cost.mean, low, middle, high]) expect(range).toContain(money(amount))
  expect(range).toContain('no running narrows it')
  const table = passage(brief, 'Alternatives')
  for (const row of rows) expect(table).toContain(Math.round(row.cost.mean).toLocaleString('en-GB'))
  expect(table.match(/Best in money/g)).toHaveLength(1)
  expect(brief.colophon).toMatch(/Gensettle 0\.1\.0, as of 12.May.2024, seed 4, 2,000 histories/)
  for (const caution of cautions) expect(passage(brief, 'Cautions')).toContain(caution)
  expect(passage(brief, 'Taken for granted')).toContain('Nobody said a thing.')
  expect(passage(brief, 'What it rests on')).toContain('1 of the log’s 4 entries')
})

test('whether the quote is under or above the price to walk away from is said of it', () => {
  const under = briefOf(subjectOf({ quote: 900 }))
  const above = briefOf(subjectOf({ quote: 4900 }))
  expect(passage(under, 'The question')).toContain('if the quote stays under')
  expect(passage(above, 'The question')).toContain('unless the quote falls to')
})

test('without a quote no price is named, and none is asked about', () => {
  const subject = subjectOf({})
  const brief = briefOf(subject)
  expect(subject.report.walkAway).toBeNull()
  expect(passage(brief, 'For the telephone')).toContain('No quote is in hand')
  expect(passage(brief, 'For the telephone')).not.toContain('£')
  expect(passage(brief, 'The question')).not.toContain('quote')
})

test('a stop comes before everything, with what it bars; what is barred says so and is not the answer', () => {
  const subject = subjectOf({ quote: 900, bar: ['leave', 'mend'] })
  const brief = briefOf(subject)
  expect(brief.passages[0]!.title).toBe('Before it is started')
  expect(passage(brief, 'Before it is started')).toContain(wet)
  expect(passage(brief, 'Before it is started')).toContain('It bars: Leave it; Mend the pump.')
  expect(passage(brief, 'The question')).toContain('Fit a new set: nothing else is open.')
  expect(passage(brief, 'Alternatives').match(/"Barred"/g)).toHaveLength(2)
  expect(passage(brief, 'What would change it')).toContain('Only one alternative is open')
})

test('what was passed over stands before everything too, with its reason, and bars nothing', () => {
  const passedOver = { because: 'dried twice, rewind is booked', date: '2024-05-02' }
  const stop = { line: 'insulation', by: 'winding', parts: ['pump'], why: wet, passedOver } as const
  const brief = briefOf(subjectOf({ quote: 900 }, { stops: [stop] }))
  expect(passage(brief, 'Before it is started')).toContain('Passed over, and bars nothing: ')
  expect(passage(brief, 'Before it is started')).toContain('2 May 2024: dried twice, rewind is booked')
  expect(passage(brief, 'Alternatives')).not.toContain('"Barred"')
})

test('where everything is barred nothing is advised', () => {
  const brief = briefOf(subjectOf({ bar: ['leave', 'mend', 'replace'] }))
  expect(passage(brief, 'The question')).toContain('every alternative is barred')
  expect(passage(brief, 'Alternatives')).not.toContain('Best in money')
})

test('a tie is called one, with what tells the two apart', () => {
  const subject = subjectOf({})
  const { report } = subject
  const verdict = { ...report.verdict, clearness: 'too-close' as const }
  const said = passage(briefOf({ ...subject, report: { ...report, verdict } }), 'The question')
  expect(said).toContain('Too close to call between two')
  expect(said).toContain('A toss-up')
  expect(said).toMatch(/[Dd]ays without power, .* a year against /)
  expect(said).not.toContain('Clear.')
})

test('the turns that exist are told, and that nothing else changes the answer', () => {
  const lead = { low: { value: 100, error: 5 }, high: { value: -50, error: 5 } }
  const turning: WhatChanges['turning'] = {
    best: 'leave',
    barred: [],
    inputs: [
      { id: 'years-kept', now: 8, low: 4, high: 16, lead, above: { at: 11, to: 'replace' } },
      { id: 'fuel-price', now: 1, low: 0.5, high: 2, lead: { low: lead.low, high: lead.low } },
    ],
  }
  const subject = subjectOf({}, { changes: { turning, maps: [] } })
  const brief = briefOf(subject)
  const said = passage(brief, 'What would change it')
  expect(said).toContain(sayTurns(subject.model, turning.inputs[0]!))
  expect(said).toContain('Nothing else that was tried does: fuel.')
  const sources = passage(brief, 'Sources')
  expect(sources).toContain('your log, entry 3')
  expect(sources).toContain('practice')
})

test('that nothing is worth finding out is said, and a look that pays comes first', () => {
  expect(passage(briefOf(subjectOf({})), 'What to find out first')).toContain(
    'Nothing is worth finding out first',
  )
})

test('other words reach every sentence and leave the form as it is', () => {
  const brief = briefOf(subjectOf({ quote: 900 }))
  const same = briefInWords(brief, (sentence) => sentence)
  expect(same).toEqual(brief)
  const loud = briefInWords(brief, (sentence) => sentence.toUpperCase())
  expect(loud.passages[0]!.title).toBe(brief.passages[0]!.title.toUpperCase())
  expect(loud.passages.flatMap(({ blocks }) => blocks.map(({ is }) => is))).toEqual(
    brief.passages.flatMap(({ blocks }) => blocks.map(({ is }) => is)),
  )
})
