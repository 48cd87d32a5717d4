/**
 * Tables of numbers in which each opens.
 *
 * @module
 */

import type { ReactNode } from 'react'
import { WideTable } from './behind.js'
import { FigureRow, type FigureSaid } from './figure.js'
import { Heads } from './heads.js'

export interface NumbersTableProps {
  readonly name: string
  /** Over the names of the rows. */
  readonly first: string
  readonly heads: readonly string[]
  readonly children: ReactNode
}

export function NumbersTable({ name, first, heads, children }: NumbersTableProps) {
  return (
    <WideTable name={name}>
      <table className="table numbers" style={{ '--columns': heads.length } as object}>
        <Heads list={[first, ...heads.map((number) => ({ number }))]} />
        <tbody>{children}</tbody>
      </table>
    </WideTable>
  )
}

export interface NumbersRowProps {
  readonly name: string
  readonly heads: readonly string[]
  /** One under each head. */
  readonly figures: readonly FigureSaid[]
}

export function NumbersRow({ name, heads, figures }: NumbersRowProps) {
  return (
    <FigureRow columns={heads.length + 1}>
      {(row) => (
        <>
          <th scope="row">{name}</th>
          {figures.map((figure, at) => (
            <td className="number" key={heads[at]}>
              {row.of(heads[at]!, figure)}
            </td>
          ))}
        </>
      )}
    </FigureRow>
  )
}
