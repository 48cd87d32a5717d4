/**
 * A set that is judged for a boat: the present one, one that is offered, or a bare size.
 *
 * @module
 */

import type { WholeSet } from '../catalogue/file-schema.js'
import type { Aspiration, SizingLimits } from '../catalogue/sizing-schema.js'
import { weightKg } from '../catalogue/whole-set.js'
import type { CandidateFact } from '../register/load-facts.js'
import type { SetFacts } from '../register/register-types.js'
import { singlePhaseKVA } from './alternator-rating.js'
import { reactanceAt } from './voltage-dip.js'

/** Length, width and height, in any order. [mm] */
export type Edges = readonly [number, number, number]

export interface SizedSet {
  readonly id: string
  readonly name: string
  readonly kind: 'present' | 'offered' | 'size'
  readonly ratingKW: number
  /** Of the alternator, as linked for the boat. */
  readonly kVA: number
  readonly rpm: number
  readonly aspiration: Aspiration
  /** Aged: the present set, and one that was used before. */
  readonly condition: 'aged' | 'healthy'
  readonly capacitor: boolean
  /** Transient reactance, per unit of its rating. */
  readonly reactance: number
  readonly sweptLitres?: number
  readonly weightKg: number
  readonly edges: Edges
  /** The largest piece that it comes apart into; undefined: it comes whole as far as anyone says. */
  readonly piece?: { readonly edges: Edges; readonly weightKg: number }
  /** Frequency that it is made for, where that is not the boat's: it is reckoned at the boat's. [Hz] */
  readonly madeForHertz?: number
  /** In its case under load, at a distance. */
  readonly noise?: { readonly decibel: number; readonly metres: number }
  /** Fields that nobody told, taken as usual. */
  readonly usual: readonly string[]
  /** The entry that it was told in. */
  readonly entry?: string
}

/** What sets are made from. */
export interface SetBook {
  readonly sizing: SizingLimits
  readonly wholeSet: WholeSet
}

/** The boat's supply, which a set must give. */
export interface BoatSupply {
  readonly phases: 1 | 3
  readonly rpm: number
}

/** The present set, from its particulars. Undefined where its rating is not known. */
export function presentSet(book: SetBook, facts: SetFacts, id: string): SizedSet | undefined {
  if (facts.ratingKw === undefined) return undefined
  return madeOf(book, {
    id,
    name: facts.name ?? 'the present set',
    kind: 'present',
    ratingKw: facts.ratingKw,
    boat: { phases: facts.phases ?? 1, rpm: facts.rpm ?? 1500 },
    told: { phases: facts.phases, rpm: facts.rpm, excitation: facts.excitation },
  })
}

/** A set that is offered, at the boat's frequency. Undefined where its rating is not told. */
export function offeredSet(
  book: SetBook,
  fact: CandidateFact,
  boat: BoatSupply & { readonly hertz: number },
): SizedSet | undefined {
  if (fact.ratingKw === undefined) return undefined
  const { id, name = id, ratingKw, entry, ...told } = fact
  const set = madeOf(book, { id, name, kind: 'offered', ratingKw, boat, told })
  return { ...atHertz(set, boat.hertz), entry }
}

/** Frequencies of the usual speeds of two and four poles. [Hz] */
const hertzAt: Readonly<Record<number, number>> = { 1500: 50, 3000: 50, 1800: 60, 3600: 60 }

/**
 * A set made for another frequency, run at the boat's: engine and alternator give less in proportion where it turns slower and
 * no more where it turns faster, and the reactance is brought along. Its regulator, breaker and governor are another question.
 */
function atHertz(set: SizedSet, hertz: number): SizedSet {
  const made = hertzAt[set.rpm]
  if (made === undefined || Math.abs(made - hertz) < 1) return set
  const ratio = hertz / made
  const gives = Math.min(1, ratio)
  const kVA = gives * set.kVA
  return {
    ...set,
    ratingKW: gives * set.ratingKW,
    kVA,
    rpm: ratio * set.rpm,
    reactance: reactanceAt({ reactance: set.reactance, hertz: made, kVA: set.kVA }, { hertz, kVA }),
    madeForHertz: made,
  }
}

/** A set of a size, usual in everything else. */
export function bareSize(book: SetBook, ratingKw: number, boat: BoatSupply): SizedSet {
  return madeOf(book, {
    id: `size-${String(ratingKw).replace('.', '-')}`,
    name: `${ratingKw} kW`,
    kind: 'size',
    ratingKw,
    boat,
    told: {},
  })
}

/** Sizes as they are built, about; practice. [kW] */
const builtSizes = [2, 3, 4, 5, 6, 7, 8, 10, 12, 15, 18, 22, 30]

