/**
 * Which page is open, and the frame around it.
 *
 * @module
 */

import { Component, type ReactNode, Suspense, useEffect, useMemo, useRef } from 'react'
import { useBoat } from './data/boat.js'
import { boatFactsOf } from './data/facts.js'
import { RegionOfPage } from './data/region.js'
import { Frame } from './frame.js'
import type { OfSet } from './of-set.js'
import { Button, Lead, Link, Passage, Say } from './parts/index.js'
import { pathTo, type Route } from './routes.js'
import { screens } from './screens.js'
import { useRoute } from './use-route.js'
import { shell } from './words/shell.js'

export function App() {
  const route = useRoute()
  return 'boat' in route ? (
    <BoatFrame key={`${route.boat} ${route.set}`} route={route} />
  ) : (
    <Frame route={route}>
      <Page route={route} name={shell.program} />
    </Frame>
  )
}

function BoatFrame({ route }: { readonly route: Extract<Route, OfSet> }) {
  const boat = useBoat(route.boat)
  const region = useMemo(() => boatFactsOf(boat.entries).words, [boat.entries])
  return (
    <RegionOfPage value={region}>
      <Frame route={route} boat={boat}>
        <Page route={route} name={boat.name} />
      </Frame>
    </RegionOfPage>
  )
}

/** The page itself; what fails in it leaves the frame standing. */
function Page({ route, name }: { readonly route: Route; readonly name: string }) {
  const path = route.page === 'unknown' ? route.address : pathTo(route)
  useArrival(path, titleOf(route, name))
  return (
    <Catching key={path}>
      <Suspense fallback={<p className="waiting second">{shell.opening}</p>}>
        <Matter route={route} />
      </Suspense>
    </Catching>
  )
}

function Matter({ route }: { readonly route: Route }) {
  if ('boat' in route) {
    if (reckoned.has(route.page)) return <OfKnownSet route={route} />
    const Screen = screens[route.page]
    return <Screen boat={route.boat} set={route.set} />
  }
  if (route.page === 'unknown') return <NotFound />
  const Screen = screens[route.page]
  return <Screen />
}

/** Pages that are reckoned from what the log says of a set. */
const reckoned: ReadonlySet<string> = new Set([
  'set',
  'forecast',
  'alternatives',
  'sizing',
  'plan',
  'faults',
  'brief',
  'looking-back',
])

/** Where nothing is entered of a set yet, what would begin it; else the page. */
function OfKnownSet({ route }: { readonly route: Extract<Route, OfSet> }) {
  const boat = useBoat(route.boat)
  const Screen = screens[route.page]
  const isKnown = boat.status !== 'ready' || boat.entries.some(({ set }) => set === route.set)
  if (isKnown) return <Screen boat={route.boat} set={route.set} />
  if (boat.entries.some(({ set }) => set !== null)) return <NotFound />
  const { noSet } = shell
  return (
    <Passage title={noSet.title} first>
      <Say>
        {noSet.say.before}
        <b>{noSet.say.bold}</b>
      </Say>
      <Lead>{noSet.next}</Lead>
      <p className="gap">
        <Link to="/new">{noSet.begin}</Link> <Link to="/">{shell.notFound.back}</Link>
      </p>
    </Passage>
  )
}

function titleOf(route: Route, name: string): string {
  if ('boat' in route) {
    const page = route.page === 'settings' ? shell.settings : shell.pages[route.page]
    return `${page}, ${name} · ${shell.program}`
  }
  return route.page === 'unknown' ? `${shell.notFound.title} · ${shell.program}` : shell.program
}

/** Whoever comes to another page begins at its head: title, place and focus. */
function useArrival(path: string, title: string): void {
  const before = useRef(path)
  useEffect(() => {
    document.title = title
  }, [title])
  useEffect(() => {
    if (before.current === path) return
    before.current = path
    window.scrollTo(0, 0)
    document.getElementById('page-matter')?.focus({ preventScroll: true })
  }, [path])
}

function NotFound() {
  const { notFound } = shell
  return (
    <Passage title={notFound.title} first>
      <Say>{notFound.say}</Say>
      <Lead>{notFound.next}</Lead>
      <p className="gap">
        <Link to="/">{notFound.back}</Link>
      </p>
    </Passage>
  )
}

interface Caught {
  readonly error: Error | null
}

class Catching extends Component<{ readonly children: ReactNode }, Caught> {
  override state: Caught = { error: null }

  static getDerivedStateFromError(error: unknown): Caught {
    return { error: error instanceof Error ? error : new Error(String(error)) }
  }

  override render() {
    const { error } = this.state
    if (error === null) return this.props.children
    const { failed } = shell
    return (
      <Passage title={failed.title} first>
        <Say>{failed.say}</Say>
        <Lead>{failed.next}</Lead>
        <p className="small gap">{error.message}</p>
        <div className="acts">
          <Button onClick={() => location.reload()}>{failed.again}</Button>
        </div>
      </Passage>
    )
  }
}
