import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { Calendar, CalendarRow } from './calendar.js'
import { icsOf } from './calendar-ics.js'

const spread = { low: '2027-03-10', middle: '2027-03-14', high: '2027-03-20' }
const row = (name: string, more: Partial<CalendarRow> = {}): CalendarRow => ({
  ...{ name, what: 'Fit the elbow, then look; twice', after: [], needs: ['owner'], inOneRun: false },
  ...{ proposed: true, entries: [], days: { low: 1, usual: 2, high: 4, as: 'three-point' }, state: 'to-do' },
  ...{ since: null, plan: { start: '2027-03-10', end: '2027-03-12', slackDays: 0, onLongestWay: true } },
  ...{ starts: spread, ends: spread, criticality: 0.5, beginBy: '2027-03-11', doneBy: '2027-03-15' },
  ...more,
})
const long = `Straße über ${'größte Wellenlänge, '.repeat(8)}Ende`
const calendar: Calendar = {
  ...{ job: 'elbow-2027', asOf: '2027-03-01', seed: 1, histories: 100, isDone: false },
  rows: [
    row('get-elbow', { what: long, needs: ['supplier'] }),
    row('fit-elbow'),
    row('old', { state: 'done', since: '2027-02-01', doneBy: null }),
    row('late', { doneBy: null }),
  ],
  longestWay: ['get-elbow', 'fit-elbow'],
  ready: { ...spread, likely: '2027-03-18', plan: '2027-03-12' },
  target: { date: '2027-03-18', isAsked: false, chance: 0.81, error: 0.01 },
  orders: [
    { name: 'get-elbow', what: long, beginBy: '2027-03-02', isDue: false, weekLater: { days: 3, price: 90 } },
  ],
  ...{ months: [], currency: 'GBP', price: { whole: 0, dayMore: 0 }, problems: [], assumed: [] },
  byFormula: { chain: { mean: 3, sd: 1 }, met: { mean: 3, sd: 1 } },
}
const owner = { boat: 'petrel', boatName: 'Petrel; of the bay', set: 'main' }

/** Reads iCalendar back by the rules of RFC 5545: 3.1 (lines of at most 75 octets, CRLF, folds) and 3.3.11 (escapes). */
function readBack(text: string): Record<string, string>[] {
  expect(text).not.toMatch(/(^|[^\r])\n|\r[^\n]/)
  const bytes = new TextEncoder()
  for (const line of text.split('\r\n')) expect(bytes.encode(line).length).toBeLessThanOrEqual(75)
  const lines = text
    .replace(/\r\n[ \t]/g, '')
    .split('\r\n')
    .filter(Boolean)
  expect([lines[0], lines.at(-1)]).toEqual(['BEGIN:VCALENDAR', 'END:VCALENDAR'])
  expect(lines).toContain('VERSION:2.0')
  expect(lines.filter((line) => line.startsWith('PRODID:'))).toHaveLength(1)
  const events: Record<string, string>[] = []
  let inside: Record<string, string> | undefined
  for (const line of lines) {
    const [, name, value] = /^([A-Z-]+(?:;[A-Z-]+=[^:;,"]+)*):(.*)$/.exec(line) ?? []
    if (name === undefined) throw new Error(`a line must be a name and a value; found ${line}`)
    if (line === 'BEGIN:VEVENT') inside = {}
    else if (line === 'END:VEVENT') {
      events.push(inside!)
      inside = undefined
    } else if (inside !== undefined) {
      expect(inside[name], `${name} once`).toBeUndefined()
      if (name === 'SUMMARY' || name === 'DESCRIPTION') {
        expect(value!.replace(/\\[\\;,nN]/g, ''), 'nothing unescaped').not.toMatch(/[;,\\]/)
      }
      inside[name] = value!.replace(/\\([\\;,nN])/g, (_, one: string) => (/n/i.test(one) ? '\n' : one))
    }
  }
  return events
}

test('every thing that is open is one all-day event on the day by which it must be done', () => {
  const events = readBack(icsOf(calendar, owner))
  expect(events.map((event) => [event.UID, event['DTSTART;VALUE=DATE'], event['DTEND;VALUE=DATE']])).toEqual([
    ['petrel.main.elbow-2027.get-elbow@gensettle.invalid', '20270302', '20270303'],
    ['petrel.main.elbow-2027.fit-elbow@gensettle.invalid', '20270315', '20270316'],
    ['petrel.main.elbow-2027.late@gensettle.invalid', '20270320', '20270321'],
    ['petrel.main.elbow-2027.ready@gensettle.invalid', '20270318', '20270319'],
  ])
  expect(events[0]!.SUMMARY).toBe(`Order by today: s${long.slice(1)}`)
  expect(events[1]!.SUMMARY).toBe('By today: fit the elbow, then look; twice')
  expect(events[1]!.DESCRIPTION).toContain('\nAll of it is to be ready by 2027-03-18.\n')
  for (const event of events) {
    expect(event.DTSTAMP).toBe('20270301T000000Z')
    expect(Object.keys(event).filter((name) => /LOCATION|GEO|ALARM|ATTENDEE|ORGANIZER/.test(name))).toEqual(
      [],
    )
  }
})

test('a later copy has the same events, so that it takes the place of the earlier one', () => {
  const later = {
    ...calendar,
    asOf: '2027-03-05',
    rows: calendar.rows.map((one) => ({ ...one, doneBy: '2027-04-02' })),
  }
  const uids = (of: Calendar) => readBack(icsOf(of, owner)).map(({ UID }) => UID)
  expect(uids(later)).toEqual(uids(calendar))
  expect(new Set(uids(calendar)).size).toBe(4)
})

test('what should have been done before stands on the day itself, and nothing rings', () => {
  const text = icsOf({ ...calendar, asOf: '2027-03-16' }, owner)
  expect(readBack(text).map((event) => event['DTSTART;VALUE=DATE'])).toEqual([
    '20270316',
    '20270316',
    '20270320',
    '20270318',
  ])
  expect(text).not.toContain('VALARM')
})

test('whatever an owner writes comes back from the file as it was written', () => {
  const written = fc
    .string({ unit: 'grapheme', minLength: 1, maxLength: 120 })
    .map((text) => `Fit ${text.replace(/[\p{Cc}\p{Cs}]/gu, '\n')}.`)
  fc.assert(
    fc.property(written, (what) => {
      const rows = [row('fit-elbow', { what })]
      const [event] = readBack(icsOf({ ...calendar, rows, orders: [] }, owner))
      expect(event!.SUMMARY).toBe(`By today: f${what.slice(1)}`)
    }),
    { numRuns: 60 },
  )
})
