/**
 * Which past days are looked back on, and with what was known on them.
 *
 * @module
 */

import { type ReactNode, useId } from 'react'
import { words } from '../words/looking-back.js'
import type { LookBackAsked } from '../work/look-back-says.js'

const { ask } = words
const spans = [3, 6, 12, 24] as const
const numbers = [4, 10, 20] as const

export function AskBack({
  asked,
  onAsk,
  late,
  children,
}: {
  readonly asked: LookBackAsked
  readonly onAsk: (asked: LookBackAsked) => void
  readonly late: { readonly late: number; readonly of: number } | undefined
  readonly children: ReactNode
}) {
  const { by, months, most } = asked
  return (
    <div className="ask-back screen-only">
      <Picks
        legend={ask.by}
        value={by}
        options={[
          ['noted', ask.bys.noted],
          ['happened', ask.bys.happened],
        ]}
        onPick={(next) => onAsk({ ...asked, by: next })}
      />
      <p className="fine prose">{by === 'noted' ? ask.notedMeans : ask.happenedMeans}</p>
      {late !== undefined && by === 'noted' && late.late * 2 > late.of && (
        <p className="fine prose">{ask.late(late.late, late.of)}</p>
      )}
      <div className="two">
        <Picks
          legend={ask.months}
          value={months}
          options={spans.map((span) => [span, ask.monthsOf(span)])}
          onPick={(next) => onAsk({ ...asked, months: next })}
        />
        <Picks
          legend={ask.most}
          value={most}
          options={numbers.map((number) => [number, ask.mostOf(number)])}
          onPick={(next) => onAsk({ ...asked, most: next })}
        />
      </div>
      {children}
    </div>
  )
}

function Picks<Value extends string | number>({
  legend,
  value,
  options,
  onPick,
}: {
  readonly legend: string
  readonly value: Value
  readonly options: readonly (readonly [Value, string])[]
  readonly onPick: (value: Value) => void
}) {
  const name = useId()
  return (
    <fieldset className="entry-field">
      <legend>{legend}</legend>
      <div className="picks">
        {options.map(([option, says]) => (
          <label key={option}>
            <input type="radio" name={name} checked={option === value} onChange={() => onPick(option)} />
            {says}
          </label>
        ))}
      </div>
    </fieldset>
  )
}
