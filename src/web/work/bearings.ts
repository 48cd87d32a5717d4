/**
 * What bears on an answer, as a screen uses it: asked for when the answer stands, and anew when a price was moved.
 *
 * @module
 */

import * as Comlink from 'comlink'
import { startTransition, useEffect, useMemo, useState } from 'react'
import type { PriceChange } from '../../alternatives/reweigh.js'
import { useLive } from '../data/value.js'
import type { Answer } from './answers.js'
import { theConductor } from './begin.js'
import type { BearingState } from './messages.js'

/** A price that was moved rests for so long before what bears on it is worked out anew. [ms] */
const settlesMs = 600

export interface Bearing extends BearingState {
  /** The prices were moved since: what is shown is of those before, and follows. */
  readonly following: boolean
  readonly stop: () => void
  readonly goOn: () => void
}

export function useBearing(answer: Answer, change: PriceChange): Bearing {
  const { stage } = useLive(answer.progress)
  const stands = stage === 'done' && answer.view !== undefined && !answer.following
  const { key } = answer
  const prices = JSON.stringify(change)
  const asked = stands ? `${key} ${prices}` : ''
  const [again, setAgain] = useState(0)
  const acts = useMemo(
    () => ({
      stop: () => void theConductor().stopBearing(),
      goOn: () => setAgain((times) => times + 1),
    }),
    [],
  )
  const [heard, setHeard] = useState<{ readonly of: string; readonly state: BearingState }>({
    of: '',
    state: { stage: 'waiting' },
  })
  // biome-ignore lint/correctness/useExhaustiveDependencies: what is asked says all that it hangs on
  useEffect(() => {
    if (asked === '') return
    let gone = false
    const tell = Comlink.proxy((state: BearingState) => {
      if (!gone) startTransition(() => setHeard({ of: asked, state }))
    })
    const ask = () => void theConductor().bearing(key, JSON.parse(prices), tell)
    const timer = setTimeout(ask, heard.of === '' ? 0 : settlesMs)
    return () => {
      gone = true
      clearTimeout(timer)
    }
  }, [asked, again])
  const sameAnswer = heard.of.startsWith(`${key} `)
  if (!sameAnswer) return { stage: 'waiting', following: false, ...acts }
  return { ...heard.state, following: heard.of !== asked, ...acts }
}
