/**
 * What a boat needs, and which sets give it: the whole of sizing but the trade-offs.
 *
 * @module
 */

import type { Catalogue } from '../catalogue/catalogue.js'
import type { WholeSet } from '../catalogue/file-schema.js'
import type { Occasion } from '../catalogue/load-schema.js'
import type { Problem } from '../catalogue/problem.js'
import type { LoadFacts } from '../register/load-facts.js'
import type { MonthOfUse, SetFacts } from '../register/register-types.js'
import { boatLoads, hasTwoLegs, type Supply } from './boat-loads.js'
import { correctedTo } from './corrected-loads.js'
import type { DemandBasis } from './demand-basis.js'
import { stepW } from './demand-grid.js'
import {
  activeOfAll,
  type DurationPoint,
  demandFactor,
  durationCurve,
  legMeans,
  type Points,
  pointsOf,
} from './demand-points.js'
import { habitsOf } from './habits.js'
import { judgeSet } from './judge-set.js'
import type { JudgedSet } from './judged-set.js'
import type { Habits, HouseRule, Load, Weathers } from './load-type.js'
import { type AgainstList, recordingAgainst } from './measured-against.js'
import { chancesWhileOn, curveOf, type MeasuredBody } from './measured-summary.js'
import { type OnOccasion, yearOf } from './occasions.js'
import { recordedYear } from './recorded-year.js'
import { bareSize, offeredSet, presentSet, type SizedSet, sizesAbout } from './sized-set.js'

/** What sizing reads of the catalogue; prices of the whole set in the boat's money. */
export type SizingBook = Pick<Catalogue, 'loads' | 'loadRules' | 'motors' | 'sizing'> & {
  readonly wholeSet: WholeSet
}

export interface SizeQuestion {
  readonly book: SizingBook
  readonly facts: LoadFacts
  readonly setFacts: SetFacts
  /** The set's id in the log. */
  readonly set: string
  readonly use: readonly MonthOfUse[] | undefined
  /** Bare sizes to look at beside the present set and those that are offered; left out: as many as make eight. */
  readonly sizes?: readonly number[]
  /** The latest recording of what the set gives. */
  readonly recording?: MeasuredBody
  /** What is sized by; left out: the list corrected by the recording, where there are both. */
  readonly basis?: DemandBasis
}

/** The list and the recording beside each other, and what was made of them. */
export interface MeasuredDemand {
  /** Left out: the list draws nothing. */
  readonly against?: AgainstList
  /** Load-duration curves: as recorded while power is drawn, and of the list as it stands while the set runs. */
  readonly recorded: readonly DurationPoint[]
  readonly listed: readonly DurationPoint[]
  /** What corrects the list: hours by a factor, and what it lacks. [kW] */
  readonly hoursFactor: number
  readonly missingKW: number
}

/** One occasion in one season, in figures. */
export interface OccasionFigures {
  readonly occasion: Occasion
  readonly season: Weathers
  readonly hours: number
  /** Before rounding to the grid. [kW] */
  readonly meanKW: number
  readonly kW: Points
  readonly kVA: Points
  /** Of each leg, on a set of two. [kW] */
  readonly legMeansKW: readonly number[]
}

/** The load-duration curve of one occasion over its seasons, or of the whole year. */
export interface OccasionCurve {
  readonly occasion: Occasion | 'year'
  readonly hours: number
  readonly kW: Points
  readonly curve: readonly DurationPoint[]
}

export interface BoatSize {
  readonly basis: DemandBasis
  readonly measured?: MeasuredDemand
  /** As the list says. */
  readonly loads: readonly Load[]
  /** As they are reckoned with: by a recording, switched on for other hours, and what the list lacks at the end. */
  readonly reckoned: readonly Load[]
  readonly rules: readonly HouseRule[]
  readonly habits: Habits
  readonly twoLegs: boolean
  readonly hoursPerYear: number
  readonly figures: readonly OccasionFigures[]
  readonly curves: readonly OccasionCurve[]
  /** All loads of the list together, and of it what is drawn at once one hour in a hundred. */
  readonly connectedKW: number
  readonly demandFactor: number
  /** Share of the wanted time that the rules leave room for, at its least. */
  readonly kept: number
  readonly sets: readonly JudgedSet[]
  /** The smallest of the sets looked at that carries all that is asked of it; undefined: none does. */
  readonly smallest?: string
  readonly assumed: readonly string[]
  readonly problems: readonly Problem[]
}

