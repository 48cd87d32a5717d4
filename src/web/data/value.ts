/**
 * A value that screens look at and that changes while they do.
 *
 * @module
 */

import { useSyncExternalStore } from 'react'

export interface Live<T> {
  get(): T
  set(next: T): void
  on(listener: () => void): () => void
}

export function live<T>(first: T): Live<T> {
  let value = first
  const listeners = new Set<() => void>()
  return {
    get: () => value,
    set: (next) => {
      if (Object.is(next, value)) return
      value = next
      for (const listener of listeners) listener()
    },
    on: (listener) => {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
  }
}

export function useLive<T>(of: Live<T>): T {
  return useSyncExternalStore(of.on, of.get)
}
