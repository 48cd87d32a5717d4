/**
 * The fields of an entry as a person fills them in.
 *
 * @module
 */

import { type ReactNode, useId } from 'react'
import type { Catalogue } from '../../catalogue/catalogue.js'
import type { Kind } from '../../logbook/kinds.js'
import { useSaid } from '../data/region.js'
import { PlainButton } from '../parts/index.js'
import { choiceName } from '../words/entry/choices.js'
import { fieldName } from '../words/entry/fields.js'
import { form } from '../words/entry/form.js'
import { unitName } from '../words/entry/units.js'
import { monthName } from '../words/say.js'
import { type Field, isRows, type Rows, type Single, type Takes } from './fields/field.js'
import { typedUnits } from './fields.js'
import { MonthsInput, PointsInput } from './list-inputs.js'
import type { Wrong } from './problems.js'
import { rowsShown, withoutRow } from './rows.js'
import type { Values } from './values.js'

export interface FieldsProps {
  readonly kind: Kind
  readonly fields: readonly Field[]
  readonly values: Values
  readonly onChange: (values: Values) => void
  readonly wrong: Wrong
  /** For names of parts and checks; until it is here they are typed. */
  readonly catalogue: Catalogue | undefined
  readonly sign: string
  /** What fields are called here, where another word than the usual one is meant. */
  readonly names?: Readonly<Record<string, string>>
}

/** Every field given, in order. */
export function Fields(props: FieldsProps) {
  return (
    <div className="entry-fields">
      {props.fields.map((field) =>
        isRows(field) ? (
          <RowFields key={field.key} {...props} rows={field} />
        ) : (
          <OneField key={field.key} {...props} field={field} at={field.key} />
        ),
      )}
    </div>
  )
}

/** How many rows were opened by hand is kept in the form too, beside what stands in them. */
const openedKey = (key: string) => `${key}#`

function RowFields({ rows, ...props }: FieldsProps & { readonly rows: Rows }) {
  const { values, onChange, kind, wrong } = props
  const opened = Number(values[openedKey(rows.key)] ?? 0)
  const shown = rowsShown(rows, values, opened)
  const name = useSaid()(fieldName(kind, rows.key))
  const open = (count: number, others: Values = values) =>
    onChange({ ...others, [openedKey(rows.key)]: String(count) })
  return (
    <fieldset className="entry-rows">
      <legend>{name}</legend>
      {wrong[rows.key] && <p className="problem">{wrong[rows.key]}</p>}
      {shown.map((row) => (
        <div className="entry-row" key={row}>
          {rows.rows.map((field) => (
            <OneField
              key={field.key}
              {...props}
              field={field}
              at={`${rows.key}.${row}.${field.key}`}
              within={`${rows.key}.${row}.`}
              named={shown.length > 1 ? `${name} ${row + 1}` : undefined}
            />
          ))}
          {shown.length > rows.least && (
            <PlainButton
              className="row-drop"
              onClick={() => open(shown.length - 1, withoutRow(values, rows.key, row))}
            >
              {form.dropRow}
              <span className="unseen">
                , {name} {row + 1}
              </span>
            </PlainButton>
          )}
        </div>
      ))}
      <PlainButton onClick={() => open(shown.length + 1)}>
        {form.addRowOf[`${kind}.${rows.key}`] ?? form.addRowOf[rows.key] ?? form.addRow}
        <span className="unseen">, {name}</span>
      </PlainButton>
    </fieldset>
  )
}

interface OneFieldProps extends FieldsProps {
  readonly field: Single
  /** Where its text stands in the form. */
  readonly at: string
  /** The beginning of the keys of its row. */
  readonly within?: string
  readonly named?: string | undefined
}

function OneField({ field, at, within = '', named, ...props }: OneFieldProps) {
  const id = useId()
  const { kind, values, wrong, onChange } = props
  const name = useSaid()(props.names?.[field.key] ?? fieldName(kind, field.key))
  const problem = wrong[at]
  const input: InputProps = {
    id,
    kind,
    field,
    text: values[at] ?? '',
    set: (text) => onChange({ ...values, [at]: text }),
    invalid: problem !== undefined,
    describedBy: problem === undefined ? undefined : `${id}-problem`,
    catalogue: props.catalogue,
    sign: props.sign,
    label: named === undefined ? undefined : `${name}, ${named}`,
    partOf: (key) => values[within + key] ?? '',
    name,
  }
  const said = problem !== undefined && (
    <p className="problem" id={`${id}-problem`}>
      {problem}
    </p>
  )
  if (isSet(field.takes)) {
    return (
      <fieldset className="entry-field wide" aria-describedby={input.describedBy}>
        <legend>
          {name}
          {named !== undefined && <span className="unseen">, {named}</span>}
        </legend>
        <SetInput {...input} />
        {said}
      </fieldset>
    )
  }
  return (
    <div className={`entry-field ${isWide(field.takes) ? 'wide' : ''}`}>
      <label htmlFor={id}>
        {name}
        {unitOf(field.takes, props.sign)}
      </label>
      <Input {...input} />
      {said}
    </div>
  )
}

interface InputProps {
  readonly id: string
  readonly kind: Kind
  readonly field: Single
  readonly name: string
  readonly text: string
  readonly set: (text: string) => void
  readonly invalid: boolean
  readonly describedBy: string | undefined
  readonly catalogue: Catalogue | undefined
  readonly sign: string
  readonly label: string | undefined
  /** What stands in another field of the same row. */
  readonly partOf: (key: string) => string
}

function isSet({ as }: Takes): boolean {
  return as === 'yes-no' || as === 'several' || as === 'parts' || as === 'months' || as === 'points'
}