/** As many sets are looked at unless told otherwise. */
const usualSets = 8

/** Voltage and frequency of a set that says neither; practice. */
const usualSupply = { volts: [230], hertz: 50 }

/** The supply of a set, from its particulars. */
export function supplyOf(facts: SetFacts): Supply {
  const hertz = facts.hertz ?? (facts.rpm === 1800 || facts.rpm === 3600 ? 60 : usualSupply.hertz)
  const volts = facts.volts ?? (hertz > 55 ? [240, 120] : usualSupply.volts)
  return { hertz, volts: [...volts].sort((a, b) => b - a) }
}

/** What is needed before any set is judged; the trade-offs begin from it too. */
export interface Needs {
  /** As in the log, and as they are reckoned with: by a recording, corrected to it. */
  readonly listed: readonly Load[]
  readonly loads: readonly Load[]
  readonly rules: readonly HouseRule[]
  readonly habits: Habits
  readonly supply: Supply
  /** What sets are judged by. */
  readonly year: readonly OnOccasion[]
  /** The same by the list, which alone tells loads apart: with a recording, corrected by it. */
  readonly byLoads: readonly OnOccasion[]
  readonly basis: DemandBasis
  readonly measured?: MeasuredDemand
  readonly assumed: readonly string[]
  readonly problems: readonly Problem[]
}

/** Loads, rules, habits, and the year that they make. */
export function needsOf(question: SizeQuestion): Needs {
  const { book, facts, setFacts, use, recording } = question
  const supply = supplyOf(setFacts)
  const { loads, rules, problems } = boatLoads(book, facts, supply)
  const { habits, assumed } = habitsOf(book.loadRules, facts.habits, use)
  const aboard = { loads, rules, habits, loadRules: book.loadRules, twoLegs: hasTwoLegs(supply) }
  const byList = yearOf(aboard)
  const needs = {
    listed: loads,
    loads,
    rules,
    habits,
    supply,
    year: byList,
    byLoads: byList,
    assumed,
    problems,
  }
  const basis = basisOf(question, loads)
  if (recording === undefined) return { ...needs, basis }

  const { loads: corrected, hoursFactor, missingKW } = correctedTo(recording, aboard)
  const measured = measuredDemand(recording, byList, { hoursFactor, missingKW })
  const known = { ...needs, basis, ...(measured === undefined ? {} : { measured }) }
  if (basis === 'list') return known
  const byLoads = yearOf({ ...aboard, loads: corrected })
  const year =
    basis === 'recording' ? recordedYear(recording, { loads: corrected, listed: byLoads }) : byLoads
  return {
    ...known,
    loads: corrected,
    year,
    byLoads,
    assumed: [...assumed, ...sayBasis(basis, { hoursFactor, missingKW })],
  }
}

/** Without a recording the list; without a list the recording. */
function basisOf({ recording, basis }: SizeQuestion, loads: readonly Load[]): DemandBasis {
  if (recording === undefined) return 'list'
  return basis ?? (loads.length === 0 ? 'recording' : 'corrected')
}

function measuredDemand(
  recording: MeasuredBody,
  listed: readonly OnOccasion[],
  correction: Pick<MeasuredDemand, 'hoursFactor' | 'missingKW'>,
): MeasuredDemand | undefined {
  const active = activeOfAll(listed)
  const recorded = curveOf(chancesWhileOn(recording), recording.stepKw)
  if (recorded.length === 0) return undefined
  const against = recordingAgainst(recording, active)
  return {
    ...(against === undefined ? {} : { against }),
    recorded,
    listed: active.length > 1 ? durationCurve(active) : [],
    ...correction,
  }
}

