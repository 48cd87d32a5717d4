import { join } from 'node:path'
import { expect, test } from 'vitest'
import type { Kept } from '../../src/alternatives/kept.js'
import { compile } from '../../src/alternatives/program.js'
import { column, type Sample } from '../../src/alternatives/sample.js'
import { prepareAnswer } from '../../src/alternatives/settle.js'
import { playSpan } from '../../src/alternatives/simulate.js'
import { parseCatalogue } from '../../src/catalogue/parse.js'
import { currentEntries } from '../../src/logbook/current.js'
import { setsOf } from '../../src/register/register.js'
import { readCatalogueFiles } from '../../src/store/catalogue-files.js'
import { openDemonstration } from '../../src/store/demonstration.js'
import { type SlowHistory, simulateSlowly } from './simulator.js'

const root = join(import.meta.dirname, '..', '..')
const asOf = '2026-11-25'
const histories = { fast: 4000, slow: 60 }

/** Money under single headings is compared beside the sum, so that errors cannot cancel. */
const compared: readonly (readonly [Kept | 'powerAndGiveUp', (history: SlowHistory) => number])[] = [
  ['cost', (h) => h.presentCost],
  ['now', (h) => h.nowCost],
  ['failures', (h) => h.failureCost],
  ['planned', (h) => h.plannedCost],
  ['upkeep', (h) => h.upkeepCost],
  ['fuel', (h) => h.fuelCost],
  // the price of days done without after giving up may stand under either
  ['powerAndGiveUp', (h) => h.powerCost + h.giveUpCost],
  ['intrusion', (h) => h.intrusionCost],
  ['replacement', (h) => h.replacementCost],
  ['resale', (h) => h.resaleCost],
  ['daysWithout', (h) => h.daysWithoutPower],
  ['stops', (h) => h.stops],
  ['sameDayStops', (h) => h.sameDayStops],
  ['derates', (h) => h.derates],
]

const catalogue = parseCatalogue(readCatalogueFiles(join(root, 'catalogue')))
const demonstration = openDemonstration(join(root, 'demo'))

/** What the fast simulator plays for a demonstration boat, beside what the slow one needs. */
function boatInHand(boat: string) {
  if (!catalogue.ok || !demonstration.ok) throw new Error('the catalogue and the boats must be readable')
  const read = demonstration.store.read(boat)
  if (!read.ok) throw new Error(`${boat} must be readable`)
  const { entries } = currentEntries(read.entries)
  const set = setsOf(entries, asOf)[0]!
  return prepareAnswer({ entries, boat, set, asOf, catalogue: catalogue.catalogue, seed: 21 })
}

test.each([
  ['marram', ['leave', 'mend', 'replace-new-same', 'replace-used-same']],
  ['quillback', ['leave', 'overhaul-engine', 'replace-later']],
  ['teasel', ['leave', 'replace-new-smaller', 'give-up']],
] as const)(
  '%s: a simulator written apart agrees, alternative by alternative and heading by heading',
  (boat, ids) => {
    const { model: whole, posterior, used } = boatInHand(boat)
    const model = {
      ...whole,
      alternatives: whole.alternatives.filter(({ id }) => ids.some((one) => one === id)),
    }
    const fast = playSpan(compile(model, posterior, used), { seed: 8, from: 0, count: histories.fast })
    expect(fast.length).toBe(ids.length)
    const apart = fast.flatMap((sample) => {
      const run = { seed: 77, histories: histories.slow }
      const slow = simulateSlowly(model, posterior, sample.alternative, run)
      return differences(sample, slow.histories).map((words) => `${sample.alternative}: ${words}`)
    })
    expect(apart).toEqual([])
  },
  240_000,
)

/**
 * The sum within 3 standard errors; single headings, of which a hundred are looked at, within 4. If the two simulators
 * mean the same, their spread is the same, and the many histories tell it best: so few may miss a rare dear one.
 */
function differences(sample: Sample, slow: readonly SlowHistory[]): string[] {
  return compared.flatMap(([quantity, read]) => {
    const a = moments(quantity === 'powerAndGiveUp' ? powerAndGiveUp(sample) : column(sample, quantity))
    const b = moments(slow.map(read))
    const variance = (a.squares + b.squares) / (a.count + b.count - 2)
    const error = Math.sqrt(variance * (1 / a.count + 1 / b.count))
    const gap = Math.abs(a.mean - b.mean)
    const allowed = (quantity === 'cost' ? 3 : 4) * error + 1e-6 * Math.abs(a.mean)
    return gap > allowed
      ? [
          `${quantity} ${a.mean.toPrecision(6)} against ${b.mean.toPrecision(6)}, ${(gap / error).toFixed(1)} errors`,
        ]
      : []
  })
}

function powerAndGiveUp(sample: Sample): Float64Array {
  const giveUp = column(sample, 'giveUp')
  return column(sample, 'power').map((price, i) => price + giveUp[i]!)
}

/** Mean, and the sum of squares about it. */
function moments(values: ArrayLike<number>): {
  readonly count: number
  readonly mean: number
  readonly squares: number
} {
  const list = Array.from(values)
  const mean = list.reduce((sum, value) => sum + value, 0) / list.length
  return { count: list.length, mean, squares: list.reduce((sum, value) => sum + (value - mean) ** 2, 0) }
}