/** A set of less than this share of the present one is not looked at; practice. */
const leastShare = 0.35

/** At most so many built sizes about a rating, from well below it to a step or two above. */
export function sizesAbout(ratingKW: number, count: number): number[] {
  const above = builtSizes.findIndex((size) => size >= ratingKW)
  const last = Math.min(builtSizes.length, (above < 0 ? builtSizes.length : above) + 3)
  return builtSizes.slice(Math.max(0, last - count), last).filter((size) => size >= leastShare * ratingKW)
}

type Told = Partial<Omit<CandidateFact, 'id' | 'name' | 'ratingKw' | 'entry'>>

function madeOf(
  { sizing, wholeSet }: SetBook,
  of: {
    readonly id: string
    readonly name: string
    readonly kind: SizedSet['kind']
    readonly ratingKw: number
    readonly boat: BoatSupply
    readonly told: Told
  },
): SizedSet {
  const { told, boat, ratingKw } = of
  const usual: string[] = []
  const or = <T>(field: string, value: T | undefined, otherwise: T): T => {
    if (value === undefined) usual.push(field)
    return value ?? otherwise
  }
  const { alternator } = sizing
  const capacitor = told.excitation === 'capacitor'
  const rpm = or('rpm', told.rpm, boat.rpm)
  const edges = edgesOf(told) ?? edgesAt(wholeSet, ratingKw)
  if (edgesOf(told) === undefined) usual.push('edges')
  const reactance =
    told.transientReactancePercent === undefined ? undefined : told.transientReactancePercent / 100
  const piece = told.largestPiece
  return {
    id: of.id,
    name: of.name,
    kind: of.kind,
    ratingKW: ratingKw,
    kVA: ratedKVA(sizing, { told, ratingKw, boat }),
    rpm,
    condition: of.kind === 'present' || told.used !== undefined ? 'aged' : 'healthy',
    aspiration: or('aspiration', told.aspiration, 'natural'),
    capacitor,
    reactance: or(
      'reactance',
      reactance,
      capacitor ? alternator.reactance.capacitor : alternator.reactance.regulated,
    ),
    ...(told.sweptLitres === undefined ? {} : { sweptLitres: told.sweptLitres }),
    ...(told.noiseDb === undefined ? {} : { noise: { decibel: told.noiseDb, metres: told.noiseAtM ?? 1 } }),
    weightKg: or('weight', told.weightKg, weightKg(wholeSet, { ratingKW: ratingKw, rpm }).typical),
    edges,
    ...(piece === undefined
      ? {}
      : {
          piece: {
            edges: [piece.lengthMm, piece.widthMm, piece.heightMm] as const,
            weightKg:
              piece.weightKg ?? told.weightKg ?? weightKg(wholeSet, { ratingKW: ratingKw, rpm }).typical,
          },
        }),
    usual,
  }
}

/**
 * Rating of the alternator as linked for the boat. One of three phases joined for one gives its share; one of one phase is
 * rated at a power factor of 1, one of three at 0.8.
 */
function ratedKVA(
  { alternator }: SizingLimits,
  { told, ratingKw, boat }: { readonly told: Told; readonly ratingKw: number; readonly boat: BoatSupply },
): number {
  const phases = told.phases ?? boat.phases
  const full = told.ratingKva ?? (phases === 1 ? ratingKw : ratingKw / alternator.ratedPowerFactor)
  if (phases === 1 || boat.phases === 3) return full
  return singlePhaseKVA({
    threePhaseKVA: full,
    share: told.singlePhaseShare ?? alternator.singlePhaseShare.usual,
  })
}

function edgesOf({ lengthMm, widthMm, heightMm }: Told): Edges | undefined {
  if (lengthMm === undefined || widthMm === undefined || heightMm === undefined) return undefined
  return [lengthMm, widthMm, heightMm]
}

/** Edges of a set of a rating: straight between those of the catalogue, and in proportion beyond. */
function edgesAt({ size }: WholeSet, ratingKW: number): Edges {
  const rows = [...size].sort((a, b) => a.ratingKW - b.ratingKW)
  const above = rows.findIndex((row) => row.ratingKW >= ratingKW)
  const [low, high] =
    above <= 0 ? [rows[0]!, rows[above < 0 ? rows.length - 1 : 0]!] : [rows[above - 1]!, rows[above]!]
  const base = above < 0 ? rows.at(-1)! : low
  const span = high.ratingKW - base.ratingKW
  const share = span === 0 ? 0 : (ratingKW - base.ratingKW) / span
  const at = (edge: 'lengthMm' | 'widthMm' | 'heightMm') => base[edge] + share * (high[edge] - base[edge])
  return [at('lengthMm'), at('widthMm'), at('heightMm')]
}
