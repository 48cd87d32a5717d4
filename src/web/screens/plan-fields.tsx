/**
 * Fields of the page on the run plan.
 *
 * @module
 */

import { useId } from 'react'

interface FieldProps {
  readonly name: string
  readonly value: string
  readonly onChange: (value: string) => void
}

export function Typed({ name, value, onChange }: FieldProps) {
  const id = useId()
  return (
    <div className="entry-field">
      <label htmlFor={id}>{name}</label>
      <input
        id={id}
        className="input number"
        inputMode="decimal"
        value={value}
        onChange={({ target }) => onChange(target.value)}
      />
    </div>
  )
}

export function Picked({
  name,
  value,
  onChange,
  children,
}: FieldProps & { readonly children: readonly (readonly [string, string])[] }) {
  const id = useId()
  return (
    <div className="entry-field">
      <label htmlFor={id}>{name}</label>
      <select id={id} className="input wide" value={value} onChange={({ target }) => onChange(target.value)}>
        {children.map(([one, said]) => (
          <option key={one} value={one}>
            {said}
          </option>
        ))}
      </select>
    </div>
  )
}
