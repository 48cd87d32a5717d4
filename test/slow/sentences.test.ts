import { expect, test } from 'vitest'
import { compile } from '../../src/alternatives/program.js'
import { column } from '../../src/alternatives/sample.js'
import { playSpan } from '../../src/alternatives/simulate.js'
import { lifeModelSchema } from '../../src/forecast/life-model.js'
import { posteriorOf } from '../../src/forecast/posterior.js'
import { simulateSlowly } from './simulator.js'

const histories = { fast: 4000, slow: 600 }
const everyMonth = Array(12).fill(1)
const aDayCostsOne = { curve: [{ days: 1, cost: 1 }], byMonth: everyMonth }
const lookEvery = (everyHours: number) => [{ id: 'look', everyHours, diligence: 1 }]
const seenAtOnce = [{ check: 'look', detection: 1 }]
const monthly = { clock: 'years', median: 0.2, logSd: 0 }
const halfTheYear = { hoursByMonth: [0, 0, 0, 0, 0, 0, 700, 700, 700, 700, 700, 700] }

/** A mode that fails on the calendar, without warning, at a constant rate. */
const failing = (scale: number, more: object = {}) => ({
  id: 'fails',
  clock: 'years',
  shape: 1,
  scale,
  ...more,
})
const never = 1e6

