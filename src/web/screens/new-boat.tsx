/**
 * A new boat from five answers.
 *
 * @module
 */

import { type FormEvent, type ReactNode, useId, useState } from 'react'
import { useBoats } from '../data/boat.js'
import { useKept } from '../data/kept-text.js'
import { today } from '../data/today.js'
import { write } from '../data/write.js'
import { saidProblem } from '../entry/problems.js'
import { Button, Passage, Say } from '../parts/index.js'
import { goTo, pathTo } from '../routes.js'
import { newBoat as words } from '../words/boats.js'
import { currencies } from '../words/settings.js'
import { type FiveAnswers, newBoatFrom, noAnswers, usualHours, type Wanting } from './new-boat-drafts.js'

const { five } = words

export function NewBoatScreen() {
  const { boats } = useBoats()
  const [answers, setAnswers] = useKept<FiveAnswers>('new-boat', noAnswers)
  const [wanting, setWanting] = useState<Wanting>({})
  const [problem, setProblem] = useState('')
  const change = (next: Partial<FiveAnswers>) => setAnswers({ ...answers, ...next })
  const text = (key: 'name' | 'rating' | 'built' | 'hours' | 'perYear' | 'letdowns') => ({
    value: answers[key],
    wrong: wanting[key],
    onChange: (value: string) => change({ [key]: value }),
  })
  const submit = async (event: FormEvent) => {
    event.preventDefault()
    const made = newBoatFrom(answers, { today: today(), taken: boats.map(({ id }) => id) })
    setWanting(made.ok ? {} : made.wanting)
    if (!made.ok) {
      requestAnimationFrame(() => document.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus())
      return
    }
    const written = await write(made.drafts)
    if (!written.ok) return setProblem(written.problems.map((one) => saidProblem(one)).join(' '))
    setAnswers(undefined)
    goTo(pathTo({ page: 'alternatives', boat: made.boat, set: made.set }))
  }
  const count = Object.keys(wanting).length
  return (
    <form onSubmit={(event) => void submit(event)} noValidate>
      <Passage title={words.title} says={words.says} first>
        <Say>{words.say}</Say>
        <div className="entry-fields">
          <Text name={words.name} {...text('name')} />
          <Picked
            name={words.currency}
            value={answers.currency}
            onChange={(currency) => change({ currency })}
            options={currencies}
          />
        </div>
        <ol className="five gap">
          <li>
            <h2>{five.set}</h2>
            <div className="entry-fields">
              <Text name={five.rating} help={five.ratingHelp} number {...text('rating')} />
            </div>
            <Radios
              name={five.electricity}
              value={answers.electricity}
              onChange={(electricity) => change({ electricity })}
              options={{ fifty: five.fifty, sixty: five.sixty, three: five.three }}
            />
            <Radios
              name={five.speed}
              value={answers.speed}
              onChange={(speed) => change({ speed })}
              options={{ slow: five.slow, fast: five.fast }}
            />
          </li>
          <li>
            <h2>{five.built}</h2>
            <div className="entry-fields">
              <Text name={five.builtLabel} help={five.builtHelp} number {...text('built')} />
            </div>
          </li>
          <li>
            <h2>{five.hours}</h2>
            <div className="entry-fields">
              <Text name={five.hoursLabel} help={five.hoursHelp} number {...text('hours')} />
            </div>
          </li>
          <li>
            <h2>{five.use}</h2>
            <Radios
              name={five.use}
              unseen
              value={answers.use}
              onChange={(use) => change({ use })}
              options={five.kinds}
            />
            <Months
              chosen={answers.months}
              wrong={wanting.months}
              onChange={(months) => change({ months })}
            />
            <div className="entry-fields">
              <Text
                name={five.perYear}
                number
                help={five.perYearHelp(`${usualHours(answers, today()).toLocaleString('en-GB')} h`)}
                {...text('perYear')}
              />
            </div>
          </li>
          <li>
            <h2>{five.letdowns}</h2>
            <div className="entry-fields">
              <Text name={five.letdownsLabel} help={five.letdownsHelp} number {...text('letdowns')} />
            </div>
          </li>
        </ol>
        <div aria-live="polite">
          {count > 0 && <p className="problem">{words.wrong(count)}</p>}
          {problem && <p className="problem">{problem}</p>}
        </div>
        <div className="acts">
          <Button look="filled" type="submit">
            {words.write}
          </Button>
        </div>
      </Passage>
    </form>
  )
}

interface TextProps {
  readonly name: string
  readonly help?: string
  readonly number?: boolean
  readonly value: string
  readonly wrong: string | undefined
  readonly onChange: (value: string) => void
}

function Text({ name, help, number = false, value, wrong, onChange }: TextProps) {
  const id = useId()
  const described = [help && `${id}-help`, wrong && `${id}-problem`].filter(Boolean).join(' ')
  return (
    <div className="entry-field">
      <label htmlFor={id}>{name}</label>
      <input
        id={id}
        className={number ? 'input number' : 'input wide'}
        inputMode={number ? 'decimal' : 'text'}
        autoComplete="off"
        value={value}
        aria-invalid={wrong !== undefined || undefined}
        aria-describedby={described || undefined}
        onChange={({ target }) => onChange(target.value)}
      />
      {help && (
        <p className="fine" id={`${id}-help`}>
          {help}
        </p>
      )}
      {wrong && (
        <p className="problem" id={`${id}-problem`}>
          {wrong}
        </p>
      )}
    </div>
  )
}

function Picked<Value extends string>({
  name,
  value,
  options,
  onChange,
}: {
  readonly name: string
  readonly value: Value
  readonly options: readonly Value[]
  readonly onChange: (value: Value) => void
}) {
  const id = useId()
  return (
    <div className="entry-field">
      <label htmlFor={id}>{name}</label>
      <select
        id={id}
        className="input wide"
        value={value}
        onChange={({ target }) => onChange(target.value as Value)}
      >
        {options.map((option) => (
          <option key={option}>{option}</option>
        ))}
      </select>
    </div>
  )
}

function Radios<Value extends string>({
  name,
  unseen = false,
  value,
  options,
  onChange,
}: {
  readonly name: string
  readonly unseen?: boolean
  readonly value: Value
  readonly options: Readonly<Record<Value, string>>
  readonly onChange: (value: Value) => void
}) {
  const group = useId()
  return (
    <fieldset className="entry-field gap-small">
      <legend className={unseen ? 'unseen' : ''}>{name}</legend>
      <div className="picks">
        {(Object.keys(options) as unknown as readonly Value[]).map((option) => (
          <label key={option}>
            <input type="radio" name={group} checked={value === option} onChange={() => onChange(option)} />
            {options[option]}
          </label>
        ))}
      </div>
    </fieldset>
  )
}

function Months({
  chosen,
  wrong,
  onChange,
}: {
  readonly chosen: readonly number[]
  readonly wrong: string | undefined
  readonly onChange: (months: readonly number[]) => void
}): ReactNode {
  return (
    <fieldset className="entry-field gap-small">
      <legend>{five.months}</legend>
      <div className="picks">
        {words.monthNames.map((name, index) => (
          <label key={name}>
            <input
              type="checkbox"
              checked={chosen.includes(index + 1)}
              onChange={({ target }) =>
                onChange(
                  target.checked ? [...chosen, index + 1] : chosen.filter((month) => month !== index + 1),
                )
              }
            />
            {name}
          </label>
        ))}
      </div>
      {wrong && <p className="problem">{wrong}</p>}
    </fieldset>
  )
}
