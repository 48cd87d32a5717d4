import fc from 'fast-check'
import { expect, test } from 'vitest'
import { links } from '../../../test/catalogue-links.js'
import { shippedLimits } from '../../../test/shipped-limits.js'
import { windingById, windingMarked } from './patterns.js'
import { joinedWinding, jointOf, voltsBetween } from './solve-links.js'
import { moveSupply } from './supply-move.js'
import { findLeads, type JoinReading, readPairs, readReadings, unclearReadings } from './unmarked.js'
import { leadsOf } from './winding.js'
import { waysOfLinking } from './wired-for.js'

const twelve = windingById(links, 'twelve-leads')
const four = windingById(links, 'four-leads')
const { coils } = windingMarked(twelve)

/** What a meter would read on a real machine whose leads bear other marks: solved from its coils, not from a table. */
function measured(
  leads: readonly string[],
  { join, read }: { join: readonly string[]; read: readonly string[] },
): number {
  const marks = leadsOf({ coils })
  const real = (lead: string) => marks[leads.indexOf(lead)]!
  const of = joinedWinding({ coils }, { joints: [join.map(real)], lines: [], sensing: [] }, { emfV: 20 })
  const [from, to] = read.map((lead) => jointOf(of.joints, real(lead)))
  const volts = voltsBetween(of, { from: from!, to: to! })!
  return Math.hypot(volts.re, volts.im)
}

test('whatever the leads are called, asking as told finds them, in ten measurements at most', () => {
  const letters = [...'abcdefghijkl']
  let most = 0
  fc.assert(
    fc.property(
      fc.shuffledSubarray(letters, { minLength: 12, maxLength: 12 }),
      fc.shuffledSubarray([...coils], { minLength: 6, maxLength: 6 }),
      fc.array(fc.boolean(), { minLength: 6, maxLength: 6 }),
      (leads, order, turned) => {
        const lead = (mark: string) => leads[leadsOf({ coils }).indexOf(mark)]!
        const pairs = order.map(({ start, end }, at) => ({
          leads: (turned[at] ? [lead(end), lead(start)] : [lead(start), lead(end)]) as [string, string],
        }))
        const readings: JoinReading[] = []
        let answer = findLeads({ pairs, readings, emfV: 20, coils })
        expect(answer.left).toBe(480)
        while (answer.next !== null) {
          readings.push({ joined: answer.next.join, volts: measured(leads, answer.next) })
          answer = findLeads({ pairs, readings, emfV: 20, coils })
        }
        most = Math.max(most, readings.length)
        expect(answer.left).toBe(1)
        // The marks found make the same machine: phases may have changed names, and all coils be turned round together.
        const found = new Map(answer.marks.map((one) => [one.mark, one.lead]))
        const star = [...['T4', 'T7'], ...['T5', 'T8'], ...['T6', 'T9'], ...['T10', 'T11', 'T12']].map(
          (mark) => found.get(mark)!,
        )
        const joints = [star.slice(0, 2), star.slice(2, 4), star.slice(4, 6), star.slice(6)]
        const real = (name: string) => leadsOf({ coils })[leads.indexOf(name)]!
        const of = joinedWinding(
          { coils },
          { joints: joints.map((joint) => joint.map(real)), lines: [], sensing: [] },
          {},
        )
        const at = (mark: string) => jointOf(of.joints, real(found.get(mark)!))
        for (const [one, other] of [
          ['T1', 'T2'],
          ['T2', 'T3'],
          ['T1', 'T3'],
        ] as const) {
          const volts = voltsBetween(of, { from: at(one), to: at(other) })!
          expect(Math.hypot(volts.re, volts.im)).toBeCloseTo(2 * Math.sqrt(3), 9)
        }
      },
    ),
    { numRuns: 12 },
  )
  expect(most).toBeLessThanOrEqual(10)
})

// One end of each of two pairs joined: 2 E, nothing, 1.732 E or E. Derived.
test.each([
  [240, 'T4'],
  [0, 'T3'],
] as const)('four leads: %d V tells the direction', (volts, mark) => {
  const { pairs } = readPairs('a-b 0.31, c-d 0.31', { path: '', count: 2 })
  const { readings } = readReadings(`b-c ${volts}`, { path: '', pairs })
  const answer = findLeads({ pairs, readings, emfV: 120, coils: windingMarked(four).coils })
  expect(answer.left).toBe(1)
  // b is T2. In series 2 E: c is the start of the second half, T3; nothing: c is its end, T4.
  expect(answer.marks.find(({ lead }) => lead === 'd')!.mark).toBe(mark)
})

test('readings between two answers are asked for again, and contradictions named', () => {
  const { pairs } = readPairs('a-b, c-d, e-f, g-h, i-j, k-l', { path: '', count: 6 })
  const { readings } = readReadings('a-c 0, c-e 0', { path: '', pairs })
  const answer = findLeads({ pairs, readings, emfV: 20, coils })
  // Three pairs cannot be of one phase.
  expect(answer).toMatchObject({ left: 0, marks: [], next: null })
  expect(answer.doubtful).toHaveLength(2)
  expect(unclearReadings([{ joined: ['a', 'c'], volts: 28 }], 20)).toHaveLength(1)
  expect(unclearReadings([{ joined: ['a', 'c'], volts: 36 }], 20)).toHaveLength(0)
})