/** Small models in which a sentence of the life model, by its number, decides what a history costs. */
const models: Readonly<Record<string, object>> = {
  '7, 8: a life factor moves the onset, of the present set and of a new one, and leaves the delay': {
    checks: lookEvery(400),
    setFactor: { boatLogSd: 0.2, setLogSd: 0.2 },
    candidates: [{ id: 'new', price: 3, hourLifeFactor: 1.2 }],
    parts: [
      {
        id: 'hose',
        age: { years: 1, hours: 3000 },
        repair: { price: 1 },
        modes: [
          {
            id: 'wears',
            clock: 'hours',
            shape: 2,
            scale: 9000,
            logSd: 0.2,
            lifeFactor: 0.6,
            delay: { clock: 'years', median: 0.3, logSd: 0.4 },
            checks: [{ check: 'look', detection: 0.4 }],
          },
          failing(6, { lifeFactor: 1.7 }),
        ],
      },
    ],
    alternatives: [{ id: 'one', replaceLater: { year: 2, with: 'new' } }],
  },
  '13: after a patch it is the same defect, but other looks': {
    checks: lookEvery(2000),
    parts: [
      {
        id: 'hose',
        repair: { price: 1 },
        modes: [
          failing(0.5, {
            stops: 0,
            delay: { clock: 'years', median: 1, logSd: 0.5 },
            checks: [{ check: 'look', detection: 0.5 }],
            remedy: { outcome: 'patched', delayFactor: 1 },
          }),
        ],
      },
    ],
  },
  '15: a service begins a new life of what failed in lay-up': {
    use: halfTheYear,
    care: { fittingOutShare: 1 },
    parts: [
      {
        id: 'vane',
        repair: { price: 100 },
        service: { everyYears: 0.3, renews: true },
        modes: [failing(1)],
      },
    ],
  },
  '16, 21: an order that is not given leaves the supply of the later job to chance': {
    checks: lookEvery(10),
    powerLoss: aDayCostsOne,
    care: { restChance: 0 },
    parts: [
      {
        id: 'pump',
        repair: {
          supply: [
            { chance: 0.5, days: 1 },
            { chance: 0.5, days: 100 },
          ],
        },
        modes: [failing(1, { delay: monthly, checks: seenAtOnce })],
      },
    ],
  },
  '16, 32: a set is rested for the whole wait, and its job paid when it is done': {
    realInterestPerYear: 0.5,
    horizonYears: 3,
    checks: lookEvery(10),
    care: { restChance: 1 },
    parts: [
      {
        id: 'pump',
        repair: { price: 100, supply: [{ chance: 1, days: 365 }] },
        modes: [failing(1, { delay: monthly, checks: seenAtOnce })],
      },
    ],
  },
  '17: a failure falls in lay-up whether or not the set is down': {
    use: halfTheYear,
    care: { fittingOutShare: 1 },
    parts: [
      {
        id: 'pump',
        repair: { supply: [{ chance: 1, days: 250 }] },
        modes: [failing(500, { clock: 'hours' })],
      },
      { id: 'vane', repair: { price: 100 }, modes: [failing(0.5)] },
    ],
  },
  '19: in a visible event a guard asleep is revealed by the links of hidden modes too': {
    parts: [
      { id: 'pump', modes: [failing(1, { links: [{ part: 'alarm', mode: 'fails', chance: 1 }] })] },
      {
        id: 'alarm',
        modes: [
          failing(never, {
            hidden: true,
            links: [{ part: 'engine', chance: 0, guard: { part: 'guard', effectiveness: 1 } }],
          }),
        ],
      },
      { id: 'engine', modes: [failing(never)] },
      { id: 'guard', repair: { price: 1 }, modes: [failing(0.1, { hidden: true })] },
    ],
  },
  '19: a defect is not started in a mode that is not sound': {
    parts: [
      {
        id: 'pump',
        modes: [
          failing(1, {
            stops: 0,
            links: [{ part: 'alarm', mode: 'fails', chance: 1, effect: 'starts-defect' }],
          }),
        ],
      },
      { id: 'alarm', repair: { price: 1 }, modes: [failing(0.1, { hidden: true })] },
    ],
  },
  '20: what is only cleared waits for no piece': {
    checks: lookEvery(10),
    care: { restChance: 0 },
    labour: { paidPerHour: 1 },
    parts: [
      {
        id: 'filter',
        modes: [
          failing(1, {
            delay: monthly,
            checks: seenAtOnce,
            remedy: { outcome: 'cleared', repair: { hours: 1, supply: [{ chance: 1, days: 100 }] } },
          }),
        ],
      },
    ],
  },
  '22: a planned job in an outage runs beside it': {
    checks: lookEvery(10),
    powerLoss: aDayCostsOne,
    parts: [
      { id: 'pump', repair: { supply: [{ chance: 1, days: 60 }] }, modes: [failing(0.5)] },
      {
        id: 'belt',
        repair: { workshopDays: 30, supply: [{ chance: 1, days: 20 }] },
        modes: [failing(0.5, { delay: { clock: 'years', median: 3, logSd: 0 }, checks: seenAtOnce })],
      },
    ],
  },
  '22: what a priced job opened stands open in its outage': {
    horizonYears: 0.8,
    access: [{ id: 'hatch', hours: 10 }],
    labour: { paidPerHour: 1 },
    alternatives: [{ id: 'one', now: { parts: [{ part: 'pump' }], price: 1, days: 300 } }],
    parts: [
      { id: 'pump', access: ['hatch'], broken: 'fails', modes: [failing(never)] },
      { id: 'belt', access: ['hatch'], modes: [failing(0.1)] },
    ],
  },
  '25: the quality of the piece in place ends with it': {
    parts: [{ id: 'elbow', quality: 0.1, age: { years: 0 }, repair: { price: 1 }, modes: [failing(1)] }],
  },
  '25: patched without a delay is cleared': {
    parts: [{ id: 'hose', repair: { price: 1 }, modes: [failing(1, { remedy: { outcome: 'patched' } })] }],
  },
  '25: what is ruined and patched stays defective': {
    parts: [
      { id: 'pump', modes: [failing(5, { links: [{ part: 'hose', mode: 'fails', chance: 1 }] })] },
      {
        id: 'hose',
        repair: { price: 1 },
        modes: [
          failing(never, {
            delay: { clock: 'years', median: 1, logSd: 0 },
            remedy: { outcome: 'patched', delayFactor: 1 },
          }),
        ],
      },
    ],
  },
  '26, 29: a job priced as a whole may put its fault near any of its parts': {
    access: [
      { id: 'hatch', hours: 0 },
      { id: 'panel', hours: 0 },
    ],
    intrusion: { testsCatch: 0, onset: { shape: 1, scaleHours: 100 } },
    alternatives: [
      {
        id: 'one',
        now: { parts: [{ part: 'pump' }, { part: 'belt' }], price: 0, intrusionChance: 1 },
      },
    ],
    parts: [
      { id: 'pump', access: ['hatch'], modes: [failing(never)] },
      { id: 'belt', access: ['panel'], repair: { price: 1 }, modes: [failing(never)] },
    ],
  },
  '29: a job now without a price is out for its own wait and days': {
    powerLoss: aDayCostsOne,
    alternatives: [{ id: 'one', now: { parts: [{ part: 'pump' }], wait: 10, days: 5 } }],
    parts: [
      {
        id: 'pump',
        broken: 'fails',
        repair: { price: 1, supply: [{ chance: 1, days: 100 }] },
        modes: [failing(never)],
      },
    ],
  },
  '29: clearing another mode does not put the broken one right': {
    alternatives: [{ id: 'one', now: { parts: [{ part: 'pump', mode: 'leaks', outcome: 'cleared' }] } }],
    parts: [
      {
        id: 'pump',
        broken: 'fails',
        repair: { price: 1 },
        modes: [failing(never), failing(never, { id: 'leaks' })],
      },
    ],
  },
  '29, 19: a hidden mode that stands broken stops nothing': {
    powerLoss: aDayCostsOne,
    alternatives: [{ id: 'one', now: { parts: [{ part: 'alarm' }], price: 1, wait: 10, days: 5 } }],
    parts: [{ id: 'alarm', broken: 'fails', modes: [failing(never, { hidden: true })] }],
  },
  '30: a set that is down already is out until the new one comes': {
    powerLoss: aDayCostsOne,
    candidates: [{ id: 'new', price: 0, leadDays: 300 }],
    alternatives: [{ id: 'one', limit: { knots: [10, 10, 1e6], above: { replaceWith: 'new' } } }],
    parts: [
      { id: 'pump', repair: { price: 1, supply: [{ chance: 1, days: 200 }] }, modes: [failing(1)] },
      { id: 'belt', repair: { price: 100 }, modes: [failing(1, { stops: 0 })] },
    ],
  },
  '31: an outage ends as the set is given up': {
    powerLoss: aDayCostsOne,
    giveUp: { costNow: 0, costPerYear: 0, daysWithoutPerYear: 0 },
    alternatives: [{ id: 'one', limit: { knots: [10, 10, 10], above: 'give-up' } }],
    parts: [
      { id: 'pump', repair: { price: 1, supply: [{ chance: 1, days: 200 }] }, modes: [failing(1)] },
      { id: 'belt', repair: { price: 100 }, modes: [failing(1, { stops: 0 })] },
    ],
  },
}

test.each(Object.entries(models))('%s: a simulator written apart agrees', (_, input) => {
  const model = lifeModelSchema.parse({
    type: 'gensettle/life-model',
    version: 1,
    horizonYears: 10,
    alternatives: [{ id: 'one' }],
    ...input,
  })
  const posterior = posteriorOf(model, { seed: 1 })
  const fast = playSpan(compile(model, posterior), { seed: 8, from: 0, count: histories.fast })[0]!
  const slow = simulateSlowly(model, posterior, 'one', { seed: 77, histories: histories.slow })
  const costs = column(fast, 'cost')
  const mean = costs.reduce((sum, cost) => sum + cost, 0) / costs.length
  const variance = costs.reduce((sum, cost) => sum + (cost - mean) ** 2, 0) / (costs.length - 1)
  const error = Math.sqrt(variance * (1 / histories.fast + 1 / histories.slow))
  const gap = Math.abs(mean - slow.means.presentCost!.mean)
  expect(gap, `${mean} against ${slow.means.presentCost!.mean}`).toBeLessThanOrEqual(4 * error + 0.001)
})
