/**
 * Boats, logs and the catalogue as the screens use them.
 *
 * @module
 */

import { useEffect, useMemo } from 'react'
import type { Problem } from '../../catalogue/problem.js'
import type { Draft } from '../../logbook/draft.js'
import { type Entry, isKind } from '../../logbook/kinds.js'
import { setsOf } from '../../register/register.js'
import { boatList, type Log, logOf, refreshBoats, type Status } from './log.js'
import { today } from './today.js'
import { useLive } from './value.js'
import { type Written, write } from './write.js'

export { useCatalogue } from './catalogue.js'

export interface Boats {
  readonly status: Status
  readonly problems: readonly Problem[]
  /** The owner's boats first, then those that came with the program. */
  readonly boats: readonly BoatInList[]
}

export interface BoatInList {
  readonly id: string
  readonly demonstration: boolean
}

/** The boats there are. */
export function useBoats(): Boats {
  const list = useLive(boatList)
  useEffect(() => void refreshBoats(), [])
  return useMemo(() => {
    const boats = list.boats.map(({ boat, demonstration }) => ({ id: boat, demonstration }))
    return { ...list, boats }
  }, [list])
}

export interface Boat extends Log {
  readonly id: string
  /** As she is called; her id where nothing says. */
  readonly name: string
  /** Her sets that are not gone, first named first. */
  readonly sets: readonly string[]
  /** A demonstration boat: nothing can be written. */
  readonly readOnly: boolean
  /**
   * Writes new entries. They are in `entries` at once and in `waiting` until the server has them; nothing is lost while it does not
   * answer. What is wrong in form comes back as problems, and then none is written.
   */
  append(drafts: readonly Draft[]): Promise<Written>
}

/** One boat: `entries` are in their current form, with what waits to be sent. */
export function useBoat(boatId: string): Boat {
  const log = useLive(logOf(boatId))
  return useMemo(
    () => ({
      ...log,
      id: boatId,
      name: nameOf(log.entries) ?? boatId,
      sets: setsOf(log.entries, today()),
      readOnly: log.demonstration,
      append: (drafts) => write(drafts),
    }),
    [log, boatId],
  )
}

/** What a boat is called, where an entry says. */
export function nameOf(entries: readonly Entry[]): string | undefined {
  return entries
    .filter((entry) => isKind(entry, 'boat'))
    .map(({ body }) => body.name)
    .findLast((name) => name !== undefined)
}
