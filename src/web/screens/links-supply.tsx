/**
 * Which leads are joined for a supply, and all that hangs on going over to it.
 *
 * @module
 */

import { useMemo, useState } from 'react'
import type { Supply } from '../../catalogue/links-schema.js'
import { limitsOf } from '../../proof/limits.js'
import { linkDrawing } from '../../proof/links/drawing.js'
import { patternJoined, windingById, windingMarked } from '../../proof/links/patterns.js'
import { moveSupply } from '../../proof/links/supply-move.js'
import { waysOfLinking } from '../../proof/links/wired-for.js'
import { sayOrigin, sourceNames } from '../../proof/source-names.js'
import { DrawnLinks } from '../marks/link-drawing.js'
import { Behind, Passage } from '../parts/index.js'
import { words } from '../words/links.js'
import { Choice } from './links-fields.js'
import type { LinksOf } from './links-of.js'
import { PlainRows } from './plain-rows.js'

export function LinksSupply({ links: of }: { readonly links: LinksOf }) {
  const { supply: words_ } = words
  const { links, register, found, left, values, catalogue } = of
  const limits = useMemo(() => limitsOf(catalogue), [catalogue])
  const { volts, hertz, rpm, ratingKw } = register.setFacts
  const fits = links.supplies.find((one) => one.volts === volts?.[0] && one.hertz === hertz)
  const [wanted, setWanted] = useState('')
  const [now, setNow] = useState(fits?.id ?? '')
  const record = (left ?? found)?.record
  const leads = register.setFacts.leads
  const winding =
    record?.known ??
    links.windings.find((one) => one.coils.length * 2 === leads) ??
    windingById(links, links.windings[0]!.id)
  const marks = record?.marks
  const supply = links.supplies.find((one) => one.id === wanted)
  const from = links.supplies.find((one) => one.id === now)
  const made =
    values.emfV === undefined || hertz === undefined
      ? undefined
      : { emfV: values.emfV, hertz, amps: values.amps }
  const linkedFor = (one: Supply | undefined) =>
    one === undefined ? [] : waysOfLinking(links, { winding, supply: one, made, marks, limits })
  const ways = linkedFor(supply)
  const best = links.patterns.find(({ id }) => ways[0]?.fits !== 'not-known' && id === ways[0]?.pattern)
  const move =
    supply &&
    from &&
    moveSupply({ from, to: supply, rpm, kva: ratingKw, ways, waysNow: linkedFor(from), limits })
  const names = sourceNames(catalogue)
  const ofSupply = supply && catalogue.origins.get(`links.supplies.${supply.id}.volts`)
  const origins = [
    ...ways.map(({ pattern, name }) => [
      name,
      sayOrigin(links.patterns.find(({ id }) => id === pattern)!.told, names),
    ]),
    ...(ofSupply === undefined ? [] : [[supply!.name, sayOrigin(ofSupply, names)]]),
  ]
  const options = links.supplies.map((one) => [one.id, one.name] as const)
  return (
    <Passage title={words_.title} says={words_.says}>
      <div className="links-fields screen-only">
        <Choice
          name={words_.wanted}
          value={wanted}
          options={[['', words_.none], ...options]}
          onChange={setWanted}
        />
        <Choice name={words_.now} value={now} options={[['', words_.none], ...options]} onChange={setNow} />
      </div>
      {supply !== undefined && (
        <div className="gap" aria-live="polite">
          {ways.length === 0 ? (
            <p className="lead">{words_.noWay}</p>
          ) : (
            <PlainRows
              heads={words_.heads}
              rows={ways.map((way) => [
                way.name,
                `${way.joined}; ${way.lines}`,
                `${way.emfV.toFixed(0)} V`,
                words_.fits[way.fits],
              ])}
            />
          )}
          {ways.length > 0 && (
            <Behind name={words_.from}>
              <PlainRows heads={words_.fromHeads} rows={origins} />
            </Behind>
          )}
          {best === undefined && ways.length > 1 && <p className="small">{words_.whichOne}</p>}
          {best && (
            <div className="board-draw gap">
              <DrawnLinks
                {...linkDrawing(windingMarked(winding, marks), patternJoined(links, best, marks))}
              />
            </div>
          )}
          {move && from?.id !== supply.id && (
            <>
              <Behind name={words_.steps}>
                <PlainRows
                  heads={['', words_.steps]}
                  rows={move.steps.map(({ what, says }) => [what, says])}
                />
              </Behind>
              <Behind name={words_.aboard}>
                <PlainRows
                  heads={['', words_.aboard, '–']}
                  rows={move.aboard.map(({ load, verdict, says }) => [load, verdict, says])}
                />
              </Behind>
              <p className="prose gap-small">{move.instead}</p>
            </>
          )}
        </div>
      )}
    </Passage>
  )
}
