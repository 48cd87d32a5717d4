/**
 * A computed number that opens in place to what it is, where it comes from, what it moves, and a field to overrule it.
 *
 * @module
 */

import { type ReactNode, useId, useState } from 'react'
import { shell } from '../words/shell.js'

/** What stands behind a figure. */
export interface Behind {
  /** What the number is, as the head of what opens. */
  readonly name: string
  /** The number in full, with its unit and its doubt. */
  readonly value: ReactNode
  /** Source, place, and how it is held. */
  readonly comesFrom: ReactNode
  /** What it moves, or what moves it. */
  readonly moves?: ReactNode
  /** A field to set it oneself, where it can be. */
  readonly overrule?: ReactNode
}

/** A number in a sentence: opens beneath the line it stands in. */
export function Figure({ behind, children }: { readonly behind: Behind; readonly children: ReactNode }) {
  const [open, setOpen] = useState(false)
  const id = useId()
  return (
    <>
      <FigureButton open={open} onToggle={() => setOpen(!open)} controls={id}>
        {children}
      </FigureButton>
      {open && <Opened id={id} behind={behind} />}
    </>
  )
}

export interface FigureButtonProps {
  readonly open: boolean
  readonly onToggle: () => void
  /** Id of what opens. */
  readonly controls: string
  readonly label?: string
  readonly children: ReactNode
}

/** The number alone, for rows where what opens stands elsewhere. */
export function FigureButton({ open, onToggle, controls, label, children }: FigureButtonProps) {
  return (
    <button
      type="button"
      className="figure"
      aria-expanded={open}
      aria-controls={open ? controls : undefined}
      aria-label={label}
      onClick={onToggle}
    >
      {children}
    </button>
  )
}

/** What a figure opens to. Spans, so that it may stand inside a paragraph. */
export function Opened({ id, behind }: { readonly id?: string; readonly behind: Behind }) {
  const { name, value, comesFrom, moves, overrule } = behind
  const { figure } = shell
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset may not stand inside a paragraph
    <span className="opened" id={id} role="group" aria-label={figure.opened(name)}>
      <b>{name}</b>
      <Line name={figure.value}>{value}</Line>
      <Line name={figure.comesFrom}>{comesFrom}</Line>
      {moves !== undefined && <Line name={figure.moves}>{moves}</Line>}
      {overrule !== undefined && <Line name={figure.overrule}>{overrule}</Line>}
    </span>
  )
}

function Line({ name, children }: { readonly name: string; readonly children: ReactNode }) {
  return (
    <span className="line">
      <span>{name}</span>
      <span>{children}</span>
    </span>
  )
}
