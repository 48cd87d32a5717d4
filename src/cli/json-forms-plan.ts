/**
 * Published forms of what was measured and of the run plan.
 *
 * @module
 */

import * as z from 'zod'
import {
  asked,
  chance,
  demandBasis,
  durationCurve,
  entry,
  measuredDemand,
  numbers,
  ofSet,
  problem,
  texts,
} from './json-form-pieces.js'

const totals = {
  hours: z.number(),
  starts: z.number(),
  lowHours: z.number(),
  lowLoadShare: chance,
  kWh: z.number(),
  fuelLitres: z.number(),
  cost: z.number(),
}
const run = z.object({
  ...totals,
  slots: z.array(
    z.object({
      setKW: z.number(),
      isOn: z.boolean(),
      onShare: z.number(),
      isLow: z.boolean(),
      wantedKW: z.number(),
      chargeKW: z.number(),
      inverterKW: z.number(),
      shoreKW: z.number(),
      solarKW: z.number(),
    }),
  ),
  running: z.record(z.string(), numbers),
  levels: z.record(z.string(), numbers),
  batteryKWh: numbers.optional(),
  short: z.array(z.object({ slot: z.number(), what: z.string() })),
})
const ofYear = z.object({
  hours: z.number(),
  starts: z.number(),
  lowLoadShare: chance,
  fuelLitres: z.number(),
  days: z.number(),
})
const recordedDay = z.object({
  hours: z.number(),
  starts: z.number(),
  kWh: z.number(),
  meanKW: z.number(),
  lowLoadShare: chance,
  onByHour: numbers,
  meanByHour: numbers,
  p95ByHour: numbers,
})
const cost = z.object({
  price: z.number(),
  bankYears: z.number(),
  endedBy: z.enum(['cycles', 'years']),
  perYear: z.number(),
  wearPerKWh: z.number(),
})
const worthOf = z.object({
  hoursPerYear: z.number(),
  failuresPerYear: z.number(),
  stopsPerYear: z.number(),
  costPerYear: z.number(),
  costPerYearError: z.number(),
})

export const planFields = {
  'gensettle/plan': {
    ...ofSet,
    season: z.string(),
    ratingKW: z.number(),
    day: z.record(z.string(), z.unknown()).describe('As day.schema.json tells.'),
    plan: run,
    habit: z.object({ ...totals, kWBySlot: numbers }),
    recorded: recordedDay.optional(),
    basis: demandBasis,
    measured: measuredDemand.optional(),
    months: z.array(
      z.object({
        month: z.number(),
        hours: z.number(),
        starts: z.number(),
        needShare: chance,
        lowLoadShare: chance,
      }),
    ),
    year: z.object({ plan: ofYear, habit: ofYear }),
    battery: z
      .object({
        usableKWh: z.number(),
        wholeDayKWh: z.number(),
        beside: run.optional(),
        besideCost: cost.optional(),
        alone: z.object({
          unmetKWh: z.number(),
          unmetHours: z.number(),
          drawnKWh: z.number(),
          sunKWh: z.number(),
          shoreKWh: z.number(),
        }),
        aloneCost: cost,
        problems: z.array(problem),
      })
      .optional(),
    worth: z
      .object({
        alternative: z.string(),
        currency: z.string(),
        years: z.number(),
        histories: z.number(),
        habit: worthOf,
        plan: worthOf,
      })
      .optional(),
    entries: z.array(entry).optional(),
    asked: z.array(asked).optional(),
    assumed: texts,
    caution: z.string(),
  },
  'gensettle/plan-of-day': {
    plan: run,
    choices: z.record(z.string(), z.unknown()),
    caution: z.string(),
  },
  'gensettle/measured': {
    boat: z.string().optional().describe('Left out where nothing was written.'),
    entries: z.array(entry),
    asked: z.array(asked),
    read: z.object({
      columns: z.array(z.object({ field: z.string(), heading: z.string(), unit: z.string() })),
      otherColumns: texts,
      headingsOnLine: z.number(),
      times: z.string(),
      dateOrder: z.string(),
      decimal: z.string(),
      guessedUnits: texts,
      assumed: texts,
      rows: z.number(),
      badRows: z.number(),
      bad: z.array(z.object({ line: z.number(), code: z.string(), found: z.string() })),
    }),
    rows: z.number(),
    badRows: z.number(),
    coveredS: z.number(),
    gapS: z.number(),
    days: z.number(),
    starts: z.number(),
    energyKwh: z.number(),
    mostKw: z.number(),
    curve: durationCurve.describe('Share of the running time at which so much or more is drawn.'),
    day: recordedDay.optional(),
  },
} as const
