/**
 * How the boat is used: the months in which she is, and what a usual year of the set comes to.
 *
 * @module
 */

import { type FormEvent, useRef, useState } from 'react'
import type { Draft } from '../../logbook/draft.js'
import { isKind } from '../../logbook/kinds.js'
import type { Boat } from '../data/boat.js'
import { boatFactsOf } from '../data/facts.js'
import { useKept } from '../data/kept-text.js'
import { today } from '../data/today.js'
import { write } from '../data/write.js'
import { focusFirstWrong } from '../entry/entry-form.js'
import { Fields } from '../entry/field-inputs.js'
import { fieldsOf, keysOf } from '../entry/fields.js'
import { type Wrong, wrongOf } from '../entry/problems.js'
import { bodyOf, type Values, valuesOf } from '../entry/values.js'
import { Button, Passage } from '../parts/index.js'
import { settings } from '../words/settings.js'

const words = settings.use

interface Typed {
  readonly months: Values
  readonly year: Values
}

const monthFields = fieldsOf('boat').filter(({ key }) => key === 'monthsInUse')
const yearFields = fieldsOf('use').filter(({ key }) => key !== 'remark')

export function SettingsUse({ boat, set }: { readonly boat: Boat; readonly set: string }) {
  const latest = boat.entries.findLast((entry) => entry.set === set && isKind(entry, 'use'))
  const now: Typed = {
    months: valuesOf(monthFields, boatFactsOf(boat.entries)),
    year: valuesOf(yearFields, latest?.body ?? {}),
  }
  const [typed, setTyped] = useKept<Typed>(`${boat.id}.${set}.use`, now)
  const [wrong, setWrong] = useState<Wrong>({})
  const [said, setSaid] = useState('')
  const box = useRef<HTMLFormElement>(null)
  const change = (next: Partial<Typed>) => {
    setSaid('')
    setTyped({ ...typed, ...next })
  }
  const submit = async (event: FormEvent) => {
    event.preventDefault()
    const day = today()
    const months = bodyOf(monthFields, typed.months, { today: day })
    const year = bodyOf(yearFields, typed.year, { today: day })
    const of = { boat: boat.id, from: day }
    const drafts = [
      differ(typed.months, now.months) && { ...of, set: null, kind: 'boat', body: months.body },
      differ(typed.year, now.year) && { ...of, set, kind: 'use', body: year.body },
    ].filter((draft) => draft !== false) as Draft[]
    const unread = wrongOf([], year.misread, [])
    const written = drafts.length === 0 ? undefined : await write(drafts)
    const problems = written === undefined || written.ok ? [] : written.problems
    const named = problems.map((one) => ({ ...one, path: one.path.replace(/^entry \d+ /, '') }))
    if (problems.length > 0 || Object.keys(unread).length > 0) {
      setWrong({ ...wrongOf(named, {}, keysOf([...monthFields, ...yearFields])), ...unread })
      return focusFirstWrong(box.current)
    }
    setWrong({})
    setTyped(undefined)
    setSaid(settings.money.written)
  }
  const shared = { wrong, catalogue: undefined, sign: '' }
  return (
    <Passage title={words.title} says={words.says}>
      <form ref={box} onSubmit={(event) => void submit(event)} noValidate>
        <fieldset disabled={boat.readOnly}>
          <legend className="unseen">{words.title}</legend>
          <Fields
            {...shared}
            kind="boat"
            fields={monthFields}
            values={typed.months}
            onChange={(months) => change({ months })}
          />
          <Fields
            {...shared}
            kind="use"
            fields={yearFields}
            values={typed.year}
            onChange={(year) => change({ year })}
          />
          <div aria-live="polite">{said && <p className="written">{said}</p>}</div>
          {!boat.readOnly && (
            <div className="acts">
              <Button type="submit">{words.write}</Button>
            </div>
          )}
        </fieldset>
      </form>
    </Passage>
  )
}

function differ(now: Values, before: Values): boolean {
  const text = (values: Values) =>
    JSON.stringify(
      Object.entries(values)
        .filter(([key, value]) => value !== '' && !key.endsWith('#'))
        .sort(),
    )
  return text(now) !== text(before)
}
