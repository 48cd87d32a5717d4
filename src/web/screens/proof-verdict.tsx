/**
 * The verdict of a test: what is asked first, the sentence with figure and limit, and where each limit comes from.
 *
 * @module
 */

import { sayFigure } from '../../proof/say-figure.js'
import type { Ask, Judgement, ProofTest } from '../../proof/test-type.js'
import { useSaid } from '../data/region.js'
import { Asked, Behind, Button, Lead, Passage, Say, Stop } from '../parts/index.js'
import { words } from '../words/proof.js'

const { judged: said } = words

export interface VerdictProps {
  readonly test: ProofTest
  readonly judgement: Judgement
  readonly onSure: (code: string) => void
}

export function Verdict({ test, judgement, onSure }: VerdictProps) {
  const inRegion = useSaid()
  const { verdict, band, says, worked, limits, next, asks } = judgement
  const name = test.bands.find(({ id }) => id === band)?.name
  return (
    <Passage title={said.title} says={said.says}>
      <div aria-live="polite">
        {asks.map((ask) => (
          <OneAsk key={`${ask.code} ${ask.field}`} ask={ask} onSure={onSure} />
        ))}
        {asks.length === 0 && verdict === 'fail' && (
          <Stop title={says}>
            <p>{name !== undefined && `${said.fail}: ${inRegion(name)}.`}</p>
          </Stop>
        )}
        {asks.length === 0 && verdict !== 'fail' && (
          <>
            <Say>
              <b>{said[verdict]}</b>
              {name === undefined ? '' : `: ${inRegion(name)}`}
            </Say>
            <Lead>{inRegion(says)}</Lead>
          </>
        )}
        {asks.length === 0 && (
          <p className="gap-small">
            <b>{said.next}</b>
            {inRegion(next)}
          </p>
        )}
      </div>
      {worked.length > 0 && (
        <>
          <h3 className="proof-head">{said.worked}</h3>
          <dl className="proof-worked">
            {worked.map((one) => (
              <div key={one.name}>
                <dt>{inRegion(one.name)}</dt>
                <dd>{sayFigure(one.value, one.unit)}</dd>
              </div>
            ))}
          </dl>
        </>
      )}
      {limits.length > 0 && (
        <Behind name={said.limits}>
          <ul className="sentences fine">
            {limits.map((limit) => (
              <li key={limit.id}>
                {inRegion(said.limit({ ...limit, value: sayFigure(limit.value, limit.unit) }))}
              </li>
            ))}
          </ul>
        </Behind>
      )}
    </Passage>
  )
}

function OneAsk({ ask, onSure }: { readonly ask: Ask; readonly onSure: (code: string) => void }) {
  return (
    <Asked
      title={ask.question}
      acts={ask.confirmable && <Button onClick={() => onSure(ask.code)}>{said.isSo}</Button>}
    />
  )
}
