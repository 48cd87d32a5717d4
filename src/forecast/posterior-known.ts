/**
 * Starting states of modes in parts whose fitting date is known.
 *
 * @module
 */

import { atKappa, type KnownMode } from './known-modes.js'
import type { OnsetTerms } from './mode-likelihood.js'
import { POSTERIOR_STEPS } from './posterior-type.js'

/**
 * Where one mode's table of starting states is written. It begins as noughts, and these are not written again: memory
 * that stays nought is never asked for.
 */
export interface TableRow {
  readonly theta: Float32Array
  readonly state: Uint8Array
  readonly age: Float32Array
  readonly since: Float32Array
  readonly ageHours: Float32Array
  /** Index of the first of `POSTERIOR_STEPS` entries. */
  readonly at: number
}

/**
 * Fills one table of equally likely starting states by systematic steps over state, θ and the time of onset, with
 * one uniform start. Within a cell of ln θ a sound mode lies even; a defect takes the place of its onset.
 */
export function fillKnown(
  mode: KnownMode,
  node: { readonly lnKappa: number; readonly start: number },
  row: TableRow,
): void {
  const { columns, weight, from, to } = atKappa(mode, node.lnKappa)
  const { lnTheta, theta } = columns
  const { quality } = mode
  const { theta: toTheta, age, ageHours, state, since } = row
  const cells = lnTheta.length
  const cell = cells > 1 ? lnTheta[1]! - lnTheta[0]! : 0
  const masses = [columns.sound, columns.defective, columns.failed]
  let total = 0
  for (let k = from; k < to; k++) total += weight[k]! * columns.whole[k]!
  const possible = total > 0
  if (!possible) total = 1
  const end = row.at + POSTERIOR_STEPS
  age.fill(mode.partClock.ages[mode.life.clock] * mode.life.pace, row.at, end)
  ageHours.fill(mode.partClock.ages.hours, row.at, end)
  let entry = 0
  let below = 0
  const last = possible ? masses.length : 1
  for (let s = 0; s < last; s++) {
    const ofState = masses[s]!
    const firstOfState = entry
    for (let k = from; k < to; k++) {
      const mass = possible ? weight[k]! * ofState[k]! : weight[k]!
      if (!(mass > 0)) continue
      const above = below + mass / total
      const isLast = s === last - 1 && k === to - 1
      const upTo = isLast ? POSTERIOR_STEPS : entriesBelow(above, node.start)
      if (upTo > entry && s === 0) {
        const perStep = (cell * total) / (mass * POSTERIOR_STEPS)
        let x = perStep * (entry + node.start - below * POSTERIOR_STEPS) - 0.5 * cell
        const most = 0.5 * cell
        for (; entry < upTo; entry++, x += perStep) {
          toTheta[row.at + entry] = quality * theta[k]! * expNearZero(Math.min(most, Math.max(-most, x)))
        }
      } else if (upTo > entry) {
        sumOnsets(mode.terms, s, Math.exp(-mode.life.shape * lnTheta[k]!))
        for (; entry < upTo; entry++) {
          const target = (entry + node.start) / POSTERIOR_STEPS
          const share = Math.min(1, Math.max(0, ((target - below) * total) / mass))
          toTheta[row.at + entry] = quality * theta[k]!
          since[row.at + entry] = mode.terms.since[placeOf(share, mode.terms.y.length)]!
        }
      }
      below = above
    }
    if (s > 0) state.fill(s, row.at + firstOfState, row.at + entry)
  }
  // rounding may leave the last step unfilled
  for (; entry < POSTERIOR_STEPS; entry++) {
    const at = row.at + entry
    const before = Math.max(row.at, at - 1)
    for (const column of [toTheta, state, since]) column[at] = column[before]!
  }
}

/** e^x by five terms of its series; half a cell of ln θ is 0.1 at most, where the next is under 2e-9. */
function expNearZero(x: number): number {
  return 1 + x * (1 + x * (1 / 2 + x * (1 / 6 + x * (1 / 24 + x / 120))))
}

/** How many of the steps (entry + start)/steps lie below a share. */
function entriesBelow(share: number, start: number): number {
  return Math.min(POSTERIOR_STEPS, Math.max(0, Math.ceil(share * POSTERIOR_STEPS - start)))
}

/** Running sums of the onsets of a state by their places; overwritten by the next. */
let onsetSums = new Float64Array(512)

function sumOnsets(terms: OnsetTerms, state: number, lambda: number): void {
  const masses = state === 1 ? terms.defective : terms.failed
  const { y } = terms
  if (onsetSums.length < y.length) onsetSums = new Float64Array(2 * y.length)
  let sum = 0
  for (let k = 0; k < y.length; k++) {
    sum += Math.exp(-lambda * y[k]!) * masses[k]!
    onsetSums[k] = sum
  }
}

/** The first of so many places below which more than this share lies. */
function placeOf(share: number, places: number): number {
  let low = 0
  let high = places - 1
  const wanted = share * onsetSums[high]!
  while (low < high) {
    const middle = (low + high) >> 1
    if (onsetSums[middle]! > wanted) high = middle
    else low = middle + 1
  }
  return low
}
