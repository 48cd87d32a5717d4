/**
 * What the answer was worked out from that may well be otherwise: which inputs, between which values.
 *
 * @module
 */

import type { LifeModel } from '../forecast/life-model.js'
import type { Kept } from './kept.js'
import { quoteOf } from './reweigh.js'

/** An input at its value now, and how far it is tried. Factors stand for what has no single number: now 1. */
interface Tried {
  readonly now: number
  readonly low: number
  readonly high: number
}

/** An input that costs follow in a straight line: its histories need not be played again. */
export interface StraightInput extends Tried {
  readonly id:
    | 'quote'
    | 'own-hour'
    | 'paid-hour'
    | 'workshop-trip'
    | 'day-without-power'
    | 'repair-costs'
    | 'new-set'
    | 'doing-without'
    | 'fuel-price'
    | 'resale'
  /** What a unit of it adds to the cost of an alternative, summed over these quantities of each history. */
  readonly perUnit: readonly Kept[]
}

/** An input with which what happens changes: other histories, on the same draws. */
export interface CurvedInput extends Tried {
  readonly id: 'years-kept' | 'interest' | 'hours-a-year' | 'waits-for-parts' | 'care' | 'faults-by-work'
  readonly with: (model: LifeModel, value: number) => LifeModel
}

/** Prices and rates are tried from half to twice what they are. Practice. */
const half = { low: 0.5, high: 2 }

/** Inputs on which at least one alternative's cost hangs. */
export function straightInputs(model: LifeModel): StraightInput[] {
  const { labour } = model
  const quote = model.alternatives.map(quoteOf).find((price) => price !== undefined)
  const factor = (id: StraightInput['id'], perUnit: readonly Kept[]): StraightInput => ({
    id,
    now: 1,
    ...half,
    perUnit,
  })
  const rate = (id: StraightInput['id'], now: number, perUnit: Kept): StraightInput[] =>
    now > 0 ? [{ id, now, low: now * half.low, high: now * half.high, perUnit: [perUnit] }] : []
  return [
    ...(quote === undefined ? [] : rate('quote', quote, 'quoteFactor')),
    ...rate('own-hour', labour.ownPerHour, 'ownHours'),
    ...rate('paid-hour', labour.paidPerHour, 'paidHours'),
    ...rate('workshop-trip', labour.perTrip, 'trips'),
    factor('day-without-power', ['power']),
    factor('repair-costs', ['failures', 'planned', 'intrusion']),
    factor('new-set', ['replacement']),
    factor('doing-without', ['giveUp']),
    factor('fuel-price', ['fuel']),
    { ...factor('resale', ['resale']), low: 0 },
  ]
}

/** Hours that a month has. */
const mostHours = 745
/** Real interest is tried between these. [1/year] Practice. */
const interest = { low: 0, high: 0.06 }

/** Inputs that change what happens. Boats are kept from a year to this long. [years] */
export function curvedInputs(model: LifeModel): CurvedInput[] {
  const { horizonYears: years, use } = model
  const longest = Math.min(40, 2 * years)
  const inputs: readonly CurvedInput[] = [
    {
      id: 'years-kept',
      now: years,
      low: Math.max(1, years / 2),
      high: Math.max(longest, years),
      with: (of, horizonYears) => ({ ...of, horizonYears }),
    },
    {
      id: 'interest',
      now: model.realInterestPerYear,
      low: Math.min(interest.low, model.realInterestPerYear),
      high: Math.max(interest.high, model.realInterestPerYear),
      with: (of, realInterestPerYear) => ({ ...of, realInterestPerYear }),
    },
    {
      id: 'hours-a-year',
      now: use.hoursByMonth.reduce((sum, hours) => sum + hours, 0),
      low: half.low * use.hoursByMonth.reduce((sum, hours) => sum + hours, 0),
      high: half.high * use.hoursByMonth.reduce((sum, hours) => sum + hours, 0),
      with: (of, hours) => usedFor(of, hours),
    },
    {
      id: 'waits-for-parts',
      now: 1,
      ...half,
      with: (of, factor) => waiting(of, factor),
    },
    {
      id: 'care',
      now: 1,
      ...half,
      with: (of, factor) => caredFor(of, factor),
    },
    {
      id: 'faults-by-work',
      now: 1,
      ...half,
      with: (of, factor) => ({
        ...of,
        intrusion: { ...of.intrusion, testsCatch: 1 - Math.min(1, (1 - of.intrusion.testsCatch) * factor) },
      }),
    },
  ]
  return inputs.filter(({ low, high }) => high > low)
}

function usedFor(model: LifeModel, hours: number): LifeModel {
  const { hoursByMonth, startsByMonth } = model.use
  const factor = hours / hoursByMonth.reduce((sum, one) => sum + one, 0)
  return {
    ...model,
    use: {
      ...model.use,
      hoursByMonth: hoursByMonth.map((one) => Math.min(mostHours, one * factor)),
      startsByMonth: startsByMonth.map((one) => one * factor),
    },
  }
}

function waiting(model: LifeModel, factor: number): LifeModel {
  type Days = LifeModel['candidates'][number]['leadDays']
  const longer = (days: Days): Days =>
    typeof days === 'number'
      ? days * factor
      : 'median' in days
        ? { ...days, median: days.median * factor }
        : { exponentialMean: days.exponentialMean * factor }
  const later = <T extends LifeModel['parts'][number]['repair']>(repair: T): T => ({
    ...repair,
    supply: repair.supply.map((one) => ({ ...one, days: longer(one.days) })),
  })
  return {
    ...model,
    parts: model.parts.map((part) => ({
      ...part,
      repair: later(part.repair),
      modes: part.modes.map((mode) => ({
        ...mode,
        remedy: {
          ...mode.remedy,
          ...(mode.remedy.repair === undefined ? {} : { repair: later(mode.remedy.repair) }),
        },
      })),
    })),
    candidates: model.candidates.map((one) => ({ ...one, leadDays: longer(one.leadDays) })),
  }
}

/** Checks and services are made so much oftener, never more than always. */
function caredFor(model: LifeModel, factor: number): LifeModel {
  const done = (diligence: number) => Math.min(1, diligence * factor)
  return {
    ...model,
    checks: model.checks.map((check) => ({ ...check, diligence: done(check.diligence) })),
    parts: model.parts.map((part) =>
      part.service === undefined
        ? part
        : { ...part, service: { ...part.service, diligence: done(part.service.diligence) } },
    ),
  }
}
