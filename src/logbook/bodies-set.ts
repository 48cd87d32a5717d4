/**
 * What is said of the boat, the set and its use.
 *
 * Particulars, use and terms may be given piece by piece: each field holds from the entry's date until a later entry
 * gives the same field again.
 *
 * @module
 */

import * as z from 'zod'
import {
  common,
  dateSchema,
  listOf,
  mark,
  meterHours,
  money,
  month,
  nameSchema,
  oneOf,
  percent,
  share,
  text,
  wholeWithin,
  within,
  yesNo,
} from './atoms.js'

const currencyWords = 'a currency as three capital letters, such as EUR'

/** The boat herself, and how she is spoken of. */
export const boatBody = z.strictObject({
  name: text(80).optional(),
  lengthM: within(2, 150, 'm').optional(),
  water: oneOf(['salt', 'fresh']).optional(),
  /** Every amount in the logbook is in this currency. */
  currency: z
    .string({ error: currencyWords })
    .regex(/^[A-Z]{3}$/, currencyWords)
    .optional(),
  /** Multiplies every price of the catalogue, for what things cost here. */
  priceFactor: within(0.05, 20).optional(),
  /** Months in which the boat is used at all, 1 to 12. */
  monthsInUse: listOf(month, 1, 12).optional(),
  /** Whose words the program speaks: earth and RCD, or ground and GFCI. */
  words: oneOf(['british', 'american']).optional(),
  /** Units as spoken aboard; what is stored never changes with them. */
  units: z
    .strictObject({
      temperature: oneOf(['celsius', 'fahrenheit']).optional(),
      volume: oneOf(['litre', 'us-gallon', 'imperial-gallon']).optional(),
      pressure: oneOf(['kilopascal', 'bar', 'psi']).optional(),
      length: oneOf(['metre', 'foot']).optional(),
      power: oneOf(['kilowatt', 'horsepower']).optional(),
    })
    .optional(),
  ...common,
})

export const excitationKinds = [
  'brushless-regulator',
  'brushed-regulator',
  'capacitor',
  'compound',
  'brushed-compound',
] as const

/** A generating set. */
export const setBody = z.strictObject({
  name: text(80).optional(),
  ratingKw: within(0.5, 100, 'kW').optional(),
  /** Voltages as it is linked, highest first: 240 and 120 for a set that gives both. */
  volts: listOf(within(50, 1000, 'V'), 1, 3).optional(),
  hertz: within(40, 70, 'Hz').optional(),
  phases: z.union([z.literal(1), z.literal(3)], { error: '1 or 3' }).optional(),
  rpm: within(500, 6000, 'rpm').optional(),
  excitation: oneOf(excitationKinds).optional(),
  /** Bearings of the alternator: with one, the engine carries the other end. */
  bearings: z.union([z.literal(1), z.literal(2)], { error: '1 or 2' }).optional(),
  governor: oneOf(['mechanical', 'electronic']).optional(),
  fuelSolenoid: oneOf(['energised-to-run', 'energised-to-stop']).optional(),
  /** Ends of the windings brought out to the terminals. */
  leads: wholeWithin(2, 24).optional(),
  /** How they are joined, in words or as pairs of lead marks. */
  links: text(500).optional(),
  built: dateSchema.optional(),
  /** When it came aboard, and what its meter showed then; left out: new in the year it was built. */
  aboardSince: dateSchema.optional(),
  hoursWhenAboard: meterHours.optional(),
  /** Protections and other parts that not every set has: part names. */
  has: listOf(nameSchema, 1, 100).optional(),
  hasNot: listOf(nameSchema, 1, 100).optional(),
  standing: oneOf(['in-use', 'spare', 'gone']).optional(),
  ...common,
})

export const qualities = ['original', 'aftermarket', 'made', 'rewound', 'salvaged'] as const

