import { expect, test } from 'vitest'
import type { LifeModelInput } from './life-model.js'
import { lifeModelJsonSchema, readLifeModel } from './read-life-model.js'

const pump = {
  id: 'pump',
  modes: [
    { id: 'seal', clock: 'hours', shape: 2, scale: 3000 },
    { id: 'switch', clock: 'years', shape: 1, scale: 20, hidden: true },
  ],
} satisfies LifeModelInput['parts'][number]

const plain = {
  type: 'gensettle/life-model',
  version: 1,
  horizonYears: 5,
  parts: [pump],
} satisfies LifeModelInput

function problems(value: unknown) {
  const read = readLifeModel(value)
  return read.ok ? [] : read.problems
}

/** Code and place of every problem. */
function faults(value: unknown) {
  return problems(value).map(({ code, path }) => `${code} ${path}`)
}

const withMode = (mode: object) => ({
  ...plain,
  parts: [{ ...pump, modes: [pump.modes[1], { ...pump.modes[0], ...mode }] }],
})
const withPart = (part: object) => ({ ...plain, parts: [{ ...pump, ...part }] })
const withAlternative = (alternative: object) => ({ ...plain, alternatives: [{ id: 'a', ...alternative }] })

test('a model that hangs together is given its usual values', () => {
  const read = readLifeModel(plain)
  expect(read.ok && read.model.alternatives).toEqual([{ id: 'leave', now: 'leave' }])
  expect(read.ok && read.model.parts[0]?.modes[0]?.stops).toBe(1)
})

