/**
 * Stop lines that stand open, each with what closes it; and those that were passed over, with the reason.
 *
 * @module
 */

import type { LineCause, OpenLine } from '../../proof/open-lines.js'
import { proofTestOf } from '../../proof/tests.js'
import { useSaid } from '../data/region.js'
import type { OfSet } from '../of-set.js'
import { Button, Link, Passage, Stop } from '../parts/index.js'
import { pathTo } from '../routes.js'
import { words } from '../words/proof.js'
import { lowerFirst, sayDate } from '../words/say.js'
import type { OfProof } from './of-proof.js'
import { PassOver } from './proof-pass-over.js'

export interface LinesProps {
  readonly of: OfSet
  readonly proof: OfProof
  readonly onChoose: (chosen: { readonly test: string; readonly part?: string | undefined }) => void
}

export function OpenLines({ of, proof, onChoose }: LinesProps) {
  const { lines } = proof.owed
  if (lines.length === 0) return null
  return (
    <Passage title={words.stops} says={words.stopsSays} className="stops">
      {lines
        .filter(({ passedOver }) => passedOver === undefined)
        .map((line) => (
          <OneLine key={line.line} of={of} line={line} proof={proof} onChoose={onChoose} />
        ))}
      {lines.map(({ line, hazard, why, passedOver }) =>
        passedOver === undefined ? null : <PassedOver key={line} hazard={hazard} why={why} {...passedOver} />,
      )}
    </Passage>
  )
}

interface PassedOverProps {
  readonly hazard: string
  readonly why: string
  readonly date: string
  readonly because: string
}

function PassedOver({ hazard, why, date, because }: PassedOverProps) {
  const said = useSaid()
  return (
    <p className="gap">
      <b>
        {words.is['passed over']}, {sayDate(date)}: {because}
      </b>{' '}
      <span className="small">
        {said(hazard)}: {said(lowerFirst(why))}
      </span>
    </p>
  )
}

function OneLine({ of, line, proof, onChoose }: LinesProps & { readonly line: OpenLine }) {
  const said = useSaid()
  const { hazard, why, act, clearWhen, causes, never, licensed } = line
  const tested = causes.find(({ test }) => test !== undefined)
  const places = [...new Set(causes.map(({ by }) => by))].flatMap((by) => elsewhere[by] ?? [])
  const made = proof.owed.results.find(({ entry }) => entry === tested?.entry)
  const test = made?.test ?? tested?.test
  const acts = test !== undefined && (
    <Button onClick={() => onChoose({ test, part: tested?.part })}>
      {made === undefined ? words.make : words.again}
      <span className="unseen">{words.toTest(said(proofTestOf(test)?.name ?? test))}</span>
    </Button>
  )
  return (
    <Stop title={`${hazard}: ${lowerFirst(why)}`} acts={acts}>
      <p>{said(act)}</p>
      <p className="small">
        {words.clearWhen}
        {said(clearWhen.join('; '))}. {licensed && said(words.licensed)} {never && words.never}
      </p>
      {places.map(({ page, name }) => (
        <p key={page} className="small screen-only">
          <Link to={pathTo({ page, ...of })}>{name}</Link>
        </p>
      ))}
      {!never && !proof.log.readOnly && <PassOver of={of} about={line.line} name={hazard} />}
    </Stop>
  )
}

/** Where what no test closes is put right. */
const elsewhere: Partial<
  Record<LineCause['by'], { readonly page: 'faults' | 'links' | 'set'; readonly name: string }>
> = {
  case: { page: 'faults', name: words.toCase },
  links: { page: 'links', name: words.toLinks },
  danger: { page: 'set', name: words.toSet },
}
