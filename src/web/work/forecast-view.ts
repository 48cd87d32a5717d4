/**
 * What is likely when, as the screen shows it: made away from the page.
 *
 * @module
 */

import { basisOf } from '../../alternatives/figures.js'
import { lifeSpans, monthByMonth } from '../../alternatives/month-by-month.js'
import { openStops } from '../../alternatives/open-stops.js'
import { posteriorIn, posteriorKey, type Question } from '../../alternatives/settle.js'
import type { Catalogue } from '../../catalogue/catalogue.js'
import { buildLifeModel } from '../../forecast/build-life-model.js'
import { sayLearned, withLearnedOverrun } from '../../forecast/learned-overrun.js'
import { lifeModelSchema } from '../../forecast/life-model.js'
import { forecastOf } from '../../forecast/odds.js'
import { withLessons } from '../../forecast/pooling-lessons.js'
import { learnedOverrunOf } from '../../job/actual.js'
import { registerOf } from '../../register/register.js'
import type { SetRegister } from '../../register/register-types.js'
import { setCatalogueOf } from '../../register/set-kind-of.js'
import { bringPosterior } from './computed-before.js'
import { keepAnswer, readAnswer } from './kept-answers.js'
import { lessonsFor } from './lessons.js'
import type { Conductor, ForecastState } from './messages.js'
import { allOf } from './question.js'
import type { WorkerMemory } from './remembered.js'

/** Calendar months looked ahead, the present one included. */
const months = 25
/** Lives of each part at each node: the chance of a month is good to about one in a hundred. */
const livesPerNode = 160

/** Forecasts as they are asked for: kept, and with the register of each remembered for its figures one by one. */
export function makeForecaster({
  memory,
  catalogue,
  registers,
}: {
  readonly memory: WorkerMemory
  readonly catalogue: () => Promise<Catalogue>
  readonly registers: Map<string, SetRegister>
}): Conductor['forecast'] {
  return async (asked, entries, tell) => {
    const key = `forecast ${asked.key}`
    const kept = (await readAnswer(key)) as ForecastState | undefined
    if (kept !== undefined) {
      registers.set(asked.key, kept.basis!.register)
      return tell(kept)
    }
    tell({ stage: 'preparing' })
    try {
      const pooled = await lessonsFor(asked, { catalogue: await catalogue(), memory })
      const question = { ...asked, entries: await allOf(entries), catalogue: await catalogue(), pooled }
      const overrun = learnedOverrunOf(question)
      const state = await forecastView({ ...question, overrun }, memory)
      registers.set(asked.key, state.basis!.register)
      tell(state)
      await keepAnswer(key, state)
    } catch (cause) {
      tell({ stage: 'failed', problem: cause instanceof Error ? cause.message : String(cause) })
    }
  }
}

/** The forecast of a set, from its log. */
async function forecastView(question: Question, memory: WorkerMemory): Promise<ForecastState> {
  const { seed, catalogue } = question
  const register = registerOf(question)
  const forSet = setCatalogueOf(register, catalogue)
  const built = buildLifeModel(register, forSet.catalogue, {})
  const { pooled, overrun } = question
  const model = withLearnedOverrun(withLessons(lifeModelSchema.parse(built.model), pooled), overrun)
  if (!memory.hasPosterior(posteriorKey(model, seed))) await bringPosterior(memory, model, seed)
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
