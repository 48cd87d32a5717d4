/**
 * Writing down that parts of a job are done, with the hours and the money that they took.
 *
 * @module
 */

import { type FormEvent, useId, useState } from 'react'
import type { Job, JobPart } from '../../job/jobs.js'
import type { Draft } from '../../logbook/draft.js'
import { useKept } from '../data/kept-text.js'
import { today } from '../data/today.js'
import { saidProblem } from '../entry/problems.js'
import type { OfSet } from '../of-set.js'
import { Button, Passage } from '../parts/index.js'
import { choiceName } from '../words/entry/choices.js'
import { done as words } from '../words/job.js'
import type { OfJob } from './job-frame.js'
import { Picked, Typed } from './plan-fields.js'

interface TypedWork {
  /** Parts that are left for later. */
  readonly left: readonly string[]
  readonly by: string
  readonly why: string
  readonly own: string
  readonly paid: string
  readonly cost: string
}

const untouched: TypedWork = { left: [], by: 'owner', why: 'found', own: '', paid: '', cost: '' }

export function WriteDone({
  of,
  known: { job, log, catalogue, register },
}: {
  readonly of: OfSet
  readonly known: OfJob
}) {
  const id = useId()
  const [typed, type] = useKept<TypedWork>(`${of.boat}.${of.set}.${job.name}.done`, untouched)
  const [state, setState] = useState<'still' | 'writing'>('still')
  const [wrong, setWrong] = useState<readonly string[]>([])
  const open = job.parts.filter(({ isDone }) => !isDone)
  if (log.readOnly || open.length === 0) return null
  const put = (field: keyof TypedWork) => (value: string) => type({ ...typed, [field]: value })
  const taken = open.filter((one) => !typed.left.includes(keyOf(one)))
  const submit = async (event: FormEvent) => {
    event.preventDefault()
    const misread = numbers.filter(({ field }) => amountIn(typed[field]) === null)
    if (misread.length > 0) return setWrong(misread.map(({ name }) => words.notANumber(name)))
    setState('writing')
    const written = await log.append([workOf(of, job, taken, typed)])
    setState('still')
    setWrong(written.ok ? [] : written.problems.map((one) => saidProblem(one)))
    if (written.ok) type(undefined)
  }
  const tick = (key: string) =>
    type({
      ...typed,
      left: typed.left.includes(key) ? typed.left.filter((one) => one !== key) : [...typed.left, key],
    })
  const currency = register.boatFacts.currency ?? ''
  return (
    <Passage title={words.title} says={words.says} className="screen-only">
      <form onSubmit={(event) => void submit(event)} noValidate>
        <fieldset>
          <legend className="small">{words.which}</legend>
          <div className="picks">
            {open.map((one) => (
              <label key={keyOf(one)}>
                <input
                  type="checkbox"
                  checked={!typed.left.includes(keyOf(one))}
                  onChange={() => tick(keyOf(one))}
                />
                {catalogue.parts.find(({ id: part }) => part === one.part)?.name ?? one.part},{' '}
                {choiceName('work', 'did', one.did).toLowerCase()}
              </label>
            ))}
          </div>
        </fieldset>
        <div className="entry-fields gap">
          <Picked name={words.by} value={typed.by} onChange={put('by')}>
            {(['owner', 'workshop', 'both'] as const).map((by) => [by, choiceName('work', 'by', by)])}
          </Picked>
          <Picked name={words.why} value={typed.why} onChange={put('why')}>
            {(['found', 'failed', 'preventive', 'not-known'] as const).map((why) => [
              why,
              choiceName('work', 'why', why),
            ])}
          </Picked>
          <Typed name={words.own} value={typed.own} onChange={put('own')} />
          <Typed name={words.paid} value={typed.paid} onChange={put('paid')} />
          <Typed name={words.cost(currency)} value={typed.cost} onChange={put('cost')} />
        </div>
        <div aria-live="polite" id={id}>
          {wrong.map((one) => (
            <p className="problem" key={one}>
              {one}
            </p>
          ))}
        </div>
        <div className="acts">
          <Button type="submit" disabled={state === 'writing' || taken.length === 0}>
            {words.write}
          </Button>
        </div>
      </form>
    </Passage>
  )
}

const numbers = [
  { field: 'own', name: words.own },
  { field: 'paid', name: words.paid },
  { field: 'cost', name: words.cost('') },
] as const

function keyOf({ part, did }: Pick<JobPart, 'part' | 'did'>): string {
  return `${part} ${did}`
}

function workOf({ boat, set }: OfSet, job: Job, parts: readonly JobPart[], typed: TypedWork): Draft {
  const [owner, paid, cost] = numbers.map(({ field }) => amountIn(typed[field]) ?? undefined)
  const workHours = {
    ...(owner === undefined ? {} : { owner }),
    ...(paid === undefined ? {} : { paid }),
  }
  const body = {
    job: job.name,
    parts: parts.map(({ part, did }) => ({ part, did })),
    by: typed.by,
    why: typed.why,
    ...(Object.keys(workHours).length === 0 ? {} : { workHours }),
    ...(cost === undefined ? {} : { cost }),
  }
  return { boat, set, kind: 'work', from: today(), body } as Draft
}

/** A number from nought on; undefined where nothing is typed, null where it is none. */
function amountIn(text: string): number | undefined | null {
  const bare = text.replace(/[\s,]/g, '')
  if (bare === '') return undefined
  return /^\d+(\.\d+)?$/.test(bare) ? Number(bare) : null
}
