/**
 * What is believed of a set and of each of its parts now, given all that is entered.
 *
 * @module
 */

import { type KnownMode, knownModes, lnLikelihoodAtKappa } from './known-modes.js'
import type { Candidate, LifeModel, LifePart } from './life-model.js'
import { modeLifeOf } from './mode-life.js'
import { pastOfMode, pastTable } from './past-lives.js'
import { playedPast, preparePart } from './play-part.js'
import { fillKnown } from './posterior-known.js'
import {
  fillPlayed,
  type HowManyLives,
  isInformed,
  overGrid,
  type PlayedSample,
  playSample,
} from './posterior-played.js'
import { type Sources, withSymptoms } from './posterior-symptoms.js'
import { POSTERIOR_STEPS, type Posterior, type SetAside, whatMayBeSetAside } from './posterior-type.js'
import { type KappaGrid, kappaGrid, kappaNodes, lnPoisson, smoothOverKappa } from './set-factor.js'
import { threefryUniform } from './threefry.js'
import { type Ages, completeAges, evenPast, pastUseOf, type UseTrack, yearlyRates } from './track.js'

/** Lives played from one seed for different ends. */
const playedSets = { present: 0, knownForStops: 1, used: 2 }
/**
 * What a first, rough posterior does with, in a fraction of the time. Of three boats the cost of leaving them as they are
 * came out within about a tenth of the full one; with half the lives, where a record says much, a fifth off.
 */
const rough: { readonly howMany: HowManyLives; readonly thetaPoints: number; readonly nodes: number } = {
  howMany: { batch: 512, leastEffective: 96, most: 2048 },
  thetaPoints: 101,
  nodes: 3,
}
/** First key words of the starts of systematic steps, apart from the simulator's and the player's. */
const stepKey = 0xa1000000

/**
 * The posterior of a model; with `rough` one of fewer lives and nodes, for first figures that others follow. `seed` decides the played lives and the starts of the systematic steps; the result is
 * the same for the same model and seed.
 *
 * Parts with known ages are worked out exactly, those without are played from the set's first day. Evidence that the
 * model holds impossible for a part is set aside for that part: its table is then the prior's. The log evidence leaves
 * out what no κ changes: the own chance of each symptom, and the factorial of a count of let-downs.
 */
export function posteriorOf(
  model: LifeModel,
  how: { readonly seed: number; readonly rough?: boolean },
): Posterior {
  const howMany = how.rough ? rough.howMany : undefined
  const past = pastUseOf(model)
  const grid = kappaGrid(model.setFactor)
  const common = {
    model,
    past,
    kappaLogSd: grid.logSd,
    ...(how.rough ? { thetaPoints: rough.thetaPoints } : {}),
  }
  const samples = model.parts.map((_, p) => samplePart(common, p, { seed: how.seed, howMany }))
  const plain = (part: LifePart) => knownModes(model, part, { ...common, extra: () => [] })
  const alone = model.parts.map((part, p) => (samples[p] ? [] : plain(part)))
  const { known, unexplained } = withSymptoms(common, { known: alone, samples })
  const lnLikelihood = new Float64Array(grid.lnKappa.length)
  for (const modes of known) for (const mode of modes) addKnown(lnLikelihood, mode, grid)
  const stops = model.setFactor.letDowns.map(() => new Float64Array(grid.lnKappa.length))
  model.parts.forEach((_, p) => {
    const sample = samples[p]
    const sinceFitting = sample?.prepared.sinceFitting ?? true
    if (sample) addPlayed(lnLikelihood, sinceFitting ? [] : stops, sample, grid)
    if (sinceFitting && stops.length > 0) {
      const prepared = preparePart(model, p, { use: past, hourLifeFactor: 1, evidence: true })
      const unlogged = { ...prepared, events: [], work: [], stops: [], broken: -1 }
      const played = playSample(unlogged, {
        seed: how.seed,
        kappaLogSd: grid.logSd,
        set: playedSets.knownForStops,
        howMany,
      })
      addPlayed(new Float64Array(grid.lnKappa.length), stops, played, grid)
    }
  })
  // a set that cannot have stopped in a span has not let its owner down in it
  const couldStop = stops.map((expected) => expected.some((mean) => mean > 0))
  model.setFactor.letDowns.forEach((span, s) => {
    if (span.count > 0 && !couldStop[s]) return
    for (let k = 0; k < lnLikelihood.length; k++) lnLikelihood[k]! += lnPoisson(span.count, stops[s]![k]!)
  })
  const nodes = kappaNodes(grid, lnLikelihood, how.rough ? rough.nodes : undefined)
  return {
    ...nodes,
    ...tables(model, { past, kappaLogSd: grid.logSd, known, samples, seed: how.seed }, nodes.kappaLog),
    setAside: Int32Array.from([
      ...setAsideOf(known, samples),
      ...unexplained.flatMap(({ p, m }) => [p, m, codeOf('symptom')]),
      ...model.setFactor.letDowns.flatMap(({ count }, s) =>
        count > 0 && !couldStop[s] ? [-1, -1, codeOf('let-downs')] : [],
      ),
    ]),
  }
}

