/**
 * `gensettle job calendar`: when a job can be ready, what holds it up, and what to order today.
 *
 * @module
 */

import { shortCaution } from '../alternatives/cautions.js'
import { moneyIn } from '../alternatives/say.js'
import { inHundred } from '../job/activities-words.js'
import { type Calendar, type CalendarRow, calendarOf } from '../job/calendar.js'
import { icsOf } from '../job/calendar-ics.js'
import { jobNamedOrLast, jobsOf } from '../job/jobs.js'
import { registerOf } from '../register/register.js'
import { setCatalogueOf } from '../register/set-kind-of.js'
import { newFileProblems, writeNewFile } from './new-file.js'
import { type SetOptions, withSet } from './of-set.js'
import { shippedCatalogue } from './places.js'
import { type Result, refuse } from './result.js'
import { figure, tableText } from './table.js'

export interface JobCalendarOptions extends SetOptions {
  readonly seed: number
  readonly job?: string
  readonly readyBy?: string
  /** A new file for the days as iCalendar. */
  readonly ics?: string
}

/** What must be done by when, for a job that the log speaks of. */
export function showJobCalendar(options: JobCalendarOptions): Promise<Result> {
  return withSet(options, ({ entries, boat, set, asOf }) => {
    const { seed, readyBy, ics } = options
    const file = { path: '--ics', file: ics }
    const jobs = jobsOf(entries, set)
    const job = jobNamedOrLast(jobs, options.job)
    if (job === undefined) {
      const allowed = `a job that the log speaks of: ${jobs.map(({ name }) => name).join(', ') || 'none yet'}`
      return refuse({ code: 'not-one-of', path: 'job', found: options.job ?? 'none', allowed })
    }
    const base = shippedCatalogue()
    const register = registerOf({ entries, boat, set, asOf, catalogue: base })
    const { catalogue } = setCatalogueOf(register, base)
    const found = calendarOf({
      ...{ job, entries, register, catalogue, seed },
      ...(readyBy === undefined ? {} : { readyBy }),
    })
    const inTheWay = newFileProblems([file])
    if (!found.ok || inTheWay.length > 0) return refuse(...(found.ok ? [] : found.problems), ...inTheWay)
    const { calendar } = found
    const boatName = register.boatFacts.name ?? boat
    const text = ics === undefined ? '' : icsOf(calendar, { boat, boatName, set })
    const unwritten = writeNewFile({ ...file, text })
    if (unwritten.length > 0) return refuse(...unwritten)
    return {
      ok: true,
      json: {
        type: 'gensettle/job-calendar',
        version: 1,
        boat,
        set,
        ...calendar,
        ics: ics ?? null,
        caution: shortCaution,
      },
      text: [...sayCalendar(calendar), ...(ics === undefined ? [] : ['', `Written: ${ics}`])].join('\n'),
    }
  })
}

function sayCalendar(calendar: Calendar): string[] {
  const { problems, assumed, rows } = calendar
  return [
    ...sayReady(calendar),
    '',
    tableText(
      [
        { head: 'what' },
        { head: 'begins' },
        { head: 'over, 1 in 10' },
        { head: 'even' },
        { head: '9 in 10' },
        { head: 'done by' },
        { head: 'slack', align: 'right' },
        { head: 'holds up', align: 'right' },
        { head: 'name' },
      ],
      rows.map((row) => [
        row.what,
        row.since ?? row.plan.start,
        row.ends.low ?? '–',
        row.ends.middle ?? '–',
        row.ends.high ?? '–',
        row.state === 'done' ? 'done' : (row.doneBy ?? 'too late'),
        slackOf(row),
        row.state === 'done' ? '' : inHundred(row.criticality),
        row.name,
      ]),
    ),
    '',
    ...sayOrders(calendar),
    ...sayPower(calendar),
    ...sayFormula(calendar),
    ...(problems.length === 0 ? [] : ['', 'Days that do not go together:']),
    ...problems.map(({ found, allowed }) => `  ${found}; allowed is ${allowed}`),
    ...(assumed.length === 0 ? [] : ['', 'Taken for granted:']),
    ...assumed.map((one) => `  ${one}`),
    '',
    'Change it with "log add activity" and "log add free-days". Days of work are practice until you say better.',
    shortCaution,
  ]
}

function sayReady({ job, isDone, ready, target }: Calendar): string[] {
  if (isDone) return [`${job}: all of it is done.`]
  const { date, chance, error, isAsked } = target
  if (date === null) return [`${job}: not ready within three years.`]
  const asked = `ready by ${date}: ${inHundred(chance)}${error > 0.0005 ? ` ± ${(100 * error).toFixed(1)}` : ''}`
  const spread = `Even chance: ${ready.middle}; 1 in 10 by ${ready.low}, 9 in 10 by ${ready.high ?? 'no day within three years'}.`
  return [
    isAsked ? `${job}: ${asked}.` : `${job}: ${asked}; that day is held to below.`,
    ...(isAsked && ready.likely !== null ? [`Ready 8 times in 10 by ${ready.likely}.`] : []),
    spread,
    `The ranges are the world's doubt: no amount of running narrows them. With usual days alone it would be ${ready.plan}.`,
  ]
}

/** Where no delay is free the longest way is named by its figure. */
function slackOf({ state, plan }: CalendarRow): string {
  if (state === 'done') return ''
  return plan.onLongestWay ? 'none' : `${plan.slackDays} d`
}

function sayOrders({ orders, currency, isDone }: Calendar): string[] {
  if (isDone) return []
  if (orders.length === 0) return ['Nothing is left to be ordered.']
  const due = orders.filter(({ isDue }) => isDue)
  const lead =
    due.length === 0
      ? 'Nothing has to be ordered today.'
      : `To be ordered today: ${due.map(({ name }) => name).join(', ')}.`
  return [
    lead,
    ...orders.map(({ name, beginBy, weekLater }) => {
      const price = weekLater.price >= 0.5 ? ` and ${moneyIn(currency, weekLater.price)}` : ''
      const latest = beginBy === null ? 'no day keeps the chance' : `by ${beginBy} at the latest`
      return `  ${name}: ${latest}; a week's wait makes it ${figure(Math.max(0, weekLater.days))} days later${price}`
    }),
  ]
}

function sayPower({ months, price, currency }: Calendar): string[] {
  if (months.length === 0) return ['No power is wanted in the months that it takes.']
  return [
    '',
    'Chance of power on a day of the months that want it:',
    ...months.map(({ month, chance }) => `  ${month}  ${inHundred(chance)}`),
    `The days without power cost ${moneyIn(currency, price.whole)} on the mean; one day more ${moneyIn(currency, price.dayMore)}.`,
  ]
}

function sayFormula({ byFormula: { chain, met }, isDone }: Calendar): string[] {
  if (isDone) return []
  const days = ({ mean, sd }: typeof chain) => `${figure(mean)} ± ${figure(sd)} days`
  return [
    `By the published formulas, every day a working day: ${days(chain)} along the longest chain, ${days(met)} with what meetings of chains add.`,
  ]
}
