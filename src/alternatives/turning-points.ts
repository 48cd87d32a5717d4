/**
 * What would change the answer: for each input the value at which another alternative becomes the best.
 *
 * @module
 */

import type { LifeModel } from '../forecast/life-model.js'
import type { CurvedInput, StraightInput } from './inputs.js'
import { curvedInputs, straightInputs } from './inputs.js'
import { mean } from './mean.js'
import { quoteOf } from './reweigh.js'
import { column, type Sample, type Span } from './sample.js'

/** Plays a model that differs from the one in hand in an input: the same set, the same draws. */
export type PlayModel = (model: LifeModel, span: Span) => Promise<readonly Sample[]>

export interface Turn {
  /** Value of the input at which the best changes hands. */
  readonly at: number
  /** Away from the value now, this is best from there on. */
  readonly to: string
}

/** How an input bears on the choice. */
export interface InputTurns {
  readonly id: StraightInput['id'] | CurvedInput['id']
  readonly now: number
  readonly low: number
  readonly high: number
  /**
   * By how much the alternative that is best now is ahead of the best of the others, at `low` and at `high`; below nought
   * it is behind. With one standard error.
   */
  readonly lead: { readonly low: Lead; readonly high: Lead }
  /** The nearest value below, and above, at which it is overtaken; none within what was tried. */
  readonly below?: Turn
  readonly above?: Turn
}

export interface Lead {
  readonly value: number
  readonly error: number
}

/** Which alternative would be best if its stop line were closed or its danger made safe, and by how much. */
export interface BarredLead {
  readonly id: string
  readonly saving: number
}

export interface TurningPoints {
  readonly best: string
  readonly inputs: readonly InputTurns[]
  readonly barred: readonly BarredLead[]
}

export interface Asked {
  readonly model: LifeModel
  readonly samples: readonly Sample[]
  readonly seed: number
  readonly play: PlayModel
  /** Histories of each trial of an input that changes what happens. */
  readonly histories?: number
  /** Trials that were played already; filled here. */
  readonly trials?: Map<string, Promise<Trial>>
}

const usualHistories = 320
/** Alternatives that a trial plays: the best ones as things stand, since the others are too far behind to come first. */
const mostTried = 5
/** A turn is sought no finer than this share of the span tried, and in no more trials than this. */
const finest = 0.02
const mostTrials = 5

/**
 * Every input tried one at a time, the others as they are. Straight inputs: cost = c + s·x by alternative, and the turn is
 * where two lines cross. Others are played anew on the histories of the base, and corrected by it:
 * E[C(x)] ≈ mean of all histories at the base + mean of those played of (C(x) − C(base)); the turn by the secant rule.
 */
export async function turningPoints(asked: Asked): Promise<TurningPoints | undefined> {
  const { model, samples } = asked
  const open = samples.filter((_, a) => model.alternatives[a]!.barred === undefined)
  if (open.length < 2) return undefined
  const means = open.map((sample) => mean(column(sample, 'cost')))
  const best = means.indexOf(Math.min(...means))
  const straight = straightInputs(model)
    .map((input) => straightTurns(input, { model, open, best }))
    .filter(({ lead, below, above }) => below || above || lead.low.value !== lead.high.value)
  const curved = await Promise.all(
    curvedInputs(model).map((input) => curvedTurns(input, { ...asked, open, means, best })),
  )
  return {
    best: open[best]!.alternative,
    inputs: [...straight, ...curved],
    barred: samples.flatMap((sample, a) => {
      const saving = means[best]! - mean(column(sample, 'cost'))
      return model.alternatives[a]!.barred !== undefined && saving > 0
        ? [{ id: sample.alternative, saving }]
        : []
    }),
  }
}

interface Line {
  readonly at: Float64Array
  readonly slope: Float64Array
}

