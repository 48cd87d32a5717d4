import { expect, test } from 'vitest'
import { shippedCatalogue } from '../../test/shipped-limits.js'
import { trialEntry } from '../../test/trial-log.js'
import { modeLifeOf } from '../forecast/mode-life.js'
import { yearlyRates } from '../forecast/track.js'
import type { Entry } from '../logbook/kinds.js'
import { withLightRunning } from './candidates-light-running.js'
import { readSet } from './settle.js'

const lowLoadShare = 0.4
const set = trialEntry(1, 'set', { ratingKw: 8, rpm: 1500, hertz: 50, volts: [230], built: '2004' })
const use = trialEntry(2, 'use', {
  months: [{ month: 7, hours: 120, starts: 60, needShare: 0.9, lowLoadShare }],
})
const offered = trialEntry(3, 'candidate', { id: 'smaller', ratingKw: 5 })
/** On for every hour that the set runs: a thermostat of 1 kW half of the time, beside 1.8 kW a quarter of it. */
const loads = [
  trialEntry(4, 'load', { id: 'hob', runW: 1000, duty: 0.5, hours: { day: 10 } }),
  trialEntry(5, 'load', { id: 'heater', runW: 1800, duty: 0.25, hours: { day: 10 } }),
  trialEntry(6, 'habits', { setHours: { day: 2 }, days: { mild: 60 } }),
]

function read(entries: readonly Entry[]) {
  const asOf = '2024-06-01'
  const { bare, register, forSet } = readSet({
    entries,
    boat: 'trial',
    set: 'main',
    asOf,
    catalogue: shippedCatalogue,
    seed: 1,
  })
  return { model: bare, register, catalogue: forSet.catalogue, entries }
}

test('without loads a size has the usual share of light hours', () => {
  const one = read([set, use, offered])
  expect(withLightRunning(one)).toEqual({ candidates: one.model.candidates, assumed: [] })
})

// Drawn 0, 1, 1.8 and 2.8 kW at chances of 3/8, 3/8, 1/8 and 1/8; the set is on for the occasion's share of its day alone. Derived.
test('with loads each size wears by the hours that are light on it', () => {
  const one = read([set, use, offered, ...loads])
  const { candidates, assumed } = withLightRunning(one)
  const share = (id: string) => candidates.find((candidate) => candidate.id === id)!.lowLoadShare!
  // The log's own figure stands for a set of the present size, whatever the list makes of it.
  expect(share('new-same')).toBeCloseTo(lowLoadShare, 12)
  // 30 % of 8 kW leaves 2.8 kW alone above it, 30 % of 5 and of 5.6 kW the 1.8 kW too, 30 % of 11.2 kW none.
  expect(share('smaller')).toBeLessThan(lowLoadShare)
  expect(share('new-smaller')).toBeCloseTo(share('smaller'), 12)
  expect(share('new-larger')).toBeCloseTo(1, 9)
  expect(assumed).toEqual([expect.stringContaining('40 % of the present set')])

  const mode = one.model.parts.flatMap(({ modes }) => modes).find(({ soot }) => soot > 1)!
  const pace = (lowShare: number) =>
    modeLifeOf(mode, { rates: yearlyRates(one.model), lowLoadShare: lowShare }).pace
  // 1 + s (soot − 1): a hundred hours on the smaller set wear as fewer on the larger.
  expect(pace(share('new-larger'))).toBeCloseTo(mode.soot, 9)
  expect(pace(share('smaller'))).toBeCloseTo(1 + share('smaller') * (mode.soot - 1), 12)
  expect(pace(share('smaller'))).toBeLessThan(pace(share('new-same')))
})
