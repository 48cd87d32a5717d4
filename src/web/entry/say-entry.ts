/**
 * An entry in a line of words, and what it cost.
 *
 * @module
 */

import type { Catalogue } from '../../catalogue/catalogue.js'
import { sayCase } from '../../faults/say-case.js'
import { sayActivity, sayFreeDays } from '../../job/activities-words.js'
import { sayApartStep, sayRefitStep } from '../../job/apart-words.js'
import { sayOrder, sayParticulars } from '../../job/order-words.js'
import { type Body, type Entry, isKind } from '../../logbook/kinds.js'
import { sayLinksEntry } from '../../proof/as-found.js'
import { isSpoken, spokenUnit, toSpoken } from '../../units/spoken.js'
import { choiceName } from '../words/entry/choices.js'
import { fieldName } from '../words/entry/fields.js'
import { unitName } from '../words/entry/units.js'
import { lowerFirst, sayDate, sayList, shortName, upperFirst } from '../words/say.js'
import { isRows } from './fields/field.js'
import { fieldsOf } from './fields.js'

/** For names of parts and checks, and for money. */
export interface SayWith {
  readonly catalogue: Catalogue | undefined
  readonly money: (amount: number) => string
  /** Units that the boat chose to speak in. */
  readonly units?: readonly (string | undefined)[]
}

/** What an entry tells, short enough for a row. */
export function sayEntry(entry: Entry, { catalogue, money, units = [] }: SayWith): string {
  const part = (id: string) => shortName(catalogue?.parts.find((one) => one.id === id)?.name ?? spaced(id))
  const said = saidBody(entry, { part, money, catalogue, measured: (one) => sayMeasured(one, units) })
  const remark = 'remark' in entry.body ? entry.body.remark : undefined
  const corrected = entry.corrects.length > 0
  return upperFirst([said, corrected ? undefined : remark].filter(Boolean).join('; '))
}

/** What was paid or asked for, where the entry tells it. */
export function paidIn(entry: Entry): number | undefined {
  if (isKind(entry, 'bill')) return entry.body.amount
  return isKind(entry, 'work') ? entry.body.cost : undefined
}

/** An amount in the boat's money. */
export function moneySayer(currency: string): (amount: number) => string {
  const form = new Intl.NumberFormat('en-GB', {
    style: 'currency',
    currency,
    currencyDisplay: 'narrowSymbol',
    maximumFractionDigits: 2,
    minimumFractionDigits: 0,
  })
  return (amount) => form.format(amount)
}

interface Words {
  readonly part: (id: string) => string
  readonly money: (amount: number) => string
  readonly catalogue: Catalogue | undefined
  readonly measured: (one: Measured) => string
}

type Measured = Body<'reading'>['values'][number]

/** "winding to frame 1.8 MΩ", in the unit that is spoken aboard. */
function sayMeasured({ name, value, unit }: Measured, units: readonly (string | undefined)[]): string {
  const spoken = spokenUnit(unit, units)
  const said = isSpoken(spoken) ? Number(toSpoken(value, spoken).toPrecision(4)) : value
  return `${spaced(name)} ${number(said)} ${unitName(spoken)}`
}

