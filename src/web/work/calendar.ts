/**
 * The calendar of a job for a page: played in a worker of its own, anew whenever what it rests on changes.
 *
 * @module
 */

import * as Comlink from 'comlink'
import { useEffect, useState } from 'react'
import type { CalendarQuestion, CalendarResult } from '../../job/calendar.js'
import type { CalendarPlayer } from './calendar.worker.js'

/** The answer to the latest question that came to one; undefined until there is any. */
export function useCalendar(question: CalendarQuestion | undefined): CalendarResult | 'failed' | undefined {
  const [answer, setAnswer] = useState<CalendarResult | 'failed'>()
  useEffect(() => {
    if (question === undefined) return
    let isWanted = true
    const worker = new Worker(new URL('./calendar.worker.ts', import.meta.url), { type: 'module' })
    const fail = () => isWanted && setAnswer('failed')
    worker.onerror = fail
    void Comlink.wrap<CalendarPlayer>(worker)
      .play(question)
      .then((found) => isWanted && setAnswer(found))
      .catch(fail)
      .finally(() => worker.terminate())
    return () => {
      isWanted = false
      worker.terminate()
    }
  }, [question])
  return answer
}
