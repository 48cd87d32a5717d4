/**
 * Winding links: as found against as left, drawn; a board to draw them on; and the way over to another supply.
 *
 * @module
 */

import { changedLeads, type LinksRecord, patternOfRecord } from '../../proof/as-found.js'
import { linkDrawing } from '../../proof/links/drawing.js'
import { lookAtLinks } from '../../proof/links/look-at-links.js'
import { phasorDrawing } from '../../proof/links/phasor-drawing.js'
import { linksCaution, sayVolts } from '../../proof/links/say-links.js'
import { sayOrigin, sourceNames } from '../../proof/source-names.js'
import { Pictures } from '../entry/pictures.js'
import { DrawnLinks } from '../marks/link-drawing.js'
import type { OfSet } from '../of-set.js'
import { Lead, Link, Passage, Preparing, Say, Stop } from '../parts/index.js'
import { pathTo } from '../routes.js'
import { words } from '../words/links.js'
import { sayDate, sayList } from '../words/say.js'
import { LinksDraw } from './links-draw.js'
import { type LinksOf, type State, useLinksOf } from './links-of.js'
import { LinksSupply } from './links-supply.js'
import { LinksUnmarked } from './links-unmarked.js'
import { PlainRows } from './plain-rows.js'
import '../look/links.css'

export function LinksScreen(of: OfSet) {
  const links = useLinksOf(of)
  if (links === undefined) return <Preparing title={words.title} words={words.preparing} />
  const { comparison } = links
  return (
    <>
      <Answer {...links} of={of} />
      {links.found !== undefined && <Boards {...links} />}
      {comparison !== undefined && comparison.differences.length > 0 && (
        <Passage title={words.leads.title} className="long">
          <PlainRows
            heads={words.leads.heads}
            rows={comparison.leads.map((row) => [row.lead, row.found, row.left, row.put])}
          />
        </Passage>
      )}
      {comparison !== undefined && comparison.changes.length > 0 && (
        <Passage title={words.changes.title}>
          <PlainRows
            heads={words.changes.heads}
            rows={comparison.changes.map((row) => [row.name, row.found, row.left])}
          />
        </Passage>
      )}
      <LinksDraw key={links.found?.entry.id ?? 'none'} of={of} links={links} />
      <LinksUnmarked of={of} links={links} />
      <LinksSupply links={links} />
      <p className="prose small gap">{linksCaution}</p>
    </>
  )
}

function Answer({ found, left, comparison, values, problems, of }: LinksOf & { readonly of: OfSet }) {
  const margin = (
    <>
      <p>{words.says}</p>
      <p className="screen-only">
        <Link to={pathTo({ page: 'shop-sheet', ...of })}>{words.sheet.link}</Link>
      </p>
    </>
  )
  const [stop, ...stops] = comparison?.stops ?? []
  return (
    <Passage title={words.title} first says={margin}>
      {problems.length > 0 && <p className="problem">{words.wrongEntry}</p>}
      {stop !== undefined ? (
        <Stop title={stop}>
          {stops.map((says) => (
            <p key={says}>{says}</p>
          ))}
        </Stop>
      ) : comparison !== undefined ? (
        <>
          <Say>
            {comparison.differences.length === 0 ? (
              <b>{words.alike.bold}</b>
            ) : (
              <>
                {words.harmless.before}
                <b>{words.harmless.bold}</b>
              </>
            )}
          </Say>
          <Lead>{words.alike.lead}</Lead>
        </>
      ) : found === undefined && left === undefined ? (
        <>
          <Say>
            {words.nothing.before}
            <b>{words.nothing.bold}</b>
          </Say>
          <Lead>{words.nothing.lead}</Lead>
        </>
      ) : (
        <>
          <Say>
            {words.foundOnly.before}
            <b>{words.foundOnly.bold(pairsOf((found ?? left)!.record, values))}</b>
          </Say>
          <Lead>{words.foundOnly.lead}</Lead>
        </>
      )}
      {comparison?.lacks.map((says) => (
        <p key={says} className="prose gap-small">
          {says}
        </p>
      ))}
    </Passage>
  )
}

/** "230 V between L and N" */
function pairsOf({ winding, joined }: LinksRecord, values: LinksOf['values']): string {
  const { outlets, units } = lookAtLinks(winding, joined, values)
  return sayList(outlets.map((pair) => `${sayVolts(pair, units)} between ${pair.from} and ${pair.to}`)) || '–'
}

function Boards({ found, left, values, links, catalogue }: LinksOf) {
  const { boards } = words
  const names = sourceNames(catalogue)
  const isOf = (record: LinksRecord) => {
    const pattern = patternOfRecord(links, record)
    return pattern && words.draw.is(pattern.name.toLowerCase(), sayOrigin(pattern.told, names))
  }
  return (
    <Passage title={boards.title} says={boards.says.map((line) => <p key={line}>{line}</p>)} className="wide">
      <div className="boards">
        {found && (
          <Board
            state={found}
            other={left}
            values={values}
            title={boards.found}
            word={boards.gone}
            is={isOf(found.record)}
          />
        )}
        {left && (
          <Board
            state={left}
            other={found}
            values={values}
            title={boards.left}
            word={boards.fresh}
            is={isOf(left.record)}
          />
        )}
      </div>
    </Passage>
  )
}

function Board({
  state: { record, entry },
  other,
  values,
  title,
  word,
  is,
}: {
  readonly state: State
  readonly other: State | undefined
  readonly values: LinksOf['values']
  readonly title: (day: string) => string
  readonly word: string
  /** Which pattern it is, and where that comes from. */
  readonly is: string | undefined
}) {
  const { winding, joined } = record
  const changed = other && { leads: changedLeads(record, other.record), word }
  const { photographs = [] } = entry.body
  return (
    <figure>
      <figcaption>
        <h3>{title(sayDate(entry.from))}</h3>
        <span className="fine">
          {photographs.length === 0 ? words.boards.noPicture : <Pictures of={photographs} />}
        </span>
      </figcaption>
      <DrawnLinks {...linkDrawing(winding, joined, changed === undefined ? {} : { changed })} />
      <DrawnLinks {...phasorDrawing(winding, joined, { values, longest: 80 })} />
      {is !== undefined && <p className="fine">{is}</p>}
    </figure>
  )
}