/** Of each alternative and history, cost = at + slope·x. */
export function linesOf(model: LifeModel, open: readonly Sample[], input: StraightInput): Line[] {
  return open.map((sample) => {
    const alternative = model.alternatives.find(({ id }) => id === sample.alternative)!
    const cost = column(sample, 'cost')
    const bears = input.id !== 'quote' || quoteOf(alternative) === input.now
    const columns = bears ? input.perUnit.map((name) => column(sample, name)) : []
    const slope = cost.map((_, i) => columns.reduce((sum, values) => sum + values[i]!, 0))
    return { at: cost.map((value, i) => value - slope[i]! * input.now), slope }
  })
}

function straightTurns(
  input: StraightInput,
  of: { readonly model: LifeModel; readonly open: readonly Sample[]; readonly best: number },
): InputTurns {
  const lines = linesOf(of.model, of.open, input)
  const { best } = of
  const costAt = (a: number, x: number) => lines[a]!.at.map((at, i) => at + lines[a]!.slope[i]! * x)
  const meanLine = lines.map(({ at, slope }) => ({ at: mean(at), slope: mean(slope) }))
  const turn = (toward: number): Turn | undefined => {
    let nearest: Turn | undefined
    meanLine.forEach((line, a) => {
      const own = meanLine[best]!
      if (a === best || line.slope === own.slope) return
      const at = (line.at - own.at) / (own.slope - line.slope)
      const within = toward > input.now ? at > input.now && at <= toward : at < input.now && at >= toward
      const nearer = nearest === undefined || Math.abs(at - input.now) < Math.abs(nearest.at - input.now)
      if (within && nearer) nearest = { at, to: of.open[a]!.alternative }
    })
    return nearest
  }
  const lead = (x: number): Lead => {
    const rival = rivalAt(
      meanLine.map(({ at, slope }) => at + slope * x),
      best,
    )
    return paired(costAt(rival, x), costAt(best, x))
  }
  return turned(input, { low: lead(input.low), high: lead(input.high) }, turn(input.low), turn(input.high))
}

function turned(
  { id, now, low, high }: Pick<InputTurns, 'id' | 'now' | 'low' | 'high'>,
  lead: InputTurns['lead'],
  below: Turn | undefined,
  above: Turn | undefined,
): InputTurns {
  return {
    id,
    now,
    low,
    high,
    lead,
    ...(below === undefined ? {} : { below }),
    ...(above === undefined ? {} : { above }),
  }
}

interface Curve extends Asked, Base {
  readonly best: number
}

/** Alternatives that may be chosen, and what they cost on the mean of all histories. */
interface Base {
  readonly open: readonly Sample[]
  readonly means: readonly number[]
}

/** Alternatives played at another value of an input. */
export interface Trial {
  readonly tried: readonly Tried[]
}

interface Tried {
  /** Its sample at the value now. */
  readonly base: Sample
  readonly played: Sample
  /** What the other value changes, by history. */
  readonly change: Float64Array
  /** Mean cost there. */
  readonly cost: number
}

interface Standing {
  readonly lead: Lead
  readonly rival: string
}

async function curvedTurns(input: CurvedInput, of: Curve): Promise<InputTurns> {
  const [low, high] = await Promise.all([standingAt(input, input.low, of), standingAt(input, input.high, of)])
  const [below, above] = await Promise.all([
    low.lead.value < 0 ? turnBetween(input, input.low, { ...of, end: low }) : undefined,
    high.lead.value < 0 ? turnBetween(input, input.high, { ...of, end: high }) : undefined,
  ])
  return turned(input, { low: low.lead, high: high.lead }, below, above)
}

/** How far the best of the base is ahead at another value of an input. */
async function standingAt(input: CurvedInput, value: number, of: Curve): Promise<Standing> {
  const { open, best } = of
  const { tried } = await trialAt(input, value, of)
  const own = tried.find(({ base }) => base === open[best])!
  const rival = tried.filter((one) => one !== own).reduce((a, b) => (b.cost < a.cost ? b : a))
  // The error of the trial, and of the base that it is hung on, which has many more histories.
  const trial = paired(rival.change, own.change)
  const base = paired(column(rival.base, 'cost'), column(own.base, 'cost'))
  return {
    rival: rival.base.alternative,
    lead: { value: rival.cost - own.cost, error: Math.hypot(trial.error, base.error) },
  }
}

