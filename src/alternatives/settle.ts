/**
 * From a boat's logbook to a life model with its alternatives, ready to be played.
 *
 * @module
 */

import type { Catalogue } from '../catalogue/catalogue.js'
import type { Problem } from '../catalogue/problem.js'
import { buildLifeModel } from '../forecast/build-life-model.js'
import { contradictedEvidence } from '../forecast/contradicted-evidence.js'
import { type LearnedOverrun, sayLearned, withLearnedOverrun } from '../forecast/learned-overrun.js'
import { type Alternative, type LifeModel, lifeModelSchema } from '../forecast/life-model.js'
import { type Pooled, withLessons } from '../forecast/pooling-lessons.js'
import { posteriorOf, startingStatesOfUsed } from '../forecast/posterior.js'
import type { Posterior } from '../forecast/posterior-type.js'
import type { Entry } from '../logbook/kinds.js'
import { registerOf } from '../register/register.js'
import type { SetRegister } from '../register/register-types.js'
import { setCatalogueOf } from '../register/set-kind-of.js'
import { alternativesOf, judged } from './alternatives-of.js'
import { withLightRunning } from './candidates-light-running.js'
import { type Memory, noMemory } from './memory.js'
import { type OpenStop, openStops } from './open-stops.js'
import {
  chooseLimits,
  firstLimit,
  firstTrial,
  type HowChosen,
  type Limit,
  type Play,
  withChosenLimits,
} from './policy.js'

/** Everything an answer about one set starts from. */
export interface Prepared {
  readonly register: SetRegister
  readonly model: LifeModel
  readonly posterior: Posterior
  /** Starting states of used candidates, by candidate index. */
  readonly used: ReadonlyMap<number, Posterior>
  /** Entries that each part's figures rest on; none: the catalogue only. */
  readonly restsOn: Readonly<Record<string, readonly string[]>>
  /** What was taken for granted because nobody said otherwise. */
  readonly assumed: readonly string[]
  /** Lessons of the owner's other boats that were heard. */
  readonly pooled?: Pooled | undefined
  /** Figures of the owner that could not be used, and entries that contradict the model and were left out. */
  readonly problems: readonly Problem[]
  /** What blocks running on, and what of it was passed over. */
  readonly stops: readonly OpenStop[]
  /** Alternatives of the owner that could not be laid out, and why. */
  readonly refusedAlternatives: readonly Problem[]
}

export interface Question {
  /** Current forms of the boat's entries. */
  readonly entries: readonly Entry[]
  readonly boat: string
  readonly set: string
  /** 'YYYY-MM-DD' */
  readonly asOf: string
  readonly catalogue: Catalogue
  readonly seed: number
  /** Where what was worked out before may be found again. */
  readonly memory?: Memory
  /** Lessons of the owner's other boats, where they are to be heard. */
  readonly pooled?: Pooled | undefined
  /** What the owner's jobs have come to, where that is to be heard. */
  readonly overrun?: LearnedOverrun | undefined
}

/**
 * Folds the logbook, builds the life model, learns from the record, and lays out the alternatives, with a first repair
 * limit for all of them alike; `withOwnLimits` gives each its own.
 */
export function prepareAnswer(question: Question): Prepared {
  const steps = preparing(question)
  for (;;) {
    const step = steps.next()
    if (step.done) return step.value
  }
}

/** The same in steps of less than about a second each, so that a program that runs it can listen in between. */
export function* preparing(question: Question): Generator<void, Prepared> {
  const { seed, memory = noMemory } = question
  const read = readSet(question)
  yield
  const posterior = posteriorIn(memory, read.bare, seed)
  yield
  const used = usedStates(read.bare, posterior, seed, memory)
  yield
  const unlimited = withAlternativesOf(read, { posterior, used })
  return { ...unlimited, model: withFirstLimit(unlimited.model, { posterior, used }, { seed, memory }) }
}

/** What the log makes of a set, before anything is learnt from it. */
export interface ReadSet {
  readonly register: SetRegister
  readonly forSet: ReturnType<typeof setCatalogueOf>
  /** The life model without alternatives. */
  readonly bare: LifeModel
  readonly restsOn: Prepared['restsOn']
  readonly assumed: Prepared['assumed']
  readonly pooled: Prepared['pooled']
  readonly overrun: Question['overrun']
  /** The log: the alternatives read it anew for what draws power aboard. */
  readonly entries: Question['entries']
  readonly stops: Prepared['stops']
}

