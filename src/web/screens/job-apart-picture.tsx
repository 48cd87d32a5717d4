/**
 * A picture with arrows on it: shown, and drawn by finger, pointer or keyboard.
 *
 * @module
 */

import { type KeyboardEvent, type PointerEvent, type ReactNode, useId, useRef } from 'react'
import type { Arrow, Photograph } from '../../logbook/photographs.js'
import { sizesOf } from '../entry/pictures.js'
import { Button, PlainButton } from '../parts/index.js'
import { words } from '../words/job-apart.js'
import { logbook } from '../words/logbook.js'
import { sayList } from '../words/say.js'

const { picture: says } = words

/** A kept photograph as it is seen upright, with what was pointed out on it. */
export function MarkedPhotograph({ photograph }: { readonly photograph: Photograph }) {
  const { sha256, type, shows, arrows = [] } = photograph
  const pointed = sayList(arrows.flatMap(({ label }) => label ?? []))
  const alt = `${logbook.picture(shows ?? '')}${pointed === '' ? '' : says.pointing(pointed)}`
  return (
    <figure className="apart-figure">
      {type === 'image/heic' ? (
        <p className="fine">{logbook.heic}</p>
      ) : (
        <Marked arrows={arrows}>
          <img {...sizesOf(sha256)} alt={alt} />
        </Marked>
      )}
      <figcaption className="fine">
        {shows && `${shows} `}
        <a className="screen-only" href={`/api/photographs/${sha256}`} target="_blank" rel="noreferrer">
          {logbook.openPicture}
          <span className="unseen">{shows && `: ${shows}`}</span>
        </a>
      </figcaption>
    </figure>
  )
}

function Marked({ arrows, children }: { readonly arrows: readonly Arrow[]; readonly children: ReactNode }) {
  return (
    <div className="apart-picture picture">
      {children}
      <svg aria-hidden="true">
        {arrows.map((arrow, at) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: arrows have no other name
          <DrawnArrow key={at} {...arrow} />
        ))}
      </svg>
    </div>
  )
}

/** Light under dark, so that it is seen on anything; a ring about what is meant. */
function DrawnArrow({ from, to, label }: Arrow) {
  const line = { x1: percent(from.x), y1: percent(from.y), x2: percent(to.x), y2: percent(to.y) }
  const ring = { cx: line.x2, cy: line.y2, r: 7 }
  return (
    <>
      {['under', 'over'].map((which) => (
        <g key={which} className={which}>
          <line {...line} />
          <circle {...ring} />
        </g>
      ))}
      {label && (
        <text
          x={line.x1}
          y={line.y1}
          dy={from.y < 0.15 ? 16 : -6}
          textAnchor={from.x > 0.6 ? 'end' : 'start'}
        >
          {label}
        </text>
      )}
    </>
  )
}

/** A picture that was chosen and is not sent yet, to be drawn on. */
export function ArrowBoard({
  src,
  alt,
  arrows,
  onChange,
}: {
  readonly src: string
  readonly alt: string
  readonly arrows: readonly Arrow[]
  readonly onChange: (arrows: readonly Arrow[]) => void
}) {
  const id = useId()
  const box = useRef<HTMLDivElement>(null)
  const put = (at: number, arrow: Arrow) => onChange(arrows.with(at, arrow))
  const add = () => onChange([...arrows, { from: { x: 0.25, y: 0.75 }, to: { x: 0.5, y: 0.5 } }])
  return (
    <div className="apart-board">
      <div ref={box}>
        <Marked arrows={arrows}>
          <img src={src} alt={alt} />
          {arrows.flatMap((arrow, at) =>
            (['from', 'to'] as const).map((end) => (
              <End
                // biome-ignore lint/suspicious/noArrayIndexKey: arrows have no other name
                key={`${at} ${end}`}
                name={(end === 'to' ? says.tip : says.tail)(at + 1, ...hundredths(arrow[end]))}
                hint={id}
                at={arrow[end]}
                within={() => box.current?.querySelector('img')?.getBoundingClientRect()}
                onMove={(spot) => put(at, { ...arrow, [end]: spot })}
              />
            )),
          )}
        </Marked>
      </div>
      {arrows.map((arrow, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: arrows have no other name
        <p className="apart-arrow-label" key={at}>
          <label>
            <span className="small">{says.label(at + 1)}</span>
            <input
              className="input wide"
              autoComplete="off"
              maxLength={80}
              value={arrow.label ?? ''}
              onChange={({ target }) => {
                const { label: _, ...bare } = arrow
                put(at, target.value.trim() === '' ? bare : { ...bare, label: target.value })
              }}
            />
          </label>
          <PlainButton onClick={() => onChange(arrows.toSpliced(at, 1))}>
            {says.dropArrow(at + 1)}
          </PlainButton>
        </p>
      ))}
      <p className="fine" id={id}>
        {arrows.length > 0 && says.how}
      </p>
      <Button look="light" onClick={add} disabled={arrows.length >= 20}>
        {says.addArrow}
      </Button>
    </div>
  )
}

type Spot = Arrow['from']

/** One end of an arrow, a whole finger wide. */
function End({
  name,
  hint,
  at,
  within,
  onMove,
}: {
  readonly name: string
  readonly hint: string
  readonly at: Spot
  readonly within: () => DOMRect | undefined
  readonly onMove: (spot: Spot) => void
}) {
  const drag = (event: PointerEvent<HTMLButtonElement>) => {
    const rect = within()
    if (rect === undefined || !event.currentTarget.hasPointerCapture(event.pointerId)) return
    onMove(spotAt((event.clientX - rect.left) / rect.width, (event.clientY - rect.top) / rect.height))
  }
  const step = (event: KeyboardEvent) => {
    const way = keys[event.key]
    if (way === undefined) return
    event.preventDefault()
    const size = event.shiftKey ? 0.1 : 0.02
    onMove(spotAt(at.x + way[0] * size, at.y + way[1] * size))
  }
  return (
    <button
      type="button"
      className="apart-end"
      aria-label={name}
      aria-describedby={hint}
      style={{ left: percent(at.x), top: percent(at.y) }}
      onPointerDown={(event) => event.currentTarget.setPointerCapture(event.pointerId)}
      onPointerMove={drag}
      onKeyDown={step}
    />
  )
}

const keys: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
}

/** Within the picture, to a thousandth. */
function spotAt(x: number, y: number): Spot {
  const held = (value: number) => Math.round(1000 * Math.min(1, Math.max(0, value))) / 1000
  return { x: held(x), y: held(y) }
}

function percent(share: number): string {
  return `${Math.round(1000 * share) / 10}%`
}

function hundredths({ x, y }: Spot): [number, number] {
  return [Math.round(100 * x), Math.round(100 * y)]
}
