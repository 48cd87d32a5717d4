/**
 * A sheet for whoever does the work, as it stands on paper: on a screen the same.
 *
 * @module
 */

import { useContext, useMemo } from 'react'
import { briefInWords } from '../../alternatives/brief.js'
import type { ShopSheet } from '../../proof/shop-sheet.js'
import type { SheetBlock, SheetPassage } from '../../proof/shop-sheet-blocks.js'
import { RegionOfPage } from '../data/region.js'
import { DrawnLinks } from '../marks/link-drawing.js'
import { Passage, Tag, WideTable } from '../parts/index.js'
import { inRegion } from '../words/region.js'
import { withUnits } from '../words/say.js'
import { shell } from '../words/shell.js'
import { MarkedPhotograph } from './job-apart-picture.js'
import '../look/brief.css'
import '../look/job-apart.css'
import '../look/links.css'

export function SheetPaper({ sheet }: { readonly sheet: ShopSheet }) {
  const region = useContext(RegionOfPage)
  const passages = useMemo(() => sheet.passages.map((one) => inWords(one, region)), [sheet, region])
  return (
    <>
      <h1>
        {sheet.title}, {sheet.boatName}
      </h1>
      <p className="fine">{[sheet.day, sheet.invented].filter(Boolean).join('; ')}</p>
      {passages.map((passage) => (
        <Passage
          key={passage.title}
          title={passage.title}
          {...(passage.says === undefined ? {} : { says: passage.says })}
        >
          {passage.blocks.map((block, at) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: blocks of a passage have no other name
            <Block key={at} {...block} />
          ))}
        </Passage>
      ))}
      <p className="brief-end fine">{sheet.colophon}</p>
    </>
  )
}

/** Sentences in the words of the boat's region; drawings stay as they are. */
function inWords({ blocks, ...passage }: SheetPassage, region: Parameters<typeof inRegion>[1]): SheetPassage {
  const said = (sentence: string) => withUnits(inRegion(sentence, region))
  return {
    ...briefInWords(passage, said),
    blocks: blocks.map((block) =>
      block.is === 'drawings' || block.is === 'pictures' ? block : briefInWords(block, said),
    ),
  }
}

function Block(block: SheetBlock) {
  switch (block.is) {
    case 'text':
      return (
        <p className="prose">
          {block.bold && <b>{block.bold} </b>}
          {block.text}
        </p>
      )
    case 'stop':
      return (
        <div className="stop">
          <Tag look="solid">{shell.stop}</Tag>
          <h3>{block.text}</h3>
        </div>
      )
    case 'list':
      return (
        <ul className="prose">
          {block.items.map((item) => (
            <li key={item}>{item}</li>
          ))}
        </ul>
      )
    case 'blanks':
      return (
        <ul className="blanks">
          {block.names.map((name) => (
            <li key={name}>{name}</li>
          ))}
        </ul>
      )
    case 'table':
      return <SheetTable {...block} />
    case 'pictures':
      return (
        <div className="sheet-pictures">
          {block.pictures.map((photograph) => (
            <MarkedPhotograph key={photograph.sha256} photograph={photograph} />
          ))}
        </div>
      )
    case 'drawings':
      return (
        <div className={block.drawings.length > 1 ? 'sheet-drawings' : 'sheet-drawings one'}>
          {block.drawings.map((drawing) => (
            <DrawnLinks key={drawing.says} {...drawing} />
          ))}
        </div>
      )
    case 'signatures':
      return (
        <ul className="signatures fine">
          {block.lines.map((line, at) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: two lines bear the same name
            <li key={at}>{line}</li>
          ))}
        </ul>
      )
  }
}

function SheetTable({ heads, rows }: Extract<SheetBlock, { is: 'table' }>) {
  return (
    <WideTable name={heads.filter(Boolean).join(', ') || rows[0]?.[0] || ''}>
      <table className="table">
        {heads.some(Boolean) && (
          <thead>
            <tr>
              {heads.map((head, at) =>
                head === '' ? (
                  // biome-ignore lint/suspicious/noArrayIndexKey: a head without a name
                  <td key={at} />
                ) : (
                  <th key={head} scope="col">
                    {head}
                  </th>
                ),
              )}
            </tr>
          </thead>
        )}
        <tbody>
          {rows.map(([first, ...cells]) => (
            <tr key={first}>
              <th scope="row">{first}</th>
              {cells.map((cell, at) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: cells stand by their place
                <td key={at}>{cell}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </WideTable>
  )
}
