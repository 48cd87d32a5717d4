/**
 * A case begun, what was asked so far, what it really was, and the cases before.
 *
 * @module
 */

import { type FormEvent, useId, useState } from 'react'
import { type CaseBody, newCase, nextCaseName, type Step } from '../../faults/case.js'
import { draftOfCase, entriesOfCase } from '../../faults/case-entries.js'
import { hindsightOfCases, placeOf } from '../../faults/closed-cases.js'
import { checkName, faultName, sayChance, sayCheckAnswer, symptomName } from '../../faults/words.js'
import { useKept } from '../data/kept-text.js'
import { today } from '../data/today.js'
import { Button, Heads, Lead, Passage, PlainButton, Say } from '../parts/index.js'
import { words } from '../words/faults.js'
import { sayDate } from '../words/say.js'
import type { OfCase, Room } from './of-case.js'

const { start, asked, close, cases: past } = words

/** A case in the owner's words. */
export function StartCase({
  room,
  onBegun,
}: {
  readonly room: Room
  readonly onBegun: (name: string) => void
}) {
  const [about, setAbout] = useKept<string>(`${room.boat}.${room.set}.case`, '')
  const [idle, setIdle] = useState('')
  const [wrong, setWrong] = useState<string>()
  const id = useId()
  const begin = (event: FormEvent) => {
    event.preventDefault()
    const name = nextCaseName(room.cases)
    const days = Number(idle)
    const body = {
      ...newCase(name, about.trim() === '' ? undefined : about.trim()),
      ...(idle.trim() === '' || !(days >= 0) ? {} : { idleDays: days }),
    }
    void room
      .write([draftOfCase({ boat: room.boat, set: room.set, from: today() }, body)])
      .then((problems) => {
        if (problems !== undefined) return setWrong(problems.map(({ allowed }) => allowed).join('; '))
        setAbout(undefined)
        onBegun(name)
      })
  }
  return (
    <Passage title={start.title} says={start.says} first className="screen-only">
      <Say>{start.say}</Say>
      {room.log.readOnly ? (
        <Lead>{words.readOnly}</Lead>
      ) : (
        <form onSubmit={begin} className="gap">
          <div className="entry-field">
            <label htmlFor={`${id}-about`}>{start.about}</label>
            <input
              id={`${id}-about`}
              className="input wide"
              value={about}
              maxLength={1000}
              onChange={({ target }) => setAbout(target.value)}
            />
          </div>
          <div className="entry-field gap-small">
            <label htmlFor={`${id}-idle`}>{start.idle}</label>
            <input
              id={`${id}-idle`}
              className="input number"
              inputMode="numeric"
              value={idle}
              onChange={({ target }) => setIdle(target.value)}
            />
          </div>
          <div className="acts">
            <Button type="submit" look="filled">
              {start.begin}
            </Button>
          </div>
          <div aria-live="polite">{wrong !== undefined && <p className="problem">{wrong}</p>}</div>
        </form>
      )}
    </Passage>
  )
}

/** Every answer, each with a way to give it anew. */
export function AskedSoFar(of: OfCase) {
  const { own, model, take, busy } = of
  const open = own.body.closed === undefined
  const rows: readonly { readonly name: string; readonly says: string; readonly back: Step }[] = [
    ...own.body.symptoms.map(({ symptom, is }) => ({
      name: symptomName(model, symptom),
      says: asked.is[is],
      back: { symptom, is: 'not-asked' } as const,
    })),
    ...own.body.checks.map((answer) => ({
      name: checkName(model, answer.check),
      says: sayCheckAnswer(model, answer),
      back: { check: answer.check, notDone: true } as const,
    })),
  ]
  if (rows.length === 0) return null
  return (
    <Passage title={asked.title}>
      <table className="table">
        <Heads list={[asked.head, asked.says, ...(open ? [{ unseen: asked.change }] : [])]} />
        <tbody>
          {rows.map(({ name, says, back }) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td>{says}</td>
              {open && (
                <td className="screen-only">
                  <PlainButton disabled={busy} aria-label={asked.changes(name)} onClick={() => take(back)}>
                    {asked.change}
                  </PlainButton>
                </td>
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </Passage>
  )
}

const likeliest = 8

/** What it really was: one of the list, something else, or nobody knows. */
export function CloseCase({ onClosed, ...of }: OfCase & { readonly onClosed: () => void }) {
  const { model, tables, diagnosis, own, put, busy, boat, set } = of
  const [chosen, setChosen] = useState<string>()
  const [was, setWas] = useState('')
  const id = useId()
  const others = ['other', 'not-known'] as const
  const shut = () => {
    const said = was.trim() === '' ? {} : { was: was.trim() }
    const closed: CaseBody['closed'] =
      chosen === 'other' || chosen === 'not-known'
        ? { as: chosen, ...said }
        : { as: 'listed' as const, fault: chosen!, ...said, ...placeOf(tables, diagnosis.posterior, chosen!) }
    const body = { ...own.body, closed }
    onClosed()
    put(body, entriesOfCase(model, body, { boat, set, from: today() }))
  }
  const pick = (value: string, name: string) => (
    <label key={value}>
      <input type="radio" name={id} checked={chosen === value} onChange={() => setChosen(value)} />
      {name}
    </label>
  )
  return (
    <Passage title={close.title} says={close.says} className="screen-only">
      <fieldset className="entry-field">
        <legend>{close.which}</legend>
        <div className="picks">
          {diagnosis.ranked.slice(0, likeliest).map(({ fault }) => pick(fault, faultName(model, fault)))}
          {others.map((one) => pick(one, one === 'other' ? close.other : close.unknown))}
        </div>
      </fieldset>
      <div className="entry-field gap-small">
        <label htmlFor={`${id}-was`}>{close.was}</label>
        <input
          id={`${id}-was`}
          className="input wide"
          value={was}
          maxLength={1000}
          onChange={({ target }) => setWas(target.value)}
        />
      </div>
      <div className="acts">
        <Button disabled={chosen === undefined || busy} onClick={shut}>
          {close.close}
        </Button>
      </div>
    </Passage>
  )
}

/** The cases of the set, the latest first, and where the truth had stood. */
export function PastCases({
  room,
  onOpen,
}: {
  readonly room: Room
  readonly onOpen: (name: string) => void
}) {
  const looked = new Map(hindsightOfCases(room.cases).map((one) => [one.name, one]))
  if (room.cases.length === 0) return null
  return (
    <Passage title={past.title} says={past.says} className="screen-only">
      <table className="table">
        <Heads list={past.head} />
        <tbody>
          {room.cases.toReversed().map(({ entry, from, body: { name, about, closed } }) => {
            const { place, chance } = looked.get(name) ?? {}
            const fault =
              closed?.fault === undefined ? words.closed.unknown : faultName(room.model, closed.fault)
            return (
              <tr key={entry}>
                <th scope="row">
                  <PlainButton aria-label={past.goOn(about ?? name)} onClick={() => onOpen(name)}>
                    {about ?? name}
                  </PlainButton>
                </th>
                <td>{sayDate(from)}</td>
                <td>{closed === undefined ? past.open : (closed.was ?? fault)}</td>
                <td className="number">{place ?? ''}</td>
                <td className="number">{chance === undefined ? '' : sayChance(chance)}</td>
              </tr>
            )
          })}
        </tbody>
      </table>
    </Passage>
  )
}
