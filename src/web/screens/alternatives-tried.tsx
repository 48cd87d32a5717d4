/**
 * What can be moved, and the answer with it.
 *
 * @module
 */

import { useState } from 'react'
import type { PriceChange } from '../../alternatives/reweigh.js'
import { today } from '../data/today.js'
import { Behind, Button, Overrule, Passage, Tried as TriedField } from '../parts/index.js'
import { words } from '../words/alternatives.js'
import { sayDate, sayNumber, upperFirst } from '../words/say.js'
import { shell } from '../words/shell.js'
import { dayPrice, type Track } from '../work/answer-view.js'
import { moneyOf, nameIn, nameWithin, type OfAnswer, signOf } from './of-answer.js'
import { draftOfTerms, type TermsTried, whatWasWrong } from './terms-tried.js'

const { tried } = words

export interface TriedProps extends OfAnswer {
  readonly change: PriceChange
  readonly years: number | undefined
  /** As the log has them. */
  readonly logYears: number | undefined
  readonly onChange: (change: PriceChange) => void
  readonly onYears: (years: number | undefined) => void
}

export function Tried(props: TriedProps) {
  const { view, basis, change, years, logYears, onChange, onYears, log } = props
  const money = moneyOf(view)
  const sign = signOf(view)
  const before = dayPrice(basis.model)
  const moved = {
    ...termsOf(change),
    ...(years === undefined || years === logYears ? {} : { yearsKept: years }),
  }
  return (
    <Passage title={tried.title} says={tried.says}>
      <div className="fields">
        <TriedField
          name={tried.years.name}
          unit={tried.years.unit}
          value={years ?? logYears ?? view.horizonYears}
          least={1}
          most={25}
          step={1}
          onChange={onYears}
          marks={[
            { at: 1, says: '1' },
            { at: 25, says: '25' },
          ]}
        >
          {tried.yearsNote}
        </TriedField>
        <TriedField
          {...trackProps(
            view.perDay,
            money,
            change.powerFactor === undefined ? undefined : change.powerFactor * before,
          )}
          name={tried.day.name}
          unit={tried.day.unit}
          sign={sign}
          step={stepOf(view.perDay)}
          onChange={(value) => before > 0 && onChange({ ...change, powerFactor: value / before })}
        >
          {handovers(view.perDay, money, nameWithin(view))}
        </TriedField>
        <TriedField
          {...trackProps(view.ownPerHour, money, change.ownPerHour)}
          name={tried.own.name}
          unit={tried.own.unit}
          sign={sign}
          step={stepOf(view.ownPerHour)}
          onChange={(ownPerHour) => onChange({ ...change, ownPerHour })}
        >
          {handovers(view.ownPerHour, money, nameWithin(view))}
        </TriedField>
      </div>
      <p className="gap-small" aria-live="polite">
        {tried.answer.now}
        <b>{nameIn(view)(view.report.verdict.best)}</b>
        {answerNow(props)}
      </p>
      {Object.keys(change).length > 0 || years !== undefined ? (
        <Moved {...props} moved={moved} />
      ) : log.readOnly ? (
        <p className="fine gap-small">{tried.readOnly}</p>
      ) : null}
      <Behind name={tried.fromName}>
        <WhereFrom {...props} />
      </Behind>
    </Passage>
  )
}

/** The answer beside what moves it: in money, and against the next. */
function answerNow({ view }: OfAnswer): string {
  const { best, next, saving } = view.report.verdict
  const money = moneyOf(view)
  const cost = view.rows.find(({ id }) => id === best)?.cost.mean ?? 0
  return next === null
    ? tried.answer.alone(money(cost))
    : tried.answer.against({ cost: money(cost), saving: money(saving), next: nameWithin(view)(next) })
}

/** The pointer stands where it was put, also before the figures have followed it. */
function trackProps(track: Track, money: (amount: number) => string, pointed: number | undefined) {
  const { value, least, most, changes } = track
  return {
    value: pointed ?? value,
    least,
    most,
    marks: [
      { at: least, says: money(least) },
      ...changes.filter(({ at }) => at > least && at < most).map(({ at }) => ({ at, says: '' })),
      { at: most, says: money(most) },
    ],
  }
}

function stepOf({ most }: Track): number {
  return most > 200 ? 5 : 1
}

function handovers(track: Track, money: (amount: number) => string, name: (id: string) => string): string {
  if (track.changes.length === 0) return tried.nothingChanges
  return track.changes.map(({ at, to }) => tried.takesOver({ at: money(at), name: name(to) })).join(' ')
}

