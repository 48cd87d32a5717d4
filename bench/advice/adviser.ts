/**
 * Gensettle asked at a job: a life model from what the log shows by then, its posterior, a repair limit for each choice,
 * and 2,000 histories of mending and of replacing. The same machinery with the true scales is the one who knows.
 *
 * @module
 */

import { chooseLimits, withChosenLimits } from '../../src/alternatives/policy.js'
import { compile } from '../../src/alternatives/program.js'
import { column, type Picked, type Span } from '../../src/alternatives/sample.js'
import { playSpan } from '../../src/alternatives/simulate.js'
import type { Alternative, Amount, LifeModel, LifePart } from '../../src/forecast/life-model.js'
import { posteriorOf } from '../../src/forecast/posterior.js'
import { POSTERIOR_STEPS, type Posterior } from '../../src/forecast/posterior-type.js'
import type { Boat } from './boat.js'
import { hoursAt, type SetLog } from './log.js'
import { plainModes, scaleLogs } from './nature.js'
import type { Answer, Question } from './state.js'
import { meanOf, suppliesAt } from './work.js'

/** What was answered, and what it was expected to cost from then on, at that time's money. */
export interface Advice {
  readonly answer: Answer
  readonly expected: Readonly<Record<Answer, number>>
}

export interface Asking {
  readonly histories: number
  readonly seed: number
}

/** What Gensettle answers from the log. */
export function adviseFromLog(boat: Boat, question: Question, how: Asking): Promise<Advice> {
  const model = modelFromLog(boat, question)
  return adviseOn(model, posteriorOf(model, { seed: how.seed }), how)
}

/** What the owner believes and the log shows, with mending and replacing as the alternatives. */
export function modelFromLog({ believed }: Boat, question: Question): LifeModel {
  return modelAt(believed, question, { hoursPerYear: measuredHours(question) })
}

/**
 * What it answers where scales, prices, waits and use are known: of a set not yet bought the boat's part of its scales,
 * but not its luck.
 */
export function adviseKnowing(
  boat: Boat,
  question: Question,
  how: Asking & { readonly life: number },
): Promise<Advice> {
  const { nature } = boat
  const { set } = question.log
  const logs = scaleLogs(nature, plainModes(nature.model), { set, life: how.life })
  const common = nature.boatLog + Math.log(nature.level)
  const model = {
    ...modelAt(nature.model, question, {}),
    setFactor: { ...nature.model.setFactor, boatLogSd: 0 },
  }
  const exact = {
    ...model,
    setFactor: { ...model.setFactor, setLogSd: 0 },
    parts: withModes(model, (mode, m) => ({ ...mode, logSd: 0, lifeFactor: Math.exp(logs[m]!) })),
  }
  const posterior = posteriorOf(exact, { seed: how.seed })
  const theta = posterior.theta.map((factor, i) => {
    const m = Math.floor(i / POSTERIOR_STEPS)
    return factor * Math.exp(logs[m]! - common)
  })
  const parts = withModes(model, (mode) => ({ ...mode, lifeFactor: Math.exp(common) }))
  return adviseOn({ ...model, parts }, { ...posterior, theta }, how)
}

type Mode = LifePart['modes'][number]

function withModes({ parts }: LifeModel, change: (mode: Mode, m: number) => Mode): LifePart[] {
  let m = 0
  return parts.map((part) => ({ ...part, modes: part.modes.map((mode) => change(mode, m++)) }))
}

async function adviseOn(model: LifeModel, posterior: Posterior, how: Asking): Promise<Advice> {
  const { seed, histories } = how
  const program = compile(model, posterior)
  const play = (alternatives: readonly Alternative[], which: Span | Picked) =>
    playSpan({ ...program, alternatives }, which)
  const [mend, replace] = model.alternatives
  const few = play([mend!, replace!, withLimit(mend!, model), withLimit(replace!, model)], {
    seed: seed + 1,
    from: 0,
    count: glance,
  }).map((sample) => column(sample, 'cost'))
  const obvious = [0, 2].flatMap((m) => [1, 3].map((r) => lead(few[m]!, few[r]!)))
  const sign = Math.sign(obvious[0]!.mean)
  if (obvious.every(({ mean, error }) => mean * sign > beyondDoubt * error)) {
    const least = (a: number, b: number) => Math.min(meanOfAll(few[a]!), meanOfAll(few[b]!))
    return answered({ mend: least(0, 2), replace: least(1, 3) })
  }
  const limits = await chooseLimits(model, { seed, play: async (list, which) => play(list, which) })
  const samples = play(withChosenLimits(model.alternatives, limits), { seed, from: 0, count: histories })
  const [mending, replacing] = samples.map((sample) => meanOfAll(column(sample, 'cost')))
  return answered({ mend: mending!, replace: replacing! })
}

/** Histories of a first glance. Where that leaves no doubt, whatever the limits, all the rest is spared. */
const glance = 200
/** Standard errors of a lead that leave no doubt. */
const beyondDoubt = 8

/** A limit at half the price of a new set, against none: the two between which those that are chosen mostly lie. */
function withLimit(alternative: Alternative, { candidates }: LifeModel): Alternative {
  const { id, price } = candidates[0]!
  const half = meanOf(price) / 2
  return {
    ...alternative,
    id: `${alternative.id}-half`,
    limit: { knots: [half, half, half], above: { replaceWith: id } },
  }
}

/** By how much one costs less than another, history by history. */
function lead(one: Float64Array, other: Float64Array): { readonly mean: number; readonly error: number } {
  const n = one.length
  const mean = meanOfAll(other) - meanOfAll(one)
  let squares = 0
  for (let i = 0; i < n; i++) squares += (other[i]! - one[i]! - mean) ** 2
  return { mean, error: Math.sqrt(squares / (n - 1) / n) }
}