const codeOf = (what: SetAside['what']) => whatMayBeSetAside.indexOf(what)

/** Plays a part whose ages do not tell enough; null for the others, and where no life agrees with a fitting date. */
function samplePart(
  sources: Sources,
  p: number,
  how: { readonly seed: number; readonly howMany: HowManyLives | undefined },
): PlayedSample | null {
  const { model, past, kappaLogSd } = sources
  const part = model.parts[p]!
  const on = playedPast(part, past)
  if (on === null) return null
  const rates = yearlyRates(model)
  const lives = part.modes.map((mode) => modeLifeOf(mode, { rates, lowLoadShare: past.lowLoadShare }))
  const ofModes = part.modes.map((_, m) => pastOfMode(part, m, { lives, past, kappaLogSd }))
  const sample = playSample(preparePart(model, p, { ...on, hourLifeFactor: 1, evidence: true }), {
    ...how,
    kappaLogSd,
    set: playedSets.present,
    past: ofModes.map((ofMode, m) =>
      pastTable({
        life: lives[m]!,
        totalLogSd: Math.hypot(part.modes[m]!.logSd, kappaLogSd),
        past: ofMode.past,
      }),
    ),
    pastLeftOut: ofModes.map(({ leftOut }) => leftOut),
  })
  return on.sinceFitting && !sample.isPossible ? null : sample
}

/** Three numbers for each thing set aside: part, mode (−1: all of them), and what it is. */
function setAsideOf(
  known: readonly (readonly KnownMode[])[],
  samples: readonly (PlayedSample | null)[],
): number[] {
  return samples.flatMap((sample, p) =>
    sample === null
      ? known[p]!.flatMap((mode, m) => mode.setAside.flatMap((what) => [p, m, codeOf(what)]))
      : [
          ...sample.pastLeftOut.flatMap((count, m) => (count > 0 ? [p, m, codeOf('past-life')] : [])),
          ...(sample.isPossible ? [] : [p, -1, codeOf('everything')]),
        ],
  )
}

/**
 * Starting states of a used set of which only its age, hours and starts are known: every fitting date unknown, no
 * evidence, its past use even. The nodes of ln κ are the caller's (a new set draws its own g beside the boat's b);
 * their weights come back even.
 */
export function startingStatesOfUsed(
  model: LifeModel,
  set: {
    readonly candidate: Candidate & { readonly used: NonNullable<Candidate['used']> }
    readonly kappaLog: Float64Array
    readonly seed: number
  },
): Posterior {
  const { candidate, kappaLog } = set
  const lowLoadShare = candidate.lowLoadShare ?? model.use.lowLoadShare
  const past = evenPast({ ...candidate.used, lowLoadShare })
  const { logSd } = kappaGrid(model.setFactor)
  const samples = model.parts.map((_, p) =>
    playSample(
      preparePart(model, p, { use: past, hourLifeFactor: candidate.hourLifeFactor, evidence: false }),
      {
        seed: set.seed,
        kappaLogSd: logSd,
        set: playedSets.used,
      },
    ),
  )
  const known = model.parts.map(() => [])
  return {
    kappaLog,
    kappaWeight: new Float64Array(kappaLog.length).fill(1 / kappaLog.length),
    logEvidence: 0,
    ...tables(model, { past, kappaLogSd: logSd, known, samples, seed: set.seed }, kappaLog),
    setAside: new Int32Array(0),
  }
}

function addKnown(lnLikelihood: Float64Array, mode: KnownMode, grid: KappaGrid): void {
  const values = grid.lnKappa.map((lnKappa) => lnLikelihoodAtKappa(mode, lnKappa))
  if (!values.some(Number.isFinite)) return
  for (let k = 0; k < values.length; k++) lnLikelihood[k]! += Math.max(values[k]!, -700)
}

