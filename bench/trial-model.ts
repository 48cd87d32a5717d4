/**
 * A life model of the whole catalogue for an invented boat: what the kernel is timed on.
 *
 * @module
 */

import { join } from 'node:path'
import type { Catalogue } from '../src/catalogue/catalogue.js'
import { parseCatalogue } from '../src/catalogue/parse.js'
import type { Mode, Part } from '../src/catalogue/part-schema.js'
import { type LifeModel, type LifeModelInput, lifeModelSchema } from '../src/forecast/life-model.js'
import { readCatalogueFiles } from '../src/store/catalogue-files.js'

type PartInput = LifeModelInput['parts'][number]
type ModeInput = PartInput['modes'][number]

/** Of the invented boat: years of the set, and hours a year by month; laid up from November to March. */
const setYears = 19
const hoursByMonth = [0, 0, 0, 35, 55, 65, 75, 75, 65, 50, 0, 0]
const hoursPerYear = hoursByMonth.reduce((a, b) => a + b, 0)
/** Starts for each running hour. */
const startsPerHour = 0.4
/** Every third part's fitting date is unknown. */
const unknownEvery = 3

/** The trial boat: every part of the catalogue, ages spread over their lives, six alternatives. */
export function trialModel(): LifeModel {
  const parsed = parseCatalogue(readCatalogueFiles(join(import.meta.dirname, '../catalogue')))
  if (!parsed.ok) throw new Error(`catalogue must be whole; found ${JSON.stringify(parsed.problems)}`)
  const { catalogue } = parsed
  return lifeModelSchema.parse({
    type: 'gensettle/life-model',
    version: 1,
    title: 'Trial boat of the bench',
    currency: 'USD',
    horizonYears: 8,
    realInterestPerYear: 0.02,
    startMonth: 4.5,
    use: {
      hoursByMonth,
      startsByMonth: hoursByMonth.map((hours) => hours * startsPerHour),
      powerNeededByMonth: hoursByMonth.map((hours) => (hours > 0 ? 0.8 : 0.05)),
      lowLoadShare: 0.35,
    },
    past: {
      track: [
        { yearsAgo: setYears, hours: 0, starts: 0 },
        { yearsAgo: 0, hours: setYears * hoursPerYear, starts: setYears * hoursPerYear * startsPerHour },
      ],
      lowLoadShare: 0.35,
    },
    setFactor: { boatLogSd: 0.28, setLogSd: 0.28 },
    checks: catalogue.checks.map((check) => ({
      id: check.id,
      everyHours: check.ordinaryIntervalHours,
      diligence: check.ordinaryDiligence,
    })),
    labour: {
      paidPerHour: 95,
      ownPerHour: 15,
      perTrip: 90,
      overrun: { median: 1.12, logSd: 0.3 },
      ownerAccessFactor: 1.2,
    },
    access: catalogue.access.map((group) => ({
      id: group.id,
      hours: group.setUpHours.paid,
      includes: [...(group.includes ?? [])],
    })),
    powerLoss: {
      curve: [
        { days: 0.5, cost: 0 },
        { days: 3, cost: 180 },
        { days: 14, cost: 1300 },
        { days: 60, cost: 4200 },
      ],
    },
    dangers: Object.fromEntries(
      catalogue.dangers.map(({ id, becomesEventChance }) => [id, becomesEventChance]),
    ),
    intrusion: { testsCatch: 0.5 },
    fuelPerHour: 2.6,
    upkeepPerYear: 60,
    set: { ageYears: setYears, salvageAtReplacement: 150, resale: { newPrice: 11_000, least: 400 } },
    giveUp: { costNow: 900, costPerYear: 350, daysWithoutPerYear: 25 },
    candidates: [
      {
        id: 'new-set',
        price: { median: 10_500, logSd: 0.08 },
        install: { median: 3_200, logSd: 0.3 },
        leadDays: { median: 35, logSd: 0.5 },
        installDays: { median: 4, logSd: 0.3 },
        guaranteeYears: 2,
        infantFaults: 0.6,
        resale: { newPrice: 11_000, least: 400 },
      },
    ],
    parts: catalogue.parts.map((part, p) => partInput(catalogue, part, p)),
    alternatives: alternatives(),
  })
}

