import { expect, test } from 'vitest'
import { trialEntry } from '../../test/trial-log.js'
import { normalCdf } from '../forecast/special-normal.js'
import { dayNumber } from '../logbook/dates.js'
import type { Activity } from './activities.js'
import { type DaysKnown, daysKnownOf } from './calendar-days.js'
import type { Lasts } from './calendar-lasts.js'
import {
  type Played,
  type Playing,
  type Prepared,
  playCalendar,
  playLatest,
  prepareCalendar,
} from './calendar-play.js'
import { networkOf } from './network.js'
import { largerOf, threePointMoments } from './network-pert.js'

const today = dayNumber('2027-03-01')
const everyDay: DaysKnown = { free: new Map() }

function activity(name: string, lasts: Lasts, more: Partial<Activity> = {}): Activity {
  return {
    ...{ name, what: name, after: [], lasts, needs: ['owner'], inOneRun: false, progress: { is: 'to-do' } },
    ...{ proposed: false, entries: [], opensSet: false },
    ...more,
  }
}

function playing(list: readonly Activity[], more: Partial<Playing> = {}): Prepared {
  const made = networkOf(list)
  if (!made.ok) throw new Error(JSON.stringify(made.problems))
  return prepareCalendar({ network: made.network, days: everyDay, today, seed: 7, histories: 4000, ...more })
}

function meanAndError(times: Float64Array) {
  const mean = times.reduce((sum, each) => sum + each, 0) / times.length
  const variance = times.reduce((sum, each) => sum + (each - mean) ** 2, 0) / times.length
  return { mean: mean - today, error: Math.sqrt(variance / times.length) }
}

const within = (found: { readonly mean: number; readonly error: number }, expected: number, more = 0) =>
  expect(Math.abs(found.mean - expected)).toBeLessThan(4 * found.error + more)

const placeOf = ({ network }: Prepared, name: string) => network.steps.findIndex((one) => one.name === name)

test('two equal deliveries, waited for at once and one after the other', () => {
  const wait: Lasts = { is: 'delivery', ways: [{ chance: 1, median: 10, logSd: 0.5 }], wrongChance: 0 }
  const each = 10 * Math.exp(0.5 ** 2 / 2)
  const both = playCalendar(playing([activity('a', wait), activity('b', wait)]))
  // of two independent log-normals alike the larger has the mean 2 m e^(σ²/2) Φ(σ/√2) (derived)
  within(meanAndError(both.finish), 2 * each * normalCdf(0.5 / Math.SQRT2))
  // and is under t with F(t)²
  const under = both.finish.filter((time) => time - today <= 12).length / 4000
  expect(Math.abs(under - normalCdf(Math.log(1.2) / 0.5) ** 2)).toBeLessThan(0.03)
  expect(both.critical[0]! + both.critical[1]!).toBeCloseTo(1, 9)
  expect(both.critical[0]!).toBeCloseTo(0.5, 1)
  const inTurn = playCalendar(playing([activity('a', wait), activity('b', wait, { after: ['a'] })]))
  within(meanAndError(inTurn.finish), 2 * each)
})

test('where two chains of much work meet, finish and criticality are those of the larger of two normals', () => {
  const chain = (name: string, points: { low: number; usual: number; high: number }) =>
    Array.from({ length: 8 }, (_, i) =>
      activity(
        `${name}${i}`,
        { is: 'three-point', ...points },
        { after: i === 0 ? [] : [`${name}${i - 1}`] },
      ),
    )
  const one = { low: 1, usual: 5, high: 9 }
  const other = { low: 3, usual: 5, high: 8 }
  const of = playing([...chain('a', one), ...chain('b', other)])
  const played = playCalendar(of)
  // sums of eight are nearly normal; the drawn beta has the variance (μ − a)(b − μ)/7
  const sum = (points: typeof one) => {
    const { mean } = threePointMoments(points)
    return { mean: 8 * mean, sd: Math.sqrt((8 * (mean - points.low) * (points.high - mean)) / 7) }
  }
  const clark = largerOf(sum(one), sum(other))
  within(meanAndError(played.finish), clark.mean, 0.01)
  expect(Math.abs(played.critical[placeOf(of, 'a0')]! - clark.firstIsLarger)).toBeLessThan(0.035)
})

