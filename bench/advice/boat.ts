/**
 * Random boats: what is true of each, and what her owner believes before asking. All spreads are practice.
 *
 * @module
 */

import {
  type Amount,
  type LifeModel,
  type LifeModelInput,
  lifeModelSchema,
} from '../../src/forecast/life-model.js'
import { between, type Name, normal, uniform } from './chance.js'
import { always, type Family, sometimes } from './families.js'
import type { Nature } from './nature.js'

export interface Boat {
  readonly nature: Nature
  /** Scales, prices and waits as listed, use as it was; what the owner values is known. */
  readonly believed: LifeModel
  /** Whether the adviser's world is hers. */
  readonly isModelled: boolean
  /** Whether the log goes back to the set's first day; else it begins when she was bought. */
  readonly isLogWhole: boolean
}

type Input = LifeModelInput
type Part = Input['parts'][number]

/**
 * A boat by her number: every other one is from the adviser's world; of the rest every other one has short lives, every
 * other one long; and of each kind half were bought new, with a log from the first day.
 */
export function boatOf(seed: number, number: number): Boat {
  const name: Name = [seed, number]
  const own = (...rest: number[]): Name => [...name, ...rest]
  const isModelled = number % 2 === 0
  const level = isModelled ? 1 : number % 4 === 1 ? 0.6 : 1.6
  const isLogWhole = number % 8 < 4
  const kw = between(own(1), { low: 4, high: 14 })
  const pastHoursPerYear = Math.min(1000, Math.max(60, 260 * Math.exp(0.6 * normal(own(2)))))
  const hoursPerYear = Math.min(1200, Math.max(50, pastHoursPerYear * Math.exp(0.3 * normal(own(3)))))
  const ageYears = between(own(4), { low: 5, high: 30 })
  const believed = lifeModelSchema.parse(believedInput({ own, kw, ageYears, hoursPerYear: pastHoursPerYear }))
  return {
    believed,
    isModelled,
    isLogWhole,
    nature: {
      seed: Math.floor(uniform(own(5)) * 2 ** 31),
      model: trueModel(believed, { own, hoursPerYear }),
      law: isModelled ? 'weibull' : 'lognormal',
      level,
      boatLog: believed.setFactor.boatLogSd * normal(own(6)),
      ageYears,
      pastHoursPerYear,
      logYears: isLogWhole ? ageYears : Math.min(ageYears, between(own(7), { low: 3, high: 12 })),
    },
  }
}

function believedInput(of: {
  readonly own: (...rest: number[]) => Name
  readonly kw: number
  readonly ageYears: number
  readonly hoursPerYear: number
}): Input {
  const { own, kw, ageYears, hoursPerYear } = of
  const price = 5200 * kw ** 0.44 * Math.exp(0.15 * normal(own(10)))
  const paidPerHour = 130 * Math.exp(0.2 * normal(own(11)))
  const perDay = 60 * Math.exp(0.7 * normal(own(12)))
  const resale = { newPrice: price, least: 600 }
  const families = chosen(own)
  const has = new Set(families.map(({ id }) => id))
  return {
    type: 'gensettle/life-model',
    version: 1,
    horizonYears: Math.round(between(own(13), { low: 4, high: 20 })),
    realInterestPerYear: 0.02,
    use: {
      hoursByMonth: Array(12).fill(hoursPerYear / 12),
      powerNeededByMonth: Array(12).fill(between(own(14), { low: 0.3, high: 1 })),
    },
    setFactor: { boatLogSd: 0.28, setLogSd: 0.28 },
    checks: [
      { id: 'watch', everyHours: 50, diligence: between(own(15), { low: 0.4, high: 0.95 }) },
      { id: 'open', everyHours: 250, diligence: between(own(16), { low: 0.2, high: 0.9 }) },
      { id: 'measure', everyHours: 250, diligence: between(own(17), { low: 0.1, high: 0.8 }) },
    ],
    labour: {
      paidPerHour,
      ownPerHour: between(own(18), { low: 0, high: 25 }),
      perTrip: 180,
      overrun: { median: 1.12, logSd: 0.25 },
    },
    access: [
      { id: 'front', hours: 1 },
      { id: 'side', hours: 1 },
      { id: 'top', hours: 2 },
      { id: 'end', hours: 4 },
      { id: 'under', hours: 5 },
    ],
    powerLoss: {
      curve: [
        { days: 1, cost: 0.3 * perDay },
        { days: 3, cost: 2.5 * perDay },
        { days: 14, cost: 14 * perDay },
      ],
    },
    intrusion: { testsCatch: 0.5 },
    set: { resale, ageYears, salvageAtReplacement: 300 },
    candidates: [
      {
        id: 'new-same',
        price: { median: price, logSd: 0.05 },
        install: { median: 30 * paidPerHour + 2500, logSd: 0.2 },
        leadDays: { median: 30, logSd: 0.5 },
        installDays: { median: 5, logSd: 0.4 },
        guaranteeYears: 2,
        infantFaults: 0.35,
        resale,
      },
    ],
    parts: families.map((family) => partOf(family, { kw, has })),
  }
}