/** A part was fitted, some time between the entry's two dates. */
export const fittedBody = z.strictObject({
  part: nameSchema,
  quality: oneOf(qualities),
  /** Came with the set when it was built. */
  originalToSet: mark.optional(),
  meterHours: meterHours.optional(),
  partNumber: text(80).optional(),
  ...common,
})

/** What the hour meter showed. */
export const hoursBody = z.strictObject({
  meterHours,
  starts: wholeWithin(0, 1_000_000).optional(),
  ...common,
})

/** Another hour meter, or the same one set back. */
export const meterChangedBody = z.strictObject({
  oldMeterHours: meterHours.optional(),
  newMeterHours: meterHours,
  ...common,
})

/** How the set is used in a usual year; months left out: not at all. */
export const useBody = z.strictObject({
  months: listOf(
    z.strictObject({
      month,
      hours: within(0, 744, 'h'),
      starts: within(0, 3000),
      /** Share of days on which power is needed. */
      needShare: share,
      /** Share of the running hours under about 30 % load. */
      lowLoadShare: share,
    }),
    1,
    12,
  ),
  /** A change: it holds from the entry's date, and the years before were as the entry before says. */
  changesFromNow: mark.optional(),
  ...common,
})

/** What the owner reckons with. Money in the boat's currency of today. */
export const termsBody = z.strictObject({
  /** Years for which the boat will be kept. [a] */
  yearsKept: within(0.25, 60, 'years').optional(),
  /** Nine times in ten it will be at least, and at most, so many. [a] */
  yearsKeptAtLeast: within(0.25, 60, 'years').optional(),
  yearsKeptAtMost: within(0.25, 60, 'years').optional(),
  /** What an hour of the owner's own work is worth. */
  ownPerHour: within(0, 1e6).optional(),
  /** What a paid hour costs, tax in. */
  paidPerHour: within(0, 1e6).optional(),
  /** What each visit of a workshop costs before work begins. */
  travelPerTrip: money.optional(),
  fuelPerLitre: within(0, 1e5).optional(),
  /**
   * Price of being without power: straight lines through (0 days, 0) and the points, the last one going on at its
   * slope. A month that is named nowhere costs nothing.
   */
  withoutPower: listOf(
    z.strictObject({
      months: listOf(month, 1, 12),
      curve: listOf(z.strictObject({ days: within(0, 365, 'd'), price: money }), 1, 12),
    }),
    1,
    12,
  ).optional(),
  /** Living without a set: what stands in for it costs, now and each year. */
  doWithoutPrice: money.optional(),
  doWithoutPerYear: money.optional(),
  /** Share of the days that want power on which what stands in for a set falls short. [%] */
  doWithoutShortPercent: percent.optional(),
  /** The most that can be paid in one year. */
  mostInOneYear: money.optional(),
  realInterestPercent: within(-5, 30, '%').optional(),
  /** Depth of work that the owner does without a paid hand. */
  ownerDoes: listOf(oneOf(['minor', 'major', 'windings']), 0, 3).optional(),
  /** Parts that are an exception to it. */
  ownerAlsoDoes: listOf(nameSchema, 0, 100).optional(),
  ownerNeverDoes: listOf(nameSchema, 0, 100).optional(),
  /** Share of the checks and services due that are done. */
  diligence: share.optional(),
  taxPercent: percent.optional(),
  /** What jobs of this log have come to is taken into what work is expected to come to. */
  learnFromJobs: yesNo.optional(),
  ...common,
})

const pathWords = 'a path such as parts.hx-anode.modes.spent.scale'

/** A figure of the catalogue that the owner knows better. Void the entry to go back to the catalogue's. */
export const overruleBody = z.strictObject({
  path: z
    .string({ error: pathWords })
    .max(200, pathWords)
    .regex(/^[A-Za-z0-9-]+(\.[A-Za-z0-9-]+)+$/, pathWords),
  value: within(-1e9, 1e9),
  because: text(1000).optional(),
  ...common,
})
