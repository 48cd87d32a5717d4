/**
 * The boat's own list of loads, and the catalogue to add to it from.
 *
 * @module
 */

import { useId, useState } from 'react'
import type { CatalogueLoad } from '../../catalogue/load-schema.js'
import type { Load } from '../../sizing/load-type.js'
import { hoursOn, sayStart, spaced, spoken } from '../../sizing/say-size.js'
import type { BoatSize } from '../../sizing/size-boat.js'
import { type Boat, useCatalogue } from '../data/boat.js'
import { today } from '../data/today.js'
import { EntryForm } from '../entry/entry-form.js'
import { Behind, Button, Passage } from '../parts/index.js'
import { words } from '../words/sizing.js'
import type { OfSize } from './of-size.js'
import { SizingRows } from './sizing-rows.js'

const { loads: said } = words
const mostShown = 8

export interface SizingLoadsProps {
  readonly sized: BoatSize
  readonly of: OfSize
  readonly boat: Boat
}

export function SizingLoads({ sized, of, boat }: SizingLoadsProps) {
  const { loads, rules, problems } = sized
  return (
    <Passage title={said.title} says={said.says.map((line) => <p key={line}>{line}</p>)}>
      {loads.length > 0 && <ListRows sized={sized} />}
      {rules.length > 0 && (
        <>
          <h3 className="gap">{said.rules}</h3>
          <ul className="prose">
            {rules.map(({ id, loads: members, atMost }) => (
              <li key={id}>{said.rule(members.map(spaced).join(', '), atMost)}</li>
            ))}
          </ul>
        </>
      )}
      {problems.length > 0 && (
        <>
          <h3 className="gap">{said.problems}</h3>
          <ul className="prose">
            {problems.map(({ path, found, allowed }) => (
              <li key={path}>
                {path}: {found}; {allowed}
              </li>
            ))}
          </ul>
        </>
      )}
      {boat.readOnly ? (
        <p className="small gap">{said.readOnly}</p>
      ) : (
        <>
          <Search of={of} boat={boat} />
          {loads.length > 1 && <NewRule loads={loads} boat={boat} />}
          {(loads.length > 0 || rules.length > 0) && <TakeOff loads={loads} rules={rules} boat={boat} />}
          <Forms of={of} boat={boat} />
        </>
      )}
    </Passage>
  )
}

/** The list as it was entered; where a recording corrects it, what is reckoned with stands beside it, and last what the list lacks. */
function ListRows({ sized }: { readonly sized: BoatSize }) {
  const { loads, reckoned, basis } = sized
  if (basis !== 'corrected') {
    const rows = loads.map((load) => {
      const { draws, starts, from } = cellsOf(load)
      return [spaced(load.id), draws, starts, `${spoken(hoursOn(load))} h`, from]
    })
    return <SizingRows name={said.title} heads={said.heads} rows={rows} />
  }
  const rows = reckoned.map((load) => {
    const entered = loads.find(({ id }) => id === load.id)
    const { draws, starts, from } = cellsOf(load)
    return [
      spaced(load.id),
      entered === undefined ? '–' : `${spoken(hoursOn(entered))} h`,
      `${spoken(hoursOn(load))} h`,
      draws,
      starts,
      from,
    ]
  })
  return <SizingRows name={said.title} heads={said.correctedHeads} rows={rows} />
}

function cellsOf({ watts, volts, start, basis }: Load) {
  return {
    draws: `${spoken(watts)} W, ${volts} V`,
    starts: start === undefined ? '–' : sayStart(start),
    from: said.basis[basis],
  }
}

/** Loads of the catalogue by words of their names; each goes on the list with one press. */
function Search({ of, boat }: { readonly of: OfSize; readonly boat: Boat }) {
  const id = useId()
  const [typed, setTyped] = useState('')
  const [added, setAdded] = useState('')
  const { loads } = of.question.book
  const wanted = typed.toLowerCase().split(/\s+/).filter(Boolean)
  const found =
    wanted.length === 0
      ? []
      : loads.filter(({ name, group, id: known }) =>
          wanted.every((word) => `${name} ${group} ${known}`.toLowerCase().includes(word)),
        )
  const add = async (load: CatalogueLoad) => {
    const name = freeName(load.id, new Set(of.question.facts.loads.map((one) => one.id)))
    const body = { id: name, is: load.id }
    const written = await boat.append([{ boat: boat.id, set: null, from: today(), kind: 'load', body }])
    if (written.ok) {
      setAdded(`${load.name}. ${said.added}`)
      setTyped('')
    }
  }
  return (
    <div className="gap">
      <div className="load-search">
        <label htmlFor={id}>{said.search}</label>
        <input id={id} type="search" value={typed} onChange={(event) => setTyped(event.target.value)} />
      </div>
      <p className="small" aria-live="polite">
        {wanted.length > 0 ? said.found(found.length) : added}
      </p>
      <ul className="found-loads">
        {found.slice(0, mostShown).map((load) => (
          <li key={load.id}>
            <Button onClick={() => void add(load)}>{said.add(load.name)}</Button>
          </li>
        ))}
      </ul>
    </div>
  )
}

