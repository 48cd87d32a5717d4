/**
 * The boats: each with her answer in a sentence; a boat file in and out.
 *
 * @module
 */

import { useMemo, useState } from 'react'
import { type BoatInList, useBoat, useBoats } from '../data/boat.js'
import { boatFactsOf } from '../data/facts.js'
import { basisInWords, viewInWords } from '../data/region.js'
import { BoatFileIn } from '../entry/boat-file-in.js'
import { Lead, Link, Passage, Say } from '../parts/index.js'
import { pathTo } from '../routes.js'
import { setInOneLine } from '../set-line.js'
import { boats as words } from '../words/boats.js'
import { shell } from '../words/shell.js'
import { useAnswer } from '../work/answers.js'
import { Sentence } from './sentence.js'

export function BoatsScreen() {
  const { status, boats } = useBoats()
  /** Answers are reckoned one after the other, so that the first is there soon. */
  const [answered, setAnswered] = useState(0)
  const own = boats.filter(({ demonstration }) => !demonstration)
  const shown = boats.filter(({ demonstration }) => demonstration)
  const order = [...own, ...shown]
  const rows = (list: readonly BoatInList[]) =>
    list.map((boat) => (
      <BoatRow
        key={boat.id}
        id={boat.id}
        may={order.indexOf(boat) <= answered}
        onAnswered={() => setAnswered((before) => Math.max(before, order.indexOf(boat) + 1))}
      />
    ))
  if (status === 'loading') return null
  return (
    <>
      <Passage title={words.title} says={words.says} first>
        {status === 'failed' && <p className="problem">{words.failed}</p>}
        {own.length === 0 ? (
          <>
            <Say>{words.none.say}</Say>
            <Lead>{words.none.lead}</Lead>
          </>
        ) : (
          rows(own)
        )}
        <div className="acts">
          <Link className={own.length === 0 ? 'button filled' : 'button'} to={pathTo({ page: 'new' })}>
            {own.length === 0 ? words.enterNew : words.another}
          </Link>
        </div>
      </Passage>
      {shown.length > 0 && (
        <Passage title={words.demonstrations} says={words.demonstrationsSay}>
          {rows(shown)}
        </Passage>
      )}
      <BoatFileIn />
    </>
  )
}

interface RowProps {
  readonly id: string
  /** Whether her answer may be reckoned now. */
  readonly may: boolean
  readonly onAnswered: () => void
}

function BoatRow({ id, may, onAnswered }: RowProps) {
  const boat = useBoat(id)
  const { sets } = boat
  return (
    <article className="boat-row" aria-labelledby={`boat-${id}`}>
      <h3 id={`boat-${id}`}>{boat.name}</h3>
      {boat.status === 'ready' && sets.length === 0 && (
        <>
          <p className="answer">{words.noSet}</p>
          <Places boat={id} set={unnamedSet} name={boat.name} own={!boat.readOnly} />
        </>
      )}
      {sets.map((set) => (
        <div key={set}>
          <p className="fine">{setInOneLine(boat.entries, set)}</p>
          {may ? (
            <Answer boat={id} set={set} onAnswered={onAnswered} />
          ) : (
            <p className="answer second">{words.waits}</p>
          )}
          <Places boat={id} set={set} name={boat.name} own={!boat.readOnly} />
        </div>
      ))}
    </article>
  )
}

/** Where entries for a set go that nobody has described yet. */
const unnamedSet = 'main'

function Answer({
  boat,
  set,
  onAnswered,
}: {
  readonly boat: string
  readonly set: string
  readonly onAnswered: () => void
}) {
  const log = useBoat(boat)
  const { problem, key, ...answer } = useAnswer(boat, set, {}, { roughFirst: false })
  const region = useMemo(() => boatFactsOf(log.entries).words, [log.entries])
  const basis = basisInWords(answer.basis, region)
  const view = viewInWords(answer.view, region)
  const there = view !== undefined || problem !== undefined
  const [told, setTold] = useState(false)
  if (there && !told) {
    setTold(true)
    queueMicrotask(onAnswered)
  }
  if (view !== undefined && basis !== undefined) {
    return <Sentence of={{ basis, view, log, keyOfAnswer: key }} className="answer" />
  }
  return <p className="answer second">{problem !== undefined ? words.cannotTell : words.reckoning}</p>
}

function Places({
  boat,
  set,
  name,
  own,
}: {
  readonly boat: string
  readonly set: string
  readonly name: string
  readonly own: boolean
}) {
  const pages = ['alternatives', 'forecast', 'set', 'logbook', 'settings'] as const
  return (
    <p className="where">
      {pages.map((page) => (
        <Link key={page} to={pathTo({ page, boat, set })}>
          {page === 'settings' ? shell.settings : shell.pages[page]}
          <span className="unseen"> {words.of(name)}</span>
        </Link>
      ))}
      {own && (
        <a href={`/api/boats/${encodeURIComponent(boat)}/file`} download>
          {words.file}
          <span className="unseen"> {words.of(name)}</span>
        </a>
      )}
    </p>
  )
}
