import fc from 'fast-check'
import { expect, test } from 'vitest'
import { branched } from './plan-branch.js'
import type { RunDay } from './plan-day.js'
import { layDown } from './plan-lay.js'
import { addChoice, addColumn, emptyProgramme, loadSolver, optimumOf } from './plan-milp.js'
import { byForm, holdsOut, patternsOf } from './plan-patterns.js'
import { searchPlan } from './plan-search.js'

const highs = await loadSolver()
const seconds = 20

/** Days that stand for the mean of many, where the set may run for part of an hour: tight ones, and some that cannot be. */
const partDay = fc
  .record({
    base: fc.array(fc.constantFrom(0, 0, 0, 0.6), { minLength: 5, maxLength: 5 }),
    jobs: fc.array(fc.record({ mostKW: fc.constantFrom(1.2, 2), share: fc.constantFrom(0.3, 0.6, 1) }), {
      maxLength: 2,
    }),
    stores: fc.array(
      fc.record({
        kW: fc.constantFrom(0.3, 1, 1.6),
        hours: fc.constantFrom(0.4, 1.2, 2.3),
        way: fc.constantFrom('once' as const, 'steady' as const, 'whole' as const),
      }),
      { minLength: 1, maxLength: 3 },
    ),
    mostKW: fc.constantFrom(2.4, 3.2),
    isChained: fc.boolean(),
    isQuiet: fc.boolean(),
  })
  .map(({ base, jobs, stores, mostKW, isChained, isQuiet }): RunDay => {
    const { length } = base
    return {
      slotHours: 1,
      baseKW: base,
      baseMostKW: base.map((kW) => (kW > 0 ? 1.1 : 0)),
      baseShare: base.map((kW) => (kW > 0 ? 0.7 : 0)),
      partSlots: true,
      batches: jobs.map(({ mostKW: kW, share }, at) => ({
        id: `j${at}`,
        kW: kW * share,
        mostKW: kW,
        slots: 1,
        share,
        ...(isChained && at === 1 ? { after: 'j0' } : {}),
      })),
      stores: stores.map(({ kW, hours, way }, at) => ({
        id: `s${at}`,
        kW,
        perHour: 1,
        unit: 'h' as const,
        least: 0,
        ...(way === 'steady'
          ? { holds: 0.6 * hours, drawn: base.map(() => hours / length) }
          : { holds: Math.ceil(hours), begins: 0, ends: hours, drawn: base.map(() => 0) }),
        ...(way === 'whole' ? { wholeSlots: true } : {}),
      })),
      set: { ratingKW: mostKW / 0.9, mostKW, lowKW: mostKW / 3 },
      costs: { perHour: 0.3, perKWh: 0.27, perStart: 0.125, perLowHour: 0.16 },
      quiet: base.map((kW, t) => isQuiet && t === 0 && kW === 0),
    }
  })

test('the search costs what the programme of the whole day does', () => {
  fc.assert(
    fc.property(partDay, (day) => {
      const whole = optimumOf(highs, layDown(day).programme, { seconds })
      const found = searchPlan(highs, day, { seconds })
      expect(found.ok).toBe(whole.ok)
      if (found.ok && whole.ok) expect(found.cost).toBeCloseTo(whole.cost, 6)
    }),
    { numRuns: 6, seed: 11 },
  )
})

test('a day with too much to look through is given up, with what was found', () => {
  const day: RunDay = {
    ...fc.sample(partDay, { numRuns: 1, seed: 3 })[0]!,
    batches: [],
    quiet: Array(5).fill(false),
  }
  expect(searchPlan(highs, day, { seconds, programmes: 1 })).toMatchObject({ ok: false, why: 'too-many' })
})

test('every pattern of slots is found once, and only those that are asked for', () => {
  fc.assert(
    fc.property(
      fc.array(fc.constantFrom('base', 'quiet', 'open', 'open'), { minLength: 1, maxLength: 9 }),
      fc.integer({ min: 1, max: 6 }),
      fc.integer({ min: 1, max: 3 }),
      (slots, count, runs) => {
        const day = {
          baseKW: slots.map((slot) => (slot === 'base' ? 1 : 0)),
          quiet: slots.map((slot) => slot === 'quiet'),
        } as unknown as RunDay
        const isMeant = (on: number[]) =>
          on.length === count &&
          on.filter((t) => !on.includes(t - 1)).length === runs &&
          slots.every((slot, t) => (slot === 'base' ? on.includes(t) : slot !== 'quiet' || !on.includes(t)))
        const all = Array.from({ length: 2 ** slots.length }, (_, bits) =>
          slots.flatMap((_slot, t) => (bits & (1 << t) ? [t] : [])),
        ).filter(isMeant)
        const found = patternsOf(day, { slots: count, runs }, 1000)!.map((pattern) => pattern.join())
        expect([...found].sort()).toEqual(all.map((on) => on.join()).sort())
        if (all.length > 0) expect(patternsOf(day, { slots: count, runs }, all.length - 1)).toBeUndefined()
      },
    ),
    { numRuns: 60 },
  )
})

test('runs alike from either end are one form, unless something comes after something else', () => {
  const day = {
    baseKW: [0, 0, 0, 0, 1, 0, 0, 0],
    batches: [],
    set: { mostKW: 4 },
  } as unknown as RunDay
  const patterns = [
    [0, 3, 4],
    [4, 5, 7],
    [1, 2, 4],
  ]
  expect(byForm(day, patterns).map((alike) => alike.length)).toEqual([2, 1])
  const chained = { ...day, batches: [{ id: 'a', kW: 1, slots: 1, after: 'b' }] }
  expect(byForm(chained, patterns)).toHaveLength(3)
})

test('a store that runs low however it is filled rules a pattern out', () => {
  const store = {
    id: 's',
    kW: 1,
    perHour: 1,
    unit: 'h' as const,
    holds: 1,
    least: 0,
    drawn: Array(8).fill(0.25),
  }
  const day = { slotHours: 1, baseKW: Array(8).fill(0), stores: [store] } as unknown as RunDay
  // derived: two hours a day are drawn and one is held, so that it has to be filled every four hours
  expect(holdsOut(day, [0, 4])).toBe(true)
  expect(holdsOut(day, [0, 6])).toBe(false)
  expect(holdsOut(day, [0])).toBe(false)
})

test('branching on warm relaxations comes to what the solver says, or says that nothing costs less', () => {
  const amounts = fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 6, maxLength: 6 })
  fc.assert(
    fc.property(amounts, amounts, amounts, fc.integer({ min: 8, max: 20 }), (costs, first, second, least) => {
      const programme = emptyProgramme()
      const chosen = costs.map((cost, at) => addChoice(programme, at % 3 === 0 ? 0 : cost))
      const rest = addColumn(programme, { cost: 4, to: 5 })
      const sum = (of: readonly number[]) => chosen.map((column, at) => [column, of[at]!] as const)
      programme.rows.push({ terms: [...sum(first), [rest, 1]], least })
      programme.rows.push({ terms: sum(second), most: 14 })
      const told = optimumOf(highs, programme, { seconds })
      const found = branched(highs, programme, { below: Number.POSITIVE_INFINITY, most: 1000 })!
      expect(found.ok).toBe(told.ok)
      if (!found.ok || !told.ok) return
      expect(found.cost).toBeCloseTo(told.cost, 6)
      expect(branched(highs, programme, { below: told.cost, most: 1000 })).toMatchObject({ ok: false })
      expect(branched(highs, programme, { below: Number.POSITIVE_INFINITY, most: 0 })).toBeUndefined()
    }),
    { numRuns: 25 },
  )
})
