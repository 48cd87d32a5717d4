import { expect, test } from 'vitest'
import { shippedCatalogue as catalogue } from '../../test/shipped-limits.js'
import { correctedTo } from './corrected-loads.js'
import { activeOfAll } from './demand-points.js'
import { type MeasuredBody, measuredBody } from './measured-summary.js'
import { readMeasured } from './measured-table.js'
import { hoursOn, sayBasis } from './say-size.js'
import { needsOf, type SizeQuestion, sizeBoat } from './size-boat.js'

/** Days by the minute, so many kilowatts at each hour. */
function recordingOf(kWAt: (hour: number, minute: number) => number): MeasuredBody {
  const reader = readMeasured({})
  reader.take('time,kW\n')
  for (let minute = 0; minute < 2 * 1440; minute++) {
    const time = new Date(Date.UTC(2024, 6, 1) + 60_000 * minute).toISOString().slice(0, 19)
    reader.take(`${time},${kWAt(Math.floor(minute / 60) % 24, minute % 60)}\n`)
  }
  const measured = reader.end()
  if (!measured.ok) throw new Error(JSON.stringify(measured.problems))
  return measuredBody(measured.folded, measured.read, { of: 'set' })
}

function question(ids: readonly string[], over: Partial<SizeQuestion> = {}): SizeQuestion {
  return {
    book: catalogue,
    set: 'main',
    use: undefined,
    setFacts: { ratingKw: 7, volts: [230], hertz: 50, rpm: 1500, has: [], hasNot: [] },
    facts: {
      loads: ids.map((id) => ({ id, is: id, entry: 'e' })),
      rules: [],
      habits: {
        setHours: { day: 1, evening: 2, night: 0, cooking: 2, laundry: 0, charging: 0 },
        days: { hot: 0, warm: 100, mild: 0, cold: 0 },
      },
      space: {},
      candidates: [],
    },
    ...over,
  }
}

const aboard = ['oven', 'water-heater-75', 'charger-24v-100', 'refrigerator', 'lights']

/** Two kilowatts of an evening, a little less at noon; three for the first six minutes of each hour. */
const recording = recordingOf((hour, minute) =>
  hour >= 18 && hour < 22 ? (minute < 6 ? 3.05 : 2.05) : hour === 12 ? 1.55 : 0,
)

const meanKW = (needs: ReturnType<typeof needsOf>) =>
  activeOfAll(needs.byLoads).reduce((sum, chance, step) => sum + chance * step * 0.1, 0)

test('in the place of the list: the parts of the day as recorded, their hours those of the habits', () => {
  const { year, basis } = needsOf(question(aboard, { recording, basis: 'recording' }))
  expect(basis).toBe('recording')
  expect(year.map(({ occasion, season }) => [occasion, season])).toEqual([
    ['day', 'recorded'],
    ['cooking', 'recorded'],
    ['evening', 'recorded'],
  ])
  // 500 hours a year as the habits say, one hour of five at noon, two at cooking, two of an evening
  expect(year.map(({ hours }) => Math.round(hours))).toEqual([100, 200, 200])
  const [, cooking] = year
  // derived: nine tenths of an hour at 2.05 kW, a tenth at 3.05
  expect(cooking!.demand.meanW).toBeCloseTo(2150, 6)
  expect(cooking!.kW.p50).toBeCloseTo(2.05, 0)
  expect(cooking!.kW.p99).toBeCloseTo(3.05, 0)
})

test('a set is judged by what was recorded: 3.05 kW fit four, whatever the list could draw at once', () => {
  const sizes = [2.5, 4, 7]
  const checkOf = (basis: SizeQuestion['basis']) =>
    sizeBoat(question(aboard, { recording, sizes, ...(basis === undefined ? {} : { basis }) })).sets.map(
      ({ occasions }) =>
        occasions.flatMap(({ checks }) => checks).filter(({ check }) => check === 'engine-load'),
    )
  const byRecording = checkOf('recording')
  expect(byRecording.map((checks) => checks.every(({ verdict }) => verdict === 'passes'))).toEqual([
    false,
    true,
    true,
    true,
  ])
  expect(byRecording[0]!.every(({ season }) => season === 'recorded')).toBe(true)
  expect(checkOf('list')[1]!.some(({ verdict }) => verdict === 'fails')).toBe(true)
})

