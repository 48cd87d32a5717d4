import fc from 'fast-check'
import { expect, test } from 'vitest'
import { links } from '../../../test/catalogue-links.js'
import { readJoined, readLinksFile, relabelled } from './links-text.js'
import { loadedWinding, readLoads } from './loaded.js'
import { type LinksAnswer, lookAtLinks } from './look-at-links.js'
import { linksFromFile, patternJoined, patternOf, windingById, windingMarked } from './patterns.js'
import { joinedWinding } from './solve-links.js'
import { type CoilValues, type Joined, leadsOf, type Winding } from './winding.js'

const four = windingMarked(windingById(links, 'four-leads'))
const twelve = windingMarked(windingById(links, 'twelve-leads'))

function pattern(id: string) {
  return links.patterns.find((one) => one.id === id)!
}

function given(id: string, values: CoilValues = {}): LinksAnswer {
  const of = pattern(id)
  return lookAtLinks(of.winding === 'four-leads' ? four : twelve, patternJoined(links, of), values)
}

function joinedAs(winding: Winding, joined: string, lines: string, sensing = ''): Joined {
  const read = readJoined({ joined, lines, sensing }, { leads: leadsOf(winding) })
  expect(read.problems).toEqual([])
  return read.joined
}

function volts({ outlets }: LinksAnswer, from: string, to: string): number {
  return outlets.find((pair) => pair.from.split('/').includes(from) && pair.to.split('/').includes(to))!
    .volts!
}

function ohms({ outlets }: LinksAnswer, from: string, to: string): number {
  return outlets.find((pair) => pair.from.split('/').includes(from) && pair.to.split('/').includes(to))!.ohms!
}

/** Both coils of a phase the other way round: the ends change places in the joints, not in the machine. */
function reversed(winding: Winding, ...names: string[]): Winding {
  return {
    coils: winding.coils.map((coil) =>
      names.includes(coil.name) ? { ...coil, degrees: coil.degrees + 180 } : coil,
    ),
  }
}

// NEMA MG 1 connections of machines with twelve leads, as multiples of a coil's EMF E, of its current and of the nameplate 6 E I;
// a four-lead set against its own, 2 E I. Recalled; worked out by two phasor solvers of others. Ohms: derived from the same joints.
test.each([
  ['halves-series-three-wire', { L1L2: 2, L1N: 1 }, { amps: 1, share: 1 }, { L1L2: 2, L1N: 1 }],
  ['halves-series', { LN: 2 }, { amps: 1, share: 1 }, { LN: 2 }],
  ['halves-parallel', { LN: 1 }, { amps: 2, share: 1 }, { LN: 0.5 }],
  ['series-star', { L1L2: 3.4641, L1N: 2 }, { amps: 1, share: 1 }, { L1L2: 4, L1N: 2 }],
  ['parallel-star', { L1L2: 1.7321, L1N: 1 }, { amps: 2, share: 1 }, { L1L2: 1, L1N: 0.5 }],
  ['series-delta', { L1L2: 2, L2L3: 2 }, { amps: 1.7321, share: 1 }, { L1L2: 4 / 3 }],
  [
    'series-delta-middle',
    { L1L2: 2, L1N: 1, L2N: 1, L3N: 1.7321 },
    { amps: 1.7321, share: 1 },
    { L1L2: 4 / 3 },
  ],
  ['parallel-delta', { L1L2: 1, L3L2: 1 }, { amps: 3.4641, share: 1 }, { L1L2: 1 / 3 }],
  ['double-delta', { L1L2: 2, L1N: 1, L2N: 1 }, { amps: 1.5, share: 0.5 }, { L1L2: 4 / 3, L1N: 2 / 3 }],
  ['double-delta-two-wire', { LN: 2 }, { amps: 1.5, share: 0.5 }, { LN: 4 / 3 }],
  ['zigzag-series', { L1L2: 3.4641, L1N: 1.7321 }, { amps: 1, share: 0.577 }, { L1L2: 4, L1N: 2 }],
  ['zigzag-parallel', { LN: 1.7321 }, { amps: 2, share: 0.577 }, { LN: 1 }],
  ['six-in-series', { L1L2: 4, L1N: 2 }, { amps: 1, share: 0.6667 }, { L1L2: 6, L1N: 3 }],
  ['series-star-line-to-line', { L1L2: 3.4641 }, { amps: 1, share: 0.577 }, { L1L2: 4 }],
  ['series-star-one-phase', { LN: 2 }, { amps: 1, share: 0.3333 }, { LN: 2 }],
  ['zigzag-three-phase', { L1L2: 3, L1N: 1.7321 }, { amps: 1, share: 0.866 }, { L1L2: 4, L1N: 2 }],
] as const)('%s gives the multiples of the standard', (id, wanted, can, copper) => {
  const answer = given(id)
  const ends = (key: string) => key.match(/L\d|L|N/g) as [string, string]
  const between = (of: typeof volts, key: string) => {
    const [a, b] = ends(key)
    return answer.outlets.some(({ from }) => from === a || from.split('/').includes(a))
      ? (safely(() => of(answer, a, b)) ?? of(answer, b, a))
      : of(answer, b, a)
  }
  for (const [key, multiple] of Object.entries(wanted)) expect(between(volts, key)).toBeCloseTo(multiple, 4)
  for (const [key, multiple] of Object.entries(copper)) expect(between(ohms, key)).toBeCloseTo(multiple, 9)
  const [most] = answer.capacities
  expect(most!.lineAmps).toBeCloseTo(can.amps, 4)
  expect(most!.share).toBeCloseTo(can.share, 3)
  expect(answer.loops).toEqual([])
  expect(answer.findings.filter(({ stops }) => stops)).toEqual([])
  expect(answer.residual).toBeLessThan(1e-9)
})

