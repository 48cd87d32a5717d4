/**
 * Scales of drawings: round numbers along an axis, and places on it in hundredths of its width.
 *
 * @module
 */

export interface Scale {
  readonly low: number
  readonly high: number
  readonly ticks: readonly number[]
}

/** A scale from 0 or below to past the highest value, or around the values where they lie far from 0. */
export function scaleAround(
  values: readonly number[],
  how: { readonly fromZero: boolean; readonly ticks: number },
): Scale {
  const finite = values.filter(Number.isFinite)
  const least = Math.min(...finite, how.fromZero ? 0 : Number.POSITIVE_INFINITY)
  const most = Math.max(...finite, how.fromZero ? 0 : Number.NEGATIVE_INFINITY)
  const span = most - least || Math.abs(most) || 1
  const step = roundStep(span / how.ticks)
  const low = Math.floor(least / step + 1e-9) * step
  const high = Math.ceil(most / step - 1e-9) * step
  const count = Math.max(1, Math.round((high - low) / step))
  const ticks = Array.from({ length: count + 1 }, (_, i) => Number((low + i * step).toPrecision(12)))
  return { low, high: low + count * step, ticks }
}

/** 1, 2, 2.5 or 5 times a power of ten, at least as large as asked. */
function roundStep(least: number): number {
  const power = 10 ** Math.floor(Math.log10(least))
  return ([1, 2, 2.5, 5].find((step) => step * power >= least * (1 - 1e-9)) ?? 10) * power
}

/** Where a value stands, in hundredths of the width; past the ends it stands at the end. */
export function placeOn({ low, high }: Pick<Scale, 'low' | 'high'>, value: number): number {
  return Math.min(100, Math.max(0, (100 * (value - low)) / (high - low)))
}

export type Anchor = 'start' | 'middle' | 'end'

/** How the three labels of a range are set so that they neither meet nor leave the drawing. Places and room in hundredths. */
export function labelAnchors(
  at: { readonly low: number; readonly middle: number; readonly high: number },
  room: number,
): { readonly low: Anchor; readonly middle: Anchor; readonly high: Anchor } {
  const { low, middle, high } = at
  const half = room / 2
  const inside = (place: number, wanted: Anchor): Anchor =>
    place < half ? 'start' : place > 100 - half ? 'end' : wanted
  return {
    low: low < half && middle - low > room ? 'start' : middle - low < room ? 'end' : 'middle',
    middle: inside(middle, 'middle'),
    high: high > 100 - half && high - middle > room ? 'end' : high - middle < room ? 'start' : 'middle',
  }
}
