import { expect, test } from 'vitest'
import { trialModel } from '../../test/trial-model.js'
import { compile } from '../alternatives/program.js'
import { playSpan } from '../alternatives/simulate.js'
import type { Alternative, LifeModelInput } from '../forecast/life-model.js'
import { posteriorOf } from '../forecast/posterior.js'
import { additionsTo, besides } from './additions.js'

type Part = LifeModelInput['parts'][number]

const seed = 5
const repair = (price: number) => ({ price, hours: 0 })

/** A worn part, one that does not age, and the job that opens the way to one of them. */
function worthBeside(parts: LifeModelInput['parts'], alternatives: LifeModelInput['alternatives']) {
  const model = trialModel(parts, {
    horizonYears: 4,
    access: [
      { id: 'cover', hours: 1, includes: [] },
      { id: 'side', hours: 2, includes: ['cover'] },
    ],
    labour: { ownPerHour: 10, paidPerHour: 50 },
    alternatives,
  })
  const program = compile(model, posteriorOf(model, { seed }))
  const play = async (list: readonly Alternative[], which: Parameters<typeof playSpan>[1]) =>
    playSpan({ ...program, alternatives: list }, which)
  const job = model.alternatives[0]!
  const [sample] = playSpan({ ...program, alternatives: [job] }, { seed, from: 0, count: 800 })
  return additionsTo(job, { model, sample: sample!, seed, play })
}

const worn: Part = {
  id: 'worn',
  access: ['side'],
  age: { years: 9 },
  repair: repair(100),
  modes: [{ id: 'm', clock: 'years', shape: 4, scale: 10 }],
}
const ageless: Part = {
  id: 'ageless',
  age: { years: 9 },
  repair: repair(10),
  modes: [{ id: 'm', clock: 'years', shape: 1, scale: 10 }],
}

test('renewing a worn part saves the failures that it would have had and a new one has not', async () => {
  const { additions, openings } = await worthBeside([{ ...worn }, { ...ageless }], [{ id: 'leave' }])
  const one = additions.find(({ part }) => part === 'worn')!
  // Chance of failing within 4 years at age 9, and from new: 1 − exp((9/10)⁴ − (13/10)⁴) and 1 − exp(−(4/10)⁴); second
  // failures are left out of both (closed form, derived).
  const old = 1 - Math.exp(0.9 ** 4 - 1.3 ** 4)
  const young = 1 - Math.exp(-(0.4 ** 4))
  expect(one.failures.left).toBeCloseTo(old, 1)
  expect(one.failures.renewed).toBeCloseTo(young, 1)
  // a failure costs the piece, and 2 + 1 paid hours to get at it
  expect(Math.abs(one.saves - (old - young) * 250)).toBeLessThan(4 * one.error + 10)
  expect(one.price).toBeCloseTo(100, 6)
  expect(one.opens.toSorted()).toEqual(['cover', 'side'])
  expect(openings).toMatchObject([
    { id: 'cover', price: 50 },
    { id: 'side', price: 100 },
  ])
  // What does not age fails as often when it is new.
  const other = additions.find(({ part }) => part === 'ageless')
  if (other !== undefined) expect(Math.abs(other.saves)).toBeLessThan(4 * other.error + 1e-9)
})

test('what the job opens is open, and what it renews is no addition', async () => {
  const beside = { ...worn, id: 'beside' }
  const { additions, open } = await worthBeside(
    [{ ...worn }, beside],
    [{ id: 'mend', now: { parts: [{ part: 'worn' }] } }],
  )
  expect(open.toSorted()).toEqual(['cover', 'side'])
  expect(additions).toMatchObject([{ part: 'beside', opens: [] }])
})

test('what work may put in counts against a part: more where more is opened, and also beside a quote', async () => {
  const clumsy: Part = {
    ...worn,
    repair: { ...repair(100), intrusionChance: 0.5 },
  }
  const { additions } = await worthBeside([clumsy], [{ id: 'leave' }])
  const { additions: careful } = await worthBeside([{ ...worn }], [{ id: 'leave' }])
  expect(additions[0]!.mayPutIn).toBeGreaterThan(0)
  expect(careful[0]!.mayPutIn).toBe(0)

  const model = trialModel([clumsy, { ...clumsy, id: 'beside' }])
  const [one, beside] = model.parts
  const quoted = {
    id: 'mend',
    now: {
      parts: [{ part: one!.id, outcome: 'renewed' as const, quality: 1, agesLess: 1 }],
      quote: { price: 500, overrun: { median: 1, logSd: 0 }, besides: 0 },
      wait: 0,
      intrusionChance: 0.1,
    },
  }
  // 1 − (1 − 0.1)(1 − 0.5)
  expect(besides(model, quoted, [beside!]).now).toMatchObject({ intrusionChance: 0.55 })
})
