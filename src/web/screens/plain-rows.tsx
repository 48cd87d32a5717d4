/**
 * A table of plain cells.
 *
 * @module
 */

import { Heads, WideTable } from '../parts/index.js'

export function PlainRows({
  heads,
  rows,
}: {
  readonly heads: readonly string[]
  readonly rows: readonly (readonly string[])[]
}) {
  return (
    <WideTable name={heads.filter(Boolean).join(', ')}>
      <table className="table">
        <Heads list={heads.map((head) => (head === '' ? { unseen: '–' } : head))} />
        <tbody>
          {rows.map(([first, ...cells]) => (
            <tr key={first}>
              <th scope="row">{first}</th>
              {cells.map((cell, at) => (
                <td key={heads[at + 1]}>{cell}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </WideTable>
  )
}
