/**
 * The page that is open, to whatever is drawn by it.
 *
 * @module
 */

import { useSyncExternalStore } from 'react'
import { moved, type Route, routeOf } from './routes.js'

/** The page that is open. */
export function useRoute(): Route {
  return routeOf(useSyncExternalStore(onMove, () => location.pathname))
}

/** What the address asks for beside its page, under a name: `?job=rewind`. */
export function useAsked(name: string): string | undefined {
  const search = useSyncExternalStore(onMove, () => location.search)
  return new URLSearchParams(search).get(name) ?? undefined
}

function onMove(listener: () => void): () => void {
  window.addEventListener('popstate', listener)
  window.addEventListener(moved, listener)
  return () => {
    window.removeEventListener('popstate', listener)
    window.removeEventListener(moved, listener)
  }
}
