/**
 * The answer that stands, as the log keeps it with a decision.
 *
 * @module
 */

import type { AskedOf } from '../../alternatives/answer-key.js'
import type { Figures } from '../../alternatives/figures.js'
import { keepAnswer } from '../../alternatives/kept-answer.js'
import { programVersion } from '../../alternatives/program-version.js'
import { reportOf } from '../../alternatives/report.js'
import type { Decided } from './messages.js'

/** As an entry has no room for a longer name of what ran the program. */
const longestEngine = 200

/** At the prices that the histories were played with, so that running it again gives the same figures. */
export function decisionOf({ basis, samples }: Figures, { seed }: AskedOf): Decided {
  const { model } = basis
  const report = reportOf(model, samples, seed)
  const by = { program: programVersion, engine: navigator.userAgent.slice(0, longestEngine) }
  const whole = keepAnswer({ model, samples, report }, { seed, by })
  if (!whole.ok) return whole
  return { ...whole, ...(report.walkAway === null ? {} : { walkAwayPrice: report.walkAway.price }) }
}