/** The best alternatives played at another value of an input, on the first histories of the base; each value once. */
export function trialAt(input: CurvedInput, value: number, of: Asked & Base): Promise<Trial> {
  const { trials = new Map<string, Promise<Trial>>() } = of
  const key = `${input.id} ${value}`
  const known = trials.get(key)
  if (known !== undefined) return known
  const trial = playTrial(input, value, of)
  trials.set(key, trial)
  return trial
}

async function playTrial(input: CurvedInput, value: number, of: Asked & Base): Promise<Trial> {
  const { model, open, means, seed, play, histories = usualHistories } = of
  const nearest = means
    .map((mean, a) => ({ mean, a }))
    .sort((x, y) => x.mean - y.mean)
    .slice(0, mostTried)
    .map(({ a }) => ({ base: open[a]!, mean: means[a]! }))
  if (value === input.now) {
    return {
      tried: nearest.map(({ base, mean }) => ({
        base,
        played: base,
        change: new Float64Array(column(base, 'cost').length),
        cost: mean,
      })),
    }
  }
  const count = Math.min(histories, column(open[0]!, 'cost').length)
  const alternatives = nearest.map(
    ({ base }) => model.alternatives.find(({ id }) => id === base.alternative)!,
  )
  const played = await play(input.with({ ...model, alternatives }, value), { seed, from: 0, count })
  return {
    tried: nearest.map(({ base, mean: before }, a) => {
      const then = column(base, 'cost')
      const change = column(played[a]!, 'cost').map((cost, i) => cost - then[i]!)
      return { base, played: played[a]!, change, cost: before + mean(change) }
    }),
  }
}

/** Seeks where the lead is nought between the value now and an end at which it is behind. */
async function turnBetween(
  input: CurvedInput,
  end: number,
  of: Curve & { readonly end: Standing },
): Promise<Turn> {
  const { means, best } = of
  let ahead = { x: input.now, lead: means[rivalAt(means, best)]! - means[best]! }
  let behind = { x: end, lead: of.end.lead.value, rival: of.end.rival }
  const tolerance = finest * (input.high - input.low)
  for (let trial = 0; trial < mostTrials && Math.abs(behind.x - ahead.x) > tolerance; trial++) {
    const share = ahead.lead / (ahead.lead - behind.lead)
    // Kept off the ends, so that either side closes in.
    const x = ahead.x + Math.min(0.9, Math.max(0.1, share)) * (behind.x - ahead.x)
    const { lead, rival } = await standingAt(input, x, of)
    if (lead.value >= 0) ahead = { x, lead: lead.value }
    else behind = { x, lead: lead.value, rival }
    if (Math.abs(lead.value) < lead.error / 4) break
  }
  const share = ahead.lead / (ahead.lead - behind.lead)
  return { at: ahead.x + share * (behind.x - ahead.x), to: behind.rival }
}

/** The cheapest of the others. */
function rivalAt(costs: readonly number[], best: number): number {
  let rival = best === 0 ? 1 : 0
  costs.forEach((cost, a) => {
    if (a !== best && cost < costs[rival]!) rival = a
  })
  return rival
}

/** Mean and standard error of a difference of paired histories. */
export function paired(a: Float64Array, b: Float64Array): Lead {
  const n = a.length
  let sum = 0
  for (let i = 0; i < n; i++) sum += a[i]! - b[i]!
  const value = sum / n
  let squares = 0
  for (let i = 0; i < n; i++) squares += (a[i]! - b[i]! - value) ** 2
  return { value, error: Math.sqrt(squares / Math.max(1, n - 1) / n) }
}
