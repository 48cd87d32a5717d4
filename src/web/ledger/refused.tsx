/**
 * Entries that the server would not take: their text is still here, to be mended or dropped.
 *
 * @module
 */

import { useState } from 'react'
import type { Outgoing } from '../data/browser-store.js'
import { outgoing } from '../data/outbox.js'
import { useLive } from '../data/value.js'
import { drop, leavePictureOut } from '../data/write.js'
import { EntryForm } from '../entry/entry-form.js'
import { saidProblem } from '../entry/problems.js'
import { sayEntry } from '../entry/say-entry.js'
import { Button, Passage, PlainButton, Tag } from '../parts/index.js'
import { kindNames } from '../words/entry/kinds.js'
import { logbook } from '../words/logbook.js'
import { sayDate } from '../words/say.js'
import type { RowOf } from './entry-row.js'

export function Refused({ of }: { readonly of: RowOf }) {
  const refused = useLive(outgoing).filter((item) => item.boat === of.boat && item.refused !== undefined)
  if (refused.length === 0) return null
  return (
    <Passage title={logbook.refusedTitle} says={logbook.refusedSay}>
      {refused.map((item) => (
        <OneRefused key={item.id} of={of} item={item} />
      ))}
    </Passage>
  )
}

function OneRefused({ of, item }: { readonly of: RowOf; readonly item: Outgoing }) {
  const [mending, setMending] = useState(false)
  const { entry, refused = [] } = item
  return (
    <div className="asked">
      <Tag look="outline">{logbook.refusedTitle}</Tag>
      <p>
        <b>
          {sayDate(entry.from)}, {kindNames[entry.kind]}: {sayEntry(entry, of)}
        </b>
      </p>
      <ul className="small">
        {refused.map((problem) => (
          <li key={`${problem.code} ${problem.path}`}>{saidProblem(problem)}</li>
        ))}
      </ul>
      {item.pictureRefused && <p className="fine">{logbook.pictureKept}</p>}
      {mending ? (
        <>
          <EntryForm
            boat={of.boat}
            set={of.set}
            purpose={{ is: 'mend', item }}
            currency={of.currency}
            catalogue={of.catalogue}
            units={of.units}
            onWritten={() => setMending(false)}
          />
          <PlainButton onClick={() => setMending(false)}>{logbook.leaveAsIs}</PlainButton>
        </>
      ) : (
        <div className="acts">
          <Button onClick={() => setMending(true)}>{logbook.mend}</Button>
          {item.pictureRefused && (
            <Button onClick={() => void leavePictureOut(item)}>{logbook.leavePictureOut}</Button>
          )}
          <Button look="light" onClick={() => void drop(item)}>
            {logbook.dropIt}
          </Button>
        </div>
      )}
    </div>
  )
}
