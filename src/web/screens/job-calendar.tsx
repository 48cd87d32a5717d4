/**
 * The calendar of a job: by when it can be ready, what to order today, and what must be done first.
 *
 * @module
 */

import { useId, useMemo } from 'react'
import { inHundred } from '../../job/activities-words.js'
import type { Calendar, CalendarQuestion } from '../../job/calendar.js'
import type { Problem } from '../../logbook/problems.js'
import { setCatalogueOf } from '../../register/set-kind-of.js'
import { useKept } from '../data/kept-text.js'
import { useSaid } from '../data/region.js'
import { today } from '../data/today.js'
import { dateTyped } from '../entry/typed.js'
import type { OfSet } from '../of-set.js'
import { Cautions, Lead, Link, Passage, Preparing, Say } from '../parts/index.js'
import { pathTo } from '../routes.js'
import { words as jobWords } from '../words/job.js'
import { words } from '../words/job-calendar.js'
import { lowerFirst, sayDate, sayNumber } from '../words/say.js'
import { useCalendar } from '../work/calendar.js'
import { CalendarList } from './job-calendar-list.js'
import { AddDays, Orders, PowerMeanwhile, RestsOn } from './job-calendar-rests.js'
import { JobFrame } from './job-frame.js'
import type { OfCalendar } from './of-calendar.js'
import '../look/marks.css'
import '../look/job-calendar.css'

export function JobCalendarScreen(of: OfSet) {
  return (
    <JobFrame of={of} page="job-calendar">
      {(known) => <CalendarPage key={known.job.name} of={of} known={known} />}
    </JobFrame>
  )
}

function CalendarPage({ of, known }: Pick<OfCalendar, 'of' | 'known'>) {
  const { job, register, catalogue, log } = known
  const [typed, type] = useKept<string>(`${of.boat}.${of.set}.${job.name}.ready-by`, '')
  const readyBy = typed.trim() === '' ? undefined : dateTyped(typed, today())
  const day = readyBy?.length === 10 ? readyBy : undefined
  const question = useMemo(
    (): CalendarQuestion => ({
      ...{ job, register, entries: log.entries, seed: 1 },
      catalogue: setCatalogueOf(register, catalogue).catalogue,
      ...(day === undefined ? {} : { readyBy: day }),
    }),
    [job, register, log.entries, catalogue, day],
  )
  const answer = useCalendar(question)
  if (answer === undefined) return <Preparing title={words.title} words={words.preparing} />
  const calendar = typeof answer === 'object' && answer.ok ? answer.calendar : undefined
  const problems = typeof answer === 'object' && !answer.ok ? answer.problems : []
  const isMistyped = typed.trim() !== '' && day === undefined
  return (
    <>
      <Passage title={words.title} says={words.says} first>
        <div aria-live="polite">
          {answer === 'failed' && <Say>{words.failed}</Say>}
          {problems.length > 0 && <Wrong of={of} problems={problems} />}
          {calendar && <Answer calendar={calendar} />}
        </div>
        {calendar?.isDone !== true && <ReadyBy typed={typed} onType={type} isMistyped={isMistyped} />}
        {calendar && !calendar.isDone && <File of={of} calendar={calendar} />}
      </Passage>
      {calendar && <CalendarList of={of} known={known} calendar={calendar} />}
      {calendar && !calendar.isDone && <Orders calendar={calendar} />}
      {calendar && !calendar.isDone && <PowerMeanwhile calendar={calendar} />}
      {!log.readOnly && <AddDays of={of} known={known} />}
      {calendar && <RestsOn calendar={calendar} />}
      <Passage title={jobWords.cautionsTitle} className="caution">
        <Cautions list={jobWords.cautions} />
      </Passage>
    </>
  )
}

function Answer({ calendar }: { readonly calendar: Calendar }) {
  const said = useSaid()
  const { isDone, target, ready, rows } = calendar
  if (isDone) return <Sentence {...words.done} />
  if (target.date === null) return <Sentence {...words.never} />
  const dated = (date: string | null) => (date === null ? words.noDay : sayDate(date))
  const sentence = target.isAsked
    ? words.asked(sayDate(target.date), inHundred(target.chance))
    : words.likely(sayDate(target.date))
  const most = rows
    .filter(({ state }) => state !== 'done')
    .toSorted((a, b) => lengthOf(b) * b.criticality - lengthOf(a) * a.criticality)[0]
  const error = 100 * target.error
  return (
    <>
      <Sentence {...sentence} />
      <Lead>
        {words.lead({ low: dated(ready.low), middle: dated(ready.middle), high: dated(ready.high) })}
        {target.isAsked && words.alsoLikely(dated(ready.likely))}
        {target.isAsked && error >= 0.05 && words.error(sayNumber(error, 1))}{' '}
        {most !== undefined && words.holds(lowerFirst(said(most.what)), inHundred(most.criticality))}{' '}
        {words.plan(sayDate(ready.plan))}
      </Lead>
    </>
  )
}

/** Usual days: what holds up most is long, and often on the longest way. */
function lengthOf({ days }: Calendar['rows'][number]): number {
  return days.usual
}

function Sentence({ bold, after }: { readonly bold: string; readonly after: string }) {
  return (
    <Say>
      <b>{bold}</b>
      {after}
    </Say>
  )
}

function Wrong({ of, problems }: { readonly of: OfSet; readonly problems: readonly Problem[] }) {
  const { wrong } = words
  return (
    <>
      <Sentence {...wrong.say} />
      <Lead>{wrong.says}</Lead>
      <ul className="prose gap-small">
        {problems.map(({ code, path, found, allowed }) => (
          <li key={`${code} ${path} ${found}`}>
            {found}
            {wrong.allowed(allowed)}.
          </li>
        ))}
      </ul>
      <p className="gap-small screen-only">
        <Link to={pathTo({ page: 'logbook', ...of })}>{wrong.toLogbook}</Link>
      </p>
    </>
  )
}

interface ReadyByProps {
  readonly typed: string
  readonly onType: (typed: string) => void
  readonly isMistyped: boolean
}

function ReadyBy({ typed, onType, isMistyped }: ReadyByProps) {
  const id = useId()
  return (
    <div className="entry-field gap screen-only">
      <label htmlFor={id}>{words.readyBy}</label>
      <input
        id={id}
        className="input"
        autoComplete="off"
        placeholder={words.readyByHint}
        value={typed}
        aria-invalid={isMistyped || undefined}
        aria-describedby={isMistyped ? `${id}-problem` : undefined}
        onChange={({ target }) => onType(target.value)}
      />
      {isMistyped && (
        <p className="problem" id={`${id}-problem`}>
          {words.noDate}
        </p>
      )}
    </div>
  )
}

function File({ of, calendar }: { readonly of: OfSet; readonly calendar: Calendar }) {
  const { asOf, job, target } = calendar
  const asked = new URLSearchParams({
    asOf,
    ...(target.isAsked && target.date !== null ? { readyBy: target.date } : {}),
  })
  const [boat, set, name] = [of.boat, of.set, job].map(encodeURIComponent)
  return (
    <p className="small gap screen-only calendar-file">
      <a href={`/api/boats/${boat}/sets/${set}/jobs/${name}/calendar.ics?${asked}`} download>
        {words.file}
      </a>{' '}
      <span className="second">{words.fileSays}</span>
    </p>
  )
}
