/**
 * From what the logbook says of a set and what the catalogue says of its kind to the life model that forecasts are made of.
 *
 * @module
 */

import type { Link, Mode, Part } from '../catalogue/part-schema.js'
import type { SetCatalogue } from '../catalogue/scale.js'
import type { SetRegister } from '../register/register-types.js'
import { checksOf } from './build-checks.js'
import { type PartEvidence, partEvidence, symptomsOf } from './build-evidence.js'
import { labourOf, powerLossOf } from './build-money.js'
import { ordinaryDiligence, type RepairKnown, repairOf, serviceOf, usualOwnerDoes } from './build-repair.js'
import { candidatesOf, fuelPerHourOf, giveUpOf, resaleOf, salvageOf } from './build-replacement.js'
import { useOf } from './build-use.js'
import type { LifeModelInput } from './life-model.js'

type PartInput = LifeModelInput['parts'][number]
type ModeInput = PartInput['modes'][number]

export interface BuiltLifeModel {
  /** Without alternatives. */
  readonly model: LifeModelInput
  /** Entries that bear on each part; none: its figures rest on the catalogue only. */
  readonly restsOn: Readonly<Record<string, readonly string[]>>
  /** What was taken for granted because nobody said. */
  readonly assumed: readonly string[]
}

/** Spread of a set's and a boat's own factor on all lives. Practice. */
const factorLogSd = 0.28
/** A mode's own spread is never narrower. Practice. */
const leastLogSd = 0.1
/** Years looked ahead, and real interest, where nobody said. Practice. */
const usualYearsKept = 10
const usualInterestPercent = 2
/** A part that is likelier absent than there is left out; its guarding is taken off the links. */
const likelyFitted = 0.5

export function buildLifeModel(
  register: SetRegister,
  catalogue: SetCatalogue,
  options: { readonly horizonYears?: number } = {},
): BuiltLifeModel {
  const { terms } = register
  const assumed: string[] = []
  const usual = <T>(said: T | undefined, taken: T, what: string): T => {
    if (said === undefined) assumed.push(what)
    return said ?? taken
  }
  const useOfSet = useOf(register, catalogue)
  const { use, past, ageYears } = useOfSet
  assumed.push(...useOfSet.assumed)
  const fuelPerLitre = usual(
    terms.fuelPerLitre,
    catalogue.wholeSet.fuel.dockPrice.typical,
    `a litre of fuel is taken at ${catalogue.wholeSet.fuel.dockPrice.typical.toFixed(2)}`,
  )
  usual(terms.ownerDoes, usualOwnerDoes, 'the owner is taken to do minor repairs, and to pay for deeper ones')
  const kept = usual(
    options.horizonYears ?? terms.yearsKept,
    usualYearsKept,
    `the boat is taken to be kept for ${usualYearsKept} years`,
  )
  const interest = usual(
    terms.realInterestPercent,
    usualInterestPercent,
    `real interest is taken at ${usualInterestPercent} %`,
  )
  const diligence = terms.diligence ?? ordinaryDiligence
  const labour = labourOf(register, catalogue, assumed)
  const powerNeeded = use.powerNeededByMonth ?? []
  const powerLoss = powerLossOf(terms, { catalogue, neededByMonth: powerNeeded, assumed })
  const replacement = {
    catalogue,
    fuelPerLitre,
    paidPerHour: labour.paidPerHour ?? 0,
    lowLoadShare: use.lowLoadShare,
    ageYears,
    daysNeeded: powerNeeded.reduce((days, share) => days + share * 30.44, 0),
    offered: register.offeredSets ?? [],
  }
  const { ratingKW } = catalogue.kind
  const parts = catalogue.parts.filter(({ fittedChance = 1 }) => fittedChance >= likelyFitted)
  const repairKnown = { catalogue, terms, ageYears }
  const model: LifeModelInput = {
    type: 'gensettle/life-model',
    version: 1,
    title: register.setFacts.name ?? register.boatFacts.name ?? `${register.boat} ${register.set}`,
    currency: catalogue.wholeSet.money.currency,
    horizonYears: kept,
    ...yearsMayBe(terms, kept),
    realInterestPerYear: Math.min(0.5, Math.max(0, Math.log(1 + interest / 100))),
    startMonth: monthOf(register.asOf),
    use,
    ...(past === undefined ? {} : { past }),
    setFactor: { boatLogSd: factorLogSd, setLogSd: factorLogSd, letDowns: letDownsOf(register) },
    checks: checksOf(catalogue, terms),
    care: { fittingOutShare: catalogue.care.foundAtFittingOutShare },
    labour,
    access: catalogue.access.map(({ id, setUpHours, includes }) => ({
      id,
      hours: setUpHours.paid,
      includes,
    })),
    powerLoss,
    dangers: Object.fromEntries(
      catalogue.dangers.map(({ id, becomesEventChance }) => [id, becomesEventChance]),
    ),
    intrusion: {
      testsCatch: catalogue.wholeSet.intrusion.caughtByChecklistAndLoadTest,
      onset: {
        shape: catalogue.wholeSet.intrusion.shape,
        scaleHours: catalogue.wholeSet.intrusion.scaleHours,
      },
    },
    fuelPerHour: fuelPerHourOf({ catalogue, fuelPerLitre }, { ratingKW, condition: 'aged' }),
    set: {
      resale: resaleOf(catalogue, ratingKW),
      salvageAtReplacement: salvageOf(replacement),
      ageYears,
    },
    giveUp: giveUpOf(replacement, terms, assumed),
    symptoms: symptomsOf(register, catalogue).filter(({ modes }) =>
      modes.every(({ part }) => parts.some(({ id }) => id === part)),
    ),
    ...(terms.mostInOneYear === undefined ? {} : { mostPayableInOneYear: terms.mostInOneYear }),
    candidates: candidatesOf(replacement),
    parts: parts.map((part) =>
      partOf(part, partEvidence(part, register, catalogue), {
        ...repairKnown,
        diligence: Math.min(0.98, diligence),
        present: new Map(parts.map((one) => [one.id, one])),
      }),
    ),
  }
  const restsOn = Object.fromEntries(parts.map(({ id }) => [id, register.parts.get(id)?.entries ?? []]))
  return { model, restsOn, assumed }
}

