/**
 * The pieces of a job by who deals in them, where each stands, and what is done about it: ordered, it came, it is like the old.
 *
 * @module
 */

import { type FormEvent, useState } from 'react'
import type { Need } from '../../job/kit.js'
import { inSentence, sayDifferences, sayLack, sayNeed } from '../../job/kit-words.js'
import type { Draft } from '../../logbook/draft.js'
import { useKept } from '../data/kept-text.js'
import { useSaid } from '../data/region.js'
import { today } from '../data/today.js'
import { dateTyped } from '../entry/typed.js'
import { Behind, Button, Passage, Tag } from '../parts/index.js'
import { words } from '../words/job-kit.js'
import { sayDate, sayList, upperFirst } from '../words/say.js'
import type { OfKit } from './job-kit-of.js'
import { lineOf, orderDraft, problemsInWords } from './job-kit-write.js'
import { TextField } from './links-fields.js'

export function KitPieces(all: OfKit) {
  const { kit, kits } = all
  return (
    <Passage title={words.pieces} says={words.piecesSay} className="screen-only">
      {kits.suppliers.map((supplier) => {
        const needs = kit.needs.filter((need) => need.supplier === supplier.id)
        if (needs.length === 0) return null
        return (
          <section key={supplier.id} className="kit-supplier" aria-labelledby={`kit-pieces-${supplier.id}`}>
            <h3 id={`kit-pieces-${supplier.id}`}>{supplier.name}</h3>
            <ul>
              {needs.map((need) => (
                <Piece key={need.key} need={need} {...all} />
              ))}
            </ul>
            <OrderForm {...all} supplier={supplier} needs={needs} />
          </section>
        )
      })}
      {kit.besides.length > 0 && (
        <p className="prose">
          {words.besides(sayList(kit.besides.map(({ key }) => key.replace('/', ' ').replaceAll('-', ' '))))}
        </p>
      )}
    </Passage>
  )
}

function Piece({ need, ...all }: OfKit & { readonly need: Need }) {
  const { nameOf } = all
  const said = useSaid()
  const { lacks, sentAway, stops, alsoFor, oldNumber, tally, byNumber } = need
  const numbers = [
    ...(oldNumber === undefined ? [] : [words.oldNumber(oldNumber)]),
    ...(tally.number === undefined ? [] : [words.newNumber(tally.number)]),
  ].join(', ')
  return (
    <li className="kit-piece">
      <div>
        <p>
          <b>{said(sayNeed(need, nameOf))}</b>, {words.count(need)}{' '}
          {lacks === 'does-not-match' && <Tag look="solid">{words.misfit}</Tag>}
          {lacks !== undefined && !stops && <Tag look="outline">{words.nuisance}</Tag>}
        </p>
        <p className="small second">
          {[
            upperFirst(sentAway ? words.goesAway : sayLack(need, sayDate)),
            ...(numbers === '' ? [] : [numbers]),
            ...(alsoFor.length === 0
              ? []
              : [words.alsoFor(sayList(alsoFor.map((part) => inSentence(nameOf(part)))))]),
            ...(byNumber?.verdict === 'fits' ? [words.fitsByNumber] : []),
            ...(byNumber?.verdict === 'think' && lacks !== 'unchecked'
              ? [words.thinkByNumber(sayDifferences(byNumber.differences))]
              : []),
          ].join('. ')}
          .
        </p>
      </div>
      {!all.known.log.readOnly && <PieceActs need={need} {...all} />}
    </li>
  )
}

/** What can be said of one piece: that it came, that it is like the old one, or how it differs. */
function PieceActs({ need, of, known: { log, job } }: OfKit & { readonly need: Need }) {
  const [differs, setDiffers] = useKept<string | null>(`${of.boat}.${of.set}.kit-differs.${need.key}`, null)
  const [wrong, setWrong] = useState<string>()
  const { state, lacks } = need
  if (lacks === undefined || (state !== 'ordered' && state !== 'received')) return null
  const write = (draft: Draft) =>
    void log.append([draft]).then((written) => {
      setWrong(written.ok ? undefined : problemsInWords(written.problems))
      if (written.ok) setDiffers(undefined)
    })
  const place = { of, job: job.name }
  const check = (fits: boolean) =>
    write(orderDraft(place, 'checked', [lineOf(need, fits ? { fits } : { fits, differs: differs ?? '' })]))
  const submit = (event: FormEvent) => {
    event.preventDefault()
    check(false)
  }
  const about = inSentence(need.name)
  return (
    <div className="kit-acts">
      {differs === null ? (
        <div className="acts">
          {state === 'ordered' && (
            <Button
              aria-label={`${words.came}: ${about}`}
              onClick={() => write(orderDraft(place, 'received', [lineOf(need)]))}
            >
              {words.came}
            </Button>
          )}
          {state === 'received' && (
            <Button aria-label={`${words.fits}: ${about}`} onClick={() => check(true)}>
              {words.fits}
            </Button>
          )}
          {state === 'received' && (
            <Button look="light" aria-label={`${words.misfits}: ${about}`} onClick={() => setDiffers('')}>
              {words.misfits}
            </Button>
          )}
        </div>
      ) : (
        <form onSubmit={submit}>
          <TextField name={words.differs} hint="" value={differs} onChange={setDiffers} />
          <div className="acts">
            <Button type="submit" look="filled" disabled={differs.trim() === ''}>
              {words.writeDiffers}
            </Button>
            <Button look="light" onClick={() => setDiffers(undefined)}>
              {words.leaveIt}
            </Button>
          </div>
        </form>
      )}
      <p aria-live="polite" className={wrong === undefined ? '' : 'problem'}>
        {wrong ?? ''}
      </p>
    </div>
  )
}

