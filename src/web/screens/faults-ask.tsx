/**
 * What is seen: found by plain words, or asked for one by one.
 *
 * @module
 */

import { useId, useState } from 'react'
import { findSymptoms } from '../../faults/search.js'
import { symptomName } from '../../faults/words.js'
import { Button, Passage } from '../parts/index.js'
import { words } from '../words/faults.js'
import { BackButton } from './faults-back.js'
import type { OfCase } from './of-case.js'

const { seen, ask } = words
const mostFound = 6

/** A field for plain words, and the symptoms that fit them. */
export function SeenSearch({ of, first = false }: { readonly of: OfCase; readonly first?: boolean }) {
  const { model, own, take, busy } = of
  const [typed, setTyped] = useState(first ? (own.body.about ?? '') : '')
  const id = useId()
  const told = new Set(own.body.symptoms.map(({ symptom }) => symptom))
  const found =
    typed.trim() === '' ? [] : findSymptoms(model.symptoms, typed).filter((one) => !told.has(one.id))
  return (
    <div className="seen screen-only">
      <div className="entry-field">
        <label htmlFor={id}>{first ? seen.search : seen.more}</label>
        <input
          id={id}
          className="input wide"
          value={typed}
          autoComplete="off"
          onChange={({ target }) => setTyped(target.value)}
        />
      </div>
      <div aria-live="polite">
        {typed.trim() !== '' && found.length === 0 && <p className="small gap-small">{seen.none}</p>}
        <div className="acts listed">
          {found.slice(0, mostFound).map((one) => (
            <Button
              key={one.id}
              disabled={busy}
              onClick={() => {
                setTyped('')
                take({ symptom: one.id, is: 'present' })
              }}
            >
              {one.name}
            </Button>
          ))}
        </div>
      </div>
    </div>
  )
}

/** The first thing that is seen. */
export function FirstSeen(of: OfCase) {
  return (
    <Passage title={seen.title} says={seen.says} className="screen-only">
      <SeenSearch of={of} first />
      <div className="acts">
        <BackButton {...of} />
      </div>
    </Passage>
  )
}

/** One symptom that is worth asking for. */
export function Question({
  of,
  symptom,
  onSkip,
}: {
  readonly of: OfCase
  readonly symptom: string
  readonly onSkip: () => void
}) {
  const { model, take, busy } = of
  const { look } = model.symptoms.find(({ id }) => id === symptom) ?? {}
  const answer = (is: 'present' | 'absent' | 'not-known') => () => take({ symptom, is })
  return (
    <Passage title={ask.title} says={ask.says} className="screen-only">
      <h3 className="question">{symptomName(model, symptom)}?</h3>
      {look !== undefined && <p className="small prose">{look}</p>}
      <div className="acts">
        <Button disabled={busy} onClick={answer('present')}>
          {ask.there}
        </Button>
        <Button disabled={busy} onClick={answer('absent')}>
          {ask.absent}
        </Button>
        <Button disabled={busy} onClick={answer('not-known')}>
          {ask.unknown}
        </Button>
        <BackButton {...of} />
        <Button look="light" onClick={onSkip}>
          {ask.skip}
        </Button>
      </div>
      <SeenSearch of={of} />
    </Passage>
  )
}