/** The owner's span of years, where one is given and it is a span. */
function yearsMayBe(
  { yearsKeptAtLeast, yearsKeptAtMost }: SetRegister['terms'],
  kept: number,
): Pick<LifeModelInput, 'horizonMayBe'> {
  if (yearsKeptAtLeast === undefined && yearsKeptAtMost === undefined) return {}
  const low = Math.min(kept, yearsKeptAtLeast ?? kept)
  const high = Math.max(kept, yearsKeptAtMost ?? kept)
  return low < high ? { horizonMayBe: { low, high } } : {}
}

interface PartKnown extends RepairKnown {
  readonly diligence: number
  readonly present: ReadonlyMap<string, Part>
}

function partOf(part: Part, evidence: PartEvidence, known: PartKnown): PartInput {
  const living = part.modes.filter(({ clock }) => clock !== 'relinkings')
  const renewal = living.find(({ remedy }) => remedy.outcome === 'renewed')?.remedy ?? wholePart
  const repair = repairOf(part, { ...renewal, partShare: 1, hoursShare: 1 }, known)
  const service = serviceOf(part, known, known.diligence)
  const { age, quality, firstRenewal, pastLives, complete, broken } = evidence
  return {
    id: part.id,
    name: part.name,
    system: part.system,
    access: part.access.opens,
    age,
    ...(quality === 1 ? {} : { quality }),
    ...(firstRenewal === undefined ? {} : { firstRenewal }),
    pastLives,
    complete,
    ...(broken === undefined ? {} : { broken }),
    repair,
    ...(service === undefined ? {} : { service }),
    modes: living.map((mode) => modeOf(part, mode, { ...known, evidence, repair })),
  }
}

const wholePart = {
  outcome: 'renewed',
  action: 'Renewed',
  supply: 'bought',
  partShare: 1,
  hoursShare: 1,
} as const

