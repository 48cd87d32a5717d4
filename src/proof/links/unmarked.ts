/**
 * Finding out which unmarked lead is which: pairs by continuity, then phase and direction by joining and measuring.
 *
 * @module
 */

import type { Problem } from '../../catalogue/problem.js'
import type { Coil } from './winding.js'

/** Two leads between which a meter reads the resistance of one coil. */
export interface LeadPair {
  readonly leads: readonly [string, string]
  readonly ohms?: number
}

/** One lead each of two pairs joined, at low excitation; volts between the two other leads. */
export interface JoinReading {
  readonly joined: readonly [string, string]
  readonly volts: number
}

/** What to join and to measure next, and what each answer means. */
export interface NextMeasurement {
  readonly join: readonly [string, string]
  readonly read: readonly [string, string]
  readonly tells: readonly { readonly volts: number; readonly says: string; readonly left: number }[]
}

export interface UnmarkedAnswer {
  /** Ways in which the leads may be what they are, all alike likely: 1 when found, 0 when readings contradict one another. */
  readonly left: number
  /** Which lead is which, when one way is left. */
  readonly marks: readonly { readonly lead: string; readonly mark: string }[]
  readonly next: NextMeasurement | null
  /** Readings without any one of which the others would agree. */
  readonly doubtful: readonly JoinReading[]
}

/** Which phase each pair belongs to, and whether its first lead is a start: of the first pair it is taken to be. */
interface Case {
  readonly phases: readonly number[]
  readonly starts: readonly boolean[]
}

const pairWords =
  'two leads joined by "-" and the ohms between them, such as a-d 0.31; the next pair after a comma'
const readingWords =
  'the two leads that are joined and the volts between the others, such as a-b 207; the next after a comma'

/** "a-d 0.31, b-c 0.30" */
export function readPairs(
  text: string,
  { path, count }: { readonly path: string; readonly count: number },
): { readonly pairs: readonly LeadPair[]; readonly problems: readonly Problem[] } {
  const problems: Problem[] = []
  const met = new Set<string>()
  const pairs = piecesOf(text).flatMap((piece): LeadPair[] => {
    const [, one, other, size] =
      /^(\w+)\s*[-–]\s*(\w+)(?:\s+(\d+(?:\.\d+)?)\s*(?:ohm|Ω)?)?$/i.exec(piece) ?? []
    if (one === undefined || other === undefined || one === other) {
      problems.push({ code: 'wrong-form', path, found: piece, allowed: pairWords })
      return []
    }
    for (const lead of [one, other]) {
      if (met.has(lead)) {
        const allowed =
          'each lead in one pair: three that read through are joined inside the machine, and this is no way to find them'
        problems.push({ code: 'twice', path, found: lead, allowed })
      }
      met.add(lead)
    }
    return [{ leads: [one, other], ...(size === undefined ? {} : { ohms: Number(size) }) }]
  })
  if (problems.length === 0 && pairs.length !== count) {
    const allowed = `${count} pairs: try each lead against every other until all have a partner`
    problems.push({ code: 'out-of-range', path, found: `${pairs.length} pairs`, allowed })
  }
  return { pairs, problems }
}

/** "a-b 207, a-c 0" */
export function readReadings(
  text: string,
  { path, pairs }: { readonly path: string; readonly pairs: readonly LeadPair[] },
): { readonly readings: readonly JoinReading[]; readonly problems: readonly Problem[] } {
  const problems: Problem[] = []
  const readings = piecesOf(text).flatMap((piece): JoinReading[] => {
    const [, one, other, size] = /^(\w+)\s*[-–]\s*(\w+)\s+(\d+(?:\.\d+)?)\s*V?$/i.exec(piece) ?? []
    if (one === undefined || other === undefined) {
      problems.push({ code: 'wrong-form', path, found: piece, allowed: readingWords })
      return []
    }
    const [a, b] = [one, other].map((lead) => pairs.findIndex(({ leads }) => leads.includes(lead)))
    for (const [lead, at] of [
      [one, a],
      [other, b],
    ] as const) {
      if (at! < 0)
        problems.push({ code: 'unknown-lead', path, found: lead, allowed: 'a lead of one of the pairs' })
    }
    if (a! < 0 || b! < 0) return []
    if (a === b) problems.push({ code: 'contradiction', path, found: piece, allowed: 'leads of two pairs' })
    return a === b ? [] : [{ joined: [one, other], volts: Number(size) }]
  })
  return { readings, problems }
}

/**
 * What the readings leave possible. Each coil reads `E` by itself; joined in one phase two read 2 E or nothing, of two phases
 * √3 E where like ends are joined and E where unlike ones are. All cases are laid out and those that no reading contradicts kept,
 * so that nothing is guessed; the next measurement is the one that leaves the fewest on average.
 *
 * Which of three phases comes first is not to be found so: a phase-sequence meter tells, and two lines changed over cure it.
 */
export function findLeads({
  pairs,
  readings,
  emfV,
  coils,
}: {
  readonly pairs: readonly LeadPair[]
  readonly readings: readonly JoinReading[]
  /** What each pair reads by itself. [V] */
  readonly emfV: number
  /** Of the winding, under the marks wanted. */
  readonly coils: readonly Coil[]
}): UnmarkedAnswer {
  const all = casesFor(coils)
  const agreeing = (those: readonly JoinReading[]) =>
    all.filter((one) => those.every((reading) => agrees(one, reading, { pairs, emfV })))
  const left = agreeing(readings)
  const doubtful =
    left.length > 0
      ? []
      : readings.filter((one) => agreeing(readings.filter((other) => other !== one)).length > 0)
  return {
    left: left.length,
    marks: left.length === 1 ? marksOf(left[0]!, { pairs, coils }) : [],
    next: left.length > 1 ? nextOf(left, { pairs, emfV }) : null,
    doubtful,
  }
}

