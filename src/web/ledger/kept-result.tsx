/**
 * What a decision rested on: the figures that were kept with it.
 *
 * @module
 */

import type { KeptAnswer } from '../../alternatives/kept-answer.js'
import { Behind, Heads } from '../parts/index.js'
import { kept as words } from '../words/looking-back.js'
import { sayChance, sayNumber } from '../words/say.js'

export function KeptResult({
  kept,
  money,
}: {
  readonly kept: KeptAnswer
  readonly money: (amount: number) => string
}) {
  const { result, histories, seed, program, engine } = kept
  const { best, next, saving, chanceBest, walkAway } = result
  return (
    <Behind name={words.behind}>
      <p>
        {next === null
          ? words.alone(inWords(best))
          : words.said({
              best: inWords(best),
              saving: money(saving),
              next: inWords(next),
              chance: sayChance(chanceBest),
            })}
      </p>
      {walkAway !== undefined && <p>{words.walkAway(money(walkAway.price), money(walkAway.quote))}</p>}
      <table className="table">
        <Heads list={[words.alternative, { number: words.mean }, { number: words.error }]} />
        <tbody>
          {result.alternatives.map(({ alternative, mean, error, barred }) => (
            <tr key={alternative}>
              <th scope="row">
                {inWords(alternative)}
                {barred && <span className="second">, {words.barred}</span>}
              </th>
              <td className="number">{money(mean)}</td>
              <td className="number">{error === null ? '–' : money(error)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="fine">{words.by({ histories: sayNumber(histories), seed, program, engine })}</p>
    </Behind>
  )
}

/** An alternative's id as it can be read: its name is in the life model that was kept, packed. */
function inWords(id: string): string {
  return id.replaceAll('-', ' ')
}
