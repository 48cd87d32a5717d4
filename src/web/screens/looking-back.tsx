/**
 * Looking back: whether past forecasts came true, and what past choices came to. Worked out only when it is asked for.
 *
 * @module
 */

import { useState } from 'react'
import { useBoat, useCatalogue } from '../data/boat.js'
import { boatFactsOf } from '../data/facts.js'
import { catalogueInWords } from '../data/region.js'
import type { OfSet } from '../of-set.js'
import { Button, Lead, Passage, Refining, Say } from '../parts/index.js'
import { words } from '../words/looking-back.js'
import { lowerFirst, plural, sayMoney, sayNumber, shortName } from '../words/say.js'
import { useLookBack } from '../work/look-back-asked.js'
import type { LookBackAsked, LookBackState, LookedBackOn } from '../work/look-back-says.js'
import { AskBack } from './looking-back-ask.js'
import { Bands, Score } from './looking-back-bands.js'
import { PastChoices } from './looking-back-choices.js'
import { Dates } from './looking-back-dates.js'
import { ToldLead } from './looking-back-lead.js'
import type { Saying } from './looking-back-saying.js'
import '../look/looking-back.css'
import '../look/marks.css'

const first: LookBackAsked = { months: 6, most: 4, by: 'noted' }

export function LookingBackScreen({ boat, set }: OfSet) {
  const log = useBoat(boat)
  const [asked, setAsked] = useState(first)
  const { state, waits, start, stop } = useLookBack(log, set, asked)
  const facts = boatFactsOf(log.entries)
  const catalogue = catalogueInWords(useCatalogue(), facts.words)
  const saying: Saying = {
    part: (id) => lowerFirst(shortName(catalogue?.parts.find((part) => part.id === id)?.name ?? id)),
    money: (amount) => sayMoney(facts.currency ?? '', amount),
  }
  const { hindsight } = state.stage === 'done' ? state : {}
  return (
    <>
      <Passage title={words.title} first says={words.says}>
        <div aria-live="polite">
          <Answer state={state} saying={saying} />
        </div>
        {(state.stage === 'working' || state.stage === 'stopped') && (
          <Refining
            share={state.done / state.total}
            state={state.stage === 'working' ? 'refining' : 'stopped'}
            word={words.working.word(state.done, state.total)}
            onStop={stop}
            onGoOn={start}
          />
        )}
        {state.stage === 'failed' && (
          <div className="acts">
            <Button onClick={start}>{words.failed.again}</Button>
          </div>
        )}
        {hindsight?.dates.length === 0 && asked.by === 'noted' && (
          <div className="acts">
            <Button onClick={() => setAsked({ ...asked, by: 'happened' })}>{words.none.other}</Button>
          </div>
        )}
        <AskBack asked={asked} onAsk={setAsked} late={state.stage === 'done' ? state.notedLate : undefined}>
          {state.stage === 'asleep' && !waits && (
            <div className="acts">
              <Button look="filled" onClick={start}>
                {words.ask.start}
              </Button>
            </div>
          )}
        </AskBack>
      </Passage>
      {state.stage === 'done' && <Came come={state} saying={saying} />}
    </>
  )
}

/** The sentence, and the paragraph after it. */
function Answer({ state, saying }: { readonly state: LookBackState; readonly saying: Saying }) {
  switch (state.stage) {
    case 'asleep':
      return <Said before={words.asleep.say} bold={words.asleep.bold} lead={words.asleep.lead} />
    case 'working':
      return <Said before={words.working.say} lead={words.working.lead} />
    case 'stopped':
      return <Said before={words.stopped.say} lead={words.stopped.lead(state.done, state.total)} />
    case 'failed':
      return (
        <>
          <Said before={words.failed.say} lead={words.failed.lead} />
          <p className="small gap-small">{state.problem}</p>
        </>
      )
    case 'done':
      return <Told come={state} saying={saying} />
  }
}

function Told({ come, saying }: { readonly come: LookedBackOn; readonly saying: Saying }) {
  const { hindsight } = come
  const { allBands, by, dates, unknownThen } = hindsight
  if (dates.length === 0) {
    return <Said before={words.none.say} bold={words.none[by]} lead={words.none.lead(unknownThen)} />
  }
  if (allBands === null) {
    return (
      <>
        <Said before={words.unscored.say} bold={words.unscored.bold} lead={words.unscored.lead} />
        <Open come={come} />
      </>
    )
  }
  return (
    <>
      <Say>
        {words.say[allBands.judged]}
        <b>
          {words.told({
            came: plural(allBands.came, 'part'),
            expected: sayNumber(allBands.expected, 1),
          })}
        </b>
        .
      </Say>
      <ToldLead hindsight={hindsight} />
      <Open come={come} />
      {hindsight.untold > 0 && (
        <p className="small prose gap-small">
          {words.untold(
            [...new Set(dates.flatMap((date) => (date.complete ? date.failedUntold : [])))]
              .map(saying.part)
              .join(', '),
          )}
        </p>
      )}
    </>
  )
}

function Open({ come: { hindsight } }: { readonly come: LookedBackOn }) {
  const { notComplete, unknownThen } = hindsight
  const { spans, entered, expected } = notComplete
  return (
    <>
      {spans > 0 && (
        <p className="small prose gap-small">
          {words.open(spans, { entered, expected: sayNumber(expected, 1) })}
        </p>
      )}
      {unknownThen > 0 && <p className="small prose gap-small">{words.unknownThen(unknownThen)}</p>}
    </>
  )
}

function Said({
  before,
  bold,
  lead,
}: {
  readonly before: string
  readonly bold?: string
  readonly lead: string
}) {
  return (
    <>
      <Say>
        {before}
        {bold !== undefined && <b>{bold}</b>}
      </Say>
      <Lead>{lead}</Lead>
    </>
  )
}

function Came({ come, saying }: { readonly come: LookedBackOn; readonly saying: Saying }) {
  const { hindsight, choices } = come
  return (
    <>
      {hindsight.allBands !== null && <Bands hindsight={hindsight} />}
      {hindsight.brier !== null && <Score hindsight={hindsight} brier={hindsight.brier} />}
      {hindsight.dates.length > 0 && <Dates hindsight={hindsight} saying={saying} />}
      <PastChoices choices={choices} saying={saying} />
    </>
  )
}