function safely<T>(work: () => T): T | undefined {
  try {
    return work()
  } catch {
    return undefined
  }
}

// The same joints as rows of volts, at the coil volts that makers' tables print. Derived; the tables are common.
test.each([
  [100, 346.4, 173.2, 200],
  [110, 381.1, 190.5, 220],
  [115, 398.4, 199.2, 230],
  [120, 415.7, 207.8, 240],
  [127, 439.9, 220.0, 254],
  [139, 481.5, 240.8, 278],
])('at %d V a coil', (emfV, seriesStar, parallelStar, seriesDelta) => {
  expect(volts(given('series-star', { emfV }), 'L1', 'L2')).toBeCloseTo(seriesStar, 1)
  expect(Math.abs(volts(given('parallel-star', { emfV }), 'L1', 'L2') - parallelStar)).toBeLessThan(0.06)
  expect(volts(given('series-delta', { emfV }), 'L1', 'L2')).toBeCloseTo(seriesDelta, 9)
  expect(volts(given('double-delta', { emfV }), 'L1', 'L2')).toBeCloseTo(2 * emfV, 9)
  expect(Math.abs(volts(given('zigzag-series', { emfV }), 'L1', 'L2') - seriesStar)).toBeLessThan(0.06)
})

// Check cases 32 and 33; derived.
test.each([
  ['series-star', { L1L2: 415.7, L1N: 240 }],
  ['parallel-star', { L1L2: 207.8, L1N: 120 }],
  ['series-delta', { L1L2: 240 }],
  ['parallel-delta', { L1L2: 120 }],
  ['double-delta', { L1L2: 240, L1N: 120 }],
  ['zigzag-series', { L1L2: 415.7, L1N: 207.8 }],
  ['six-in-series', { L1L2: 480, L1N: 240 }],
  ['series-delta-middle', { L1L2: 240, L1N: 120, L3N: 207.8 }],
] as const)('%s at 120 V a coil, in volts', (id, wanted) => {
  const { outlets } = given(id, { emfV: 120 })
  const read = Object.entries(wanted).map(([key]) => {
    const ends = key.match(/L\d|N/g)!
    const pair = outlets.find(({ from, to }) => ends.every((end) => [from, to].includes(end)))
    return Number(pair!.volts!.toFixed(1))
  })
  expect(read).toEqual(Object.values(wanted))
})

