/**
 * Computed numbers that open in place to what they are, where they come from, what they move, and a field to overrule them.
 *
 * @module
 */

import { Fragment, type ReactNode, useId, useState } from 'react'
import { useSaid } from '../data/region.js'
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

/** A figure as it stands in a sentence, a row or a cell. What is behind it is made only when it is opened. */
export interface FigureSaid {
  readonly says: string
  readonly behind: () => Behind
}

export interface FigureHow {
  /** Said before the number to who does not see where it stands. */
  readonly label?: string
  /** Of a row: on a phone the whole row opens it, and the others of the row with it. */
  readonly leads?: boolean
  readonly bold?: boolean
}

/** The figures of one sentence, row or table row, and what of them is open. */
export interface Figures {
  readonly of: (key: string, figure: FigureSaid, how?: FigureHow) => ReactNode
  /** A sentence with figures in the holes that `hole` left in it. */
  readonly fill: (sentence: string, figures: Readonly<Record<string, FigureSaid>>) => ReactNode
  /** What is open, in the order in which the figures stand; to be placed after all of them. */
  readonly opened: () => ReactNode
  readonly any: boolean
}

/** Stands in a sentence for a figure that `fill` puts there. */
export function hole(key: string): string {
  return `⟦${key}⟧`
}

export function useFigures(): Figures {
  const id = useId()
  const [open, setOpen] = useState<ReadonlySet<string>>(new Set())
  const here = new Map<string, FigureSaid>()
  const turn = (key: string, leads: boolean) => {
    const keys = leads && isPhone() ? [...here.keys()] : [key]
    const next = new Set(open)
    for (const one of keys) {
      if (open.has(key)) next.delete(one)
      else next.add(one)
    }
    setOpen(next)
  }
  const idOf = (key: string) => `${id}${key.replace(/\W+/g, '-')}`
  const of: Figures['of'] = (key, figure, { label, leads = false, bold = false } = {}) => {
    here.set(key, figure)
    return (
      <FigureButton
        key={key}
        open={open.has(key)}
        controls={idOf(key)}
        leads={leads}
        label={label === undefined ? undefined : `${label}, ${figure.says}`}
        onToggle={() => turn(key, leads)}
      >
        {bold ? <b>{figure.says}</b> : figure.says}
      </FigureButton>
    )
  }
  return {
    of,
    any: open.size > 0,
    fill: (sentence, figures) =>
      sentence.split(/⟦(\w+)⟧/).map((piece, at) => {
        if (at % 2 === 0) return piece
        const figure = figures[piece]
        if (figure === undefined) throw new TypeError(`hole must name a figure; found ${piece}`)
        return of(piece, figure)
      }),
    opened: () =>
      [...here]
        .filter(([key]) => open.has(key))
        .map(([key, { behind }]) => <Opened key={key} id={idOf(key)} behind={behind()} />),
  }
}

function isPhone(): boolean {
  return matchMedia('(max-width: 699px)').matches
}

interface FigureButtonProps {
  readonly open: boolean
  readonly onToggle: () => void
  /** Id of what opens. */
  readonly controls: string
  readonly leads: boolean
  readonly label: string | undefined
  readonly children: ReactNode
}

function FigureButton({ open, onToggle, controls, leads, label, children }: FigureButtonProps) {
  return (
    <button
      type="button"
      className={leads ? 'figure leads' : 'figure'}
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
function Opened({ id, behind }: { readonly id: string; readonly behind: Behind }) {
  const { value, comesFrom, moves, overrule } = behind
  const said = useSaid()
  const name = said(behind.name)
  const inWords = (says: ReactNode) => (typeof says === 'string' ? said(says) : says)
  const { figure } = shell
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset may not stand inside a paragraph
    <span className="opened" id={id} role="group" aria-label={figure.opened(name)}>
      <b>{name}</b>
      <OpenedLine name={figure.value}>{inWords(value)}</OpenedLine>
      <OpenedLine name={figure.comesFrom}>{inWords(comesFrom)}</OpenedLine>
      {moves !== undefined && <OpenedLine name={figure.moves}>{inWords(moves)}</OpenedLine>}
      {overrule !== undefined && <OpenedLine name={figure.overrule}>{inWords(overrule)}</OpenedLine>}
    </span>
  )
}

/** One line of what a figure opens to. */
function OpenedLine({ name, children }: { readonly name: string; readonly children: ReactNode }) {
  return (
    <span className="line">
      <span>{name}</span>
      <span>{children}</span>
    </span>
  )
}

export interface SaidProps {
  /** A sentence with holes. */
  readonly text: string
  readonly figures: Readonly<Record<string, FigureSaid>>
  readonly className?: string
}

/** A paragraph whose numbers open below it. */
export function Said({ text, figures, className }: SaidProps) {
  const of = useFigures()
  return (
    <>
      <p className={className}>{of.fill(text, figures)}</p>
      {of.opened()}
    </>
  )
}

export interface FigureRowProps {
  readonly columns: number
  readonly className?: string
  /** The cells, with their figures. */
  readonly children: (figures: Figures) => ReactNode
}

/** A row of a table whose figures open in a row of their own beneath it. */
export function FigureRow({ columns, className, children }: FigureRowProps) {
  const figures = useFigures()
  const cells = children(figures)
  return (
    <Fragment>
      <tr className={className}>{cells}</tr>
      {figures.any && (
        <tr>
          <td colSpan={columns} className="full">
            {figures.opened()}
          </td>
        </tr>
      )}
    </Fragment>
  )
}
