/**
 * What is odd, asked in words, with answers as buttons; leaving it for now comes last.
 *
 * @module
 */

import { useEffect, useMemo, useState } from 'react'
import { checkIdsOf } from '../../catalogue/check-ids.js'
import { passableOf } from '../../catalogue/passable.js'
import type { Draft } from '../../logbook/draft.js'
import { type Entry, isKind } from '../../logbook/kinds.js'
import { oddities } from '../../logbook/oddities.js'
import { meterHoursOf } from '../../logbook/oddities-hours.js'
import type { Oddity } from '../../logbook/oddity.js'
import type { Boat } from '../data/boat.js'
import { useKept } from '../data/kept-text.js'
import { today } from '../data/today.js'
import { write } from '../data/write.js'
import { EntryForm } from '../entry/entry-form.js'
import { fieldsOf } from '../entry/fields.js'
import { saidProblem } from '../entry/problems.js'
import { draftTakingBack } from '../entry/take-back.js'
import { Asked, Button, Passage, PlainButton } from '../parts/index.js'
import { kindNames } from '../words/entry/kinds.js'
import { logbook } from '../words/logbook.js'
import { lowerFirst, sayDate, shortName, withUnits } from '../words/say.js'
import type { RowOf } from './entry-row.js'

const words = logbook.odd

/** The questions about a boat's log. Reckoned after the page is drawn: twenty thousand entries take a moment. */
export function useOddities(boat: Boat, catalogue: RowOf['catalogue']): readonly Oddity[] {
  const [odd, setOdd] = useState<readonly Oddity[]>([])
  const known = useMemo(
    () =>
      catalogue && {
        parts: new Map(catalogue.parts.map((part) => [part.id, new Set(part.modes.map(({ id }) => id))])),
        checks: checkIdsOf(catalogue),
        passable: passableOf(catalogue),
      },
    [catalogue],
  )
  useEffect(() => {
    if (known === undefined || boat.status !== 'ready') return
    const timer = setTimeout(() => setOdd(oddities(boat.entries, { today: today(), ...known })), 0)
    return () => clearTimeout(timer)
  }, [boat.entries, boat.status, known])
  return odd
}

/** Which questions someone left for now, and putting them away. */
export function useLeft(boat: string): readonly [ReadonlySet<string>, (key: string) => void, () => void] {
  const [left, setLeft] = useKept<readonly string[]>(`${boat}.left-for-now`, [])
  const set = useMemo(() => new Set(left), [left])
  return [set, (key) => setLeft([...left, key]), () => setLeft(undefined)]
}

export function keyOfOddity({ code, ids }: Oddity): string {
  return `${code} ${ids.join(' ')}`
}

export interface OddProps {
  readonly of: RowOf
  readonly boat: Boat
  readonly odd: readonly Oddity[]
}

export function Odd({ of, boat, odd }: OddProps) {
  const [left, leave, askAgain] = useLeft(of.boat)
  const open = odd.filter((one) => !left.has(keyOfOddity(one)))
  const put = odd.length - open.length
  const byId = useMemo(() => new Map(boat.entries.map((entry) => [entry.id, entry])), [boat.entries])
  if (odd.length === 0) return null
  return (
    <Passage title={words.title} says={words.says}>
      {open.slice(0, mostShown).map((one) => (
        <OneOddity
          key={keyOfOddity(one)}
          of={of}
          oddity={one}
          entries={one.ids.flatMap((id) => byId.get(id) ?? [])}
          onLeave={() => leave(keyOfOddity(one))}
        />
      ))}
      {open.length > mostShown && <p className="gap-small">{words.more(open.length - mostShown)}</p>}
      {put > 0 && (
        <p className="fine gap-small">
          {words.left(put)}. <PlainButton onClick={askAgain}>{words.askAgain}</PlainButton>
        </p>
      )}
    </Passage>
  )
}

/** So many are asked at once: the answers to the first may answer others. */
const mostShown = 10

interface OneProps {
  readonly of: RowOf
  readonly oddity: Oddity
  readonly entries: readonly Entry[]
  readonly onLeave: () => void
}

function OneOddity({ of, oddity, entries, onLeave }: OneProps) {
  const [mending, setMending] = useState<Entry>()
  const [problem, setProblem] = useState('')
  const answer = async (draft: Draft) => {
    const written = await write([draft])
    if (!written.ok) setProblem(written.problems.map((one) => saidProblem(one)).join(' '))
  }
  const retyping = (entry: Entry) => words.retype(sayDate(entry.until), lowerFirst(kindNames[entry.kind]))
  // Of two that would be called the same one is enough: it is asked about for being the other's double.
  const few = [...entries]
    .reverse()
    .slice(0, 2)
    .filter((entry, at, two) => at === 0 || retyping(entry) !== retyping(two[0]!))
  const acts = of.readOnly ? null : (
    <>
      {few
        .filter(({ kind }) => fieldsOf(kind).length > 0)
        .map((entry) => (
          <Button key={entry.id} onClick={() => setMending(entry)}>
            {retyping(entry)}
          </Button>
        ))}
      {answersTo(oddity, entries).map(({ says, draft }) => (
        <Button key={says} onClick={() => void answer(draft)}>
          {says}
        </Button>
      ))}
      <Button look="light" onClick={onLeave}>
        {words.leave}
      </Button>
    </>
  )
  return (
    <Asked title={sayQuestion(oddity.question, of.catalogue)} acts={acts}>
      {mending && (
        <EntryForm
          boat={of.boat}
          set={of.set}
          purpose={{ is: 'correct', entry: mending }}
          currency={of.currency}
          catalogue={of.catalogue}
          units={of.units}
          onWritten={() => setMending(undefined)}
        />
      )}
      {problem && <p className="problem">{problem}</p>}
    </Asked>
  )
}

/** Dates, hours and parts of a question as they are said on a page. */
function sayQuestion(question: string, catalogue: RowOf['catalogue']): string {
  const named = (_: string, id: string) => {
    const part = catalogue?.parts.find((one) => one.id === id)
    return part === undefined ? `“${id}”` : `“${lowerFirst(shortName(part.name))}”`
  }
  const said = question
    .replace(/"([^"]*)"/g, named)
    .replace(/\b\d{4}-\d\d(-\d\d)?\b/g, sayDate)
    .replace(/\b\d{4,}(\.\d+)? h\b/g, (hours) => `${Number.parseFloat(hours).toLocaleString('en-GB')} h`)
  return withUnits(said)
}

/** Answers that are entries of their own. */
function answersTo(
  { code }: Oddity,
  entries: readonly Entry[],
): readonly { readonly says: string; readonly draft: Draft }[] {
  const last = entries.at(-1)
  if (last === undefined) return []
  const meter = meterHoursOf(last)
  if (code === 'hours-fell' && last.set !== null && meter !== undefined) {
    const draft: Draft = {
      boat: last.boat,
      set: last.set,
      kind: 'meter-changed',
      from: entries[0]!.until,
      until: last.from,
      body: { newMeterHours: meter },
    }
    return [{ says: words.newMeter, draft }]
  }
  if (code === 'entered-twice') {
    return [{ says: words.takeBackOne, draft: draftTakingBack(entries.slice(1), words.enteredTwice) }]
  }
  if (code === 'quote-expired' && isKind(last, 'quote')) {
    const { job } = last.body
    const body = { choice: words.lapsedChoice, job }
    return [
      {
        says: words.lapsed,
        draft: { boat: last.boat, set: last.set, kind: 'decision', from: today(), body },
      },
    ]
  }
  return []
}
