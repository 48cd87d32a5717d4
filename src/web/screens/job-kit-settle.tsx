/**
 * What is to be settled before a piece is ordered, part by part: questions, why they are asked, and answers to be written.
 *
 * @module
 */

import { type FormEvent, useId, useState } from 'react'
import type { Need } from '../../job/kit.js'
import { countQuestion } from '../../job/kit-known.js'
import type { Draft } from '../../logbook/draft.js'
import { useKept } from '../data/kept-text.js'
import { useSaid } from '../data/region.js'
import { today } from '../data/today.js'
import { Behind, Button, Passage } from '../parts/index.js'
import { words } from '../words/job-kit.js'
import type { OfKit } from './job-kit-of.js'
import { problemsInWords } from './job-kit-write.js'

export function KitSettle(all: OfKit) {
  const { kit, nameOf } = all
  const open = kit.needs.filter((need) => need.lacks !== undefined || need.sentAway)
  const parts = [...new Set(open.map(({ part }) => part))]
  return (
    <Passage title={words.settle} says={words.settleSays} className="screen-only">
      {parts.length === 0 && <p className="prose">{words.settleNone}</p>}
      {parts.map((part) => {
        const needs = open.filter((need) => need.part === part)
        const asks = needs.flatMap((need) => need.asks)
        const unknown = asks.filter(({ known }) => known === undefined).length
        const name = words.settleOf({ part: nameOf(part), open: unknown, all: asks.length })
        return (
          <Behind key={part} name={name}>
            <Questions {...all} part={part} needs={needs} />
          </Behind>
        )
      })}
    </Passage>
  )
}

interface QuestionsProps extends OfKit {
  readonly part: string
  readonly needs: readonly Need[]
}

/** Answers by the key of the piece and the question; the number of a piece under its key alone. */
type Typed = Readonly<Record<string, string>>

function Questions({ of, part, needs, nameOf, known: { log } }: QuestionsProps) {
  const [typed, setTyped] = useKept<Typed>(`${of.boat}.${of.set}.kit.${part}`, {})
  const [state, setState] = useState<'still' | 'writing' | 'written'>('still')
  const [wrong, setWrong] = useState<string>()
  const drafts = draftsOf({ of, needs, typed })
  const submit = async (event: FormEvent) => {
    event.preventDefault()
    setState('writing')
    const written = await log.append(drafts)
    setWrong(written.ok ? undefined : problemsInWords(written.problems))
    if (written.ok) setTyped(undefined)
    setState(written.ok ? 'written' : 'still')
  }
  const put = (key: string, value: string) => {
    setState('still')
    setTyped({ ...typed, [key]: value })
  }
  return (
    <form onSubmit={(event) => void submit(event)} className="kit-questions">
      {needs.filter(isAsked).map((need) => (
        <fieldset key={need.key}>
          <legend>{need.piece === undefined ? nameOf(part) : need.name}</legend>
          {need.piece === undefined && (
            <Question
              ask={words.number}
              why={words.numberWhy}
              known={need.oldNumber}
              value={typed[need.key] ?? ''}
              onChange={(value) => put(need.key, value)}
            />
          )}
          {need.piece !== undefined && need.count > 1 && (
            <Question
              ask={words.countAsk}
              why={words.countWhy(need)}
              known={undefined}
              value={typed[`${need.key} ${countQuestion}`] ?? ''}
              onChange={(value) => put(`${need.key} ${countQuestion}`, value)}
            />
          )}
          {need.asks
            .filter(({ question }) => question.id !== 'part-number')
            .map(({ question, known }) => (
              <Question
                key={question.id}
                ask={question.ask}
                why={[
                  question.why,
                  ...(question.seen === 'open' ? [words.onceOpen] : []),
                  ...(need.lacks === 'settle' ? [words.noNeed] : []),
                ].join(' ')}
                known={known?.answer}
                value={typed[`${need.key} ${question.id}`] ?? ''}
                onChange={(value) => put(`${need.key} ${question.id}`, value)}
              />
            ))}
        </fieldset>
      ))}
      <p aria-live="polite" className={wrong === undefined ? '' : 'problem'}>
        {wrong ?? (state === 'written' ? words.written : '')}
      </p>
      {log.readOnly ? (
        <p className="prose">{words.readOnly}</p>
      ) : (
        <div className="acts">
          <Button type="submit" look="filled" disabled={state === 'writing' || drafts.length === 0}>
            {state === 'writing' ? words.writing : words.writeAnswers}
          </Button>
        </div>
      )}
    </form>
  )
}

/** Of some pieces nothing is asked: a key is a key. */
function isAsked({ piece, asks, count }: Need): boolean {
  return piece === undefined || count > 1 || asks.some(({ question }) => question.id !== 'part-number')
}

interface QuestionProps {
  readonly ask: string
  readonly why: string
  readonly known: string | undefined
  readonly value: string
  readonly onChange: (value: string) => void
}

function Question({ ask, why, known, value, onChange }: QuestionProps) {
  const id = useId()
  const said = useSaid()
  return (
    <div className="entry-field wide">
      <label htmlFor={id}>{said(ask)}</label>
      <p className="fine second" id={`${id}-why`}>
        {said(why)}
        {known !== undefined && (
          <>
            {' '}
            <b>{words.known(known)}</b>
          </>
        )}
      </p>
      <input
        id={id}
        className="input wide"
        autoComplete="off"
        maxLength={300}
        aria-describedby={`${id}-why`}
        value={value}
        onChange={({ target }) => onChange(target.value)}
      />
    </div>
  )
}

/** One entry for each piece of which something was typed. */
function draftsOf({
  of,
  needs,
  typed,
}: {
  readonly of: OfKit['of']
  readonly needs: readonly Need[]
  readonly typed: Typed
}): Draft[] {
  return needs.flatMap(({ key, part, piece, asks }) => {
    const number = typed[key]?.trim() ?? ''
    const answers = [...asks.map(({ question }) => question.id), countQuestion].flatMap((question) => {
      const answer = typed[`${key} ${question}`]?.trim() ?? ''
      return answer === '' ? [] : [{ question, answer }]
    })
    if (number === '' && answers.length === 0) return []
    return [
      {
        kind: 'particulars' as const,
        boat: of.boat,
        set: of.set,
        from: today(),
        body: {
          part,
          ...(piece === undefined ? {} : { piece }),
          ...(number === '' ? {} : { number }),
          ...(answers.length === 0 ? {} : { answers }),
        },
      },
    ]
  })
}
