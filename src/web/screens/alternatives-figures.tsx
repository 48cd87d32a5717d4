/**
 * What stands behind the figures of the alternatives.
 *
 * @module
 */

import type { Row } from '../../alternatives/answer-view.js'
import type { Amount } from '../../forecast/life-model.js'
import type { SetRegister } from '../../register/register-types.js'
import { fuelMeasureOf, keptPrice, spokenPrice } from '../data/fuel.js'
import type { BehindFigure, FigureSaid } from '../parts/index.js'
import { words } from '../words/alternatives.js'
import { figures as said } from '../words/figures.js'
import { sayNumber, sayRate, upperFirst } from '../words/say.js'
import { dangerPath, type NamedPath, type NamedTerm, Overruling, sayEntry } from './behind-figures.js'
import { dayPriceOf } from './day-price.js'
import { moneyOf, nameWithin, ninety, type OfAnswer } from './of-answer.js'

type Heading = keyof Row['headings']

/** Everything behind the figures of one answer. */
export function figuresOf(of: OfAnswer) {
  const { view, basis, log } = of
  const money = moneyOf(view)
  const histories = sayNumber(view.histories)
  const { verdict, walkAway } = view.report
  const terms = termsOf(of)
  const error = (standardError: number) => ninety * standardError
  const within = nameWithin(view)
  const simulated = (text: string) => said.simulated({ histories, error: text })
  const figure = (says: string, behind: () => BehindFigure): FigureSaid => ({ says, behind })

  const quoted = basis.register.openQuotes.at(-1)
  const quoteFrom = () => {
    if (quoted === undefined) return said.assumed
    const { firmness, subjectToStripDown, taxUnknown, entry } = quoted
    return [
      sayEntry(log, entry),
      said.quote[firmness],
      subjectToStripDown ? said.quote.strip : '',
      taxUnknown ? said.quote.taxUnknown : '',
    ]
      .filter(Boolean)
      .join('; ')
  }

  return {
    quote: (amount: number) =>
      figure(money(amount), () => ({
        name: said.quote.name,
        value: money(amount),
        comesFrom: quoteFrom(),
        moves: said.quote.moves,
        overrule: said.correctIt,
      })),
    walkAway: (says: string) =>
      figure(says, () => ({
        name: words.ruler.priceName,
        value:
          walkAway === null
            ? ''
            : `${money(walkAway.price)}; ${words.ruler.spread(money(walkAway.findingOut.low), money(walkAway.findingOut.high))}; ${said.price.simulation(money(walkAway.simulation.low), money(walkAway.simulation.high))}`,
        comesFrom: words.ruler.priceFrom,
        moves: words.ruler.priceMoves(walkAway === null ? '' : within(walkAway.otherwise)),
        overrule: <Overruling of={of} terms={[terms.perDay, terms.yearsKept, terms.ownPerHour]} />,
      })),
    spare: (says: string) =>
      figure(says, () => ({
        name: said.spare.name,
        value: says,
        comesFrom: said.spare.from,
        moves: said.quote.moves,
      })),
    saving: (says: string) =>
      figure(says, () => ({
        name: said.saving.name(upperFirst(within(verdict.best)), within(verdict.next ?? '')),
        value: `${money(verdict.saving)} ± ${money(error(verdict.savingError))}`,
        comesFrom: said.saving.from(histories),
        moves: words.list.costMoves,
        overrule: <Overruling of={of} terms={[terms.perDay, terms.yearsKept, terms.ownPerHour]} />,
      })),
    cases: (says: string) =>
      figure(says, () => ({
        name: said.cases.name,
        value: said.cases.value(says),
        comesFrom: said.cases.from(histories),
        moves: said.cases.moves,
      })),
    limit: (says: string) =>
      figure(says, () => ({
        name: said.limit.name,
        value: says,
        comesFrom: said.limit.from,
        moves: said.limit.moves,
        overrule: <Overruling of={of} terms={[terms.yearsKept]} paths={[newSet]} />,
      })),
    handover: (says: string) =>
      figure(says, () => ({
        name: said.handover.name,
        value: says,
        comesFrom: said.handover.from(histories),
        moves: words.list.costMoves,
      })),
    cost: (row: Row, says: string) =>
      figure(says, () => ({
        name: said.row.cost(row.name),
        value: `${money(row.cost.mean)} ± ${money(error(row.cost.standardError))}: ${headingsOf(row, money)}. ${said.row.spread(money(row.costSpread.low), money(row.costSpread.middle), money(row.costSpread.high))}`,
        comesFrom: words.list.costFrom(sayNumber(row.histories)),
        moves: words.list.costMoves,
        overrule: <Overruling of={of} terms={[terms.perDay, terms.ownPerHour, terms.paidPerHour]} />,
      })),
    against: (row: Row, says: string) =>
      figure(says, () => ({
        name: said.row.against(row.name, within(verdict.best)),
        value: `${money(row.against.mean)} ± ${money(error(row.against.standardError))}`,
        comesFrom: said.saving.from(sayNumber(row.histories)),
        moves: words.list.costMoves,
      })),
    stops: (row: Row, says: string) =>
      figure(says, () => ({
        name: said.row.stops(row.name),
        value: `${sayNumber(row.stopsPerYear.mean, 2)} ± ${sayNumber(error(row.stopsPerYear.standardError), 3)}; ${said.row.sameDay(sayNumber(row.sameDayStopsPerYear.mean, 2))}`,
        comesFrom: simulated(sayNumber(error(row.stopsPerYear.standardError), 3)),
        moves: said.livesMove,
      })),
    days: (row: Row, says: string) =>
      figure(says, () => ({
        name: said.row.days(row.name),
        value: `${sayNumber(row.daysWithoutPerYear.mean, 1)} ± ${sayNumber(error(row.daysWithoutPerYear.standardError), 2)}`,
        comesFrom: simulated(sayNumber(error(row.daysWithoutPerYear.standardError), 2)),
        moves: said.livesMove,
        overrule: <Overruling of={of} terms={[terms.perDay]} />,
      })),
    dangers: (row: Row, says: string) =>
      figure(says, () => ({
        name: said.row.dangers(row.name),
        value:
          Object.entries(row.dangersPerYear)
            .filter(([, perYear]) => perYear > 0)
            .sort((a, b) => b[1] - a[1])
            .map(([danger, perYear]) => `${basis.names.dangers[danger]?.name ?? danger} ${sayRate(perYear)}`)
            .join('; ') || says,
        comesFrom: said.row.dangerFrom(sayNumber(row.histories)),
        moves: said.row.dangerMoves,
        overrule: (
          <Overruling
            of={of}
            paths={Object.keys(row.dangersPerYear).map((danger) => dangerPath(of, danger))}
          />
        ),
      })),
    share: (row: Row, which: keyof typeof said.row.shares, says: string) =>
      figure(says, () => ({
        name: said.row[which](row.name),
        value: money(row.costSpread[which]),
        comesFrom: said.hundredth({
          share: said.row.shares[which],
          histories: sayNumber(row.histories),
        }),
        moves: words.list.costMoves,
      })),
    worst: (row: Row, says: string) =>
      figure(says, () => ({
        name: said.row.worst(row.name),
        value: money(row.worstTenth),
        comesFrom: said.hundredth({ share: said.row.worstShare, histories: sayNumber(row.histories) }),
        moves: words.list.costMoves,
      })),
    perYear: (row: Row, says: string) =>
      figure(says, () => ({
        name: said.row.perYear(row.name),
        value: money(row.costPerYear),
        comesFrom: said.row.perYearFrom,
        moves: words.list.costMoves,
        overrule: <Overruling of={of} terms={[terms.yearsKept]} />,
      })),
    largest: (row: Row, says: string) =>
      figure(says, () => ({
        name: said.row.largest(row.name),
        value: `${money(row.largestYear.mean)}; ${said.row.largestHigh(money(row.largestYear.high))}`,
        comesFrom: said.simulated({ histories: sayNumber(row.histories) }),
        moves: words.list.costMoves,
      })),
    overMost: (row: Row, says: string) =>
      figure(says, () => ({
        name: said.row.overMost(row.name),
        value: `${says} in 100`,
        comesFrom: said.simulated({ histories: sayNumber(row.histories) }),
        moves: words.list.costMoves,
        overrule: <Overruling of={of} terms={[terms.mostInOneYear]} />,
      })),
    replaced: (row: Row, says: string) =>
      figure(says, () => ({
        name: said.row.replaced(row.name),
        value: `${says} in 100`,
        comesFrom: said.simulated({ histories: sayNumber(row.histories) }),
        moves: said.limit.moves,
        overrule: <Overruling of={of} paths={[newSet]} />,
      })),
    heading: (row: Row, heading: Heading, says: string) =>
      figure(says, () => ({
        name: `${row.name}: ${words.headings[heading]}`,
        value: `${money(row.headings[heading].mean)} ± ${money(error(row.headings[heading].standardError))}`,
        comesFrom: simulated(money(error(row.headings[heading].standardError))),
        moves: words.list.costMoves,
        ...overrulingOf(of, heading),
      })),
  }
}

