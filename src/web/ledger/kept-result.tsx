/**
 * What a decision rested on: the figures that were kept with it.
 *
 * @module
 */

import { useEffect, useState } from 'react'
import type { KeptAnswer } from '../../alternatives/kept-answer.js'
import { useSaid } from '../data/region.js'
import { Behind, Heads } from '../parts/index.js'
import { kept as words } from '../words/looking-back.js'
import { lowerFirst, sayMoney, sayNumber } from '../words/say.js'

export interface KeptResultProps {
  readonly kept: KeptAnswer
  readonly because: string | undefined
  readonly currency: string
}

export function KeptResult(of: KeptResultProps) {
  return (
    <Behind name={words.behind}>
      <Result {...of} />
    </Behind>
  )
}

function Result({ kept, because, currency }: KeptResultProps) {
  const { result, histories, seed, program, engine } = kept
  const { best, next, saving, chanceBest, walkAway } = result
  const name = useNames(kept)
  const money = (amount: number) => sayMoney(currency, amount)
  return (
    <>
      {because !== undefined && <p>{words.because(because)}</p>}
      <p>
        {next === null
          ? words.alone(lowerFirst(name(best)))
          : words.said({
              best: lowerFirst(name(best)),
              saving: money(saving),
              next: lowerFirst(name(next)),
              chance: sayNumber(100 * chanceBest, 0),
            })}
      </p>
      {walkAway !== undefined && <p>{words.walkAway(money(walkAway.price), money(walkAway.quote))}</p>}
      <table className="table gap-small">
        <Heads list={[words.alternative, { number: words.mean }, { number: words.error }]} />
        <tbody>
          {result.alternatives.map(({ alternative, mean, error, barred }) => (
            <tr key={alternative}>
              <th scope="row">
                {name(alternative)}
                {barred && <span className="second">, {words.barred}</span>}
              </th>
              <td className="number">{money(mean)}</td>
              <td className="number">{error === null ? '–' : money(error)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="fine gap-small">{words.by({ histories: sayNumber(histories), seed, program, engine })}</p>
    </>
  )
}

/** Names of the alternatives, from the life model that was kept; until it is unpacked, and where it cannot be, their ids. */
function useNames(kept: KeptAnswer): (id: string) => string {
  const said = useSaid()
  const [names, setNames] = useState<ReadonlyMap<string, string>>(new Map())
  useEffect(() => {
    let gone = false
    void import('../../alternatives/kept-answer.js').then(({ keptModel }) => {
      const read = keptModel(kept)
      if (gone || !read.ok) return
      setNames(new Map(read.model.alternatives.map(({ id, name }) => [id, name ?? id])))
    })
    return () => {
      gone = true
    }
  }, [kept])
  return (id) => said(names.get(id) ?? id)
}
