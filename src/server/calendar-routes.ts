/**
 * The days of a job as a file for a calendar.
 *
 * The one thing that is reckoned here: a phone takes such a file from an address, with its type, and not from a page's memory.
 *
 * @module
 */

import { Hono } from 'hono'
import { isLogDate } from '../logbook/dates.js'
import { refuse } from './guards.js'
import { type Served, whose } from './served.js'

export function calendarRoutes(served: Served): Hono {
  const routes = new Hono()
  routes.get('/boats/:boat/sets/:set/jobs/:job/calendar.ics', async (c) => {
    const { boat, set, job } = c.req.param()
    const { asOf = '', readyBy } = c.req.query()
    if (!isLogDate(asOf) || asOf.length !== 10) {
      const allowed = 'a day such as 2027-04-01'
      return refuse(c, 400, { code: 'wrong-form', path: 'asOf', found: asOf, allowed })
    }
    const read = (whose(served, boat) === 'demonstration' ? served.demonstration : served.store).lines(boat)
    if (!read.ok) return refuse(c, 409, ...read.problems)
    // fetched when it is first asked for, since nothing else of a server reckons
    const { calendarFile } = await import('./calendar-file.js')
    const file = calendarFile(
      { boat, set, job, asOf, ...(readyBy === undefined ? {} : { readyBy }) },
      { lines: read.texts, catalogue: served.catalogue },
    )
    if (!file.ok) return refuse(c, file.why === 'unknown-job' ? 404 : 409, ...file.problems)
    c.header('Content-Type', 'text/calendar; charset=utf-8')
    c.header('Content-Disposition', `attachment; filename="${boat}-${job}.ics"`)
    return c.body(file.text)
  })
  return routes
}
