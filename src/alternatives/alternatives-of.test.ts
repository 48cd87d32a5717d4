import { expect, test } from 'vitest'
import { shippedCatalogue } from '../../test/shipped-limits.js'
import { catalogueFor } from '../catalogue/scale.js'
import { type Alternative, lifeModelSchema } from '../forecast/life-model.js'
import type { OpenQuote, OwnAlternative, SetRegister } from '../register/register-types.js'
import { judged, withOwn } from './alternatives-of.js'
import type { OpenStop } from './open-stops.js'

const catalogue = catalogueFor(shippedCatalogue, {
  ratingKW: 10,
  rpm: 1500,
  excitation: 'brushless-regulator',
})
const mode = { id: 'leak', clock: 'years', shape: 2, scale: 10 } as const
const other = { ...mode, id: 'crack' }
const model = lifeModelSchema.parse({
  type: 'gensettle/life-model',
  version: 1,
  horizonYears: 8,
  labour: { paidPerHour: 50 },
  parts: [
    { id: 'elbow', name: 'Elbow', modes: [mode, other] },
    { id: 'stator-winding', modes: [mode] },
  ],
  candidates: [
    { id: 'new-same', price: 9000 },
    { id: 'used-same', price: 3000 },
  ],
})

const quote: OpenQuote = {
  entry: 'q',
  job: 'rewind',
  day: 0,
  amount: 1000,
  withTax: 1200,
  taxUnknown: false,
  firmness: 'firm',
  subjectToStripDown: false,
  excludes: ['removal', 'refitting'],
  expired: false,
  covers: { parts: [] },
}

const danger: OpenStop = {
  line: 'carbon-monoxide',
  by: 'danger',
  parts: ['elbow'],
  danger: 'carbon-monoxide',
  mode: 'leak',
  why: 'A danger was found at the elbow and is not made safe: carbon monoxide.',
}

function registerWith(own: readonly Omit<OwnAlternative, 'entry'>[]) {
  const ownAlternatives = own.map((one, i) => ({ ...one, entry: `e${i}` }))
  return { openQuotes: [quote], ownAlternatives } as unknown as SetRegister
}

const built: Alternative[] = [
  { id: 'leave', name: 'Leave it', now: 'leave' },
  { id: 'replace-new-same', now: { replaceWith: 'new-same' } },
]

function laidOut(own: readonly Omit<OwnAlternative, 'entry'>[], stops: readonly OpenStop[] = []) {
  return withOwn({ model, catalogue, register: registerWith(own), stops }, built)
}

test('one of the owner’s stands beside the built ones, in the place of one, or takes it away', () => {
  expect(laidOut([]).alternatives).toEqual(built)
  const beside = laidOut([{ id: 'wait', name: 'Wait', now: 'leave', later: { year: 2 } }]).alternatives
  expect(beside).toEqual([
    ...built,
    { id: 'wait', name: 'Wait', now: 'leave', replaceLater: { year: 2, with: 'new-same' } },
  ])
  const inPlace = laidOut([{ id: 'leave', name: 'Sit tight', now: 'give-up' }]).alternatives
  expect(inPlace).toEqual([{ id: 'leave', name: 'Sit tight', now: 'give-up' }, built[1]])
  expect(laidOut([{ id: 'leave', leftOut: true }]).alternatives).toEqual([built[1]])
})

test('a job at a quote has the quote’s terms, one with a price the price, one with neither the parts’ own', () => {
  const parts = [{ part: 'stator-winding' }, { part: 'elbow', outcome: 'reconditioned' as const }]
  const [, , quoted, priced, bare] = laidOut([
    { id: 'a', now: 'mend', parts, job: 'rewind', besides: 40 },
    { id: 'b', now: 'mend', parts, price: 500, days: 3 },
    { id: 'c', now: 'mend', parts },
  ]).alternatives.map(({ now }) => now)
  expect(quoted).toMatchObject({
    parts: [
      { part: 'stator-winding', outcome: 'renewed', quality: 0.85, agesLess: 1 },
      { part: 'elbow', outcome: 'reconditioned', quality: 1, agesLess: 0.85 },
    ],
    quote: { price: 1200, overrun: { median: 1.02, logSd: 0.06 } },
  })
  // removal 6 (4 to 9) and refitting 8 (5 to 12) hours at 50, and 40 on top: means added up
  const mean = (median: number, logSd: number) => median * Math.exp(logSd ** 2 / 2)
  const logSd = (low: number, high: number) => Math.log(high / low) / (2 * 1.2816)
  const { quote: terms } = quoted as { quote: { besides: { median: number; logSd: number } } }
  expect(mean(terms.besides.median, terms.besides.logSd)).toBeCloseTo(
    mean(300, logSd(4, 9)) + mean(400, logSd(5, 12)) + mean(40, 0.25),
    9,
  )
  expect(priced).toMatchObject({ price: 500, days: 3, parts: [{ quality: 1 }, {}] })
  expect(priced).not.toHaveProperty('quote')
  expect(bare).not.toHaveProperty('price')
  expect(bare).toMatchObject({ intrusionChance: 0 })
})

