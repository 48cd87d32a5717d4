import { describe, expect, test } from 'vitest'
import { type LifeModel, type LifeModelInput, lifeModelSchema } from '../forecast/life-model.js'
import { posteriorOf } from '../forecast/posterior.js'
import { uniformOfWord } from '../forecast/threefry.js'
import { type Valuing, worthOfLooks } from './finding-out.js'
import { kept } from './kept.js'
import { chanceSeen, looksOf } from './looks.js'
import { compile, type Program } from './program.js'
import { column, type Sample } from './sample.js'
import { playSpan } from './simulate.js'
import { type StartStates, startStates } from './start-states.js'

/** Uniform numbers from a generator of their own, so that the test repeats. */
function uniforms(seed: number): () => number {
  let state = seed
  return () => {
    state ^= state << 13
    state ^= state >>> 17
    state ^= state << 5
    return uniformOfWord(state >>> 0)
  }
}

/** Histories as if they had been played: a cost for each alternative, a state for each mode. */
function asIfPlayed(
  model: LifeModel,
  costs: readonly Float64Array[],
  state: Uint8Array,
): Pick<Valuing, 'model' | 'samples' | 'states'> {
  const histories = costs[0]!.length
  const modes = state.length / histories
  const samples = costs.map(
    (cost, a): Sample => ({
      alternative: model.alternatives[a]!.id,
      columns: kept.map((name) => (name === 'cost' ? cost : new Float64Array(histories))),
      failuresOfMode: new Float64Array(modes),
      failuresOfDanger: new Float64Array(0),
    }),
  )
  const states: StartStates = {
    histories,
    state,
    since: new Float32Array(state.length),
    scaleLog: new Float32Array(state.length),
    kappaLog: new Float64Array(histories),
  }
  return { model, samples, states }
}

function neverPlayed(): Promise<never> {
  throw new Error('nothing here asks for further histories')
}

describe('a test before a repair', () => {
  const model = lifeModelSchema.parse({
    type: 'gensettle/life-model',
    version: 1,
    horizonYears: 1,
    checks: [{ id: 'try', everyHours: 100 }],
    candidates: [{ id: 'new', price: 1900 }],
    parts: [
      {
        id: 'winding',
        repair: { price: 2500 },
        modes: [
          {
            id: 'shorted',
            clock: 'years',
            shape: 2,
            scale: 5,
            delay: { clock: 'years', median: 1, logSd: 0.1 },
            checks: [{ check: 'try', detection: 0.8, falseAlarm: 0.1 }],
          },
        ],
      },
    ],
    alternatives: [
      { id: 'repair', now: { parts: [{ part: 'winding' }] } },
      { id: 'replace', now: { replaceWith: 'new' } },
    ],
  })
  const histories = 20_000
  const defective = Uint8Array.from({ length: histories }, (_, i) => (i % 20 < 6 ? 1 : 0))
  const costs = [
    Float64Array.from(defective, (is) => (is ? 3300 : 800)),
    new Float64Array(histories).fill(1900),
  ]

  // Two states, two actions, one imperfect test, worked by hand from Bayes' rule: chance of a defect 0.3, repair 800 or
  // 3,300, replacement 1,900, found 0.8 of the time and seen where nothing is 0.1; expected without the test 1,550, with it
  // 1,291. As in Raiffa and Schlaifer (1961), pre-posterior analysis; recalled.
  test('is worth what Bayes’ rule says', async () => {
    // The detection of 0.8 and the false alarm of 0.1 join where there is a defect: 1 − 0.9 × 0.2 = 0.82.
    const found = 1 - 0.9 * 0.2
    const afterTest = 0.3 * (found * 1900 + (1 - found) * 3300) + 0.7 * (0.1 * 1900 + 0.9 * 800)
    const { looks } = await worthOfLooks({
      ...asIfPlayed(model, costs, defective),
      seed: 1,
      play: neverPlayed,
    })
    expect(looks[0]!.chanceSeen).toBeCloseTo(0.3 * found + 0.7 * 0.1, 9)
    expect(looks[0]!.worth).toBeCloseTo(1550 - afterTest, 6)
    expect(looks[0]).toMatchObject({
      unlooked: { alternative: 'repair', renews: false },
      ifSeen: { alternative: 'replace', renews: false },
      ifNot: { alternative: 'repair', renews: false },
      pays: true,
    })
  })

  test('with the joint detection at 0.8 it is worth 259', async () => {
    // 1 − 0.9 × (1 − d) = 0.8
    const joint = {
      ...model,
      parts: model.parts.map((part) => ({
        ...part,
        modes: part.modes.map((mode) => ({
          ...mode,
          checks: [{ check: 'try', detection: 1 - 0.2 / 0.9, falseAlarm: 0.1 }],
        })),
      })),
    }
    const { looks } = await worthOfLooks({
      ...asIfPlayed(joint, costs, defective),
      seed: 1,
      play: neverPlayed,
    })
    expect(looks[0]!.chanceSeen).toBeCloseTo(0.31, 9)
    expect(looks[0]!.worth).toBeCloseTo(259, 6)
  })

  test('a barred alternative cannot be chosen after a look, so nothing is worth finding out for it', async () => {
    const [repair, replace] = model.alternatives
    const barred = { ...model, alternatives: [repair!, { ...replace!, barred: 'a stop line' }] }
    const { looks } = await worthOfLooks({
      ...asIfPlayed(barred, costs, defective),
      seed: 1,
      play: neverPlayed,
    })
    expect(looks[0]).toMatchObject({ worth: 0, error: 0, pays: false })
  })
})