test.each<[string, unknown, string]>([
  ['a part twice', { ...plain, parts: [pump, pump] }, 'id-twice parts.pump.id'],
  ['a mode twice', withPart({ modes: [pump.modes[0], pump.modes[0]] }), 'id-twice parts.pump.modes.seal.id'],
  [
    'a check twice',
    {
      ...plain,
      checks: [
        { id: 'look', everyHours: 9 },
        { id: 'look', everyHours: 9 },
      ],
    },
    'id-twice checks.look.id',
  ],
  [
    'an alternative twice',
    { ...plain, alternatives: [{ id: 'a' }, { id: 'a' }] },
    'id-twice alternatives.a.id',
  ],
  ['unknown access', withPart({ access: ['front'] }), 'unknown-access parts.pump.access.0'],
  [
    'access that includes itself',
    {
      ...plain,
      access: [
        { id: 'x', hours: 1, includes: ['x'] },
        { id: 'y', hours: 1, includes: ['x'] },
      ],
    },
    'access-in-a-circle access.x.includes',
  ],
  [
    'an unknown check',
    withMode({ checks: [{ check: 'look', detection: 0.5 }] }),
    'unknown-check parts.pump.modes.seal.checks.look.check',
  ],
  [
    'a link to nowhere',
    withMode({ links: [{ part: 'shaft', chance: 0.1 }] }),
    'unknown-part parts.pump.modes.seal.links.0.part',
  ],
  [
    'a link to no mode',
    withMode({ links: [{ part: 'pump', mode: 'rust', chance: 0.1 }] }),
    'unknown-mode parts.pump.modes.seal.links.0.mode',
  ],
  [
    'a defect begun in no mode',
    withMode({ links: [{ part: 'pump', effect: 'starts-defect', chance: 0.1 }] }),
    'missing parts.pump.modes.seal.links.0.mode',
  ],
  [
    'a guard that is no part',
    withMode({ links: [{ part: 'pump', chance: 0.1, guard: { part: 'trip', effectiveness: 1 } }] }),
    'unknown-part parts.pump.modes.seal.links.0.guard.part',
  ],
  [
    'wear from what is seen',
    withMode({ wear: [{ part: 'pump', mode: 'switch', factor: 2 }] }),
    'wear-without-hidden parts.pump.modes.seal.wear',
  ],
  [
    'a look by a check that the mode does not know',
    withMode({ observations: [{ yearsAgo: 1, check: 'look', seen: true }] }),
    'unknown-check parts.pump.modes.seal.observations.look.check',
  ],
  [
    'a sight that nothing explains',
    withMode({ observations: [{ yearsAgo: 1, likelihood: { sound: 0, defective: 0 } }] }),
    'impossible-sight parts.pump.modes.seal.observations.0.likelihood',
  ],
  [
    'supply that is not certain',
    withPart({
      repair: {
        supply: [
          { chance: 0.5, days: 1 },
          { chance: 0.4, days: 9 },
        ],
      },
    }),
    'chances-not-one parts.pump.repair.supply',
  ],
  [
    'a service without interval',
    withPart({ service: { renews: true } }),
    'service-without-interval parts.pump.service',
  ],
  [
    'a service that clears no mode of the part',
    withPart({ service: { everyYears: 1, clears: ['rust'] } }),
    'unknown-mode parts.pump.service.clears.0',
  ],
  ['a broken mode that is none', withPart({ broken: 'rust' }), 'unknown-mode parts.pump.broken'],
  [
    'a past life ended by no mode',
    withPart({ pastLives: [{ age: { years: 2 }, ended: { failed: 'rust' } }] }),
    'unknown-mode parts.pump.pastLives.0.ended.failed',
  ],
  [
    'a first renewal after the last',
    withPart({ age: { years: 4 }, firstRenewal: { yearsAgo: 3 } }),
    'not-in-order parts.pump.firstRenewal.yearsAgo',
  ],
  [
    'a first renewal of a piece of which nobody knows the age',
    withPart({ age: 'unknown', firstRenewal: { yearsAgo: 3 } }),
    'age-unknown parts.pump.firstRenewal',
  ],
  [
    'a first renewal that was watched for only afterwards',
    withPart({ age: { years: 1 }, firstRenewal: { yearsAgo: 3, watchedFromYearsAgo: 2 } }),
    'not-in-order parts.pump.firstRenewal.watchedFromYearsAgo',
  ],
  [
    'a span that ends before it begins',
    withPart({ complete: [{ of: 'work', fromYearsAgo: 1, toYearsAgo: 2 }] }),
    'span-backwards parts.pump.complete.0.fromYearsAgo',
  ],
  [
    'a track that falls',
    {
      ...plain,
      past: {
        track: [
          { yearsAgo: 9, hours: 10 },
          { yearsAgo: 0, hours: 9 },
        ],
      },
    },
    'not-in-order past.track.1.hours',
  ],
  [
    'a track that ends early',
    {
      ...plain,
      past: {
        track: [
          { yearsAgo: 9, hours: 0 },
          { yearsAgo: 1, hours: 9 },
        ],
      },
    },
    'track-ends-early past.track.1.yearsAgo',
  ],
  [
    'a curve that falls',
    {
      ...plain,
      powerLoss: {
        curve: [
          { days: 1, cost: 5 },
          { days: 2, cost: 4 },
        ],
      },
    },
    'not-in-order powerLoss.curve.1.cost',
  ],
  [
    'a price for no outage',
    { ...plain, powerLoss: { curve: [{ days: 0, cost: 5 }] } },
    'no-outage-costs powerLoss.curve.0.cost',
  ],
  [
    'an unknown candidate',
    withAlternative({ now: { replaceWith: 'new' } }),
    'unknown-candidate alternatives.a.now.replaceWith',
  ],
  [
    'a limit to an unknown candidate',
    withAlternative({ limit: { knots: [1, 1, 1], above: { replaceWith: 'new' } } }),
    'unknown-candidate alternatives.a.limit.above.replaceWith',
  ],
  [
    'a replacement past the horizon',
    { ...withAlternative({ replaceLater: { year: 6, with: 'new' } }), candidates: [{ id: 'new', price: 1 }] },
    'past-the-horizon alternatives.a.replaceLater.year',
  ],
  [
    'a job that names a part twice',
    withAlternative({ now: { parts: [{ part: 'pump' }, { part: 'pump' }] } }),
    'named-twice alternatives.a.now.parts.1',
  ],
  [
    'a quote for no part',
    withAlternative({ now: { parts: [], quote: { price: 100 } } }),
    'out-of-range alternatives.a.now.parts',
  ],
  [
    'a symptom of nothing',
    {
      ...plain,
      symptoms: [{ yearsAgo: 1, seen: true, modes: [{ part: 'pump', mode: 'rust', detection: 1 }] }],
    },
    'unknown-mode symptoms.0.modes.0.mode',
  ],
])('%s is refused', (_, value, fault) => {
  expect(faults(value)).toEqual([fault])
})

