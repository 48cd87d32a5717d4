/**
 * What the owner's log holds of the set that is aboard: all that an adviser may go by.
 *
 * @module
 */

import type { LifePart } from '../../src/forecast/life-model.js'

export type PastLife = LifePart['pastLives'][number]

/** A look at a mode that was made and noted. */
export interface NotedLook {
  /** Years from now, or before. */
  readonly at: number
  readonly check: string
  readonly seen: boolean
}

export interface PartLog {
  /** Fitted: years from now, or before. */
  fittedAt: number
  /** Hour meter of the set when it was fitted. */
  fittedHours: number
  quality: number
  /** Of a piece that is not the set's first, where nothing is known of those before it: when it was fitted. */
  firstRenewalAt?: number
  readonly pastLives: PastLife[]
}

export interface SetLog {
  /** 0: the set that was aboard to begin with. */
  readonly set: number
  readonly fittedAt: number
  readonly parts: readonly PartLog[]
  /** Hour meter by date, at the ends of jobs; straight between. */
  readonly meter: { readonly at: number; readonly hours: number }[]
}

/** Notes that a part was renewed, and why. */
export function noteRenewal(
  log: SetLog,
  part: number,
  how: {
    readonly at: number
    readonly hours: number
    readonly quality: number
    readonly ended: PastLife['ended']
    readonly noted: boolean
  },
): void {
  const line = log.parts[part]!
  if (
    how.noted &&
    line.pastLives.length === 0 &&
    line.firstRenewalAt === undefined &&
    line.fittedAt > log.fittedAt
  ) {
    line.firstRenewalAt = line.fittedAt
  }
  if (how.noted) {
    const age = {
      years: Math.max(0, how.at - line.fittedAt),
      hours: Math.max(0, how.hours - line.fittedHours),
    }
    line.pastLives.push({ age, ended: how.ended })
  }
  line.fittedAt = how.at
  line.fittedHours = how.hours
  line.quality = how.quality
}

/** Hour meter at a date. */
export function hoursAt(log: SetLog, at: number): number {
  const { meter } = log
  let later = meter.findIndex((point) => point.at >= at)
  if (later < 0) later = meter.length - 1
  if (later === 0) return meter[0]!.hours
  const before = meter[later - 1]!
  const after = meter[later]!
  const share = after.at > before.at ? (at - before.at) / (after.at - before.at) : 1
  return before.hours + Math.min(1, share) * (after.hours - before.hours)
}

/** The date on which the meter first stood so high; the last date if it has not yet. */
export function dateOf({ meter }: SetLog, hours: number): number {
  const later = meter.findIndex((point) => point.hours >= hours)
  if (later < 0) return meter[meter.length - 1]!.at
  if (later === 0) return meter[0]!.at
  const before = meter[later - 1]!
  const after = meter[later]!
  return before.at + ((hours - before.hours) / (after.hours - before.hours)) * (after.at - before.at)
}
