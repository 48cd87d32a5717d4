/**
 * The fields of a test: big, one under another, each in the unit that the meter shows.
 *
 * @module
 */

import { useId, useState } from 'react'
import { signOf } from '../../proof/say-figure.js'
import type { ChoiceField, Field, NumberField } from '../../proof/test-type.js'
import type { MeterUnit } from '../../units/meter.js'
import { useSaid } from '../data/region.js'
import { words } from '../words/proof.js'

const { test: said } = words

/** What is typed: texts by field, and the unit that each stands in. */
export interface TypedTest {
  readonly texts: Readonly<Record<string, string>>
  readonly units: Readonly<Record<string, MeterUnit>>
}

export interface ProofFieldsProps {
  readonly fields: readonly Field[]
  readonly typed: TypedTest
  readonly onChange: (typed: TypedTest) => void
  readonly wrong: Readonly<Record<string, string>>
  /** In which a field stands that nobody has changed. */
  readonly unitOf: (field: NumberField) => MeterUnit
  /** What the set tells, where nobody typed. */
  readonly told: (field: Field) => string | undefined
}

export function ProofFields({ fields, ...of }: ProofFieldsProps) {
  const further = fields.filter((field) => field.further)
  const [open, setOpen] = useState(further.some(({ id }) => (of.typed.texts[id] ?? '') !== ''))
  const isWrong = further.some(({ id }) => of.wrong[id] !== undefined)
  return (
    <>
      <div className="proof-fields">
        {fields
          .filter((field) => !field.further)
          .map((field) => (
            <OneField key={field.id} field={field} {...of} />
          ))}
      </div>
      {further.length > 0 && (
        <details
          className="behind proof-further"
          open={open || isWrong}
          onToggle={({ currentTarget }) => setOpen(currentTarget.open)}
        >
          <summary>{said.further}</summary>
          <div className="proof-fields">
            {further.map((field) => (
              <OneField key={field.id} field={field} {...of} />
            ))}
          </div>
        </details>
      )}
    </>
  )
}

function OneField({ field, ...of }: Of<Field>) {
  return field.kind === 'number' ? <NumberOf field={field} {...of} /> : <ChoiceOf field={field} {...of} />
}

type Of<T> = Omit<ProofFieldsProps, 'fields'> & { readonly field: T }

function NumberOf({ field, typed, onChange, wrong, unitOf, told }: Of<NumberField>) {
  const id = useId()
  const inRegion = useSaid()
  const name = inRegion(field.name)
  const problem = wrong[field.id]
  const fromSet = told(field)
  const text = typed.texts[field.id] ?? fromSet ?? ''
  const unit = typed.units[field.id] ?? unitOf(field)
  const setText = (value: string) => onChange({ ...typed, texts: { ...typed.texts, [field.id]: value } })
  const setUnit = (value: string) =>
    onChange({ ...typed, units: { ...typed.units, [field.id]: value as MeterUnit } })
  return (
    <div className="proof-field">
      <label htmlFor={id}>
        {name}
        {!field.needed && <span className="fine">, {said.leftOut}</span>}
      </label>
      <div className="proof-number">
        <input
          id={id}
          className="input"
          inputMode="decimal"
          autoComplete="off"
          value={text}
          aria-invalid={problem !== undefined}
          aria-describedby={`${id}-help`}
          onChange={({ target }) => setText(target.value)}
        />
        {field.units.length > 1 ? (
          <select
            className="input"
            aria-label={said.unitOf(name)}
            value={unit}
            onChange={({ target }) => setUnit(target.value)}
          >
            {field.units.map((one) => (
              <option key={one} value={one}>
                {signOf(one)}
              </option>
            ))}
          </select>
        ) : (
          <span className="unit">{signOf(unit)}</span>
        )}
      </div>
      <p id={`${id}-help`} className="fine">
        {problem !== undefined && <span className="problem">{problem} </span>}
        {field.help !== undefined && inRegion(field.help)}
        {fromSet !== undefined && typed.texts[field.id] === undefined && said.ofSet}
      </p>
    </div>
  )
}

function ChoiceOf({ field, typed, onChange, wrong }: Of<ChoiceField>) {
  const id = useId()
  const inRegion = useSaid()
  const chosen = typed.texts[field.id] ?? ''
  const problem = wrong[field.id]
  const set = (value: string) => onChange({ ...typed, texts: { ...typed.texts, [field.id]: value } })
  const help = (
    <p id={`${id}-help`} className="fine">
      {problem !== undefined && <span className="problem">{problem} </span>}
      {field.help !== undefined && inRegion(field.help)}
    </p>
  )
  if (field.choices.length > 4) {
    return (
      <div className="proof-field">
        <label htmlFor={id}>
          {inRegion(field.name)}
          {!field.needed && <span className="fine">, {said.leftOut}</span>}
        </label>
        <select
          id={id}
          className="input wide"
          value={chosen}
          aria-describedby={`${id}-help`}
          onChange={({ target }) => set(target.value)}
        >
          <option value="">{said.notTold}</option>
          {field.choices.map((one) => (
            <option key={one.id} value={one.id}>
              {inRegion(one.name)}
            </option>
          ))}
        </select>
        {help}
      </div>
    )
  }
  return (
    <fieldset className="proof-field picks" aria-describedby={`${id}-help`}>
      <legend>
        {inRegion(field.name)}
        {!field.needed && <span className="fine">, {said.leftOut}</span>}
      </legend>
      {field.choices.map((one) => (
        <label key={one.id}>
          <input type="radio" name={id} checked={chosen === one.id} onChange={() => set(one.id)} />
          {inRegion(one.name)}
        </label>
      ))}
      {help}
    </fieldset>
  )
}
