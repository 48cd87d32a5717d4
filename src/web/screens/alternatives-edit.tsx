/**
 * An alternative of the owner's own, or one laid out from the log changed or left out: written as an entry.
 *
 * @module
 */

import { type FormEvent, useEffect, useId, useRef, useState } from 'react'
import type { Alternative } from '../../forecast/life-model.js'
import type { Draft } from '../../logbook/draft.js'
import { today } from '../data/today.js'
import { Button, numberIn, Passage } from '../parts/index.js'
import { words } from '../words/alternatives.js'
import { shortName } from '../words/say.js'
import { shell } from '../words/shell.js'
import { moneyOf, type OfAnswer } from './of-answer.js'
import { whatWasWrong } from './terms-tried.js'

const { edit } = words

type Now = keyof typeof edit.nows
type Outcome = keyof typeof edit.outcomes
interface PartChosen {
  readonly part: string
  readonly outcome: Outcome
}

export interface EditProps extends OfAnswer {
  readonly set: string
  /** Empty: a new one. */
  readonly id: string
  readonly onDone: () => void
}

export function EditAlternative({ basis, view, log, set, id, onDone }: EditProps) {
  const present = basis.model.alternatives.find((each) => each.id === id)
  const [name, setName] = useState(present?.name ?? '')
  const [now, setNow] = useState<Now>(present === undefined ? 'mend' : nowOf(present))
  const [parts, setParts] = useState<readonly PartChosen[]>(partsOf(present))
  const [price, setPrice] = useState('')
  const [days, setDays] = useState('')
  const [later, setLater] = useState(
    present?.replaceLater === undefined ? '' : String(present.replaceLater.year),
  )
  const [candidate, setCandidate] = useState(candidateOf(present) ?? basis.model.candidates[0]?.id ?? '')
  const quote = basis.register.openQuotes.at(-1)
  const [atQuote, setAtQuote] = useState(hasQuote(present))
  const [problem, setProblem] = useState('')
  const box = useRef<HTMLHeadingElement>(null)
  useEffect(() => box.current?.focus(), [])
  const form = useId()

  const write = async (body: object) => {
    const draft = { kind: 'alternative', boat: basis.register.boat, set, from: today(), body } as Draft
    const written = await log.append([draft])
    if (written.ok) onDone()
    else setProblem(whatWasWrong(written.problems))
  }
  const submit = (event: FormEvent) => {
    event.preventDefault()
    if (now === 'mend' && parts.length === 0) return setProblem(edit.nothingChosen)
    const numbers = Object.entries({ price, days, later: now === 'leave' || now === 'mend' ? later : '' })
    const wrong = numbers.find(([, text]) => text.trim() !== '' && numberIn(text) === undefined)
    if (wrong) return setProblem(`${shell.figure.notANumber} ${wrong[1]}`)
    const said = (text: string) => (text.trim() === '' ? undefined : numberIn(text))
    const mends = now === 'mend'
    void write(
      withoutGaps({
        id: id || idFrom(name || edit.nows[now], basis.model.alternatives),
        name: name || undefined,
        now,
        parts: mends ? parts : undefined,
        job: mends && atQuote ? quote?.job : undefined,
        price: mends && !atQuote ? said(price) : undefined,
        days: mends ? said(days) : undefined,
        replaceWith: now === 'replace' ? candidate : undefined,
        later:
          said(later) === undefined || now === 'replace' || now === 'give-up'
            ? undefined
            : { year: said(later), with: candidate },
      }),
    )
  }
  const available = basis.model.parts.filter(({ id: part }) => !parts.some((each) => each.part === part))
  return (
    <Passage title={id ? edit.title(present?.name ?? id) : edit.titleNew} className="screen-only">
      <form id={form} onSubmit={submit} className="prose">
        <h3 className="unseen" ref={box} tabIndex={-1}>
          {id ? edit.title(present?.name ?? id) : edit.titleNew}
        </h3>
        <div className="field">
          <label htmlFor={`${form}-name`}>{edit.name}</label>
          <input
            id={`${form}-name`}
            className="input wide"
            maxLength={120}
            value={name}
            onChange={(event) => setName(event.target.value)}
          />
        </div>
        <div className="field gap-small">
          <label htmlFor={`${form}-now`}>{edit.now}</label>
          <select
            id={`${form}-now`}
            className="input"
            value={now}
            onChange={(event) => setNow(event.target.value as Now)}
          >
            {Object.entries(edit.nows).map(([value, text]) => (
              <option key={value} value={value}>
                {text}
              </option>
            ))}
          </select>
        </div>
        {now === 'mend' && (
          <fieldset className="field gap-small">
            <legend className="name">{edit.parts}</legend>
            {parts.map((chosen, i) => (
              <p key={chosen.part} className="value">
                <span>{shortName(basis.names.parts[chosen.part] ?? chosen.part)}</span>
                <select
                  className="input"
                  aria-label={`${edit.parts}: ${shortName(basis.names.parts[chosen.part] ?? chosen.part)}`}
                  value={chosen.outcome}
                  onChange={(event) =>
                    setParts(parts.with(i, { ...chosen, outcome: event.target.value as Outcome }))
                  }
                >
                  {Object.entries(edit.outcomes).map(([value, text]) => (
                    <option key={value} value={value}>
                      {text}
                    </option>
                  ))}
                </select>
                <Button look="light" onClick={() => setParts(parts.toSpliced(i, 1))}>
                  {edit.remove}
                </Button>
              </p>
            ))}
            <select
              className="input"
              aria-label={edit.addPart}
              value=""
              onChange={(event) =>
                event.target.value && setParts([...parts, { part: event.target.value, outcome: 'renewed' }])
              }
            >
              <option value="">{edit.addPart}</option>
              {available.map((part) => (
                <option key={part.id} value={part.id}>
                  {shortName(basis.names.parts[part.id] ?? part.id)}
                </option>
              ))}
            </select>
            {quote && (
              <label className="gap-small">
                <input
                  type="checkbox"
                  checked={atQuote}
                  onChange={(event) => setAtQuote(event.target.checked)}
                />{' '}
                {edit.atQuote(quote.job, moneyOf(view)(quote.withTax))}
              </label>
            )}
            {!atQuote && <Short id={`${form}-price`} name={edit.price} value={price} onChange={setPrice} />}
            <Short id={`${form}-days`} name={edit.days} value={days} onChange={setDays} />
          </fieldset>
        )}
        {(now === 'leave' || now === 'mend') && (
          <Short id={`${form}-later`} name={edit.later} value={later} onChange={setLater} />
        )}
        {(now === 'replace' || later.trim() !== '') && (
          <div className="field gap-small">
            <label htmlFor={`${form}-with`}>{edit.candidate}</label>
            <select
              id={`${form}-with`}
              className="input"
              value={candidate}
              onChange={(event) => setCandidate(event.target.value)}
            >
              {basis.model.candidates.map((each) => (
                <option key={each.id} value={each.id}>
                  {each.name ?? each.id}
                </option>
              ))}
            </select>
          </div>
        )}
        <p className="problem small" aria-live="polite">
          {problem}
        </p>
        <div className="acts">
          <Button type="submit" look="filled">
            {edit.write}
          </Button>
          <Button onClick={onDone}>{edit.cancel}</Button>
          {id && (
            <Button look="light" onClick={() => void write({ id, leftOut: true })}>
              {edit.leaveOut}
            </Button>
          )}
        </div>
      </form>
    </Passage>
  )
}

