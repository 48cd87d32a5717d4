/**
 * Conditions under which the set must not be run: before everything else on a page that leads to work, each with the entry
 * that closes it.
 *
 * @module
 */

import { lazy, Suspense, useState } from 'react'
import type { Basis } from '../../alternatives/figures.js'
import type { OpenStop } from '../../alternatives/open-stops.js'
import { type Boat, useCatalogue } from '../data/boat.js'
import { boatFactsOf } from '../data/facts.js'
import { catalogueInWords, useSaid } from '../data/region.js'
import type { Purpose } from '../entry/entry-form.js'
import { withUsualReading } from '../entry/usual-reading.js'
import { Button, Link, Passage, Stop } from '../parts/index.js'
import { pathTo } from '../routes.js'
import { words } from '../words/alternatives.js'
import { sayDate } from '../words/say.js'

const { stops: said } = words

export interface StopLinesProps {
  readonly basis: Basis
  readonly log: Boat
}

export function StopLines({ basis, log }: StopLinesProps) {
  const { stops } = basis
  if (stops.length === 0) return null
  return (
    <Passage title={said.title} className="stops">
      {stops
        .filter(({ passedOver }) => passedOver === undefined)
        .map((stop) => (
          <OneStop key={keyOf(stop)} stop={stop} basis={basis} log={log} />
        ))}
      {stops.map((stop) =>
        stop.passedOver === undefined ? null : (
          <PassedOver key={keyOf(stop)} why={stop.why} {...stop.passedOver} />
        ),
      )}
    </Passage>
  )
}

function keyOf({ line, why, mode = '', test = '' }: OpenStop): string {
  return `${line} ${why} ${mode} ${test}`
}

/** Lifted by a reason, which stays in sight for as long as the line would stand open. */
function PassedOver({ why, because, date }: { readonly why: string } & NonNullable<OpenStop['passedOver']>) {
  const inRegion = useSaid()
  return (
    <p className="small gap">
      <b>{said.passedOver}:</b> {inRegion(why)} {said.reason(sayDate(date))}: {because}
    </p>
  )
}

function OneStop({ stop, basis, log }: StopLinesProps & { readonly stop: OpenStop }) {
  if (stop.by === 'danger' || stop.by === 'winding') {
    return <ClosedByEntry stop={stop} basis={basis} log={log} />
  }
  const [page, name] = elsewhere[stop.by]
  return (
    <Stop title={stop.why}>
      <p>
        {said.closes} <Link to={pathTo({ page, boat: log.id, set: basis.register.set })}>{name}</Link>
      </p>
    </Stop>
  )
}

/** A live test is not begun on a form that shows none of its steps; leads and cases have rooms of their own. */
const elsewhere = {
  test: ['proof', said.toTests],
  links: ['links', said.toLinks],
  case: ['faults', said.toCase],
} as const

const EntryForm = lazy(async () => ({ default: (await import('../entry/entry-form.js')).EntryForm }))

/** Closed by one entry, which is written here. */
function ClosedByEntry({ stop, basis, log }: StopLinesProps & { readonly stop: OpenStop }) {
  const [writing, setWriting] = useState(false)
  const [written, setWritten] = useState(false)
  const { currency = 'USD', words: region, units = {} } = boatFactsOf(log.entries)
  const catalogue = catalogueInWords(useCatalogue(), region)
  const spoken = Object.values(units)
  const purpose = closing(stop, spoken)
  const act = (
    <Button aria-expanded={writing} onClick={() => setWriting(!writing)}>
      {writing ? said.putAway : purpose.kind === 'reading' ? said.enterReading : said.enterSafe}
    </Button>
  )
  return (
    <Stop title={stop.why} acts={log.readOnly ? undefined : act}>
      <p>{said.closes}</p>
      {writing && (
        <Suspense>
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
        </Suspense>
      )}
      <p className="small" aria-live="polite">
        {written && said.written}
      </p>
    </Stop>
  )
}

/** The entry that closes a stop, as far as it can be filled in beforehand. */
function closing(
  { parts, danger, mode, test }: OpenStop,
  units: readonly (string | undefined)[],
): Extract<Purpose, { is: 'asked' }> {
  if (danger !== undefined) {
    const [part = ''] = parts
    return {
      is: 'asked',
      name: `safe-${danger}-${part}-${mode}`,
      kind: 'danger-safe',
      values: { danger, 'at.part': part },
    }
  }
  const [part] = parts
  const of = parts.length === 1 && part !== undefined ? { part } : {}
  return {
    is: 'asked',
    name: `test-${test}-${parts.join('-')}`,
    kind: 'reading',
    values: withUsualReading({}, { test: test ?? insulationTest, ...of }, units),
  }
}

/** The test whose reading a winding is judged by. */
const insulationTest = 'insulation-test'
