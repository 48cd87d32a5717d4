/**
 * What is likely when, as the screen shows it: made away from the page.
 *
 * @module
 */

import { basisOf } from '../../alternatives/figures.js'
import type { Memory } from '../../alternatives/memory.js'
import { lifeSpans, monthByMonth } from '../../alternatives/month-by-month.js'
import { openStops } from '../../alternatives/open-stops.js'
import { posteriorIn, type Question } from '../../alternatives/settle.js'
import { buildLifeModel } from '../../forecast/build-life-model.js'
import { sayLearned, withLearnedOverrun } from '../../forecast/learned-overrun.js'
import { lifeModelSchema } from '../../forecast/life-model.js'
import { forecastOf } from '../../forecast/odds.js'
import { withLessons } from '../../forecast/pooling-lessons.js'
import { registerOf } from '../../register/register.js'
import { setCatalogueOf } from '../../register/set-kind-of.js'
import type { ForecastState } from './messages.js'

/** Calendar months looked ahead, the present one included. */
const months = 25
/** Lives of each part at each node: the chance of a month is good to about one in a hundred. */
const livesPerNode = 160

/** The forecast of a set, from its log. */
export async function forecastView(question: Question, memory: Memory): Promise<ForecastState> {
  const { seed, catalogue } = question
  const register = registerOf(question)
  const forSet = setCatalogueOf(register, catalogue)
  const built = buildLifeModel(register, forSet.catalogue, {})
  const { pooled, overrun } = question
  const model = withLearnedOverrun(withLessons(lifeModelSchema.parse(built.model), pooled), overrun)
  const posterior = posteriorIn(memory, model, seed)
  const assumed = [...forSet.assumed, ...built.assumed, ...sayLearned(overrun)]
  const { restsOn } = built
  const stops = openStops({ entries: question.entries, register, catalogue })
  return {
    stage: 'done',
    basis: basisOf(
      { register, model, stops, restsOn, assumed, problems: forSet.problems, posterior, pooled },
      catalogue,
    ),
    view: {
      forecast: forecastOf(model, posterior, { seed }),
      months: monthByMonth(model, posterior, { seed, months, livesPerNode }),
      spans: lifeSpans(model, posterior, { seed }),
    },
  }
}
