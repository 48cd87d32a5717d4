/**
 * What could hurt, what should save, and what was spent.
 *
 * @module
 */

import type { Entry } from '../../logbook/kinds.js'
import { paidIn } from '../entry/say-entry.js'
import { FigureRow, type FigureSaid, Heads, hole, Passage, Said, Tag } from '../parts/index.js'
import { figures as said } from '../words/figures.js'
import { lowerFirst, sayChance, sayDay, sayMoney, sayNumber, shortName, upperFirst } from '../words/say.js'
import { words } from '../words/set.js'
import { dangerPath, Overruling, sayEntries } from './behind-figures.js'
import { partFiguresOf } from './forecast-figures.js'
import { likeliestFirst, type OfForecast } from './of-forecast.js'

const least = 0.00005

export function Dangers(of: OfForecast) {
  const { basis, view } = of
  const { dangers } = words
  const open = new Set(
    basis.register.openDangers
      .filter(({ madeSafeBy }) => madeSafeBy === undefined)
      .map(({ danger }) => danger),
  )
  const parts = likeliestFirst(of)
  const rows = Object.entries(view.forecast.set.dangers)
    .filter(([danger, perYear]) => perYear > least || open.has(danger))
    .sort((a, b) => b[1] - a[1])
  return (
    <Passage title={dangers.title} says={dangers.says}>
      <table className="table folds">
        <Heads list={[dangers.what, dangers.through, dangers.heed, { number: dangers.rate }]} />
        <tbody>
          {rows.map(([danger, perYear]) => {
            const by = parts.toSorted(
              (a, b) => (b.odds.dangers[danger] ?? 0) - (a.odds.dangers[danger] ?? 0),
            )[0]
            const name = upperFirst(basis.names.dangers[danger]?.name ?? danger)
            const rate: FigureSaid = {
              says: sayNumber(perYear * 100, perYear * 100 < 0.095 ? 2 : 1),
              behind: () => ({
                name,
                value: dangers.value(sayNumber(perYear * 100, 2)),
                comesFrom: dangers.from(sayChance(basis.model.dangers[danger] ?? 0)),
                moves: dangers.moves,
                overrule: <Overruling of={of} paths={[dangerPath(of, danger)]} />,
              }),
            }
            return (
              <FigureRow key={danger} columns={4} className="opens">
                {(row) => (
                  <>
                    <th scope="row">
                      {name} {open.has(danger) && <Tag look="solid">{dangers.foundOpen}</Tag>}
                    </th>
                    <td data-name={dangers.through}>{by ? lowerFirst(by.name) : ''}</td>
                    <td className="full">{basis.names.dangers[danger]?.caution}</td>
                    <td className="number" data-name={dangers.rate}>
                      {row.of('rate', rate, { label: name, leads: true, bold: true })}
                    </td>
                  </>
                )}
              </FigureRow>
            )
          })}
        </tbody>
      </table>
    </Passage>
  )
}

export function Protections(of: OfForecast) {
  const { basis } = of
  const { protections } = words
  const shownParts = likeliestFirst(of)
  const list = basis.register.protections
  if (list.length === 0) {
    return (
      <Passage title={protections.title} says={protections.says}>
        <p className="small">{protections.none}</p>
      </Passage>
    )
  }
  return (
    <Passage title={protections.title} says={protections.says}>
      <table className="table folds">
        <Heads list={[protections.name, protections.tested, { number: protections.asleep }]} />
        <tbody>
          {list.map(({ part, fitted, lastTestedDay }) => {
            const name = shortName(basis.names.parts[part] ?? part)
            const shown = shownParts.find(({ odds }) => odds.part === part)
            const asleep =
              fitted === 'not-fitted' || shown === undefined
                ? undefined
                : partFiguresOf(of, shown).asleep(sayChance(shown.odds.failedUnnoticedNow), protections.moves)
            return (
              <FigureRow key={part} columns={3} className="opens">
                {(row) => (
                  <>
                    <th scope="row">
                      {name}
                      {fitted === 'not-known' && <span className="under">{protections.notKnown}</span>}
                    </th>
                    <td className="full">
                      {fitted === 'not-fitted'
                        ? protections.notFitted
                        : lastTestedDay === undefined
                          ? protections.never
                          : sayDay(lastTestedDay)}
                    </td>
                    <td className="number" data-name={protections.asleep}>
                      {asleep === undefined
                        ? protections.noOdds
                        : row.of('asleep', asleep, { label: name, leads: true, bold: true })}
                    </td>
                  </>
                )}
              </FigureRow>
            )
          })}
        </tbody>
      </table>
    </Passage>
  )
}

/** Years of spending that have a row of their own. */
const yearsShown = 6

export function Spent({ basis, log }: OfForecast) {
  const { spent } = basis.register
  const money = (amount: number) => sayMoney(basis.model.currency, amount)
  const { money: spentWords } = words
  const all = Object.entries(spent.byYear).sort((a, b) => (a[0] < b[0] ? 1 : -1))
  if (all.length === 0) return null
  const years = all.slice(0, yearsShown)
  const [first = ''] = years.at(-1) ?? []
  const before = all.slice(yearsShown).reduce((sum, [, amount]) => sum + amount, 0)
  const paid = log.entries.filter((entry) => paidIn(entry) !== undefined)
  const figure = (name: string, amount: number, says: string, of: readonly Entry[]): FigureSaid => ({
    says,
    behind: () => ({
      name,
      value: money(amount),
      comesFrom: `${said.set.spentFrom} ${sayEntries(
        log,
        of.map(({ id }) => id),
      )}`,
      moves: said.set.spentMoves,
    }),
  })
  return (
    <Passage title={spentWords.title} says={spentWords.says}>
      <Said
        className="small"
        text={spentWords.total(hole('total'))}
        figures={{ total: figure(said.set.spent, spent.total, money(spent.total), paid) }}
      />
      <table className="table gap-small" style={{ maxWidth: 420 }}>
        <Heads list={[spentWords.year, { number: spentWords.amount }]} />
        <tbody>
          {years.map(([year, amount]) => (
            <FigureRow key={year} columns={2}>
              {(row) => (
                <>
                  <th scope="row">{year}</th>
                  <td className="number">
                    {row.of(
                      year,
                      figure(
                        said.set.spentIn(year),
                        amount,
                        money(amount),
                        paid.filter(({ until }) => until.startsWith(year)),
                      ),
                    )}
                  </td>
                </>
              )}
            </FigureRow>
          ))}
          {before > 0 && (
            <FigureRow columns={2}>
              {(row) => (
                <>
                  <th scope="row">{spentWords.before(first)}</th>
                  <td className="number">
                    {row.of(
                      'before',
                      figure(
                        said.set.spentBefore(first),
                        before,
                        money(before),
                        paid.filter(({ until }) => until < first),
                      ),
                    )}
                  </td>
                </>
              )}
            </FigureRow>
          )}
        </tbody>
      </table>
    </Passage>
  )
}