/** A name that is not on the list yet: `oven`, `oven-2`. */
function freeName(wanted: string, taken: ReadonlySet<string>): string {
  if (!taken.has(wanted)) return wanted
  let n = 2
  while (taken.has(`${wanted}-${n}`)) n += 1
  return `${wanted}-${n}`
}

/** Two loads that are never on together, written with one press. */
function NewRule({ loads, boat }: { readonly loads: readonly Load[]; readonly boat: Boat }) {
  const ids = [...new Set(loads.map(({ id }) => id.split('.')[0]!))]
  const [first, setFirst] = useState('')
  const [second, setSecond] = useState('')
  const both = first !== '' && second !== '' && first !== second
  const write = async () => {
    const body = { id: `not-${first}-with-${second}`.slice(0, 60), loads: [first, second] }
    const written = await boat.append([{ boat: boat.id, set: null, from: today(), kind: 'house-rule', body }])
    if (!written.ok) return
    setFirst('')
    setSecond('')
  }
  return (
    <fieldset className="new-rule">
      <legend>{said.newRule}</legend>
      {(
        [
          [said.never, first, setFirst],
          [said.with, second, setSecond],
        ] as const
      ).map(([name, value, onChange]) => (
        <label key={name}>
          {name}
          <select value={value} onChange={(event) => onChange(event.target.value)}>
            <option value="">{said.choose}</option>
            {ids.map((id) => (
              <option key={id} value={id}>
                {spaced(id)}
              </option>
            ))}
          </select>
        </label>
      ))}
      <Button disabled={!both} onClick={() => void write()}>
        {said.writeRule}
      </Button>
    </fieldset>
  )
}

/** Loads that are no longer aboard and rules that are no longer kept, taken off with one press. */
function TakeOff({
  loads,
  rules,
  boat,
}: {
  readonly loads: readonly Load[]
  readonly rules: BoatSize['rules']
  readonly boat: Boat
}) {
  const ids = [...new Set(loads.map(({ id }) => id.split('.')[0]!))]
  const takeOff = (kind: 'load' | 'house-rule', id: string) =>
    void boat.append([{ boat: boat.id, set: null, from: today(), kind, body: { id, removed: true } }])
  return (
    <Behind name={said.takeOff}>
      <ul className="found-loads">
        {ids.map((id) => (
          <li key={id}>
            <Button onClick={() => takeOff('load', id)}>{said.takeOffOne(spaced(id))}</Button>
          </li>
        ))}
        {rules.map(({ id, loads: members, atMost }) => (
          <li key={id}>
            <Button onClick={() => takeOff('house-rule', id)}>
              {said.takeOffOne(said.rule(members.map(spaced).join(', '), atMost))}
            </Button>
          </li>
        ))}
      </ul>
    </Behind>
  )
}

const formKinds = ['load', 'habits', 'space', 'candidate'] as const

/** The forms of what sizing rests on, one at a time. */
function Forms({ of, boat }: { readonly of: OfSize; readonly boat: Boat }) {
  const [open, setOpen] = useState<(typeof formKinds)[number]>()
  const { boatFacts, set } = of.register
  const catalogue = useCatalogue()
  return (
    <div className="gap">
      <p className="acts">
        {formKinds.map((kind) => (
          <Button
            key={kind}
            aria-expanded={open === kind}
            onClick={() => setOpen(open === kind ? undefined : kind)}
          >
            {said.forms[kind]}
          </Button>
        ))}
      </p>
      {open !== undefined && (
        <EntryForm
          key={open}
          boat={boat.id}
          set={set}
          purpose={{ is: 'asked', name: 'sizing', kind: open, values: {} }}
          currency={boatFacts.currency ?? 'USD'}
          catalogue={catalogue}
          units={Object.values(boatFacts.units ?? {})}
          onWritten={() => setOpen(undefined)}
        />
      )}
    </div>
  )
}
