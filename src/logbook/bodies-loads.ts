/**
 * What draws power aboard, how the set is run, where it stands, and what other sets are offered.
 *
 * Each may be given piece by piece: under the same id (or for the boat, or the set) a field holds from the entry's date
 * until a later entry gives it again.
 *
 * @module
 */

import * as z from 'zod'
import {
  common,
  listOf,
  mark,
  meterHours,
  money,
  nameSchema,
  oneOf,
  share,
  text,
  wholeWithin,
  within,
  yesNo,
} from './atoms.js'
import { excitationKinds } from './bodies-set.js'

const hoursADay = within(0, 24, 'h').optional()
const dayShare = {
  day: hoursADay,
  evening: hoursADay,
  night: hoursADay,
  cooking: hoursADay,
  laundry: hoursADay,
  charging: hoursADay,
}
const daysAYear = within(0, 366, 'd').optional()
const millimetres = within(1, 20_000, 'mm')

/** Something that draws power from the set. */
export const loadBody = z.strictObject({
  id: nameSchema,
  /** Not aboard any more; nothing else is said then. */
  removed: mark.optional(),
  /** The load of the catalogue that it is; what is not given here is taken from there. */
  is: nameSchema.optional(),
  name: text(80).optional(),
  /** So many alike, each with its own switch. */
  count: wholeWithin(1, 20).optional(),
  /** Where the figures given here come from. */
  basis: oneOf(['nameplate', 'measured']).optional(),
  volts: within(50, 1000, 'V').optional(),
  /** On a set of two legs: which it hangs on. */
  leg: oneOf(['one', 'two', 'both']).optional(),
  runW: within(1, 50_000, 'W').optional(),
  powerFactor: within(0.05, 1).optional(),
  /** Current with the rotor standing still. */
  lockedRotorA: within(0.1, 2000, 'A').optional(),
  horsepower: within(0.01, 50, 'hp').optional(),
  codeLetter: oneOf([...'ABCDEFGHJKLMNPRSTUV']).optional(),
  softStarter: yesNo.optional(),
  /** Share of the time on, while it is switched on. */
  duty: share.optional(),
  /** Hours a day switched on, by occasion. */
  hours: z.strictObject(dayShare).optional(),
  season: oneOf(['all', 'cooling', 'heating', 'with-climate']).optional(),
  /** May be switched off when all cannot be carried: 1 goes first. */
  shed: wholeWithin(1, 9).optional(),
  ...common,
})

/** Loads that the people aboard never have on together. */
export const houseRuleBody = z.strictObject({
  id: nameSchema,
  /** Given up; nothing else is said then. */
  removed: mark.optional(),
  loads: listOf(nameSchema, 2, 8).optional(),
  /** Of them on at once; left out: one. */
  atMost: wholeWithin(1, 7).optional(),
  because: text(300).optional(),
  ...common,
})

/** When the set runs. */
export const habitsBody = z.strictObject({
  /** Hours of a day in season with the set running, by occasion. */
  setHours: z.strictObject(dayShare).optional(),
  /** Days aboard in a year, by the weather. */
  days: z.strictObject({ hot: daysAYear, warm: daysAYear, mild: daysAYear, cold: daysAYear }).optional(),
  ...common,
})

/** Where the set stands, and the way to it. */
export const spaceBody = z.strictObject({
  /** Air that the engine draws, at its warmest under load. */
  engineSpaceC: within(-10, 90, '°C').optional(),
  altitudeM: within(-100, 5000, 'm').optional(),
  /** Relative, of the air in the engine space. */
  humidity: share.optional(),
  seaWaterC: within(-2, 40, '°C').optional(),
  /** Every opening that the set must pass, inside to outside. */
  wayOut: listOf(
    z.strictObject({ name: text(60).optional(), widthMm: millimetres, heightMm: millimetres }),
    1,
    8,
  ).optional(),
  /** What can be lifted on the way. */
  liftKg: within(10, 20_000, 'kg').optional(),
  exhaustHoseMm: within(10, 300, 'mm').optional(),
  /** Height to which the exhaust lifts its water. */
  exhaustRiseMm: within(0, 10_000, 'mm').optional(),
  rawWaterHoseMm: within(5, 200, 'mm').optional(),
  /** Free area of the openings that let air in. */
  ventCm2: within(1, 100_000, 'cm²').optional(),
  /** Where it must be quiet: the most that is borne there, how far from the set that is, and what is heard there without it. */
  quietDb: within(20, 120, 'dB').optional(),
  quietAtM: within(0.2, 200, 'm').optional(),
  backgroundDb: within(10, 120, 'dB').optional(),
  ...common,
})

/** A set that could take the place of this one. */
export const candidateBody = z.strictObject({
  id: nameSchema,
  /** No longer thought of; nothing else is said then. */
  removed: mark.optional(),
  name: text(80).optional(),
  ratingKw: within(0.5, 100, 'kW').optional(),
  /** Of its alternator; left out: the rating through a power factor of 0.8, or of 1 for one phase. */
  ratingKva: within(0.5, 200, 'kVA').optional(),
  phases: z.union([z.literal(1), z.literal(3)], { error: '1 or 3' }).optional(),
  rpm: within(500, 6000, 'rpm').optional(),
  excitation: oneOf(excitationKinds).optional(),
  aspiration: oneOf(['natural', 'turbo', 'turbo-cooled']).optional(),
  /** Swept volume of the engine. */
  sweptLitres: within(0.05, 20, 'l').optional(),
  transientReactancePercent: within(2, 80, '%').optional(),
  /** Of a three-phase end joined for one phase: share of its rating that it gives. */
  singlePhaseShare: share.optional(),
  weightKg: within(10, 20_000, 'kg').optional(),
  lengthMm: millimetres.optional(),
  widthMm: millimetres.optional(),
  heightMm: millimetres.optional(),
  /** Noise in its case under load, and the distance at which it was told or read; left out: 1 m. */
  noiseDb: within(30, 130, 'dB').optional(),
  noiseAtM: within(0.2, 50, 'm').optional(),
  /** The largest piece that it can be taken apart into. */
  largestPiece: z
    .strictObject({
      lengthMm: millimetres,
      widthMm: millimetres,
      heightMm: millimetres,
      weightKg: within(5, 20_000, 'kg').optional(),
    })
    .optional(),
  /** Delivered, tax in. */
  price: money.optional(),
  /** Fitting it, tax in. */
  fitting: money.optional(),
  deliveryDays: within(0, 1000, 'd').optional(),
  fittingDays: within(0, 365, 'd').optional(),
  guaranteeYears: within(0, 20, 'years').optional(),
  /** Second-hand: its age and what its meter shows. */
  used: z.strictObject({ years: within(0, 80, 'years'), hours: meterHours }).optional(),
  ...common,
})
