import fc from 'fast-check'
import { expect, test } from 'vitest'
import { shippedCatalogue } from '../../test/shipped-limits.js'
import { trialEntry } from '../../test/trial-log.js'
import type { Body, Entry, Kind } from '../logbook/kinds.js'
import { registerOf } from '../register/register.js'
import { setCatalogueOf } from '../register/set-kind-of.js'
import { type CalendarQuestion, calendarOf } from './calendar.js'
import { jobsOf } from './jobs.js'

const asOf = '2027-03-01'
let count = 0

function entry<K extends Kind>(kind: K, body: Body<K>, from = '2027-02-01', until = from) {
  return trialEntry(++count, kind, body, { from, until })
}

const aboard: readonly Entry[] = [
  entry('set', { ratingKw: 7, rpm: 1500, built: '2004' }),
  entry('use', {
    months: [4, 5, 6, 7, 8, 9].map((month) => ({
      ...{ month, hours: 60, starts: 40, needShare: 1, lowLoadShare: 0.3 },
    })),
  }),
  entry('terms', {
    ownerDoes: ['minor', 'major'],
    withoutPower: [{ months: [4, 5, 6, 7, 8, 9], curve: [{ days: 1, price: 50 }] }],
  }),
]
const toDo = (...parts: readonly (readonly [string, 'renewed' | 'cleaned'])[]) =>
  entry('decision', {
    ...{ choice: 'Have it done', job: 'spring', parts: parts.map(([part, did]) => ({ part, did })) },
  })
const pumpAndElbow = toDo(['sea-pump-seal', 'renewed'], ['exhaust-elbow', 'renewed'])

const registerFrom = (entries: readonly Entry[]) =>
  registerOf({ entries, boat: 'trial', set: 'main', asOf, catalogue: shippedCatalogue })
const { catalogue } = setCatalogueOf(registerFrom(aboard), shippedCatalogue)

function asked(more: readonly Entry[], how: Partial<CalendarQuestion> = {}) {
  const entries = [...aboard, ...more]
  const register = registerFrom(entries)
  const job = jobsOf(entries, 'main').find(({ name }) => name === 'spring')!
  return calendarOf({ job, entries, register, catalogue, seed: 1, histories: 300, ...how })
}

function calendar(more: readonly Entry[], how: Partial<CalendarQuestion> = {}) {
  const found = asked(more, how)
  if (!found.ok) throw new Error(JSON.stringify(found.problems))
  return found.calendar
}

const row = (found: ReturnType<typeof calendar>, name: string) => found.rows.find((one) => one.name === name)!
const names = (found: ReturnType<typeof calendar>) => found.rows.map(({ name }) => name)

test('a job is ordered, checked, opened, fitted, closed the other way round, proved and tried', () => {
  const found = calendar([pumpAndElbow])
  const at = (name: string) => names(found).indexOf(name)
  expect(names(found)).toEqual(
    expect.arrayContaining(['get-sea-pump-seal', 'get-exhaust-elbow', 'check-kit', 'prove', 'trial']),
  )
  expect(row(found, 'check-kit').after).toEqual(['get-sea-pump-seal', 'get-exhaust-elbow'])
  expect(at('open-sea-water-side')).toBeGreaterThan(at('check-kit'))
  expect(at('fit-exhaust-elbow')).toBeGreaterThan(at('open-exhaust-side'))
  expect(at('open-sea-water-side') < at('open-exhaust-side')).toBe(
    at('close-exhaust-side') < at('close-sea-water-side'),
  )
  expect(names(found).at(-1)).toBe('trial')
  expect(found.orders.map(({ name }) => name)).toEqual(['get-sea-pump-seal', 'get-exhaust-elbow'])
})

test('a winding goes to the workshop and comes back, a valve of the hull takes the boat out of the water', () => {
  const found = calendar([toDo(['stator-winding', 'renewed'], ['seacock', 'renewed'])])
  expect(row(found, 'shop-stator-winding')).toMatchObject({
    after: ['send-stator-winding'],
    needs: ['workshop'],
    days: { low: 10, usual: 21, high: 45 },
  })
  expect(row(found, 'fit-stator-winding').after).toContain('back-stator-winding')
  expect(names(found).indexOf('haul-out')).toBeLessThan(names(found).indexOf('open-boat-side'))
  expect(row(found, 'prove').after).toEqual(['launch'])
})

