/**
 * One set judged for one boat: what it can do, what it cannot, and by how much, on which occasion.
 *
 * @module
 */

import { deratedOf } from './derated-set.js'
import { heatChecks } from './judge-heat.js'
import { judgeOccasion } from './judge-occasion.js'
import { judgePlace } from './judge-place.js'
import { fuelOfYear, lowLoadChecks } from './judge-running.js'
import { startChecks } from './judge-starts.js'
import type { Judged, JudgedSet, SetOnOccasion } from './judged-set.js'
import type { StartLimits } from './overload.js'
import { worstOf } from './size-check.js'
import type { SizedSet } from './sized-set.js'

/** Judges a set. */
export function judgeSet(on: Judged, set: SizedSet): JudgedSet {
  const { book, year } = on
  const derated = deratedOf(on, set)
  const limits: StartLimits = {
    kW: derated.engineKW,
    kVA: set.kVA,
    reactance: set.reactance,
    dip: book.sizing.voltageDip.most,
  }
  const named = [...new Set(year.map(({ occasion }) => occasion))]
  const occasions = named.map((occasion) =>
    judgeOccasion(
      on,
      { set, derated, limits },
      year.filter((one) => one.occasion === occasion),
    ),
  )
  const hours = year.reduce((sum, one) => sum + one.hours, 0)
  const lowShare = hours === 0 ? 0 : weighedMean(occasions, ({ lowShare: share }) => share)
  const p99KW = Math.max(0, ...occasions.map((one) => one.p99KW))
  const place = [
    ...judgePlace(book, { set, space: on.space }),
    ...heatChecks(book, { set, space: on.space, p99KW }),
  ]
  const carrying = [...startChecks(on, { set, derated }), ...lowLoadChecks(on, { lowShare, derated })]
  const all = [...carrying, ...occasions.flatMap((one) => one.checks)]
  return {
    set,
    ...derated,
    fuel: fuelOfYear(on, set),
    occasions,
    checks: [...carrying, ...place],
    hoursPerYear: hours,
    lowShare,
    overloadsPerYear: occasions.reduce((sum, one) => sum + one.overloadsPerYear, 0),
    dipsPerYear: occasions.reduce((sum, one) => sum + one.dipsPerYear, 0),
    ...(occasions.some(({ overloadsUnshed }) => overloadsUnshed !== undefined)
      ? { overloadsUnshed: occasions.reduce((sum, one) => sum + (one.overloadsUnshed ?? 0), 0) }
      : {}),
    verdict: worstOf(all.map(({ verdict }) => verdict)),
    place: worstOf(place.map(({ verdict }) => verdict)),
  }
}

function weighedMean(occasions: readonly SetOnOccasion[], value: (one: SetOnOccasion) => number): number {
  const hours = occasions.reduce((sum, one) => sum + one.hours, 0)
  return occasions.reduce((sum, one) => sum + (one.hours / hours) * value(one), 0)
}