export function readSet(question: Question): ReadSet {
  const register = registerOf(question)
  const forSet = setCatalogueOf(register, question.catalogue)
  const built = buildLifeModel(register, forSet.catalogue, {})
  const { pooled, overrun } = question
  const model = withLessons(lifeModelSchema.parse(built.model), pooled)
  return {
    register,
    forSet,
    bare: withLearnedOverrun(model, overrun),
    restsOn: built.restsOn,
    assumed: [...forSet.assumed, ...built.assumed, ...sayLearned(overrun)],
    pooled,
    overrun,
    entries: question.entries,
    stops: openStops({ entries: question.entries, register, catalogue: question.catalogue }),
  }
}

/**
 * A set that was read and learnt of, with its alternatives, none of them with a repair limit yet. Only here do candidates run as
 * lightly as the loads have it: what is believed of the set in hand does not rest on them.
 */
export function withAlternativesOf(
  read: ReadSet,
  { posterior, used }: Pick<Prepared, 'posterior' | 'used'>,
): Prepared {
  const { register, forSet, bare, restsOn, pooled, overrun, stops, entries } = read
  const { catalogue } = forSet
  const { candidates, assumed } = withLightRunning({ model: bare, register, catalogue, entries })
  const laidOut = alternativesOf({ model: bare, register, catalogue, posterior, stops })
  const alternatives = lifeModelSchema.shape.alternatives.parse(laidOut.alternatives)
  return {
    register,
    model: withLearnedOverrun({ ...bare, candidates, alternatives }, overrun),
    posterior,
    used,
    restsOn,
    assumed: [...read.assumed, ...assumed],
    ...(pooled === undefined ? {} : { pooled }),
    problems: [...forSet.problems, ...contradictedEvidence(bare, posterior)],
    stops,
    refusedAlternatives: laidOut.problems,
  }
}

/**
 * First figures, to be followed by better ones: from a rough posterior where there is no full one yet, without the
 * alternatives that may fit a used set, and mending whatever fails however dear.
 */
export function prepareRoughly(read: ReadSet, seed: number, full?: Posterior): Prepared {
  const posterior = full ?? posteriorOf(read.bare, { seed, rough: true })
  const prepared = withAlternativesOf(read, { posterior, used: new Map() })
  const { model } = prepared
  const isUsed = new Set(model.candidates.filter(({ used }) => used !== undefined).map(({ id }) => id))
  const alternatives = model.alternatives.filter(
    (alternative) => !candidatesIn(alternative).some((id) => isUsed.has(id)),
  )
  return { ...prepared, model: { ...model, alternatives } }
}

/** Candidates that an alternative may fit, now, later or above its limit. */
function candidatesIn({ now, replaceLater, limit }: Alternative): string[] {
  return [
    ...(typeof now === 'object' && 'replaceWith' in now ? [now.replaceWith] : []),
    ...(replaceLater === undefined ? [] : [replaceLater.with]),
    ...(typeof limit?.above === 'object' ? [limit.above.replaceWith] : []),
  ]
}

/** One limit for all alternatives that have none yet, from a few histories. */
function withFirstLimit(
  model: LifeModel,
  { posterior, used }: Pick<Prepared, 'posterior' | 'used'>,
  how: { readonly seed: number; readonly memory?: Memory },
): LifeModel {
  const { seed, memory = noMemory } = how
  const key = firstLimitKey(model, seed)
  const found = memory.find(key) as { readonly value: Limit | null } | undefined
  const limit =
    found === undefined ? firstLimit(model, posterior, { seed, used }) : (found.value ?? undefined)
  if (found === undefined) memory.keep(key, limit ?? null)
  return withLimitForAll(model, limit)
}

/** The same where others play: one limit for all alternatives that have none yet. */
export async function withFirstLimitBy(
  prepared: Prepared,
  how: { readonly seed: number; readonly play: Play; readonly memory?: Memory },
): Promise<Prepared> {
  const { model } = prepared
  const { seed, play, memory = noMemory } = how
  const key = firstLimitKey(model, seed)
  const found = memory.find(key) as { readonly value: Limit | null } | undefined
  if (found !== undefined) return { ...prepared, model: withLimitForAll(model, found.value ?? undefined) }
  const trial = firstTrial(model, seed)
  const limit = trial?.chosen(await play(trial.alternatives, trial.span))
  memory.keep(key, limit ?? null)
  return { ...prepared, model: withLimitForAll(model, limit) }
}

function firstLimitKey(model: LifeModel, seed: number) {
  return { what: 'first limit', model, seed }
}

