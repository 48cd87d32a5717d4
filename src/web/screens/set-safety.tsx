/**
 * What could hurt, what should save, and what was spent.
 *
 * @module
 */

import { type ReactNode, useId, useState } from 'react'
import { type BehindFigure, FigureButton, Opened, Passage, Tag } from '../parts/index.js'
import { lowerFirst, sayChance, sayDay, sayMoney, sayNumber, shortName, upperFirst } from '../words/say.js'
import { words } from '../words/set.js'
import { restsOnWords } from './forecast-parts.js'
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
        <thead>
          <tr>
            <th scope="col">{dangers.what}</th>
            <th scope="col">{dangers.through}</th>
            <th scope="col">{dangers.heed}</th>
            <th scope="col" className="number">
              {dangers.rate}
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map(([danger, perYear]) => {
            const by = parts.toSorted(
              (a, b) => (b.odds.dangers[danger] ?? 0) - (a.odds.dangers[danger] ?? 0),
            )[0]
            return (
              <OpenedRow
                key={danger}
                columns={4}
                behind={{
                  name: upperFirst(basis.names.dangers[danger]?.name ?? danger),
                  value: `${sayNumber(perYear * 100, 2)} in 100 years`,
                  comesFrom: dangers.from(sayChance(basis.model.dangers[danger] ?? 0)),
                  moves: dangers.moves,
                }}
                says={sayNumber(perYear * 100, perYear * 100 < 0.095 ? 2 : 1)}
                column={dangers.rate}
              >
                <th scope="row">
                  {upperFirst(basis.names.dangers[danger]?.name ?? danger)}{' '}
                  {open.has(danger) && <Tag look="solid">{dangers.foundOpen}</Tag>}
                </th>
                <td data-name={dangers.through}>{by ? lowerFirst(by.name) : ''}</td>
                <td className="full">{basis.names.dangers[danger]?.caution}</td>
              </OpenedRow>
            )
          })}
        </tbody>
      </table>
    </Passage>
  )
}

export function Protections({ basis, view }: OfForecast) {
  const { protections } = words
  const odds = new Map(view.forecast.parts.map((part) => [part.part, part]))
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
        <thead>
          <tr>
            <th scope="col">{protections.name}</th>
            <th scope="col">{protections.tested}</th>
            <th scope="col" className="number">
              {protections.asleep}
            </th>
          </tr>
        </thead>
        <tbody>
          {list.map(({ part, fitted, lastTestedDay }) => (
            <OpenedRow
              key={part}
              columns={3}
              behind={
                fitted === 'not-fitted' || !odds.has(part)
                  ? undefined
                  : {
                      name: shortName(basis.names.parts[part] ?? part),
                      value: protections.value(sayChance(odds.get(part)!.failedUnnoticedNow)),
                      comesFrom: restsOnWords({ entries: basis.restsOn[part] ?? [] }),
                      moves: protections.moves,
                    }
              }
              says={
                fitted === 'not-fitted' || !odds.has(part)
                  ? protections.noOdds
                  : sayChance(odds.get(part)!.failedUnnoticedNow)
              }
              column={protections.asleep}
            >
              <th scope="row">
                {shortName(basis.names.parts[part] ?? part)}
                {fitted === 'not-known' && <span className="under">{protections.notKnown}</span>}
              </th>
              <td className="full">
                {fitted === 'not-fitted'
                  ? protections.notFitted
                  : lastTestedDay === undefined
                    ? protections.never
                    : sayDay(lastTestedDay)}
              </td>
            </OpenedRow>
          ))}
        </tbody>
      </table>
    </Passage>
  )
}

/** A row whose last cell is a figure; what stands behind it opens in a row of its own. */
function OpenedRow(of: {
  readonly columns: number
  readonly behind: BehindFigure | undefined
  readonly says: string
  readonly column: string
  readonly children: ReactNode
}) {
  const [open, setOpen] = useState(false)
  const id = useId()
  return (
    <>
      <tr>
        {of.children}
        <td className="number" data-name={of.column}>
          {of.behind === undefined ? (
            of.says
          ) : (
            <FigureButton
              open={open}
              onToggle={() => setOpen(!open)}
              controls={id}
              label={`${of.behind.name}, ${of.says}`}
            >
              <b>{of.says}</b>
            </FigureButton>
          )}
        </td>
      </tr>
      {open && of.behind && (
        <tr>
          <td colSpan={of.columns} className="full">
            <Opened id={id} behind={of.behind} />
          </td>
        </tr>
      )}
    </>
  )
}

export function Spent({ basis }: OfForecast) {
  const { spent } = basis.register
  const money = (amount: number) => sayMoney(basis.model.currency, amount)
  const { money: said } = words
  const years = Object.entries(spent.byYear).sort((a, b) => (a[0] < b[0] ? 1 : -1))
  if (years.length === 0) return null
  return (
    <Passage title={said.title} says={said.says}>
      <p className="small">
        <b>{said.total(money(spent.total))}</b>
      </p>
      <table className="table gap-small" style={{ maxWidth: 320 }}>
        <thead>
          <tr>
            <th scope="col">{said.year}</th>
            <th scope="col" className="number">
              {said.amount}
            </th>
          </tr>
        </thead>
        <tbody>
          {years.slice(0, 6).map(([year, amount]) => (
            <tr key={year}>
              <th scope="row">{year}</th>
              <td className="number">{money(amount)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Passage>
  )
}