function termsOf({ ownPerHour, powerFactor }: PriceChange): TermsTried {
  return {
    ...(ownPerHour === undefined ? {} : { ownPerHour }),
    ...(powerFactor === undefined || powerFactor === 1 ? {} : { powerFactor }),
  }
}

/** Moved and not written: it may be, or it may be let go. */
function Moved({
  log,
  basis,
  moved,
  onChange,
  onYears,
  view,
  change,
}: TriedProps & { readonly moved: TermsTried }) {
  const [said, setSaid] = useState('')
  const keep = async () => {
    const draft = draftOfTerms(basis, moved, today())
    const written = await log.append([draft])
    if (!written.ok) return setSaid(whatWasWrong(written.problems))
    setSaid(tried.kept)
    onChange(change.quote === undefined ? {} : { quote: change.quote })
    onYears(undefined)
  }
  const can = Object.keys(moved).length > 0 && !log.readOnly
  const money = moneyOf(view)
  const list = [
    moved.yearsKept !== undefined && `${sayNumber(moved.yearsKept)} ${tried.years.unit}`,
    moved.powerFactor !== undefined && `${money(view.perDay.value)} ${tried.day.unit}`,
    moved.ownPerHour !== undefined && `${money(moved.ownPerHour)} ${tried.own.unit}`,
    change.quote !== undefined && words.ruler.quote(money(change.quote)),
  ].filter(Boolean)
  return (
    <div className="gap-small">
      {list.length > 0 && (
        <p className="small">
          {tried.moved}
          {list.join('; ')}.
        </p>
      )}
      <div className="acts">
        {can && <Button onClick={() => void keep()}>{tried.keep}</Button>}
        <Button
          look="light"
          onClick={() => {
            onChange({})
            onYears(undefined)
          }}
        >
          {tried.back}
        </Button>
      </div>
      <p className="small" aria-live="polite">
        {said || (log.readOnly ? tried.readOnly : '')}
      </p>
    </div>
  )
}

/** Each term with its source, how it is held, and a field to set it. */
function WhereFrom({ basis, log, view }: OfAnswer) {
  const { register, model } = basis
  const sign = signOf(view)
  const rows = [
    { field: 'yearsKept', name: tried.years.name, value: model.horizonYears, unit: tried.years.unit },
    { field: 'ownPerHour', name: tried.own.name, value: model.labour.ownPerHour, unit: tried.own.unit, sign },
    {
      field: 'paidPerHour',
      name: 'A paid hour',
      value: model.labour.paidPerHour,
      unit: tried.own.unit,
      sign,
    },
    {
      field: 'travelPerTrip',
      name: 'A workshop’s visit',
      value: model.labour.perTrip,
      unit: 'a visit',
      sign,
    },
    {
      field: 'mostInOneYear',
      name: 'The most you can pay in one year',
      value: model.mostPayableInOneYear,
      unit: '',
      sign,
    },
  ] as const
  return (
    <>
      {rows.map((row) => (
        <div className="opened" key={row.field}>
          <b>{row.name}</b>
          <div className="line">
            <span>{shell.figure.value}</span>
            <span>
              {row.value === undefined
                ? '–'
                : `${'sign' in row ? row.sign : ''}${sayNumber(row.value, row.value < 10 ? undefined : 0)} ${row.unit}`}
            </span>
          </div>
          <div className="line">
            <span>{shell.figure.comesFrom}</span>
            <span>{upperFirst(sourceOf(register.given[`terms.${row.field}`], log.entries))}</span>
          </div>
          <div className="line">
            <span>{shell.figure.overrule}</span>
            <Overrule
              sign={'sign' in row ? row.sign : undefined}
              unit={row.unit}
              value={row.value ?? 0}
              readOnly={log.readOnly}
              onWrite={async (value) => {
                const written = await log.append([draftOfTerms(basis, { [row.field]: value }, today())])
                return written.ok ? undefined : whatWasWrong(written.problems)
              }}
            />
          </div>
        </div>
      ))}
      <p className="fine prose">{tried.linear}</p>
    </>
  )
}

function sourceOf(id: string | undefined, entries: OfAnswer['log']['entries']): string {
  const entry = id === undefined ? undefined : entries.find((each) => each.id === id)
  return entry === undefined ? tried.assumed : tried.givenOn(sayDate(entry.from))
}
