/**
 * Joined leads, drawn: the shapes come from the core, lines and type from the page.
 *
 * @module
 */

import type { LinkDrawing, LinkShape } from '../../proof/links/drawing.js'
import '../look/links.css'

export function DrawnLinks({ width, height, says, shapes }: LinkDrawing) {
  return (
    <svg className="links" viewBox={`0 0 ${width} ${height}`} role="img" aria-label={says}>
      <title>{says}</title>
      {shapes.map((shape, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: shapes have no other name, and none keeps a state
        <OneShape key={at} {...shape} />
      ))}
    </svg>
  )
}

function OneShape(shape: LinkShape) {
  switch (shape.is) {
    case 'path':
      return <path className={shape.look} d={shape.d} />
    case 'filled':
      return <path className="filled" d={shape.d} />
    case 'dot':
      return <circle className="filled" cx={shape.x} cy={shape.y} r={shape.r} />
    case 'post':
      return (
        <>
          <rect
            className={shape.heavy ? 'post heavy' : 'post'}
            x={shape.x - shape.half}
            y={shape.y - 15}
            width={2 * shape.half}
            height={30}
            rx={15}
          />
          <text className="mark" x={shape.x} y={shape.y + 4.5} textAnchor="middle">
            {shape.text}
          </text>
        </>
      )
    case 'text':
      return (
        <text className={shape.bold ? 'bold' : ''} x={shape.x} y={shape.y} textAnchor={shape.anchor}>
          {shape.text}
        </text>
      )
  }
}