test('sixty looks that can change nothing: in at least 95 of 100 cases nothing is worth finding out', async () => {
  const count = 60
  const model = lifeModelSchema.parse({
    type: 'gensettle/life-model',
    version: 1,
    horizonYears: 1,
    checks: [{ id: 'look', everyHours: 100, effort: { price: 2 } }],
    candidates: [
      { id: 'one', price: 1 },
      { id: 'other', price: 1 },
    ],
    parts: Array.from({ length: count }, (_, p) => ({
      id: `part-${p}`,
      repair: { price: 5000 },
      modes: [
        {
          id: 'worn',
          clock: 'years',
          shape: 2,
          scale: 5,
          delay: { clock: 'years', median: 1, logSd: 0.1 },
          checks: [{ check: 'look', detection: 0.7, falseAlarm: 0.02 }],
        },
      ],
    })),
    alternatives: [
      { id: 'one', now: { replaceWith: 'one' } },
      { id: 'other', now: { replaceWith: 'other' } },
    ],
  })
  const runs = 100
  const histories = 2_000
  let paying = 0
  for (let run = 0; run < runs; run++) {
    const next = uniforms(run * 7919 + 13)
    // Two that tie, with costs that have nothing to do with the states: where luck looks most like worth.
    const costs = [0, 1].map(() =>
      Float64Array.from({ length: histories }, () => 5000 + 3000 * (next() + next() + next() - 1.5)),
    )
    const state = Uint8Array.from({ length: histories * count }, () => (next() < 0.1 ? 1 : 0))
    const { looks } = await worthOfLooks({
      ...asIfPlayed(model, costs, state),
      seed: 1,
      play: neverPlayed,
      most: count,
    })
    expect(looks).toHaveLength(count)
    if (looks.some(({ pays }) => pays)) paying++
  }
  expect(paying).toBeLessThanOrEqual(5)
}, 60_000)

const hose = (id: string, scale: number): NonNullable<LifeModelInput['parts']>[number] => ({
  id,
  age: { years: 6 },
  repair: { price: 900, hours: 2, supply: [{ chance: 1, days: 6 }] },
  modes: [
    {
      id: 'cracked',
      clock: 'years',
      shape: 3,
      scale,
      logSd: 0.3,
      delay: { clock: 'years', median: 1.5, logSd: 0.5 },
      checks: [{ check: 'look', detection: 0.75, falseAlarm: 0.03 }],
      links: [{ part: 'engine', mode: 'cooked', chance: 0.12 }],
    },
  ],
})

const three: LifeModel = lifeModelSchema.parse({
  type: 'gensettle/life-model',
  version: 1,
  horizonYears: 4,
  setFactor: { boatLogSd: 0.2, setLogSd: 0.2 },
  checks: [{ id: 'look', everyHours: 1e6, diligence: 0 }],
  labour: { paidPerHour: 50 },
  powerLoss: {
    curve: [
      { days: 0, cost: 0 },
      { days: 10, cost: 1500 },
    ],
  },
  candidates: [{ id: 'new', price: 5200 }],
  parts: [
    hose('hose', 14),
    hose('riser', 12),
    {
      id: 'engine',
      repair: { price: 6000, hours: 20, supply: [{ chance: 1, days: 20 }] },
      modes: [{ id: 'cooked', clock: 'years', shape: 1, scale: 500 }],
    },
  ],
  alternatives: [
    { id: 'leave', now: 'leave' },
    { id: 'replace', now: { replaceWith: 'new' } },
  ],
})

