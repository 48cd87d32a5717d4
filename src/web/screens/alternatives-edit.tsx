/**
 * An alternative of the owner's own, or one laid out from the log changed or left out: written as an entry.
 *
 * @module
 */

import { type FormEvent, useEffect, useRef, useState } from 'react'
import type { Alternative } from '../../forecast/life-model.js'
import type { Draft } from '../../logbook/draft.js'
import { useCatalogue } from '../data/boat.js'
import { useKept } from '../data/kept-text.js'
import { catalogueInWords } from '../data/region.js'
import { today } from '../data/today.js'
import { focusFirstWrong } from '../entry/entry-form.js'
import { Fields } from '../entry/field-inputs.js'
import type { Field } from '../entry/fields/field.js'
import { alternativeParts } from '../entry/fields/work.js'
import { fieldsOf, keysOf } from '../entry/fields.js'
import { type Wrong, wrongOf } from '../entry/problems.js'
import { bodyOf, nameFrom, type Values, valuesOf } from '../entry/values.js'
import { Button, Passage } from '../parts/index.js'
import { words } from '../words/alternatives.js'
import { form } from '../words/entry/form.js'
import { moneyOf, type OfAnswer, signOf } from './of-answer.js'

const { edit } = words

export interface EditProps extends OfAnswer {
  readonly set: string
  /** Empty: a new one. */
  readonly id: string
  readonly onDone: () => void
}

export function EditAlternative({ id, set, onDone, ...of }: EditProps) {
  const { basis, log, view } = of
  const present = basis.model.alternatives.find((each) => each.id === id)
  const { boat } = basis.register
  const first = firstValues(basis, id, present)
  const [values, setValues] = useKept<Values>(`${boat}.${set}.alternative-${id || 'new'}`, first)
  const [wrong, setWrong] = useState<Wrong>({})
  const heading = useRef<HTMLHeadingElement>(null)
  const box = useRef<HTMLFormElement>(null)
  useEffect(() => heading.current?.focus(), [])
  const catalogue = catalogueInWords(useCatalogue(), basis.register.boatFacts.words)
  const ofSet = catalogue && {
    ...catalogue,
    parts: catalogue.parts.filter((part) => basis.model.parts.some(({ id: known }) => known === part.id)),
  }
  const fields = fieldsNow(values, of)
  const write = async (body: object, unread: Wrong) => {
    const draft = { kind: 'alternative', boat, set, from: today(), body } as Draft
    // What cannot be read is told with all else that is wrong, and nothing is written then.
    const written = Object.keys(unread).length > 0 ? undefined : await log.append([draft])
    if (written?.ok) {
      setValues(undefined)
      return onDone()
    }
    setWrong({ ...wrongOf(written?.problems ?? [], {}, keysOf(fields)), ...unread })
    focusFirstWrong(box.current)
  }
  const submit = (event: FormEvent) => {
    event.preventDefault()
    const { body, misread } = bodyOf(fields, values, { today: today() })
    const name = values.name?.trim() || edit.nows[(values.now ?? 'mend') as keyof typeof edit.nows]
    const needsParts = values.now === 'mend' && !('parts' in body)
    void write(
      { id: id || idFrom(name, basis.model.alternatives), ...body },
      { ...wrongOf([], misread, []), ...(needsParts ? { parts: edit.nothingChosen } : {}) },
    )
  }
  const title = id ? edit.title(present?.name ?? id) : edit.titleNew
  const count = Object.keys(wrong).length
  return (
    <Passage title={title} className="screen-only">
      <form ref={box} onSubmit={submit} noValidate>
        <h3 className="unseen" ref={heading} tabIndex={-1}>
          {title}
        </h3>
        <Fields
          kind="alternative"
          fields={fields}
          values={values}
          onChange={setValues}
          wrong={wrong}
          catalogue={ofSet}
          sign={signOf(view)}
        />
        {values.now === 'mend' && <p className="fine prose gap-small">{edit.leftEmpty}</p>}
        <div aria-live="polite">
          {count > 0 && (
            <p className="problem">
              {form.wrong(count)} {wrong[''] ?? ''}
            </p>
          )}
        </div>
        <div className="acts">
          <Button type="submit" look="filled">
            {edit.write}
          </Button>
          <Button
            onClick={() => {
              setValues(undefined)
              onDone()
            }}
          >
            {edit.cancel}
          </Button>
          {id && (
            <Button look="light" onClick={() => void write({ id, leftOut: true }, {})}>
              {edit.leaveOut}
            </Button>
          )}
        </div>
      </form>
    </Passage>
  )
}

/** What is asked, by what is done now. Quotes and sets are those that there are. */
function fieldsNow(values: Values, { basis, view }: OfAnswer): readonly Field[] {
  const money = moneyOf(view)
  const all = fieldsOf('alternative')
  const field = (key: string) => all.filter((one) => one.key === key)
  const among = (key: string, named: readonly (readonly [string, string])[]): Field => ({
    key,
    takes: { as: 'choice', options: named.map(([id]) => id), names: Object.fromEntries(named) },
  })
  const sets = basis.model.candidates.map(({ id, name }) => [id, name ?? id] as const)
  const quotes = basis.register.openQuotes.map(
    ({ job, withTax }) => [job, edit.atQuote(job.replaceAll('-', ' '), money(withTax))] as const,
  )
  const { now } = values
  const atQuote = quotes.some(([job]) => job === values.job)
  const later = [...field('later.year'), ...(values['later.year'] ? [among('later.with', sets)] : [])]
  return [
    ...field('name'),
    ...field('now'),
    ...(now === 'mend'
      ? [
          alternativeParts,
          ...(quotes.length > 0 ? [among('job', quotes)] : []),
          ...(atQuote ? field('besides') : field('price')),
          ...(atQuote || values.price ? field('days') : []),
        ]
      : []),
    ...(now === 'replace' ? [among('replaceWith', sets)] : []),
    ...(now === 'leave' || now === 'mend' ? later : []),
  ]
}

/** As the log has it; of one laid out by the program, what is done in it. */
function firstValues({ register }: OfAnswer['basis'], id: string, present: Alternative | undefined): Values {
  const own = register.ownAlternatives.find((each) => each.id === id)
  const quotedJob = register.openQuotes.at(-1)?.job
  if (own !== undefined) return valuesOf(fieldsOf('alternative'), own)
  if (present === undefined) return { now: 'mend' }
  const { name, now, replaceLater } = present
  const mends = typeof now === 'object' && 'parts' in now ? now : undefined
  return valuesOf(fieldsOf('alternative'), {
    name,
    now: typeof now === 'string' ? now : mends === undefined ? 'replace' : 'mend',
    parts: mends?.parts.map(({ part, outcome }) => ({ part, outcome })),
    job: mends?.quote === undefined ? undefined : quotedJob,
    replaceWith: typeof now === 'object' && 'replaceWith' in now ? now.replaceWith : undefined,
    later: replaceLater,
  })
}

/** An id of the words it is called by, that no other alternative has. */
function idFrom(name: string, taken: readonly Alternative[]): string {
  const plain = nameFrom(name)
  const base = /^[a-z][a-z0-9-]*$/.test(plain) ? plain.slice(0, 40).replace(/-+$/, '') : 'own'
  for (let n = 1; ; n++) {
    const id = n === 1 ? base : `${base}-${n}`
    if (!taken.some((each) => each.id === id)) return id
  }
}
