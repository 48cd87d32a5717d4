/**
 * The form for an entry: a new one of the quick kinds, a correction of one, or one that was not taken and is mended.
 *
 * @module
 */

import { type FormEvent, useId, useRef, useState } from 'react'
import type { Catalogue } from '../../catalogue/catalogue.js'
import type { Draft } from '../../logbook/draft.js'
import { parseEntry } from '../../logbook/entry.js'
import type { Entry, Kind } from '../../logbook/kinds.js'
import type { Outgoing } from '../data/browser-store.js'
import { useKeptPictures } from '../data/kept-pictures.js'
import { useKeeps, useKept } from '../data/kept-text.js'
import { today } from '../data/today.js'
import { judgeBy, mend, write } from '../data/write.js'
import { Button } from '../parts/index.js'
import { form } from '../words/entry/form.js'
import { kindNames, quickNames } from '../words/entry/kinds.js'
import { sayDate } from '../words/say.js'
import { Fields } from './field-inputs.js'
import { fieldsOf, keysOf, ofBoatOnly, quickKinds } from './fields.js'
import { PictureChoice } from './pictures.js'
import { type Wrong, wrongOf } from './problems.js'
import { moneySayer, sayEntry } from './say-entry.js'
import { dateTyped } from './typed.js'
import { withoutUntouched, withUsualReading } from './usual-reading.js'
import { bodyOf, usualValues, type Values, valuesOf } from './values.js'

judgeBy(parseEntry)

/** What the form is for. */
export type Purpose =
  | { readonly is: 'new' }
  | { readonly is: 'correct'; readonly entry: Entry }
  | { readonly is: 'mend'; readonly item: Outgoing }
  /** One that a page asks for, begun already: `name` tells it from others. */
  | { readonly is: 'asked'; readonly name: string; readonly kind: Kind; readonly values: Values }

export interface EntryFormProps {
  readonly boat: string
  readonly set: string
  readonly purpose: Purpose
  readonly currency: string
  readonly catalogue: Catalogue | undefined
  /** Units that the boat chose to speak in. */
  readonly units?: readonly (string | undefined)[]
  /** Said below the field for hours. */
  readonly lastRead?: string | undefined
  readonly onWritten?: () => void
}

/** Everything that stands in the form. */
interface Typed {
  readonly kind: Kind
  readonly from: string
  readonly until: string
  readonly reason: string
  /** By kind, so that going to another kind and back loses nothing. */
  readonly values: Readonly<Partial<Record<Kind, Values>>>
}

