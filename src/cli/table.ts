/**
 * Tables of plain text.
 *
 * @module
 */

import { colours } from './colours.js'

/** A column: its heading, and on which side its cells stand. */
export interface Column {
  readonly head: string
  readonly align?: 'left' | 'right'
  /** Longer cells go on in the lines below, broken between words. */
  readonly wrap?: number
}

/** Rows under headings, columns as wide as their widest cell, two blanks between. */
export function tableText(columns: readonly Column[], rows: readonly (readonly string[])[]): string {
  const [head, ...lines] = [columns.map((column) => column.head), ...rows].map((cells) =>
    linesOf(columns, cells),
  )
  const all = [...head!, ...lines.flat()]
  const widths = columns.map((_, c) => Math.max(...all.map((cells) => [...(cells[c] ?? '')].length)))
  const line = (cells: readonly string[]) =>
    columns
      .map(({ align }, c) => {
        const cell = cells[c] ?? ''
        const blanks = ' '.repeat(widths[c]! - [...cell].length)
        return align === 'right' ? blanks + cell : cell + blanks
      })
      .join('  ')
      .trimEnd()
  const rule = widths.map((width) => '─'.repeat(width)).join('──')
  return [...head!.map((cells) => colours.bold(line(cells))), rule, ...lines.flat().map(line)].join('\n')
}

/** The lines that a row takes: its cells on the first, what of them does not fit below. */
function linesOf(columns: readonly Column[], cells: readonly string[]): string[][] {
  const pieces = columns.map(({ wrap }, c) => broken(cells[c] ?? '', wrap ?? Number.POSITIVE_INFINITY))
  const height = Math.max(1, ...pieces.map(({ length }) => length))
  return Array.from({ length: height }, (_, i) => pieces.map((piece) => piece[i] ?? ''))
}

/** A text in lines of at most so many characters, longer words whole; those after the first are set in. */
function broken(text: string, most: number): string[] {
  const lines: string[] = []
  for (const word of text.split(' ')) {
    const last = lines.at(-1)
    if (last !== undefined && last.length + 1 + word.length <= most)
      lines[lines.length - 1] = `${last} ${word}`
    else lines.push(last === undefined ? word : `  ${word}`)
  }
  return lines
}

/** A number for a table: whole and grouped from 100 on, three figures below. */
export function figure(value: number): string {
  if (!Number.isFinite(value)) return '–'
  const size = Math.abs(value)
  if (size >= 99.95) return Math.round(value).toLocaleString('en-GB')
  if (size === 0) return '0'
  return String(Number(value.toPrecision(size < 1 ? 2 : 3)))
}

/** A chance in spoken form: "61 in 100", "1 in 120". */
export function chance(share: number): string {
  if (!(share > 0)) return 'none'
  if (share >= 0.9995) return 'all'
  return share >= 0.0995
    ? `${Math.round(share * 100)} in 100`
    : `1 in ${Math.round(1 / share).toLocaleString('en-GB')}`
}
