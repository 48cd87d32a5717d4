/**
 * `gensettle simulate FILE`: a life model that was written by hand, played.
 *
 * @module
 */

import { shortCaution } from '../alternatives/cautions.js'
import { TooManyEvents } from '../alternatives/kernel.js'
import type { Sample } from '../alternatives/sample.js'
import { usedStates } from '../alternatives/settle.js'
import { type Estimate, type Summary, summarise } from '../alternatives/summary.js'
import type { LifeModel } from '../forecast/life-model.js'
import { posteriorOf } from '../forecast/posterior.js'
import { readLifeModel } from '../forecast/read-life-model.js'
import { readJsonFile } from './new-file.js'
import { playAll } from './play-all.js'
import { progressOf } from './progress.js'
import { type Result, refuse } from './result.js'
import { chance, figure, tableText } from './table.js'

export interface SimulateOptions {
  readonly histories: number
  readonly seed: number
}

export async function simulateFile(path: string, { histories, seed }: SimulateOptions): Promise<Result> {
  const read = readJsonFile(path, { path: 'FILE', holds: 'a life model' })
  if ('problem' in read) return refuse(read.problem)
  const parsed = readLifeModel(read.value)
  if (!parsed.ok) return parsed
  const { model } = parsed
  try {
    const samples = await playModel(model, { histories, seed })
    const summaries = samples.map((sample) => summarise(model, sample))
    return {
      ok: true,
      json: {
        type: 'gensettle/simulation',
        version: 1,
        title: model.title,
        currency: model.currency,
        horizonYears: model.horizonYears,
        histories,
        seed,
        alternatives: summaries,
        caution: shortCaution,
      },
      text: simulationText(model, summaries, { histories, seed }),
    }
  } catch (error) {
    if (!isTooManyEvents(error)) throw error
    const allowed = 'parts that fail less often, or fewer years'
    return refuse({ code: 'cannot-tell', path: 'parts', found: error.message, allowed })
  }
}

/** Workers hand on an error's name and message only. */
function isTooManyEvents(error: unknown): error is Error {
  return (
    error instanceof TooManyEvents ||
    (error instanceof Error && error.message.includes('events in one history'))
  )
}

async function playModel(model: LifeModel, { histories, seed }: SimulateOptions): Promise<Sample[]> {
  const bar = progressOf('playing histories')
  const posterior = posteriorOf(model, { seed })
  const prepared = { model, posterior, used: usedStates(model, posterior, seed) }
  try {
    const span = { seed, from: 0, count: histories }
    return await playAll(prepared, span, { onProgress: (done) => bar.show(done, histories) })
  } finally {
    bar.end()
  }
}

/** Names of alternatives are broken, so that a table fits on a screen. */
const nameWidth = 38

/** The tables of a simulation. */
function simulationText(
  model: LifeModel,
  summaries: readonly Summary[],
  { histories, seed }: SimulateOptions,
): string {
  const unit = model.currency === '' ? 'money' : model.currency
  const named = new Map(model.alternatives.map(({ id, name }) => [id, name ?? id]))
  const nameOf = ({ alternative }: Summary) => named.get(alternative) ?? alternative
  const plusMinus = ({ mean, standardError }: Estimate) => `${figure(mean)} ± ${figure(standardError)}`
  const right = (head: string) => ({ head, align: 'right' }) as const
  const money = tableText(
    [
      { head: `${unit}, ${figure(model.horizonYears)} years`, wrap: nameWidth },
      ...['mean ± error', '10 in 100', 'half', '90 in 100', 'worst tenth', 'a year', 'largest year'].map(
        right,
      ),
    ],
    summaries.map((summary) => [
      nameOf(summary),
      plusMinus(summary.cost),
      figure(summary.costSpread.low),
      figure(summary.costSpread.middle),
      figure(summary.costSpread.high),
      figure(summary.worstTenth),
      figure(summary.costPerYear),
      figure(summary.largestYear.mean),
    ]),
  )
  const kinds = Object.keys(summaries[0]!.dangersPerYear)
  const days = tableText(
    [
      { head: 'a year', wrap: nameWidth },
      ...['days without power', 'stops', 'same-day stops', 'runs short', ...kinds].map(right),
    ],
    summaries.map((summary) => [
      nameOf(summary),
      plusMinus(summary.daysWithoutPerYear),
      plusMinus(summary.stopsPerYear),
      plusMinus(summary.sameDayStopsPerYear),
      plusMinus(summary.deratesPerYear),
      ...kinds.map((kind) => chance(summary.dangersPerYear[kind] ?? 0)),
    ]),
  )
  return [
    ...(model.title === '' ? [] : [model.title, '']),
    money,
    '',
    days,
    '',
    failuresText(summaries[0]!, nameOf(summaries[0]!)),
    '',
    `${figure(histories)} histories of each, seed ${seed}; ± is one standard error of the simulation. The spread from 10 to 90 is the world's: no amount of running narrows it.`,
    shortCaution,
  ].join('\n')
}

const mostModes = 15

function failuresText(summary: Summary, name: string): string {
  const shares = new Map(summary.firstFailure.map(({ part, mode, share }) => [`${part}/${mode}`, share]))
  const modes = summary.failures.filter(({ perYear }) => perYear > 0).sort((a, b) => b.perYear - a.perYear)
  const rows = modes
    .slice(0, mostModes)
    .map(({ part, mode, perYear }) => [
      `${part}, ${mode}`,
      figure(perYear),
      chance(shares.get(`${part}/${mode}`) ?? 0),
    ])
  const more =
    modes.length > mostModes ? `\n… and ${modes.length - mostModes} more modes; --json has all.` : ''
  const table = tableText(
    [
      { head: `What fails: ${name}` },
      { head: 'failures a year', align: 'right' },
      { head: 'is the first', align: 'right' },
    ],
    rows,
  )
  return rows.length === 0 ? `Nothing fails: ${name}` : table + more
}
