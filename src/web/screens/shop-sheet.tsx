/**
 * The sheet that goes to a workshop with the part, as it stands on paper.
 *
 * @module
 */

import { useContext, useMemo, useState } from 'react'
import { briefInWords } from '../../alternatives/brief.js'
import { programVersion } from '../../alternatives/program-version.js'
import { limitsOf } from '../../proof/limits.js'
import { patternJoined } from '../../proof/links/patterns.js'
import { jobsOfQuotes, type ShopSheet, shopSheetOf } from '../../proof/shop-sheet.js'
import type { SheetBlock, SheetPassage } from '../../proof/shop-sheet-blocks.js'
import { type ShopJob, shopJobs } from '../../proof/shop-sheet-wants.js'
import { useKept } from '../data/kept-text.js'
import { RegionOfPage } from '../data/region.js'
import { DrawnLinks } from '../marks/link-drawing.js'
import type { OfSet } from '../of-set.js'
import { Link, Passage, Preparing, Tag, WideTable } from '../parts/index.js'
import { pathTo } from '../routes.js'
import { words } from '../words/links.js'
import { inRegion } from '../words/region.js'
import { withUnits } from '../words/say.js'
import { shell } from '../words/shell.js'
import { Choice, TextField } from './links-fields.js'
import { type LinksOf, useLinksOf } from './links-of.js'
import '../look/brief.css'
import '../look/links.css'

export function ShopSheetScreen(of: OfSet) {
  const links = useLinksOf(of)
  if (links === undefined) return <Preparing title={words.sheet.title} words={words.preparing} />
  return <Sheet of={of} links={links} />
}

function Sheet({ of, links: known }: { readonly of: OfSet; readonly links: LinksOf }) {
  const { register, log, links, catalogue, found, values } = known
  const region = useContext(RegionOfPage)
  const quoted = useMemo(() => jobsOfQuotes(register, log.entries), [register, log.entries])
  const [chosen, setJobs] = useKept<readonly ShopJob[]>(`${of.boat}.${of.set}.shop-jobs`, quoted)
  const [asks, setAsks] = useKept<string>(`${of.boat}.${of.set}.shop-words`, '')
  const [price, setPrice] = useState('')
  const [linked, setLinked] = useState('')
  const pattern = links.patterns.find(({ id }) => id === linked)
  const askAbove = Number(price.replace(/[\s,]/g, ''))
  const sheet = useMemo((): ShopSheet => {
    const made = shopSheetOf({
      register,
      entries: log.entries,
      limits: limitsOf(catalogue),
      jobs: chosen.length === 0 ? ['test'] : chosen,
      asks: asks.trim() === '' ? undefined : asks.trim(),
      found: found && { record: found.record, values },
      wanted: pattern && found && { pattern, joined: patternJoined(links, pattern, found.record.marks) },
      askAbove: askAbove > 0 ? askAbove : undefined,
      demonstration: log.readOnly,
      program: programVersion,
    })
    return { ...made, passages: made.passages.map((passage) => inWords(passage, region)) }
  }, [register, log, catalogue, chosen, asks, found, values, pattern, links, askAbove, region])
  const { sheet: says } = words
  const toggle = (job: ShopJob) =>
    setJobs(shopJobs.filter((one) => (one === job ? !chosen.includes(job) : chosen.includes(one))))
  return (
    <div className="brief">
      <div className="screen-only">
        <p className="brief-how small">
          {says.print} <Link to={pathTo({ page: 'links', ...of })}>{says.back}</Link>
        </p>
        <div className="links-fields">
          <fieldset className="wide">
            <legend>{says.ask}</legend>
            <div className="picks">
              {shopJobs.map((job) => (
                <label key={job}>
                  <input type="checkbox" checked={chosen.includes(job)} onChange={() => toggle(job)} />
                  {says.jobs[job]}
                </label>
              ))}
            </div>
          </fieldset>
          <TextField name={says.words} hint="" value={asks} onChange={setAsks} />
          <TextField
            name={`${says.askAbove}, ${register.boatFacts.currency ?? ''}`}
            hint="2,400"
            value={price}
            onChange={setPrice}
          />
          {found?.record.known !== undefined && (
            <Choice
              name={says.linked}
              value={linked}
              options={[
                ['', says.asFound],
                ...links.patterns
                  .filter(({ winding }) => winding === found.record.known?.id)
                  .map(({ id, name }) => [id, name] as const),
              ]}
              onChange={setLinked}
            />
          )}
        </div>
      </div>
      <h1>
        {sheet.title}, {sheet.boatName}
      </h1>
      <p className="fine">{[sheet.day, sheet.invented].filter(Boolean).join('; ')}</p>
      {sheet.passages.map((passage) => (
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
    </div>
  )
}

/** Sentences in the words of the boat's region; drawings stay as they are. */
function inWords({ blocks, ...passage }: SheetPassage, region: Parameters<typeof inRegion>[1]): SheetPassage {
  const said = (sentence: string) => withUnits(inRegion(sentence, region))
  return {
    ...briefInWords(passage, said),
    blocks: blocks.map((block) => (block.is === 'drawings' ? block : briefInWords(block, said))),
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