test('what the set does not have is told all at once, and the built one stays', () => {
  const { alternatives, problems } = laidOut([
    {
      id: 'leave',
      now: 'mend',
      parts: [{ part: 'mast' }, { part: 'elbow', mode: 'rust' }],
      job: 'paint',
      later: { year: 1, with: 'none' },
    },
  ])
  expect(alternatives).toEqual(built)
  expect(problems.map(({ code, path }) => `${code} ${path}`)).toEqual([
    'unknown-part alternative leave: parts.0.part',
    'unknown-mode alternative leave: parts.1.mode',
    'unknown-candidate alternative leave: later.with',
    'no-open-quote alternative leave: job',
  ])
})

test('a danger that is left open bars the owner’s alternatives as it bars the built ones', () => {
  const elbow = (over: object) => ({ now: 'mend' as const, parts: [{ part: 'elbow', ...over }] })
  const { alternatives } = laidOut(
    [
      { id: 'wait', now: 'leave' },
      { id: 'winding', now: 'mend', parts: [{ part: 'stator-winding' }] },
      { id: 'patch', ...elbow({ outcome: 'patched' }) },
      { id: 'wrong-mode', ...elbow({ mode: 'crack', outcome: 'cleared' }) },
      { id: 'right-mode', ...elbow({ mode: 'leak', outcome: 'cleared' }) },
      { id: 'renew', ...elbow({ mode: 'crack' }) },
    ],
    [danger],
  )
  const barred = alternatives.filter((one) => one.barred !== undefined).map(({ id }) => id)
  expect(barred).toEqual(['leave', 'wait', 'winding', 'patch', 'wrong-mode'])
})

test('where all that is open was left out, doing without is put back and told', () => {
  const { alternatives, problems } = laidOut([{ id: 'replace-new-same', leftOut: true }], [danger])
  expect(alternatives.map(({ id, barred }) => [id, barred === undefined])).toEqual([
    ['leave', false],
    ['give-up', true],
  ])
  expect(problems.map(({ code }) => code)).toEqual(['none-open'])
})

test('however many dangers stand open, why they bar a choice fits in a life model, each told once', () => {
  const many = Array.from({ length: 40 }, (_, i) => ({ ...danger, why: `${danger.why} ${i}` }))
  const { alternatives } = laidOut([], many)
  expect(lifeModelSchema.safeParse({ ...model, alternatives }).success).toBe(true)
  const twice = laidOut([], [danger, { ...danger, mode: 'crack' }]).alternatives[0]!.barred!
  expect(twice.match(/carbon monoxide/g)).toHaveLength(1)
})

test('there is room for forty in all', () => {
  const many = Array.from({ length: 60 }, (_, i) => ({ id: `own-${i}`, now: 'leave' as const }))
  const { alternatives, problems } = laidOut(many, [danger])
  expect(lifeModelSchema.safeParse({ ...model, alternatives }).success).toBe(true)
  expect(problems.filter(({ code }) => code === 'too-many')).toHaveLength(60 + 2 - 39)
})

test('a failed test bars what does no work; whatever work is done has it mended along', () => {
  const why = 'No safe path to earth: 3 Ω between frame and bond.'
  const stops = [
    { line: 'earth-path', by: 'test', parts: [], why, byAnyWork: true, test: 'bond-test' },
  ] as const
  const elbow = { part: 'elbow', outcome: 'renewed', quality: 1 } as const
  const mend = {
    ...built[0]!,
    id: 'mend',
    now: { parts: [elbow], wait: 0, intrusionChance: 0 },
  } as Alternative
  const { alternatives } = judged(stops, [...built, mend])
  expect(alternatives.map(({ id, barred }) => [id, barred])).toEqual([
    ['leave', why],
    ['replace-new-same', undefined],
    ['mend', undefined],
  ])
})

test('what was passed over with a reason bars nothing', () => {
  const passedOver = { because: 'aired, and nobody aboard', date: '2024-05-02' }
  const over = laidOut([{ id: 'wait', now: 'leave' }], [{ ...danger, passedOver }])
  expect(over.alternatives.filter(({ barred }) => barred !== undefined)).toEqual([])
})
