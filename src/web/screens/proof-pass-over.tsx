/**
 * Passing something over: only with a reason, which stays in sight.
 *
 * @module
 */

import { useId, useState } from 'react'
import { useKept } from '../data/kept-text.js'
import { today } from '../data/today.js'
import { write } from '../data/write.js'
import { saidProblem } from '../entry/problems.js'
import type { OfSet } from '../of-set.js'
import { Behind, Button } from '../parts/index.js'
import { words } from '../words/proof.js'

const { passOver: said } = words

export interface PassOverProps {
  readonly of: OfSet
  /** The stop line or the test. */
  readonly about: string
  readonly name: string
}

export function PassOver({ of, about, name }: PassOverProps) {
  const id = useId()
  const [because, setBecause] = useKept(`${of.boat}.${of.set}.passed-over.${about}`, '')
  const [problem, setProblem] = useState<string>()
  const submit = async () => {
    if (because.trim() === '') return setProblem(said.needed)
    const body = { about, because: because.trim() }
    const written = await write([{ ...of, from: today(), kind: 'passed-over', body }])
    if (!written.ok) return setProblem(written.problems.map((one) => saidProblem(one)).join(' '))
    setBecause(undefined)
    setProblem(undefined)
  }
  return (
    <Behind name={`${said.open}: ${name}`}>
      <p className="small">{said.says}</p>
      <div className="entry-field wide">
        <label htmlFor={id}>{said.label}</label>
        <textarea
          id={id}
          className="input wide"
          rows={2}
          value={because}
          aria-invalid={problem !== undefined}
          aria-describedby={problem === undefined ? undefined : `${id}-problem`}
          onChange={({ target }) => setBecause(target.value)}
        />
        {problem !== undefined && (
          <p className="problem" id={`${id}-problem`}>
            {problem}
          </p>
        )}
      </div>
      <div className="acts">
        <Button look="light" onClick={() => void submit()}>
          {said.act}
        </Button>
      </div>
    </Behind>
  )
}
