/**
 * A part's age against the ages by which such parts have gone. Half gone stands on one upright in every row.
 *
 * @module
 */

import type { LifeSpan } from '../../alternatives/month-by-month.js'
import { Key } from './key.js'

export interface LifeRowProps {
  /** [years] */
  readonly span: Pick<LifeSpan, 'tenth' | 'half' | 'ninth'>
  /** Age now; unknown: anything up to the most. [years] */
  readonly age: number | { readonly atMost: number }
  /** Looks that saw nothing, by the age at which they were. [years] */
  readonly looks?: readonly number[]
  /** Something was seen. */
  readonly found?: boolean
  readonly label: string
}

/** Where half have gone, in hundredths of the width. */
export const halfAt = 45
const y = 26

/** Where an age stands, in hundredths; past the end it stands at the end. */
export function placeOfAge(age: number, half: number): number {
  return Math.min(100, Math.max(0, (halfAt * age) / half))
}

export function LifeRow({ span, age, looks = [], found = false, label }: LifeRowProps) {
  const at = (years: number) => placeOfAge(years, span.half)
  const now = typeof age === 'number' ? at(age) : at(age.atMost)
  const late = at(span.ninth)
  return (
    <svg className="drawing" height="42" role="img" aria-label={label}>
      <title>{label}</title>
      <line className="line-1 edged" x1="0" x2="100%" y1={y + 8} y2={y + 8} />
      <line
        className={typeof age === 'number' ? 'line-5' : 'line-5 dotted'}
        x1="0"
        x2={`${now}%`}
        y1={y + 5}
        y2={y + 5}
      />
      <line className="line-1" x1={`${at(span.tenth)}%`} x2={`${late}%`} y1={y - 10} y2={y - 10} />
      <line className="line-1" x1={`${at(span.tenth)}%`} x2={`${at(span.tenth)}%`} y1={y - 14} y2={y - 6} />
      {late < 100 && <line className="line-1" x1={`${late}%`} x2={`${late}%`} y1={y - 14} y2={y - 6} />}
      <rect
        className="filled"
        x={`${halfAt}%`}
        y={y - 17}
        width="4"
        height="30"
        transform="translate(-2 0)"
      />
      {looks.map((look) => (
        <line key={look} className="line-2" x1={`${at(look)}%`} x2={`${at(look)}%`} y1={y - 4} y2={y + 1} />
      ))}
      {found && (
        <svg x={`${now}%`} y={y - 9} overflow="visible" aria-hidden="true">
          <path className="hollow" d="M0 0 L5.5 10 L-5.5 10 Z" />
        </svg>
      )}
    </svg>
  )
}

/** How the rows are read. */
export function LifeKey({
  words,
}: {
  readonly words: { age: string; unknown: string; half: string; found: string; look: string }
}) {
  return (
    <Key
      items={[
        { says: words.age, mark: <line className="line-5" x1="0" x2="34" y1="7" y2="7" /> },
        { says: words.unknown, mark: <line className="line-5 dotted" x1="0" x2="34" y1="7" y2="7" /> },
        {
          says: words.half,
          width: 56,
          height: 22,
          mark: (
            <>
              <line className="line-1" x1="4" x2="52" y1="8" y2="8" />
              <line className="line-1" x1="4" x2="4" y1="4" y2="12" />
              <line className="line-1" x1="52" x2="52" y1="4" y2="12" />
              <rect className="filled" x="24" y="1" width="4" height="20" />
            </>
          ),
        },
        { says: words.look, width: 8, mark: <line className="line-2" x1="4" x2="4" y1="4" y2="10" /> },
        { says: words.found, width: 14, mark: <path className="hollow" d="M7 2 L12.5 12 L1.5 12 Z" /> },
      ]}
    />
  )
}
