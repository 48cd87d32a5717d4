/**
 * A page that has no figures yet, and one that will have none.
 *
 * @module
 */

import type { ReactNode } from 'react'
import { Button } from './button.js'
import { Lead, Passage, Say } from './passage.js'

export interface StateWords {
  readonly say: string
  readonly lead: string
}

/** No figure yet. */
export function Preparing({
  title,
  words,
  margin,
}: {
  readonly title: string
  readonly words: StateWords
  readonly margin?: ReactNode
}) {
  return (
    <Passage title={title} first says={margin}>
      <div aria-live="polite">
        <Say>{words.say}</Say>
        <Lead>{words.lead}</Lead>
      </div>
    </Passage>
  )
}

/** The reckoning failed: what the program said of it, and trying again where that can help. */
export function Failed({
  title,
  words,
  problem,
  again,
}: {
  readonly title: string
  readonly words: StateWords
  readonly problem: string | undefined
  readonly again?: { readonly says: string; readonly act: () => void }
}) {
  return (
    <Passage title={title} first>
      <Say>{words.say}</Say>
      <Lead>{words.lead}</Lead>
      <p className="small gap-small">{problem}</p>
      {again && (
        <div className="acts">
          <Button onClick={again.act}>{again.says}</Button>
        </div>
      )}
    </Passage>
  )
}
