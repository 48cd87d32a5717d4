/**
 * The set seen from its service side: ways in as letters in rings, what was found hatched.
 *
 * @module
 */

import { useId } from 'react'
import { type Layout, piecesOf, ringsOf, viewHeight, viewWidth } from './side-view-pieces.js'

export interface WayIn {
  readonly access: string
  readonly letter: string
  readonly name: string
  /** Something is found behind it. */
  readonly found: boolean
  /** Where the ring leads to on the page. */
  readonly href: string
}

export interface SideViewProps {
  readonly layout: Layout
  /** Parts that the set has. */
  readonly parts: ReadonlySet<string>
  readonly found: ReadonlySet<string>
  readonly suspected: ReadonlySet<string>
  readonly waysIn: readonly WayIn[]
  readonly label: string
}

export function SideView({ layout, parts, found, suspected, waysIn, label }: SideViewProps) {
  const hatch = useId()
  const pieces = piecesOf(layout).filter(
    (piece) => piece.parts.length === 0 || piece.parts.some((part) => parts.has(part)),
  )
  const look = (of: readonly string[]) =>
    of.some((part) => found.has(part)) ? 'found' : of.some((part) => suspected.has(part)) ? 'suspected' : ''
  return (
    <div className="side-view">
      <svg viewBox={`0 0 ${viewWidth} ${viewHeight}`} role="img" aria-label={label}>
        <title>{label}</title>
        <defs>
          <pattern
            id={hatch}
            width="7"
            height="7"
            patternUnits="userSpaceOnUse"
            patternTransform="rotate(45)"
          >
            <rect className="hatch-paper" width="7" height="7" />
            <line className="hatch-line" x1="0" x2="0" y1="0" y2="7" />
          </pattern>
        </defs>
        {pieces.map(({ id, parts: of, shape, lines }) => (
          <g key={id} className={`piece ${id === 'case' ? 'case' : ''} ${look(of)}`}>
            <path d={shape} style={look(of) && id !== 'case' ? { fill: `url(#${hatch})` } : undefined} />
            {lines && <path className="fine-line" d={lines} />}
          </g>
        ))}
      </svg>
      {ringsOf(layout).map(({ access, x, y }) => {
        const way = waysIn.find((each) => each.access === access)
        return (
          way && (
            <a
              key={access}
              className={`ring ${way.found ? 'found' : ''}`}
              href={way.href}
              aria-label={way.name}
              style={{ left: `${x}%`, top: `${y}%` }}
            >
              {way.letter}
            </a>
          )
        )
      })}
    </div>
  )
}
