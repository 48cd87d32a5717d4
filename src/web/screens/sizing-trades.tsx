/**
 * What smaller sets would ask of the people aboard: a list to choose from.
 *
 * @module
 */

import * as Comlink from 'comlink'
import { useEffect, useState } from 'react'
import { sayBlocked, sayMeasures, spoken } from '../../sizing/say-size.js'
import type { BoatSize } from '../../sizing/size-boat.js'
import type { BoatTrades, KeptChoice } from '../../sizing/trade-boat.js'
import type { Boat } from '../data/boat.js'
import { today } from '../data/today.js'
import { moneySayer } from '../entry/say-entry.js'
import { Behind, Button, Passage } from '../parts/index.js'
import { upperFirst } from '../words/say.js'
import { words } from '../words/sizing.js'
import type { RuleFinder } from '../work/sizing.worker.js'
import type { OfSize } from './of-size.js'
import { nameOfSet, SizingRows } from './sizing-rows.js'

const { trades: said } = words

export interface SizingTradesProps {
  readonly sized: BoatSize
  readonly of: OfSize
  readonly boat: Boat
}

export function SizingTrades({ sized, of, boat }: SizingTradesProps) {
  const found = useTrades(of)
  const nameOf = (id: string) => nameOfSet(sized.sets.find(({ set }) => set.id === id)!.set)
  const money = moneySayer(of.register.boatFacts.currency ?? 'USD')
  return (
    <Passage title={said.title} says={said.says}>
      <div aria-live="polite">
        {found === undefined && <p className="waiting second">{said.working}</p>}
        {found === 'failed' && <p className="lead">{said.failed}</p>}
        {typeof found === 'object' && <Choices trades={found} nameOf={nameOf} money={money} boat={boat} />}
      </div>
    </Passage>
  )
}

interface ChoicesProps {
  readonly trades: BoatTrades
  readonly nameOf: (id: string) => string
  readonly money: (amount: number) => string
  readonly boat: Boat
}

function Choices({ trades, nameOf, money, boat }: ChoicesProps) {
  const { choices, blocked, yearsKept } = trades
  const round = (amount: number) => money(Math.round(amount / 10) * 10)
  if (choices.length === 0) return <p className="lead">{said.none}</p>
  return (
    <>
      <SizingRows
        name={said.title}
        heads={said.heads}
        rows={choices.map((choice) => [
          String(choice.rules.length + choice.softStarters.length),
          nameOf(choice.id),
          upperFirst(sayMeasures(choice)),
          `${spoken(choice.waitingHours)} h`,
          spoken(choice.overloadsLeft),
          choice.saves === undefined ? '–' : round(choice.saves),
        ])}
      />
      <p className="fine gap-small">{said.saves(yearsKept)}</p>
      {!boat.readOnly &&
        choices
          .filter(({ rules }) => rules.length > 0)
          .map((choice) => <Keep key={choice.id} choice={choice} name={nameOf(choice.id)} boat={boat} />)}
      {choices.some(({ each, eachStarter }) => each.length + eachStarter.length > 0) && (
        <Behind name={said.each}>
          <SizingRows
            name={said.each}
            heads={said.eachHeads}
            rows={choices.flatMap(({ id, each, eachStarter }) =>
              [
                ...each.map((rule) => ({ ...rule, measures: { rules: [rule], softStarters: [] } })),
                ...eachStarter.map((one) => ({ ...one, measures: { rules: [], softStarters: [one.load] } })),
              ].map(({ measures, neededWithout, saves }) => [
                `${nameOf(id)}: ${sayMeasures(measures)}`,
                neededWithout === undefined ? '–' : nameOf(neededWithout),
                saves === undefined ? '–' : round(saves),
              ]),
            )}
          />
        </Behind>
      )}
      {blocked.length > 0 && (
        <Behind name={said.blocked}>
          <ul className="prose">
            {blocked.map((one) => (
              <li key={one.id}>
                {nameOf(one.id)}: {sayBlocked(one)}.
              </li>
            ))}
          </ul>
        </Behind>
      )}
    </>
  )
}

/** Writes the rules of a choice into the log. */
function Keep({
  choice,
  name,
  boat,
}: {
  readonly choice: KeptChoice
  readonly name: string
  readonly boat: Boat
}) {
  const keep = () =>
    void boat.append(
      choice.rules.map(({ loads }) => ({
        boat: boat.id,
        set: null,
        from: today(),
        kind: 'house-rule' as const,
        body: {
          id: `not-${loads.map((id) => id.replaceAll('.', '-')).join('-with-')}`.slice(0, 60),
          loads: [...new Set(loads.map((id) => id.split('.')[0]!))],
        },
      })),
    )
  return (
    <p className="acts">
      <Button onClick={keep}>
        {said.keep}: {name}
      </Button>
    </p>
  )
}

/** Found anew whenever what it rests on changes; the last one that was asked for counts. */
function useTrades(of: OfSize): BoatTrades | 'failed' | undefined {
  const [found, setFound] = useState<BoatTrades | 'failed'>()
  useEffect(() => {
    let isWanted = true
    setFound(undefined)
    const worker = new Worker(new URL('../work/sizing.worker.ts', import.meta.url), { type: 'module' })
    const finder = Comlink.wrap<RuleFinder>(worker)
    worker.onerror = () => isWanted && setFound('failed')
    void finder
      .find(of.question, of.register.terms)
      .then((trades) => isWanted && setFound(trades))
      .catch(() => isWanted && setFound('failed'))
    return () => {
      isWanted = false
      worker.terminate()
    }
  }, [of])
  return found
}
