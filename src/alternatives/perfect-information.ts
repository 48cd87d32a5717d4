/**
 * What it would be worth to know a quantity for certain before choosing.
 *
 * @module
 */

import type { LifeModel } from '../forecast/life-model.js'
import { normalFrom } from './amounts.js'
import { beyondLuck } from './finding-out.js'
import { setWords } from './kernel.js'
import { leastSquares, type NormalEquations, normalEquations, without } from './least-squares.js'
import * as purpose from './purpose.js'
import { usual } from './renewal.js'
import { column, type Sample } from './sample.js'
import type { StartStates } from './start-states.js'

/** A quantity that the histories draw and that could be known better. */
export interface Quantity {
  readonly id:
    | 'set-factor'
    | 'overrun'
    | 'new-price'
    | 'install-price'
    | 'new-lead'
    | 'job-days'
    | `system ${string}`
  /** By history. */
  readonly values: Float64Array
}

export interface WorthOfQuantity {
  readonly id: Quantity['id'] | 'years-kept'
  readonly worth: number
  readonly error: number
  /** Surely worth something. */
  readonly pays: boolean
}

/** Histories are dealt into so many groups, each left out once, for the standard error. */
const groups = 20

/**
 * Expected value of perfect partial information on each quantity, by regression on histories that were played anyway:
 * EVPPI = E[cost of what is best unknowing] − E[min over alternatives of E[C | x]], E[C | x] a cubic in x. The choice at each
 * x is fitted on one half of the histories and valued by a fit on the other, both ways; standard error by the jackknife.
 *
 * Source: Strong, Oakley and Brennan, "Estimating multiparameter partial expected value of perfect information from a
 * probabilistic sensitivity analysis sample: a nonparametric regression approach", Medical Decision Making 34 (2014),
 * 311-326. Held: recalled.
 */
export function worthOfQuantities(of: {
  readonly model: LifeModel
  readonly samples: readonly Sample[]
  readonly states: StartStates
  readonly seed: number
}): WorthOfQuantity[] {
  const { model, samples } = of
  const open = samples.filter((_, a) => model.alternatives[a]!.barred === undefined)
  if (open.length < 2) return []
  const costs = open.map((sample) => column(sample, 'cost'))
  const quantities = quantitiesOf(of)
  const sure = beyondLuck(quantities.length)
  return quantities
    .map(({ id, values }) => ({ id, ...knowing(costs, values) }))
    .map((one) => ({ ...one, pays: one.worth > sure * one.error }))
    .sort((a, b) => b.worth - a.worth)
}

/** Worth of knowing one quantity before choosing the least of several costs. */
export function knowing(
  costs: readonly Float64Array[],
  values: Float64Array,
): { readonly worth: number; readonly error: number } {
  const x = standardized(values)
  const features = [new Float64Array(x.length).fill(1), x, x.map((one) => one ** 2), x.map((one) => one ** 3)]
  if (oneIsLeast(normalEquations(features, costs).map(leastSquares), x)) return { worth: 0, error: 0 }
  const halves = [0, 1].map((half): HalfFit => {
    const rows = every({ from: half, step: 2, below: x.length })
    const byGroup = Array.from({ length: groups }, (_, g) => {
      const dealt = every({ from: g, step: groups, below: rows.length }).map((i) => rows[i]!)
      return normalEquations(features, costs, dealt)
    })
    return { x: Float64Array.from(rows, (row) => x[row]!), byGroup }
  })
  const parts = halves.map((own, h) => valued(own, halves[1 - h]!))
  const worth = (parts[0]!.mean + parts[1]!.mean) / 2
  const error = Math.hypot(parts[0]!.error, parts[1]!.error) / 2
  return { worth, error }
}

/** Weights of 1, x, x² and x³. */
type Cubic = Float64Array

function cubicAt(weights: Cubic, x: number): number {
  return weights[0]! + x * (weights[1]! + x * (weights[2]! + x * weights[3]!))
}

/** Whether the same alternative is least at every value, however well that can be told: knowing the value then changes nothing. */
function oneIsLeast(fits: readonly Cubic[], x: Float64Array): boolean {
  const first = leastOf(fits, x[0]!)
  return x.every((at) => leastOf(fits, at) === first)
}

function leastOf(fits: readonly Cubic[], x: number): number {
  let best = 0
  let least = Number.POSITIVE_INFINITY
  for (let a = 0; a < fits.length; a++) {
    const cost = cubicAt(fits[a]!, x)
    if (cost < least) {
      least = cost
      best = a
    }
  }
  return best
}

interface HalfFit {
  readonly x: Float64Array
  /** [group][alternative] */
  readonly byGroup: readonly (readonly NormalEquations[])[]
}

