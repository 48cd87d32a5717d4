/**
 * What joined leads give: volts and ohms, what may be drawn, currents that go round inside, and what is wrong.
 *
 * @module
 */

import type { LinksAnswer } from '../../proof/links/look-at-links.js'
import {
  sayAmps,
  sayLoad,
  sayLoop,
  sayOhms,
  sayPower,
  saySensed,
  sayVolts,
} from '../../proof/links/say-links.js'
import type { PairVolts } from '../../proof/links/solve-links.js'
import { Behind, Stop } from '../parts/index.js'
import { words } from '../words/links.js'
import { PlainRows } from './plain-rows.js'

export function LinksGives({ answer }: { readonly answer: LinksAnswer }) {
  const { outlets, everyPair, units, findings, capacities, loops } = answer
  const sensed = saySensed(answer)
  const stops = [...findings.filter(({ stops }) => stops), ...(sensed?.stops ? [sensed] : [])]
  const rest = [...findings.filter(({ stops }) => !stops), ...(sensed && !sensed.stops ? [sensed] : [])]
  const [most] = capacities
  const [first, ...more] = stops
  const { gives } = words
  const rowOf = (pair: PairVolts) => [
    `${pair.from} and ${pair.to}`,
    sayVolts(pair, units),
    sayOhms(pair, units),
  ]
  return (
    <div className="gap" aria-live="polite">
      {first && (
        <Stop title={first.says}>
          {more.map(({ says }) => (
            <p key={says}>{says}</p>
          ))}
        </Stop>
      )}
      {loops.length > 0 && (
        <>
          <h3 className="gap-small">{gives.inside}</h3>
          <ul className="small">
            {loops.map((loop) => (
              <li key={loop.coils.join()}>{sayLoop(loop, units)}</li>
            ))}
          </ul>
        </>
      )}
      {outlets.length > 0 && (
        <>
          <h3 className="gap-small">{gives.title}</h3>
          <PlainRows heads={gives.heads} rows={outlets.map(rowOf)} />
        </>
      )}
      {most && (
        <p className="small gap-small">
          {gives.carries(sayAmps(most.lineAmps, units), sayPower(most, units))}
        </p>
      )}
      {capacities.length > 1 && (
        <Behind name={gives.loads}>
          <PlainRows
            heads={gives.loadHeads}
            rows={capacities.map((one) => [
              sayLoad(one),
              sayAmps(one.lineAmps, units),
              sayPower(one, units),
              one.hottest.join(', '),
            ])}
          />
        </Behind>
      )}
      <Behind name={gives.everyPair}>
        <PlainRows heads={gives.heads} rows={everyPair.map(rowOf)} />
      </Behind>
      {rest.map(({ says }) => (
        <p key={says} className="small">
          {says}
        </p>
      ))}
    </div>
  )
}
