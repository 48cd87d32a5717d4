/**
 * Drawing joined leads: by tapping two of them, or as text; what they give stands beside it, and they can be written into the log.
 *
 * @module
 */

import { type FormEvent, useId, useState } from 'react'
import type { Draft } from '../../logbook/draft.js'
import { linkDrawing, placesOf } from '../../proof/links/drawing.js'
import { readJoined, writeJoints, writeOutlets } from '../../proof/links/links-text.js'
import { lookAtLinks } from '../../proof/links/look-at-links.js'
import { patternJoined, patternOf, windingById, windingMarked } from '../../proof/links/patterns.js'
import { type CoilValues, type Joined, leadsOf, type Winding } from '../../proof/links/winding.js'
import { sayOrigin, sourceNames } from '../../proof/source-names.js'
import { useKeptPictures } from '../data/kept-pictures.js'
import { useKept } from '../data/kept-text.js'
import { today } from '../data/today.js'
import { write } from '../data/write.js'
import { PictureChoice } from '../entry/pictures.js'
import { DrawnLinks } from '../marks/link-drawing.js'
import type { OfSet } from '../of-set.js'
import { Button, Passage } from '../parts/index.js'
import { words } from '../words/links.js'
import { lineNames, sensingNames, type Tapped, tapLead } from './links-board.js'
import { Choice, TextField } from './links-fields.js'
import { LinksGives } from './links-gives.js'
import type { LinksOf } from './links-of.js'
import { whatWasWrong } from './terms-tried.js'

const { draw } = words

/** As it is typed. */
interface Typed {
  readonly state: 'as-found' | 'as-left'
  readonly winding: string
  readonly marks: string
  readonly joined: string
  readonly lines: string
  readonly sensing: string
  readonly labels: string
  readonly emf: string
  readonly ohms: string
  readonly reactance?: string
}

