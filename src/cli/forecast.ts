/**
 * `gensettle forecast`: which part goes next, and what the figure rests on.
 *
 * @module
 */

import { shortCaution } from '../alternatives/cautions.js'
import { type ChanceWithin, outlookMonths, outlookOf } from '../alternatives/outlook.js'
import { moneyIn } from '../alternatives/say.js'
import { buildLifeModel } from '../forecast/build-life-model.js'
import { lifeModelSchema } from '../forecast/life-model.js'
import { posteriorOf } from '../forecast/posterior.js'
import { registerOf } from '../register/register.js'
import { setCatalogueOf } from '../register/set-kind-of.js'
import { type SetOptions, withSet } from './of-set.js'
import { shippedCatalogue } from './places.js'
import type { Result } from './result.js'
import { chance, tableText } from './table.js'
import { saySet } from './verdicts.js'

export interface ForecastOptions extends SetOptions {
  readonly seed: number
  readonly histories: number
  readonly all?: boolean
}

const fewParts = 20

export function showForecast(options: ForecastOptions): Promise<Result> {
  return withSet(options, ({ entries, boat, set, asOf }) => {
    const { seed, histories } = options
    const catalogue = shippedCatalogue()
    const register = registerOf({ entries, boat, set, asOf, catalogue })
    const forSet = setCatalogueOf(register, catalogue)
    const built = buildLifeModel(register, forSet.catalogue)
    const model = lifeModelSchema.parse(built.model)
    const outlook = outlookOf(model, posteriorOf(model, { seed }), { seed, histories })
    const parts = outlook.parts.map((part) => ({ ...part, restsOn: built.restsOn[part.part] ?? [] }))
    const shown = options.all ? parts : parts.slice(0, fewParts)
    const assumed = [...forSet.assumed, ...built.assumed]
    const columns = [
      { head: 'chance of failing within' },
      ...outlookMonths.map((months) => ({ head: `${months} months`, align: 'right' }) as const),
      { head: 'of stopping, 12', align: 'right' } as const,
      { head: 'costs', align: 'right' } as const,
      { head: 'may drag down' },
      { head: 'rests on' },
    ]
    const row = (name: string, within: readonly ChanceWithin[], rest: readonly string[]) => [
      name,
      ...within.map(({ fails }) => (fails === 0 ? `under 1 in ${histories}` : chance(fails))),
      chance(within.find(({ months }) => months === 12)?.stops ?? 0),
      ...rest,
    ]
    const rows = shown.map(({ part, within, costWhenFirst, dragsDown, restsOn }) =>
      row(part, within, [
        costWhenFirst === null ? '' : moneyIn(model.currency, costWhenFirst),
        dragsDown
          .slice(0, 2)
          .map(({ part: other }) => other)
          .join(', '),
        restsOnText(restsOn),
      ]),
    )
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
        histories,
        whole: outlook.within,
        parts,
        assumed,
        refusedFigures: forSet.problems,
        caution: shortCaution,
      },
      text: [
        `${register.boatFacts.name ?? boat}: ${saySet(register)}`,
        '',
        tableText(columns, [row('THE SET', outlook.within, []), ...rows]),
        ...(shown.length < parts.length
          ? [`… and ${parts.length - shown.length} more parts; --all shows them.`]
          : []),
        '',
        `${histories} histories with the care you usually give and nothing else done. "Costs" is the mean bill when the part is the first to fail, with all it brings down.`,
        ...(assumed.length === 0
          ? []
          : ['Taken for granted because nobody said:', ...assumed.map((line) => `  ${line}`)]),
        shortCaution,
      ].join('\n'),
    }
  })
}

function restsOnText(entries: readonly string[]): string {
  if (entries.length === 0) return 'catalogue only'
  return `catalogue and ${entries.length} of your ${entries.length === 1 ? 'entry' : 'entries'}`.replace(
    '1 of your entry',
    '1 of your entries',
  )
}
