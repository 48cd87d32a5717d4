/**
 * `gensettle job plan`: what to renew along with a job while the set is open for it.
 *
 * @module
 */

import { shortCaution } from '../alternatives/cautions.js'
import type { Play } from '../alternatives/policy.js'
import type { Sample } from '../alternatives/sample.js'
import { column } from '../alternatives/sample.js'
import { lowerFirst, moneyIn } from '../alternatives/say.js'
import { paired } from '../alternatives/turning-points.js'
import type { Alternative, LifeModel } from '../forecast/life-model.js'
import { additionsTo, besides, type WorthAdding, type WorthOfAdditions } from '../job/additions.js'
import { type Bundle, bundleOf } from '../job/bundle.js'
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
  readonly alternative?: string
  readonly mostMoney?: number
  readonly mostDays?: number
}

const histories = 800

/** Which further parts to renew with a job, and why. */
export function planJob(options: JobPlanOptions): Promise<Result> {
  return withSet(options, async (question) => {
    const { seed, mostMoney, mostDays } = options
    const lessons = lessonsFor(question, { seed })
    if (!lessons.ok) return lessons
    const { pooled } = lessons
    const prepared = await prepareFor({ ...question, seed, pooled })
    const { model, posterior, used } = prepared
    const jobs = model.alternatives.filter(({ now }) => keepsTheSet(now))
    const asked = options.alternative
    if (jobs.length === 0 || (asked !== undefined && !jobs.some(({ id }) => id === asked))) {
      const allowed = `an alternative that keeps the set: ${jobs.map(({ id }) => id).join(', ')}`
      return refuse({ code: 'not-one-of', path: '--alternative', found: asked ?? 'none', allowed })
    }
    const players = openPlayers(model, posterior, { used })
    const bar = progressOf('what to renew along with it')
    const play: Play = (alternatives, which) =>
      players.play(alternatives, { ...which, historiesPerChunk: 100 })
    try {
      bar.show(0, 3)
      const samples = await play(jobs, { seed, from: 0, count: histories })
      const chosen = asked === undefined ? leastOf(jobs, samples) : jobs.findIndex(({ id }) => id === asked)
      const job = jobs[chosen]!
      const sample = samples[chosen]!
      bar.show(1, 3)
      const worth = await additionsTo(job, { model, sample, seed, play })
      const limits = {
        ...(mostMoney === undefined ? {} : { money: mostMoney }),
        ...(mostDays === undefined ? {} : { hours: mostDays * model.labour.hoursPerDay }),
      }
      // one standard error less, so that luck in the histories renews nothing
      const additions = worth.additions.map((one) => ({ ...one, saves: one.saves - one.error }))
      const bundled = bundleOf(await loadSolver(), { ...worth, additions, limits })
      if (!bundled.ok)
        return refuse({
          code: 'no-answer',
          path: 'bundle',
          found: bundled.words,
          allowed: 'an answer that is proved',
        })
      bar.show(2, 3)
      const together = await playedTogether(job, bundled.best, { model, sample, seed, play })
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
          histories,
          job: job.id,
          open: worth.open,
          additions: worth.additions,
          openings: worth.openings,
          tooSmall: worth.tooSmall,
          unplayed: worth.unplayed,
          best: bundled.best,
          second: bundled.second ?? null,
          together,
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

function keepsTheSet(now: Alternative['now']): boolean {
  return now === 'leave' || (typeof now === 'object' && 'parts' in now)
}

function leastOf(jobs: readonly Alternative[], samples: readonly Sample[]): number {
  const means = samples.map((sample) => column(sample, 'cost').reduce((sum, cost) => sum + cost, 0))
  const open = means.map((mean, a) => (jobs[a]!.barred === undefined ? mean : Infinity))
  return open.indexOf(Math.min(...open))
}

interface Together {
  /** Money saved over the years kept by the whole choice, played as one. */
  readonly saves: number
  readonly standardError: number
}

/** The choice played as a whole: parts that save one another are not counted twice. */
async function playedTogether(
  job: Alternative,
  best: Bundle,
  of: { readonly model: LifeModel; readonly sample: Sample; readonly seed: number; readonly play: Play },
): Promise<Together | null> {
  if (best.parts.length === 0) return null
  const parts = of.model.parts.filter(({ id }) => best.parts.includes(id))
  const [played] = await of.play([besides(of.model, job, parts)], {
    seed: of.seed,
    from: 0,
    count: histories,
  })
  const { value, error } = paired(column(of.sample, 'cost'), column(played!, 'cost'))
  return { saves: value, standardError: error }
}

function sayPlan(
  model: LifeModel,
  job: Alternative,
  told: {
    readonly worth: WorthOfAdditions
    readonly best: Bundle
    readonly second: Bundle | undefined
    readonly together: Together | null
  },
): string[] {
  const { worth, best, second, together } = told
  const money = (amount: number) => moneyIn(model.currency, amount)
  const named = (id: string) => lowerFirst(model.parts.find((part) => part.id === id)?.name ?? id)
  const list = (ids: readonly string[]) => ids.map(named).join(', ')
  const years = figure(model.horizonYears)
  const access = new Map(shippedCatalogue().access.map(({ id, name }) => [id, name]))
  const of = lowerFirst(job.name ?? job.id)
  const lead =
    best.parts.length === 0
      ? `With "${of}" nothing else is worth renewing now.`
      : `With "${of}", renew as well: ${list(best.parts)}. That is ${money(best.price)} now.`
  const choice = (bundle: Bundle) => (bundle.parts.length === 0 ? 'nothing more' : list(bundle.parts))
  return [
    lead,
    ...(together === null
      ? []
      : [
          `Over ${years} years it saves ${money(together.saves)} ± ${money(together.standardError)} beyond that, all of it played together.`,
        ]),
    ...(second === undefined
      ? []
      : [`Next best: ${choice(second)}, ${money(best.net - second.net)} behind.`]),
    '',
    tableText(
      [{ head: 'part' }, { head: 'renew now' }, { head: 'why' }, { head: 'taken' }],
      worth.additions.map((one) => [
        named(one.part),
        money(one.price),
        sayWhy(one, money),
        best.parts.includes(one.part) ? 'yes' : '',
      ]),
    ),
    ...worth.openings.map(
      ({ id, price }) => `Opening ${lowerFirst(access.get(id) ?? id)} takes ${money(price)}, once.`,
    ),
    `${worth.tooSmall} parts were left out: all that their failures cost is less than renewing them.${worth.unplayed > 0 ? ` ${worth.unplayed} more might be worth it and were not played.` : ''}`,
  ]
}

/** "110 now against 0.31 × 1,150 later" */
function sayWhy(
  { price, saves, failures, mayPutIn }: WorthAdding,
  money: (amount: number) => string,
): string {
  const fewer = failures.left - failures.renewed
  const put = mayPutIn >= 1 ? `, less ${money(mayPutIn)} for what the work may put in` : ''
  if (!(fewer > 0.005) || !(saves > 0))
    return `${money(price)} now, and saves ${money(Math.max(0, saves))} later${put}`
  return `${money(price)} now against ${figure(fewer)} × ${money(saves / fewer)} later${put}`
}
