/**
 * The set's own clocks as the register has them: hours, years, starts, since the last service, days idle; and recent work.
 *
 * @module
 */

import type { Fault } from '../catalogue/fault-schema.js'
import type { FaultModel } from '../catalogue/read-fault-model.js'
import { type Entry, isKind } from '../logbook/kinds.js'
import { dayOf, hoursAt } from '../register/hours.js'
import type { SetRegister } from '../register/register-types.js'

/** Reading of each fault's clock, by fault, in the clock's unit; left out: not known. */
export type FaultClocks = Readonly<Record<string, number>>

/** Work that was done on a part. */
export interface RecentWork {
  readonly part: string
  readonly did: string
  readonly daysSince: number
  /** Running hours since; left out: not known. */
  readonly hoursSince?: number
}

const daysPerYear = 365.25
/** Work older than this leaves nothing behind that was not met since. Practice. [d] */
const recentDays = 730

/** Where every fault's clock stands. */
export function clocksOf(
  model: Pick<FaultModel, 'faults'>,
  register: SetRegister,
  idleDays: number | undefined,
): FaultClocks {
  const reached = model.faults.flatMap((fault): [string, number][] => {
    const value = reachedBy(fault, register, idleDays)
    return value === undefined ? [] : [[fault.id, Math.max(0, value)]]
  })
  return Object.fromEntries(reached)
}

function reachedBy(fault: Fault, register: SetRegister, idleDays: number | undefined): number | undefined {
  const { hours, asOfDay, builtDay } = register
  switch (fault.clock?.of) {
    case 'hours':
      return hoursAt(hours, asOfDay)
    case 'years':
      return builtDay === undefined ? undefined : (asOfDay - builtDay) / daysPerYear
    case 'starts':
      return hours.points.findLast(({ starts }) => starts !== undefined)?.starts
    case 'hours-since-service': {
      const day = servicedDay(fault, register)
      const now = hoursAt(hours, asOfDay)
      const then = day === undefined ? undefined : hoursAt(hours, day)
      return now === undefined || then === undefined ? undefined : now - then
    }
    case 'years-since-service': {
      const day = servicedDay(fault, register)
      return day === undefined ? undefined : (asOfDay - day) / daysPerYear
    }
    case 'days-idle':
      return idleDays
    default:
      return undefined
  }
}

/** The day on which a fault's part was last renewed or gone over; of several parts, the one left longest. */
function servicedDay({ parts }: Fault, register: SetRegister): number | undefined {
  const days = parts.map(({ part }) => {
    const place = register.parts.get(part)
    if (place === undefined) return undefined
    const fitted = place.age === 'unknown' ? [] : place.sinceDay === undefined ? [] : [place.sinceDay]
    const mended = place.mends.filter(({ did }) => did !== 'patched').map(({ day }) => day)
    const all = [...fitted, ...mended]
    return all.length === 0 ? undefined : Math.max(...all)
  })
  const known = days.filter((day) => day !== undefined)
  return known.length === 0 ? undefined : Math.min(...known)
}

/** Work of the last two years on one set. */
export function recentWorkOf(entries: readonly Entry[], register: SetRegister): RecentWork[] {
  const { asOfDay, hours, set } = register
  const now = hoursAt(hours, asOfDay)
  return entries.flatMap((entry) => {
    if (!isKind(entry, 'work') || entry.set !== set) return []
    const day = dayOf(entry, asOfDay)
    const daysSince = asOfDay - day
    if (daysSince < 0 || daysSince > recentDays) return []
    const then = hoursAt(hours, day)
    const hoursSince = now === undefined || then === undefined ? {} : { hoursSince: Math.max(0, now - then) }
    return entry.body.parts.map(({ part, did }) => ({ part, did, daysSince, ...hoursSince }))
  })
}

/** Parts that the log itself says are defective or may be; with several named, each by its share. */
export function defectiveInLog({
  openDefects,
  broken,
}: Pick<SetRegister, 'openDefects' | 'broken'>): Record<string, number> {
  const chances: Record<string, number> = {}
  const say = (part: string, chance: number) => {
    chances[part] = Math.max(chances[part] ?? 0, chance)
  }
  for (const { about, verdict } of openDefects) {
    for (const { part } of about) say(part, (verdict === 'unsure' ? 0.5 : 1) / about.length)
  }
  for (const { part } of broken) say(part, 1)
  return chances
}
