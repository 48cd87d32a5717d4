/**
 * What can be typed into an entry of each kind: its fields in the order in which they are asked.
 *
 * @module
 */

import { activityStates, needed, weekdays } from '../../logbook/bodies-activity.js'
import { orderStates } from '../../logbook/bodies-order.js'
import { readingUnits } from '../../logbook/bodies-seen.js'
import { excitationKinds, qualities } from '../../logbook/bodies-set.js'
import { deeds, leavable, paymentStages } from '../../logbook/bodies-work.js'
import type { Kind } from '../../logbook/kinds.js'

/** One thing to type or to choose. `key` is its path in the body: `workHours.owner`. */
export type Field = Single | Rows

export interface Single {
  readonly key: string
  readonly takes: Takes
  /** Asked only where someone wants to say more. */
  readonly more?: true
  /** Chosen already in a new entry. */
  readonly usual?: string
}

export type Takes =
  | { readonly as: 'number'; readonly unit?: string }
  | { readonly as: 'money' }
  | { readonly as: 'text' }
  | { readonly as: 'lines' }
  | { readonly as: 'name' }
  | { readonly as: 'date' }
  | { readonly as: 'yes-no' }
  | {
      readonly as: 'choice'
      readonly options: readonly string[]
      /** What they are called, where no word of the form's own is it. */
      readonly names?: Readonly<Record<string, string>>
    }
  /** Nothing chosen is an empty list, or with `perhaps` nothing said. */
  | { readonly as: 'several'; readonly options: readonly string[]; readonly perhaps?: true }
  | { readonly as: 'numbers' }
  /** Several short texts, commas between. */
  | { readonly as: 'texts' }
  /** A share, typed in hundredths. */
  | { readonly as: 'percent' }
  /** One month; several, ticked. */
  | { readonly as: 'month' }
  | { readonly as: 'months' }
  /** Points of a price that grows with days. */
  | { readonly as: 'points' }
  | { readonly as: 'part' }
  | { readonly as: 'parts' }
  /** A way of failing of the part that stands in the field named. */
  | { readonly as: 'mode'; readonly of: string }
  | { readonly as: 'check' }
  | { readonly as: 'danger' }
  | { readonly as: 'unit' }

/** Rows that each hold the same fields. */
export interface Rows {
  readonly key: string
  readonly rows: readonly Single[]
  /** So many are open in a new entry. */
  readonly least: number
  readonly more?: true
}

export function isRows(field: Field): field is Rows {
  return 'rows' in field
}

/** Kinds that are written from any page, in the order in which they are offered. */
export const quickKinds = ['hours', 'finding', 'reading', 'stop', 'work', 'quote', 'bill', 'note'] as const

const number = (key: string, unit?: string): Single => ({
  key,
  takes: unit === undefined ? { as: 'number' } : { as: 'number', unit },
})
const money = (key: string): Single => ({ key, takes: { as: 'money' } })
const text = (key: string): Single => ({ key, takes: { as: 'text' } })
const lines = (key: string): Single => ({ key, takes: { as: 'lines' } })
const texts = (key: string): Single => ({ key, takes: { as: 'texts' } })
const choice = (key: string, options: readonly string[], usual?: string): Single => ({
  key,
  takes: { as: 'choice', options },
  ...(usual === undefined ? {} : { usual }),
})
const yesNo = (key: string, usual?: string): Single => ({
  key,
  takes: { as: 'yes-no' },
  ...(usual === undefined ? {} : { usual }),
})
const more = <T extends Field>(field: T): T => ({ ...field, more: true })

const percent = (key: string): Single => ({ key, takes: { as: 'percent' } })
/** Hours of a day by what is going on aboard. */
const hoursOf = (key: string): readonly Single[] =>
  ['day', 'evening', 'night', 'cooking', 'laundry', 'charging'].map((occasion) =>
    number(`${key}.${occasion}`, 'h'),
  )

const part = (key = 'part'): Single => ({ key, takes: { as: 'part' } })
const mode = (key = 'mode', of = 'part'): Single => ({ key, takes: { as: 'mode', of } })
const meter = more(number('meterHours', 'h'))
const remark = more(lines('remark'))
const measured: readonly Single[] = [text('name'), number('value'), { key: 'unit', takes: { as: 'unit' } }]
const tax: readonly Single[] = [more(yesNo('tax.included')), more(number('tax.percent', '%'))]

