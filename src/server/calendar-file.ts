/**
 * The days of a job as the text of a calendar file.
 *
 * @module
 */

import type { Catalogue } from '../catalogue/catalogue.js'
import type { Problem } from '../catalogue/problem.js'
import { calendarOf } from '../job/calendar.js'
import { icsOf } from '../job/calendar-ics.js'
import { jobNamedOrLast, jobsOf } from '../job/jobs.js'
import { currentEntries } from '../logbook/current.js'
import { readKept } from '../logbook/kept.js'
import { registerOf, setsOf } from '../register/register.js'
import { setCatalogueOf } from '../register/set-kind-of.js'

export interface CalendarFileAsked {
  readonly boat: string
  readonly set: string
  readonly job: string
  readonly asOf: string
  readonly readyBy?: string
}

export type CalendarFile =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly why: 'unknown-job'; readonly problems: readonly [Problem] }
  | { readonly ok: false; readonly why: 'no-calendar'; readonly problems: readonly Problem[] }

/** The seed that pages and commands take where none is asked for: the file says the days that were shown. */
const seed = 1

/** From the lines of the boat's log. */
export function calendarFile(
  { boat, set, job: name, asOf, readyBy }: CalendarFileAsked,
  of: { readonly lines: readonly string[]; readonly catalogue: Catalogue },
): CalendarFile {
  const { entries } = currentEntries(of.lines.map(readKept))
  const sets = setsOf(entries, asOf)
  const job = jobNamedOrLast(jobsOf(entries, set), name)
  if (!sets.includes(set) || job === undefined) {
    const allowed = 'a job of a set that the log speaks of'
    const problem = { code: 'unknown-job', path: 'job', found: `${boat} ${set} ${name}`, allowed }
    return { ok: false, why: 'unknown-job', problems: [problem] }
  }
  const register = registerOf({ entries, boat, set, asOf, catalogue: of.catalogue })
  const { catalogue } = setCatalogueOf(register, of.catalogue)
  const found = calendarOf({
    ...{ job, entries, register, catalogue, seed },
    ...(readyBy === undefined ? {} : { readyBy }),
  })
  if (!found.ok) return { ok: false, why: 'no-calendar', problems: found.problems }
  const owner = { boat, boatName: register.boatFacts.name ?? boat, set }
  return { ok: true, text: icsOf(found.calendar, owner) }
}