function sayBasis(
  basis: Exclude<DemandBasis, 'list'>,
  { hoursFactor, missingKW }: Pick<MeasuredDemand, 'hoursFactor' | 'missingKW'>,
): string[] {
  return [
    ...(basis === 'recording'
      ? [
          'what is drawn is what the meter recorded, whatever the weather was; power factor, legs and what starts on top are those of the list',
        ]
      : []),
    `after the meter every load of the list is switched on ${hoursFactor.toFixed(2)} times as long as it says`,
    ...(missingKW > 0
      ? [`${missingKW.toFixed(1)} kW are drawn all the time that no load on the list accounts for`]
      : []),
  ]
}

/** Sizes a boat. Some tens of milliseconds for thirty loads and eight sets. */
export function sizeBoat(question: SizeQuestion): BoatSize {
  const needs = needsOf(question)
  const { book, facts } = question
  const { year, loads } = needs
  const judged = {
    book,
    loads,
    year,
    space: facts.space,
    legVolts: Math.min(...needs.supply.volts),
  }
  const sets = setsOf(question, needs).map((set) => judgeSet(judged, set))
  const curves = curvesOf(year)
  const connectedKW = needs.listed.reduce((sum, { watts }) => sum + watts, 0) / 1000
  const smallest = [...sets]
    .sort((a, b) => a.set.ratingKW - b.set.ratingKW)
    .find(({ verdict }) => verdict !== 'fails')
  return {
    basis: needs.basis,
    ...(needs.measured === undefined ? {} : { measured: needs.measured }),
    loads: needs.listed,
    reckoned: needs.loads,
    rules: needs.rules,
    habits: needs.habits,
    twoLegs: hasTwoLegs(needs.supply),
    hoursPerYear: year.reduce((sum, { hours }) => sum + hours, 0),
    figures: year.map(figuresOf),
    curves,
    connectedKW,
    demandFactor: demandFactor({ drawnKW: curves.at(-1)?.kW.p99 ?? 0, connectedKW }),
    kept: year.reduce((least, { demand }) => Math.min(least, demand.kept), 1),
    sets,
    ...(smallest === undefined ? {} : { smallest: smallest.set.id }),
    assumed: needs.assumed,
    problems: needs.problems,
  }
}

/** The present set, those offered, and bare sizes about them. */
export function setsOf(
  { book, facts, setFacts, set, sizes }: SizeQuestion,
  { year, supply }: Pick<Needs, 'year' | 'supply'>,
): SizedSet[] {
  const { hertz } = supply
  const boat = { phases: setFacts.phases ?? 1, rpm: setFacts.rpm ?? (hertz > 55 ? 1800 : 1500), hertz }
  const present = presentSet(book, setFacts, set)
  const offered = facts.candidates.flatMap((fact) => offeredSet(book, fact, boat) ?? [])
  const about = present?.ratingKW ?? Math.max(3, ...year.map(({ kW }) => kW.p99))
  const known = [...(present === undefined ? [] : [present]), ...offered]
  const wanted =
    sizes ??
    sizesAbout(about, usualSets).filter(
      (size) => !known.some(({ ratingKW }) => Math.abs(ratingKW - size) < 0.05),
    )
  const bare = wanted.slice(Math.max(0, known.length + wanted.length - usualSets))
  return [...known, ...(sizes === undefined ? bare : wanted).map((size) => bareSize(book, size, boat))].sort(
    (a, b) => a.ratingKW - b.ratingKW,
  )
}

function figuresOf({ occasion, season, hours, demand, kW, kVA }: OnOccasion): OccasionFigures {
  return {
    occasion,
    season,
    hours,
    meanKW: demand.meanW / 1000,
    kW,
    kVA,
    legMeansKW: legMeans(demand).map((watts) => watts / 1000),
  }
}

function curvesOf(year: readonly OnOccasion[]): OccasionCurve[] {
  const named = [...new Set(year.map(({ occasion }) => occasion))]
  const parts: readonly { readonly occasion: Occasion | 'year'; readonly of: readonly OnOccasion[] }[] = [
    ...named.map((occasion) => ({ occasion, of: year.filter((one) => one.occasion === occasion) })),
    { occasion: 'year', of: year },
  ]
  return parts.map(({ occasion, of }) => {
    const active = activeOfAll(of)
    return {
      occasion,
      hours: of.reduce((sum, { hours }) => sum + hours, 0),
      kW: pointsOf(active, (steps) => (steps * stepW) / 1000),
      curve: durationCurve(active),
    }
  })
}