/** Under which heads the cost of an alternative goes. */
export const headingOrder = Object.keys(words.headings) as Heading[]

function headingsOf(row: Row, money: (amount: number) => string): string {
  return headingOrder
    .filter((heading) => Math.abs(row.headings[heading].mean) >= 0.5)
    .map((heading) => `${words.headings[heading]} ${money(row.headings[heading].mean)}`)
    .join(', ')
}

/** What the owner can set of the money under a head. */
function overrulingOf(of: OfAnswer, heading: Heading): Pick<BehindFigure, 'overrule'> {
  const terms = termsOf(of)
  const fields: Partial<Record<Heading, { terms?: readonly NamedTerm[]; paths?: readonly NamedPath[] }>> = {
    failures: { terms: [terms.paidPerHour, terms.ownPerHour, terms.travelPerTrip] },
    planned: { terms: [terms.paidPerHour, terms.ownPerHour] },
    upkeep: { terms: [terms.ownPerHour, terms.paidPerHour] },
    fuel: { terms: [terms.fuelPerLitre] },
    power: { terms: [terms.perDay] },
    intrusion: {
      paths: ['minorRepairChance', 'majorRepairChance'].map((one) => wholeSet(`intrusion.${one}`)),
    },
    replacement: { paths: [newSet] },
    giveUp: { terms: [terms.doWithoutPrice, terms.doWithoutPerYear] },
    resale: { paths: [wholeSet('resale.shareOfNew')] },
  }
  const found = fields[heading]
  return found === undefined ? {} : { overrule: <Overruling of={of} {...found} /> }
}

