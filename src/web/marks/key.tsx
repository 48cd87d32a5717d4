/**
 * How a drawing is read: each of its marks with its word.
 *
 * @module
 */

import type { ReactNode } from 'react'

export interface KeyItem {
  readonly says: string
  /** The mark itself, drawn in a box of so many pixels. */
  readonly mark?: ReactNode
  readonly width?: number
  readonly height?: number
  /** Thickness of a plain line that stands for the mark. [px] */
  readonly thick?: number
}

export function Key({ items }: { readonly items: readonly KeyItem[] }) {
  return (
    <ul className="key">
      {items.map(({ says, mark, width = 34, height = 14, thick }) => (
        <li key={says}>
          <svg width={width} height={height} aria-hidden="true">
            {thick === undefined ? (
              mark
            ) : (
              <line className="plain" x1="0" x2={width} y1={height / 2} y2={height / 2} strokeWidth={thick} />
            )}
          </svg>
          {says}
        </li>
      ))}
    </ul>
  )
}
