/**
 * Addresses of the pages, and going from one to another without fetching the program anew.
 *
 * @module
 */

export const boatPages = [
  'logbook',
  'set',
  'forecast',
  'alternatives',
  'brief',
  'sizing',
  'plan',
  'faults',
  'settings',
  'looking-back',
  'links',
  'shop-sheet',
  'job',
  'job-quotes',
  'job-calendar',
  'job-kit',
  'job-apart',
  'job-sheet',
  'proof',
  'proof-report',
] as const
export type BoatPage = (typeof boatPages)[number]

/** Where one can be. */
export type Route =
  | { readonly page: 'boats' }
  | { readonly page: 'new' }
  | { readonly page: BoatPage; readonly boat: string; readonly set: string }
  | { readonly page: 'unknown'; readonly address: string }

/** What a path leads to. A boat without a set or a page leads to her first set's alternatives. */
export function routeOf(path: string): Route {
  const steps = path.split('/').filter(Boolean).map(decoded)
  const [head, boat, set, page] = steps
  if (steps.length === 0) return { page: 'boats' }
  if (head === 'new' && steps.length === 1) return { page: 'new' }
  const known = boatPages.find((name) => name === page)
  if (head === 'boats' && boat && set && known && steps.length === 4) return { page: known, boat, set }
  return { page: 'unknown', address: path }
}

/** The path that leads to a page. */
export function pathTo(route: Exclude<Route, { page: 'unknown' }>): string {
  if (route.page === 'boats') return '/'
  if (route.page === 'new') return '/new'
  return `/boats/${encodeURIComponent(route.boat)}/${encodeURIComponent(route.set)}/${route.page}`
}

function decoded(step: string): string {
  try {
    return decodeURIComponent(step)
  } catch {
    return step
  }
}

/** Goes to a path of this program; `replace`: the present one is not gone back to. */
export function goTo(path: string, how: { readonly replace?: boolean } = {}): void {
  if (path === location.pathname + location.search + location.hash) return
  if (how.replace) history.replaceState(null, '', path)
  else history.pushState(null, '', path)
  window.dispatchEvent(new Event(moved))
}

/** Told to the window when another page is gone to. */
export const moved = 'gensettle-moved'
