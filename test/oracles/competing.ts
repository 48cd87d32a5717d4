/**
 * Which of several lives ends first, where the scale of each is known.
 *
 * @module
 */

import { hazard, hazardAhead, type WeibullLife } from '../../src/forecast/lives.js'
import { gaussLegendre, type Panel } from '../../src/forecast/special-quadrature.js'
import { requireWithin } from '../../src/units/require.js'

/** A Weibull life that has reached an age. All lives that compete run on one clock. */
export interface AgedLife {
  readonly shape: number
  readonly scale: number
  readonly age: number
}

/** What ends first, and when. */
export interface FirstToFail {
  /** For each life, the chance that it ends within the span and before any other. */
  readonly first: readonly number[]
  /** Chance that all outlast the span. With `first` it adds up to 1. */
  readonly none: number
  /** For each life, the chance that it is the first of all to end, however late. */
  readonly firstEver: readonly number[]
  /** Mean time until the first ends. [clock] */
  readonly meanTime: number
}

/**
 * Chance of each of several independent lives being the first to end:
 *
 *     Pᵢ = ∫₀ᵘ hᵢ(tᵢ + x) Π_j Rⱼ(x | tⱼ) dx,   none = Π_j Rⱼ(u | tⱼ),   mean time = ∫₀^∞ Π_j Rⱼ(x | tⱼ) dx
 *
 * (cumulative incidence: not one minus each life's own survival, which counts ends that another forestalled).
 * Graded panels of 16 points; accurate to 1e-10 for shapes from 0.2 to 20 at any age, and chances keep their digits
 * however short the span.
 *
 * @throws RangeError if a shape is outside 0.2 to 20, a scale not above 0, an age or the span negative, or no life given.
 *
 * @example
 * firstToFail({ lives: [{ shape: 1, scale: 100, age: 0 }, { shape: 1, scale: 300, age: 50 }], ahead: 10 })
 * // first ≈ [0.0936, 0.0312], none ≈ 0.875, firstEver = [0.75, 0.25], meanTime = 75
 */
export function firstToFail(race: {
  readonly lives: readonly AgedLife[]
  readonly ahead: number
}): FirstToFail {
  const { lives, ahead } = race
  requireRace(race)
  const first = lives.map(() => 0)
  const firstEver = lives.map(() => 0)
  let meanTime = 0
  for (const [from, to] of panelsOf(race)) {
    const span = spanOf(lives, { from, to })
    meanTime += span.time
    for (const index of lives.keys()) {
      firstEver[index]! += span.ends[index]!
      if (to <= ahead) first[index]! += span.ends[index]!
    }
  }
  return { first, none: Math.exp(-riseOf(lives, ahead)), firstEver, meanTime }
}

/** Summed cumulative hazard past which nothing is left to end. */
const end = 60
/** Rise of the hazard within the first panel, small enough for its straight treatment. */
const start = 1e-13
/** Largest ratio of neighbouring panel edges in time; also the ratio of summed hazard from which panels are halved. */
const ratio = 4

/** Summed rise of the cumulative hazards. */
function riseOf(lives: readonly AgedLife[], ahead: number): number {
  return lives.reduce((sum, life) => sum + hazardAhead(weibull(life), { age: life.age, ahead }), 0)
}

/** Time by which the summed hazard has risen so far, to a part in 1e12. */
function timeOfRise(lives: readonly AgedLife[], rise: number): number {
  let low = -700
  let high = 700
  for (let step = 0; step < 80 && high - low > 1e-12 * (1 + Math.abs(high)); step++) {
    const middle = (low + high) / 2
    if (riseOf(lives, Math.exp(middle)) < rise) low = middle
    else high = middle
  }
  return Math.exp(high)
}

/** Panels from 0 to the end of all lives, with one edge at the span asked for. */
function panelsOf(race: { readonly lives: readonly AgedLife[]; readonly ahead: number }): [number, number][] {
  const { lives, ahead } = race
  const last = timeOfRise(lives, end)
  // A span in which next to nothing happens needs its own fine start, to keep the digits of small chances.
  const riseAhead = riseOf(lives, ahead)
  const startRise = start * Math.min(1, riseAhead > 0 ? riseAhead : 1)
  const marks = new Set<number>()
  for (let rise = startRise; rise < end; rise *= ratio) marks.add(timeOfRise(lives, rise))
  if (ahead > 0 && ahead < last) marks.add(ahead)
  marks.add(last)
  const inOrder = [...marks].sort((one, other) => one - other)

  const panels: [number, number][] = [[0, inOrder[0]!]]
  for (let index = 0; index + 1 < inOrder.length; index++) {
    addPanels(panels, lives, { from: inOrder[index]!, to: inOrder[index + 1]! })
  }
  return panels
}

/** Halves a panel, in the logarithm, until it is narrow in time and in the hazard of each life that shows in it. */
function addPanels(panels: [number, number][], lives: readonly AgedLife[], panel: Panel): void {
  const { from, to } = panel
  const middle = Math.sqrt(from) * Math.sqrt(to)
  const fine = to <= ratio * from && lives.every((life) => risesGently(life, panel))
  if (fine || !(middle > from && middle < to)) {
    panels.push([from, to])
    return
  }
  addPanels(panels, lives, { from, to: middle })
  addPanels(panels, lives, { from: middle, to })
}

/** Whether the survival of one life is smooth over a panel; while hardly any hazard has risen any life's is. */
function risesGently(life: AgedLife, { from, to }: Panel): boolean {
  const risen = hazardAhead(weibull(life), { age: life.age, ahead: to })
  return risen < 0.03 || risen < 8 * hazardAhead(weibull(life), { age: life.age, ahead: from })
}

/** Chance of each life ending first within one panel, and the time that the panel adds to the mean. */
function spanOf(
  lives: readonly AgedLife[],
  panel: Panel,
): { readonly ends: number[]; readonly time: number } {
  const { from, to } = panel
  if (from === 0) {
    // Hazards may be infinite at 0, but hardly any of them is spent here: each takes its own rise.
    return { ends: lives.map((life) => hazardAhead(weibull(life), { age: life.age, ahead: to })), time: to }
  }
  const { nodes, weights } = gaussLegendre(16)
  const ends = lives.map(() => 0)
  let time = 0
  for (let point = 0; point < nodes.length; point++) {
    const x = (from + to) / 2 + ((to - from) / 2) * nodes[point]!
    const weight = weights[point]! * ((to - from) / 2) * Math.exp(-riseOf(lives, x))
    time += weight
    for (const [index, life] of lives.entries()) ends[index]! += weight * hazard(weibull(life), life.age + x)
  }
  return { ends, time }
}

function weibull(life: AgedLife): WeibullLife {
  return { kind: 'weibull', shape: life.shape, scale: life.scale }
}

function requireRace(race: { readonly lives: readonly AgedLife[]; readonly ahead: number }): void {
  if (race.lives.length === 0) throw new RangeError('lives must be one or more; found 0')
  requireWithin('ahead', race.ahead, 0, Infinity, 'of the clock')
  for (const { shape, scale, age } of race.lives) {
    requireWithin('shape', shape, 0.2, 20, '')
    requireWithin('scale', scale, Number.MIN_VALUE, Number.MAX_VALUE, 'of the clock')
    requireWithin('age', age, 0, Number.MAX_VALUE, 'of the clock')
  }
}
