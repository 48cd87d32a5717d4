/**
 * What must be done, by what must be done first, on one scale of days.
 *
 * @module
 */

import { useState } from 'react'
import { inHundred } from '../../job/activities-words.js'
import type { Calendar, CalendarRow } from '../../job/calendar.js'
import { dayNumber } from '../../logbook/dates.js'
import type { Body } from '../../logbook/kinds.js'
import { useSaid } from '../data/region.js'
import { today } from '../data/today.js'
import { EntryForm } from '../entry/entry-form.js'
import { fieldsOf } from '../entry/fields.js'
import { valuesOf } from '../entry/values.js'
import { DayNumbers, DayRange } from '../marks/day-range.js'
import { type DayScale, dayScale } from '../marks/time-scale.js'
import { Behind, Button, Passage } from '../parts/index.js'
import { words } from '../words/job-calendar.js'
import { sayDate, sayList, sayNumber } from '../words/say.js'
import { sayDays } from './job-calendar-say.js'
import type { OfCalendar } from './of-calendar.js'

const { list: said } = words

export function CalendarList(props: OfCalendar) {
  const { calendar, known } = props
  const open = calendar.rows.filter(({ state }) => state !== 'done')
  const done = calendar.rows.filter(({ state }) => state === 'done')
  const scale = dayScale(daysShown(calendar, open))
  // stable: of one day, in the order in which it can be done
  const first = open.toSorted((a, b) => (byOf(a) < byOf(b) ? -1 : byOf(a) > byOf(b) ? 1 : 0))
  return (
    <Passage title={said.title} says={said.says} className="calendar">
      {open.length > 0 && (
        <>
          <div className="calendar-axis">
            <DayNumbers scale={scale} say={(date) => sayDate(date).replace(/\s\d{4}$/, '')} />
          </div>
          <ul className="calendar-rows">
            {first.map((row) => (
              <Row key={row.name} {...props} row={row} scale={scale} />
            ))}
          </ul>
        </>
      )}
      {known.log.readOnly && <p className="small gap-small">{said.readOnly}</p>}
      {done.length > 0 && (
        <Behind name={said.done(done.length)}>
          <ul className="calendar-done">
            {done.map((row) => (
              <Done key={row.name} {...props} row={row} />
            ))}
          </ul>
        </Behind>
      )}
    </Passage>
  )
}

/** What waits for a supplier, and for which the order is still to be written. */
function isOrder({ state, needs }: CalendarRow): boolean {
  return state === 'to-do' && needs.includes('supplier')
}

/** The last day on which it may be over, or ordered; else the one by which it is over nine times in ten. */
function byOf(row: CalendarRow): string {
  return (isOrder(row) ? row.beginBy : row.doneBy) ?? row.ends.high ?? '9999'
}

function daysShown({ asOf, target }: Calendar, open: readonly CalendarRow[]): number[] {
  const dates = open.flatMap(({ ends, starts, doneBy }) => [ends.high ?? ends.middle, starts.middle, doneBy])
  return [asOf, target.date, ...dates].flatMap((date) => (date === null ? [] : [dayNumber(date)]))
}

interface RowProps extends OfCalendar {
  readonly row: CalendarRow
}

function Row({ scale, ...props }: RowProps & { readonly scale: DayScale }) {
  const { row, calendar } = props
  const inRegion = useSaid()
  const { starts, ends, doneBy, plan, criticality, state, since } = row
  const what = inRegion(row.what)
  const last = isOrder(row) ? row.beginBy : doneBy
  const by = last === null ? said.tooLate : (isOrder(row) ? said.orderBy : said.by)(sayDate(last))
  const dayOf = (date: string | null) => (date === null ? undefined : dayNumber(date))
  const dated = (date: string | null) => (date === null ? words.noDay : sayDate(date))
  return (
    <li>
      <div className="calendar-row">
        <p className="calendar-by">
          <b>{by}</b>
          {state === 'begun' && since !== null && (
            <span className="second">{said.begun(sayDate(since))}</span>
          )}
        </p>
        <p className="calendar-what">
          {what}
          <span className="second">
            {plan.onLongestWay || plan.slackDays === 0 ? said.noSlack : said.slack(sayDays(plan.slackDays))};{' '}
            {said.holdsUp(inHundred(criticality))}
          </span>
        </p>
        <DayRange
          scale={scale}
          today={dayNumber(calendar.asOf)}
          begins={dayOf(starts.middle)}
          low={dayOf(ends.low)}
          middle={dayOf(ends.middle)}
          high={dayOf(ends.high)}
          by={dayOf(last)}
          holdsUp={plan.onLongestWay}
          label={said.drawing({
            what,
            begins: dated(starts.middle),
            low: dated(ends.low),
            middle: dated(ends.middle),
            high: dated(ends.high),
            by,
          })}
        />
      </div>
      <More {...props} what={what} />
    </li>
  )
}