function answered(expected: Advice['expected']): Advice {
  return { answer: expected.replace < expected.mend ? 'replace' : 'mend', expected }
}

function meanOfAll(values: Float64Array): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length
}

/** A base model on the day of a question, with what the log holds. */
function modelAt(
  base: LifeModel,
  question: Question,
  { hoursPerYear }: { readonly hoursPerYear?: number | undefined },
): LifeModel {
  const { at, log, hours } = question
  const ageYears = at - log.fittedAt
  const broken = brokenModes(question)
  let m = 0
  const parts = base.parts.map((part, p): LifePart => {
    const line = log.parts[p]!
    const modes = part.modes.map((mode): Mode => {
      const looks = question.looks(m++)
      return {
        ...mode,
        observations: looks.map((look) => ({
          yearsAgo: Math.max(0, at - look.at),
          check: look.check,
          seen: look.seen,
        })),
      }
    })
    const stands = broken.find(({ part: number }) => number === p)?.mode
    return {
      ...part,
      age: { years: Math.max(0, at - line.fittedAt), hours: Math.max(0, hours - line.fittedHours) },
      quality: line.quality,
      ...firstRenewal(line, log, at),
      pastLives: line.pastLives,
      ...(stands === undefined ? {} : { broken: stands }),
      repair: { ...part.repair, supply: suppliesAt(part.repair, Math.max(0, at)) },
      modes,
    }
  })
  return {
    ...base,
    horizonYears: base.horizonYears - at,
    ...(hoursPerYear === undefined
      ? {}
      : { use: { ...base.use, hoursByMonth: Array<number>(12).fill(hoursPerYear / 12) } }),
    past: { track: trackOf(log, { at, hours }), lowLoadShare: 0 },
    set: { ...base.set, ageYears },
    parts,
    alternatives: [
      { id: 'mend', now: mending(base, question) },
      { id: 'replace', now: { replaceWith: base.candidates[0]!.id } },
    ],
  }
}

/** When the first piece came to its end, where the log tells of no life before: by now, or before the first life it tells of. */
function firstRenewal(
  line: SetLog['parts'][number],
  log: SetLog,
  at: number,
): Pick<LifePart, 'firstRenewal'> {
  const first = line.pastLives.length === 0 ? line.fittedAt : line.firstRenewalAt
  return first === undefined || first <= log.fittedAt ? {} : { firstRenewal: { yearsAgo: at - first } }
}

/** What stands failed: where the job began, and, where that does not stop the set but something else in it does, that. */
function brokenModes({ planned, isDown, modes, modesOf }: Question): { part: number; mode: string }[] {
  if (planned) return []
  const failed = modes.map((m) => modesOf[m]!)
  const stopping = isDown && !failed[0]!.stops ? failed.find(({ stops }) => stops) : undefined
  return [failed[0]!, ...(stopping === undefined ? [] : [stopping])].map(({ part, id }) => ({
    part,
    mode: id,
  }))
}

function mending(base: LifeModel, question: Question): Alternative['now'] {
  const repairs = question.parts.map((p) => base.parts[p]!.repair)
  return {
    parts: question.parts.map((p) => ({
      part: base.parts[p]!.id,
      outcome: 'renewed',
      quality: 1,
      agesLess: 1,
    })),
    price: question.estimate,
    wait: question.planned ? 0 : longestWait(repairs, question.at),
    intrusionChance: 1 - repairs.reduce((none, { intrusionChance }) => none * (1 - intrusionChance), 1),
  }
}

/** The wait of the part that is longest in coming, as the lognormal of the same mean and spread. */
function longestWait(repairs: readonly LifePart['repair'][], at: number): Amount {
  let longest = { mean: 0, variance: 0 }
  for (const repair of repairs) {
    let mean = 0
    let square = 0
    for (const { chance, days } of suppliesAt(repair, Math.max(0, at))) {
      const once = meanOf(days)
      const spread =
        typeof days === 'object' && 'median' in days ? once ** 2 * Math.expm1(days.logSd ** 2) : 0
      const again = repair.wrongPartChance
      const whole = once * (1 + again)
      mean += chance * whole
      square += chance * (spread * (1 + again) + again * (1 - again) * once ** 2 + whole ** 2)
    }
    if (mean > longest.mean) longest = { mean, variance: square - mean ** 2 }
  }
  if (longest.mean === 0) return 0
  const logVariance = Math.log1p(longest.variance / longest.mean ** 2)
  return { median: longest.mean * Math.exp(-logVariance / 2), logSd: Math.sqrt(logVariance) }
}

/** How far back the hour meter is read for the use to come. [years] */
const measuredYears = 2
const leastYears = 0.5

function measuredHours({ log, at, hours }: Question): number | undefined {
  const years = Math.min(measuredYears, at - log.fittedAt)
  if (years < leastYears) return undefined
  return Math.max(12, (hours - hoursAt(log, at - years)) / years)
}

function trackOf(
  log: SetLog,
  now: { readonly at: number; readonly hours: number },
): NonNullable<LifeModel['past']>['track'] {
  const ageYears = Math.max(1e-6, now.at - log.fittedAt)
  const since = Math.min(measuredYears, ageYears / 2)
  return [
    { yearsAgo: ageYears, hours: 0, starts: 0 },
    { yearsAgo: since, hours: Math.min(now.hours, hoursAt(log, now.at - since)), starts: 0 },
    { yearsAgo: 0, hours: now.hours, starts: 0 },
  ]
}
