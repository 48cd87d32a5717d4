/**
 * Tables of plain text.
 *
 * @module
 */

import colours from 'picocolors'

/** A column: its heading, and on which side its cells stand. */
export interface Column {
  readonly head: string
  readonly align?: 'left' | 'right'
}

/** Rows under headings, columns as wide as their widest cell, two blanks between. */
export function tableText(columns: readonly Column[], rows: readonly (readonly string[])[]): string {
  const widths = columns.map(({ head }, c) =>
    Math.max(head.length, ...rows.map((row) => [...(row[c] ?? '')].length)),
  )
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
  return [colours.bold(line(columns.map(({ head }) => head))), rule, ...rows.map(line)].join('\n')
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
