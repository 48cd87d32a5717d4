/**
 * What to do now: the answer in a sentence, its picture, what can be moved, and everything behind it.
 *
 * @module
 */

import { lazy, memo, Suspense, useCallback, useContext, useEffect, useState } from 'react'
import type { PriceChange } from '../../alternatives/reweigh.js'
import type { InputTurns } from '../../alternatives/turning-points.js'
import { useBoat } from '../data/boat.js'
import { basisInWords, RegionOfPage, viewInWords } from '../data/region.js'
import { useLive } from '../data/value.js'
import type { OfSet } from '../of-set.js'
import { Cautions, Failed, Passage, Preparing, Refining } from '../parts/index.js'
import { words } from '../words/alternatives.js'
import { sayDate, sayNumber } from '../words/say.js'
import { type Answer, useAnswer } from '../work/answers.js'
import { useBearing } from '../work/bearings.js'
import { AnswerPassage } from './alternatives-answer.js'
import { WouldChange } from './alternatives-changes.js'
import { WorthFinding } from './alternatives-finding.js'
import { AlternativesList } from './alternatives-list.js'
import { RestsOn } from './alternatives-rests.js'
import { Tried } from './alternatives-tried.js'
import { When } from './alternatives-when.js'
import { BriefLink } from './brief-link.js'
import { Decide } from './decide.js'
import type { OfAnswer } from './of-answer.js'
import { StopLines } from './stops.js'
import '../look/marks.css'

export function AlternativesScreen({ boat, set }: OfSet) {
  const [years, setYears] = useState<number>()
  const settledYears = useSettled(years)
  const answer = useAnswer(boat, set, settledYears === undefined ? {} : { yearsKept: settledYears })
  const [change, setChange] = useState<PriceChange>({})
  const [editing, setEditing] = useState<string>()
  const [yearTurns, setYearTurns] = useState<InputTurns>()
  const log = useBoat(boat)
  const { prices } = answer
  const region = useContext(RegionOfPage)
  const basis = basisInWords(answer.basis, region)
  const view = viewInWords(answer.view, region)
  useEffect(() => prices(change), [prices, change])
  const logYears = useLogYears(view?.horizonYears, years === undefined && settledYears === undefined)
  const onQuote = useCallback((quote: number) => setChange((before) => ({ ...before, quote })), [])
  if (answer.problem !== undefined) {
    const again = { says: words.failed.again, act: answer.goOn }
    return <Failed title={words.title} words={words.failed} problem={answer.problem} again={again} />
  }
  if (basis === undefined || view === undefined) {
    return <Preparing title={words.title} words={words.preparing} margin={<Margin answer={answer} />} />
  }
  const shared = { basis, view, log, keyOfAnswer: answer.key }
  return (
    <>
      <Stops basis={basis} log={log} />
      <AnswerPassage
        {...shared}
        quote={change.quote}
        margin={
          <>
            <Margin answer={answer} />
            <BriefLink boat={boat} set={set} />
          </>
        }
        onQuote={onQuote}
      />
      <List {...shared} onChange={setEditing} />
      {editing !== undefined && (
        <Suspense>
          <EditAlternative
            key={editing}
            {...shared}
            set={set}
            id={editing}
            onDone={() => setEditing(undefined)}
          />
        </Suspense>
      )}
      <Tried
        {...shared}
        change={change}
        years={years}
        logYears={logYears}
        yearTurns={yearTurns}
        onChange={setChange}
        onYears={setYears}
      />
      <Bears {...shared} answer={answer} change={change} onYearTurns={setYearTurns} />
      <Deciding {...shared} answer={answer} tried={years !== undefined || Object.keys(change).length > 0} />
      <Rests {...shared} />
      <Passage title={words.cautions.title} says={words.cautions.says}>
        <Cautions list={words.cautions.list} />
      </Passage>
    </>
  )
}

/** What is worth finding out, what would change the answer, and when to replace; drawn apart, for it follows later. */
function Bears({
  answer,
  change,
  onYearTurns,
  ...of
}: OfAnswer & {
  readonly answer: Answer
  readonly change: PriceChange
  /** Where the advice changes hands as the boat is kept for fewer or for more years. */
  readonly onYearTurns: (turns: InputTurns | undefined) => void
}) {
  const bearing = useBearing(answer, change)
  const years = bearing.changes?.turning.inputs.find(({ id }) => id === 'years-kept')
  useEffect(() => onYearTurns(years), [onYearTurns, years])
  return (
    <>
      <Finding {...of} bearing={bearing} />
      <Changes {...of} bearing={bearing} />
      <Replacing {...of} bearing={bearing} />
    </>
  )
}

const EditAlternative = lazy(async () => ({
  default: (await import('./alternatives-edit.js')).EditAlternative,
}))

/** What does not look at the pointer is not drawn anew while it moves. */
const Stops = memo(StopLines)
const List = memo(AlternativesList)
const Deciding = memo(Decide)
const Rests = memo(RestsOn)
const Finding = memo(WorthFinding)
const Changes = memo(WouldChange)
const Replacing = memo(When)

/** The years of the log itself, while others are tried. */
function useLogYears(shown: number | undefined, untried: boolean): number | undefined {
  const [years, setYears] = useState(shown)
  if (untried && shown !== undefined && shown !== years) setYears(shown)
  return years
}

/** Years are played anew: not at every step of the pointer, only where it rests. */
function useSettled<T>(value: T): T {
  const [settled, setSettled] = useState(value)
  useEffect(() => {
    const timer = setTimeout(() => setSettled(value), 250)
    return () => clearTimeout(timer)
  }, [value])
  return settled
}

function Margin({ answer }: { readonly answer: Answer }) {
  const { basis, view, following } = answer
  const { stage, choosing, rough, histories, wanted } = useLive(answer.progress)
  return (
    <>
      {basis && <p>{words.asOf(sayDate(basis.register.asOf))}</p>}
      {following && <p>{words.followingLog}</p>}
      {rough && <p>{words.rough}</p>}
      <Refining
        share={wanted > 0 ? histories / wanted : 0}
        state={stage === 'stopped' ? 'stopped' : stage === 'done' ? 'done' : 'refining'}
        word={
          rough
            ? words.roughFollows
            : choosing
              ? words.choosing
              : stage === 'preparing'
                ? words.reading
                : words.refining(sayNumber(histories), sayNumber(wanted))
        }
        onStop={answer.stop}
        onGoOn={answer.goOn}
      />
      {stage === 'done' && view && <p>{words.refiningTitle(sayNumber(view.histories))}</p>}
    </>
  )
}