function alternatives(): NonNullable<LifeModelInput['alternatives']> {
  const overhaul = ['pistons-and-bores', 'crank-and-bearings', 'valve-gear'].map((part) => ({ part }))
  const limit = { knots: [6000, 3500, 800] as [number, number, number], above: { replaceWith: 'new-set' } }
  return [
    { id: 'leave' },
    { id: 'leave-with-limit', limit },
    { id: 'mend', now: { parts: [{ part: 'outboard-bearing' }], intrusionChance: 0.08 }, limit },
    {
      id: 'overhaul',
      now: {
        parts: overhaul,
        quote: { price: 6200, overrun: { median: 1.15, logSd: 0.25 }, besides: { median: 500, logSd: 0.4 } },
        days: { median: 21, logSd: 0.4 },
        intrusionChance: 0.15,
      },
      limit,
    },
    { id: 'replace', now: { replaceWith: 'new-set' } },
    { id: 'give-up', now: 'give-up' },
  ]
}

function partInput(catalogue: Catalogue, part: Part, p: number): PartInput {
  const { service } = part
  const present = new Set(catalogue.parts.map(({ id }) => id))
  return {
    id: part.id,
    access: [...part.access.opens],
    age: p % unknownEvery === 0 ? 'unknown' : { years: setYears * (((p * 7) % 16) / 16) * 0.7 + 0.2 },
    repair: repairInput(part),
    ...(service.everyHours || service.everyYears
      ? {
          service: {
            ...(service.everyHours ? { everyHours: service.everyHours } : {}),
            ...(service.everyYears ? { everyYears: service.everyYears } : {}),
            diligence: 0.75,
            renews: service.renews,
            clears: [...service.clears],
            price: service.partShare * part.price.original.typical,
            hours: service.hours.owner,
          },
        }
      : {}),
    modes: part.modes.map((mode) => modeInput(catalogue, mode, present)),
  }
}

function repairInput(part: Part): PartInput['repair'] {
  const { leadDays, price } = part
  const days = (median: number) => ({ median: Math.max(0.5, median), logSd: 0.6 })
  const gone = part.goneAt20YearsChance
  return {
    price: { median: price.original.typical, logSd: 0.35 },
    hours: part.work === 'minor' ? part.hours.owner : part.hours.paid,
    by: part.work === 'minor' ? 'owner' : 'paid',
    trips: part.work === 'minor' ? 0 : 2,
    workshopDays: part.work === 'windings' ? { median: 14, logSd: 0.5 } : 0,
    supply: [
      { chance: 0.5 * (1 - gone), days: days(leadDays.stocked) },
      { chance: 0.5 * (1 - gone), days: days(leadDays.ordered), priceFactor: 0.8, quality: 0.85 },
      { chance: gone, days: days(leadDays.made), priceFactor: 1.4 },
    ],
    lastLikelierPerYear: 0.01,
    wrongPartChance: part.wrongPartChance,
    intrusionChance: part.work === 'minor' ? 0.02 : 0.06,
  }
}

function modeInput(catalogue: Catalogue, mode: Mode, present: ReadonlySet<string>): ModeInput {
  const { lowLoad } = catalogue.care
  return {
    id: mode.id,
    // Linked windings age with the starts here; the trial boat has none to link anew.
    clock: mode.clock === 'relinkings' ? 'starts' : mode.clock,
    shape: mode.shape,
    scale: mode.scale,
    logSd: mode.scaleLogSd,
    ...(mode.warning ? { delay: mode.warning } : {}),
    hidden: mode.hidden,
    stops: mode.stops,
    derates: mode.derates,
    dangers: [...mode.dangers],
    soot: mode.lowLoad ? lowLoad.factor.typical : 1,
    checks: mode.checks.map(({ check, detects }) => ({ check, detection: detects })),
    links: mode.links
      .filter((link) => present.has(link.to))
      .map((link) => ({
        part: link.to,
        ...(link.brings ? { mode: link.brings } : {}),
        chance: link.chance,
        effect: link.effect,
        ...(link.trip ? { guard: { part: link.trip, effectiveness: link.tripSaves ?? 0 } } : {}),
      })),
    wear: mode.wearLinks.map(({ to, mode: worn, factor }) => ({ part: to, mode: worn, factor })),
    remedy: {
      outcome: mode.remedy.outcome,
      agesLess: mode.remedy.takesAway ?? 1,
    },
  }
}