function Done(props: RowProps) {
  const inRegion = useSaid()
  const { row } = props
  const what = inRegion(row.what)
  return (
    <li>
      <p>
        <b>{row.since === null ? '' : sayDate(row.since)}</b> {what}
      </p>
      <More {...props} what={what} />
    </li>
  )
}

/** How long, after what, with whom; and what can be written of it. */
function More({ of, known, row, what }: RowProps & { readonly what: string }) {
  const { days, after, needs, inOneRun, proposed, name, state } = row
  const figures = [days.low, days.usual, days.high].map((each) => sayNumber(each)) as [string, string, string]
  return (
    <details className="behind calendar-more">
      <summary>
        {said.more}
        <span className="unseen">{said.moreOf(what)}</span>
      </summary>
      <p className="prose">
        {days.as === 'delivery' ? said.delivery(...figures) : said.days(...figures)}{' '}
        {inOneRun && `${said.run} `}
        {after.length === 0 ? said.first : said.after(sayList(after))}{' '}
        {needs.length === 0 ? said.nobody : said.needs(sayList(needs.map((one) => words.who[one])))}{' '}
        {proposed ? said.proposed : said.own} <span className="second">{name}</span>
      </p>
      {!known.log.readOnly && <Acts of={of} known={known} row={row} key={state} />}
    </details>
  )
}

type Change = Omit<Body<'activity'>, 'job' | 'name'>

function Acts({ of, known, row }: Omit<RowProps, 'calendar'>) {
  const [isOpen, open] = useState(false)
  const { log, job, catalogue, register } = known
  const { state, name } = row
  const write = (change: Change) =>
    void log.append([
      {
        ...{ boat: of.boat, set: of.set, from: today(), kind: 'activity' },
        body: { job: job.name, name, ...change },
      },
    ])
  return (
    <>
      <div className="acts">
        {state === 'to-do' && <Button onClick={() => write({ state: 'begun' })}>{said.beginToday}</Button>}
        {state !== 'done' && <Button onClick={() => write({ state: 'done' })}>{said.doneToday}</Button>}
        <Button aria-expanded={isOpen} onClick={() => open(!isOpen)}>
          {isOpen ? said.close : said.change}
        </Button>
        {state === 'to-do' && (
          <Button look="light" onClick={() => write({ state: 'left-out' })}>
            {said.leaveOut}
          </Button>
        )}
      </div>
      {isOpen && (
        <EntryForm
          boat={of.boat}
          set={of.set}
          purpose={{
            is: 'asked',
            name: `activity-${job.name}-${name}`,
            kind: 'activity',
            values: valuesOf(fieldsOf('activity'), bodyOf(job.name, row)),
          }}
          currency={register.boatFacts.currency ?? 'USD'}
          catalogue={catalogue}
          onWritten={() => open(false)}
        />
      )}
    </>
  )
}

/** What the form begins with: all that holds now; days of deliveries are the catalogue's until somebody says better. */
function bodyOf(job: string, { name, what, after, days, needs, inOneRun }: CalendarRow): Body<'activity'> {
  const rounded = (value: number) => Number(value.toPrecision(3))
  const three = { low: rounded(days.low), usual: rounded(days.usual), high: rounded(days.high) }
  return { job, name, what, after, needs, inOneRun, ...(days.as === 'delivery' ? {} : { days: three }) }
}
