/**
 * Fields of the pages about leads: a line of text with what is wrong in it, and a choice.
 *
 * @module
 */

import { useId } from 'react'

export function TextField({
  name,
  hint,
  value,
  problem,
  onChange,
}: {
  readonly name: string
  readonly hint: string
  readonly value: string
  readonly problem?: string | undefined
  readonly onChange: (value: string) => void
}) {
  const id = useId()
  return (
    <div>
      <label htmlFor={id}>{name}</label>
      <input
        id={id}
        className="input wide"
        autoComplete="off"
        placeholder={hint}
        value={value}
        aria-invalid={problem !== undefined || undefined}
        aria-describedby={problem === undefined ? undefined : `${id}-problem`}
        onChange={({ target }) => onChange(target.value)}
      />
      {problem !== undefined && (
        <p className="problem" id={`${id}-problem`}>
          {problem}
        </p>
      )}
    </div>
  )
}

export function Choice({
  name,
  value,
  options,
  onChange,
}: {
  readonly name: string
  readonly value: string
  readonly options: readonly (readonly [string, string])[]
  readonly onChange: (value: string) => void
}) {
  const id = useId()
  return (
    <div>
      <label htmlFor={id}>{name}</label>
      <select id={id} className="input wide" value={value} onChange={({ target }) => onChange(target.value)}>
        {options.map(([option, says]) => (
          <option key={option} value={option}>
            {says}
          </option>
        ))}
      </select>
    </div>
  )
}
