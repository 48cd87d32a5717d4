/**
 * What of a boat's entries is not sent yet, and why.
 *
 * @module
 */

import { tryNow, useReach } from '../data/connection.js'
import { outgoing } from '../data/outbox.js'
import { useLive } from '../data/value.js'
import { PlainButton } from '../parts/index.js'
import { logbook } from '../words/logbook.js'

export function SendingState({ boat }: { readonly boat: string }) {
  const waiting = useLive(outgoing).filter((item) => item.boat === boat && item.refused === undefined)
  const reach = useReach()
  const away = reach === 'unreachable'
  return (
    <p className="fine" aria-live="polite">
      {waiting.length > 0 && `${logbook.waitingSay(waiting.length)} `}
      {away && (
        <>
          {logbook.unreachable} <PlainButton onClick={tryNow}>{logbook.tryNow}</PlainButton>
        </>
      )}
    </p>
  )
}
