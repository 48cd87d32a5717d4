/**
 * Keeping what was decided: written into the log with the whole answer that it rested on.
 *
 * @module
 */

import { type FormEvent, useId, useState } from 'react'
import { decidedJob } from '../../job/decided-job.js'
import type { Draft } from '../../logbook/draft.js'
import { useKept } from '../data/kept-text.js'
import { today } from '../data/today.js'
import { useLive } from '../data/value.js'
import { Button, Lead, Passage } from '../parts/index.js'
import { decide as words } from '../words/looking-back.js'
import type { Answer } from '../work/answers.js'
import { theConductor } from '../work/begin.js'
import { moneyOf, type OfAnswer } from './of-answer.js'
import { whatWasWrong } from './terms-tried.js'
import '../look/looking-back.css'

export interface DecideProps extends OfAnswer {
  readonly answer: Answer
  /** A price or the years are moved: what is shown is not the answer of the log. */
  readonly tried: boolean
}

export function Decide({ answer, tried, ...of }: DecideProps) {
  const { stage, rough } = useLive(answer.progress)
  const stands = (stage === 'done' || stage === 'stopped') && !rough && !answer.following
  const [written, setWritten] = useState(false)
  const why = of.log.readOnly
    ? words.demonstration
    : tried
      ? words.tried
      : stands || written
        ? undefined
        : words.waits
  return (
    <Passage title={words.title} says={words.says} className="screen-only">
      {why !== undefined && <p className="prose">{why}</p>}
      <div aria-live="polite">{written && <Lead>{words.written}</Lead>}</div>
      {why === undefined && !written && <DecideForm {...of} onWritten={() => setWritten(true)} />}
    </Passage>
  )
}

function DecideForm({
  basis,
  view,
  log,
  keyOfAnswer,
  onWritten,
}: OfAnswer & { readonly onWritten: () => void }) {
  const { boat, set } = basis.register
  const [because, setBecause] = useKept<string>(`${boat}.${set}.decision`, '')
  const [chosen, setChosen] = useState(view.report.verdict.best)
  const [state, setState] = useState<'still' | 'writing'>('still')
  const [wrong, setWrong] = useState<string>()
  const id = useId()
  const taken = view.rows.find((row) => row.id === chosen) ?? view.rows[0]!
  const write = async () => {
    setState('writing')
    const decided = await theConductor().decision(keyOfAnswer)
    if (decided === undefined) return setWrong(words.gone)
    if (!decided.ok) return setWrong(whatWasWrong(decided.problems))
    const { kept, walkAwayPrice } = decided
    const alternative = basis.model.alternatives.find((one) => one.id === taken.id)
    const draft = {
      kind: 'decision',
      boat,
      set,
      from: today(),
      body: {
        choice: taken.name,
        alternative: taken.id,
        ...(because.trim() === '' ? {} : { because: because.trim() }),
        ...(alternative === undefined ? {} : decidedJob(alternative, basis.register)),
        ...(walkAwayPrice === undefined ? {} : { walkAwayPrice }),
        kept,
      },
    } as Draft
    const written = await log.append([draft])
    if (!written.ok) return setWrong(whatWasWrong(written.problems))
    setBecause(undefined)
    onWritten()
  }
  const submit = (event: FormEvent) => {
    event.preventDefault()
    setWrong(undefined)
    void write().finally(() => setState('still'))
  }
  return (
    <form onSubmit={submit} className="decide">
      <fieldset className="entry-field">
        <legend>{words.what}</legend>
        <div className="picks">
          {view.rows.map((row) => (
            <label key={row.id}>
              <input
                type="radio"
                name={id}
                checked={row.id === taken.id}
                onChange={() => setChosen(row.id)}
              />
              {row.name}, {moneyOf(view)(row.cost.mean)}
            </label>
          ))}
        </div>
      </fieldset>
      {taken.barred !== undefined && <p className="problem">{words.barred(taken.barred)}</p>}
      <div className="entry-field">
        <label htmlFor={`${id}-because`}>{words.because}</label>
        <textarea
          id={`${id}-because`}
          className="input wide"
          rows={3}
          maxLength={4000}
          value={because}
          onChange={({ target }) => setBecause(target.value)}
        />
      </div>
      <div aria-live="polite">{wrong !== undefined && <p className="problem">{wrong}</p>}</div>
      <div className="acts">
        <Button type="submit" look="filled" disabled={state === 'writing'}>
          {state === 'writing' ? words.writing : words.write}
        </Button>
      </div>
    </form>
  )
}