export function LinksDraw({ of, links: known }: { readonly of: OfSet; readonly links: LinksOf }) {
  const { links, found, left, values, log, register } = known
  const slot = `${of.boat}.${of.set}.links`
  const [typed, setTyped] = useKept<Typed>(slot, beginning(known))
  const [files, setFiles] = useKeptPictures(slot)
  const [wrong, setWrong] = useState<string>()
  const [said, setSaid] = useState('')
  const [busy, setBusy] = useState(false)
  const id = useId()
  const change = (next: Partial<Typed>) => {
    setTyped({ ...typed, ...next })
    setSaid('')
  }
  const ofCatalogue = windingById(links, typed.winding)
  const winding = windingMarked(ofCatalogue, typed.marks)
  const read = readJoined(typed, { leads: leadsOf(winding) })
  const coil = { ...values, ...numbersOf(typed) }
  const answer = lookAtLinks(winding, read.joined, coil, { setToV: register.setFacts.volts?.[0] })
  const names = sourceNames(known.catalogue)
  const pattern = patternOf(links, { winding: typed.winding, joined: read.joined, marks: typed.marks })
  const marked = ofCatalogue.marks.find((one) => one.id === typed.marks)
  const submit = async (event: FormEvent) => {
    event.preventDefault()
    if (read.problems.length > 0) return setWrong(whatWasWrong(read.problems))
    const listed = (text: string) => (text === '' ? [] : text.split(', '))
    const labels = typed.labels
      .split(/[,;\n]/)
      .map((piece) => piece.trim())
      .filter(Boolean)
    const draft = {
      kind: 'links',
      ...of,
      from: today(),
      body: {
        state: typed.state,
        winding: typed.winding,
        marks: typed.marks,
        joined: listed(writeJoints(read.joined.joints)),
        lines: listed(writeOutlets(read.joined.lines)),
        ...(read.joined.sensing.length === 0 ? {} : { sensing: listed(writeOutlets(read.joined.sensing)) }),
        ...(labels.length === 0 ? {} : { labels }),
      },
    } as Draft
    setBusy(true)
    const written = await write([draft], files)
    setBusy(false)
    if (!written.ok) return setWrong(whatWasWrong(written.problems))
    setWrong(undefined)
    setFiles([])
    setTyped({ ...typed, state: 'as-left' })
    setSaid(draw.written)
  }
  const text = (key: 'joined' | 'lines' | 'sensing' | 'labels') => (
    <TextField
      name={draw[key]}
      hint={draw.hints[key]}
      value={typed[key]}
      problem={
        read.problems
          .filter(({ path }) => path === key)
          .map(({ found: what, allowed }) => `${what}: ${allowed}`)[0]
      }
      onChange={(value) => change({ [key]: value })}
    />
  )
  return (
    <Passage
      title={draw.title}
      says={draw.says.map((line) => <p key={line}>{line}</p>)}
      className="screen-only"
    >
      <form onSubmit={(event) => void submit(event)} noValidate>
        {log.readOnly && <p className="prose">{draw.demonstration}</p>}
        <div className="links-fields">
          <fieldset>
            <legend>{draw.state}</legend>
            <div className="picks">
              {(['as-found', 'as-left'] as const).map((state) => (
                <label key={state}>
                  <input
                    type="radio"
                    name={id}
                    checked={typed.state === state}
                    onChange={() => change({ state })}
                  />
                  {draw.states[state]}
                </label>
              ))}
            </div>
          </fieldset>
          <Choice
            name={draw.winding}
            value={typed.winding}
            options={links.windings.map((one) => [one.id, one.name])}
            onChange={(next) => change({ winding: next, joined: '', lines: '', sensing: '' })}
          />
          <Choice
            name={draw.marks}
            value={typed.marks}
            options={windingById(links, typed.winding).marks.map((one) => [
              one.id,
              draw.marksNamed[one.id] ?? one.id,
            ])}
            onChange={(next) => change({ marks: next, joined: '', lines: '', sensing: '' })}
          />
          <Choice
            name={draw.pattern}
            value=""
            options={[
              ['', draw.noPattern],
              ...links.patterns
                .filter((one) => one.winding === typed.winding)
                .map((one) => [one.id, one.name] as const),
            ]}
            onChange={(pattern) => {
              const chosen = links.patterns.find((one) => one.id === pattern)
              const joined = chosen && patternJoined(links, chosen, typed.marks)
              change({
                joined: joined ? writeJoints(joined.joints) : '',
                lines: joined ? writeOutlets(joined.lines) : '',
                sensing: '',
              })
            }}
          />
        </div>
        <Board
          winding={winding}
          joined={read.joined}
          onJoined={(joined) =>
            change({
              joined: writeJoints(joined.joints),
              lines: writeOutlets(joined.lines),
              sensing: writeOutlets(joined.sensing),
            })
          }
        />
        <div className="links-fields">
          {text('joined')}
          {text('lines')}
          {text('sensing')}
          {text('labels')}
          <TextField
            name={draw.emf}
            hint={hintOf(values.emfV)}
            value={typed.emf}
            onChange={(emf) => change({ emf })}
          />
          <TextField name={draw.ohms} hint="0.31" value={typed.ohms} onChange={(ohms) => change({ ohms })} />
          <TextField
            name={draw.reactance}
            hint="0.4"
            value={typed.reactance ?? ''}
            onChange={(reactance) => change({ reactance })}
          />
        </div>
        <p className="fine gap-small">
          {pattern !== undefined && `${draw.is(pattern.name.toLowerCase(), sayOrigin(pattern.told, names))} `}
          {marked !== undefined && draw.marksFrom(sayOrigin(marked.told, names))}
        </p>
        <LinksGives answer={answer} />
        {!log.readOnly && (
          <>
            <PictureChoice files={files} onChange={setFiles} />
            <div aria-live="polite">
              {wrong !== undefined && <p className="problem">{wrong}</p>}
              {said !== '' && <p className="written">{said}</p>}
            </div>
            <div className="acts">
              <Button
                type="submit"
                look={found === undefined || left === undefined ? 'filled' : 'outlined'}
                disabled={busy}
              >
                {busy ? draw.writing : draw.write}
              </Button>
            </div>
          </>
        )}
      </form>
    </Passage>
  )
}

