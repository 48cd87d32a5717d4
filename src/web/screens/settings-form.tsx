/**
 * A passage of the settings in which something is typed, and then written into the log.
 *
 * @module
 */

import { type FormEvent, type ReactNode, type RefObject, useRef, useState } from 'react'
import type { Draft } from '../../logbook/draft.js'
import { useKept } from '../data/kept-text.js'
import { write } from '../data/write.js'
import { focusFirstWrong } from '../entry/entry-form.js'
import { type Wrong, wrongOf } from '../entry/problems.js'
import { Button, Passage } from '../parts/index.js'
import { settings as words } from '../words/settings.js'

/** What is typed into a passage, and what is wrong with it. */
export interface TypedSettings<Typed> {
  readonly typed: Typed
  readonly wrong: Wrong
  readonly change: (next: Partial<Typed>) => void
  readonly submit: (event: FormEvent) => void
  /** That it was written. */
  readonly said: string
  readonly box: RefObject<HTMLFormElement | null>
}

export interface SettingsAsked<Typed> {
  /** Under which it is kept until it is written. */
  readonly key: string
  /** As the log has it. */
  readonly now: Typed
  /** Of all fields. */
  readonly keys: readonly string[]
  /** What is to be written, and what of it cannot be read. */
  readonly draftsOf: (typed: Typed) => { readonly list: readonly Draft[]; readonly unread: Wrong }
}

export function useSettings<Typed>({ key, now, keys, draftsOf }: SettingsAsked<Typed>): TypedSettings<Typed> {
  const [typed, setTyped] = useKept<Typed>(key, now)
  const [wrong, setWrong] = useState<Wrong>({})
  const [said, setSaid] = useState('')
  const box = useRef<HTMLFormElement>(null)
  const change = (next: Partial<Typed>) => {
    setSaid('')
    setTyped({ ...typed, ...next })
  }
  const submit = async (event: FormEvent) => {
    event.preventDefault()
    const { list, unread } = draftsOf(typed)
    // What cannot be read is refused with all else that is wrong, and nothing is written.
    const written = list.length === 0 ? undefined : await write(list)
    const problems = written === undefined || written.ok ? [] : written.problems
    if (problems.length > 0 || Object.keys(unread).length > 0) {
      const named = problems.map((one) => ({ ...one, path: one.path.replace(/^entry \d+ /, '') }))
      setWrong({ ...wrongOf(named, {}, keys), ...unread })
      return focusFirstWrong(box.current)
    }
    setWrong({})
    setTyped(undefined)
    setSaid(words.money.written)
  }
  return { typed, wrong, change, submit: (event) => void submit(event), said, box }
}

export interface SettingsFormProps {
  readonly title: string
  readonly says: string
  /** What its button says. */
  readonly write: string
  readonly readOnly: boolean
  readonly of: Pick<TypedSettings<unknown>, 'box' | 'submit' | 'said'>
  readonly children: ReactNode
}

export function SettingsForm({ title, says, write: act, readOnly, of, children }: SettingsFormProps) {
  return (
    <Passage title={title} says={says}>
      <form ref={of.box} onSubmit={of.submit} noValidate>
        <fieldset disabled={readOnly}>
          <legend className="unseen">{title}</legend>
          {children}
          <div aria-live="polite">{of.said && <p className="written">{of.said}</p>}</div>
          {!readOnly && (
            <div className="acts">
              <Button type="submit">{act}</Button>
            </div>
          )}
        </fieldset>
      </form>
    </Passage>
  )
}