/** What the owner reckons with, as the model has it. */
export function termsOf({ basis }: Pick<OfAnswer, 'basis'>) {
  const { model, register } = basis
  const { names } = words.tried
  const term = (field: NamedTerm['field'], value: number | undefined, isMoney = true): NamedTerm => ({
    field,
    ...names[field],
    value,
    isMoney,
  })
  return {
    yearsKept: term('yearsKept', model.horizonYears, false),
    perDay: term('perDay', dayPriceOf(model)),
    ownPerHour: term('ownPerHour', model.labour.ownPerHour),
    paidPerHour: term('paidPerHour', model.labour.paidPerHour),
    travelPerTrip: term('travelPerTrip', model.labour.perTrip),
    mostInOneYear: term('mostInOneYear', model.mostPayableInOneYear),
    fuelPerLitre: fuelTerm(register),
    doWithoutPrice: term('doWithoutPrice', middleOf(model.giveUp.costNow)),
    doWithoutPerYear: term('doWithoutPerYear', model.giveUp.costPerYear),
  }
}

/** By the measure in which it is bought. */
function fuelTerm({ boatFacts, terms }: SetRegister): NamedTerm {
  const measure = fuelMeasureOf(boatFacts)
  const { fuelPerLitre } = terms
  return {
    field: 'fuelPerLitre',
    ...words.tried.fuel(measure.name),
    value: fuelPerLitre === undefined ? undefined : spokenPrice(fuelPerLitre, measure),
    isMoney: true,
    kept: (spoken) => keptPrice(spoken, measure),
  }
}

function middleOf(amount: Amount): number {
  if (typeof amount === 'number') return amount
  return 'median' in amount ? amount.median : amount.exponentialMean
}

function wholeSet(place: string): NamedPath {
  const path = `wholeSet.${place}`
  return { path, name: said.names[path] ?? path }
}

const newSet = wholeSet('newSet.priceAt1KW')
