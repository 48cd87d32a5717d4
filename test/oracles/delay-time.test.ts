import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type Delay, logDensity, meanLife, survival } from '../../src/forecast/lives.js'
import {
  chanceAhead,
  type LifeSoFar,
  lnFailureDensity,
  onsetScale,
  readAhead,
  readFailure,
  readLife,
  stateAt,
  type TwoStageMode,
} from './delay-time.js'
import type { Look, Observation } from './delay-time-looks.js'
import { lnAverage } from './delay-time-panels.js'

function pair(age: number, ifSound: number, ifDefective: number, ifFailed?: number): Observation {
  return { kind: 'pair', age, ifSound, ifDefective, ...(ifFailed === undefined ? {} : { ifFailed }) }
}

function look(age: number, detection: number, more: Partial<Look> = {}): Look {
  return { kind: 'look', age, check: 'glance', detection, falseAlarm: 0, seen: false, ...more }
}

function lifeOf(mode: TwoStageMode, age: number, observations: readonly Observation[] = []): LifeSoFar {
  return { mode, age, observations, repeatedLooks: 'independent' }
}

interface Held {
  readonly life: LifeSoFar
  readonly scale: number
  readonly ahead: number
  /** Joint sound, defective, failed; chance ahead; density of failing now. */
  readonly expected: readonly [number, number, number, number, number]
}

const lognormal = (median: number, logSd: number): Delay => ({ kind: 'lognormal', median, logSd })

// Derived: the integrals as defined, by double-exponential quadrature in 25-digit arithmetic.
const held: readonly Held[] = [
  {
    life: lifeOf({ shape: 2.5, delay: lognormal(40, 0.7), hidden: false }, 700),
    scale: 900,
    ahead: 60,
    expected: [0.58654528100512, 0.0558228816936355, 0, 0.10301223824243, 0.00108772530879191],
  },
  {
    life: lifeOf({ shape: 2.5, delay: lognormal(40, 0.7), hidden: false }, 700, [
      pair(300, 0.98, 0.4),
      pair(500, 0.98, 0.4),
      pair(690, 0.98, 0.4),
    ]),
    scale: 900,
    ahead: 60,
    expected: [0.55205172611977, 0.0275137294582039, 0, 0.0733556302909199, 0.000430700984133084],
  },
  {
    life: lifeOf({ shape: 0.7, delay: { kind: 'weibull', shape: 1.5, scale: 300 }, hidden: true }, 2000, [
      pair(500, 0.99, 0.3, 0.05),
      pair(1500, 0.05, 0.6, 0.9),
    ]),
    scale: 5000,
    ahead: 100,
    expected: [
      0.0292365543555655, 0.00278236298276992, 0.164260442840015, 0.00624232914312785, 1.47438618652707e-5,
    ],
  },
  {
    life: lifeOf({ shape: 8, delay: lognormal(1, 0.3), hidden: true }, 11, [
      pair(10, 1, 0.5, 0.2),
      pair(4, 1, 0.5, 0.2),
    ]),
    scale: 12,
    ahead: 1,
    expected: [0.607422765554975, 0.178591097356987, 0.081932998778361, 0.198145465230823, 0.113011866195748],
  },
  {
    life: lifeOf({ shape: 1.3, delay: { kind: 'weibull', shape: 0.5, scale: 50 }, hidden: false }, 3000, [
      pair(2900, 0.9, 0.2),
    ]),
    scale: 4000,
    ahead: 500,
    expected: [0.452328505232598, 0.00749610677388145, 0, 0.131091067508461, 0.000110227488482526],
  },
]

test.each(held)(
  'weights, chance ahead and density against the integrals ($life.mode.shape, $scale)',
  (one) => {
    const { life, scale, ahead, expected } = one
    const read = readLife(life)
    const state = stateAt(read, scale)
    const evidence = Math.exp(state.logEvidence)
    expect(state.sound * evidence).toBeCloseTo(expected[0], 12)
    expect(state.defective * evidence).toBeCloseTo(expected[1], 12)
    expect(state.failed * evidence).toBeCloseTo(expected[2], 12)
    expect(chanceAhead({ life: read, ahead: readAhead(life, ahead) }, scale)).toBeCloseTo(expected[3], 12)
    expect(Math.abs(Math.exp(lnFailureDensity(readFailure(life), scale)) / expected[4] - 1)).toBeLessThan(
      1e-6,
    )
  },
)

