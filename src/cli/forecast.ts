/**
 * `gensettle forecast`: which part goes next, what that costs, and what the figure rests on.
 *
 * @module
 */

import { shortCaution } from '../alternatives/cautions.js'
import { moneyIn } from '../alternatives/say.js'
import { saySet } from '../alternatives/say-set.js'
import { posteriorIn } from '../alternatives/settle.js'
import { buildLifeModel } from '../forecast/build-life-model.js'
import { contradictedEvidence } from '../forecast/contradicted-evidence.js'
import { sayLearned, withLearnedOverrun } from '../forecast/learned-overrun.js'
import { lifeModelSchema } from '../forecast/life-model.js'
import { forecastOf, monthsAhead, type OddsAhead, type PartOdds } from '../forecast/odds.js'
import { withLessons } from '../forecast/pooling-lessons.js'
import { learnedOverrunOf } from '../job/actual.js'
import { registerOf } from '../register/register.js'
import { setCatalogueOf } from '../register/set-kind-of.js'
import { lessonsFor, lessonsText, lessonsValue } from './lessons.js'
import { type SetOptions, withSet } from './of-set.js'
import { shippedCatalogue } from './places.js'
import { type Result, refusedText } from './result.js'
import { chance, figure, tableText } from './table.js'

export interface ForecastOptions extends SetOptions {
  readonly seed: number
  readonly all?: boolean
}

const fewParts = 20
const yearAhead = monthsAhead.indexOf(12)

export function showForecast(options: ForecastOptions): Promise<Result> {
  return withSet(options, (question) => {
    const { entries, boat, set, asOf, memory } = question
    const { seed } = options
    const lessons = lessonsFor(question, { seed })
    if (!lessons.ok) return lessons
    const { pooled } = lessons
    const catalogue = shippedCatalogue()
    const register = registerOf({ entries, boat, set, asOf, catalogue })
    const forSet = setCatalogueOf(register, catalogue)
    const built = buildLifeModel(register, forSet.catalogue)
    const overrun = learnedOverrunOf({ ...question, catalogue })
    const model = withLearnedOverrun(withLessons(lifeModelSchema.parse(built.model), pooled), overrun)
    const posterior = posteriorIn(memory, model, seed)
    const forecast = forecastOf(model, posterior, { seed })
    const problems = [...forSet.problems, ...contradictedEvidence(model, posterior)]
    const parts = forecast.parts
      .map((odds) => ({ ...odds, restsOn: built.restsOn[odds.part] ?? [] }))
      .sort((a, b) => b.failing[yearAhead]! - a.failing[yearAhead]!)
    const assumed = [...forSet.assumed, ...built.assumed, ...sayLearned(overrun)]
    const money = (amount: number) => moneyIn(model.currency, amount)
    const row = (name: string, odds: Pick<PartOdds, 'failing' | 'stopping' | 'cost'>, rest: string[]) => [
      name,
      ...odds.failing.map(chance),
      chance(odds.stopping[yearAhead] ?? 0),
      money(odds.cost),
      ...rest,
    ]
    const shown = options.all ? parts : parts.slice(0, fewParts)
    const rows = shown.map((odds) =>
      row(odds.part, odds, [figure(odds.halfGoneYears), mostDragged(odds), restsOnText(odds.restsOn)]),
    )
    const { livesPerPart } = forecast
    return {
      ok: true,
      json: {
        type: 'gensettle/forecast',
        version: 1,
        boat,
        set,
        asOf,
        currency: model.currency,
        seed,
        livesPerPart,
        monthsAhead,
        whole: forecast.set,
        parts,
        assumed,
        refusedFigures: problems,
        ...lessonsValue(pooled),
        caution: shortCaution,
      },
      text: [
        `${register.boatFacts.name ?? boat}: ${saySet(register)}`,
        '',
        tableText(columns, [row('THE SET', forecast.set, []), ...rows]),
        ...(shown.length < parts.length
          ? [`… and ${parts.length - shown.length} more parts; --all shows them.`]
          : []),
        '',
        `With the care you usually give and nothing else done. "Cost a year" is work and pieces in the year ahead, with what the part drags down. Each part was played ${figure(livesPerPart)} times: a chance of 10 in 100 is good to ± ${figure(100 * errorOf(0.1, livesPerPart))} in 100.`,
        ...(forecast.set.failing[0] === 0
          ? [
              `In a usual year it does not run in the next ${monthsAhead[0]} months: nothing is met failing then.`,
            ]
          : []),
        ...lessonsText(pooled),
        ...(assumed.length === 0
          ? []
          : ['Taken for granted because nobody said:', ...assumed.map((line) => `  ${line}`)]),
        ...refusedText('What could not be used', problems),
        shortCaution,
      ].join('\n'),
    }
  })
}

const right = (head: string) => ({ head, align: 'right' }) as const
const columns = [
  { head: 'chance of failing within' },
  ...monthsAhead.map((months: OddsAhead[number]) => right(`${months} months`)),
  right('stopping, 12 months'),
  right('cost a year'),
  right('half gone by, years'),
  { head: 'drags down' },
  { head: 'rests on' },
]

/** Standard error of a chance from so many lives. */
function errorOf(share: number, lives: number): number {
  return Math.sqrt((share * (1 - share)) / lives)
}

function mostDragged({ dragsDown }: PartOdds): string {
  const perPart = new Map<string, number>()
  for (const { part, perYear } of dragsDown) perPart.set(part, (perPart.get(part) ?? 0) + perYear)
  return [...perPart]
    .sort((a, b) => b[1] - a[1])
    .slice(0, 2)
    .map(([part]) => part)
    .join(', ')
}

function restsOnText(entries: readonly string[]): string {
  return entries.length === 0 ? 'catalogue only' : `catalogue and ${entries.length} of your entries`
}
