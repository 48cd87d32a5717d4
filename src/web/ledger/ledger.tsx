/**
 * The log as a ledger: latest first, filters above, earlier years folded.
 *
 * @module
 */

import { useDeferredValue, useId, useMemo, useState } from 'react'
import type { Entry, Kind } from '../../logbook/kinds.js'
import { partsNamedBy } from '../../logbook/oddities-parts.js'
import { photographsOf } from '../../logbook/photographs.js'
import type { Boat } from '../data/boat.js'
import { type FigureSaid, PlainButton, useFigures } from '../parts/index.js'
import { figures } from '../words/figures.js'
import { logbook } from '../words/logbook.js'
import { plural, sayDate, shortName } from '../words/say.js'
import { EntryRow, type RowOf } from './entry-row.js'
import { ledgerOf, type Row, type Year } from './ledger-rows.js'

export interface LedgerProps extends RowOf {
  readonly log: Boat
  /** Ids of entries that are asked about. */
  readonly asked: ReadonlySet<string>
}

type Filter = 'all' | keyof typeof logbook.filters

const ofKind: Readonly<Partial<Record<Filter, readonly Kind[]>>> = {
  findings: ['finding'],
  stops: ['stop'],
  work: ['work', 'fitted'],
  readings: ['reading', 'hours', 'meter-changed'],
  paid: ['bill', 'quote'],
}

export function Ledger({ log, asked, ...row }: LedgerProps) {
  const [chosen, setChosen] = useState<{ readonly filter: Filter; readonly part: string }>({
    filter: 'all',
    part: '',
  })
  const { filter, part } = useDeferredValue(chosen)
  const years = useMemo(
    () => ledgerOf({ log, asked, wanted: (entry) => isWanted(entry, { filter, part, asked }) }),
    [log, asked, filter, part],
  )
  const [turned, setTurned] = useState<ReadonlySet<string>>(new Set())
  const latest = years[0]?.year
  const turn = (year: string) =>
    setTurned((before) => {
      const next = new Set(before)
      if (!next.delete(year)) next.add(year)
      return next
    })
  return (
    <>
      <Filters {...{ chosen, setChosen, asked, log, catalogue: row.catalogue }} />
      {years.length === 0 && <p className="second">{logbook.noneSuch}</p>}
      {years.map((year) => (
        <YearOfLog
          key={year.year}
          year={year}
          open={(year.year === latest) !== turned.has(year.year)}
          onTurn={() => turn(year.year)}
          row={row}
          waiting={log.waiting}
          numbers={log.kept}
        />
      ))}
    </>
  )
}

function isWanted(
  entry: Entry,
  {
    filter,
    part,
    asked,
  }: { readonly filter: Filter; readonly part: string; readonly asked: ReadonlySet<string> },
): boolean {
  if (part !== '' && !partsNamedBy(entry).some((named) => named.part === part)) return false
  if (filter === 'all') return true
  if (filter === 'asked') return asked.has(entry.id)
  if (filter === 'pictures') return photographsOf(entry).length > 0
  if (filter === 'paid' && entry.kind === 'work') return 'cost' in entry.body
  return ofKind[filter]?.includes(entry.kind) ?? false
}

function Filters({
  chosen,
  setChosen,
  asked,
  log,
  catalogue,
}: {
  readonly chosen: { readonly filter: Filter; readonly part: string }
  readonly setChosen: (next: { readonly filter: Filter; readonly part: string }) => void
  readonly asked: ReadonlySet<string>
  readonly log: Boat
  readonly catalogue: RowOf['catalogue']
}) {
  const name = useId()
  const parts = useMemo(
    () => [...new Set(log.entries.flatMap(partsNamedBy).map(({ part }) => part))].sort(),
    [log.entries],
  )
  const filters = Object.entries(logbook.filters) as readonly (readonly [Filter, string])[]
  const all: readonly (readonly [Filter, string])[] = [
    ['all', logbook.all],
    ...filters.filter(([filter]) => filter !== 'asked' || asked.size > 0 || chosen.filter === 'asked'),
  ]
  return (
    <div className="filters">
      <fieldset className="kinds">
        <legend className="unseen">{logbook.show}</legend>
        {all.map(([filter, says]) => (
          <label key={filter}>
            <input
              type="radio"
              name={name}
              checked={chosen.filter === filter}
              onChange={() => setChosen({ ...chosen, filter })}
            />
            {filter === 'asked' ? `${says}, ${asked.size.toLocaleString('en-GB')}` : says}
          </label>
        ))}
      </fieldset>
      {parts.length > 0 && (
        <p className="entry-field">
          <label htmlFor={`${name}-part`}>{logbook.ofPart}</label>
          <select
            id={`${name}-part`}
            className="input wide"
            value={chosen.part}
            onChange={({ target }) => setChosen({ ...chosen, part: target.value })}
          >
            <option value="">{logbook.anyPart}</option>
            {parts.map((id) => (
              <option key={id} value={id}>
                {shortName(catalogue?.parts.find((part) => part.id === id)?.name ?? id.replaceAll('-', ' '))}
              </option>
            ))}
          </select>
        </p>
      )}
    </div>
  )
}