const delay: fc.Arbitrary<Delay> = fc.oneof(
  fc.record({
    kind: fc.constant('lognormal' as const),
    median: fc.double({ min: 0.5, max: 500, noNaN: true }),
    logSd: fc.double({ min: 0, max: 2, noNaN: true }),
  }),
  fc.record({
    kind: fc.constant('weibull' as const),
    shape: fc.double({ min: 0.5, max: 6, noNaN: true }),
    scale: fc.double({ min: 0.5, max: 500, noNaN: true }),
  }),
  fc.constant({ kind: 'none' as const }),
)
const mode: fc.Arbitrary<TwoStageMode> = fc.record({
  shape: fc.double({ min: 0.3, max: 10, noNaN: true }),
  delay,
  hidden: fc.boolean(),
})
const chance = fc.double({ min: 0, max: 1, noNaN: true })
const looks = (age: number): fc.Arbitrary<Look[]> =>
  fc.array(
    fc.record({
      kind: fc.constant('look' as const),
      age: fc.double({ min: 0, max: age, noNaN: true }),
      check: fc.constantFrom('glance', 'test'),
      detection: chance,
      falseAlarm: chance,
      failedDetection: chance,
      seen: fc.boolean(),
    }),
    { maxLength: 4 },
  )
const repeatedLooks = fc.constantFrom('independent' as const, 'persistent' as const)

describe('whatever the mode', () => {
  test('without looks a hidden mode is in one of three states for certain, and being there tells nothing', () => {
    fc.assert(
      fc.property(mode, fc.double({ min: 30, max: 300, noNaN: true }), (mode, scale) => {
        const read = readLife(lifeOf({ ...mode, hidden: true }, 100))
        expect(stateAt(read, scale).logEvidence).toBeCloseTo(0, 10)
      }),
    )
  })

  test('what was seen or not seen at one look adds up to no look at all', () => {
    const life = looks(100).chain((earlier) => fc.tuple(mode, fc.constant(earlier), repeatedLooks))
    fc.assert(
      fc.property(
        life,
        fc.double({ min: 30, max: 300, noNaN: true }),
        ([mode, earlier, repeatedLooks], scale) => {
          const evidence = (observations: readonly Observation[]): number =>
            Math.exp(stateAt(readLife({ mode, age: 100, observations, repeatedLooks }), scale).logEvidence)
          const last = look(100, 0.7, { falseAlarm: 0.1 })
          const both = evidence([...earlier, { ...last, seen: true }]) + evidence([...earlier, last])
          expect(both).toBeCloseTo(evidence(earlier), 12)
        },
      ),
    )
  })

  test('failing ahead and not failing ahead make one, for a mode that shows', () => {
    const ahead = fc.double({ min: 0, max: 200, noNaN: true })
    const life = looks(100).chain((seen) => fc.tuple(mode, fc.constant(seen), repeatedLooks))
    fc.assert(
      fc.property(life, ahead, fc.double({ min: 50, max: 300, noNaN: true }), (life, ahead, scale) => {
        const [mode, observations, repeatedLooks] = life
        const now: LifeSoFar = { mode: { ...mode, hidden: false }, age: 100, observations, repeatedLooks }
        const joint = Math.exp(lnAverage(readAhead(now, ahead), scale))
        const evidence = (age: number): number =>
          Math.exp(stateAt(readLife({ ...now, age }), scale).logEvidence)
        expect(joint).toBeCloseTo(evidence(100) - evidence(100 + ahead), 11)
      }),
    )
  })

  test('the density of failing is the slope of the chance of having failed', () => {
    const smooth = mode.filter(({ delay }) => delay.kind !== 'lognormal' || delay.logSd > 0.2)
    fc.assert(
      fc.property(smooth, fc.double({ min: 50, max: 300, noNaN: true }), (mode, scale) => {
        const now = lifeOf({ ...mode, hidden: false }, 100)
        const step = 0.05
        const evidence = (age: number): number =>
          Math.exp(stateAt(readLife({ ...now, age }), scale).logEvidence)
        const slope = (evidence(100 - step) - evidence(100 + step)) / (2 * step)
        const density = Math.exp(lnFailureDensity(readFailure(now), scale))
        expect(Math.abs(slope - density)).toBeLessThan(1e-3 * density + 1e-7)
      }),
    )
  })

  test('a look that can see nothing changes nothing; one that sees every defect leaves none', () => {
    fc.assert(
      fc.property(
        mode,
        repeatedLooks,
        fc.double({ min: 50, max: 300, noNaN: true }),
        (mode, repeatedLooks, scale) => {
          const state = (observations: readonly Observation[]) =>
            stateAt(readLife({ mode, age: 100, observations, repeatedLooks }), scale)
          const [bare, blind, sharp] = [state([]), state([look(60, 0), look(100, 0)]), state([look(100, 1)])]
          // the looks cut the quadrature elsewhere: rounding differs
          expect(blind.defective).toBeCloseTo(bare.defective, 10)
          expect(blind.logEvidence).toBeCloseTo(bare.logEvidence, 10)
          expect(sharp.defective).toBe(0)
        },
      ),
    )
  })

  test('doubling the scale and every age changes no state', () => {
    fc.assert(
      fc.property(mode, fc.double({ min: 50, max: 300, noNaN: true }), (mode, scale) => {
        const doubled: Delay =
          mode.delay.kind === 'lognormal'
            ? { ...mode.delay, median: 2 * mode.delay.median }
            : mode.delay.kind === 'weibull'
              ? { ...mode.delay, scale: 2 * mode.delay.scale }
              : mode.delay
        const once = stateAt(readLife(lifeOf(mode, 100, [look(70, 0.6)])), scale)
        const twice = stateAt(readLife(lifeOf({ ...mode, delay: doubled }, 200, [look(140, 0.6)])), 2 * scale)
        expect(twice.defective).toBeCloseTo(once.defective, 10)
        expect(twice.logEvidence).toBeCloseTo(once.logEvidence, 10)
      }),
    )
  })
})