// Check cases 34 and 36. Line amps by the nameplate: 15 kVA, twelve leads, E = 120 V, so I = S / 6E; 10 kVA, four leads. Derived.
test('amps of a line by the nameplate', () => {
  const amps = 15_000 / 720
  const line = (id: string, of: CoilValues) => given(id, of).capacities[0]!.lineAmps
  expect(amps).toBeCloseTo(20.83, 2)
  expect(line('series-star', { emfV: 120, amps })).toBeCloseTo(20.83, 2)
  expect(line('parallel-star', { emfV: 120, amps })).toBeCloseTo(41.67, 2)
  expect(line('series-delta', { emfV: 120, amps })).toBeCloseTo(36.08, 2)
  expect(line('parallel-delta', { emfV: 120, amps })).toBeCloseTo(72.17, 2)
  const half = 10_000 / 240
  expect(line('halves-series', { emfV: 120, amps: half })).toBeCloseTo(41.67, 2)
  expect(line('halves-parallel', { emfV: 120, amps: half })).toBeCloseTo(83.33, 2)
  expect(given('series-star', { emfV: 120, amps }).capacities[0]!.voltAmps).toBeCloseTo(15_000, 6)
  // One half of a double delta alone also takes 1.5 coil currents.
  const one = given('double-delta').capacities.find(({ load }) => load !== 'all' && load.includes('N'))
  expect(one!.lineAmps).toBeCloseTo(1.5, 9)
})

const at120: CoilValues = { emfV: 120, resistanceOhm: 0, reactanceOhm: 0.4 }
const star = patternJoined(links, pattern('series-star'))

// Check cases 37 and 38, and halves changed over. Wrong joins of a series star, E = 120 V; derived.
test.each([
  ['one coil of A', reversed(twelve, 'A1'), star, [0, 240, 240], [240, 415.7, 240], 'opposed-coils'],
  [
    'both coils of A',
    reversed(twelve, 'A1', 'A2'),
    star,
    [240, 240, 240],
    [240, 415.7, 240],
    'reversed-phase',
  ],
  [
    'second halves of A and B changed over',
    twelve,
    joinedAs(twelve, 'T4-T8, T5-T7, T6-T9, T10-T11-T12', 'L1=T1, L2=T2, L3=T3, N=T10'),
    [120, 120, 240],
    [0, 360, 360],
    'dead-pair',
  ],
] as const)('%s reversed in a series star', (_, winding, joined, toNeutral, between, code) => {
  const answer = lookAtLinks(winding, joined, at120)
  const found = (['L1', 'L2', 'L3'] as const).map((line) => volts(answer, line, 'N'))
  for (const [at, wanted] of toNeutral.entries()) expect(found[at]).toBeCloseTo(wanted, 1)
  expect(volts(answer, 'L1', 'L2')).toBeCloseTo(between[0], 1)
  expect(volts(answer, 'L2', 'L3')).toBeCloseTo(between[1], 1)
  expect(volts(answer, 'L1', 'L3')).toBeCloseTo(between[2], 1)
  expect(answer.findings.map((finding) => finding.code)).toContain(code)
})

// Check case 40. Currents that go round inside, E = 120 V, 0.4 Ω a coil; derived.
test('halves crossed in parallel, and coils of two phases tied', () => {
  const crossed = lookAtLinks(four, joinedAs(four, 'T1-T4, T2-T3', 'L=T1, N=T2'), at120)
  expect(crossed.loops).toHaveLength(1)
  expect(crossed.loops[0]!.amps).toBeCloseTo(300, 6)
  expect(crossed.loops[0]!.volts).toBeCloseTo(240, 6)
  expect(volts(crossed, 'L', 'N')).toBe(0)
  expect(crossed.capacities).toEqual([])
  const tied = lookAtLinks(twelve, joinedAs(twelve, 'T1-T2, T4-T5', 'L=T1, N=T4'), at120)
  expect(tied.loops[0]!.amps).toBeCloseTo(259.8, 1)
  expect(tied.loops[0]!.volts).toBeCloseTo(207.85, 2)
})

