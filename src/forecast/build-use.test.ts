import { expect, test } from 'vitest'
import { shippedCatalogue as catalogue } from '../../test/shipped-limits.js'
import { trialEntry } from '../../test/trial-log.js'
import { registerOf } from '../register/register.js'
import { setCatalogueOf } from '../register/set-kind-of.js'
import { useOf } from './build-use.js'

const month = { month: 7, needShare: 1 }
const heavy = { ...month, hours: 200, starts: 100, lowLoadShare: 0.6 }
const light = { ...month, hours: 80, starts: 30, lowLoadShare: 0.1 }

function used(...uses: { months: (typeof heavy)[]; changesFromNow?: true }[]) {
  const entries = [
    trialEntry(1, 'set', { ratingKw: 7, built: '2014-01-01' }, { from: '2014-01-01' }),
    trialEntry(2, 'hours', { meterHours: 2000 }, { from: '2024-01-01' }),
    ...uses.map((body, at) => trialEntry(3 + at, 'use', body, { from: `2024-0${at + 1}-01` })),
  ]
  const register = registerOf({ entries, boat: 'trial', set: 'main', asOf: '2024-06-01', catalogue })
  return useOf(register, setCatalogueOf(register, catalogue).catalogue)
}

test('a change of use leaves the years before as they were', () => {
  const { use, past } = used({ months: [heavy] }, { months: [light], changesFromNow: true })
  expect(use).toMatchObject({ lowLoadShare: 0.1 })
  expect(use.hoursByMonth[6]).toBe(80)
  expect(past!.lowLoadShare).toBe(0.6)
  expect(past!.track.find(({ hours }) => hours === 2000)!.starts).toBe(1000)
})

test('without being called one it holds for the past too; after two, the past is as before the first', () => {
  expect(used({ months: [heavy] }, { months: [light] }).past!.lowLoadShare).toBe(0.1)
  const twice = used(
    { months: [heavy] },
    { months: [light], changesFromNow: true },
    { months: [light], changesFromNow: true },
  )
  expect(twice.past!.lowLoadShare).toBe(0.6)
})

test('a change of what nobody had told leaves the past as it usually is, and says so', () => {
  const { past, assumed } = used({ months: [light], changesFromNow: true })
  expect(past!.lowLoadShare).toBe(0.3)
  expect(assumed.some((one) => one.startsWith('use by month is not said'))).toBe(true)
})

test('of a meter that is read every day the past keeps as many readings as tell something, the last among them', () => {
  const days = 6000
  const entries = [
    trialEntry(1, 'set', { ratingKw: 7, built: '2004-01-01' }, { from: '2004-01-01' }),
    ...Array.from({ length: days }, (_, day) => {
      const from = new Date(Date.UTC(2004, 0, 2 + day)).toISOString().slice(0, 10)
      return trialEntry(2 + day, 'hours', { meterHours: day + 1 }, { from })
    }),
  ]
  const register = registerOf({ entries, boat: 'trial', set: 'main', asOf: '2024-06-01', catalogue })
  const { track } = useOf(register, setCatalogueOf(register, catalogue).catalogue).past!
  expect(track.length).toBeGreaterThan(700)
  expect(track.length).toBeLessThanOrEqual(1002)
  expect(track.at(-1)!.yearsAgo).toBe(0)
  expect(track.map(({ hours }) => hours)).toContain(days)
  for (let i = 2; track[i]!.hours <= days; i += 1) {
    expect(track[i]!.hours - track[i - 1]!.hours).toBeLessThanOrEqual(8)
  }
})