test('a second look by the same check is worth less than the first, and less than one by another check', () => {
  const mode: TwoStageMode = { shape: 2, delay: lognormal(60, 0.7), hidden: false }
  const defective = (observations: readonly Observation[]): number =>
    stateAt(readLife({ mode, age: 100, observations, repeatedLooks: 'persistent' }), 120).defective
  const odds = (chance: number): number => chance / (1 - chance)
  const [none, one, same] = [
    defective([]),
    defective([look(99, 0.6)]),
    defective([look(99, 0.6), look(99, 0.6)]),
  ]
  const other = defective([look(99, 0.6), look(99, 0.6, { check: 'test' })])
  expect(odds(one) / odds(none)).toBeLessThan(odds(same) / odds(one))
  expect(other).toBeLessThan(same)
})

test('a hidden mode without delay is failed unnoticed by exactly its chance of having failed', () => {
  const state = stateAt(readLife(lifeOf({ shape: 2, delay: { kind: 'none' }, hidden: true }, 50)), 70)
  expect(state.failed).toBeCloseTo(1 - survival({ kind: 'weibull', shape: 2, scale: 70 }, 50), 14)
  expect(state.defective).toBe(0)
})

test('a part of age 0 is sound, and its looks count as on a sound part', () => {
  const life = lifeOf({ shape: 2, delay: lognormal(5, 1), hidden: true }, 0, [
    look(0, 0.9, { falseAlarm: 0.2 }),
  ])
  expect(stateAt(readLife(life), 10)).toEqual({
    sound: 1,
    defective: 0,
    failed: 0,
    logEvidence: Math.log(0.8),
  })
})

test('what cannot be has no evidence and no state', () => {
  const life = lifeOf({ shape: 2, delay: { kind: 'none' }, hidden: false }, 10, [look(5, 1, { seen: true })])
  expect(stateAt(readLife(life), 10)).toEqual({ sound: 0, defective: 0, failed: 0, logEvidence: -Infinity })
  expect(chanceAhead({ life: readLife(life), ahead: readAhead(life, 5) }, 10)).toBe(0)
})

test('a scale far too small for the age has a finite, very small likelihood', () => {
  const life = readLife(lifeOf({ shape: 4, delay: { kind: 'none' }, hidden: false }, 1000))
  expect(stateAt(life, 10).logEvidence).toBeCloseTo(-1e8, 4)
})

test('without a delay the density of failing is that of the onset', () => {
  const life = lifeOf({ shape: 3, delay: { kind: 'none' }, hidden: false }, 40, [
    look(20, 0.5, { falseAlarm: 0.1 }),
  ])
  const expected = logDensity({ kind: 'weibull', shape: 3, scale: 60 }, 40) + Math.log(0.9)
  expect(lnFailureDensity(readFailure(life), 60)).toBeCloseTo(expected, 14)
})

test('onset and delay share the mean life, and the onset keeps at least half', () => {
  const life = { shape: 2.2, scale: 1000 }
  const whole = meanLife({ kind: 'weibull', ...life })
  const onset = (meanDelay: number): number =>
    meanLife({ kind: 'weibull', shape: 2.2, scale: onsetScale({ ...life, meanDelay }) })
  expect(onset(200) + 200).toBeCloseTo(whole, 9)
  expect(onset(800)).toBeCloseTo(whole / 2, 9)
  expect(onsetScale({ ...life, meanDelay: 0 })).toBe(1000)
})

test('refuses what cannot be', () => {
  const mode: TwoStageMode = { shape: 2, delay: { kind: 'none' }, hidden: false }
  expect(() => readLife(lifeOf(mode, -1))).toThrow('age must be')
  expect(() => readLife(lifeOf({ ...mode, shape: 0.1 }, 5))).toThrow('shape must be 0.2 to 20')
  expect(() => readLife(lifeOf(mode, 5, [look(6, 0.5)]))).toThrow('age must be 0 to 5')
  expect(() => readLife(lifeOf(mode, 5, [look(3, 1.5)]))).toThrow('detection must be 0 to 1')
  expect(() => readLife(lifeOf(mode, 5, [pair(3, -1, 0)]))).toThrow('ifSound must be')
  expect(() => readAhead(lifeOf(mode, 5), -1)).toThrow('ahead must be')
  expect(() => readFailure(lifeOf(mode, 0))).toThrow('age must be')
})