interface OrderFormProps extends OfKit {
  readonly supplier: OfKit['kits']['suppliers'][number]
  readonly needs: readonly Need[]
}

interface TypedOrder {
  readonly left: readonly string[]
  readonly numbers: Readonly<Record<string, string>>
  readonly from: string
  readonly expected: string
}

const nothingTyped: TypedOrder = { left: [], numbers: {}, from: '', expected: '' }

/** An order of all that is still missing from one kind of supplier; what was not ordered is ticked off. */
function OrderForm({ of, known: { log, job }, supplier, needs, nameOf }: OrderFormProps) {
  const open = needs.filter(
    ({ lacks }) => lacks === 'to-order' || lacks === 'settle' || lacks === 'does-not-match',
  )
  const key = `${of.boat}.${of.set}.${job.name}.kit-order.${supplier.id}`
  const [typed, setTyped] = useKept<TypedOrder>(key, nothingTyped)
  const [state, setState] = useState<'still' | 'writing'>('still')
  const [wrong, setWrong] = useState<string>()
  if (open.length === 0 || log.readOnly) return null
  const taken = open.filter((need) => !typed.left.includes(need.key))
  const day = typed.expected.trim() === '' ? undefined : dateTyped(typed.expected, today())
  const isNoDay = typed.expected.trim() !== '' && day === undefined
  const place = { of, job: job.name }
  const ordered = () =>
    orderDraft(
      place,
      'ordered',
      taken.map((need) => lineOf(need, { count: need.count + need.spares, ...numberOf(typed, need) })),
      {
        ...(typed.from.trim() === '' ? {} : { supplier: typed.from.trim() }),
        ...(day === undefined ? {} : { expected: day }),
      },
    )
  const aboard = () =>
    orderDraft(
      place,
      'checked',
      taken.map((need) => lineOf(need, { fits: true, ...numberOf(typed, need) })),
    )
  const write = async (draft: Draft) => {
    if (isNoDay) return
    setState('writing')
    const written = await log.append([draft])
    setWrong(written.ok ? undefined : problemsInWords(written.problems))
    if (written.ok) setTyped(undefined)
    setState('still')
  }
  const tick = (need: Need) =>
    setTyped({
      ...typed,
      left: typed.left.includes(need.key)
        ? typed.left.filter((one) => one !== need.key)
        : [...typed.left, need.key],
    })
  return (
    <Behind name={words.order(supplier.name)}>
      <form
        onSubmit={(event) => {
          event.preventDefault()
          void write(ordered())
        }}
        className="kit-order"
      >
        <fieldset>
          <legend>{words.orderOf}</legend>
          {open.map((need) => (
            <div key={need.key} className="picks kit-ticked">
              <label>
                <input type="checkbox" checked={!typed.left.includes(need.key)} onChange={() => tick(need)} />{' '}
                {sayNeed(need, nameOf)}, {words.count(need)}
              </label>
              {need.numbered && (
                <input
                  className="input"
                  autoComplete="off"
                  maxLength={80}
                  aria-label={words.numberOrdered(inSentence(need.name))}
                  placeholder={words.numberHint}
                  value={typed.numbers[need.key] ?? ''}
                  onChange={({ target }) =>
                    setTyped({ ...typed, numbers: { ...typed.numbers, [need.key]: target.value } })
                  }
                />
              )}
            </div>
          ))}
        </fieldset>
        <div className="links-fields">
          <TextField
            name={words.supplier}
            hint=""
            value={typed.from}
            onChange={(from) => setTyped({ ...typed, from })}
          />
          <TextField
            name={words.expected}
            hint={words.expectedHint}
            value={typed.expected}
            problem={isNoDay ? words.notADay : undefined}
            onChange={(expected) => setTyped({ ...typed, expected })}
          />
        </div>
        <p aria-live="polite" className={wrong === undefined ? '' : 'problem'}>
          {wrong ?? ''}
        </p>
        <div className="acts">
          <Button type="submit" look="filled" disabled={state === 'writing' || taken.length === 0}>
            {state === 'writing' ? words.writing : words.writeOrder}
          </Button>
          <Button
            look="light"
            disabled={state === 'writing' || taken.length === 0}
            onClick={() => void write(aboard())}
          >
            {words.writeAboard}
          </Button>
        </div>
      </form>
    </Behind>
  )
}

function numberOf({ numbers }: TypedOrder, { key }: Need): { readonly number?: string } {
  const number = numbers[key]?.trim() ?? ''
  return number === '' ? {} : { number }
}
