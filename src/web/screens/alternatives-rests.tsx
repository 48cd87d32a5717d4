/**
 * What an answer rests on: entries, histories, the set's own record, and what was taken for granted.
 *
 * @module
 */

import { Passage } from '../parts/index.js'
import { words } from '../words/alternatives.js'
import { plural, sayNumber, shortName, upperFirst } from '../words/say.js'
import type { OfAnswer } from './of-answer.js'

const { rests } = words
const most = 5

export function RestsOn({ basis, view }: OfAnswer) {
  const { restsOn, names, assumed, problems, failsTimes, model } = basis
  const parts = Object.entries(restsOn)
    .filter(([, entries]) => entries.length > 0)
    .sort((a, b) => b[1].length - a[1].length)
  const entries = new Set(parts.flatMap(([, ids]) => ids))
  const histories = rests.histories(sayNumber(view.histories))
  const { median, logSd } = model.labour.overrun
  const percent = (factor: number) => `${Math.round((factor - 1) * 100)}\u00a0%`
  return (
    <Passage title={rests.title}>
      <div className="two">
        <div>
          <p className="small prose">
            {parts.length === 0
              ? rests.catalogueOnly
              : rests.entries(sayNumber(entries.size), plural(parts.length, 'part'))}
          </p>
          <table className="table gap-small">
            <tbody>
              {parts.slice(0, most).map(([part, ids]) => (
                <tr key={part}>
                  <th scope="row">{shortName(names.parts[part] ?? part)}</th>
                  <td className="number">{plural(ids.length, 'entry', 'entries')}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
        <div className="small">
          <p className="prose">
            <b>{histories.bold}</b>
            {histories.after}
          </p>
          <p className="prose gap-small">
            {rests.fails({
              times: sayNumber(failsTimes.mean, 1),
              low: sayNumber(failsTimes.low, 1),
              high: sayNumber(failsTimes.high, 1),
            })}
          </p>
          <p className="prose gap-small">
            {rests.overrun({
              mean: percent(median * Math.exp(logSd ** 2 / 2)),
              high: percent(median * Math.exp(1.2816 * logSd)),
            })}
          </p>
        </div>
      </div>
      <TakenForGranted title={rests.assumed} list={assumed} />
      <TakenForGranted
        title={rests.refused}
        list={problems.map(({ path, found, allowed }) => `${path}: ${found}; allowed: ${allowed}`)}
      />
    </Passage>
  )
}

export function TakenForGranted({
  title,
  list,
}: {
  readonly title: string
  readonly list: readonly string[]
}) {
  if (list.length === 0) return null
  return (
    <div className="small gap-small">
      <h3 className="small">{title}</h3>
      <ul className="prose">
        {list.map((line) => (
          <li key={line}>{upperFirst(line)}.</li>
        ))}
      </ul>
    </div>
  )
}
