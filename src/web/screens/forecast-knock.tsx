/**
 * What a failure takes with it: an elbow to each consequence, the thicker the oftener.
 *
 * @module
 */

import { monthsAhead as spans } from '../../forecast/odds.js'
import { Key } from '../marks/key.js'
import { hole, Passage, Tag, useFigures } from '../parts/index.js'
import { words } from '../words/forecast.js'
import { sayChance, sayRate, shortName, upperFirst } from '../words/say.js'
import { partFiguresOf } from './forecast-figures.js'
import { likeliestFirst, type OfForecast, type PartShown } from './of-forecast.js'

const { knock } = words
const year = spans.indexOf(12)
const causes = 6
const consequences = 5

export function KnockOn(of: OfForecast) {
  const parts = likeliestFirst(of)
    .filter(({ odds }) => odds.failing[2]! >= 0.01 && consequencesOf(odds).length > 0)
    .sort((a, b) => weightOf(b) - weightOf(a))
    .slice(0, causes)
  return (
    <Passage title={knock.title} says={knock.says} className="wide long">
      {parts.length === 0 ? (
        <p className="small">{knock.none}</p>
      ) : (
        <ul className="knock">
          {parts.map((part) => (
            <Cause key={part.odds.part} part={part} of={of} />
          ))}
        </ul>
      )}
      <Key
        items={[
          { says: knock.often, thick: 6 },
          { says: knock.some, thick: 3 },
          { says: knock.seldom, thick: 1 },
        ]}
      />
    </Passage>
  )
}

function weightOf({ odds }: PartShown): number {
  return odds.knockOnCost + 100 * Object.values(odds.dangers).reduce((sum, each) => sum + each, 0)
}

interface Consequence {
  readonly part: string
  readonly starts: boolean
  /** When the cause fails. */
  readonly chance: number
  readonly cost: number
}

/** One line for each part that is brought down, likeliest first. */
function consequencesOf(odds: PartShown['odds']): Consequence[] {
  const failures = Math.max(odds.failures, odds.failing[2]!, 1e-9)
  const per = new Map<string, { perYear: number; cost: number; starts: boolean }>()
  for (const { part, perYear, cost, effect } of odds.dragsDown) {
    const before = per.get(part) ?? { perYear: 0, cost: 0, starts: true }
    per.set(part, {
      perYear: before.perYear + perYear,
      cost: before.cost + cost,
      starts: before.starts && effect === 'starts-defect',
    })
  }
  return [...per]
    .filter(([, { perYear }]) => perYear > 0)
    .map(([part, { perYear, cost, starts }]) => ({
      part,
      starts,
      chance: Math.min(1, perYear / failures),
      cost: cost / perYear,
    }))
    .sort((a, b) => b.chance - a.chance)
    .slice(0, consequences)
}

function thickness(chance: number): string {
  return chance >= 0.5 ? 'often' : chance >= 0.1 ? 'some' : ''
}

function Cause({ part, of }: { readonly part: PartShown; readonly of: OfForecast }) {
  const { odds, name } = part
  const head = useFigures()
  const fails = partFiguresOf(of, part).within(year, sayChance(odds.failing[year]!))
  const dangers = Object.entries(odds.dangers).filter(([, perYear]) => perYear >= 0.0002)
  return (
    <li>
      <div className="from">
        <b>{name}</b>
        <span className="under">{head.fill(knock.from({ chance: hole('chance') }), { chance: fails })}</span>
        {head.opened()}
      </div>
      <ul>
        {consequencesOf(odds).map((one) => (
          <Brought key={one.part} one={one} part={part} of={of} />
        ))}
        {dangers.map(([danger, perYear]) => (
          <Danger key={danger} danger={danger} perYear={perYear} part={part} of={of} />
        ))}
      </ul>
    </li>
  )
}

interface OfCause {
  readonly part: PartShown
  readonly of: OfForecast
}

function Brought({ one, part, of }: OfCause & { readonly one: Consequence }) {
  const figures = useFigures()
  const name = shortName(of.basis.names.parts[one.part] ?? one.part)
  const says = { chance: sayChance(one.chance), cost: part.money(one.cost) }
  const behind = (text: string) => partFiguresOf(of, part).drags({ part: one.part, name }, says, text)
  return (
    <li className={thickness(one.chance)}>
      <b>{name}</b> {one.starts ? `${knock.starts}: ` : ''}
      <span className="second">
        {figures.fill(knock.of({ chance: hole('chance'), cost: hole('cost') }), {
          chance: behind(says.chance),
          cost: behind(says.cost),
        })}
      </span>
      {figures.opened()}
    </li>
  )
}

function Danger({
  danger,
  perYear,
  part,
  of,
}: OfCause & { readonly danger: string; readonly perYear: number }) {
  const figures = useFigures()
  return (
    <li>
      <b>{upperFirst(of.basis.names.dangers[danger]?.name ?? danger)}</b>{' '}
      <span className="second">
        {figures.fill(knock.never(hole('rate')), {
          rate: partFiguresOf(of, part).danger(danger, sayRate(perYear)),
        })}
      </span>{' '}
      <Tag look="solid">{knock.danger}</Tag>
      {figures.opened()}
    </li>
  )
}
