/**
 * When to replace, if not now: in sentences, and year by year.
 *
 * @module
 */

import { sayWhen } from '../../alternatives/say-bearing.js'
import type { WhenToReplace } from '../../alternatives/when-to-replace.js'
import { useSaid } from '../data/region.js'
import { Behind, type FigureSaid, NumbersRow, NumbersTable, Passage } from '../parts/index.js'
import { bearing } from '../words/bearing.js'
import { HowFar, type OfBearing } from './alternatives-finding.js'
import { moneyOf } from './of-answer.js'

const { when: words } = bearing

export function When(of: OfBearing) {
  const { when } = of.bearing
  const said = useSaid()
  return (
    <Passage title={words.title} says={words.says} className="wide">
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
  const heads = [words.marginal, words.limit, words.adds]
  return (
    <NumbersTable name={words.behind} first={words.year} heads={heads}>
      {Array.from({ length: years }, (_, k) => {
        const adds = when.planned[k]?.adds
        const limit = when.limitByYear?.[k]
        const year = String(k + 1)
        const { figures } = words
        return (
          <NumbersRow
            key={year}
            name={year}
            heads={heads}
            figures={[
              opened(figures.marginal, { year, says: money(when.marginal[k]!) }),
              opened(figures.limit, { year, says: limit === undefined ? words.always : money(limit) }),
              ...(adds === undefined
                ? []
                : [
                    opened(figures.adds, {
                      year,
                      says: `${money(adds.mean)} ± ${money(adds.standardError)}`,
                    }),
                  ]),
            ]}
          />
        )
      })}
    </NumbersTable>
  )
}

interface YearFigure {
  readonly name: (year: string) => string
  readonly from: string
  readonly moves: string
}

function opened(
  of: YearFigure,
  { year, says }: { readonly year: string; readonly says: string },
): FigureSaid {
  return {
    says,
    behind: () => ({ name: of.name(year), value: says, comesFrom: of.from, moves: of.moves }),
  }
}