test.each([
  ['a phase of a series delta', 'series-delta', ['A1', 'A2'], 480, 200],
  ['a coil of a series delta', 'series-delta', ['A1'], 240, 100],
  ['a phase of a parallel delta', 'parallel-delta', ['A1', 'A2'], 240, 200],
] as const)(
  '%s reversed: volts over the open corner, amps when it is closed',
  (_, id, names, open, closed) => {
    const joined = patternJoined(links, pattern(id))
    const answer = lookAtLinks(reversed(twelve, ...names), joined, at120)
    expect(Math.max(...answer.loops.map((loop) => loop.volts))).toBeCloseTo(open, 6)
    const { solved } = joinedWinding(reversed(twelve, ...names), joined, at120)
    for (const current of solved.amps) expect(Math.hypot(current!.re, current!.im)).toBeCloseTo(closed, 6)
  },
)

test('a half of a four-lead set reversed: no volts between the lines, and the neutral carries the sum', () => {
  const joined = patternJoined(links, pattern('halves-series-three-wire'))
  const ideal = { emfV: 120, resistanceOhm: 0, reactanceOhm: 0 }
  const answer = lookAtLinks(reversed(four, 'A2'), joined, ideal)
  expect(volts(answer, 'L1', 'L2')).toBe(0)
  expect(volts(answer, 'L1', 'N')).toBeCloseTo(120, 9)
  expect(answer.findings.map(({ code }) => code)).toContain('legs-add-in-neutral')
  // Check case 43. 30 A and 20 A in the legs: 50 A in the neutral, 10 A where the halves are the right way round. Derived.
  const { loads } = readLoads('L1-N 4, N-L2 6 ohm', { names: ['L1', 'N', 'L2'], path: '' })
  const inNeutral = (winding: Winding) =>
    loadedWinding(joinedWinding(winding, joined, ideal), { loads, open: [] }).lines.find(
      ({ name }) => name === 'N',
    )!.amps
  expect(inNeutral(reversed(four, 'A2'))).toBeCloseTo(50, 9)
  expect(inNeutral(four)).toBeCloseTo(10, 9)
})

// Check case 42. Neutral open on 120/240 V, 12 Ω on one leg and 48 Ω on the other: 48 V and 192 V. Derived.
test('an open neutral', () => {
  const of = joinedWinding(four, patternJoined(links, pattern('halves-series-three-wire')), {
    emfV: 120,
    resistanceOhm: 0,
    reactanceOhm: 0,
  })
  const { loads } = readLoads('L1-N 12; L2-N 48', { names: ['L1', 'N', 'L2'], path: '' })
  const found = loadedWinding(of, { loads, open: ['N'] })
  expect(found.loads.map((load) => Number(load.volts.toFixed(9)))).toEqual([48, 192])
})

test('a parallel half left off: right volts, double ohms, half the amps, and it is said', () => {
  const whole = given('parallel-star')
  const without = lookAtLinks(
    twelve,
    joinedAs(twelve, 'T2-T8, T3-T9, T4-T5-T6-T10-T11-T12', 'L1=T1, L2=T2, L3=T3, N=T4'),
  )
  expect(volts(without, 'L1', 'N')).toBeCloseTo(volts(whole, 'L1', 'N'), 9)
  expect(volts(without, 'L1', 'L2')).toBeCloseTo(volts(whole, 'L1', 'L2'), 9)
  expect(ohms(without, 'L1', 'N')).toBeCloseTo(2 * ohms(whole, 'L1', 'N'), 9)
  expect(ohms(without, 'L1', 'L2')).toBeCloseTo(1.5 * ohms(whole, 'L1', 'L2'), 9)
  expect(without.capacities[0]!.lineAmps).toBeCloseTo(whole.capacities[0]!.lineAmps / 2, 9)
  expect(without.findings.map(({ code }) => code)).toEqual(['idle-coils'])
})

