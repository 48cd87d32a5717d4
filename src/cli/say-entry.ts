/**
 * An entry in a line of words.
 *
 * @module
 */

import { sayCase } from '../faults/say-case.js'
import { sayActivity, sayFreeDays } from '../job/activities-words.js'
import { sayApartStep, sayRefitStep } from '../job/apart-words.js'
import { sayOrder, sayParticulars } from '../job/order-words.js'
import { type Body, type Entry, isKind } from '../logbook/kinds.js'
import { sayLinksEntry } from '../proof/as-found.js'

/** Fields that need no name before them, and those that are told elsewhere or in full only. */
const unnamed = new Set([
  'meterHours',
  'part',
  'test',
  'text',
  'choice',
  'verdict',
  'seen',
  'what',
  'job',
  'path',
  'danger',
  'did',
  'mode',
  'amount',
  'offeredBy',
])
const untold = new Set(['photographs', 'covers', 'split'])
const mostCharacters = 90

/** What an entry holds, short enough for a row. */
export function sayEntry(entry: Entry): string {
  if (entry.voids) return `taken back: ${'text' in entry.body ? entry.body.text : ''}`
  const photographs = 'photographs' in entry.body ? (entry.body.photographs?.length ?? 0) : 0
  const words = [
    ...saidOf(entry),
    ...(photographs > 0 ? [`${photographs} photograph${photographs > 1 ? 's' : ''}`] : []),
  ]
    .join(', ')
    .replace(/\s+/g, ' ')
  return words.length > mostCharacters ? `${words.slice(0, mostCharacters - 1)}…` : words
}

function saidOf(entry: Entry): string[] {
  if (isKind(entry, 'alternative')) return sayAlternative(entry.body)
  if (isKind(entry, 'apart-step')) return [sayApartStep(entry.body)]
  if (isKind(entry, 'refit-step')) return [sayRefitStep(entry.body)]
  if (isKind(entry, 'case')) return [sayCase(entry.body)]
  if (isKind(entry, 'links')) return [sayLinksEntry(entry.body)]
  if (isKind(entry, 'measured')) return sayMeasured(entry.body)
  if (isKind(entry, 'activity')) return [sayActivity(entry.body)]
  if (isKind(entry, 'free-days')) return [sayFreeDays(entry.body)]
  if (isKind(entry, 'order')) return [sayOrder(entry.body, (part) => part)]
  if (isKind(entry, 'particulars')) return [sayParticulars(entry.body, (part) => part)]
  return isKind(entry, 'decision') ? sayDecision(entry.body) : sayFields(entry.body)
}

/** A recording in its sums; the seconds by hour and step stay in the log. */
function sayMeasured({ of, file, source, coveredS, energyKwh, mostKw, badRows }: Body<'measured'>): string[] {
  return [
    `${of}, ${Math.round(coveredS / 360) / 10} h`,
    `${Math.round(energyKwh * 10) / 10} kWh, at most ${mostKw} kW`,
    ...(badRows === 0 ? [] : [`${badRows} bad rows`]),
    ...[file?.name ?? source ?? []].flat(),
  ]
}

function sayDecision({ choice, kept, walkAwayPrice, because, ...rest }: Body<'decision'>): string[] {
  return [
    choice,
    ...(kept === undefined ? [] : ['kept with its answer']),
    ...sayFields(rest),
    ...(walkAwayPrice === undefined ? [] : [`walk away above ${Math.round(walkAwayPrice)}`]),
    ...(because === undefined ? [] : [`because ${because}`]),
  ]
}

function sayAlternative(body: Body<'alternative'>): string[] {
  const { id, name, leftOut, now, parts, replaceWith, later, ...rest } = body
  if (leftOut) return [id, 'left out', ...sayFields(rest)]
  const job = parts?.map(({ part, mode, outcome = 'renewed' }) =>
    [part, mode, outcome].filter(Boolean).join(' '),
  )
  return [
    name === undefined ? id : `${id} "${name}"`,
    ...(now === undefined ? [] : [now === 'replace' ? `replace with ${replaceWith}` : now]),
    ...(job ?? []),
    ...(later === undefined ? [] : [`${later.with ?? 'new-same'} in ${later.year} years`]),
    ...sayFields(rest),
  ]
}

/** The dates of an entry: one, or from and until. */
export function sayDates({ from, until }: Pick<Entry, 'from' | 'until'>): string {
  return from === until ? from : `${from} – ${until}`
}

function sayFields(record: object): string[] {
  return Object.entries(record).flatMap(([name, value]) => {
    if (untold.has(name) || value === undefined) return []
    const said = sayValue(name, value)
    if (said === '') return []
    return [unnamed.has(name) || typeof value === 'object' ? said : `${spaced(name)} ${said}`]
  })
}

function sayValue(name: string, value: unknown): string {
  if (name === 'meterHours') return `${value} h`
  if (Array.isArray(value)) {
    const items = value.map((item) =>
      isMeasured(item) ? `${item.name} ${item.value} ${item.unit}` : sayValue('', item),
    )
    return unnamed.has(name) || typeof value[0] === 'object'
      ? items.join('; ')
      : `${spaced(name)} ${items.join(' ')}`
  }
  if (typeof value === 'object' && value !== null) return sayFields(value).join(' ')
  if (value === true) return 'yes'
  return value === false ? 'no' : String(value)
}

function isMeasured(item: unknown): item is { name: string; value: number; unit: string } {
  return typeof item === 'object' && item !== null && 'unit' in item && 'value' in item
}

function spaced(name: string): string {
  return name.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`)
}
