/**
 * What is seen at a mode, and how likely a row of looks by one check is.
 *
 * @module
 */

import type { LifeMode } from './life-model.js'
import { detectionQuantiles, detectionSteps } from './mode-life.js'
import { lnGamma } from './special-gamma.js'

/** Something seen at a mode. */
export interface Look {
  readonly yearsAgo: number
  /** Looks of one check at one defect hang together; a bare likelihood stands alone. */
  readonly seen:
    | {
        readonly check: string
        readonly detection: number
        readonly detectionFailed: number
        readonly falseAlarm: number
        readonly defect: boolean
      }
    | { readonly sound: number; readonly defective: number; readonly failed: number }
}

/** The looks entered for a mode; one by a check the mode does not know says nothing. */
export function looksOf(mode: LifeMode): Look[] {
  return mode.observations.flatMap((entry): Look[] => {
    if ('likelihood' in entry) {
      const { sound, defective, failed } = entry.likelihood
      return [{ yearsAgo: entry.yearsAgo, seen: { sound, defective, failed: failed ?? defective } }]
    }
    const check = mode.checks.find(({ check }) => check === entry.check)
    if (check === undefined) return []
    const seen = {
      check: check.check,
      detection: check.detection,
      detectionFailed: check.detectionFailed ?? check.detection,
      falseAlarm: check.falseAlarm,
      defect: entry.seen,
    }
    return [{ yearsAgo: entry.yearsAgo, seen }]
  })
}

/** Looks by one check at one defect: how many missed it and how many saw it, before and after it failed unnoticed. */
export interface LookCounts {
  readonly missed: number
  readonly seen: number
  readonly missedFailed: number
  readonly seenFailed: number
}

/**
 * Chance of these looks at one defect by a check that sees with a chance drawn once per defect from
 * Beta(2d, 2(1 − d)); after the failure the same quantile of the beta distribution of `detectionFailed`.
 *
 * With one d: Π (a + i) Π (b + j) / Π (a + b + k); n misses are Π (b + i)/(a + b + i).
 */
export function chanceOfLooks(
  check: { readonly detection: number; readonly detectionFailed: number },
  looks: LookCounts,
): number {
  const { missed, seen, missedFailed, seenFailed } = looks
  const { detection, detectionFailed } = check
  if (detection === detectionFailed) {
    return betaMoment(detection, { seen: seen + seenFailed, missed: missed + missedFailed })
  }
  if (missedFailed + seenFailed === 0) return betaMoment(detection, { seen, missed })
  if (missed + seen === 0) return betaMoment(detectionFailed, { seen: seenFailed, missed: missedFailed })
  const before = detectionQuantiles(detection)
  const after = detectionQuantiles(detectionFailed)
  let sum = 0
  for (let i = 0; i < detectionSteps; i++) {
    sum +=
      before[i]! ** seen *
      (1 - before[i]!) ** missed *
      after[i]! ** seenFailed *
      (1 - after[i]!) ** missedFailed
  }
  return sum / detectionSteps
}

/** E[dˢ (1 − d)ᵐ] under Beta(2d, 2(1 − d)). */
function betaMoment(detection: number, looks: { readonly seen: number; readonly missed: number }): number {
  const { seen, missed } = looks
  if (detection <= 0) return seen > 0 ? 0 : 1
  if (detection >= 1) return missed > 0 ? 0 : 1
  const a = 2 * detection
  const b = 2 - a
  if (seen + missed > 60) {
    const top = lnGamma(a + seen) + lnGamma(b + missed) + lnGamma(2)
    return Math.exp(top - lnGamma(a) - lnGamma(b) - lnGamma(2 + seen + missed))
  }
  let product = 1
  for (let i = 0; i < seen; i++) product *= (a + i) / (2 + i)
  for (let i = 0; i < missed; i++) product *= (b + i) / (2 + seen + i)
  return product
}