test('the list is corrected to the mean of the recording: by its hours, and by what it lacks beyond them', () => {
  const wanted = (4 * 2.15 + 1.55) / 5
  const listed = meanKW(needsOf(question(aboard)))
  // less than listed: the hours alone account for it
  const lessKW = Math.floor(8.5 * listed) / 10 + 0.05
  const less = recordingOf((hour) => (hour >= 18 && hour < 22 ? lessKW : 0))
  const corrected = needsOf(question(aboard, { recording: less }))
  expect(corrected).toMatchObject({ basis: 'corrected', measured: { missingKW: 0 } })
  expect(meanKW(corrected)).toBeCloseTo(lessKW, 1)

  const few = needsOf(question(['lights'], { recording }))
  expect(few.measured).toMatchObject({ hoursFactor: 3 })
  expect(few.loads.map(({ id }) => id)).toEqual(['lights', 'not-on-the-list'])
  expect(meanKW(few)).toBeCloseTo(wanted, 1)
  expect(few.listed.map(({ id }) => id)).toEqual(['lights'])
})

test('a list that says what was recorded is left as it is', () => {
  const { loads, rules, habits, ...needs } = needsOf(question(aboard))
  const mean = meanKW({ loads, rules, habits, ...needs })
  // the middle of its step of 100 W is what a recording is known by
  const steady = recordingOf((hour) => (hour >= 18 && hour < 22 ? mean : 0))
  const known = Math.floor(10 * mean) / 10 + 0.05
  const aboardNow = { loads, rules, habits, loadRules: catalogue.loadRules, twoLegs: false }
  const { hoursFactor, missingKW } = correctedTo(steady, aboardNow)
  expect(missingKW).toBe(0)
  expect(hoursFactor > 1).toBe(known > mean)
  expect(Math.abs(Math.log(hoursFactor))).toBeLessThan(0.15)
})

test('without any list the recording alone sizes the set', () => {
  const sized = sizeBoat(question([], { recording }))
  expect(sized).toMatchObject({ basis: 'recording', loads: [] })
  expect(sized.measured!.listed).toEqual([])
  expect(sized.smallest).toBeDefined()
  // derived: 0.9 power factor where no load tells one
  const { kVA, kW } = sized.figures[1]!
  expect(kVA.p99 / kW.p99).toBeCloseTo(1 / 0.9, 1)
})

test('curves of both, the list as it stands', () => {
  const { measured } = sizeBoat(question(aboard, { recording, basis: 'recording' }))
  expect(measured!.recorded[0]!.kW).toBeCloseTo(3.05, 9)
  expect(measured!.listed.at(-1)!.share).toBeCloseTo(1, 9)
  expect(measured!.against!.measuredKW.mean).toBeCloseTo((4 * 2.15 + 1.55) / 5, 9)
})

test('what was entered and what is reckoned with stand apart, and it is said which of them the figures follow', () => {
  const sized = sizeBoat(question(['lights'], { recording }))
  const { loads, reckoned, basis, measured } = sized
  expect(reckoned.map(({ id }) => id)).toEqual(['lights', 'not-on-the-list'])
  // Three times the hours of the list, which are those that were entered.
  expect(hoursOn(reckoned[0]!)).toBeCloseTo(Math.min(24, 3 * hoursOn(loads[0]!)), 9)
  expect(sayBasis({ basis, measured })).toMatch(
    /every load on 3 times as long as the list says, and .* kW more .*The list itself stands as it was entered/,
  )
  expect(sayBasis({ basis: 'list', measured })).toContain('follow the list as it stands')
  expect(sayBasis({ basis: 'recording', measured })).toContain('follow the recording')
  expect(sayBasis({ basis: 'list', measured: undefined })).toBeUndefined()
})
