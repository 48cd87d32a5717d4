/**
 * The heads of a table's columns.
 *
 * @module
 */

/** A head; one that stands over numbers is set to the right. */
export type Head = string | { readonly number: string } | { readonly unseen: string }

export function Heads({ list }: { readonly list: readonly Head[] }) {
  return (
    <thead>
      <tr>
        {list.map((head) =>
          typeof head === 'string' ? (
            <th scope="col" key={head}>
              {head}
            </th>
          ) : 'number' in head ? (
            <th scope="col" className="number" key={head.number}>
              {head.number}
            </th>
          ) : (
            <th scope="col" key={head.unseen}>
              <span className="unseen">{head.unseen}</span>
            </th>
          ),
        )}
      </tr>
    </thead>
  )
}
