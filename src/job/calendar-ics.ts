/**
 * The calendar of a job as iCalendar (RFC 5545): one all-day event for each thing, on the last day on which it must be done.
 *
 * @module
 */

import ical, { ICalEventTransparency } from 'ical-generator'
import { inHundred } from './activities-words.js'
import type { Calendar, CalendarOrder, CalendarRow } from './calendar.js'

export interface CalendarOwner {
  readonly boat: string
  readonly boatName: string
  readonly set: string
}

/** One day of the calendar. Its uid hangs on boat, set, job and activity alone, so that a later copy takes its place. */
interface DayEvent {
  readonly uid: string
  readonly day: string
  readonly summary: string
  readonly says: string
}

/**
 * The text of the file: no times, no place, nothing that rings. What is done is left out; what no day keeps stands on the day
 * by which it is over nine times in ten.
 */
export function icsOf(calendar: Calendar, owner: CalendarOwner): string {
  const file = ical({
    name: `${owner.boatName}: ${spaced(calendar.job)}`,
    prodId: { company: 'Gensettle', product: 'job calendar', language: 'EN' },
  })
  for (const { uid, day, summary, says } of eventsOf(calendar, owner)) {
    file.createEvent({
      id: uid,
      stamp: instantOf(calendar.asOf),
      start: instantOf(day),
      end: instantOf(day, 1),
      allDay: true,
      summary,
      description: says,
      transparency: ICalEventTransparency.TRANSPARENT,
    })
  }
  return file.toString()
}

function eventsOf(calendar: Calendar, owner: CalendarOwner): DayEvent[] {
  const uidOf = (name: string) => `${owner.boat}.${owner.set}.${calendar.job}.${name}@gensettle.invalid`
  const orders = new Map(calendar.orders.map((order) => [order.name, order]))
  const open = calendar.rows.filter(({ state }) => state !== 'done')
  const { target, ready } = calendar
  const events = open.flatMap((row): DayEvent[] => {
    const order = orders.get(row.name)
    const day = (order === undefined ? row.doneBy : order.beginBy) ?? row.ends.high
    if (day === null) return []
    // what should have been done before is due today
    return [
      {
        uid: uidOf(row.name),
        day: laterOf(day, calendar.asOf),
        summary: summaryOf(row, order),
        says: saysOf(row, calendar),
      },
    ]
  })
  if (calendar.isDone || target.date === null) return events
  const says = `Ready by then: ${inHundred(target.chance)}. Even chance: ${ready.middle ?? 'not within three years'}.`
  return [
    ...events,
    { uid: uidOf('ready'), day: target.date, summary: `Ready: ${spaced(calendar.job)}`, says },
  ]
}

function summaryOf({ what }: CalendarRow, order: CalendarOrder | undefined): string {
  return order === undefined ? `By today: ${lowerFirst(what)}` : `Order by today: ${lowerFirst(what)}`
}

function saysOf({ doneBy, ends, needs, criticality }: CalendarRow, { asOf, target }: Calendar): string {
  const held = doneBy === null ? 'No day keeps the chance asked for; this is a likely one.' : ''
  return [
    `Over between ${ends.low ?? '–'} and ${ends.high ?? '–'}, as reckoned on ${asOf}.`,
    ...(held === '' ? [] : [held]),
    ...(target.date === null ? [] : [`All of it is to be ready by ${target.date}.`]),
    `It is what holds up the rest in ${inHundred(criticality)} cases.`,
    ...(needs.length === 0 ? [] : [`Needs: ${needs.join(', ')}.`]),
  ].join('\n')
}

function laterOf(one: string, other: string): string {
  return [one, other].toSorted()[1]!
}

function spaced(name: string): string {
  return name.replaceAll('-', ' ')
}

function lowerFirst(text: string): string {
  return /^[A-Z]{2}/.test(text) ? text : text.charAt(0).toLowerCase() + text.slice(1)
}

/** Midnight of a day, in universal time; `later` so many days on. */
function instantOf(day: string, later = 0): Date {
  return new Date(Date.parse(`${day}T00:00:00Z`) + later * 86_400_000)
}