test('a run of days of fair weather takes as long to come as runs of successes do', () => {
  const weather = trialEntry(1, 'free-days', {
    who: 'weather',
    months: Array.from({ length: 12 }, (_, i) => ({ month: i + 1, share: 0.5 })),
  })
  const days = daysKnownOf([weather])
  const three: Lasts = { is: 'three-point', low: 3, usual: 3, high: 3 }
  const outside = (inOneRun: boolean) =>
    playCalendar(playing([activity('lift', three, { needs: ['weather'], inOneRun })], { days }))
  // (1 − pⁿ)/((1 − p) pⁿ) trials to the first run of n: Feller, volume 1, XIII.7 (recalled); n/p where gaps do not matter
  within(meanAndError(outside(true).finish), 14)
  within(meanAndError(outside(false).finish), 6)
  const both = playCalendar(
    playing(
      [activity('lift', three, { needs: ['weather'] }), activity('mast', three, { needs: ['weather'] })],
      {
        days,
      },
    ),
  )
  expect(both.ends[0]).toEqual(both.ends[1])
})

test('what stands beside something changes none of its days, and a delay only ever makes later', () => {
  const work: Lasts = { is: 'three-point', low: 1, usual: 3, high: 8 }
  const few = [activity('open', work), activity('fit', work, { after: ['open'] })]
  const alone = playing(few, { histories: 200 })
  const beside = playing([activity('kit', work), ...few], { histories: 200 })
  const at = (played: Played, of: Prepared, name: string) => played.ends[placeOf(of, name)]
  const both = playCalendar(beside)
  expect(at(both, beside, 'fit')).toEqual(at(playCalendar(alone), alone, 'fit'))
  const held = playCalendar(beside, { place: placeOf(beside, 'kit'), until: today + 7 })
  expect(held.finish.every((time, h) => time >= both.finish[h]!)).toBe(true)
  expect(meanAndError(held.finish).mean).toBeGreaterThan(meanAndError(both.finish).mean)
})

test('ready in time is what begins no later than it must, in every history', () => {
  const work: Lasts = { is: 'three-point', low: 1, usual: 3, high: 8 }
  const weekends = trialEntry(1, 'free-days', { who: 'owner', weekdays: ['saturday', 'sunday', 'tuesday'] })
  const of = playing(
    [
      activity('open', work),
      activity('wait', work, { after: ['open'], needs: ['supplier'] }),
      activity('clean', work, { after: ['open'], inOneRun: true, needs: [] }),
      activity('fit', work, { after: ['wait', 'clean'] }),
    ],
    { histories: 400, days: daysKnownOf([weekends]) },
  )
  const until = today + 21
  const played = playCalendar(of)
  const latest = playLatest(of, until)
  let inTime = 0
  for (let h = 0; h < 400; h++) {
    const isInTime = played.finish[h]! <= until + 1e-9
    const isEarly = played.starts.every((starts, i) => starts[h]! <= latest.starts[i]![h]! + 1e-9)
    expect(isEarly).toBe(isInTime)
    if (isInTime) inTime++
  }
  expect(inTime).toBeGreaterThan(40)
  expect(inTime).toBeLessThan(360)
})

test('what is begun goes on from today, what is done takes no more time', () => {
  const wait: Lasts = { is: 'delivery', ways: [{ chance: 1, median: 20, logSd: 0.3 }], wrongChance: 0 }
  const begun = { is: 'begun', day: today - 15 } as const
  const of = playing([
    activity('get', wait, { needs: ['supplier'], progress: begun }),
    activity('old', wait, { progress: { is: 'done', day: today - 3 } }),
  ])
  const { ends, critical } = playCalendar(of)
  expect(ends[placeOf(of, 'get')]!.every((time) => time >= today)).toBe(true)
  // half of the deliveries take longer than 20 days, whatever is asked of those that take longer than 15
  const longer = ends[0]!.filter((time) => time > today + 5).length / 4000
  expect(longer).toBeCloseTo(0.5 / normalCdf(-Math.log(15 / 20) / 0.3), 1)
  expect(ends[placeOf(of, 'old')]![0]).toBe(today - 2)
  expect(critical[placeOf(of, 'old')]).toBe(0)
})
