/**
 * Conditions under which the set must not be run: before everything else on a page that leads to work, each with the entry
 * that closes it.
 *
 * @module
 */

import { useState } from 'react'
import { type OpenStop, openStops } from '../../alternatives/open-stops.js'
import { type Boat, useCatalogue } from '../data/boat.js'
import { boatFactsOf } from '../data/facts.js'
import { catalogueInWords } from '../data/region.js'
import { EntryForm, type Purpose } from '../entry/entry-form.js'
import { withUsualReading } from '../entry/usual-reading.js'
import { Button, Passage, Stop } from '../parts/index.js'
import { words } from '../words/alternatives.js'
import type { Basis } from '../work/messages.js'

const { stops: said } = words

export interface StopLinesProps {
  readonly basis: Basis
  readonly log: Boat
}

export function StopLines({ basis, log }: StopLinesProps) {
  const stops = [...openStops(basis.register, basis.model), ...basis.failedTests]
  if (stops.length === 0) return null
  return (
    <Passage title={said.title} className="stops">
      {stops.map((stop) => (
        <OneStop key={`${stop.why} ${stop.test ?? ''}`} stop={stop} basis={basis} log={log} />
      ))}
    </Passage>
  )
}

function OneStop({ stop, basis, log }: StopLinesProps & { readonly stop: OpenStop }) {
  const [writing, setWriting] = useState(false)
  const [written, setWritten] = useState(false)
  const { currency = 'USD', words: region, units = {} } = boatFactsOf(log.entries)
  const catalogue = catalogueInWords(useCatalogue(), region)
  const spoken = Object.values(units)
  const purpose = closing(stop, basis, spoken)
  const act = (
    <Button aria-expanded={writing} onClick={() => setWriting(!writing)}>
      {writing ? said.putAway : purpose.kind === 'reading' ? said.enterReading : said.enterSafe}
    </Button>
  )
  return (
    <Stop title={stop.why} acts={log.readOnly ? undefined : act}>
      <p>{said.closes}</p>
      {writing && (
        <EntryForm
          boat={log.id}
          set={basis.register.set}
          purpose={purpose}
          currency={currency}
          catalogue={catalogue}
          units={spoken}
          onWritten={() => {
            setWriting(false)
            setWritten(true)
          }}
        />
      )}
      <p className="small" aria-live="polite">
        {written && said.written}
      </p>
    </Stop>
  )
}

/** The entry that closes a stop, as far as it can be filled in beforehand. */
function closing(
  { parts, mode, test }: OpenStop,
  { register }: Basis,
  units: readonly (string | undefined)[],
): Extract<Purpose, { is: 'asked' }> {
  const [part = ''] = parts
  const danger = register.openDangers.find((one) => one.part === part && one.mode === mode)
  if (danger !== undefined && test === undefined) {
    return {
      is: 'asked',
      name: `safe-${danger.entry}-${danger.danger}`,
      kind: 'danger-safe',
      values: { danger: danger.danger, 'at.part': part },
    }
  }
  const of = parts.length === 1 ? { part } : {}
  return {
    is: 'asked',
    name: test === undefined ? `reading-${parts.join('-')}` : `test-${test}`,
    kind: 'reading',
    values: withUsualReading({}, { test: test ?? insulationTest, ...of }, units),
  }
}

/** The test whose reading a winding is judged by. */
const insulationTest = 'insulation-test'
