/**
 * Long work: how far it is, and a stop. What is on the screen stays usable.
 *
 * @module
 */

import { shell } from '../words/shell.js'
import { PlainButton } from './button.js'

export interface RefiningProps {
  /** From 0 to 1. */
  readonly share: number
  readonly state: 'refining' | 'stopped' | 'done'
  readonly onStop: () => void
  readonly onGoOn: () => void
  readonly word?: string
}

export function Refining({ share, state, onStop, onGoOn, word }: RefiningProps) {
  const { refining } = shell
  if (state === 'done') return null
  return (
    <div className="refining fine">
      <span
        className="hair"
        role="progressbar"
        aria-label={refining.word}
        aria-valuemin={0}
        aria-valuemax={100}
        aria-valuenow={Math.round(100 * share)}
      >
        <i style={{ width: `${Math.round(100 * share)}%` }} />
      </span>
      <span>
        {state === 'refining' ? (word ?? refining.word) : refining.stopped}{' '}
        {state === 'refining' ? (
          <PlainButton onClick={onStop}>{refining.stop}</PlainButton>
        ) : (
          <PlainButton onClick={onGoOn}>{refining.goOn}</PlainButton>
        )}
      </span>
    </div>
  )
}