test('coils without impedance: a loop of them is named, a sound one is solved', () => {
  const ideal = { emfV: 120, resistanceOhm: 0, reactanceOhm: 0 }
  const crossed = joinedWinding(four, joinedAs(four, 'T1-T4, T2-T3', 'L=T1, N=T2'), ideal)
  expect(crossed.solved.bareLoops).toHaveLength(1)
  const sound = lookAtLinks(four, joinedAs(four, 'T1-T3, T2-T4', 'L=T1, N=T2'), ideal)
  expect(volts(sound, 'L', 'N')).toBeCloseTo(120, 9)
  expect(sound.loops).toEqual([])
  const shorted = lookAtLinks(four, joinedAs(four, 'T1-T2', 'L=T3, N=T4'), ideal)
  expect(shorted.findings.map(({ code }) => code)).toContain('shorted-coil')
})

test('the regulator left on other leads drives the coils to twice or to half', () => {
  const look = (id: string, setToV: number) => {
    const of = patternJoined(links, pattern(id))
    const sensing = of.lines.slice(0, 2)
    return lookAtLinks(twelve, { ...of, sensing }, { emfV: 120 }, { setToV }).sensed!
  }
  // Set for 415.7 V and now on 207.8 V: 240 V a coil; the other way round 60 V. Derived.
  expect(look('parallel-star', 120 * 2 * Math.sqrt(3)).drivesToV).toBeCloseTo(240, 6)
  expect(look('series-star', 120 * Math.sqrt(3)).drivesToV).toBeCloseTo(60, 6)
  const dead = lookAtLinks(reversed(four, 'A2'), joinedAs(four, 'T2-T3', 'L=T1, N=T4', 'S1=T1, S2=T4'), {
    emfV: 115,
  })
  expect(dead.sensed).toMatchObject({ multiple: 0, drivesToV: null })
})

const anyJoints = fc
  .tuple(
    fc.array(fc.integer({ min: 0, max: 7 }), { minLength: 12, maxLength: 12 }),
    fc.integer({ min: 0, max: 11 }),
  )
  .map(([groups, line]): Joined => {
    const leads = leadsOf(twelve)
    const joints = [...new Set(groups)]
      .map((group) => leads.filter((_, at) => groups[at] === group))
      .filter(({ length }) => length > 1)
    return {
      joints,
      lines: [
        { name: 'L', lead: leads[line]! },
        { name: 'N', lead: leads[(line + 5) % 12]! },
      ],
      sensing: [],
    }
  })
const anyValues = fc.record({
  emfV: fc.double({ min: 1, max: 500, noNaN: true }),
  resistanceOhm: fc.double({ min: 0.001, max: 5, noNaN: true }),
  reactanceOhm: fc.double({ min: 0, max: 5, noNaN: true }),
})
const sizes = ({ everyPair }: LinksAnswer) => everyPair.map((pair) => pair.volts ?? -1)

test('however leads are joined: Kirchhoff holds, and turning every EMF round changes no size', () => {
  fc.assert(
    fc.property(anyJoints, anyValues, (joined, values) => {
      const answer = lookAtLinks(twelve, joined, values)
      expect(answer.residual).toBeLessThan(1e-9)
      const names = twelve.coils.map(({ name }) => name)
      const round = lookAtLinks(reversed(twelve, ...names), joined, values)
      const scale = values.emfV * 1e-9
      for (const [at, size] of sizes(round).entries())
        expect(Math.abs(size - sizes(answer)[at]!)).toBeLessThan(scale)
      expect(round.capacities.length).toBe(answer.capacities.length)
    }),
    { numRuns: 60 },
  )
})

