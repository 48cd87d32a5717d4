/**
 * What blocks, what is asked, and what is advised.
 *
 * @module
 */

import type { ReactNode } from 'react'
import { useSaid } from '../data/region.js'
import { shell } from '../words/shell.js'
import { Tag } from './tag.js'

export interface StopProps {
  /** The sentence, with the number and the limit. */
  readonly title: string
  readonly children?: ReactNode
  /** Acts that close it. */
  readonly acts?: ReactNode
}

/** A condition that blocks a step until it is answered. */
export function Stop({ title, children, acts }: StopProps) {
  const said = useSaid()
  return (
    <div className="stop">
      <Tag look="solid">{shell.stop}</Tag>
      <h3>{said(title)}</h3>
      {typeof children === 'string' ? <p>{children}</p> : children}
      {acts && <div className="acts">{acts}</div>}
    </div>
  )
}

/** An entry that looks odd: the sum done aloud, the answers as buttons, `Leave it for now` last. */
export function Asked({ title, children, acts }: StopProps) {
  const said = useSaid()
  return (
    <div className="asked">
      <Tag look="dashed">{shell.asked}</Tag>
      <h3>{said(title)}</h3>
      {typeof children === 'string' ? <p>{children}</p> : children}
      {acts && <div className="acts">{acts}</div>}
    </div>
  )
}

/** Hazards of the work a page leads to: name first, then what to do. */
export function Cautions({
  list,
}: {
  readonly list: readonly { readonly hazard: string; readonly says: string }[]
}) {
  const said = useSaid()
  return (
    <ul className="cautions">
      {list.map(({ hazard, says }) => (
        <li key={hazard}>
          <b>{said(hazard)}</b>
          {said(says)}
        </li>
      ))}
    </ul>
  )
}
