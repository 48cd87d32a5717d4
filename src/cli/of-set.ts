/**
 * Commands about one set of one boat: which set, and what is asked of it.
 *
 * @module
 */

import { entriesKnown } from '../alternatives/hindsight-spans.js'
import type { Memory } from '../alternatives/memory.js'
import { isLogDate } from '../logbook/dates.js'
import type { Entry } from '../logbook/kinds.js'
import { setsOf } from '../register/register.js'
import {
  allBoats,
  chosenBoat,
  chosenSet,
  type DataOption,
  memoryOf,
  type NamedBoat,
  readCurrent,
  withReading,
} from './opened.js'
import { today } from './places.js'
import { type Result, refuse } from './result.js'

export interface SetOptions extends DataOption {
  readonly boat?: string
  readonly set?: string
  readonly asOf?: string
  /** With what was noted by that day alone. */
  readonly asNoted?: boolean
}

/** What a question about a set starts from. */
export interface SetQuestion {
  readonly named: NamedBoat
  /** In their current form. */
  readonly entries: readonly Entry[]
  /** As they were written, corrections and what they correct among them. */
  readonly all: readonly Entry[]
  readonly boat: string
  readonly set: string
  readonly asOf: string
  /** What was worked out before, in the data folder. */
  readonly memory: Memory
  /** The data folder, and all boats that can be read. */
  readonly folder: string
  readonly boats: readonly NamedBoat[]
}

/** Finds the boat and the set, and hands them to `work`. */
export function withSet(
  options: SetOptions,
  work: (question: SetQuestion) => Result | Promise<Result>,
): Promise<Result> {
  return withReading(options, async (store) => {
    const boats = allBoats(store)
    const asOf = options.asOf ?? today()
    if (!isLogDate(asOf) || asOf.length !== 10) {
      return refuse({ code: 'wrong-form', path: '--as-of', found: asOf, allowed: 'a day such as 2024-05-12' })
    }
    const chosen = chosenBoat(boats, options.boat)
    if (!chosen.ok) return chosen
    const read = readCurrent(chosen.boat)
    if (!read.ok) return read
    const entries = options.asNoted ? entriesKnown(read.all, asOf, 'noted') : read.entries
    const set = chosenSet(setsOf(entries, asOf), options.set)
    if (!set.ok) return set
    const { boat } = chosen
    const { folder } = store
    const result = await work({
      named: boat,
      entries,
      all: read.all,
      boat: boat.name,
      set: set.set,
      asOf,
      memory: memoryOf(folder),
      folder,
      boats,
    })
    return options.asNoted ? markedAsNoted(result, asOf) : result
  })
}

/** An answer that says that it rests on what was noted by then. */
function markedAsNoted(result: Result, asOf: string): Result {
  if (!result.ok) return result
  const text = `As noted by the end of ${asOf}; entries typed in later are not used.\n${result.text}`
  return { ...result, json: { ...result.json, asNoted: true }, text }
}
