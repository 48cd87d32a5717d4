/**
 * What is shown to a browser that was not let in: how to come in, and nothing of any log.
 *
 * @module
 */

import { type ReactNode, useEffect } from 'react'
import { tryNow, useReach } from '../data/connection.js'
import { Button, Lead, Passage, Say } from '../parts/index.js'
import { boats } from '../words/boats.js'
import { shell } from '../words/shell.js'

const words = boats.notLetIn

export function Gate({ children }: { readonly children: ReactNode }) {
  const shut = useReach() === 'not-let-in'
  useEffect(() => {
    if (shut) document.title = `${words.title} · ${shell.program}`
  }, [shut])
  if (!shut) return children
  return (
    <div className="sheet">
      <main>
        <Passage title={words.title} says={words.why} first>
          <Say>{words.say}</Say>
          <Lead>{words.lead}</Lead>
          <div className="acts">
            <Button onClick={tryNow}>{words.again}</Button>
          </div>
        </Passage>
      </main>
    </div>
  )
}