/** Rule of one half, its worth by the fit of the other, and how far that is out, by leaving out each group of either in turn. */
function valued(own: HalfFit, other: HalfFit): { readonly mean: number; readonly error: number } {
  const gain = (leftOut?: number): number => {
    const rule = fitsOf(own, leftOut)
    const value = fitsOf(other, leftOut)
    const before = leastAt(rule, own.x)
    let sum = 0
    let n = 0
    for (let i = 0; i < other.x.length; i++) {
      if (leftOut !== undefined && i % groups === leftOut) continue
      const x = other.x[i]!
      const best = leastOf(rule, x)
      if (best !== before) sum += cubicAt(value[before]!, x) - cubicAt(value[best]!, x)
      n++
    }
    return sum / n
  }
  const whole = gain()
  const partly = Array.from({ length: groups }, (_, g) => gain(g))
  const centre = partly.reduce((sum, value) => sum + value, 0) / groups
  const squares = partly.reduce((sum, value) => sum + (value - centre) ** 2, 0)
  return { mean: whole, error: Math.sqrt(((groups - 1) / groups) * squares) }
}

/** Of each alternative, on all groups but the one left out. */
function fitsOf({ byGroup }: HalfFit, leftOut?: number): Cubic[] {
  return byGroup[0]!.map((_, a) =>
    leastSquares(
      without(
        byGroup.map((group) => group[a]!),
        leftOut,
      ),
    ),
  )
}

/** Which costs least on the whole. */
function leastAt(rule: readonly Cubic[], x: Float64Array): number {
  const sums = rule.map((weights) => x.reduce((sum, at) => sum + cubicAt(weights, at), 0))
  return sums.indexOf(Math.min(...sums))
}

/** Brought to mean 0 and deviation 1. */
function standardized(values: Float64Array): Float64Array {
  const n = values.length
  const mean = values.reduce((sum, value) => sum + value, 0) / n
  const deviation = Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / n) || 1
  return values.map((value) => (value - mean) / deviation)
}

function every(of: { readonly from: number; readonly step: number; readonly below: number }): Int32Array {
  const { from, step, below } = of
  return Int32Array.from({ length: Math.max(0, Math.ceil((below - from) / step)) }, (_, i) => from + i * step)
}

/** Quantities that vary in this model and bear on its alternatives. */
function quantitiesOf(of: {
  readonly model: LifeModel
  readonly samples: readonly Sample[]
  readonly states: StartStates
  readonly seed: number
}): Quantity[] {
  const { model, samples, states, seed } = of
  const n = column(samples[0]!, 'cost').length
  const draws = (set: number, forWhat: number, word: 0 | 1) =>
    Float64Array.from({ length: n }, (_, history) =>
      normalFrom(setWords({ seed, history, set, forWhat })[word]),
    )
  const jobs = model.alternatives.flatMap(({ now }) =>
    typeof now === 'object' && 'parts' in now ? [now] : [],
  )
  const list: Quantity[] = [{ id: 'set-factor', values: states.kappaLog }]
  if (jobs.some(({ quote }) => quote !== undefined))
    list.push({ id: 'overrun', values: draws(0, purpose.quote, 0) })
  if (jobs.length > 0) list.push({ id: 'job-days', values: draws(0, purpose.quoteDays, 0) })
  if (model.candidates.length > 0) {
    list.push({ id: 'new-price', values: draws(1, purpose.replacement, 0) })
    list.push({ id: 'install-price', values: draws(1, purpose.replacement, 1) })
    list.push({ id: 'new-lead', values: draws(1, purpose.replacementDays, 0) })
  }
  return [...list, ...systemIndices(model, samples, states)].filter(({ values }) => varies(values))
}

function varies(values: Float64Array): boolean {
  return values.some((value) => value !== values[0])
}

/**
 * One index for the scales of a system's modes: −Σ wₘ (ln θₘ − ln κ), wₘ the money that mode m's failures come to, as far as
 * the mean price of its job tells.
 */
function systemIndices(model: LifeModel, samples: readonly Sample[], states: StartStates): Quantity[] {
  const n = states.histories
  const systems = new Map<string, Float64Array>()
  let m = 0
  for (const part of model.parts) {
    for (const mode of part.modes) {
      const repair = mode.remedy.repair ?? part.repair
      const rate = repair.by === 'owner' ? model.labour.ownPerHour : model.labour.paidPerHour
      const weight = samples[0]!.failuresOfMode[m]! * (usual(repair.price) + repair.hours * rate)
      if (part.system !== undefined && weight > 0) {
        const index = systems.get(part.system) ?? new Float64Array(n)
        for (let i = 0; i < n; i++) {
          index[i]! -= weight * (states.scaleLog[m * n + i]! - states.kappaLog[i]!)
        }
        systems.set(part.system, index)
      }
      m++
    }
  }
  return [...systems].map(([system, values]) => ({ id: `system ${system}` as const, values }))
}
