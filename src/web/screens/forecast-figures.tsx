/**
 * What stands behind the figures of a forecast.
 *
 * @module
 */

import { monthsAhead as spans } from '../../forecast/odds.js'
import type { FigureSaid } from '../parts/index.js'
import { figures as said } from '../words/figures.js'
import { words } from '../words/forecast.js'
import { lowerFirst, plural, sayChance, sayMoney, sayNumber, sayYears, upperFirst } from '../words/say.js'
import { dangerPath, type NamedPath, Overruling, sayRestsOn } from './behind-figures.js'
import { ninety } from './of-answer.js'
import type { OfForecast, PartShown } from './of-forecast.js'

const year = spans.indexOf(12)

/** Everything behind the figures that are of the whole set. */
export function setFiguresOf(of: OfForecast) {
  const { basis, view } = of
  const { set } = view.forecast
  const { months, stopping } = view.months
  const at = months.findLastIndex(({ ends }) => ends <= 1)
  const spread = (low: number, high: number) => said.chance.spread(sayChance(low), sayChance(high))
  const stopFrom = said.chance.stopFrom(plural(basis.model.parts.length, 'part'))
  return {
    stop: (says: string): FigureSaid => ({
      says,
      behind: () => ({
        name: said.chance.stop,
        value: `${sayChance(set.stopping[year]!)}; ${spread(stopping.low[at]!, stopping.high[at]!)}`,
        comesFrom: stopFrom,
        moves: said.livesMove,
      }),
    }),
    byMonth: (says: string, k: number, name: string): FigureSaid => ({
      says,
      behind: () => ({
        name: said.chance.byMonth(name),
        value: `${sayChance(stopping.expected[k]!)}; ${spread(stopping.low[k]!, stopping.high[k]!)}`,
        comesFrom: stopFrom,
        moves: said.livesMove,
      }),
    }),
    failures: (says: string): FigureSaid => ({
      says,
      behind: () => ({
        name: said.chance.failures,
        value: sayNumber(set.failures, 2),
        comesFrom: said.chance.failuresFrom,
        moves: said.livesMove,
      }),
    }),
    cost: (says: string): FigureSaid => ({
      says,
      behind: () => ({
        name: said.chance.cost,
        value: sayMoney(basis.model.currency, set.cost),
        comesFrom: said.chance.costFrom,
        moves: said.livesMove,
      }),
    }),
  }
}

/** Everything behind the figures of one part. */
export function partFiguresOf(of: OfForecast, part: PartShown) {
  const { log, view } = of
  const { odds, name, money, entries, span } = part
  const { twenty } = words
  const lives = Math.max(1, view.forecast.livesPerPart)
  const comesFrom = (chance: number) =>
    `${sayRestsOn(log, entries)}; ${said.played({
      lives: sayNumber(lives),
      error: `${sayNumber(100 * ninety * Math.sqrt((chance * (1 - chance)) / lives), 1)} in 100`,
    })}`
  const chance = (name: string, value: number, says: string, scale = lifePaths): FigureSaid => ({
    says,
    behind: () => ({
      name,
      value: sayChance(value),
      comesFrom: comesFrom(value),
      moves: twenty.moves(money(odds.cost)),
      overrule: <Overruling of={of} paths={scale(of, odds.part)} />,
    }),
  })
  return {
    /** How many of twenty boats, with all that is known of the part's odds. */
    boats: (says: string): FigureSaid => ({
      says,
      behind: () => ({
        name: twenty.openedName(name),
        value: [
          `${upperFirst(
            twenty.value({
              three: sayChance(odds.failing[0]!),
              twelve: sayChance(odds.failing[2]!),
              twentyFour: sayChance(odds.failing[3]!),
            }),
          )}.`,
          odds.defectiveNow > 0.005 ? twenty.nowDefective(sayChance(odds.defectiveNow)) : '',
          odds.failedUnnoticedNow > 0.005 ? twenty.asleep(sayChance(odds.failedUnnoticedNow)) : '',
        ]
          .filter(Boolean)
          .join(' '),
        comesFrom: comesFrom(odds.failing[year]!),
        moves: twenty.moves(money(odds.cost)),
        overrule: <Overruling of={of} paths={lifePaths(of, odds.part)} />,
      }),
    }),
    within: (at: number, says: string) =>
      chance(said.chance.within(name, spans[at]!), odds.failing[at]!, says),
    stopping: (says: string) => chance(said.chance.stopping(name), odds.stopping[year]!, says),
    defective: (says: string) => chance(said.chance.defective(name), odds.defectiveNow, says),
    asleep: (says: string, moves: string): FigureSaid => ({
      says,
      behind: () => ({
        name: said.chance.asleep(name),
        value: says,
        comesFrom: comesFrom(odds.failedUnnoticedNow),
        moves,
        overrule: <Overruling of={of} paths={lifePaths(of, odds.part)} />,
      }),
    }),
    cost: (says: string): FigureSaid => ({
      says,
      behind: () => ({
        name: said.chance.partCost(name),
        value: money(odds.cost),
        comesFrom: said.chance.costFrom,
        moves: said.livesMove,
        overrule: <Overruling of={of} paths={[...lifePaths(of, odds.part), ...pricePaths(odds.part)]} />,
      }),
    }),
    half: (says: string): FigureSaid => ({
      says,
      behind: () => ({
        name: said.chance.half(name),
        value: said.chance.halfValue({
          tenth: sayYears(span.tenth),
          half: sayYears(span.half),
          ninth: sayYears(span.ninth),
        }),
        comesFrom: sayRestsOn(log, entries),
        moves: twenty.moves(money(odds.cost)),
        overrule: <Overruling of={of} paths={lifePaths(of, odds.part)} />,
      }),
    }),
    drags: (
      brought: { readonly part: string; readonly name: string },
      value: { readonly chance: string; readonly cost: string },
      says: string,
    ): FigureSaid => ({
      says,
      behind: () => ({
        name: said.chance.drags(lowerFirst(name), brought.name),
        value: said.chance.dragsValue(value.chance, value.cost),
        comesFrom: said.chance.dragsFrom,
        moves: twenty.moves(money(odds.cost)),
        overrule: <Overruling of={of} paths={pricePaths(brought.part)} />,
      }),
    }),
    danger: (danger: string, says: string): FigureSaid => ({
      says,
      behind: () => ({
        name: said.chance.danger(
          lowerFirst(name),
          upperFirst(of.basis.names.dangers[danger]?.name ?? danger),
        ),
        value: says,
        comesFrom: said.chance.dangerFrom,
        moves: said.row.dangerMoves,
        overrule: <Overruling of={of} paths={[dangerPath(of, danger)]} />,
      }),
    }),
  }
}

/** The lives of a part's ways of failing. */
function lifePaths({ basis }: OfForecast, part: string): NamedPath[] {
  const modes = basis.model.parts.find(({ id }) => id === part)?.modes ?? []
  return modes.map(({ id }) => ({
    path: `parts.${part}.modes.${id}.scale`,
    name: said.ofPart.life(upperFirst(basis.names.modes[`${part}.${id}`] ?? id)),
  }))
}

function pricePaths(part: string): NamedPath[] {
  return [
    { path: `parts.${part}.price.original.typical`, name: said.ofPart.price },
    { path: `parts.${part}.hours.paid`, name: said.ofPart.paidHours },
    { path: `parts.${part}.hours.owner`, name: said.ofPart.ownHours },
  ]
}