/** All that every boat has, and one to seven of the others. */
function chosen(own: (...rest: number[]) => Name): Family[] {
  const count = 1 + Math.floor(7 * uniform(own(20)))
  const shuffled = sometimes
    .map((family, f) => ({ family, at: uniform(own(21, f)) }))
    .sort((a, b) => a.at - b.at)
    .map(({ family }) => family)
  return [...always, ...shuffled.slice(0, count)]
}

function partOf(family: Family, boat: { readonly kw: number; readonly has: ReadonlySet<string> }): Part {
  const isOwners = family.work.by === 'owner'
  return {
    id: family.id,
    access: [...family.access],
    repair: {
      ...family.work,
      price: { median: family.price * (boat.kw / 10) ** 0.35, logSd: 0.3 },
      supply: [
        { chance: 0.5, days: { median: 3, logSd: 0.5 } },
        { chance: 0.38, days: { median: 14, logSd: 0.5 } },
        { chance: 0.12, days: { median: 45, logSd: 0.5 }, priceFactor: 1.6, quality: 0.8 },
      ],
      lastLikelierPerYear: 0.01,
      wrongPartChance: 0.1,
      intrusionChance: isOwners ? 0.06 : 0.1,
    },
    modes: family.modes.map((mode) => ({
      ...mode,
      links: (mode.links ?? []).filter(({ part }) => boat.has.has(part)),
    })),
  }
}

/** What is true against the list: prices of parts, waits, bills over estimates, use. What a new set costs is asked for. */
function trueModel(
  believed: LifeModel,
  of: { readonly own: (...rest: number[]) => Name; readonly hoursPerYear: number },
): LifeModel {
  const { own, hoursPerYear } = of
  const allPrices = Math.exp(0.2 * normal(own(30)))
  const allWaits = Math.exp(0.3 * normal(own(31)))
  return {
    ...believed,
    use: { ...believed.use, hoursByMonth: Array(12).fill(hoursPerYear / 12) },
    labour: {
      ...believed.labour,
      overrun: { median: 1.12 * Math.exp(0.1 * normal(own(32))), logSd: 0.25 },
    },
    parts: believed.parts.map((part, p) => ({
      ...part,
      repair: {
        ...part.repair,
        price: times(part.repair.price, allPrices * Math.exp(0.25 * normal(own(33, p)))),
        hours: part.repair.hours * Math.exp(0.2 * normal(own(34, p))),
        supply: part.repair.supply.map((option) => ({ ...option, days: times(option.days, allWaits) })),
      },
    })),
  }
}

function times(amount: Amount, factor: number): Amount {
  if (typeof amount === 'number') return amount * factor
  if ('exponentialMean' in amount) return { exponentialMean: amount.exponentialMean * factor }
  return { ...amount, median: amount.median * factor }
}
