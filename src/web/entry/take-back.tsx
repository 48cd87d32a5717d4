/**
 * Taking an entry back: it stays in the log, struck out, with the reason.
 *
 * @module
 */

import { useId, useState } from 'react'
import type { Draft } from '../../logbook/draft.js'
import type { Entry } from '../../logbook/kinds.js'
import { useKept } from '../data/kept-text.js'
import { today } from '../data/today.js'
import { write } from '../data/write.js'
import { Button } from '../parts/index.js'
import { form } from '../words/entry/form.js'
import { saidProblem } from './problems.js'

export function TakeBack({ entry, onDone }: { readonly entry: Entry; readonly onDone: () => void }) {
  const id = useId()
  const [reason, setReason] = useKept(`${entry.boat}.take-back-${entry.id}`, '')
  const [problem, setProblem] = useState<string>()
  const takeBack = async () => {
    if (reason.trim() === '') return setProblem(form.needed)
    const written = await write([draftTakingBack([entry], reason.trim())])
    if (!written.ok) return setProblem(written.problems.map((one) => saidProblem(one)).join(' '))
    setReason(undefined)
    onDone()
  }
  return (
    <details className="behind">
      <summary>{form.takeBack}</summary>
      <div className="entry-field wide">
        <label htmlFor={id}>{form.takeBackReason}</label>
        <input
          id={id}
          className="input wide"
          value={reason}
          aria-invalid={problem !== undefined || undefined}
          onChange={({ target }) => setReason(target.value)}
        />
        {problem && <p className="problem">{problem}</p>}
        <div className="acts">
          <Button onClick={() => void takeBack()}>{form.takeBack}</Button>
        </div>
      </div>
    </details>
  )
}

/** An entry that takes others back. */
export function draftTakingBack(entries: readonly Entry[], reason: string): Draft {
  const [first] = entries
  return {
    boat: first!.boat,
    set: first!.set,
    kind: 'note',
    from: today(),
    body: { text: reason },
    corrects: entries.map(({ id }) => id),
    voids: true,
  }
}
