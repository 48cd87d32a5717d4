/**
 * Each past day: what was told on it, and what came.
 *
 * @module
 */

import type { Hindsight, LookedBack } from '../../alternatives/hindsight.js'
import { Heads, Passage } from '../parts/index.js'
import { words } from '../words/looking-back.js'
import { sayChance, sayDate, sayNumber, upperFirst } from '../words/say.js'
import type { Saying } from './looking-back-saying.js'

const { dates: said } = words

export function Dates({ hindsight, saying }: { readonly hindsight: Hindsight; readonly saying: Saying }) {
  return (
    <Passage title={said.title} says={said.says}>
      <table className="table folds">
        <Heads
          list={[said.day, { number: said.stop }, said.stopCame, { number: said.expected }, said.came]}
        />
        <tbody>
          {hindsight.dates.toReversed().map((date) => (
            <tr key={date.asOf}>
              <th scope="row">{sayDate(date.asOf)}</th>
              <td className="number" data-name={said.stop}>
                {sayChance(date.stopping)}
              </td>
              <td data-name={said.stopCame}>{date.stopped ? <b>{said.stopped}</b> : said.held}</td>
              <td className="number" data-name={said.expected}>
                {sayNumber(
                  date.parts.reduce((sum, { chance }) => sum + chance, 0),
                  1,
                )}
              </td>
              <td className="full">
                {failedOf(date, saying).map((line) => (
                  <span className="failed-then" key={line}>
                    {line}
                  </span>
                ))}
                {!date.complete && <span className="second failed-then">{said.notScored}</span>}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </Passage>
  )
}

function failedOf({ failed, parts }: LookedBack, { part }: Saying): readonly string[] {
  if (failed.length === 0) return [upperFirst(said.nothing)]
  return failed.map((one) => {
    const place = parts.filter(({ chance }) => chance > one.chance).length + 1
    return said.failed({
      part: upperFirst(part(one.part)),
      chance: sayChance(one.chance),
      place,
      of: parts.length,
    })
  })
}