test('a guard that can never be asleep is refused', () => {
  const trip = { id: 'trip', modes: [pump.modes[0]] }
  const links = [{ part: 'pump', chance: 0.1, guard: { part: 'trip', effectiveness: 0.9 } }]
  const value = { ...plain, parts: [{ ...pump, modes: [{ ...pump.modes[0], links }] }, trip] }
  expect(faults(value)).toEqual(['guard-without-hidden parts.pump.modes.seal.links.0.guard.part'])
})

test('faults of form and of reference are told together, and none is made up', () => {
  const value = {
    ...plain,
    horizonYears: -1,
    colour: 'green',
    use: { hoursByMonth: [1, 2] },
    parts: [
      { ...pump, modes: [{ ...pump.modes[0], shape: 'two', links: [{ part: 'shaft', chance: 2 }] }] },
      { id: 'Not an id!', modes: [{ ...pump.modes[0], clock: 'days' }] },
    ],
    alternatives: [
      {
        id: 'a',
        replaceLater: { year: 3, with: 'new' },
        now: { parts: [{ part: 'shaft', outcome: 'new' }] },
      },
    ],
  }
  expect(faults(value).sort()).toEqual([
    'not-one-of alternatives.a.now.parts.0.outcome',
    'not-one-of parts.Not an id!.modes.seal.clock',
    'out-of-range horizonYears',
    'out-of-range parts.pump.modes.seal.links.0.chance',
    'out-of-range use.hoursByMonth',
    'unknown-candidate alternatives.a.replaceLater.with',
    'unknown-field colour',
    'unknown-part alternatives.a.now.parts.0.part',
    'unknown-part parts.pump.modes.seal.links.0.part',
    'wrong-form parts.Not an id!.id',
    'wrong-type parts.pump.modes.seal.shape',
  ])
})

test.each<[string, unknown, object]>([
  ['a number', { ...plain, horizonYears: 'ten' }, { found: '"ten"', allowed: 'a number' }],
  ['a bound', { ...plain, horizonYears: 0 }, { found: '0', allowed: 'more than 0' }],
  [
    'what is missing',
    { type: plain.type, version: 1, horizonYears: 1 },
    { code: 'missing', path: 'parts', allowed: 'a list' },
  ],
  ['the type', { ...plain, type: 'other' }, { allowed: '"gensettle/life-model"' }],
  [
    'an amount',
    withPart({ repair: { price: { median: 5, logSd: 9 } } }),
    { path: 'parts.pump.repair.price.logSd', allowed: 'at most 3' },
  ],
  [
    'an age',
    withPart({ age: 'old' }),
    { path: 'parts.pump.age', allowed: '"unknown", or a record with named fields' },
  ],
  ['no record at all', null, { path: '', found: 'null', allowed: 'a record with named fields' }],
])('%s is named in plain words', (_, value, expected) => {
  expect(problems(value)).toEqual([expect.objectContaining(expected)])
})

test('lists within lists without end are refused', () => {
  let parts: unknown = []
  for (let i = 0; i < 100_000; i++) parts = [parts]
  expect(faults({ ...plain, parts })).toEqual(['too-deep '])
})

// `npx vitest run src/forecast/read-life-model.test.ts -u` remakes the file.
test('the published schema is the one in force', async () => {
  await expect(`${JSON.stringify(lifeModelJsonSchema(), null, 2)}\n`).toMatchFileSnapshot(
    '../../docs/schema/life-model.schema.json',
  )
})
