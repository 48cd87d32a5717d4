/**
 * A boat file brought in: whole or not at all, with every problem told.
 *
 * @module
 */

import { useId, useRef, useState } from 'react'
import type { Problem } from '../../logbook/problems.js'
import type { BoatFileType, ImportAnswer, Refusal } from '../../server/http-types.js'
import { refreshBoats, refreshLog } from '../data/log.js'
import { tellOtherTabs } from '../data/tabs.js'
import { Passage, PlainButton } from '../parts/index.js'
import { boats } from '../words/boats.js'
import { logbook } from '../words/logbook.js'
import { plural } from '../words/say.js'
import { saidProblem } from './problems.js'

const words = boats.bring
const type: BoatFileType = 'application/x-gensettle'

type State =
  | { readonly is: 'idle' }
  | { readonly is: 'reading'; readonly share: number }
  | { readonly is: 'done'; readonly answer: ImportAnswer }
  | { readonly is: 'stopped' }
  | { readonly is: 'refused'; readonly problems: readonly Problem[] }

export function BoatFileIn() {
  const id = useId()
  const [state, setState] = useState<State>({ is: 'idle' })
  const sending = useRef<XMLHttpRequest>(undefined)
  const bring = async (file: File | undefined) => {
    if (file === undefined) return
    setState({ is: 'reading', share: 0 })
    const next = await send(file, {
      hold: (request) => {
        sending.current = request
      },
      onShare: (share) => setState({ is: 'reading', share }),
    })
    setState(next)
    if (next.is !== 'done') return
    await refreshBoats()
    await refreshLog(next.answer.boat)
    tellOtherTabs({ news: 'log', boat: next.answer.boat })
  }
  return (
    <Passage title={words.title} says={words.says}>
      <div className="entry-field">
        <label htmlFor={id}>{words.choose}</label>
        <input
          id={id}
          type="file"
          className="file"
          accept=".gensettle"
          onChange={({ target }) => {
            void bring(target.files?.[0])
            target.value = ''
          }}
        />
      </div>
      <div aria-live="polite">
        {state.is === 'reading' && (
          <p className="small">
            {words.reading(`${Math.round(100 * state.share)} in 100`)}{' '}
            <PlainButton onClick={() => sending.current?.abort()}>{words.stop}</PlainButton>
          </p>
        )}
        {state.is === 'stopped' && <p className="small">{words.stopped}</p>}
        {state.is === 'done' && <Done answer={state.answer} />}
        {state.is === 'refused' && <Wrong problems={state.problems} />}
      </div>
    </Passage>
  )
}

function Done({ answer: { boat, added, alreadyHeld, photographs } }: { readonly answer: ImportAnswer }) {
  const count = (number: number) => plural(number, ...logbook.entry)
  return (
    <p className="written">
      {words.done(boat, count(added), count(alreadyHeld), logbook.pictures(photographs))}
    </p>
  )
}

function Wrong({ problems }: { readonly problems: readonly Problem[] }) {
  return (
    <>
      <p className="problem">{words.wrong(problems.length)}</p>
      <ul className="small">
        {problems.map((problem) => (
          <li key={`${problem.code} ${problem.path} ${problem.found}`}>{saidProblem(problem)}</li>
        ))}
      </ul>
    </>
  )
}

interface Sending {
  /** Handed the request, so that it can be stopped. */
  readonly hold: (request: XMLHttpRequest) => void
  /** How much of the file is sent, 0 to 1. */
  readonly onShare: (share: number) => void
}

/** Sends the file. Not by `fetch`, which does not tell how far it is. */
function send(file: File, { hold, onShare }: Sending): Promise<State> {
  return new Promise((resolve) => {
    const request = new XMLHttpRequest()
    hold(request)
    request.open('POST', '/api/boat-file')
    request.setRequestHeader('Content-Type', type)
    request.responseType = 'json'
    request.upload.onprogress = ({ loaded, total }) => onShare(total > 0 ? loaded / total : 0)
    request.onabort = () => resolve({ is: 'stopped' })
    request.onerror = () => resolve({ is: 'refused', problems: [noAnswer] })
    request.onload = () => {
      if (request.status === 200) return resolve({ is: 'done', answer: request.response as ImportAnswer })
      const problems = (request.response as Refusal | null)?.problems
      resolve({ is: 'refused', problems: problems ?? [noAnswer] })
    }
    request.send(file)
  })
}

const noAnswer: Problem = {
  code: 'unreachable',
  path: '',
  found: 'no answer',
  allowed: 'the program running on this machine',
}