function isWide(takes: Takes): boolean {
  return takes.as === 'lines'
}

function unitOf(takes: Takes, sign: string): string {
  if (takes.as === 'money') return form.typedIn(sign)
  if (takes.as === 'percent') return form.typedIn('%')
  return takes.as === 'number' && takes.unit !== undefined ? form.typedIn(unitName(takes.unit)) : ''
}

/** Several to tick, or one of two. */
function SetInput({ id, field, text, set, kind, catalogue, name, label, invalid, sign }: InputProps) {
  const { takes } = field
  const list = { name: label ?? name, text, set, invalid }
  if (takes.as === 'months') return <MonthsInput {...list} />
  if (takes.as === 'points') return <PointsInput {...list} sign={sign} />
  if (takes.as === 'yes-no') {
    return (
      <div className="picks">
        {['yes', 'no'].map((option) => (
          <label key={option}>
            <input type="radio" name={id} checked={text === option} onChange={() => set(option)} />
            {choiceName(kind, field.key, option)}
          </label>
        ))}
      </div>
    )
  }
  const options = takes.as === 'several' ? takes.options : (catalogue?.parts ?? []).map(({ id }) => id)
  const chosen = text.split(' ').filter(Boolean)
  const said = (option: string) =>
    takes.as === 'several'
      ? choiceName(kind, field.key, option)
      : (catalogue?.parts.find(({ id }) => id === option)?.name ?? option)
  const boxes = options.map((option) => (
    <label key={option}>
      <input
        type="checkbox"
        checked={chosen.includes(option)}
        onChange={({ target }) =>
          set(options.filter((one) => (one === option ? target.checked : chosen.includes(one))).join(' '))
        }
      />
      {said(option)}
    </label>
  ))
  if (takes.as === 'several') return <div className="picks">{boxes}</div>
  return (
    <details className="behind">
      <summary>{chosen.length === 0 ? name : chosen.map(said).join(', ')}</summary>
      <div className="picks">{boxes}</div>
    </details>
  )
}

function Input(props: InputProps) {
  const { field, kind, catalogue, partOf } = props
  const { takes } = field
  switch (takes.as) {
    case 'lines':
      return <Lines {...props} />
    case 'choice':
      return (
        <Choice
          {...props}
          options={takes.options.map((one) => [one, takes.names?.[one] ?? choiceName(kind, field.key, one)])}
        />
      )
    case 'month':
      return (
        <Choice
          {...props}
          options={Array.from({ length: 12 }, (_, month) => [String(month + 1), monthName(month)])}
        />
      )
    case 'unit':
      return <Choice {...props} options={typedUnits.map((unit) => [unit, unitName(unit)])} />
    case 'check':
      return <Choice {...props} options={(catalogue?.checks ?? []).map(({ id, name }) => [id, name])} />
    case 'danger':
      return <Choice {...props} options={(catalogue?.dangers ?? []).map(({ id, name }) => [id, name])} />
    case 'part':
      return <PartChoice {...props} />
    case 'mode': {
      const modes = catalogue?.parts.find(({ id }) => id === partOf(takes.of))?.modes ?? []
      return <Choice {...props} options={modes.map(({ id, name }) => [id, name])} />
    }
    default:
      return (
        <Line {...props} numeric={takes.as === 'number' || takes.as === 'money' || takes.as === 'percent'} />
      )
  }
}

function Line({ numeric, ...props }: InputProps & { readonly numeric: boolean }) {
  return (
    <input
      {...common(props)}
      className={numeric ? 'input number' : 'input wide'}
      inputMode={numeric ? 'decimal' : 'text'}
      value={props.text}
      onChange={({ target }) => props.set(target.value)}
    />
  )
}

function Lines(props: InputProps) {
  return (
    <textarea
      {...common(props)}
      className="input wide"
      rows={Math.min(8, Math.max(2, props.text.split('\n').length))}
      value={props.text}
      onChange={({ target }) => props.set(target.value)}
    />
  )
}

function Choice({
  options,
  ...props
}: InputProps & { readonly options: readonly (readonly [string, string])[] }) {
  return (
    <select
      {...common(props)}
      className="input wide"
      value={props.text}
      onChange={({ target }) => props.set(target.value)}
    >
      <option value="">{form.nothingChosen}</option>
      <Unlisted text={props.text} among={options.map(([value]) => value)} />
      {options.map(([value, says]) => (
        <option key={value} value={value}>
          {says}
        </option>
      ))}
    </select>
  )
}

/** Parts under the systems they belong to. */
function PartChoice(props: InputProps) {
  const parts = props.catalogue?.parts ?? []
  const systems = [...new Set(parts.map(({ system }) => system))]
  return (
    <select
      {...common(props)}
      className="input wide"
      value={props.text}
      onChange={({ target }) => props.set(target.value)}
    >
      <option value="">{form.choosePart}</option>
      <Unlisted text={props.text} among={parts.map(({ id }) => id)} />
      {systems.map((system) => (
        <optgroup key={system} label={system.replaceAll('-', ' ')}>
          {parts
            .filter((part) => part.system === system)
            .map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
        </optgroup>
      ))}
    </select>
  )
}

/** A name that the catalogue does not have stays as it was written. */
function Unlisted({ text, among }: { readonly text: string; readonly among: readonly string[] }): ReactNode {
  return text === '' || among.includes(text) ? null : (
    <option value={text}>{text.replaceAll('-', ' ')}</option>
  )
}

function common({ id, invalid, describedBy, label }: InputProps) {
  return {
    id,
    'aria-invalid': invalid || undefined,
    'aria-describedby': describedBy,
    'aria-label': label,
    autoComplete: 'off',
  }
}
