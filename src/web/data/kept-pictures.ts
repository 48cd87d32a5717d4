/**
 * Pictures chosen for an entry that is not written yet, kept in this browser with what is typed: they survive a reload and a
 * crash, and two tabs show the same.
 *
 * @module
 */

import { useCallback } from 'react'
import { chosenPictures, keepChosen } from './browser-store.js'
import { tellNotKept } from './kept-text.js'
import { type Live, live, useLive } from './value.js'

const known = new Map<string, Live<readonly File[]>>()
const none: readonly File[] = []
const channel = new BroadcastChannel('gensettle-pictures')

channel.onmessage = ({ data }: MessageEvent<string>) => {
  const of = known.get(data)
  if (of !== undefined) void read(data, of)
}

/** The pictures chosen under a name; setting none forgets them. */
export function useKeptPictures(name: string): readonly [readonly File[], (files: readonly File[]) => void] {
  const of = keptUnder(name)
  const files = useLive(of)
  const set = useCallback(
    (next: readonly File[]) => {
      of.set(next)
      void keepChosen(name, next).then(() => channel.postMessage(name), tellNotKept)
    },
    [of, name],
  )
  return [files, set]
}

function keptUnder(name: string): Live<readonly File[]> {
  const before = known.get(name)
  if (before !== undefined) return before
  const made = live(none)
  known.set(name, made)
  void read(name, made)
  return made
}

async function read(name: string, of: Live<readonly File[]>): Promise<void> {
  of.set(await chosenPictures(name).catch(() => none))
}