export function EntryForm(props: EntryFormProps) {
  const { boat, set, purpose, currency, catalogue } = props
  const old =
    purpose.is === 'correct' ? purpose.entry : purpose.is === 'mend' ? purpose.item.entry : undefined
  const empty =
    old !== undefined
      ? formOf(old)
      : purpose.is === 'asked'
        ? { ...emptyForm, kind: purpose.kind, values: { [purpose.kind]: purpose.values } }
        : emptyForm
  const slot = `${boat}.${set}.${slotOf(purpose)}`
  const [typed, setTyped] = useKept<Typed>(slot, empty)
  const [files, setFiles] = useKeptPictures(slot)
  const [wrong, setWrong] = useState<Wrong>({})
  const [said, setSaid] = useState('')
  const [busy, setBusy] = useState(false)
  const keeps = useKeeps()
  const box = useRef<HTMLFormElement>(null)
  const { kind } = typed
  const fields = fieldsOf(kind)
  const values = typed.values[kind] ?? usualValues(fields)
  const change = (next: Partial<Typed>) => {
    setTyped({ ...typed, ...next })
    setSaid('')
  }
  const shared = {
    kind,
    values,
    wrong,
    catalogue,
    sign: currency,
    onChange: (next: Values) => {
      const filled = kind === 'reading' ? withUsualReading(values, next, props.units) : next
      change({ values: { ...typed.values, [kind]: filled } })
    },
  }

  const submit = async (event: FormEvent) => {
    event.preventDefault()
    const { draft, wrong: unread } = draftOf(typed, { boat, set, old, correcting: purpose.is === 'correct' })
    setBusy(true)
    const written =
      purpose.is === 'mend' ? await mend(purpose.item, draft, files) : await write([draft], files)
    setBusy(false)
    const keys = ['from', 'until', ...keysOf(fields), ...Object.keys(values)]
    const problems = written.ok ? [] : written.problems
    const next = wrongOf(problems, {}, keys)
    if (Object.keys(unread).length > 0 || !written.ok) {
      setWrong({ ...next, ...unread })
      focusFirstWrong(box.current)
      return
    }
    setWrong({})
    setFiles([])
    setTyped(undefined)
    const sayWith = { catalogue, money: moneySayer(currency) }
    setSaid(
      form.written(
        `${kindNames[kind]}. ${sayEntry({ ...draft, corrects: [] } as unknown as Entry, sayWith)}`,
      ),
    )
    props.onWritten?.()
  }
  const kinds = purpose.is === 'new' ? quickKinds : []
  const plain = fields.filter((field) => !field.more)
  const more = fields.filter((field) => field.more)
  return (
    <form className="entry-form" ref={box} onSubmit={(event) => void submit(event)} noValidate>
      {kinds.length > 0 && (
        <KindChoice kind={kind} kinds={kinds} onChange={(next) => change({ kind: next })} />
      )}
      <Days typed={typed} wrong={wrong} onChange={change} />
      <Fields {...shared} fields={plain} />
      {kind === 'hours' && props.lastRead && <p className="fine">{props.lastRead}</p>}
      {(more.length > 0 || kind !== 'note') && (
        <details
          className="behind"
          open={
            (kind !== 'note' && files.length > 0) ||
            Object.keys(wrong).some((key) => more.some((one) => key.startsWith(one.key)))
          }
        >
          <summary>{form.more}</summary>
          <Fields {...shared} fields={more} />
          {kind !== 'note' && <PictureChoice files={files} onChange={setFiles} />}
        </details>
      )}
      {kind === 'note' && <PictureChoice files={files} onChange={setFiles} />}
      {purpose.is === 'correct' && (
        <Reason text={typed.reason} onChange={(reason) => change({ reason })} problem={wrong.reason} />
      )}
      <div aria-live="polite">
        {Object.keys(wrong).length > 0 && (
          <p className="problem">
            {form.wrong(Object.keys(wrong).length)} {wrong[''] ?? ''}
          </p>
        )}
        {said !== '' && <p className="written">{said}</p>}
      </div>
      <div className="acts">
        <Button look="filled" type="submit" disabled={busy}>
          {purpose.is === 'mend'
            ? form.sendAgain
            : purpose.is === 'correct'
              ? form.writeCorrection
              : form.write}
        </Button>
        {purpose.is === 'new' && (typed !== emptyForm || files.length > 0) && (
          <Button
            look="light"
            onClick={() => {
              setTyped(undefined)
              setFiles([])
            }}
          >
            {form.clear}
          </Button>
        )}
      </div>
      <p className="fine">{keeps ? form.kept : form.notKept}</p>
    </form>
  )
}

function KindChoice({
  kind,
  kinds,
  onChange,
}: {
  readonly kind: Kind
  readonly kinds: readonly Kind[]
  readonly onChange: (kind: Kind) => void
}) {
  const name = useId()
  return (
    <fieldset className="kinds">
      <legend className="unseen">{form.kind}</legend>
      {kinds.map((one) => (
        <label key={one}>
          <input type="radio" name={name} checked={one === kind} onChange={() => onChange(one)} />
          {quickNames[one] ?? kindNames[one]}
        </label>
      ))}
    </fieldset>
  )
}

/** Kinds that last from one day to another, and those that happened some time between two. */
const lasting: readonly Kind[] = ['stop', 'work', 'complete']

function Days({
  typed,
  wrong,
  onChange,
}: {
  readonly typed: Typed
  readonly wrong: Wrong
  readonly onChange: (next: Partial<Typed>) => void
}) {
  const names =
    typed.kind === 'stop'
      ? [form.stoppedOn, form.ranAgain]
      : lasting.includes(typed.kind)
        ? [form.began, form.ended]
        : [form.day, form.between]
  const second = lasting.includes(typed.kind) || typed.until !== ''
  return (
    <div className="entry-fields days">
      <DayField name={names[0]!} text={typed.from} problem={wrong.from} set={(from) => onChange({ from })} />
      {second && (
        <DayField
          name={names[1]!}
          text={typed.until}
          problem={wrong.until}
          set={(until) => onChange({ until })}
        />
      )}
    </div>
  )
}

