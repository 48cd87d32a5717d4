/**
 * What would have been said at a past choice of which no answer was kept, with what was known then.
 *
 * @module
 */

import type { AskedOf } from '../../alternatives/answer-key.js'
import { entriesAtChoice, type PastChoice } from '../../alternatives/hindsight-choices.js'
import type { KnownBy } from '../../alternatives/hindsight-spans.js'
import { reportOf } from '../../alternatives/report.js'
import { sayReport } from '../../alternatives/say.js'
import { preparing } from '../../alternatives/settle.js'
import type { Catalogue } from '../../catalogue/catalogue.js'
import type { Entry } from '../../logbook/kinds.js'
import { setsOf } from '../../register/register.js'
import type { Crew } from './crew.js'
import type { SaidThen } from './look-back-says.js'

/** A first answer's histories: enough to say what would have been said. */
const histories = 2_000

/** Nothing where the set was not there yet, or it was stopped. */
export async function saidAtChoice(
  choice: Omit<PastChoice, 'kept'>,
  of: {
    /** Corrected entries too. */
    readonly entries: readonly Entry[]
    readonly by: KnownBy
    readonly asked: AskedOf
    readonly catalogue: Catalogue
    readonly crew: Crew
    readonly stopped: () => boolean
  },
): Promise<SaidThen | undefined> {
  const { asOf } = choice
  const { boat, set, seed } = of.asked
  const entries = entriesAtChoice(of.entries, choice, of.by)
  if (!setsOf(entries, asOf).includes(set)) return undefined
  const preparation = preparing({ entries, boat, set, asOf, seed, catalogue: of.catalogue })
  let step = preparation.next()
  while (!step.done) {
    await new Promise((resolve) => setTimeout(resolve, 0))
    if (of.stopped()) return undefined
    step = preparation.next()
  }
  const { model, posterior, used } = step.value
  const job = {
    id: `said then ${choice.entry}`,
    of: { model, posterior, used },
    alternatives: model.alternatives,
  }
  const samples = await of.crew.play(job, { seed, from: 0, count: histories }, { stopped: of.stopped })
  if (samples === undefined) return undefined
  const report = reportOf(model, samples, seed)
  const { verdict, walkAway } = sayReport(model, samples, report)
  return { verdict: report.walkAway === null ? verdict : `${verdict} ${walkAway}` }
}
