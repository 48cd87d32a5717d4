/**
 * The passages of a brief, as they stand on paper.
 *
 * @module
 */

import type { Brief } from '../../alternatives/brief.js'
import type { BriefBlock, BriefPassage } from '../../alternatives/brief-blocks.js'
import { type Drawing, rangeDrawings, type Shape, widthsDrawing } from '../../alternatives/brief-drawing.js'
import { Passage, Tag, WideTable } from '../parts/index.js'
import { words } from '../words/brief.js'

export function BriefPassages({ brief }: { readonly brief: Brief }) {
  const { title, boatName, setLine, invented, day, passages, colophon } = brief
  return (
    <>
      <h1>
        {title}, {boatName}
      </h1>
      <p className="fine">{[setLine, day, invented].filter(Boolean).join('; ')}</p>
      {passages.map((passage) => (
        <OnePassage key={passage.title} {...passage} />
      ))}
      <p className="brief-end fine">{colophon}</p>
    </>
  )
}

function OnePassage({ title, says, fine, blocks }: BriefPassage) {
  const isWide = blocks.some(({ is }) => is === 'ranges')
  return (
    <Passage
      title={title}
      {...(says === undefined ? {} : { says })}
      className={isWide ? 'wide' : fine ? 'small' : ''}
    >
      {blocks.map((block) => (
        <Block key={keyOf(block)} block={block} />
      ))}
    </Passage>
  )
}

function keyOf(block: BriefBlock): string {
  if (block.is === 'say' || block.is === 'text') return block.text
  return block.is === 'stop' ? block.title : block.is
}

function Block({ block }: { readonly block: BriefBlock }) {
  switch (block.is) {
    case 'say':
      return (
        <p className="say">
          {block.text}
          <b>{block.bold}</b>
        </p>
      )
    case 'text':
      return (
        <p className="prose">
          {block.bold && <b>{block.bold} </b>}
          {block.text}
        </p>
      )
    case 'list':
      return (
        <ul className="prose">
          {block.items.map((item) => (
            <li key={item}>{item}</li>
          ))}
        </ul>
      )
    case 'stop':
      return (
        <div className="stop">
          <Tag look="solid">{words.stop}</Tag>
          <h3>{block.title}</h3>
          <p>{block.text}</p>
        </div>
      )
    case 'number':
      return (
        <>
          <p className="brief-number">{block.number}</p>
          {block.widths && <Drawn {...widthsDrawing(block.widths)} />}
          <p className="prose">{block.text}</p>
        </>
      )
    case 'table':
      return <PlainTable {...block} />
    case 'ranges':
      return <Ranges {...block} />
    case 'signatures':
      return (
        <ul className="signatures fine">
          {block.lines.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      )
  }
}

function PlainTable({ heads, rows }: Extract<BriefBlock, { is: 'table' }>) {
  return (
    <WideTable name={heads.filter(Boolean).join(', ')}>
      <table className="table folds">
        <TableHead heads={heads} />
        <tbody>
          {rows.map(([first, ...cells]) => (
            <tr key={first}>
              <th scope="row">{first}</th>
              {cells.map((cell, i) => (
                <td key={heads[i + 1]} data-name={heads[i + 1]}>
                  {cell}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </WideTable>
  )
}

function Ranges({ heads, rows }: Extract<BriefBlock, { is: 'ranges' }>) {
  const drawings = rangeDrawings(rows)
  return (
    <WideTable name={words.ranges}>
      <table className="table ranges folds">
        <TableHead heads={heads} />
        <tbody>
          {rows.map(({ name, tag, cells }, i) => (
            <tr key={name}>
              <th scope="row">
                {name} {tag && <Tag look={tag === 'Barred' ? 'solid' : 'underlined'}>{tag}</Tag>}
              </th>
              <td className="draws">
                <Drawn {...drawings[i]!} />
              </td>
              {cells.map((cell, at) => (
                <td key={heads[at + 2]} data-name={heads[at + 2]}>
                  {cell}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </WideTable>
  )
}

function TableHead({ heads }: { readonly heads: readonly string[] }) {
  return (
    <thead>
      <tr>
        {heads.map((head) =>
          head === '' ? (
            <td key={head} />
          ) : (
            <th key={head} scope="col">
              {head}
            </th>
          ),
        )}
      </tr>
    </thead>
  )
}

function Drawn({ height, says, shapes }: Drawing) {
  return (
    <svg className="brief-drawing" height={height} role="img" aria-label={says}>
      <title>{says}</title>
      {shapes.map((shape) => (
        <OneShape key={JSON.stringify(shape)} {...shape} />
      ))}
    </svg>
  )
}

function OneShape(shape: Shape) {
  if (shape.is === 'ring') return <circle cx={`${shape.x}%`} cy={shape.y} r={shape.r} />
  if (shape.is === 'stroke') {
    const { look, x, y } = shape
    return <line className={look} x1={`${x[0]}%`} x2={`${x[1]}%`} y1={y[0]} y2={y[1]} />
  }
  const { x, y, aside, anchor, text, bold } = shape
  return (
    <text className={bold ? 'bold' : ''} x={`${x}%`} y={y} dx={aside} textAnchor={anchor}>
      {text}
    </text>
  )
}