test('what is typed wrongly is told at once', () => {
  const read = readPairs('a-b, b-c 0.3, x', { path: '--pairs', count: 6 })
  expect(read.problems.map(({ code, found }) => `${code} ${found}`)).toEqual(['twice b', 'wrong-form x'])
  const { pairs } = readPairs('a-b, c-d', { path: '', count: 2 })
  const bad = readReadings('a-b 3, a-z 3, a', { path: '', pairs })
  expect(bad.problems.map(({ code }) => code)).toEqual(['contradiction', 'unknown-lead', 'wrong-form'])
})

const supply = (id: string) => links.supplies.find((one) => one.id === id)!

test('wired for 230 V: four leads in series where each half is made for 115 V', () => {
  const ways = waysOfLinking(links, {
    limits: shippedLimits,
    winding: four,
    supply: supply('230-50'),
    made: { emfV: 115, hertz: 50 },
  })
  expect(ways.map(({ pattern, fits }) => `${pattern} ${fits}`)).toEqual([
    'halves-series as-made',
    'halves-parallel more-flux',
  ])
  expect(ways[0]).toMatchObject({ joined: 'T2-T3', lines: 'L=T1, N=T4', emfV: 115, lineAmps: 1, share: 1 })
})

test('wired for 120/240 V: a double delta, and never a pattern whose neutral is not in the middle', () => {
  const ways = waysOfLinking(links, {
    limits: shippedLimits,
    winding: twelve,
    supply: supply('240-60'),
    made: { emfV: 120, hertz: 60 },
  })
  expect(ways[0]).toMatchObject({
    pattern: 'double-delta',
    fits: 'as-made',
    emfV: expect.closeTo(120, 9),
    share: expect.closeTo(0.5, 9),
  })
  expect(ways.map(({ pattern }) => pattern).sort()).toEqual([
    'double-delta',
    'six-in-series',
    'zigzag-series',
  ])
  const star = waysOfLinking(links, {
    limits: shippedLimits,
    winding: twelve,
    supply: supply('208-60'),
    made: { emfV: 120, hertz: 60 },
  })
  expect(star[0]).toMatchObject({ pattern: 'parallel-star', fits: 'as-made' })
  expect(star.find(({ pattern }) => pattern === 'series-star')!.fits).toBe('less-flux')
})

test('the same iron gives 5/6 of the volts at 50 Hz', () => {
  const [best] = waysOfLinking(links, {
    limits: shippedLimits,
    winding: twelve,
    supply: supply('400-50'),
    made: { emfV: 138.56, hertz: 60 },
  })
  expect(best).toMatchObject({ pattern: 'series-star', fits: 'as-made' })
  expect(best!.flux).toBeCloseTo(1, 3)
})

// 4 poles: 1,500 rpm at 50 Hz, 1,800 at 60; breaker at most 115 % of full load: 10 kVA at 240 V 41.67 A, 47.9 A (46 CFR 183.320(f); seen).
test('going over from 230 V 50 Hz to 120/240 V 60 Hz', () => {
  const moved = moveSupply({
    from: supply('230-50'),
    to: supply('240-60'),
    rpm: 1500,
    kva: 10,
    ways: [],
    limits: shippedLimits,
  })
  expect(moved.poles).toBe(4)
  expect(moved.rpm).toEqual({ now: 1500, after: 1800 })
  expect(moved.breaker!.afterAmps).toBeCloseTo(41.67, 2)
  expect(moved.breaker!.afterMost).toBeCloseTo(47.9, 1)
  const verdict = (start: string) => moved.aboard.find(({ load }) => load.startsWith(start))!
  expect(verdict('Chargers').verdict).toBe('goes on')
  expect(verdict('Heaters')).toMatchObject({
    verdict: 'goes on',
    says: expect.stringContaining('1.09 times'),
  })
  expect(verdict('Pumps')).toMatchObject({
    verdict: 'its plate decides',
    says: expect.stringContaining('1.73 times'),
  })
  const back = moveSupply({
    from: supply('240-60'),
    to: supply('230-50'),
    rpm: 1800,
    kva: 10,
    ways: [],
    limits: shippedLimits,
  })
  expect(back.rpm).toEqual({ now: 1800, after: 1500 })
  expect(back.breaker!.afterKva).toBeCloseTo(25 / 3, 9)
  expect(back.aboard.find(({ load }) => load.startsWith('Transformers'))!.says).toContain(
    '1.15 times the flux',
  )
  // Three phases joined in parallel star, then a double delta at the same volts a coil: half is left.
  const made = { emfV: 120, hertz: 60 }
  const linkedFor = (id: string) =>
    waysOfLinking(links, { winding: twelve, supply: supply(id), made, limits: shippedLimits })
  const toOnePhase = moveSupply({
    from: supply('208-60'),
    to: supply('240-60'),
    kva: 15,
    ways: linkedFor('240-60'),
    waysNow: linkedFor('208-60'),
    limits: shippedLimits,
  })
  expect(toOnePhase.breaker!.afterKva).toBeCloseTo(7.5, 1)
  expect(toOnePhase.breaker!.afterAmps).toBeCloseTo(31.2, 1)
  expect(toOnePhase.steps.find(({ what }) => what.startsWith('Breaker'))!.says).toMatch(
    /^It gives 7\.49 kVA in the place of 15: the coils give 50 % of it/,
  )
  expect(
    moveSupply({ from: supply('120-60'), to: supply('230-50'), ways: [], limits: shippedLimits }).aboard[1]!
      .verdict,
  ).toBe('does not')
})