function Short(of: {
  readonly id: string
  readonly name: string
  readonly value: string
  readonly onChange: (text: string) => void
}) {
  return (
    <div className="field gap-small">
      <label htmlFor={of.id}>{of.name}</label>
      <input
        id={of.id}
        className="input number"
        inputMode="decimal"
        autoComplete="off"
        value={of.value}
        onChange={(event) => of.onChange(event.target.value)}
      />
    </div>
  )
}

function nowOf({ now }: Alternative): Now {
  if (now === 'leave' || now === 'give-up') return now
  return 'replaceWith' in now ? 'replace' : 'mend'
}

function partsOf(present: Alternative | undefined): PartChosen[] {
  const now = present?.now
  if (typeof now !== 'object' || !('parts' in now)) return []
  return now.parts.map(({ part, outcome }) => ({ part, outcome }))
}

function hasQuote(present: Alternative | undefined): boolean {
  const now = present?.now
  return typeof now === 'object' && 'parts' in now && now.quote !== undefined
}

function candidateOf(present: Alternative | undefined): string | undefined {
  const now = present?.now
  if (typeof now === 'object' && 'replaceWith' in now) return now.replaceWith
  return present?.replaceLater?.with
}

/** An id of the words it is called by, that no other alternative has. */
function idFrom(name: string, taken: readonly Alternative[]): string {
  const plain = name
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 40)
  const base = plain === '' ? 'own' : plain
  for (let n = 1; ; n++) {
    const id = n === 1 ? base : `${base}-${n}`
    if (!taken.some((each) => each.id === id)) return id
  }
}

function withoutGaps(body: Readonly<Record<string, unknown>>): object {
  return Object.fromEntries(Object.entries(body).filter(([, value]) => value !== undefined))
}
