/**
 * The days of a job as a file for a calendar.
 *
 * The one thing that is reckoned here: a phone takes such a file from an address, with its type, and not from a page's memory.
 *
 * @module
 */

import { Hono } from 'hono'
import { calendarOf } from '../job/calendar.js'
import { icsOf } from '../job/calendar-ics.js'
import { jobNamedOrLast, jobsOf } from '../job/jobs.js'
import { currentEntries } from '../logbook/current.js'
import { isLogDate } from '../logbook/dates.js'
import { readKept } from '../logbook/entry.js'
import { registerOf, setsOf } from '../register/register.js'
import { setCatalogueOf } from '../register/set-kind-of.js'
import { refuse } from './guards.js'
import { type Served, whose } from './served.js'

/** The seed that pages and commands take where none is asked for: the file says the days that were shown. */
const seed = 1

export function calendarRoutes(served: Served): Hono {
  const routes = new Hono()
  routes.get('/boats/:boat/sets/:set/jobs/:job/calendar.ics', (c) => {
    const { boat, set, job: name } = c.req.param()
    const { asOf = '', readyBy } = c.req.query()
    if (!isLogDate(asOf) || asOf.length !== 10) {
      const allowed = 'a day such as 2027-04-01'
      return refuse(c, 400, { code: 'wrong-form', path: 'asOf', found: asOf, allowed })
    }
    const of = whose(served, boat)
    const read = (of === 'demonstration' ? served.demonstration : served.store).lines(boat)
    if (!read.ok) return refuse(c, 409, ...read.problems)
    const { entries } = currentEntries(read.texts.map(readKept))
    const sets = setsOf(entries, asOf)
    const job = jobNamedOrLast(jobsOf(entries, set), name)
    if (of === 'none' || !sets.includes(set) || job === undefined) {
      const allowed = 'a job of a set that the log speaks of'
      return refuse(c, 404, { code: 'unknown-job', path: 'job', found: `${boat} ${set} ${name}`, allowed })
    }
    const register = registerOf({ entries, boat, set, asOf, catalogue: served.catalogue })
    const { catalogue } = setCatalogueOf(register, served.catalogue)
    const found = calendarOf({
      ...{ job, entries, register, catalogue, seed },
      ...(readyBy === undefined ? {} : { readyBy }),
    })
    if (!found.ok) return refuse(c, 409, ...found.problems)
    c.header('Content-Type', 'text/calendar; charset=utf-8')
    c.header('Content-Disposition', `attachment; filename="${boat}-${name}.ics"`)
    return c.body(icsOf(found.calendar, { boat, boatName: register.boatFacts.name ?? boat, set }))
  })
  return routes
}
