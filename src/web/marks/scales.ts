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

/** Where a label stands: a place in hundredths, and pixels from it. */
export interface LabelPlace {
  readonly at: number
  readonly dx: number
  readonly anchor: Anchor
}

/** Half the width of a short label, with a space beside it. [px] */
export const halfLabel = 19

/**
 * Where the three labels of a range stand so that they do not meet. An end that is nearer to the middle than `room` (in
 * hundredths of the width) has its label set beside the middle one's; a label at the rim stays inside.
 */
export function labelPlaces(
  at: { readonly low: number; readonly middle: number; readonly high: number },
  room: number,
): { readonly low: LabelPlace; readonly middle: LabelPlace; readonly high: LabelPlace } {
  const { low, middle, high } = at
  const inside = (place: number) => anchorInside(place, room)
  const centre = inside(middle)
  const left = centre === 'middle' ? halfLabel : centre === 'start' ? 4 : 2 * halfLabel
  const right = centre === 'middle' ? halfLabel : centre === 'end' ? 4 : 2 * halfLabel
  const besideLow = room * (1 + (centre === 'end' ? 0.5 : 0) + (inside(low) === 'start' ? 0.5 : 0))
  const besideHigh = room * (1 + (centre === 'start' ? 0.5 : 0) + (inside(high) === 'end' ? 0.5 : 0))
  return {
    low:
      middle - low < besideLow
        ? { at: middle, dx: -left, anchor: 'end' }
        : { at: low, dx: 0, anchor: inside(low) },
    middle: { at: middle, dx: 0, anchor: centre },
    high:
      high - middle < besideHigh
        ? { at: middle, dx: right, anchor: 'start' }
        : { at: high, dx: 0, anchor: inside(high) },
  }
}

/**
 * Where the two labels at the ends of a width stand, where nothing is between them: each over its end, and where they would
 * meet, side by side over its middle; inside the rims either way.
 */
export function endPlaces(
  { low, high }: { readonly low: number; readonly high: number },
  room: number,
): { readonly low: LabelPlace; readonly high: LabelPlace } {
  const [lowAnchor, highAnchor] = [anchorInside(low, room), anchorInside(high, room)]
  const after = { start: room, middle: room / 2, end: 0 }
  if (low + after[lowAnchor] <= high - (room - after[highAnchor])) {
    return { low: { at: low, dx: 0, anchor: lowAnchor }, high: { at: high, dx: 0, anchor: highAnchor } }
  }
  const between = Math.min(100 - room, Math.max(room, (low + high) / 2))
  return {
    low: { at: between, dx: -4, anchor: 'end' },
    high: { at: between, dx: 4, anchor: 'start' },
  }
}

/** The anchor that keeps a label at a place within the rims. */
export function anchorInside(place: number, room: number): Anchor {
  return place < room / 2 ? 'start' : place > 100 - room / 2 ? 'end' : 'middle'
}