function addPlayed(
  lnLikelihood: Float64Array,
  stops: readonly Float64Array[],
  sample: PlayedSample,
  grid: KappaGrid,
): void {
  const informed = isInformed(sample)
  if (!informed && stops.length === 0) return
  const over = overGrid(sample, grid)
  const weights = over.effective.map((effective) => effective)
  if (informed) {
    const smooth = smoothOverKappa(grid, { values: over.lnLikelihood, weights })
    for (let k = 0; k < smooth.length; k++) lnLikelihood[k]! += smooth[k]!
  }
  over.stops.forEach((expected, s) => {
    const most = Math.max(0, ...expected.filter(Number.isFinite))
    if (most === 0) return
    const values = expected.map((value) => Math.log(Math.max(value, most * 1e-3)))
    const smooth = smoothOverKappa(grid, { values, weights })
    for (let k = 0; k < smooth.length; k++) stops[s]![k]! += Math.exp(smooth[k]!)
  })
}

function tables(
  model: LifeModel,
  from: {
    readonly past: UseTrack
    readonly kappaLogSd: number
    readonly known: readonly (readonly KnownMode[])[]
    readonly samples: readonly (PlayedSample | null)[]
    readonly seed: number
  },
  kappaLog: Float64Array,
): Omit<Posterior, 'kappaLog' | 'kappaWeight' | 'logEvidence' | 'setAside'> {
  const modes = model.parts.reduce((sum, part) => sum + part.modes.length, 0)
  const parts = model.parts.length
  const entries = kappaLog.length * modes * POSTERIOR_STEPS
  const services = kappaLog.length * parts * POSTERIOR_STEPS
  const made = {
    theta: new Float32Array(room(4 * entries)),
    state: new Uint8Array(room(entries)),
    age: new Float32Array(room(4 * entries)),
    since: new Float32Array(room(4 * entries)),
    ageHours: new Float32Array(room(4 * entries)),
    serviceYears: new Float32Array(room(4 * services)),
    serviceHours: new Float32Array(room(4 * services)),
    joint: Uint8Array.from(from.samples, (sample) => (sample ? 1 : 0)),
  }
  let firstMode = 0
  model.parts.forEach((part, p) => {
    const sample = from.samples[p]
    for (let n = 0; n < kappaLog.length; n++) {
      const lnKappa = kappaLog[n]!
      const row = n * modes + firstMode
      const start = (mode: number) => threefryUniform(from.seed | 0, stepKey | n, p, mode)
      if (sample) {
        const rows = { ...made, firstMode: row, part: n * parts + p }
        fillPlayed(sample, { lnKappa, kappaLogSd: from.kappaLogSd, start: start(0) }, rows)
        continue
      }
      from.known[p]!.forEach((mode, m) => {
        fillKnown(mode, { lnKappa, start: start(m) }, { ...made, at: (row + m) * POSTERIOR_STEPS })
      })
    }
    if (!sample && part.age !== 'unknown')
      fillServices(part, completeAges(from.past, part.age), { ...made, part: p, parts })
    firstMode += part.modes.length
  })
  return made
}

/** Memory that other threads see without a copy, where there is such a thing. */
function room(bytes: number): ArrayBufferLike {
  return typeof SharedArrayBuffer === 'undefined' ? new ArrayBuffer(bytes) : new SharedArrayBuffer(bytes)
}

/** Time since a service of a part with known ages last fell due: its age within the first interval, else even within one. */
function fillServices(
  part: LifePart,
  age: Ages,
  into: {
    readonly serviceYears: Float32Array
    readonly serviceHours: Float32Array
    readonly part: number
    readonly parts: number
  },
): void {
  const everyYears = part.service?.everyYears ?? Infinity
  const everyHours = part.service?.everyHours ?? Infinity
  const asOldAsPart = age.years < everyYears && age.hours < everyHours
  const years = new Float32Array(POSTERIOR_STEPS)
  const hours = new Float32Array(POSTERIOR_STEPS)
  for (let step = 0; step < POSTERIOR_STEPS; step++) {
    const share = (step + 0.5) / POSTERIOR_STEPS
    years[step] = asOldAsPart ? age.years : Math.min(age.years, share * everyYears)
    hours[step] = asOldAsPart ? age.hours : Math.min(age.hours, share * everyHours)
  }
  const nodes = into.serviceYears.length / into.parts / POSTERIOR_STEPS
  for (let node = 0; node < nodes; node++) {
    const at = (node * into.parts + into.part) * POSTERIOR_STEPS
    into.serviceYears.set(years, at)
    into.serviceHours.set(hours, at)
  }
}