test('orders and work tell how far it has come', () => {
  const line = (part: string, fits?: boolean) => ({ part, ...(fits === undefined ? {} : { fits }) })
  const ordered = entry(
    'order',
    {
      job: 'spring',
      state: 'ordered',
      lines: [line('exhaust-elbow'), line('sea-pump-seal')],
      expected: '2027-03-20',
    },
    '2027-02-20',
  )
  const came = entry(
    'order',
    { job: 'spring', state: 'received', lines: [line('sea-pump-seal')] },
    '2027-02-25',
  )
  const wrong = entry(
    'order',
    { job: 'spring', state: 'checked', lines: [{ ...line('sea-pump-seal', false), differs: 'the bore' }] },
    '2027-02-26',
  )
  expect(row(calendar([pumpAndElbow, ordered, came]), 'get-sea-pump-seal').state).toBe('done')
  const found = calendar([pumpAndElbow, ordered, came, wrong])
  expect(row(found, 'get-sea-pump-seal').state).toBe('to-do')
  expect(row(found, 'get-exhaust-elbow')).toMatchObject({ state: 'begun', since: '2027-02-20' })
  expect(row(found, 'get-exhaust-elbow').ends.middle).toMatch(/^2027-03-(19|2\d)$/)
  const work = entry(
    'work',
    { job: 'spring', by: 'owner', why: 'found', parts: [{ part: 'sea-pump-seal', did: 'opened' }] },
    '2027-02-27',
  )
  expect(row(calendar([pumpAndElbow, work]), 'fit-sea-pump-seal').state).toBe('to-do')
  const fitted = {
    ...work,
    body: { ...work.body, parts: [{ part: 'sea-pump-seal', did: 'renewed' as const }] },
  }
  const later = calendar([pumpAndElbow, fitted])
  expect(row(later, 'fit-sea-pump-seal').state).toBe('done')
  expect(row(later, 'check-kit').state).toBe('done')
})

test('a step taken off begins to open its way, one put back to close it, and what comes before is done', () => {
  const off = entry('apart-step', { job: 'spring', n: 1, what: 'Panels', access: 'panels-off' }, '2027-02-26')
  const apart = calendar([pumpAndElbow, off])
  expect(row(apart, 'open-sea-water-side')).toMatchObject({ state: 'begun', since: '2027-02-26' })
  expect(row(apart, 'check-kit').state).toBe('done')
  const on = entry('refit-step', { job: 'spring', step: off.id }, '2027-02-28')
  const together = calendar([pumpAndElbow, off, on])
  expect(row(together, 'close-sea-water-side').state).toBe('begun')
  expect(row(together, 'fit-exhaust-elbow').state).toBe('done')
})

test('the later the day asked for, the likelier; what is held to is a day that keeps eight in ten', () => {
  const found = calendar([pumpAndElbow])
  expect(found.target).toMatchObject({ date: found.ready.likely, isAsked: false })
  expect(found.target.chance).toBeGreaterThanOrEqual(0.8)
  const chances = ['2027-03-05', '2027-03-20', '2027-04-20', '2027-07-01'].map(
    (readyBy) => calendar([pumpAndElbow], { readyBy }).target.chance,
  )
  expect(chances).toEqual(chances.toSorted((a, b) => a - b))
  expect(chances.at(-1)).toBeGreaterThan(0.95)
  // where the chance is small, what makes it later is ordered at once
  expect(calendar([pumpAndElbow], { readyBy: '2027-03-08' }).orders.some(({ isDue }) => isDue)).toBe(true)
  // waiting until the day told keeps the chance that is held to, a day more does not
  const readyBy = '2027-05-10'
  const order = calendar([pumpAndElbow], { readyBy }).orders.find(({ name }) => name === 'get-exhaust-elbow')!
  const dayAfter = new Date(Date.parse(order.beginBy!) + 86_400_000).toISOString().slice(0, 10)
  const waiting = (day: string) =>
    calendar(
      [
        pumpAndElbow,
        entry('activity', {
          ...{ job: 'spring', name: 'wait' },
          needs: ['helper'],
          days: { low: 0, usual: 0, high: 0 },
        }),
        entry('free-days', { who: 'supplier', notDays: daysUpTo(day) }),
      ],
      { readyBy },
    ).target.chance
  expect(waiting(order.beginBy!)).toBeGreaterThanOrEqual(0.8 - 0.05)
  expect(waiting(dayAfter)).toBeLessThanOrEqual(waiting(order.beginBy!))
})

