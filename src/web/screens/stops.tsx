/**
 * Conditions under which the set must not be run: before everything else on a page that leads to work.
 *
 * @module
 */

import { openStops } from '../../alternatives/open-stops.js'
import { Passage, Stop } from '../parts/index.js'
import { words } from '../words/alternatives.js'
import type { Basis } from '../work/messages.js'

export function StopLines({ basis }: { readonly basis: Basis }) {
  const stops = openStops(basis.register, basis.model)
  if (stops.length === 0) return null
  return (
    <Passage title={words.stops.title} className="stops">
      {stops.map(({ why }) => (
        <Stop key={why} title={why}>
          {words.stops.closes}
        </Stop>
      ))}
    </Passage>
  )
}
