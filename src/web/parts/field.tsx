/**
 * A number to type, and a number to try.
 *
 * @module
 */

import { Fragment, type ReactNode, useEffect, useId, useState } from 'react'
import { shell } from '../words/shell.js'

/** A number as people write it: `1,200`, `3 150`, `0.4`, with a currency sign or none. Undefined where it is none. */
function numberIn(text: string): number | undefined {
  const bare = text.replace(/[\s,’'£$€\u00a0\u202f]/g, '').replace('−', '-')
  return /^-?\d+(\.\d*)?$|^-?\.\d+$/.test(bare) ? Number(bare) : undefined
}

export interface NumberInputProps {
  readonly value: number
  readonly onChange: (value: number) => void
  readonly label?: string
  readonly least?: number
  readonly most?: number
  readonly digits?: number
  readonly id?: string
  readonly describedBy?: string
}

/** A number to type. What is no number, or past the ends, is kept as typed and told. */
export function NumberInput(props: NumberInputProps) {
  const { value, onChange, label, least = Number.NEGATIVE_INFINITY, most = Number.POSITIVE_INFINITY } = props
  const shown = value.toLocaleString('en-GB', { maximumFractionDigits: props.digits ?? 0 })
  const [typed, setTyped] = useState<string>()
  useEffect(
    () => setTyped((text) => (text !== undefined && numberIn(text) === value ? text : undefined)),
    [value],
  )
  const number = typed === undefined ? value : numberIn(typed)
  const wrong = number === undefined || number < least || number > most
  return (
    <input
      id={props.id}
      className="input number"
      inputMode="decimal"
      autoComplete="off"
      aria-label={label}
      aria-describedby={props.describedBy}
      aria-invalid={wrong || undefined}
      value={typed ?? shown}
      style={{ width: `${Math.max(3, (typed ?? shown).length) * 0.62 + 0.6}em` }}
      onChange={(event) => {
        const text = event.target.value
        setTyped(text)
        const next = numberIn(text)
        if (next !== undefined && next >= least && next <= most) onChange(next)
      }}
      onBlur={() => !wrong && setTyped(undefined)}
    />
  )
}

/** A place on a track where the advice changes hands, or an end of it. */
export interface TrackMark {
  readonly at: number
  readonly says: string
}

export interface TriedProps {
  readonly name: string
  /** After the number: years, an hour. */
  readonly unit: string
  /** Before the number: the currency's sign. */
  readonly sign?: string
  readonly value: number
  readonly least: number
  readonly most: number
  readonly step: number
  readonly onChange: (value: number) => void
  readonly marks: readonly TrackMark[]
  readonly children?: ReactNode
}

/** A field with its track below: the typed number first, a tick named where the answer changes hands. */
export function Tried({ name, unit, sign, value, least, most, step, onChange, marks, children }: TriedProps) {
  const id = useId()
  const place = (at: number) => (100 * (at - least)) / (most - least)
  return (
    <div className="field">
      <label htmlFor={id}>{name}</label>
      <div className="value">
        {sign}
        <NumberInput id={id} value={value} least={least} onChange={onChange} digits={step < 1 ? 2 : 0} />
        <span className="small second">{unit}</span>
      </div>
      <div className="track">
        <input
          type="range"
          aria-label={`${name}, ${unit}`}
          min={least}
          max={most}
          step={step}
          value={Math.min(most, Math.max(least, value))}
          onChange={(event) => onChange(Number(event.target.value))}
        />
        <div className="track-marks" aria-hidden="true">
          {marks.map(({ at, says }) => (
            <Fragment key={`${at} ${says}`}>
              <i style={{ left: `${place(at)}%` }} />
              <span
                className={place(at) < 8 ? '' : place(at) > 92 ? 'end' : 'middle'}
                style={{ left: `${place(at)}%` }}
              >
                {says}
              </span>
            </Fragment>
          ))}
        </div>
      </div>
      {children}
    </div>
  )
}

export interface OverruleProps {
  /** What is set. */
  readonly name: string
  readonly sign?: string | undefined
  readonly unit?: string | undefined
  readonly value: number
  /** Writes the entry; the words of what is wrong, or nothing. */
  readonly onWrite: (value: number) => Promise<string | undefined>
}

/** Sets a figure oneself: an entry is written, and everything follows it. */
export function Overrule({ name, sign, unit, value, onWrite }: OverruleProps) {
  const [typed, setTyped] = useState('')
  const [state, setState] = useState<'still' | 'writing' | 'written'>('still')
  const [problem, setProblem] = useState<string>()
  const id = useId()
  const words = shell.figure
  const submit = async () => {
    const number = numberIn(typed)
    if (number === undefined) return setProblem(words.notANumber)
    setState('writing')
    const wrong = await onWrite(number)
    setProblem(wrong)
    setState(wrong === undefined ? 'written' : 'still')
  }
  return (
    <span className="field">
      <span className="value">
        {sign}
        <input
          className="input"
          style={{ width: '6em' }}
          inputMode="decimal"
          autoComplete="off"
          aria-label={`${words.overrule}: ${name}${unit ? `, ${unit}` : ''}`}
          aria-describedby={problem ? id : undefined}
          placeholder={String(value)}
          value={typed}
          onChange={(event) => setTyped(event.target.value)}
          onKeyDown={(event) => event.key === 'Enter' && void submit()}
        />
        {unit}
        <button
          type="button"
          className="button light"
          disabled={state === 'writing'}
          onClick={() => void submit()}
        >
          {state === 'writing' ? words.writing : words.write}
        </button>
      </span>
      <span aria-live="polite" id={id}>
        {problem ? <span className="problem">{problem}</span> : state === 'written' ? words.written : ''}
      </span>
    </span>
  )
}
