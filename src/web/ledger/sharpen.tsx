/**
 * What would sharpen the figures most: the fitting dates on which most money hangs, asked one by one.
 *
 * @module
 */

import { useEffect, useState } from 'react'
import { type WouldSharpen, wouldSharpen } from '../../forecast/would-sharpen.js'
import { registerOf } from '../../register/register.js'
import { setCatalogueOf } from '../../register/set-kind-of.js'
import type { Boat } from '../data/boat.js'
import { today } from '../data/today.js'
import { EntryForm } from '../entry/entry-form.js'
import { type FigureSaid, hole, Passage, PlainButton, Said } from '../parts/index.js'
import { figures } from '../words/figures.js'
import { logbook } from '../words/logbook.js'
import { lowerFirst, sayChance, shortName } from '../words/say.js'
import type { RowOf } from './entry-row.js'

const words = logbook.sharpen
/** So many are asked at once. */
const shown = 3

export function Sharpen({ of, boat }: { readonly of: RowOf; readonly boat: Boat }) {
  const list = useSharpening(of, boat)
  if (list.length === 0) return null
  return (
    <Passage title={words.title} says={words.says}>
      <ol className="five">
        {list.slice(0, shown).map((one) => (
          <OneQuestion key={one.part} of={of} one={one} />
        ))}
      </ol>
    </Passage>
  )
}

function OneQuestion({ of, one }: { readonly of: RowOf; readonly one: WouldSharpen }) {
  const [open, setOpen] = useState(false)
  const name = shortName(of.catalogue?.parts.find(({ id }) => id === one.part)?.name ?? one.part)
  const hangs = (says: string): FigureSaid => ({
    says,
    behind: () => ({
      name: figures.sharpen.name(lowerFirst(name)),
      value: `${figures.sharpen.value(sayChance(one.chanceIfNew), sayChance(one.chanceIfOld))}; ${of.money(Math.round(one.atStake))}`,
      comesFrom: figures.sharpen.from,
      moves: figures.entriesMove,
    }),
  })
  return (
    <li>
      <h3>{words.asks(name)}</h3>
      <Said
        text={words.because(hole('ifNew'), hole('ifOld'), hole('money'))}
        figures={{
          ifNew: hangs(sayChance(one.chanceIfNew)),
          ifOld: hangs(sayChance(one.chanceIfOld)),
          money: hangs(of.money(Math.round(one.atStake))),
        }}
      />
      {open ? (
        <EntryForm
          boat={of.boat}
          set={of.set}
          purpose={{
            is: 'asked',
            name: `fitted-${one.part}`,
            kind: 'fitted',
            values: { part: one.part, quality: 'original' },
          }}
          currency={of.currency}
          catalogue={of.catalogue}
          units={of.units}
          onWritten={() => setOpen(false)}
        />
      ) : (
        <PlainButton onClick={() => setOpen(true)}>
          {words.answer}
          <span className="unseen">: {name}</span>
        </PlainButton>
      )}
    </li>
  )
}

/** Reckoned after the page is drawn. */
function useSharpening(of: RowOf, boat: Boat): readonly WouldSharpen[] {
  const [list, setList] = useState<readonly WouldSharpen[]>([])
  const { catalogue, set } = of
  const { entries, id, sets } = boat
  useEffect(() => {
    if (catalogue === undefined || !sets.includes(set)) return
    const timer = setTimeout(() => {
      const register = registerOf({ entries, boat: id, set, asOf: today(), catalogue })
      setList(wouldSharpen(register, setCatalogueOf(register, catalogue).catalogue))
    }, 0)
    return () => clearTimeout(timer)
  }, [catalogue, set, entries, id, sets])
  return list
}
