/**
 * One entry of the ledger: what it says, what it corrected, its pictures, and its correcting.
 *
 * @module
 */

import { Fragment, useState } from 'react'
import type { Catalogue } from '../../catalogue/catalogue.js'
import { type Entry, isKind } from '../../logbook/kinds.js'
import { photographsOf } from '../../logbook/photographs.js'
import { EntryForm } from '../entry/entry-form.js'
import { fieldsOf } from '../entry/fields.js'
import { Pictures } from '../entry/pictures.js'
import { paidIn, sayEntry } from '../entry/say-entry.js'
import { TakeBack } from '../entry/take-back.js'
import { PlainButton, Tag } from '../parts/index.js'
import { kindNames } from '../words/entry/kinds.js'
import { logbook } from '../words/logbook.js'
import { sayDate } from '../words/say.js'
import { KeptResult } from './kept-result.js'
import type { Row } from './ledger-rows.js'

/** What every row needs to know. */
export interface RowOf {
  readonly boat: string
  readonly set: string
  readonly readOnly: boolean
  readonly catalogue: Catalogue | undefined
  readonly currency: string
  readonly money: (amount: number) => string
  /** Units that the boat chose to speak in. */
  readonly units: readonly (string | undefined)[]
}

export interface EntryRowProps extends RowOf {
  readonly line: Exclude<Row, { is: 'readings' }>
  readonly unsent: boolean
  /** Its place among the entries that the server keeps. */
  readonly number: number | undefined
}

export function EntryRow({ line, unsent, number, ...of }: EntryRowProps) {
  const [open, setOpen] = useState(false)
  const { entry } = line
  const paid = paidIn(entry)
  const mayCorrect = !of.readOnly && line.is === 'entry' && !open
  return (
    <li className="line" id={`entry-${entry.id}`}>
      <span className="no">{number}</span>
      <span className="day">{sayDaysInYear(entry)}</span>
      <span className="kind">{kindNames[entry.kind]}</span>
      <span className="words">
        {line.is === 'taken-back' ? (
          <>
            <del>{sayEntry(entry, of)}</del>{' '}
            {logbook.takenBack(sayDate(line.by.noted.slice(0, 10)), reasonOf(line.by))}
          </>
        ) : (
          <>
            {line.old.map((old) => (
              <Fragment key={old.id}>
                <del>{sayOld(old, entry, of)}</del>{' '}
              </Fragment>
            ))}
            {sayEntry(entry, of)}
            {line.old.length > 0 && logbook.corrected(sayDate(entry.noted.slice(0, 10)), reasonOf(entry))}
            <Pictures of={photographsOf(entry)} />
            {isKind(entry, 'decision') && entry.body.kept !== undefined && (
              <KeptResult kept={entry.body.kept} because={entry.body.because} currency={of.currency} />
            )}
          </>
        )}
        {unsent && (
          <>
            {' '}
            <Tag look="outline">{logbook.notSent}</Tag>
          </>
        )}
        {mayCorrect && (
          <PlainButton className="correct" onClick={() => setOpen(true)}>
            {logbook.correct}
            <span className="unseen">
              {' '}
              {kindNames[entry.kind]}, {sayDays(entry)}
            </span>
          </PlainButton>
        )}
      </span>
      <span className="paid">
        {paid !== undefined && of.money(paid)}
        {entry.kind === 'quote' && <span className="second">{logbook.notPaid}</span>}
      </span>
      {open && <Correcting entry={entry} of={of} onDone={() => setOpen(false)} />}
    </li>
  )
}

function Correcting({
  entry,
  of,
  onDone,
}: {
  readonly entry: Entry
  readonly of: RowOf
  readonly onDone: () => void
}) {
  return (
    <div className="correcting">
      {fieldsOf(entry.kind).length > 0 && (
        <EntryForm
          boat={of.boat}
          set={of.set}
          purpose={{ is: 'correct', entry }}
          currency={of.currency}
          catalogue={of.catalogue}
          units={of.units}
          onWritten={onDone}
        />
      )}
      <TakeBack entry={entry} onDone={onDone} />
      <p>
        <PlainButton onClick={onDone}>{logbook.leaveAsIs}</PlainButton>
      </p>
    </div>
  )
}

/** What was corrected; where the kind or the day changed, that too. */
function sayOld(old: Entry, now: Entry, of: RowOf): string {
  const kind = old.kind === now.kind ? '' : `${kindNames[old.kind]}: `
  const day = old.from === now.from && old.until === now.until ? '' : `${sayDays(old)}: `
  return `${kind}${day}${sayEntry(old, of)}`
}

function reasonOf(entry: Entry): string {
  if (entry.voids && 'text' in entry.body) return entry.body.text
  return 'remark' in entry.body ? (entry.body.remark ?? '') : ''
}

/** Under the head of its year; what began in another one says so. */
function sayDaysInYear(entry: Entry): string {
  const { from, until } = entry
  if (from !== until && from.slice(0, 4) !== until.slice(0, 4)) return sayDays(entry)
  const inYear = (date: string) =>
    date.length === 4 ? logbook.someDay : sayDate(date).replace(/\s\d{4}$/, '')
  return from === until ? inYear(from) : `${inYear(from)} to ${inYear(until)}`
}

function sayDays({ from, until }: Entry): string {
  if (from === until) return sayDate(from)
  return `${sayDate(from)} to ${sayDate(until)}`
}
