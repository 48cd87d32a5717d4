/**
 * `gensettle job plan`: what to renew along with a job while the set is open for it.
 *
 * @module
 */

import { shortCaution } from '../alternatives/cautions.js'
import type { Play } from '../alternatives/policy.js'
import { column, type Sample } from '../alternatives/sample.js'
import { lowerFirst, moneyIn } from '../alternatives/say.js'
import type { Alternative, LifeModel } from '../forecast/life-model.js'
import type { WorthOfAdditions } from '../job/additions.js'
import { type Bundle, bundleOf } from '../job/bundle.js'
import { alternativeOfJob, keepsTheSet } from '../job/job-action.js'
import { isOpen, type Job, jobNamedOrLast, jobsOf } from '../job/jobs.js'
import {
  bundlingOf,
  planHistories,
  playJob,
  playTogether,
  type SayPlan,
  sayChoice,
  sayWhy,
  type Together,
} from '../job/plan-job.js'
import { setCatalogueOf } from '../register/set-kind-of.js'
import { openPlayers } from '../server/play.js'
import { loadSolver } from '../sizing/plan-milp.js'
import { prepareFor } from './answer.js'
import { lessonsFor, lessonsText, lessonsValue } from './lessons.js'
import { type SetOptions, withSet } from './of-set.js'
import { shippedCatalogue } from './places.js'
import { progressOf } from './progress.js'
import { type Result, refuse } from './result.js'
import { figure, tableText } from './table.js'

export interface JobPlanOptions extends SetOptions {
  readonly seed: number
  /** A job that the log speaks of. */
  readonly job?: string
  /** An alternative in its place. */
  readonly alternative?: string
  readonly mostMoney?: number
  readonly mostDays?: number
}

/** Which further parts to renew with a job, and why. */
export function planJob(options: JobPlanOptions): Promise<Result> {
  return withSet(options, async (question) => {
    const { seed, mostMoney, mostDays } = options
    const jobs = jobsOf(question.entries, question.set)
    if (options.job !== undefined && !jobs.some(({ name }) => name === options.job)) {
      const allowed = `a job that the log speaks of: ${jobs.map(({ name }) => name).join(', ') || 'none yet'}`
      return refuse({ code: 'not-one-of', path: 'job', found: options.job, allowed })
    }
    const lessons = lessonsFor(question, { seed })
    if (!lessons.ok) return lessons
    const { pooled } = lessons
    const prepared = await prepareFor({ ...question, seed, pooled, first: true })
    const { model, posterior, used, register } = prepared
    const { catalogue } = setCatalogueOf(register, shippedCatalogue())
    const setting = { model, catalogue, openQuotes: register.openQuotes }
    const kept = model.alternatives.filter(keepsTheSet)
    const asked = options.alternative
    if (kept.length === 0 || (asked !== undefined && !kept.some(({ id }) => id === asked))) {
      const allowed = `an alternative that keeps the set: ${kept.map(({ id }) => id).join(', ')}`
      return refuse({ code: 'not-one-of', path: '--alternative', found: asked ?? 'none', allowed })
    }
    const players = openPlayers(model, posterior, { used })
    const bar = progressOf('what to renew along with it')
    const play: Play = (alternatives, which) =>
      players.play(alternatives, { ...which, historiesPerChunk: 100 })
    try {
      bar.show(0, 3)
      const named = asked === undefined ? jobInHand(jobs, options.job) : undefined
      const job =
        named === undefined
          ? (kept.find(({ id }) => id === asked) ?? (await leastOf(kept, { play, seed })))
          : alternativeOfJob(setting, named)
      bar.show(1, 3)
      const played = await playJob(job, { model, seed, play })
      const { worth } = played
      const limits = {
        ...(mostMoney === undefined ? {} : { money: mostMoney }),
        ...(mostDays === undefined ? {} : { hours: mostDays * model.labour.hoursPerDay }),
      }
      const bundled = bundleOf(await loadSolver(), bundlingOf(worth, limits))
      if (!bundled.ok)
        return refuse({
          code: 'no-answer',
          path: 'bundle',
          found: bundled.words,
          allowed: 'an answer that is proved',
        })
      bar.show(2, 3)
      const together = await playTogether(played, bundled.best, { model, seed, play })
      const { boat, set, asOf } = question
      return {
        ok: true,
        json: {
          type: 'gensettle/job-plan',
          version: 1,
          boat,
          set,
          asOf,
          seed,
          currency: model.currency,
          horizonYears: model.horizonYears,
          histories: planHistories,
          job: job.id,
          open: worth.open,
          additions: worth.additions,
          openings: worth.openings,
          tooSmall: worth.tooSmall,
          unplayed: worth.unplayed,
          best: bundled.best,
          second: bundled.second ?? null,
          together: together ?? null,
          assumed: prepared.assumed,
          ...lessonsValue(pooled),
          caution: shortCaution,
        },
        text: [
          ...sayPlan(model, job, { worth, best: bundled.best, second: bundled.second, together }),
          ...lessonsText(pooled),
          shortCaution,
        ].join('\n'),
      }
    } finally {
      bar.end()
      await players.close()
    }
  })
}

