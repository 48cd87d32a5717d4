/**
 * Two corrections of one entry that did not know of one another: side by side, until someone says.
 *
 * @module
 */

import { useState } from 'react'
import type { Dispute } from '../../logbook/current.js'
import type { Draft } from '../../logbook/draft.js'
import type { Entry } from '../../logbook/kinds.js'
import { write } from '../data/write.js'
import { saidProblem } from '../entry/problems.js'
import { sayEntry } from '../entry/say-entry.js'
import { Button, Passage } from '../parts/index.js'
import { kindNames } from '../words/entry/kinds.js'
import { logbook } from '../words/logbook.js'
import { sayDate } from '../words/say.js'
import type { RowOf } from './entry-row.js'

const words = logbook.dispute

export function Disputes({ of, disputes }: { readonly of: RowOf; readonly disputes: readonly Dispute[] }) {
  if (disputes.length === 0) return null
  return (
    <Passage title={words.title} says={words.say}>
      {disputes.map(({ tips }) => (
        <OneDispute key={tips[0].id} of={of} tips={tips} />
      ))}
    </Passage>
  )
}

function OneDispute({ of, tips }: { readonly of: RowOf; readonly tips: readonly Entry[] }) {
  const [problem, setProblem] = useState('')
  const take = async (tip: Entry) => {
    const written = await write([draftTaking(tip, tips)])
    if (!written.ok) setProblem(written.problems.map((one) => saidProblem(one)).join(' '))
  }
  return (
    <div className="dispute">
      <div className="two">
        {tips.map((tip) => (
          <div className="tip" key={tip.id}>
            <p className="small second">
              {kindNames[tip.kind]}, {sayDate(tip.from)};{' '}
              {words.noted(sayDate(tip.noted.slice(0, 10)), tip.device)}
            </p>
            <p>{tip.voids ? logbook.takenBackPlain : sayEntry(tip, of)}</p>
            {!of.readOnly && (
              <div className="acts">
                <Button onClick={() => void take(tip)}>{words.take}</Button>
              </div>
            )}
          </div>
        ))}
      </div>
      <p className="fine">{words.reckoned}</p>
      {problem && <p className="problem">{problem}</p>}
    </div>
  )
}

/** The same entry once more, in the place of all that stand side by side. */
function draftTaking(tip: Entry, tips: readonly Entry[]): Draft {
  const { boat, set, from, until, kind, body, voids } = tip
  const again = { boat, set, from, until, kind, body, corrects: tips.map(({ id }) => id) }
  return (voids ? { ...again, voids } : again) as unknown as Draft
}