/** What the board begins with: the leads as last entered, or nothing joined. */
function beginning({ found, left, register, links }: LinksOf): Typed {
  const last = left ?? found
  const leads = register.setFacts.leads
  const fits = links.windings.find((one) => one.coils.length * 2 === leads) ?? links.windings[0]!
  const joined = last?.record.joined
  return {
    state: found === undefined ? 'as-found' : 'as-left',
    winding: last?.record.known?.id ?? fits.id,
    marks: last?.record.marks ?? fits.marks[0]!.id,
    joined: joined ? writeJoints(joined.joints) : '',
    lines: joined ? writeOutlets(joined.lines) : '',
    sensing: joined ? writeOutlets(joined.sensing) : '',
    labels: last?.record.labels.join(', ') ?? '',
    emf: '',
    ohms: '',
  }
}

function numbersOf({ emf, ohms, reactance = '' }: Typed): CoilValues {
  const [volts, resistance, ofReactance] = [emf, ohms, reactance].map((text) =>
    Number(text.replace(',', '.')),
  )
  return {
    ...(emf.trim() !== '' && volts! > 0 ? { emfV: volts! } : {}),
    ...(ohms.trim() !== '' && resistance! > 0 ? { resistanceOhm: resistance! } : {}),
    ...(reactance.trim() !== '' && ofReactance! > 0 ? { reactanceOhm: ofReactance! } : {}),
  }
}

function hintOf(volts: number | undefined): string {
  return volts === undefined ? '120' : String(Number(volts.toFixed(1)))
}

/** The drawing with a button over each lead, and the names that can be given to one. */
function Board({
  winding,
  joined,
  onJoined,
}: {
  readonly winding: Winding
  readonly joined: Joined
  readonly onJoined: (joined: Joined) => void
}) {
  const [first, setFirst] = useState<Tapped>()
  const drawing = linkDrawing(winding, joined)
  const tap = (lead: string) => {
    const next = tapLead(joined, { first, lead })
    setFirst(next.first)
    if (next.joined !== joined) onJoined(next.joined)
  }
  const says = first === undefined ? '' : 'name' in first ? draw.first(first.name) : draw.second(first.lead)
  return (
    <div className="gap">
      <div className="board-draw">
        <DrawnLinks {...drawing} />
        {placesOf(drawing).map(({ lead, x, y }) => (
          <button
            key={lead}
            type="button"
            className="lead"
            aria-pressed={first !== undefined && 'lead' in first && first.lead === lead}
            aria-label={draw.lead(lead, withOf(lead, joined))}
            style={{ left: `${(100 * x) / drawing.width}%`, top: `${(100 * y) / drawing.height}%` }}
            onClick={() => tap(lead)}
          >
            {lead}
          </button>
        ))}
      </div>
      <fieldset>
        <legend className="small">{draw.names}</legend>
        <div className="names">
          {[...lineNames, ...sensingNames].map((name) => {
            const pressed = first !== undefined && 'name' in first && first.name === name
            return (
              <Button
                key={name}
                look="light"
                aria-pressed={pressed}
                onClick={() => setFirst(pressed ? undefined : { name })}
              >
                {name}
              </Button>
            )
          })}
        </div>
      </fieldset>
      <p className="small second" aria-live="polite">
        {says}&nbsp;
      </p>
    </div>
  )
}

/** What a lead is joined to, for who cannot see it. */
function withOf(lead: string, { joints, lines, sensing }: Joined): string {
  const others = joints
    .filter((joint) => joint.includes(lead))
    .flat()
    .filter((one) => one !== lead)
  const out = [...lines, ...sensing].filter((one) => one.lead === lead).map(({ name }) => name)
  return [...(others.length === 0 ? ['alone'] : [`with ${others.join(', ')}`]), ...out].join('; ')
}
