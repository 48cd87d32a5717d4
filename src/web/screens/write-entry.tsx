/**
 * Writing an entry from whatever page is open.
 *
 * @module
 */

import { useBoat, useCatalogue } from '../data/boat.js'
import { boatFactsOf, lastReading } from '../data/facts.js'
import { catalogueInWords } from '../data/region.js'
import { EntryForm } from '../entry/entry-form.js'
import { SendingState } from '../entry/sending-state.js'
import type { OfSet } from '../of-set.js'
import { form } from '../words/entry/form.js'
import { sayDate } from '../words/say.js'

/** Stays open after an entry, for the next one. */
export function WriteEntry({ boat, set }: OfSet & { readonly onDone: () => void }) {
  return <EntryHere boat={boat} set={set} />
}

export function EntryHere({ boat: id, set }: OfSet) {
  const boat = useBoat(id)
  const { currency = 'USD', words, units = {} } = boatFactsOf(boat.entries)
  const catalogue = catalogueInWords(useCatalogue(), words)
  if (boat.readOnly) return <p className="prose">{form.readOnly}</p>
  const last = lastReading(boat.entries, set)
  const read = last && form.lastRead(`${last.hours.toLocaleString('en-GB')} h`, sayDate(last.on))
  return (
    <>
      <EntryForm
        boat={id}
        set={set}
        purpose={{ is: 'new' }}
        currency={currency}
        catalogue={catalogue}
        units={Object.values(units)}
        lastRead={read}
      />
      <SendingState boat={id} />
    </>
  )
}