function saidBody(entry: Entry, { part, money, catalogue, measured }: Words): string {
  const choice = (key: string, option: string) => lowerFirst(choiceName(entry.kind, key, option))
  const parts = (list: readonly { readonly part: string }[]) =>
    sayList(
      [...new Set(list.map((one) => part(one.part)))].map((name, at) => (at === 0 ? name : lowerFirst(name))),
    )
  if (isKind(entry, 'hours')) return `${number(entry.body.meterHours)} h`
  if (isKind(entry, 'meter-changed')) return `A new meter, showing ${number(entry.body.newMeterHours)} h`
  if (isKind(entry, 'finding')) {
    const { about, verdict, seen, meterHours } = entry.body
    const what = seen ?? choice('verdict', verdict)
    return joined([`${parts(about)}: ${seen === undefined ? what : lowerFirst(what)}`, at(meterHours)])
  }
  if (isKind(entry, 'reading')) {
    const { test, part: of, values, conditions = [], meterHours } = entry.body
    const name = catalogue?.checks.find(({ id }) => id === test)?.name ?? spaced(test)
    const under = conditions.map(measured)
    const shown = `${values.map(measured).join(', ')}${under.length === 0 ? '' : ` (${under.join(', ')})`}`
    return joined([`${of === undefined ? shortName(name) : part(of)}: ${shown}`, at(meterHours)])
  }
  if (isKind(entry, 'stop')) {
    const { cause, seen, daysWithoutPower, curedSameDay, meterHours } = entry.body
    const without = curedSameDay
      ? 'cured the same day'
      : daysWithoutPower === 0
        ? ''
        : `${number(daysWithoutPower)} ${daysWithoutPower === 1 ? 'day' : 'days'} without power`
    return joined([seen ?? (cause ? `${part(cause.part)} failed` : 'It stopped'), without, at(meterHours)])
  }
  if (isKind(entry, 'work')) {
    const { parts: list, what, by, workHours } = entry.body
    const done = [...new Set(list.map(({ did }) => did))].map(
      (did) => `${parts(list.filter((one) => one.did === did))} ${choice('did', did)}`,
    )
    const own = workHours?.owner === undefined ? '' : `own work ${number(workHours.owner)} h`
    return joined([what ?? done.join('; '), by === 'owner' ? '' : `by ${choice('by', by)}`, own])
  }
  if (isKind(entry, 'quote')) {
    const { what, job, amount, firmness, subjectToStripDown, excludes } = entry.body
    const without = excludes.map((one) => choice('excludes', one))
    return joined([
      what ?? upperFirst(spaced(job)),
      money(amount),
      choice('firmness', firmness),
      subjectToStripDown ? 'subject to strip-down' : '',
      without.length === 0 ? '' : `${sayList(without)} left out`,
    ])
  }
  if (isKind(entry, 'bill')) {
    const { what, billedBy, job } = entry.body
    return joined([what ?? (job === undefined ? 'A bill' : upperFirst(spaced(job))), billedBy ?? ''])
  }
  if (isKind(entry, 'fitted')) {
    const { part: id, quality, originalToSet } = entry.body
    return `${part(id)}, ${originalToSet ? 'as the set came' : choice('quality', quality)}`
  }
  if (isKind(entry, 'note')) return entry.body.text
  if (isKind(entry, 'activity')) return upperFirst(sayActivity(entry.body))
  if (isKind(entry, 'free-days')) return upperFirst(sayFreeDays(entry.body))
  if (isKind(entry, 'order')) return sayOrder(entry.body, (id) => lowerFirst(part(id)))
  if (isKind(entry, 'particulars')) return sayParticulars(entry.body, (id) => lowerFirst(part(id)))
  if (isKind(entry, 'case')) return upperFirst(sayCase(entry.body))
  if (isKind(entry, 'letdowns'))
    return `Let down ${entry.body.times} times in ${number(entry.body.years)} years`
  if (isKind(entry, 'complete'))
    return `Everything is in the log of ${sayList(entry.body.of.map((one) => choice('of', one)))}`
  if (isKind(entry, 'decision')) return entry.body.choice
  if (isKind(entry, 'danger-safe'))
    return `${upperFirst(spaced(entry.body.danger))} made safe: ${entry.body.how}`
  if (isKind(entry, 'overrule')) {
    const { path, value, because } = entry.body
    return joined([`${sayFigurePath(path, part)} set to ${number(value)}`, because ?? ''])
  }
  if (isKind(entry, 'apart-step')) return upperFirst(sayApartStep(entry.body))
  if (isKind(entry, 'refit-step')) return upperFirst(sayRefitStep(entry.body))
  if (isKind(entry, 'links')) return upperFirst(sayLinksEntry(entry.body))
  if (isKind(entry, 'alternative')) return entry.body.name ?? upperFirst(spaced(entry.body.id))
  if (isKind(entry, 'photograph-removed')) return `A picture was taken away: ${entry.body.because}`
  if (isKind(entry, 'use')) {
    const hours = entry.body.months.reduce((sum, month) => sum + month.hours, 0)
    return `Used ${number(hours)} h in a usual year, in ${entry.body.months.length} months`
  }
  if (isKind(entry, 'measured')) {
    const { of, coveredS, energyKwh, mostKw } = entry.body
    return `Measured ${number(Math.round(coveredS / 3600))} h of ${of === 'set' ? 'the set' : 'the boat'}: ${number(Math.round(energyKwh))} kWh, at most ${number(mostKw)} kW`
  }
  return sayFields(entry, money)
}

/** Particulars and terms: each field by its name. */
function sayFields(entry: Entry, money: (amount: number) => string): string {
  const takes = new Map(
    fieldsOf(entry.kind).flatMap((field) => (isRows(field) ? [] : [[field.key, field.takes]])),
  )
  const amount = (key: string, value: number) => {
    const of = takes.get(key)
    if (of?.as === 'money') return money(value)
    if (of?.as === 'percent') return `${number(100 * value)} %`
    const unit = of?.as === 'number' && of.unit !== undefined ? ` ${unitName(of.unit)}` : ''
    return `${number(value)}${unit}`
  }
  return Object.entries(entry.body)
    .filter(([key]) => key !== 'remark' && key !== 'photographs')
    .map(([key, value]) => {
      const name = lowerFirst(fieldName(entry.kind, key))
      if (typeof value === 'number') return `${name} ${amount(key, value)}`
      if (typeof value !== 'string') return name
      if (/^\d{4}(-\d\d){0,2}$/.test(value)) return `${name} ${sayDate(value)}`
      return key === 'name' ? value : `${name} ${choiceName(entry.kind, key, value)}`
    })
    .map((text, index) => (index === 0 ? upperFirst(text) : text))
    .join(', ')
}

function joined(pieces: readonly string[]): string {
  return pieces.filter((piece) => piece !== '').join('; ')
}

function at(meterHours: number | undefined): string {
  return meterHours === undefined ? '' : `at ${number(meterHours)} h`
}

function number(value: number): string {
  return value.toLocaleString('en-GB', { maximumFractionDigits: 4 })
}

function spaced(name: string): string {
  return name.replaceAll('-', ' ')
}

/** "Pencil anode: spent, scale", for `parts.anode.modes.spent.scale`. */
function sayFigurePath(path: string, part: (id: string) => string): string {
  const [head = '', id = '', ...rest] = path.split('.')
  const steps = (list: readonly string[]) => list.map(spaced).join(', ')
  if (head !== 'parts') return upperFirst(steps([head, id, ...rest].filter((step) => step !== '')))
  return `${part(id)}: ${steps(rest.filter((step) => step !== 'modes'))}`
}
