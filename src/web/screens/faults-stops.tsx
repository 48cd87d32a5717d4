/**
 * Stop lines of a case: asked before anything else, and acting in words while they are open.
 *
 * @module
 */

import { useId, useState } from 'react'
import type { StopLine } from '../../catalogue/stop-line-schema.js'
import type { LineState } from '../../faults/stop-lines.js'
import { handOverNames } from '../../faults/words.js'
import { Button, Lead, Link, Passage, Stop } from '../parts/index.js'
import { pathTo } from '../routes.js'
import { words } from '../words/faults.js'
import { BackButton } from './faults-back.js'
import type { OfCase } from './of-case.js'

const { first: ask, stops } = words

/** One question at a time; the others may be said no to together. */
export function FirstQuestion(of: OfCase) {
  const { diagnosis, own, take, put, busy } = of
  const [line, ...others] = diagnosis.first
  if (line === undefined) return null
  const none = () => {
    const lines = diagnosis.first.map(({ id }) => ({ line: id, is: 'not-so' as const }))
    put({ ...own.body, lines: [...own.body.lines, ...lines] })
  }
  return (
    <Passage title={ask.title} says={ask.says(diagnosis.first.length)} className="first-question">
      <Stop
        title={line.asked ?? line.when}
        acts={
          <>
            <Button disabled={busy} onClick={() => take({ line: line.id, is: 'not-so' })}>
              {ask.no}
            </Button>
            <Button disabled={busy} onClick={() => take({ line: line.id, is: 'open' })}>
              {ask.yes}
            </Button>
            <BackButton {...of} />
          </>
        }
      />
      {others.length > 0 && (
        <>
          <p className="small gap">{ask.also}</p>
          <ul className="also small">
            {others.map(({ id, asked }) => (
              <li key={id}>{asked}</li>
            ))}
          </ul>
          <div className="acts">
            <Button look="light" disabled={busy} onClick={none}>
              {ask.noneOfThese}
            </Button>
          </div>
        </>
      )}
    </Passage>
  )
}

/** What is open, with what to do and how it is cleared; and what was overruled, for ever in sight. */
export function OpenStops(of: OfCase) {
  const open = of.diagnosis.lines.filter(({ is }) => is === 'open')
  const overruled = of.diagnosis.lines.filter(({ is }) => is === 'overruled')
  if (open.length + overruled.length === 0) return null
  return (
    <Passage title={stops.title} says={stops.says}>
      {open.map((state) => (
        <OpenStop key={state.line.id} of={of} state={state} />
      ))}
      {overruled.map(({ line, because }) => (
        <p key={line.id} className="gap">
          <b>{stops.overruled(line.hazard, because ?? '')}</b>
        </p>
      ))}
    </Passage>
  )
}

function OpenStop({ of, state }: { readonly of: OfCase; readonly state: LineState }) {
  const { line, inLog } = state
  if (inLog.length === 0) return <StopOfCase of={of} line={line} />
  return (
    <Stop title={line.hazard}>
      <Lead>{line.act}</Lead>
      {line.handOver !== undefined && <p className="gap-small">{stops.who(handOverNames[line.handOver])}</p>}
      <p className="gap-small">{stops.inLog}</p>
      <ul className="sentences small">
        {[...new Set(inLog.map(({ why }) => why))].map((why) => (
          <li key={why}>{of.say(why)}</li>
        ))}
      </ul>
      <p className="gap-small screen-only">
        <Link to={pathTo({ page: 'proof', boat: of.boat, set: of.set })}>{stops.toProof}</Link>
      </p>
    </Stop>
  )
}

/** Opened by the answers of the case, and cleared or overruled by one. */
function StopOfCase({ of, line }: { readonly of: OfCase; readonly line: StopLine }) {
  const [ticked, setTicked] = useState<readonly string[]>([])
  const [how, setHow] = useState('')
  const id = useId()
  const all = line.clearWhen.every((one) => ticked.includes(one))
  const because = how.trim() === '' ? line.clearWhen.join('; ') : how.trim()
  return (
    <Stop
      title={line.hazard}
      acts={
        <>
          <Button
            disabled={!all || of.busy}
            onClick={() => of.take({ line: line.id, is: 'cleared', because: because.slice(0, 1000) })}
          >
            {stops.cleared}
          </Button>
          {!line.neverPassedOver && (
            <Button
              look="light"
              disabled={how.trim() === '' || of.busy}
              onClick={() => of.take({ line: line.id, is: 'overruled', because: how.trim() })}
            >
              {stops.overrule}
            </Button>
          )}
        </>
      }
    >
      <Lead>{line.act}</Lead>
      {line.handOver !== undefined && <p className="gap-small">{stops.who(handOverNames[line.handOver])}</p>}
      <fieldset className="entry-field gap screen-only">
        <legend>{stops.tick}</legend>
        <div className="picks">
          {line.clearWhen.map((one) => (
            <label key={one}>
              <input
                type="checkbox"
                checked={ticked.includes(one)}
                onChange={({ target }) =>
                  setTicked(target.checked ? [...ticked, one] : ticked.filter((other) => other !== one))
                }
              />
              {one}
            </label>
          ))}
        </div>
      </fieldset>
      <ul className="print-only">
        {line.clearWhen.map((one) => (
          <li key={one}>☐ {one}</li>
        ))}
      </ul>
      <div className="entry-field screen-only">
        <label htmlFor={id}>
          {line.neverPassedOver ? stops.how : `${stops.how}; ${lower(stops.because)}`}
        </label>
        <input
          id={id}
          className="input wide"
          value={how}
          maxLength={1000}
          onChange={({ target }) => setHow(target.value)}
        />
      </div>
    </Stop>
  )
}

function lower(text: string): string {
  return `or, to overrule it, ${text.charAt(0).toLowerCase()}${text.slice(1)}`
}