/** Readings that lie between two answers: they are taken again, not guessed at. */
export function unclearReadings(readings: readonly JoinReading[], emfV: number): readonly JoinReading[] {
  return readings.filter(({ volts }) => classOf(volts / emfV) === undefined)
}

/** What two coils can read, in multiples of one, and how far a meter may be off it. */
const multiples = [
  { multiple: 0, within: 0.3, says: 'one phase, against one another: two starts or two ends are joined' },
  { multiple: 1, within: 0.25, says: 'two phases, a start and an end joined' },
  { multiple: Math.sqrt(3), within: 0.12, says: 'two phases, two starts or two ends joined' },
  { multiple: 2, within: 0.12, says: 'one phase, one after the other: a start and an end are joined' },
] as const

function classOf(reading: number): number | undefined {
  const at = multiples.findIndex(({ multiple, within }) => Math.abs(reading - multiple) <= within)
  return at < 0 ? undefined : at
}

function agrees(
  one: Case,
  { joined, volts }: JoinReading,
  { pairs, emfV }: { readonly pairs: readonly LeadPair[]; readonly emfV: number },
): boolean {
  return classOf(volts / emfV) === expectedOf(one, joined, pairs)
}

/** The place in `multiples` of what joining two leads would read. */
function expectedOf(
  { phases, starts }: Case,
  joined: readonly [string, string],
  pairs: readonly LeadPair[],
): number {
  const [a, b] = joined.map((lead) => {
    const at = pairs.findIndex(({ leads }) => leads.includes(lead))
    return { at, isStart: (pairs[at]!.leads[0] === lead) === starts[at]! }
  })
  const like = a!.isStart === b!.isStart
  if (phases[a!.at] === phases[b!.at]) return like ? 0 : 3
  return like ? 2 : 1
}

/** Every way in which pairs can fall to phases, and starts to leads, that a voltmeter can tell from the others. */
function casesFor(coils: readonly Coil[]): readonly Case[] {
  const sizes = new Map<number, number>()
  for (const { degrees } of coils) sizes.set(degrees, (sizes.get(degrees) ?? 0) + 1)
  const perPhase = [...sizes.values()][0]!
  const splits = splitsOf(coils.length, { phases: sizes.size, perPhase })
  const directions = Array.from({ length: 2 ** (coils.length - 1) }, (_, bits) =>
    coils.map((__, at) => at === 0 || ((bits >> (at - 1)) & 1) === 0),
  )
  return splits.flatMap((phases) => directions.map((starts) => ({ phases, starts })))
}

/** Phases are numbered as they are first met, so that no split is listed twice. */
function splitsOf(
  count: number,
  { phases, perPhase }: { readonly phases: number; readonly perPhase: number },
): readonly (readonly number[])[] {
  let splits: number[][] = [[]]
  for (let at = 0; at < count; at++) {
    splits = splits.flatMap((split) => {
      const met = Math.max(-1, ...split) + 1
      return Array.from({ length: Math.min(met + 1, phases) }, (_, phase) => phase)
        .filter((phase) => split.filter((other) => other === phase).length < perPhase)
        .map((phase) => [...split, phase])
    })
  }
  return splits
}

function nextOf(
  left: readonly Case[],
  { pairs, emfV }: { readonly pairs: readonly LeadPair[]; readonly emfV: number },
): NextMeasurement {
  const tries = pairs.flatMap((one, at) =>
    pairs.slice(at + 1).map((other) => {
      const join = [one.leads[0], other.leads[0]] as const
      const counts = multiples.map(
        (_, answer) => left.filter((each) => expectedOf(each, join, pairs) === answer).length,
      )
      const rest = counts.reduce((sum, count) => sum + count * count, 0) / left.length
      return { join, read: [one.leads[1], other.leads[1]] as const, counts, rest }
    }),
  )
  const best = tries.reduce((a, b) => (b.rest < a.rest - 1e-9 ? b : a))
  return {
    join: best.join,
    read: best.read,
    tells: multiples.flatMap(({ multiple, says }, at) =>
      best.counts[at] === 0 ? [] : [{ volts: multiple * emfV, says, left: best.counts[at]! }],
    ),
  }
}

/** The first pair met of each phase is its first coil; which phase is the first is free. */
function marksOf(
  { phases, starts }: Case,
  { pairs, coils }: { readonly pairs: readonly LeadPair[]; readonly coils: readonly Coil[] },
): UnmarkedAnswer['marks'] {
  const angles = [...new Set(coils.map(({ degrees }) => degrees))]
  return pairs.flatMap(({ leads }, at) => {
    const phase = phases[at]!
    const ofPhase = coils.filter(({ degrees }) => degrees === angles[phase])
    const coil = ofPhase[phases.slice(0, at).filter((other) => other === phase).length]!
    const [start, end] = starts[at] ? leads : [leads[1], leads[0]]
    return [
      { lead: start, mark: coil.start },
      { lead: end, mark: coil.end },
    ]
  })
}

function piecesOf(text: string): readonly string[] {
  return text
    .split(/[,;\n]/)
    .map((piece) => piece.trim())
    .filter(Boolean)
}
