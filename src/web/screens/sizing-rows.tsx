/**
 * A table of words and numbers, moved sideways where it is wider than the page.
 *
 * @module
 */

import { spoken } from '../../sizing/say-size.js'
import type { SizedSet } from '../../sizing/sized-set.js'
import { Heads, WideTable } from '../parts/index.js'
import { upperFirst } from '../words/say.js'

export interface SizingRowsProps {
  readonly name: string
  readonly heads: readonly string[]
  /** The first cell of each heads its row; rows are told apart by all of their cells. */
  readonly rows: readonly (readonly string[])[]
}

export function SizingRows({ name, heads, rows }: SizingRowsProps) {
  return (
    <WideTable name={name}>
      <table className="table sized">
        <Heads list={heads} />
        <tbody>
          {rows.map(([first, ...cells]) => (
            <tr key={[first, ...cells].join('\n')}>
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

/** "8 kW", "The set under the wheelhouse, 7 kW". */
export function nameOfSet({ name, kind, ratingKW }: SizedSet): string {
  return kind === 'size' ? name : `${upperFirst(name)}, ${spoken(ratingKW)} kW`
}
