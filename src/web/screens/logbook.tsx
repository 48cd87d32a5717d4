/**
 * The logbook: what is asked, the form for an entry, and the ledger.
 *
 * @module
 */

import { useMemo } from 'react'
import { isKind } from '../../logbook/kinds.js'
import { type Boat, useBoat, useCatalogue } from '../data/boat.js'
import { boatFactsOf } from '../data/facts.js'
import { catalogueInWords } from '../data/region.js'
import { today } from '../data/today.js'
import { saidProblem } from '../entry/problems.js'
import { moneySayer } from '../entry/say-entry.js'
import { Disputes } from '../ledger/disputes.js'
import type { RowOf } from '../ledger/entry-row.js'
import { Ledger } from '../ledger/ledger.js'
import { keyOfOddity, Odd, useLeft, useOddities } from '../ledger/odd.js'
import { PaperLogIn } from '../ledger/paper-log.js'
import { Refused } from '../ledger/refused.js'
import { Sharpen } from '../ledger/sharpen.js'
import type { OfSet } from '../of-set.js'
import { Lead, Passage, Say } from '../parts/index.js'
import { form } from '../words/entry/form.js'
import { logbook } from '../words/logbook.js'
import { plural, sayDate } from '../words/say.js'
import { EntryHere } from './write-entry.js'

export function LogbookScreen({ boat: id, set }: OfSet) {
  const boat = useBoat(id)
  const facts = useMemo(() => boatFactsOf(boat.entries), [boat.entries])
  const catalogue = catalogueInWords(useCatalogue(), facts.words)
  const of: RowOf = useMemo(() => {
    const { currency = 'USD', units = {} } = facts
    const spoken = Object.values(units)
    return {
      boat: id,
      set,
      readOnly: boat.readOnly,
      catalogue,
      currency,
      money: moneySayer(currency),
      units: spoken,
    }
  }, [id, set, boat.readOnly, catalogue, facts])
  const odd = useOddities(boat, catalogue)
  const [left] = useLeft(id)
  const open = useMemo(() => odd.filter((one) => !left.has(keyOfOddity(one))), [odd, left])
  const asked = useMemo(() => new Set(open.flatMap(({ ids }) => ids)), [open])
  if (boat.status === 'loading') return null
  if (boat.status === 'failed') return <Unreadable problems={boat.problems} />
  return (
    <>
      <Passage title={logbook.title} says={<Margin boat={boat} />} first>
        <Head boat={boat} asked={open.length} />
        {boat.readOnly ? (
          <p className="prose gap-small">{form.readOnly}</p>
        ) : (
          <div id="entry-here" tabIndex={-1}>
            <EntryHere boat={id} set={set} />
          </div>
        )}
      </Passage>
      <Refused of={of} />
      <Odd of={of} boat={boat} odd={odd} />
      <Disputes of={of} disputes={boat.disputes} />
      {!boat.readOnly && <Sharpen of={of} boat={boat} />}
      {boat.entries.length > 0 && (
        <Passage title={logbook.latest} says={logbook.neverRubbedOut} className="ledger">
          <Ledger {...of} log={boat} asked={asked} />
        </Passage>
      )}
      {!boat.readOnly && <PaperLogIn of={of} />}
    </>
  )
}

/** A log that cannot be read is no empty one. */
function Unreadable({ problems }: Pick<Boat, 'problems'>) {
  return (
    <Passage title={logbook.title} first>
      <Say>{logbook.unreadable}</Say>
      <ul className="small gap-small">
        {problems.map((problem) => (
          <li key={`${problem.code} ${problem.path}`}>{saidProblem(problem)}</li>
        ))}
      </ul>
    </Passage>
  )
}

function Head({ boat, asked }: { readonly boat: Boat; readonly asked: number }) {
  const last = useMemo(
    () =>
      boat.entries
        .map(({ noted }) => noted)
        .sort()
        .at(-1),
    [boat.entries],
  )
  if (last === undefined) {
    return (
      <>
        <Say>{logbook.empty.say}</Say>
        <Lead>{logbook.empty.lead}</Lead>
      </>
    )
  }
  const day = last.slice(0, 10) === today() ? logbook.today : sayDate(last.slice(0, 10))
  return (
    <Say>
      {logbook.lastWritten(day)} <b>{asked === 0 ? logbook.nothingAsked : logbook.asked(asked)}</b>
    </Say>
  )
}

function Margin({ boat }: { readonly boat: Boat }) {
  const { entries } = boat
  const first = entries[0]?.from.slice(0, 4)
  const complete = entries.findLast((entry) => isKind(entry, 'complete'))
  if (first === undefined) return <p>{logbook.none}</p>
  return (
    <>
      <p>{logbook.entries(plural(entries.length, ...logbook.entry), first)}</p>
      {complete && <p>{logbook.complete(sayDate(complete.from), sayDate(complete.until))}</p>}
    </>
  )
}