test('whatever its coils are like, no pattern lets current go round with nothing switched on', () => {
  fc.assert(
    fc.property(fc.constantFrom(...links.patterns), anyValues, (one, values) => {
      const winding = one.winding === 'four-leads' ? four : twelve
      const { solved } = joinedWinding(winding, patternJoined(links, one), values)
      const { emfV, resistanceOhm } = values
      const most = emfV! / resistanceOhm!
      for (const amps of solved.amps) expect(Math.hypot(amps!.re, amps!.im) / most).toBeLessThan(1e-9)
      expect(solved.residual).toBeLessThan(1e-9)
    }),
    { numRuns: 40 },
  )
})

test('coils named and ordered otherwise give the same', () => {
  const leads = leadsOf(twelve)
  fc.assert(
    fc.property(
      anyJoints,
      fc.shuffledSubarray([...leads], { minLength: 12, maxLength: 12 }),
      fc.shuffledSubarray([0, 1, 2, 3, 4, 5], { minLength: 6, maxLength: 6 }),
      (joined, otherMarks, order) => {
        const marks = new Map(leads.map((lead, at) => [lead, `Q${otherMarks[at]}`]))
        const named = relabelled({ coils: order.map((at) => twelve.coils[at]!) }, marks)
        const other: Joined = {
          joints: joined.joints.map((joint) => joint.map((lead) => marks.get(lead)!)),
          lines: joined.lines.map(({ name, lead }) => ({ name, lead: marks.get(lead)! })),
          sensing: [],
        }
        const before = lookAtLinks(twelve, joined, at120)
        const after = lookAtLinks(named, other, at120)
        const sorted = (answer: LinksAnswer) =>
          sizes(answer)
            .map((size) => Math.round(size * 1e6))
            .sort((a, b) => a - b)
        expect(sorted(after)).toEqual(sorted(before))
        expect(after.outlets.map((pair) => Math.round((pair.volts ?? -1) * 1e6))).toEqual(
          before.outlets.map((pair) => Math.round((pair.volts ?? -1) * 1e6)),
        )
      },
    ),
    { numRuns: 40 },
  )
})

test('every pattern is found again from its joints, under either marks', () => {
  for (const one of links.patterns) {
    for (const { id: marks } of windingById(links, one.winding).marks) {
      const joined = patternJoined(links, one, marks)
      expect(patternOf(links, { winding: one.winding, joined, marks })!.id).toBe(one.id)
    }
  }
})

test('a file of joined leads is read, and all that is wrong is told at once', () => {
  const read = readLinksFile(
    'winding: four-leads # from the plate\njoined: 2+3\nlines: L=T1, N=t4\nemf: 115 V\n',
  )
  expect(read.problems).toEqual([])
  expect(linksFromFile(links, read.file)).toMatchObject({
    ok: true,
    joined: {
      joints: [['T2', 'T3']],
      lines: [
        { name: 'L', lead: 'T1' },
        { name: 'N', lead: 'T4' },
      ],
    },
  })
  const bad = readLinksFile('winding: four-leads\njoined: T2-T9, T1\nlines: T1, L=T1, L=T2\n')
  const refused = linksFromFile(links, bad.file)
  expect(refused.ok ? [] : refused.problems.map(({ code, found }) => `${code} ${found}`)).toEqual([
    'unknown-lead T9',
    'wrong-form T1',
    'wrong-form T1',
    'twice L=T2',
  ])
  expect(readLinksFile('colour: red\nemf: many').problems.map(({ path }) => path)).toEqual(['line 1', 'emf'])
  const own = readLinksFile('coils: K1-K2 at 0, K3-K4 at 0\njoined: K2-K3\nlines: L=K1, N=K4')
  expect(linksFromFile(links, own.file)).toMatchObject({
    ok: true,
    winding: { coils: [{ name: 'K1–K2' }, {}] },
  })
})