function modeOf(
  part: Part,
  mode: Mode,
  known: PartKnown & { readonly evidence: PartEvidence; readonly repair: PartInput['repair'] },
): ModeInput {
  const { catalogue, evidence, present } = known
  const falseAlarms = new Map(catalogue.checks.map(({ id, falseAlarm }) => [id, falseAlarm]))
  const repair = repairOf(part, mode.remedy, known)
  const same = JSON.stringify(repair) === JSON.stringify(known.repair)
  const { takesAway } = mode.remedy
  const cleared = evidence.clearedYearsAgo.get(mode.id)
  return {
    id: mode.id,
    name: mode.name,
    clock: mode.clock as ModeInput['clock'],
    shape: mode.shape,
    // of a part that may not be there, as much hazard as its chance: (a/η)^β · p
    scale: mode.scale * (part.fittedChance ?? 1) ** (-1 / mode.shape),
    logSd: ownLogSd(mode.scaleLogSd),
    ...(mode.warning === null ? {} : { delay: mode.warning }),
    hidden: mode.hidden,
    stops: mode.stops,
    derates: Math.min(mode.derates, 1 - mode.stops),
    dangers: mode.dangers,
    soot: mode.lowLoad ? catalogue.care.lowLoad.factor.typical : 1,
    checks: mode.checks.map(({ check, detects, falseAlarm }) => ({
      check,
      detection: detects,
      falseAlarm: falseAlarm ?? falseAlarms.get(check) ?? 0,
    })),
    links: mode.links.filter(({ to }) => present.has(to)).map((link) => linkOf(link, catalogue, present)),
    wear: mode.wearLinks
      .filter(({ to }) => present.has(to))
      .map(({ to, mode: target, factor }) => ({ part: to, mode: target, factor })),
    remedy: {
      outcome: mode.remedy.outcome,
      ...(takesAway === undefined ? {} : { agesLess: takesAway }),
      ...(mode.remedy.outcome === 'patched' ? { delayFactor: catalogue.wholeSet.repairQuality.patched } : {}),
      ...(same ? {} : { repair }),
    },
    ...(cleared === undefined ? {} : { clearedYearsAgo: cleared }),
    observations: [...(evidence.observations.get(mode.id) ?? [])],
  }
}

/** A mode's own log standard deviation: the catalogue's τ holds the factors of boat and set. `√max(τ² − 2·0.28², 0.1²)` */
export function ownLogSd(scaleLogSd: number): number {
  return Math.sqrt(Math.max(scaleLogSd ** 2 - 2 * factorLogSd ** 2, leastLogSd ** 2))
}

/** A trip that is there guards; one that may be there guards by its chance; one that is likelier absent lessens the link by it. */
function linkOf(
  link: Link,
  catalogue: SetCatalogue,
  present: ReadonlyMap<string, Part>,
): NonNullable<ModeInput['links']>[number] {
  const plain = {
    part: link.to,
    ...(link.brings === undefined ? {} : { mode: link.brings }),
    chance: link.chance,
    effect: link.effect,
  }
  const { trip, tripSaves } = link
  if (trip === undefined || tripSaves === undefined) return plain
  const fitted = catalogue.parts.find(({ id }) => id === trip)?.fittedChance ?? 1
  const effectiveness = tripSaves * fitted
  if (!present.has(trip)) return { ...plain, chance: link.chance * (1 - effectiveness) }
  return { ...plain, guard: { part: trip, effectiveness } }
}

/**
 * Times the set let the owner down that are entered nowhere: the owner's count less the stops entered in its span, over the
 * share of the span that those left over stand for, so that the rate is the owner's. What is entered counts at its part.
 */
function letDownsOf(register: SetRegister): { fromYearsAgo: number; toYearsAgo: number; count: number }[] {
  return register.letdowns.flatMap(({ times, firstDay, lastDay }) => {
    const entered = register.stops.filter(({ day }) => day >= firstDay && day <= lastDay).length
    const left = times - entered
    if (entered > 0 && left <= 0) return []
    const share = times === 0 ? 1 : left / times
    const fromYearsAgo = (register.asOfDay - lastDay + share * (lastDay - firstDay)) / 365.25
    return [{ fromYearsAgo, toYearsAgo: Math.max(0, register.asOfDay - lastDay) / 365.25, count: left }]
  })
}

function monthOf(day: string): number {
  const month = Number(day.slice(5, 7)) - 1
  return Math.min(11.999, month + (Number(day.slice(8, 10)) - 1) / 31)
}