/** What is put right in an alternative. */
export const alternativeParts: Rows = {
  key: 'parts',
  rows: [
    part(),
    choice('outcome', ['renewed', 'reconditioned', 'cleared', 'patched']),
    more(mode()),
    more(number('quality')),
    more(percent('agesLess')),
  ],
  least: 1,
}

const fields: Readonly<Partial<Record<Kind, readonly Field[]>>> = {
  hours: [number('meterHours', 'h'), more(number('starts')), remark],
  'meter-changed': [number('newMeterHours', 'h'), number('oldMeterHours', 'h'), remark],
  finding: [
    { key: 'about', rows: [part(), mode()], least: 1 },
    choice('verdict', ['nothing-seen', 'defect-seen', 'unsure']),
    lines('seen'),
    more({ key: 'check', takes: { as: 'check' } }),
    meter,
    remark,
  ],
  reading: [
    { key: 'test', takes: { as: 'check' } },
    part(),
    { key: 'values', rows: measured, least: 1 },
    more({ key: 'conditions', rows: measured, least: 0 }),
    more({ key: 'answers', rows: [text('name'), text('is')], least: 0 }),
    more(text('testedBy')),
    more(text('instrument')),
    meter,
    remark,
  ],
  'passed-over': [text('about'), lines('because'), remark],
  stop: [
    number('daysWithoutPower', 'd'),
    yesNo('curedSameDay', 'no'),
    part('cause.part'),
    mode('cause.mode', 'cause.part'),
    lines('seen'),
    meter,
    remark,
  ],
  work: [
    {
      key: 'parts',
      rows: [
        part(),
        choice('did', deeds),
        choice('was', ['failed', 'defective', 'sound']),
        more(choice('quality', qualities)),
        more(mode()),
      ],
      least: 1,
    },
    choice('by', ['owner', 'workshop', 'both']),
    choice('why', ['failed', 'found', 'preventive', 'not-known']),
    lines('what'),
    money('cost'),
    more(number('workHours.owner', 'h')),
    more(number('workHours.paid', 'h')),
    more({ key: 'job', takes: { as: 'name' } }),
    meter,
    remark,
  ],
  quote: [
    { key: 'job', takes: { as: 'name' } },
    money('amount'),
    choice('firmness', ['firm', 'estimate']),
    yesNo('subjectToStripDown'),
    { key: 'covers.parts', rows: [part(), choice('did', deeds)], least: 1 },
    { key: 'excludes', takes: { as: 'several', options: leavable } },
    lines('what'),
    text('offeredBy'),
    more({ key: 'includes', takes: { as: 'several', options: leavable, perhaps: true } }),
    more(lines('alsoExcludes')),
    ...tax,
    more(number('days', 'd')),
    more({ key: 'readyBy', takes: { as: 'date' } }),
    more(number('daysOut', 'd')),
    more(number('guaranteeMonths', 'months')),
    more({ key: 'validUntil', takes: { as: 'date' } }),
    more({
      key: 'stagePayments',
      rows: [
        choice('when', paymentStages),
        percent('share'),
        money('amount'),
        { key: 'at', takes: { as: 'date' } },
      ],
      least: 0,
    }),
    more(text('currency')),
    remark,
  ],
  bill: [
    money('amount'),
    text('what'),
    text('billedBy'),
    ...tax,
    more({ key: 'parts', takes: { as: 'parts' } }),
    more({ key: 'job', takes: { as: 'name' } }),
    remark,
  ],
  particulars: [
    part(),
    text('number'),
    { key: 'answers', rows: [{ key: 'question', takes: { as: 'name' } }, text('answer')], least: 1 },
    more({ key: 'piece', takes: { as: 'name' } }),
    remark,
  ],
  order: [
    choice('state', orderStates),
    {
      key: 'lines',
      rows: [
        part(),
        { key: 'piece', takes: { as: 'name' } },
        number('count'),
        text('number'),
        yesNo('fits'),
        text('differs'),
      ],
      least: 1,
    },
    text('supplier'),
    { key: 'expected', takes: { as: 'date' } },
    money('price'),
    ...tax,
    more({ key: 'job', takes: { as: 'name' } }),
    remark,
  ],
  note: [lines('text')],
  fitted: [part(), choice('quality', qualities), meter, more(text('partNumber')), remark],
  letdowns: [number('times'), number('years', 'years'), remark],
  complete: [{ key: 'of', takes: { as: 'several', options: ['stops', 'work'] } }, remark],
  'danger-safe': [{ key: 'danger', takes: { as: 'danger' } }, lines('how'), part('at.part'), remark],
  decision: [
    lines('choice'),
    lines('because'),
    money('walkAwayPrice'),
    more({ key: 'job', takes: { as: 'name' } }),
    more({ key: 'parts', rows: [part(), choice('did', deeds)], least: 0 }),
    remark,
  ],
  overrule: [text('path'), number('value'), lines('because')],
  set: [
    text('name'),
    number('ratingKw', 'kW'),
    { key: 'volts', takes: { as: 'numbers' } },
    number('hertz', 'Hz'),
    number('rpm', 'rpm'),
    choice('excitation', excitationKinds),
    { key: 'built', takes: { as: 'date' } },
    more({ key: 'aboardSince', takes: { as: 'date' } }),
    more(number('hoursWhenAboard', 'h')),
    more(choice('governor', ['mechanical', 'electronic'])),
    more(choice('fuelSolenoid', ['energised-to-run', 'energised-to-stop'])),
    more({ key: 'has', takes: { as: 'parts' } }),
    more({ key: 'hasNot', takes: { as: 'parts' } }),
    choice('standing', ['in-use', 'spare', 'gone']),
    remark,
  ],
  boat: [
    text('name'),
    number('lengthM', 'm'),
    choice('water', ['salt', 'fresh']),
    number('priceFactor'),
    { key: 'monthsInUse', takes: { as: 'months' } },
    remark,
  ],
  terms: [
    number('yearsKept', 'years'),
    number('yearsKeptAtLeast', 'years'),
    number('yearsKeptAtMost', 'years'),
    money('ownPerHour'),
    money('paidPerHour'),
    money('travelPerTrip'),
    money('mostInOneYear'),
    money('doWithoutPrice'),
    money('doWithoutPerYear'),
    number('doWithoutShortPercent', '%'),
    number('taxPercent', '%'),
    money('fuelPerLitre'),
    number('realInterestPercent', '%'),
    percent('diligence'),
    yesNo('learnFromJobs'),
    {
      key: 'withoutPower',
      rows: [
        { key: 'months', takes: { as: 'months' } },
        { key: 'curve', takes: { as: 'points' } },
      ],
      least: 1,
    },
    remark,
  ],
  use: [
    {
      key: 'months',
      rows: [
        { key: 'month', takes: { as: 'month' } },
        number('hours', 'h'),
        number('starts'),
        percent('needShare'),
        percent('lowLoadShare'),
      ],
      least: 1,
    },
    remark,
  ],
  links: [
    choice('state', ['as-found', 'as-left']),
    choice('winding', ['four-leads', 'twelve-leads', 'own']),
    texts('joined'),
    texts('lines'),
    texts('sensing'),
    texts('labels'),
    more(choice('marks', ['nema', 'iec'])),
    more(texts('coils')),
    remark,
  ],
  'apart-step': [
    { key: 'job', takes: { as: 'name' } },
    number('n'),
    lines('what'),
    { key: 'leads', rows: [text('lead'), text('label'), text('from')], least: 0 },
    texts('joined'),
    text('bag.label'),
    number('bag.count'),
    text('bag.size'),
    more(number('torque.nm', 'N·m')),
    more(text('torque.source')),
    more(text('access')),
    remark,
  ],
  'refit-step': [
    { key: 'job', takes: { as: 'name' } },
    text('step'),
    number('torqueNm', 'N·m'),
    lines('differs'),
    remark,
  ],
  load: [
    { key: 'id', takes: { as: 'name' } },
    { key: 'is', takes: { as: 'name' } },
    text('name'),
    number('runW', 'W'),
    number('powerFactor'),
    number('lockedRotorA', 'A'),
    choice('basis', ['nameplate', 'measured']),
    yesNo('softStarter'),
    number('shed'),
    more(number('count')),
    more(number('volts', 'V')),
    more(choice('leg', ['one', 'two', 'both'])),
    more(number('horsepower', 'hp')),
    more(choice('codeLetter', [...'ABCDEFGHJKLMNPRSTUV'])),
    more(percent('duty')),
    more(choice('season', ['all', 'cooling', 'heating', 'with-climate'])),
    ...hoursOf('hours').map(more),
    remark,
  ],
  habits: [
    ...hoursOf('setHours'),
    ...['hot', 'warm', 'mild', 'cold'].map((season) => number(`days.${season}`, 'd')),
    remark,
  ],
  space: [
    number('engineSpaceC', 'C'),
    number('altitudeM', 'm'),
    percent('humidity'),
    number('seaWaterC', 'C'),
    {
      key: 'wayOut',
      rows: [text('name'), number('widthMm', 'mm'), number('heightMm', 'mm')],
      least: 1,
    },
    number('liftKg', 'kg'),
    number('exhaustHoseMm', 'mm'),
    number('exhaustRiseMm', 'mm'),
    number('rawWaterHoseMm', 'mm'),
    number('ventCm2', 'cm²'),
    remark,
  ],
  candidate: [
    { key: 'id', takes: { as: 'name' } },
    text('name'),
    number('ratingKw', 'kW'),
    money('price'),
    money('fitting'),
    number('weightKg', 'kg'),
    ...['lengthMm', 'widthMm', 'heightMm'].map((edge) => number(edge, 'mm')),
    more(number('ratingKva', 'kVA')),
    more(number('rpm', 'rpm')),
    more(choice('excitation', excitationKinds)),
    more(choice('aspiration', ['natural', 'turbo', 'turbo-cooled'])),
    more(number('sweptLitres', 'l')),
    more(number('transientReactancePercent', '%')),
    ...['lengthMm', 'widthMm', 'heightMm'].map((edge) => more(number(`largestPiece.${edge}`, 'mm'))),
    more(number('largestPiece.weightKg', 'kg')),
    more(number('deliveryDays', 'd')),
    more(number('fittingDays', 'd')),
    more(number('guaranteeYears', 'years')),
    more(number('used.years', 'years')),
    more(number('used.hours', 'h')),
    remark,
  ],
  activity: [
    { key: 'job', takes: { as: 'name' } },
    { key: 'name', takes: { as: 'name' } },
    text('what'),
    texts('after'),
    ...['low', 'usual', 'high'].map((end) => number(`days.${end}`, 'd')),
    { key: 'needs', takes: { as: 'several', options: needed, perhaps: true } },
    yesNo('inOneRun'),
    choice('state', activityStates),
    remark,
  ],
  'free-days': [
    choice('who', needed),
    { key: 'weekdays', takes: { as: 'several', options: weekdays, perhaps: true } },
    texts('days'),
    texts('notDays'),
    more({ key: 'months', rows: [{ key: 'month', takes: { as: 'month' } }, percent('share')], least: 0 }),
    remark,
  ],
  alternative: [
    text('name'),
    choice('now', ['leave', 'mend', 'replace', 'give-up']),
    alternativeParts,
    { key: 'job', takes: { as: 'name' } },
    money('besides'),
    money('price'),
    number('days', 'd'),
    text('replaceWith'),
    number('later.year', 'years'),
    text('later.with'),
    remark,
  ],
}

/** The fields of a kind; what has none is a kind that is shown and not typed. */
export function fieldsOf(kind: Kind): readonly Field[] {
  return fields[kind] ?? []
}

/** Kinds that belong to the boat and never to a set. */
export const ofBoatOnly: readonly Kind[] = [
  'boat',
  'terms',
  'free-days',
  'load',
  'house-rule',
  'photograph-removed',
]

/** Units in which a reading may be typed: those that are kept, and those that are only spoken. */
export const typedUnits: readonly string[] = [...readingUnits, 'F', 'psi', 'bar', 'US gal', 'imp gal', 'hp']

/** Every key under which something can stand in a form, that of a row before that of its list. */
export function keysOf(fields: readonly Field[]): readonly string[] {
  const ofRows = fields
    .filter(isRows)
    .flatMap(({ key, rows }) =>
      Array.from({ length: 20 }, (_, row) => rows.map((inner) => `${key}.${row}.${inner.key}`)).flat(),
    )
  return [...fields.map(({ key }) => key), ...ofRows]
}
