/**
 * The faults room: stop questions first, then one question or look at a time, with what it may be beside it.
 *
 * @module
 */

import { useState } from 'react'
import type { FaultCase } from '../../faults/case.js'
import type { OfSet } from '../of-set.js'
import { Button, Passage, Preparing } from '../parts/index.js'
import { words } from '../words/faults.js'
import { sayDate } from '../words/say.js'
import { FirstSeen, Question } from './faults-ask.js'
import { AskedSoFar, CloseCase, PastCases, StartCase } from './faults-asked.js'
import { NextLook } from './faults-look.js'
import { Closed, MayBe, SheetLooks } from './faults-maybe.js'
import { FirstQuestion, OpenStops } from './faults-stops.js'
import { type Room, useCase, useRoom } from './of-case.js'
import '../look/faults.css'

/** Questions cost nothing; after so many the looks tell more. */
const fewQuestions = 3

export function FaultsScreen(of: OfSet) {
  const room = useRoom(of)
  const [chosen, setChosen] = useState<string>()
  if (room === undefined) return <Preparing title={words.title} words={words.preparing} />
  const open = room.cases.filter(({ body }) => body.closed === undefined)
  const own =
    chosen === ''
      ? undefined
      : (room.cases.find(({ body }) => body.name === chosen) ??
        (chosen === undefined ? open.at(-1) : undefined))
  return (
    <>
      {own === undefined ? (
        <StartCase room={room} onBegun={setChosen} />
      ) : (
        <OneCase
          key={own.body.name}
          room={room}
          own={own}
          onLeave={() => setChosen('')}
          onClosed={() => setChosen(own.body.name)}
        />
      )}
      {(own === undefined || own.body.closed !== undefined) && <PastCases room={room} onOpen={setChosen} />}
      <p className="small prose gap">{words.caution}</p>
    </>
  )
}

function OneCase({
  room,
  own,
  onLeave,
  onClosed,
}: {
  readonly room: Room
  readonly own: FaultCase
  readonly onLeave: () => void
  readonly onClosed: () => void
}) {
  const of = useCase(room, own)
  const { body } = own
  const [skipped, setSkipped] = useState(false)
  const { first, questions } = of.diagnosis
  const any = body.symptoms.length + body.checks.length > 0
  const asks =
    !skipped && body.symptoms.length <= fewQuestions && body.checks.length === 0 ? questions[0] : undefined
  const closed = body.closed !== undefined
  return (
    <div className="case">
      <Passage title={body.about ?? body.name} says={`${words.title}, ${sayDate(own.from)}.`} first>
        <div aria-live="polite">
          {of.wrong.length > 0 && (
            <p className="problem">
              {words.problem} {of.wrong.map(({ allowed }) => allowed).join('; ')}
            </p>
          )}
        </div>
        {any && !closed && <p className="small screen-only">{words.sheet.print}</p>}
      </Passage>
      <OpenStops {...of} />
      {first.length > 0 && !closed ? (
        <FirstQuestion {...of} />
      ) : (
        <>
          {closed && <Closed {...of} />}
          {!closed && !any && <FirstSeen {...of} />}
          {!closed && any && asks !== undefined && (
            <Question key={asks} of={of} symptom={asks} onSkip={() => setSkipped(true)} />
          )}
          {!closed && any && asks === undefined && <NextLook {...of} />}
          {any && <MayBe {...of} />}
          <AskedSoFar {...of} />
          {!closed && any && <SheetLooks {...of} />}
          {!closed && any && <CloseCase {...of} onClosed={onClosed} />}
          <div className="acts screen-only">
            {any && <Button onClick={() => window.print()}>{words.sheet.act}</Button>}
            <Button look="light" onClick={onLeave}>
              {words.start.again}
            </Button>
          </div>
        </>
      )}
    </div>
  )
}
