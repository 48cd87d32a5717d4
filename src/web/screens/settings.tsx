/**
 * Settings of a boat: units, words, money, and the figures set by hand. All but the browsers are entries of her log.
 *
 * @module
 */

import { useId, useState } from 'react'
import type { Draft } from '../../logbook/draft.js'
import type { Body } from '../../logbook/kinds.js'
import type { CodeAnswer } from '../../server/http-types.js'
import { useBoat } from '../data/boat.js'
import { boatFactsOf } from '../data/facts.js'
import { sendJson } from '../data/http.js'
import { today } from '../data/today.js'
import { write } from '../data/write.js'
import { saidProblem } from '../entry/problems.js'
import type { OfSet } from '../of-set.js'
import { Button, Passage, Say } from '../parts/index.js'
import { settings as words } from '../words/settings.js'
import { SettingsLessons } from './settings-lessons.js'
import { SettingsMoney } from './settings-money.js'
import { Overruled } from './settings-overruled.js'
import { SettingsUse } from './settings-use.js'

export function SettingsScreen({ boat: id, set }: OfSet) {
  const boat = useBoat(id)
  const facts = boatFactsOf(boat.entries)
  const [problem, setProblem] = useState('')
  if (boat.status !== 'ready') return null
  const say = async (body: Body<'boat'>) => {
    const draft: Draft = { boat: id, set: null, kind: 'boat', from: today(), body }
    const written = await write([draft])
    setProblem(written.ok ? '' : written.problems.map((one) => saidProblem(one)).join(' '))
  }
  const shared = { facts, readOnly: boat.readOnly, say }
  return (
    <>
      <Passage title={words.title} says={words.says} first>
        <Say>{words.say(boat.name)}</Say>
        {boat.readOnly && <p className="prose gap-small">{words.readOnly}</p>}
        <div aria-live="polite">{problem && <p className="problem">{problem}</p>}</div>
      </Passage>
      <Passage title={words.units.title} says={words.units.says}>
        <Units {...shared} />
      </Passage>
      <Passage title={words.words.title} says={words.words.says}>
        <Words {...shared} />
      </Passage>
      <SettingsUse boat={boat} set={set} />
      <SettingsMoney boat={boat} set={set} />
      <Overruled boat={boat} set={set} />
      <SettingsLessons />
      <Browsers />
    </>
  )
}

interface OfBoat {
  readonly facts: Body<'boat'>
  readonly readOnly: boolean
  readonly say: (body: Body<'boat'>) => void
}

function Units({ facts, readOnly, say }: OfBoat) {
  const { names, options } = words.units
  return (
    <div className="entry-fields">
      {(Object.keys(names) as readonly (keyof typeof names)[]).map((key) => (
        <Choice
          key={key}
          name={names[key]}
          value={facts.units?.[key] ?? ''}
          options={options[key]}
          disabled={readOnly}
          // Units are one record: what is not named again would be forgotten.
          onChange={(value) => say({ units: { ...facts.units, [key]: value } })}
        />
      ))}
    </div>
  )
}

function Choice({
  name,
  value,
  options,
  disabled,
  onChange,
}: {
  readonly name: string
  readonly value: string
  readonly options: Readonly<Record<string, string>>
  readonly disabled: boolean
  readonly onChange: (value: string) => void
}) {
  const id = useId()
  return (
    <div className="entry-field">
      <label htmlFor={id}>{name}</label>
      <select
        id={id}
        className="input wide"
        value={value}
        disabled={disabled}
        onChange={({ target }) => onChange(target.value)}
      >
        {value === '' && <option value="">{words.units.notSaid}</option>}
        {Object.entries(options).map(([option, says]) => (
          <option key={option} value={option}>
            {says}
          </option>
        ))}
      </select>
    </div>
  )
}

function Words({ facts, readOnly, say }: OfBoat) {
  const name = useId()
  return (
    <fieldset className="entry-field">
      <legend className="unseen">{words.words.title}</legend>
      <div className="picks">
        {(['british', 'american'] as const).map((region) => (
          <label key={region}>
            <input
              type="radio"
              name={name}
              disabled={readOnly}
              checked={facts.words === region}
              onChange={() => say({ words: region })}
            />
            {words.words[region]}
          </label>
        ))}
      </div>
    </fieldset>
  )
}

/** An address for one more browser. */
function Browsers() {
  const [address, setAddress] = useState('')
  const [problem, setProblem] = useState('')
  const ask = async () => {
    const answer = await sendJson<CodeAnswer>('/api/code', {})
    setProblem(answer.ok ? '' : answer.problems.map((one) => saidProblem(one)).join(' '))
    if (answer.ok) setAddress(answer.value.address)
  }
  return (
    <Passage title={words.browsers.title} says={words.browsers.says}>
      <Button onClick={() => void ask()}>{words.browsers.ask}</Button>
      <div aria-live="polite">
        {problem && <p className="problem">{problem}</p>}
        {address && (
          <p className="gap-small">
            {words.browsers.address} <b>{address}</b>
          </p>
        )}
      </div>
    </Passage>
  )
}
