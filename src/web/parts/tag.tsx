/**
 * A word that marks a thing: never a colour alone.
 *
 * @module
 */

import type { ReactNode } from 'react'

export interface TagProps {
  /** `solid`: stop, barred, danger. `outline`: waits. `dashed`: asked. `underlined`: the best in money. */
  readonly look: 'solid' | 'outline' | 'dashed' | 'underlined'
  readonly children: ReactNode
}

export function Tag({ look, children }: TagProps) {
  return <span className={`tag ${look}`}>{children}</span>
}