describe('a model of three parts', () => {
  const posterior = posteriorOf(three, { seed: 2 })
  const program = compile(three, posterior)
  const playOf =
    (other: Program): Valuing['play'] =>
    async (alternatives, which) =>
      playSpan({ ...other, alternatives }, which)
  const span = { seed: 4, from: 0, count: 20_000 }

  /**
   * The same worth by brute force, nested: outcomes drawn, histories sorted by outcome, and after each the least of all
   * choices played in full; on histories of their own.
   */
  function nested(check: string, part: string): { readonly worth: number; readonly error: number } {
    const look = looksOf(three).find((one) => one.check === check && one.part === part)!
    const renewing = { part, outcome: 'renewed' as const, quality: 1, agesLess: 1 }
    const alternatives = [
      ...three.alternatives,
      { id: 'renew', now: { parts: [renewing], wait: 0, intrusionChance: 0 } },
    ]
    const count = 60_000
    const own = { seed: 99, from: 0, count }
    const chances = chanceSeen(look, startStates(program, own))
    const costs = playSpan({ ...program, alternatives }, own).map((sample) => column(sample, 'cost'))
    const next = uniforms(4321)
    const seen = Uint8Array.from(chances, (chance) => (next() < chance ? 1 : 0))
    const least = (keep: (i: number) => boolean): number => {
      const sums = costs.map((cost) => cost.reduce((sum, value, i) => sum + (keep(i) ? value : 0), 0))
      return sums.indexOf(Math.min(...sums))
    }
    const before = least(() => true)
    const [ifSeen, ifNot] = [least((i) => seen[i] === 1), least((i) => seen[i] === 0)]
    const gains = costs[before]!.map((cost, i) => cost - costs[seen[i] === 1 ? ifSeen : ifNot]![i]!)
    const mean = gains.reduce((sum, gain) => sum + gain, 0) / count
    const squares = gains.reduce((sum, gain) => sum + (gain - mean) ** 2, 0)
    return { worth: mean, error: Math.sqrt(squares / count / count) }
  }

  test.each(['hose', 'riser'])('what a look at the %s is worth agrees with brute force', async (part) => {
    const worth = await worthOfLooks({
      model: three,
      samples: playSpan(program, span),
      states: startStates(program, span),
      seed: span.seed,
      play: playOf(program),
    })
    const look = worth.looks.find((one) => one.look.part === part)!
    const brute = nested('look', part)
    expect(brute.worth).toBeGreaterThan(5 * brute.error)
    expect(Math.abs(look.worth - brute.worth)).toBeLessThan(4 * Math.hypot(look.error, brute.error))
    expect(look.error).toBeLessThan(0.25 * brute.worth)
    expect(look).toMatchObject({ pays: true, ifSeen: { alternative: 'leave', renews: true } })
  })
})

test('a look that missed k times finds the next time with 2d / (2 + k)', () => {
  const looked = (yearsAgo: number) => ({ yearsAgo, check: 'look', seen: false })
  const model: LifeModel = {
    ...three,
    parts: three.parts.map((part, p) =>
      p > 0
        ? part
        : {
            ...part,
            modes: part.modes.map((mode) => ({
              ...mode,
              observations: [looked(0.5), looked(2), looked(0.1)],
            })),
          },
    ),
  }
  const look = looksOf(model).find(({ part }) => part === 'hose')!
  const states: StartStates = {
    histories: 4,
    // Sound; defective since a year, since three years, and since last week.
    state: Uint8Array.from([0, 1, 1, 1, 0, 0, 0, 0, 0, 0, 0, 0]),
    since: Float32Array.from([0, 1, 3, 0.02, ...new Array(8).fill(0)]),
    scaleLog: new Float32Array(12),
    kappaLog: new Float64Array(4),
  }
  const seen = (found: number) => 1 - (1 - 0.03) * (1 - found)
  expect([...chanceSeen(look, states)].map((chance) => chance.toFixed(12))).toEqual(
    [0.03, seen(1.5 / 4), seen(1.5 / 5), seen(0.75)].map((chance) => chance.toFixed(12)),
  )
})

test('what a look takes: hands, opening and trips at the rate of who does it, and the fault that it may put in', () => {
  const model: LifeModel = {
    ...three,
    labour: { ...three.labour, ownPerHour: 10, paidPerHour: 50, perTrip: 70, ownerAccessFactor: 2 },
    access: [
      { id: 'lid', hours: 0.5, includes: [] },
      { id: 'side', hours: 1, includes: ['lid'] },
    ],
    parts: three.parts.map((part, p) => (p === 0 ? { ...part, access: ['side'] } : part)),
  }
  const effort = {
    hours: 1,
    shareOfRepairHours: 0.5,
    trips: 1,
    price: 5,
    access: ['lid'],
    opensPart: true,
    intrusionChance: 0,
  }
  const costBy = (by: 'owner' | 'paid') =>
    looksOf({
      ...model,
      checks: [{ id: 'look', everyHours: 1, diligence: 1, effort: { ...effort, by } }],
    })[0]!.cost
  expect(costBy('owner')).toBeCloseTo((1 + 0.5 * 2 + 1.5 * 2) * 10 + 70 + 5, 9)
  expect(costBy('paid')).toBeCloseTo((1 + 0.5 * 2 + 1.5) * 50 + 70 + 5, 9)
})
