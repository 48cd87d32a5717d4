/**
 * Leads without marks: one measurement at a time, until all are found.
 *
 * @module
 */

import { useState } from 'react'
import { leadsByMark, windingMarked } from '../../proof/links/patterns.js'
import { findLeads, readPairs, readReadings, unclearReadings } from '../../proof/links/unmarked.js'
import { useKept } from '../data/kept-text.js'
import type { OfSet } from '../of-set.js'
import { Button, Passage } from '../parts/index.js'
import { words } from '../words/links.js'
import { Choice, TextField } from './links-fields.js'
import type { LinksOf } from './links-of.js'
import { PlainRows } from './plain-rows.js'

const { unmarked } = words

interface Typed {
  readonly winding: string
  readonly pairs: string
  readonly readings: string
  readonly each: string
}

export function LinksUnmarked({
  of,
  links: { links, register },
}: {
  readonly of: OfSet
  readonly links: LinksOf
}) {
  const leads = register.setFacts.leads
  const fits = links.windings.find(({ coils }) => coils.length * 2 === leads) ?? links.windings[0]!
  const first: Typed = { winding: fits.id, pairs: '', readings: '', each: '' }
  const [typed, setTyped] = useKept<Typed>(`${of.boat}.${of.set}.unmarked`, first)
  const winding = links.windings.find(({ id }) => id === typed.winding) ?? fits
  const { coils } = windingMarked(winding)
  const change = (next: Partial<Typed>) => setTyped({ ...typed, ...next })
  const pairs = readPairs(typed.pairs, { path: '', count: coils.length })
  const readings = readReadings(typed.readings, { path: '', pairs: pairs.pairs })
  const emfV = Number(typed.each.replace(',', '.'))
  const wrong = (problems: readonly { readonly found: string; readonly allowed: string }[]) =>
    problems.map(({ found, allowed }) => `${found}: ${allowed}`)[0]
  const unclear = emfV > 0 ? unclearReadings(readings.readings, emfV) : []
  const ready =
    pairs.problems.length === 0 && readings.problems.length === 0 && emfV > 0 && unclear.length === 0
  return (
    <Passage
      title={unmarked.title}
      says={unmarked.says.map((line) => <p key={line}>{line}</p>)}
      className="screen-only"
    >
      <div className="links-fields">
        <Choice
          name={words.draw.winding}
          value={winding.id}
          options={links.windings.map(({ id, name }) => [id, name])}
          onChange={(next) => change({ winding: next })}
        />
        <TextField name={unmarked.each} hint="20" value={typed.each} onChange={(each) => change({ each })} />
        <div className="wide">
          <TextField
            name={unmarked.pairs(coils.length)}
            hint="a-d 0.31, b-c 0.30"
            value={typed.pairs}
            problem={typed.pairs.trim() === '' ? undefined : wrong(pairs.problems)}
            onChange={(next) => change({ pairs: next })}
          />
        </div>
        <div className="wide">
          <TextField
            name={unmarked.readings}
            hint="a-b 20, a-c 0"
            value={typed.readings}
            problem={
              typed.pairs.trim() === ''
                ? undefined
                : (wrong(readings.problems) ??
                  unclear.map(({ joined, volts }) => unmarked.unclear(joined.join('-'), volts))[0])
            }
            onChange={(next) => change({ readings: next })}
          />
        </div>
      </div>
      {ready && (
        <Found
          answer={findLeads({ pairs: pairs.pairs, readings: readings.readings, emfV, coils })}
          order={[...leadsByMark(winding).values()]}
          onReading={(text) => change({ readings: [typed.readings.trim(), text].filter(Boolean).join(', ') })}
        />
      )}
    </Passage>
  )
}

/** What is left possible: the next measurement with a field for it, the marks, or what contradicts. */
function Found({
  answer: { left, next, marks, doubtful },
  order,
  onReading,
}: {
  readonly answer: ReturnType<typeof findLeads>
  readonly order: readonly string[]
  readonly onReading: (text: string) => void
}) {
  const [volts, setVolts] = useState('')
  if (left === 0) {
    const named = doubtful.map(({ joined, volts: read }) => `${joined.join('-')} ${read}`).join(', ')
    return (
      <p className="lead" aria-live="polite">
        {unmarked.contradict} {named === '' ? unmarked.allAgain : unmarked.again(named)}
      </p>
    )
  }
  if (next === null) {
    const sorted = [...marks].sort((a, b) => order.indexOf(a.mark) - order.indexOf(b.mark))
    return (
      <div className="gap" aria-live="polite">
        <PlainRows heads={unmarked.heads} rows={sorted.map(({ lead, mark }) => [lead, mark])} />
        <p className="prose gap-small">{unmarked.found}</p>
      </div>
    )
  }
  const number = Number(volts.replace(',', '.'))
  const usable = volts.trim() !== '' && number >= 0
  const take = () => {
    onReading(`${next.join.join('-')} ${number}`)
    setVolts('')
  }
  return (
    <div className="gap">
      <p className="lead" aria-live="polite">
        {unmarked.next(next.join.join(' and '), next.read.join(' and '))}
      </p>
      <div className="links-fields">
        <TextField name={unmarked.reads} hint="" value={volts} onChange={setVolts} />
        <p className="acts">
          <Button look="filled" disabled={!usable} onClick={take}>
            {unmarked.take}
          </Button>
        </p>
      </div>
      <p className="small">{unmarked.left(left.toLocaleString('en-GB'))}</p>
      <PlainRows
        heads={unmarked.tells}
        rows={next.tells.map((one) => [`${Number(one.volts.toFixed(1))} V`, one.says])}
      />
    </div>
  )
}