/** The one asked for; else the last that something is left to do of. */
function jobInHand(jobs: readonly Job[], asked: string | undefined): Job | undefined {
  const job = jobNamedOrLast(jobs, asked)
  return asked !== undefined || (job !== undefined && isOpen(job)) ? job : undefined
}

async function leastOf(
  kept: readonly Alternative[],
  { play, seed }: { readonly play: Play; readonly seed: number },
): Promise<Alternative> {
  const samples = await play(kept, { seed, from: 0, count: planHistories })
  const mean = (sample: Sample) => column(sample, 'cost').reduce((sum, cost) => sum + cost, 0)
  const means = samples.map((sample, a) => (kept[a]!.barred === undefined ? mean(sample) : Infinity))
  return kept[means.indexOf(Math.min(...means))]!
}

function sayPlan(
  model: LifeModel,
  job: Alternative,
  told: {
    readonly worth: WorthOfAdditions
    readonly best: Bundle
    readonly second: Bundle | undefined
    readonly together: Together | undefined
  },
): string[] {
  const { worth, best, second, together } = told
  const say: SayPlan = {
    money: (amount) => moneyIn(model.currency, amount),
    named: (id) => model.parts.find((part) => part.id === id)?.name ?? id,
    figure,
  }
  const { money, named } = say
  const years = figure(model.horizonYears)
  const access = new Map(shippedCatalogue().access.map(({ id, name }) => [id, name]))
  const of = lowerFirst(job.name ?? job.id)
  const lead =
    best.parts.length === 0
      ? `With "${of}" nothing else is worth renewing now.`
      : `With "${of}", renew as well: ${sayChoice(best, say)}. That is ${money(best.price)} now.`
  return [
    lead,
    ...(together === undefined
      ? []
      : [
          `Over ${years} years it saves ${money(together.saves)} ± ${money(together.standardError)} beyond that, all of it played together.`,
        ]),
    ...(second === undefined
      ? []
      : [`Next best: ${sayChoice(second, say)}, ${money(best.net - second.net)} behind.`]),
    '',
    tableText(
      [{ head: 'part' }, { head: 'renew now' }, { head: 'why' }, { head: 'taken' }],
      worth.additions.map((one) => [
        lowerFirst(named(one.part)),
        money(one.price),
        sayWhy(one, say),
        best.parts.includes(one.part) ? 'yes' : '',
      ]),
    ),
    ...worth.openings.map(
      ({ id, price }) => `Opening ${lowerFirst(access.get(id) ?? id)} takes ${money(price)}, once.`,
    ),
    `${worth.tooSmall} parts were left out: all that their failures cost is less than renewing them.${worth.unplayed > 0 ? ` ${worth.unplayed} more might be worth it and were not played.` : ''}`,
  ]
}
