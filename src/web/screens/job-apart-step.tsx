/**
 * Writing down a step: one that is proposed, one of the owner’s own, or one that is put back.
 *
 * @module
 */

import { type FormEvent, type ReactNode, useRef, useState } from 'react'
import type { ApartStep } from '../../job/apart.js'
import type { Draft } from '../../logbook/draft.js'
import type { Kind } from '../../logbook/kinds.js'
import { useKept } from '../data/kept-text.js'
import { today } from '../data/today.js'
import { write } from '../data/write.js'
import { focusFirstWrong } from '../entry/entry-form.js'
import { Fields } from '../entry/field-inputs.js'
import { fieldsOf, keysOf } from '../entry/fields.js'
import { type Wrong, wrongOf } from '../entry/problems.js'
import { bodyOf, type Values } from '../entry/values.js'
import type { OfSet } from '../of-set.js'
import { Button } from '../parts/index.js'
import { form } from '../words/entry/form.js'
import { words } from '../words/job-apart.js'
import { StepPictureSlots, useStepPictures } from './job-apart-pictures.js'
import type { OfJob } from './job-frame.js'

export interface StepFormProps {
  readonly of: OfSet
  readonly known: OfJob
  readonly kind: Extract<Kind, 'apart-step' | 'refit-step'>
  /** Under which name what is typed and chosen is kept. */
  readonly slot: string
  /** What the body says beside what is typed. */
  readonly base: object
  readonly pictureSlots: readonly string[]
  readonly first: Values
  /** What is said when it is written. */
  readonly name: string
  /** The word of the act. */
  readonly act: string
  readonly fieldsTitle: string
  /** Typed here, not below the fold. */
  readonly open?: readonly string[]
  readonly acts?: ReactNode
  readonly onWritten: (said: string) => void
  /** What stands above the fields, beside the pictures. */
  readonly children?: ReactNode
}

/** Fields that the page itself fills in. */
const filled = ['job', 'n', 'access', 'step']

export function StepForm(props: StepFormProps) {
  const { of, known, kind, slot, base, open = [] } = props
  const fields = fieldsOf(kind).filter(
    ({ key }) => !filled.includes(key) && (key !== 'what' || open.includes('what')),
  )
  const [values, setValues] = useKept<Values>(slot, props.first)
  const pictures = useStepPictures(slot)
  const [wrong, setWrong] = useState<Wrong>({})
  const [busy, setBusy] = useState(false)
  const box = useRef<HTMLFormElement>(null)
  const submit = async (event: FormEvent) => {
    event.preventDefault()
    const read = bodyOf(fields, values, { base, today: today() })
    const draft = { ...of, kind, from: today(), body: read.body } as unknown as Draft
    setBusy(true)
    const isRead = Object.keys(read.misread).length === 0
    const written = isRead ? await write([draft], pictures.list) : undefined
    setBusy(false)
    if (written?.ok) {
      pictures.clear()
      setValues(undefined)
      setWrong({})
      props.onWritten(words.step.written(props.name))
      return
    }
    const keys = [...keysOf(fields), ...Object.keys(values)]
    setWrong(wrongOf(written === undefined ? [] : written.problems, read.misread, keys))
    focusFirstWrong(box.current)
  }
  const shared = {
    kind,
    values,
    wrong,
    catalogue: known.catalogue,
    sign: '',
    onChange: (next: Values) => setValues(next),
  }
  const plain = fields.filter(({ key }) => open.includes(key))
  const more = fields.filter(({ key }) => !open.includes(key))
  return (
    <form className="entry-form" ref={box} onSubmit={(event) => void submit(event)} noValidate>
      {plain.length > 0 && <Fields {...shared} fields={plain} />}
      <div className="apart-beside">
        {props.children}
        <div>
          <StepPictureSlots slots={props.pictureSlots} pictures={pictures} />
        </div>
      </div>
      <details className="behind" open={Object.keys(wrong).some((key) => !open.includes(key))}>
        <summary>{props.fieldsTitle}</summary>
        <p className="fine">{words.step.torqueRule}</p>
        <Fields {...shared} fields={more} />
      </details>
      <div aria-live="polite">
        {Object.keys(wrong).length > 0 && (
          <p className="problem">
            {form.wrong(Object.keys(wrong).length)} {wrong[''] ?? ''}
          </p>
        )}
      </div>
      <div className="acts">
        <Button look="filled" type="submit" disabled={busy}>
          {busy ? words.step.busy : props.act}
        </Button>
        {props.acts}
      </div>
    </form>
  )
}

/** What a form of a step begins with: the bag that is proposed for it. */
export function firstValues({ proposal }: Pick<ApartStep, 'proposal'>): Values {
  return proposal?.bag === undefined ? {} : { 'bag.label': proposal.bag }
}