/** Every day from the day of the question to the one before a day. */
function daysUpTo(day: string): string[] {
  const days: string[] = []
  for (let at = Date.parse(asOf); at < Date.parse(day); at += 86_400_000)
    days.push(new Date(at).toISOString().slice(0, 10))
  return days
}

test('days without power cost what the terms say, and months that want none cost nothing', () => {
  const found = calendar([pumpAndElbow])
  expect(found.months.every(({ month }) => Number(month.slice(5)) >= 4)).toBe(true)
  const down = entry(
    'stop',
    { daysWithoutPower: 5, curedSameDay: false, cause: { part: 'exhaust-elbow' } },
    '2027-02-25',
    '2027-03-01',
  )
  const slow = entry('activity', { job: 'spring', name: 'prove', days: { low: 60, usual: 60, high: 60 } })
  const long = calendar([pumpAndElbow, down, slow])
  expect(long.price.whole).toBeGreaterThan(50 * 28)
  // where it is down in April for sure, a day more is a day of the terms
  expect(long.price.dayMore).toBeCloseTo(50, 0)
  expect(long.months[0]).toMatchObject({ month: '2027-04', needShare: 1, chance: 0 })
  for (const { chance } of [...found.months, ...long.months]) {
    expect(chance).toBeGreaterThanOrEqual(0)
    expect(chance).toBeLessThanOrEqual(1)
  }
})

test('a circle, a name that is none and a day gone by are told together, and nothing is reckoned', () => {
  const circle = entry('activity', { job: 'spring', name: 'check-kit', after: ['prove'] })
  const unknown = entry('activity', { job: 'spring', name: 'paint', after: ['dry'], days: { usual: 1 } })
  const found = asked([pumpAndElbow, circle, unknown], { readyBy: '2027-02-01' })
  if (found.ok) throw new Error('it must be refused')
  expect(found.problems.map(({ code }) => code)).toEqual([
    'before-today',
    'unknown-activity',
    'activities-in-a-circle',
  ])
  for (const name of ['check-kit', 'prove', 'fit-sea-pump-seal'])
    expect(found.problems[2]!.found).toContain(name)
})

test('work that needs days which never come is named with whom it needs', () => {
  const never = entry('free-days', { who: 'helper', weekdays: [] })
  const heavy = entry('activity', { job: 'spring', name: 'prove', needs: ['owner', 'helper'] })
  expect(asked([pumpAndElbow, never, heavy])).toMatchObject({
    ok: false,
    problems: [{ code: 'never-free', path: 'prove', found: expect.stringContaining('owner, helper') }],
  })
})

test('a job of which nobody said what it is to do asks for that', () => {
  expect(asked([entry('decision', { choice: 'Something', job: 'spring' })])).toMatchObject({
    ok: false,
    problems: [{ code: 'nothing-to-do' }],
  })
})

test('more to do is never ready sooner, and fewer free days never either', () => {
  const weekdays = ['monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday'] as const
  const few = { histories: 40 }
  const before = calendar([pumpAndElbow], few)
  fc.assert(
    fc.property(
      fc.subarray([...weekdays], { minLength: 1 }),
      fc.constantFrom('check-kit', 'prove', 'trial'),
      (free, name) => {
        const owner = entry('free-days', { who: 'owner', weekdays: free })
        const fewer = calendar([pumpAndElbow, owner], few)
        const more = calendar(
          [
            pumpAndElbow,
            owner,
            entry('activity', { job: 'spring', name: 'paint', after: [name], days: { usual: 9 } }),
          ],
          few,
        )
        for (const at of ['low', 'middle', 'likely', 'high', 'plan'] as const) {
          expect(fewer.ready[at]! >= before.ready[at]!).toBe(true)
          expect(more.ready[at]! >= fewer.ready[at]!).toBe(true)
        }
      },
    ),
    { numRuns: 6 },
  )
})
