/**
 * Stop lines before a step: it opens when each of them is answered, and for the day.
 *
 * @module
 */

import type { ReactNode } from 'react'
import type { StopLine } from '../../catalogue/stop-line-schema.js'
import { confirmWords } from '../../faults/stop-lines.js'
import { useKept } from '../data/kept-text.js'
import { useSaid } from '../data/region.js'
import { Tag } from '../parts/index.js'
import { words } from '../words/job-apart.js'
import { shell } from '../words/shell.js'

/**
 * What is behind stop lines, once they are answered: it is handed those that were, to be written down with the step.
 *
 * @param slot under which the ticks are kept; another one for each job and day.
 */
export function BehindLines({
  lines,
  slot,
  children,
}: {
  readonly lines: readonly StopLine[]
  readonly slot: string
  readonly children: (cleared: readonly string[]) => ReactNode
}) {
  const said = useSaid()
  const [ticked, setTicked] = useKept<readonly string[]>(slot, [])
  const keyOf = (line: StopLine, at: number) => `${line.id} ${at}`
  const open = lines.filter((line) => confirmWords(line).some((_, at) => !ticked.includes(keyOf(line, at))))
  const cleared = lines.map(({ id }) => id)
  return (
    <>
      {lines.map((line) => (
        <LineOrTicks key={line.id} line={line} isOpen={open.includes(line)}>
          <ul className="apart-ticks">
            {confirmWords(line).map((word, at) => {
              const key = keyOf(line, at)
              const on = ticked.includes(key)
              return (
                <li key={key}>
                  <label>
                    <input
                      type="checkbox"
                      checked={on}
                      onChange={() => setTicked(on ? ticked.filter((one) => one !== key) : [...ticked, key])}
                    />
                    {said(word)}
                  </label>
                </li>
              )
            })}
          </ul>
        </LineOrTicks>
      ))}
      {open.length === 0 ? children(cleared) : <p className="prose fine">{words.stopSays}</p>}
    </>
  )
}

/** A stop while anything of it is unanswered; its ticks alone when it is met. They stay where they are, and so does the focus. */
function LineOrTicks({
  line,
  isOpen,
  children,
}: {
  readonly line: StopLine
  readonly isOpen: boolean
  readonly children: ReactNode
}) {
  const said = useSaid()
  return (
    <div className={isOpen ? 'stop' : 'apart-met'}>
      {isOpen && <Tag look="solid">{shell.stop}</Tag>}
      <h3>{said(isOpen ? words.stop(line.hazard) : line.hazard)}</h3>
      {isOpen && <p>{said(`${line.when} ${line.act}`)}</p>}
      {children}
    </div>
  )
}
