/**
 * The frame around every page: the boat, how it is lit, the loop as words, and the pen always within reach.
 *
 * @module
 */

import { type ReactNode, Suspense, useCallback, useEffect, useMemo, useRef, useState } from 'react'
import type { Boat } from './data/boat.js'
import { useEscape } from './escape.js'
import { type Light, lights, useLight } from './light.js'
import type { OfSet } from './of-set.js'
import { Button, Link } from './parts/index.js'
import { type BoatPage, boatPages, pathTo, type Route } from './routes.js'
import { screens } from './screens.js'
import { setInOneLine } from './set-line.js'
import { shell } from './words/shell.js'

const loop = [
  'logbook',
  'set',
  'forecast',
  'alternatives',
  'job',
  'proof',
] as const satisfies readonly BoatPage[]

export interface FrameProps {
  readonly route: Route
  /** The boat that the page is of, where it is of one. */
  readonly boat?: Boat
  readonly children: ReactNode
}

export function Frame({ route, boat, children }: FrameProps) {
  const [writing, setWriting] = useState(false)
  const [light, setLight] = useLight()
  const putAway = useCallback(() => setWriting(false), [])
  useEscape(putAway)
  const ofSet = 'boat' in route ? route : undefined
  const entries = boat?.entries
  const setName = ofSet?.set
  const inOneLine = useMemo(
    () => (entries && setName !== undefined ? setInOneLine(entries, setName) : ''),
    [entries, setName],
  )
  const write = ofSet ? () => writeHere() || setWriting(true) : undefined
  return (
    <div className="sheet">
      <a className="skip" href="#page-matter">
        {shell.skip}
      </a>
      <header className="top">
        <p className="boat">{boat ? <Link to="/">{boat.name}</Link> : <Link to="/">{shell.program}</Link>}</p>
        <p className="set fine">
          {[inOneLine, boat?.readOnly ? shell.demonstration : ''].filter(Boolean).join('. ')}
        </p>
        <Lights light={light} onChange={setLight} />
      </header>
      {ofSet && (
        <nav className="loop" aria-label={shell.loopName}>
          {loop.map((page) => (
            <LoopLink key={page} page={page} of={ofSet} current={route.page} />
          ))}
          <span className="aside">
            <LoopLink page="faults" of={ofSet} current={route.page} />
            <LoopLink page="sizing" of={ofSet} current={route.page} />
            <LoopLink page="plan" of={ofSet} current={route.page} />
            <LoopLink page="settings" of={ofSet} current={route.page} />
            {write && (
              <button type="button" className="write" onClick={write} aria-expanded={writing}>
                {shell.writeEntry}
              </button>
            )}
          </span>
        </nav>
      )}
      <main id="page-matter" tabIndex={-1}>
        {boat?.status === 'failed' && <p className="waiting small">{shell.failedToRead}</p>}
        {ofSet && writing && <Writing of={ofSet} onDone={putAway} Form={screens.writeEntry} />}
        {children}
      </main>
      <p className="colophon fine">{shell.footer}</p>
      {ofSet && <Foot of={ofSet} current={route.page} onWrite={write} />}
    </div>
  )
}

/** Goes to the form for an entry where the page has one already. */
function writeHere(): boolean {
  const form = document.getElementById('entry-here')
  form?.scrollIntoView({ block: 'nearest' })
  form?.focus()
  return form !== null
}

function LoopLink({
  page,
  of,
  current,
}: {
  readonly page: BoatPage
  readonly of: OfSet
  readonly current: string
}) {
  return (
    <Link
      to={pathTo({ page, boat: of.boat, set: of.set })}
      aria-current={page === current ? 'page' : undefined}
    >
      {nameOfPage(page)}
    </Link>
  )
}

function nameOfPage(page: BoatPage): string {
  return page === 'settings' ? shell.settings : shell.pages[page]
}

/** The form for an entry, above the page that was open and that stays as it is. */
function Writing({
  of,
  onDone,
  Form,
}: {
  readonly of: OfSet
  readonly onDone: () => void
  readonly Form: typeof screens.writeEntry
}) {
  const box = useRef<HTMLElement>(null)
  useEffect(() => {
    const before = document.activeElement
    box.current?.focus()
    box.current?.scrollIntoView({ block: 'nearest' })
    return () => {
      // Put away from within it, it leads back to where one was.
      if (before instanceof HTMLElement) before.focus({ preventScroll: true })
    }
  }, [])
  return (
    <section className="writing" ref={box} tabIndex={-1} aria-label={shell.writeEntry}>
      <Suspense fallback={<p className="waiting second">{shell.opening}</p>}>
        <Form boat={of.boat} set={of.set} onDone={onDone} />
      </Suspense>
      <p className="acts">
        <Button look="light" onClick={onDone}>
          {shell.stopWriting}
        </Button>
      </p>
    </section>
  )
}

function Lights({ light, onChange }: { readonly light: Light; readonly onChange: (light: Light) => void }) {
  return (
    <fieldset className="light">
      <legend className="unseen">{shell.light}</legend>
      {lights.map((name) => (
        <label key={name}>
          <input type="radio" name="light" checked={light === name} onChange={() => onChange(name)} />
          {shell.lights[name]}
        </label>
      ))}
    </fieldset>
  )
}

/** On a phone: where you are, the other pages, and the pen. */
function Foot({
  of,
  current,
  onWrite,
}: {
  readonly of: OfSet
  readonly current: string
  readonly onWrite: (() => void) | undefined
}) {
  const box = useRef<HTMLDetailsElement>(null)
  // biome-ignore lint/correctness/useExhaustiveDependencies: closed whenever the page changes
  useEffect(() => box.current?.removeAttribute('open'), [current])
  const pages = [...loop, 'sizing' as const, 'plan' as const, 'faults' as const, 'settings' as const]
  const here = boatPages.find((page) => page === current)
  return (
    <div className="foot">
      <details ref={box}>
        <summary>
          {here ? nameOfPage(here) : shell.program} <span>{shell.otherPages}</span>
        </summary>
        <nav className="pages" aria-label={shell.pagesName}>
          {pages.map((page) => (
            <LoopLink key={page} page={page} of={of} current={current} />
          ))}
          <Link to="/">{shell.boats}</Link>
        </nav>
      </details>
      {onWrite && (
        <Button look="filled" onClick={onWrite}>
          {shell.writeEntry}
        </Button>
      )}
    </div>
  )
}
