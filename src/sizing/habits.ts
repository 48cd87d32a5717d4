/**
 * When the set runs: what the keeper says, and where nothing is said what is usual, brought to the hours of the log.
 *
 * @module
 */

import { type LoadRules, type Occasion, occasions, type Season, seasons } from '../catalogue/load-schema.js'
import type { HabitFacts } from '../register/load-facts.js'
import type { MonthOfUse } from '../register/register-types.js'
import type { Habits } from './load-type.js'

export interface ToldHabits {
  readonly habits: Habits
  /** What was taken as usual, in words. */
  readonly assumed: readonly string[]
}

/** Days of a month, near enough. */
const daysOfMonth = 30.4

/** Habits as told; what is not told as usual, the hours so that a year's agree with the use of the log. */
export function habitsOf(
  { usualHabits, occasions: lengths }: LoadRules,
  told: HabitFacts,
  use: readonly MonthOfUse[] | undefined,
): ToldHabits {
  const assumed: string[] = []
  const daysOfUse =
    use === undefined || use.length === 0
      ? 100
      : use.reduce((sum, { needShare }) => sum + needShare * daysOfMonth, 0)
  if (told.days === undefined) {
    assumed.push(
      `${Math.round(daysOfUse)} days aboard in a year, parted over the weather as usual: one in ten hot, four warm, four mild, one cold`,
    )
  }
  const days = recordOf(seasons, (id: Season) =>
    told.days === undefined ? daysOfUse * usualHabits.dayShares[id]! : (told.days[id] ?? 0),
  )
  const yearDays = Object.values(days).reduce((sum, one) => sum + one, 0)
  if (told.setHours !== undefined) {
    return { habits: { days, setHours: recordOf(occasions, (id) => told.setHours![id] ?? 0) }, assumed }
  }
  const usualHours = Object.values(usualHabits.setHours).reduce((sum, one) => sum + one, 0)
  const wanted = use?.reduce((sum, { hours }) => sum + hours, 0)
  const factor = wanted === undefined || yearDays === 0 ? 1 : wanted / (usualHours * yearDays)
  assumed.push(
    `${(usualHours * factor).toFixed(1)} hours a day with the set running, parted over the occasions as usual`,
  )
  const longest = (id: Occasion) => lengths.find((one) => one.id === id)!.hours
  const setHours = recordOf(occasions, (id: Occasion) =>
    Math.min(longest(id), factor * usualHabits.setHours[id]!),
  )
  return { habits: { days, setHours }, assumed }
}

function recordOf<K extends string>(keys: readonly K[], make: (key: K) => number): Record<K, number> {
  return Object.fromEntries(keys.map((key) => [key, make(key)])) as Record<K, number>
}
