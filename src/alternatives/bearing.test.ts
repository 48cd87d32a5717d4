import { expect, test } from 'vitest'
import { lifeModelSchema } from '../forecast/life-model.js'
import { posteriorOf } from '../forecast/posterior.js'
import { type Played, whatChanges, worthFindingOut } from './bearing.js'
import { compile } from './program.js'
import {
  sayBarred,
  sayFirst,
  sayInput,
  sayInputValue,
  sayLook,
  sayQuantity,
  sayTurns,
} from './say-bearing.js'
import { playSpan } from './simulate.js'
import { startStates } from './start-states.js'

const model = lifeModelSchema.parse({
  type: 'gensettle/life-model',
  version: 1,
  currency: 'GBP',
  horizonYears: 4,
  setFactor: { boatLogSd: 0.2, setLogSd: 0.2 },
  checks: [
    { id: 'look', name: 'Look closely', everyHours: 1e6, diligence: 0, effort: { hours: 0.2, price: 4 } },
  ],
  labour: { paidPerHour: 50, ownPerHour: 10 },
  powerLoss: {
    curve: [
      { days: 0, cost: 0 },
      { days: 10, cost: 1500 },
    ],
  },
  candidates: [{ id: 'new', name: 'a new set', price: { median: 5200, logSd: 0.2 } }],
  parts: [
    {
      id: 'hose',
      name: 'Raw-water hose, all lengths',
      system: 'sea-water',
      age: { years: 6 },
      repair: { price: 900, hours: 2, supply: [{ chance: 1, days: 6 }] },
      modes: [
        {
          id: 'cracked',
          clock: 'years',
          shape: 3,
          scale: 14,
          logSd: 0.3,
          delay: { clock: 'years', median: 1.5, logSd: 0.5 },
          checks: [{ check: 'look', detection: 0.75, falseAlarm: 0.03 }],
          links: [{ part: 'engine', mode: 'cooked', chance: 0.12 }],
        },
      ],
    },
    {
      id: 'engine',
      name: 'Engine',
      system: 'engine',
      repair: { price: 6000, hours: 20, supply: [{ chance: 1, days: 20 }] },
      modes: [{ id: 'cooked', clock: 'years', shape: 1, scale: 500 }],
    },
  ],
  alternatives: [
    { id: 'leave', name: 'Leave it', now: 'leave' },
    { id: 'replace', name: 'Fit a new set', now: { replaceWith: 'new' } },
    { id: 'patch', name: 'Patch it', now: 'leave', barred: 'a danger is open' },
  ],
})
const posterior = posteriorOf(model, { seed: 3 })
const program = compile(model, posterior)
const span = { seed: 8, from: 0, count: 8_000 }
const played: Played = {
  model,
  samples: playSpan(program, span),
  states: startStates(program, span),
  seed: span.seed,
  play: async (alternatives, which) => playSpan({ ...program, alternatives }, which),
  playModel: async (other, which) => playSpan(compile(other, posterior), which),
}

test('what is worth finding out is said as an act, what it takes, and what follows from it', async () => {
  const worth = await worthFindingOut(played)
  expect(worth.first?.look.part).toBe('hose')
  expect(sayFirst(model, worth)).toMatch(
    /^Do this first: look closely: raw-water hose\. It takes about £6 and saves about £\d+ more than that on average\. It shows something \d+ times in 100; then leave it, with the raw-water hose mended before it fails\. If it shows nothing: leave it\.$/,
  )
  expect(sayLook(model, worth.looks[0]!)).toMatchObject({
    look: 'Look closely: raw-water hose',
    takes: 'about £6',
  })
  expect(worth.quantities.map(({ id }) => id)).toEqual(
    expect.arrayContaining(['set-factor', 'new-price', 'system sea-water']),
  )
  for (const { id } of worth.quantities) expect(sayQuantity(id).what).not.toContain('-factor')
})

test('nothing worth finding out is said as such', async () => {
  const only = { ...model, alternatives: model.alternatives.slice(1, 2) }
  const one = compile(only, posterior)
  const worth = await worthFindingOut({
    ...played,
    model: only,
    samples: playSpan(one, span),
  })
  expect(worth.first).toBeUndefined()
  expect(sayFirst(only, worth)).toMatch(/^Nothing is worth finding out first: choose\./)
  expect(await whatChanges({ ...played, model: only, samples: playSpan(one, span) })).toBeUndefined()
})

test('what would change the answer is said for every input, and a stop that keeps one from being best', async () => {
  const changes = (await whatChanges(played))!
  expect(changes.turning.best).toBe('leave')
  const said = changes.turning.inputs.map((input) => `${sayInput(input.id)}: ${sayTurns(model, input)}`)
  expect(said).toContain('a paid hour: Nowhere from £25 to £100.')
  for (const line of said)
    expect(line).toMatch(/: (Nowhere from .*|(Under|Over) .*: (leave it|fit a new set))\.$/)
  expect(sayInputValue(model, 'interest', Math.log(1.02))).toBe('2 %')
  expect(sayInputValue(model, 'care', 0.5)).toBe('half')
  expect(changes.maps.map(({ across, down }) => [across.id, down.id])).toEqual([
    ['new-set', 'years-kept'],
    ['new-set', 'day-without-power'],
  ])
  expect(sayBarred(model, { best: 'replace', barred: [{ id: 'patch', saving: 3120 }] })).toEqual([
    'Patch it would cost £3,120 less than fit a new set, if its stop were closed.',
  ])
})
