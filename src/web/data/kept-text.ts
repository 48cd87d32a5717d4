/**
 * What is being typed, kept in this browser from the first letter: it survives a reload, a crash and a stop of the server, and
 * two tabs show the same.
 *
 * @module
 */

import { useCallback } from 'react'
import { type Live, live, useLive } from './value.js'

const prefix = 'gensettle.typed.'
const known = new Map<string, Live<unknown>>()

/** Whether the browser keeps what is typed; it may be told not to, or be full. */
const keeps: Live<boolean> = live(true)

export function useKeeps(): boolean {
  return useLive(keeps)
}

/** Tells that something typed or chosen could not be kept. */
export function tellNotKept(): void {
  keeps.set(false)
}

/** A value of a form that is kept under a name; setting it to undefined forgets it. */
export function useKept<T>(name: string, first: T): readonly [T, (next: T | undefined) => void] {
  const of = keptUnder(name) as Live<T | undefined>
  const value = useLive(of)
  const set = useCallback(
    (next: T | undefined) => {
      of.set(next)
      store(name, next)
    },
    [of, name],
  )
  return [value ?? first, set]
}

function keptUnder(name: string): Live<unknown> {
  const before = known.get(name)
  if (before !== undefined) return before
  const made = live<unknown>(read(name))
  known.set(name, made)
  return made
}

function read(name: string): unknown {
  try {
    const text = localStorage.getItem(prefix + name)
    return text === null ? undefined : JSON.parse(text)
  } catch {
    return undefined
  }
}

function store(name: string, value: unknown): void {
  try {
    if (value === undefined) localStorage.removeItem(prefix + name)
    else localStorage.setItem(prefix + name, JSON.stringify(value))
    keeps.set(true)
  } catch {
    keeps.set(false)
  }
}

window.addEventListener('storage', ({ key }) => {
  if (key === null) for (const [name, of] of known) of.set(read(name))
  else if (key.startsWith(prefix)) known.get(key.slice(prefix.length))?.set(read(key.slice(prefix.length)))
})