function DayField({
  name,
  text,
  problem,
  set,
}: {
  readonly name: string
  readonly text: string
  readonly problem: string | undefined
  readonly set: (text: string) => void
}) {
  const id = useId()
  return (
    <div className="entry-field">
      <label htmlFor={id}>{name}</label>
      <input
        id={id}
        className="input wide"
        autoComplete="off"
        placeholder={sayDate(today())}
        value={text}
        aria-invalid={problem !== undefined || undefined}
        aria-describedby={problem === undefined ? undefined : `${id}-problem`}
        onChange={({ target }) => set(target.value)}
      />
      {problem && (
        <p className="problem" id={`${id}-problem`}>
          {problem}
        </p>
      )}
    </div>
  )
}

function Reason({
  text,
  problem,
  onChange,
}: {
  readonly text: string
  readonly problem: string | undefined
  readonly onChange: (text: string) => void
}) {
  const id = useId()
  return (
    <div className="entry-field wide">
      <label htmlFor={id}>{form.reason}</label>
      <input
        id={id}
        className="input wide"
        value={text}
        aria-invalid={problem !== undefined || undefined}
        onChange={({ target }) => onChange(target.value)}
      />
      {problem && <p className="problem">{problem}</p>}
    </div>
  )
}

/** Under which name what is typed is kept. */
function slotOf(purpose: Purpose): string {
  if (purpose.is === 'new') return 'new'
  if (purpose.is === 'asked') return purpose.name
  return `${purpose.is}-${purpose.is === 'correct' ? purpose.entry.id : purpose.item.id}`
}

const emptyForm: Typed = { kind: 'hours', from: '', until: '', reason: '', values: {} }

/** The form as it stands for an entry that is there. */
function formOf(entry: Entry): Typed {
  const { kind, from, until, body } = entry
  return {
    kind,
    from: sayDate(from),
    until: until === from ? '' : sayDate(until),
    reason: '',
    values: { [kind]: valuesOf(fieldsOf(kind), body) },
  }
}

/** The draft that was typed, and what of it cannot be understood. */
function draftOf(
  typed: Typed,
  of: {
    readonly boat: string
    readonly set: string
    readonly old: Entry | undefined
    readonly correcting: boolean
  },
): { readonly draft: Draft; readonly wrong: Wrong } {
  const { kind } = typed
  const { old } = of
  const now = today()
  const fields = fieldsOf(kind)
  const base = old?.kind === kind ? old.body : {}
  const values = typed.values[kind] ?? usualValues(fields)
  const read = bodyOf(fields, kind === 'reading' ? withoutUntouched(values) : values, { base, today: now })
  const wrong: Record<string, string> = { ...wrongOf([], read.misread, []) }
  const day = (key: 'from' | 'until', otherwise: string) => {
    if (typed[key].trim() === '') return otherwise
    const date = dateTyped(typed[key], now)
    if (date === undefined) wrong[key] = form.noDate
    return date ?? otherwise
  }
  const from = day('from', now)
  const until = day('until', from)
  // The reason stands with the entry, where its remark stands.
  const reason = of.correcting && typed.reason.trim() !== '' ? { remark: typed.reason.trim() } : {}
  const draft = {
    boat: of.boat,
    set: old === undefined ? (ofBoatOnly.includes(kind) ? null : of.set) : old.set,
    kind,
    from,
    until,
    body: { ...read.body, ...reason },
    ...(of.correcting && old !== undefined ? { corrects: [old.id] } : {}),
    ...(!of.correcting && old !== undefined && old.corrects.length > 0 ? { corrects: old.corrects } : {}),
  } as unknown as Draft
  return { draft, wrong }
}

export function focusFirstWrong(box: HTMLElement | null): void {
  requestAnimationFrame(() => box?.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus())
}
