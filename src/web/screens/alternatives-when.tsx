/**
 * When to replace, if not now: in sentences, and year by year.
 *
 * @module
 */

import { sayWhen } from '../../alternatives/say-bearing.js'
import type { WhenToReplace } from '../../alternatives/when-to-replace.js'
import { useSaid } from '../data/region.js'
import { Behind, Heads, Passage, WideTable } from '../parts/index.js'
import { bearing } from '../words/bearing.js'
import { HowFar, type OfBearing } from './alternatives-finding.js'
import { moneyOf } from './of-answer.js'

const { when: words } = bearing

export function When(of: OfBearing) {
  const { when } = of.bearing
  const said = useSaid()
  return (
    <Passage title={words.title} says={words.says}>
      <HowFar bearing={of.bearing} has={when !== undefined} />
      {when === null && <p className="prose">{words.none}</p>}
      {when && (
        <>
          {sayWhen(of.basis.model, when).map((line) => (
            <p key={line} className="prose gap-small">
              {said(line)}
            </p>
          ))}
          <Behind name={words.behind}>
            <Years of={of} when={when} />
          </Behind>
        </>
      )}
    </Passage>
  )
}

function Years({ of, when }: { readonly of: OfBearing; readonly when: WhenToReplace }) {
  const money = moneyOf(of.view)
  const years = Math.max(when.planned.length, when.limitByYear?.length ?? 0)
  return (
    <WideTable name={words.behind}>
      <table className="table">
        <Heads
          list={[words.year, { number: words.marginal }, { number: words.limit }, { number: words.adds }]}
        />
        <tbody>
          {Array.from({ length: years }, (_, k) => {
            const adds = when.planned[k]?.adds
            const limit = when.limitByYear?.[k]
            const year = String(k + 1)
            return (
              <tr key={year}>
                <th scope="row">{year}</th>
                <td className="number">{money(when.marginal[k]!)}</td>
                <td className="number">{limit === undefined ? words.always : money(limit)}</td>
                <td className="number">
                  {adds === undefined ? '' : `${money(adds.mean)} ± ${money(adds.standardError)}`}
                </td>
              </tr>
            )
          })}
        </tbody>
      </table>
    </WideTable>
  )
}
