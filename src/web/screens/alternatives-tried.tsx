/**
 * What can be moved, and the answer with it.
 *
 * @module
 */

import { useState } from 'react'
import type { Track } from '../../alternatives/answer-view.js'
import type { PriceChange } from '../../alternatives/reweigh.js'
import type { InputTurns } from '../../alternatives/turning-points.js'
import { today } from '../data/today.js'
import {
  Behind,
  Button,
  type FigureSaid,
  hole,
  Passage,
  Said,
  Tried as TriedField,
  useFigures,
} from '../parts/index.js'
import { words } from '../words/alternatives.js'
import { sayNumber } from '../words/say.js'
import { figuresOf, termsOf } from './alternatives-figures.js'
import { Overruling } from './behind-figures.js'
import { dayPriceOf } from './day-price.js'
import { moneyOf, nameIn, nameWithin, type OfAnswer, signOf } from './of-answer.js'
import { draftOfTerms, type TermsTried, whatWasWrong } from './terms-tried.js'

/** Ends of the track of years. */
const leastYears = 1
const mostYears = 25

const { tried } = words
const { yearsKept: yearsWords, perDay: dayWords, ownPerHour: ownWords } = tried.names

export interface TriedProps extends OfAnswer {
  readonly change: PriceChange
  readonly years: number | undefined
  /** As the log has them. */
  readonly logYears: number | undefined
  /** Where other years would make another alternative the best, once that is worked out. */
  readonly yearTurns: InputTurns | undefined
  readonly onChange: (change: PriceChange) => void
  readonly onYears: (years: number | undefined) => void
}

export function Tried(props: TriedProps) {
  const { view, basis, change, years, logYears, onChange, onYears, log } = props
  const money = moneyOf(view)
  const sign = signOf(view)
  const before = dayPriceOf(basis.model)
  const moved = {
    ...movedTerms(change),
    ...(years === undefined || years === logYears ? {} : { yearsKept: years }),
  }
  return (
    <Passage title={tried.title} says={tried.says} className="moved">
      <div className="fields">
        <TriedField
          name={yearsWords.name}
          unit={yearsWords.unit}
          value={years ?? logYears ?? view.horizonYears}
          least={leastYears}
          most={mostYears}
          step={1}
          onChange={onYears}
          marks={[
            { at: leastYears, says: String(leastYears) },
            ...turnsOf(props.yearTurns).map(({ at }) => ({ at, says: '' })),
            { at: mostYears, says: String(mostYears) },
          ]}
        >
          <YearTurns {...props} />
          <p className="fine prose screen-only">{tried.yearsNote}</p>
        </TriedField>
        <TriedField
          {...trackProps(
            view.perDay,
            money,
            change.powerFactor === undefined ? undefined : change.powerFactor * before,
          )}
          name={dayWords.name}
          unit={dayWords.unit}
          sign={sign}
          step={stepOf(view.perDay)}
          onChange={(value) => before > 0 && onChange({ ...change, powerFactor: value / before })}
        >
          {handovers(view.perDay, props)}
        </TriedField>
        <TriedField
          {...trackProps(view.ownPerHour, money, change.ownPerHour)}
          name={ownWords.name}
          unit={ownWords.unit}
          sign={sign}
          step={stepOf(view.ownPerHour)}
          onChange={(ownPerHour) => onChange({ ...change, ownPerHour })}
        >
          {handovers(view.ownPerHour, props)}
        </TriedField>
      </div>
      <AnswerNow {...props} />
      {Object.keys(change).length > 0 || years !== undefined ? (
        <Moved {...props} moved={moved} />
      ) : log.readOnly ? (
        <p className="fine gap-small screen-only">{tried.readOnly}</p>
      ) : null}
      <Behind name={tried.fromName}>
        <WhereFrom {...{ basis, view, log, keyOfAnswer: props.keyOfAnswer }} />
      </Behind>
    </Passage>
  )
}

/** The answer beside what moves it: in money, and against the next. */
function AnswerNow(of: OfAnswer) {
  const { view } = of
  const { best, next, saving } = view.report.verdict
  const figures = useFigures()
  const behind = figuresOf(of)
  const money = moneyOf(view)
  const row = view.rows.find(({ id }) => id === best)
  if (row === undefined) return null
  const filled: Record<string, FigureSaid> = {
    cost: behind.cost(row, money(row.cost.mean)),
    saving: behind.saving(money(saving)),
  }
  const says =
    next === null
      ? tried.answer.alone(hole('cost'))
      : tried.answer.against({ cost: hole('cost'), saving: hole('saving'), next: nameWithin(view)(next) })
  return (
    <>
      <p className="gap-small" aria-live="polite">
        {tried.answer.now}
        <b>{nameIn(view)(best)}</b>
        {figures.fill(says, filled)}
      </p>
      {figures.opened()}
    </>
  )
}

/** Turns that stand on the track of years. */
function turnsOf(turns: InputTurns | undefined) {
  return [turns?.below, turns?.above]
    .filter((turn) => turn !== undefined)
    .filter(({ at }) => at > leastYears && at < mostYears)
}

/** Who takes over when the boat is kept for fewer years, and for more. */
function YearTurns({ yearTurns, view }: TriedProps) {
  const turns = turnsOf(yearTurns)
  if (turns.length === 0) return null
  const said = (at: number) => `${sayNumber(at, 1)}\u00a0${yearsWords.unit}`
  const says = turns.map((turn, index) => {
    const takes = turn === yearTurns?.below ? tried.takesOverUnder : tried.takesOver
    return takes({ at: hole(`at${index}`), name: nameWithin(view)(turn.to) })
  })
  const filled = turns.map(({ at }, index): [string, FigureSaid] => [
    `at${index}`,
    {
      says: said(at),
      behind: () => ({ ...tried.yearsBehind, value: said(at) }),
    },
  ])
  return <Said className="fine prose" text={says.join(' ')} figures={Object.fromEntries(filled)} />
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

function handovers(track: Track, of: OfAnswer) {
  const { view } = of
  if (track.changes.length === 0) return <p className="fine prose">{tried.nothingChanges}</p>
  const behind = figuresOf(of)
  const money = moneyOf(view)
  const filled = Object.fromEntries(
    track.changes.map(({ at }, index) => [`at${index}`, behind.handover(money(at))]),
  )
  const says = track.changes.map(({ to }, index) =>
    tried.takesOver({ at: hole(`at${index}`), name: nameWithin(view)(to) }),
  )
  return <Said className="fine prose" text={says.join(' ')} figures={filled} />
}

function movedTerms({ ownPerHour, powerFactor }: PriceChange): TermsTried {
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
    moved.yearsKept !== undefined && `${sayNumber(moved.yearsKept)} ${yearsWords.unit}`,
    moved.powerFactor !== undefined && `${money(view.perDay.value)} ${dayWords.unit}`,
    moved.ownPerHour !== undefined && `${money(moved.ownPerHour)} ${ownWords.unit}`,
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
function WhereFrom(of: OfAnswer) {
  const { yearsKept, perDay, ownPerHour, paidPerHour, travelPerTrip, mostInOneYear } = termsOf(of)
  return (
    <>
      <div className="opened">
        <Overruling
          of={of}
          terms={[yearsKept, perDay, ownPerHour, paidPerHour, travelPerTrip, mostInOneYear]}
        />
      </div>
      <p className="fine prose">{tried.linear}</p>
    </>
  )
}
