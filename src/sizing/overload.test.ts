import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { shippedCatalogue } from '../../test/shipped-limits.js'
import { conflictsOf, statesOf } from './conflicts.js'
import { demandOf, onShares } from './demand.js'
import type { Load } from './load-type.js'
import { startChances, startingsOf } from './overload.js'
import { trialLoad } from './trial-loads.js'
import { voltageDip } from './voltage-dip.js'

const { loadRules } = shippedCatalogue

const randomLoad = fc.record({
  watts: fc.integer({ min: 0, max: 30 }).map((steps) => 100 * steps),
  vars: fc.integer({ min: 0, max: 15 }).map((steps) => 100 * steps),
  share: fc.double({ min: 0.01, max: 1, noNaN: true }),
  hardShare: fc.double({ min: 0.01, max: 1, noNaN: true }),
  startKva: fc.double({ min: 1, max: 15, noNaN: true }),
})

test('chances at a start, against every set of loads that can be on', () => {
  fc.assert(
    fc.property(
      fc.array(randomLoad, { minLength: 3, maxLength: 9 }),
      fc.boolean(),
      fc.double({ min: 3, max: 12, noNaN: true }),
      fc.double({ min: 0.1, max: 0.3, noNaN: true }),
      (of, withRule, kW, dip) => {
        const loads = of.map(({ startKva, ...load }, i) =>
          trialLoad(`l${i}`, {
            ...load,
            start: { va: 1000 * startKva, bareVa: 1000 * startKva, powerFactor: 0.6, softStarter: false },
          }),
        )
        const rules = withRule ? [{ id: 'r', loads: ['l0', 'l1', 'l2'], atMost: 1 }] : []
        const limits = { kW: kW + 0.05, kVA: 1.25 * kW, reactance: 0.2, dip }
        const question = { loads, rules, loadRules, occasion: 'day', season: 'warm' } as const
        const startings = startingsOf(demandOf({ ...question, twoLegs: false }), loads)
        loads.forEach((load, i) => {
          const made = startChances(load, startings[i]!, limits)
          const told = byEnumeration(loads, withRule, i, limits)
          expect(Math.abs(made.tooMuch - told.tooMuch)).toBeLessThan(1e-9)
          expect(Math.abs(made.dips - told.dips)).toBeLessThan(1e-9)
        })
      },
    ),
    { numRuns: 30, seed: 6 },
  )
})

/** All sets with the load on, weighed by their chance on both kinds of day. */
function byEnumeration(
  loads: readonly Load[],
  withRule: boolean,
  starting: number,
  limits: { readonly kW: number; readonly kVA: number; readonly reactance: number; readonly dip: number },
) {
  const load = loads[starting]!
  const motor = {
    startKVA: load.start!.va / 1000,
    startPowerFactor: 0.6,
    setKVA: limits.kVA,
    reactance: limits.reactance,
  }
  let [tooMuch, dips] = [0, 0]
  for (const weather of ['easy', 'hard'] as const) {
    const shares = onShares({ loads, loadRules, occasion: 'day', season: 'warm', weather })
    const [conflict] = withRule
      ? conflictsOf(
          loads.map(({ id }) => id),
          [{ id: 'r', loads: ['l0', 'l1', 'l2'], atMost: 1 }],
        )
      : []
    const bound = conflict === undefined ? undefined : statesOf(conflict, shares)
    let [all, much, deep] = [0, 0, 0]
    for (let on = 0; on < 1 << loads.length; on += 1) {
      if ((on & (1 << starting)) === 0) continue
      const first = bound?.states.find((state) => state.on === (on & 7))?.chance ?? 0
      let chance = bound === undefined ? 1 : first
      for (let i = bound === undefined ? 0 : 3; i < loads.length; i += 1) {
        chance *= on & (1 << i) ? shares[i]! : 1 - shares[i]!
      }
      const others = loads.filter((_, i) => i !== starting && on & (1 << i))
      const kW = others.reduce((sum, { watts }) => sum + watts, 0) / 1000
      const kvar = others.reduce((sum, { vars }) => sum + vars, 0) / 1000
      all += chance
      if (kW + load.watts / 1000 > limits.kW) much += chance
      if (voltageDip(motor, { kW, kvar }) > limits.dip) deep += chance
    }
    tooMuch += all > 0 ? (0.5 * much) / all : 0
    dips += all > 0 ? (0.5 * deep) / all : 0
  }
  return { tooMuch, dips }
}
