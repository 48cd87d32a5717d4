/**
 * Two inputs at once: which alternative is best where, and where the owner stands.
 *
 * @module
 */

import type { CurvedInput, StraightInput } from './inputs.js'
import { mean } from './mean.js'
import { type CostLine, cheapestAlong, type Handover } from './reweigh.js'
import { column } from './sample.js'
import { type Asked, linesOf, trialAt } from './turning-points.js'

export interface MapRow {
  /** Value of the input that goes down the map. */
  readonly down: number
  /** Best at the least value across, and what takes over further on. */
  readonly first: string
  readonly changes: readonly Handover[]
}

export interface TwoWayMap {
  readonly across: Axis
  readonly down: Axis
  readonly rows: readonly MapRow[]
}

export interface Axis {
  readonly id: StraightInput['id'] | CurvedInput['id']
  readonly low: number
  readonly high: number
  /** Where the owner stands. */
  readonly now: number
}

const straightRows = 25
const curvedRows = 5

/**
 * At each value down the map every alternative is a straight line across it, c(y) + s(y)·x, and the lowest of them is best.
 * Inputs that change what happens are played at each value; straight ones are weighed.
 */
export async function twoWayMap(
  asked: Asked,
  axes: { readonly across: StraightInput; readonly down: StraightInput | CurvedInput },
): Promise<TwoWayMap | undefined> {
  const { model, samples } = asked
  const { across, down } = axes
  const open = samples.filter((_, a) => model.alternatives[a]!.barred === undefined)
  if (open.length < 2) return undefined
  const means = open.map((sample) => mean(column(sample, 'cost')))
  const byAcross = meanLines(across)
  const byDown = 'with' in down ? [] : meanLines(down)
  const rows = await Promise.all(
    valuesOf(down).map(async (y): Promise<MapRow> => {
      const lines = 'with' in down ? await playedLines(down, y) : weighedLines(down, y)
      const { first, changes } = cheapestAlong(lines, across)
      return { down: y, first: first!, changes }
    }),
  )
  return { across: axisOf(across), down: axisOf(down), rows }

  function meanLines(input: StraightInput): { readonly at: number; readonly slope: number }[] {
    return linesOf(model, open, input).map(({ at, slope }) => ({ at: mean(at), slope: mean(slope) }))
  }

  function weighedLines(input: StraightInput, y: number): CostLine[] {
    return open.map(({ alternative }, a) => ({
      id: alternative,
      slope: byAcross[a]!.slope,
      at: byAcross[a]!.at + byDown[a]!.slope * (y - input.now),
    }))
  }

  async function playedLines(input: CurvedInput, y: number): Promise<CostLine[]> {
    const { tried } = await trialAt(input, y, { ...asked, open, means })
    return tried.map(({ base, played, cost }) => {
      const slope = mean(linesOf(model, [played], across)[0]!.slope)
      return { id: base.alternative, slope, at: cost - slope * across.now }
    })
  }
}

/** Even steps; of an input that must be played few, with the value now among them. */
function valuesOf(input: StraightInput | CurvedInput): number[] {
  const { low, now, high } = input
  if ('with' in input) {
    const even = Array.from({ length: curvedRows }, (_, i) => low + ((high - low) * i) / (curvedRows - 1))
    return [...new Set([...even, now])].sort((a, b) => a - b)
  }
  return Array.from({ length: straightRows }, (_, i) => low + ((high - low) * i) / (straightRows - 1))
}

function axisOf({ id, low, high, now }: StraightInput | CurvedInput): Axis {
  return { id, low, high, now }
}
