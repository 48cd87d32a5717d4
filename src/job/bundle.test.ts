import fc from 'fast-check'
import type { Highs } from 'highs'
import { beforeAll, expect, test } from 'vitest'
import { loadSolver } from '../sizing/plan-milp.js'
import { type Addition, type Bundling, bundleOf, bundleWith } from './bundle.js'

let highs: Highs
beforeAll(async () => {
  highs = await loadSolver()
})

const hose: Addition = { part: 'hose', price: 40, hours: 1, opens: ['cover'], saves: 90, mayPutIn: 5 }
const belt: Addition = { part: 'belt', price: 25, hours: 0.5, opens: ['cover'], saves: 60, mayPutIn: 0 }
const cover = { id: 'cover', price: 70, hours: 2 }

test('two parts pay together for a way in that neither pays for alone', () => {
  const both = bundleOf(highs, { additions: [hose, belt], openings: [cover] })
  expect(both).toMatchObject({
    ok: true,
    best: { parts: ['hose', 'belt'], opens: ['cover'], price: 135, net: 10 },
  })
  expect(bundleOf(highs, { additions: [hose], openings: [cover] })).toMatchObject({
    best: { parts: [], net: 0 },
  })
})

test('money and hours hold, and the second best is told', () => {
  const of = { additions: [hose, belt], openings: [{ ...cover, price: 10 }] }
  expect(bundleOf(highs, { ...of, limits: { money: 60 } })).toMatchObject({
    best: { parts: ['hose'], net: 35 },
  })
  expect(bundleOf(highs, { ...of, limits: { hours: 2.6 } })).toMatchObject({
    best: { parts: ['belt'], net: 25 },
  })
  expect(bundleOf(highs, of)).toMatchObject({ best: { net: 70 }, second: { parts: ['hose'], net: 35 } })
})

test('nothing to add is a choice, and the only one where there is nothing', () => {
  expect(bundleOf(highs, { additions: [], openings: [] })).toEqual({
    ok: true,
    best: { parts: [], opens: [], price: 0, hours: 0, net: 0 },
  })
})

/** The best two choices of all there are. */
function byTryingAll(of: Bundling): { readonly net: number }[] {
  const { limits = {} } = of
  return Array.from({ length: 2 ** of.additions.length }, (_, mask) =>
    bundleWith(of, new Set(of.additions.flatMap((__, p) => (mask & (1 << p) ? [p] : [])))),
  )
    .filter(
      ({ price, hours }) =>
        price <= (limits.money ?? Infinity) + 1e-9 && hours <= (limits.hours ?? Infinity) + 1e-9,
    )
    .sort((a, b) => b.net - a.net)
    .slice(0, 2)
}

test('is what trying all choices finds, of up to 15 parts', () => {
  const ways = ['cover', 'end', 'sump', 'side']
  const whole = (most: number) => fc.integer({ min: 0, max: most })
  const additions = fc.array(
    fc.record({
      price: whole(400),
      hours: whole(8),
      opens: fc.subarray(ways),
      saves: whole(900),
      mayPutIn: whole(60),
    }),
    { minLength: 1, maxLength: 15 },
  )
  const limits = fc.record({ money: whole(1500), hours: whole(30) }, { requiredKeys: [] })
  fc.assert(
    fc.property(
      additions,
      fc.array(whole(300), { minLength: 4, maxLength: 4 }),
      limits,
      (list, prices, most) => {
        const of: Bundling = {
          additions: list.map((one, p) => ({ ...one, part: `part ${p}` })),
          openings: ways.map((id, g) => ({ id, price: prices[g]!, hours: g })),
          limits: most,
        }
        const [first, second] = byTryingAll(of)
        const found = bundleOf(highs, of)
        if (!found.ok) throw new Error(found.words)
        expect(found.best.net).toBeCloseTo(first!.net, 6)
        expect(found.second === undefined).toBe(second === undefined)
        if (second !== undefined) expect(found.second!.net).toBeCloseTo(second.net, 6)
      },
    ),
    { numRuns: 40 },
  )
})