/** So many lines of a year are shown at once. */
const linesAtOnce = 200

function YearOfLog({
  year,
  open,
  onTurn,
  row,
  waiting,
  numbers,
}: {
  readonly year: Year
  readonly open: boolean
  readonly onTurn: () => void
  readonly row: RowOf
  readonly waiting: readonly Entry[]
  readonly numbers: readonly Entry[]
}) {
  const [shown, setShown] = useState(linesAtOnce)
  const unsent = useMemo(() => new Set(waiting.map(({ id }) => id)), [waiting])
  const numberOf = useMemo(
    () => new Map(open ? numbers.map(({ id }, at) => [id, at + 1]) : []),
    [numbers, open],
  )
  const { rows } = year
  const id = `year-${year.year}`
  const sums = useFigures()
  const summed = (says: string): FigureSaid => ({
    says,
    behind: () => ({
      name: figures.sums.name(year.year),
      value: `${sayCarried(year)}; ${row.money(year.carried.paid)}; ${logbook.inAll(row.money(year.paidInAll))}`,
      comesFrom: figures.sums.from,
      moves: figures.sums.moves,
    }),
  })
  return (
    <section className={open ? 'year open' : 'year'} aria-labelledby={id}>
      <h3 className="year-head">
        <button type="button" className="plain-button" id={id} aria-expanded={open} onClick={onTurn}>
          {open ? year.year : logbook.earlier(year.year)}
        </button>
        <span className="second">{plural(year.count, ...logbook.entry)}</span>
      </h3>
      {open && (
        <ol className="log">
          {rows.slice(0, shown).map((line) => (
            <Line key={keyOf(line)} line={line} row={row} unsent={unsent} numberOf={numberOf} />
          ))}
        </ol>
      )}
      {open && rows.length > shown && (
        <p>
          <PlainButton onClick={() => setShown(shown + linesAtOnce)}>
            {logbook.moreLines(rows.length - shown)}
          </PlainButton>
        </p>
      )}
      <p className="carried">
        <span className="kind">{year.year}</span>
        <b>{sums.of('sum', summed(sayCarried(year)))}</b>
        <b className="paid">
          {year.carried.paid > 0 && sums.of('paid', summed(row.money(year.carried.paid)))}
        </b>
        {year.paidInAll > year.carried.paid && (
          <span className="second in-all">{logbook.inAll(row.money(year.paidInAll))}</span>
        )}
      </p>
      {sums.opened()}
    </section>
  )
}

function keyOf(line: Row): string {
  return line.is === 'readings' ? `readings ${line.entries[0]!.id}` : `${line.is} ${line.entry.id}`
}

function sayCarried({ carried: { hours, stops, daysWithoutPower } }: Year): string {
  const number = (value: number) => value.toLocaleString('en-GB', { maximumFractionDigits: 1 })
  return logbook.carried(
    hours > 0 ? logbook.hoursRun(number(hours)) : '',
    stops,
    daysWithoutPower > 0
      ? logbook.daysWithout(daysWithoutPower === 1 ? '1 day' : `${number(daysWithoutPower)} days`)
      : '',
  )
}

interface LineProps {
  readonly line: Row
  readonly row: RowOf
  readonly unsent: ReadonlySet<string>
  readonly numberOf: ReadonlyMap<string, number>
}

function Line({ line, row, unsent, numberOf }: LineProps) {
  if (line.is === 'readings') return <Readings entries={line.entries} {...{ row, unsent, numberOf }} />
  return (
    <EntryRow {...row} line={line} unsent={unsent.has(line.entry.id)} number={numberOf.get(line.entry.id)} />
  )
}

/** Readings with nothing to say of them: one line, opened where someone wants them. */
function Readings({
  entries,
  row,
  unsent,
  numberOf,
}: Omit<LineProps, 'line'> & { readonly entries: readonly Entry[] }) {
  const [open, setOpen] = useState(false)
  const shown = entries.flatMap(({ body }) => ('meterHours' in body ? (body.meterHours ?? []) : []))
  const number = (value: number) => value.toLocaleString('en-GB')
  const first = numberOf.get(entries.at(-1)!.id)
  const last = numberOf.get(entries[0]!.id)
  return (
    <>
      <li className="line">
        <span className="no">{first === undefined || last === undefined ? '' : `${first}–${last}`}</span>
        <span className="day">{logbook.upTo(sayDate(entries[0]!.until).replace(/\s\d{4}$/, ''))}</span>
        <span className="kind">{logbook.readingsKind}</span>
        <span className="words">
          {logbook.readings(entries.length, number(Math.min(...shown)), number(Math.max(...shown)))}{' '}
          <PlainButton aria-expanded={open} onClick={() => setOpen(!open)}>
            {open ? logbook.hideFolded : logbook.showFolded(entries.length)}
          </PlainButton>
        </span>
        <span className="paid" />
      </li>
      {open &&
        entries.map((entry) => (
          <EntryRow
            key={entry.id}
            {...row}
            line={{ is: 'entry', entry, old: [] }}
            unsent={unsent.has(entry.id)}
            number={numberOf.get(entry.id)}
          />
        ))}
    </>
  )
}