function withLimitForAll(model: LifeModel, limit: Limit | undefined): LifeModel {
  const without = model.alternatives.filter(({ now, limit: own }) => now !== 'give-up' && own === undefined)
  const limits = new Map(without.map(({ id }) => [id, limit]))
  return { ...model, alternatives: withChosenLimits(model.alternatives, limits) }
}

/** The same question with other alternatives, each barred as the stop lines say. A limit that one has stays its own. */
export function withAlternatives(
  prepared: Prepared,
  list: readonly Alternative[],
  how: { readonly seed: number; readonly memory?: Memory },
): Prepared {
  const { model, stops } = prepared
  const laidOut = judged(stops, list)
  return {
    ...prepared,
    model: withFirstLimit({ ...model, alternatives: [...laidOut.alternatives] }, prepared, how),
    refusedAlternatives: laidOut.problems,
  }
}

/** The posterior of a model, worked out or remembered. */
export function posteriorIn(memory: Memory, model: LifeModel, seed: number): Posterior {
  return memory.posterior(posteriorKey(model, seed), () => posteriorOf(model, { seed }))
}

/** Under what the posterior of a model is remembered. */
export function posteriorKey(model: LifeModel, seed: number): unknown {
  const { alternatives: _, ...restsOn } = model
  return { what: 'posterior', model: restsOn, seed }
}

interface ChosenLimit {
  readonly id: string
  readonly limit?: Limit
}

/** The same answer with a repair limit of its own for each alternative: better figures, at the cost of some seconds. */
export async function withOwnLimits(
  prepared: Prepared,
  how: HowChosen & { readonly memory?: Memory },
): Promise<Prepared> {
  const { model } = prepared
  const { seed, memory = noMemory, except = new Set() } = how
  const key = { what: 'limits', model, seed, except: [...except] }
  const found = memory.find(key) as { readonly value: readonly ChosenLimit[] } | undefined
  const chosen =
    found?.value ??
    [...(await chooseLimits(model, how))].map(
      ([id, limit]): ChosenLimit => ({ id, ...(limit === undefined ? {} : { limit }) }),
    )
  if (found === undefined) memory.keep(key, chosen)
  const limits = new Map(chosen.map(({ id, limit }) => [id, limit]))
  return {
    ...prepared,
    model: { ...model, alternatives: withChosenLimits(model.alternatives, limits) },
  }
}

/** Nodes of a set not yet known, even steps over what its ln κ may be; a history takes the nearest. */
const usedNodes = 13
const usedReach = 2.4

/**
 * ln κ of a set not yet bought: the boat's part b as the record leaves it, and a set's part g drawn anew. With B² and
 * G² their variances, b given b + g is normal about its share B²/(B² + G²) of the sum, with variance B²G²/(B² + G²).
 */
function nodesOfNewSet(model: LifeModel, posterior: Posterior): Float64Array {
  const boat = model.setFactor.boatLogSd ** 2
  const set = model.setFactor.setLogSd ** 2
  if (boat + set === 0) return new Float64Array(1)
  const { kappaLog, kappaWeight } = posterior
  const mean = kappaLog.reduce((sum, log, n) => sum + log * kappaWeight[n]!, 0)
  const variance = kappaLog.reduce((sum, log, n) => sum + (log - mean) ** 2 * kappaWeight[n]!, 0)
  const share = boat / (boat + set)
  const logSd = Math.sqrt(share ** 2 * variance + share * set + set)
  return Float64Array.from(
    { length: usedNodes },
    (_, n) => share * mean + usedReach * logSd * ((2 * n) / (usedNodes - 1) - 1),
  )
}

/** Starting states of every candidate that is bought used. */
export function usedStates(
  model: LifeModel,
  posterior: Posterior,
  seed: number,
  memory: Memory = noMemory,
): Map<number, Posterior> {
  const kappaLog = nodesOfNewSet(model, posterior)
  const states = new Map<number, Posterior>()
  model.candidates.forEach((candidate, c) => {
    const { used } = candidate
    if (used === undefined) return
    const make = () => startingStatesOfUsed(model, { candidate: { ...candidate, used }, kappaLog, seed })
    states.set(c, memory.posterior(usedKey(model, candidate.id, seed), make))
  })
  return states
}

/** Under what the starting states of a candidate that is bought used are remembered. */
export function usedKey(model: LifeModel, candidate: string, seed: number): unknown {
  const { alternatives: _, ...restsOn } = model
  return { what: 'used', model: restsOn, candidate, seed }
}
