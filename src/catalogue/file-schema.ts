/**
 * Form of the catalogue's files.
 *
 * @module
 */

import * as z from 'zod'
import { limitSchema } from './limit-schema.js'
import { linksSchema } from './links-schema.js'
import { loadRulesSchema, loadSchema, motorsSchema } from './load-schema.js'
import { offerSchema } from './offer-schema.js'
import { owedSchema } from './owed-schema.js'
import { hoursSchema, partSchema, spreadSchema } from './part-schema.js'
import { heldKinds, originSchema } from './provenance.js'
import { sizingSchema } from './sizing-schema.js'
import { stopLineSchema } from './stop-line-schema.js'

const id = z
  .string()
  .regex(/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/, 'must be words of small letters joined by hyphens')
const words = z.string().min(1)
const chance = z.number().min(0).max(1)
const positive = z.number().positive()
const notNegative = z.number().min(0)

/** The head of every file. */
export const headSchema = z.object({
  type: z.enum([
    'gensettle-sources',
    'gensettle-parts',
    'gensettle-access',
    'gensettle-checks',
    'gensettle-whole-set',
    'gensettle-care',
    'gensettle-dangers',
    'gensettle-loads',
    'gensettle-motors',
    'gensettle-links',
    'gensettle-sizing',
    'gensettle-limits',
    'gensettle-owed',
    'gensettle-stop-lines',
    'gensettle-offers',
  ]),
  version: words,
  units: words,
  date: z.iso.date(),
  sourceNote: words,
  origins: z.record(z.string(), originSchema).default({}),
})

/** A document, or a kind of text, that figures come from. */
export const sourceSchema = z.strictObject({
  id: z.string().regex(/^[a-z][A-Za-z0-9]*$/, 'must be one word in camel case'),
  /** Who issued it; press and accounts are named by kind. */
  issuer: words,
  title: words,
  year: z.int().min(1900).max(2100).nullable(),
  held: z.enum(heldKinds),
  says: words,
})

/** A way in: what is taken off so that parts can be reached. */
export const accessSchema = z.strictObject({
  id,
  name: words,
  /** For this way alone, without those it includes. */
  setUpHours: hoursSchema,
  includes: z.array(id).default([]),
})

/** A look or a test. */
export const checkSchema = z.strictObject({
  id,
  name: words,
  /** Fixed length [min], or a share of the part's own hours of work. */
  minutes: positive.optional(),
  shareOfPartHours: chance.optional(),
  opens: z.enum(['nothing', 'panels', 'some-parts', 'much']),
  who: z.enum(['owner', 'skilled', 'workshop', 'laboratory']),
  tool: words,
  /** The look itself takes something apart. */
  intrusive: z.boolean().default(false),
  fee: spreadSchema.optional(),
  /** How often an ordinary owner means to do it [running hours], and the chance that it is done when due. */
  ordinaryIntervalHours: positive,
  ordinaryDiligence: chance,
  /** Chance that it shows a defect where there is none. */
  falseAlarm: chance,
})

export const dangerSchema = z.strictObject({
  id,
  name: words,
  /** Chance that a failure with this danger becomes the event itself. */
  becomesEventChance: chance,
  caution: words,
})

export const careSchema = z.strictObject({
  checkRule: words,
  sameDayRule: words,
  /** Share of the calendar failures of a set that hardly runs which are met at fitting out, and so count as planned. */
  foundAtFittingOutShare: chance,
  /** Scale of salt-driven modes in fresh water is multiplied by this. */
  freshWaterFactor: positive,
  /** Scale of modes on running hours at 3,000 or 3,600 rpm is multiplied by this. */
  twoPoleFactor: positive,
  lowLoad: z.strictObject({ below: chance, factor: spreadSchema }),
})

const upTo = z.strictObject({ upToKW: positive, insideMm: positive })

export const wholeSetSchema = z.strictObject({
  money: z.strictObject({ currency: z.string().length(3), priceYear: z.int() }),
  rating: z.strictObject({
    referenceKW: positive,
    partPriceExponent: notNegative,
    labourExponent: notNegative,
  }),
  newSet: z.strictObject({ priceAt1KW: positive, exponent: positive, logSd: notNegative }),
  /** On one motor, fitted. */
  softStarter: z.strictObject({ price: spreadSchema }),
  installation: z.strictObject({
    likeForLikeHours: spreadSchema,
    newPlaceHours: spreadSchema,
    ownerHours: spreadSchema,
    materials: spreadSchema,
    lifting: spreadSchema,
    haulOut: spreadSchema,
    cutAccess: spreadSchema,
    hatchTooSmallChance: z.strictObject({ under10Years: chance, at20Years: chance }),
    rotorStuckInPlaceChance: chance,
  }),
  labour: z.strictObject({ ratePerHour: spreadSchema, callOut: spreadSchema }),
  resale: z.strictObject({
    shareOfNew: chance,
    lossPerYear: notNegative,
    lossPerExtraHour: notNegative,
    usualHoursPerYear: notNegative,
    floor: notNegative,
    notRunningShare: chance,
    notRunningFloor: notNegative,
    logSd: notNegative,
    boatGainsByRunningOldSet: notNegative,
  }),
  salvage: z.strictObject({ scrapPerKg: notNegative, parts: spreadSchema, copperKgPerKW: notNegative }),
  windings: z.strictObject({
    price: z.strictObject({
      rotor: spreadSchema,
      stator: spreadSchema,
      bothWithExciter: spreadSchema,
      newEnd: spreadSchema,
      otherFrame: spreadSchema,
      adaptorWork: spreadSchema,
      rinseBakeVarnish: spreadSchema,
    }),
    days: z.strictObject({
      rewind: spreadSchema,
      remoteRewind: spreadSchema,
      newEnd: spreadSchema,
      rinseBakeVarnish: spreadSchema,
    }),
    rushPriceFactor: positive,
    rushTimeFactor: positive,
    coreLostChance: chance,
    notes: z.array(words),
  }),
  overhaul: z.strictObject({
    topEnd: z.strictObject({
      medianHours: positive,
      logSd: notNegative,
      price: spreadSchema,
      labourHours: spreadSchema,
    }),
    major: z.strictObject({
      medianHours: positive,
      logSd: notNegative,
      price: spreadSchema,
      labourHours: spreadSchema,
      days: spreadSchema,
    }),
    exchangeEngine: z.strictObject({ price: spreadSchema, labourHours: spreadSchema }),
  }),
  use: z.array(z.strictObject({ id, name: words, hoursPerYear: spreadSchema, hoursPerStart: positive })),
  intrusion: z.strictObject({
    serviceChance: chance,
    serviceOpeningSealChance: chance,
    minorRepairChance: chance,
    majorRepairChance: chance,
    relinkingChance: chance,
    shape: positive,
    scaleHours: positive,
    ownerFactor: positive,
    caughtByChecklistAndLoadTest: chance,
    stopsShare: chance,
    leakShare: chance,
  }),
  repairQuality: z.strictObject({
    original: positive,
    aftermarket: positive,
    made: positive,
    salvaged: positive,
    rewound: positive,
    patched: positive,
    logSd: notNegative,
  }),
  obsolescence: z.strictObject({
    supportYears: spreadSchema,
    lossPerYear: chance,
    madePriceFactor: z.strictObject({ low: positive, high: positive }),
  }),
  weight: z.strictObject({
    fixedKg: positive,
    kgPerKW: positive,
    relativeSpread: chance,
    twoPoleFactor: positive,
  }),
  size: z.array(
    z.strictObject({ ratingKW: positive, lengthMm: positive, widthMm: positive, heightMm: positive }),
  ),
  seaWater: z.strictObject({
    litresPerMinutePerKW: spreadSchema,
    exchangerLeast: z.strictObject({ low: positive, high: positive }),
    hose: z.array(upTo),
  }),
  exhaust: z.strictObject({ hose: z.array(upTo), backPressureKPa: spreadSchema, outletC: spreadSchema }),
  fuel: z.strictObject({
    aged: z.strictObject({ litresPerHourPerRatedKW: positive, litresPerHourPerLoadKW: positive }),
    healthy: z.strictObject({ litresPerHourPerRatedKW: positive, litresPerHourPerLoadKW: positive }),
    dockPrice: spreadSchema,
    remotePrice: spreadSchema,
  }),
  trips: z.strictObject({
    testedEachYearChance: chance,
    oilKPa: z.strictObject({ low: positive, high: positive }),
    coolantC: z.strictObject({ low: positive, high: positive }),
    exhaustHoseFoundC: z.strictObject({ low: positive, high: positive }),
    exhaustHoseAlarmC: z.strictObject({ low: positive, high: positive }),
    exhaustHoseStopC: z.strictObject({ low: positive, high: positive }),
    exhaustHoseLimitC: positive,
  }),
  fleet: z.array(z.strictObject({ id, name: words, failedShare: chance, withinHours: positive })),
})

/** What stands beneath the head, by the file's type. */
export const bodySchemas = {
  'gensettle-sources': z.strictObject({ sources: z.array(sourceSchema) }),
  'gensettle-parts': z.strictObject({ parts: z.array(partSchema) }),
  'gensettle-access': z.strictObject({ access: z.array(accessSchema) }),
  'gensettle-checks': z.strictObject({ checks: z.array(checkSchema) }),
  'gensettle-whole-set': z.strictObject({ wholeSet: wholeSetSchema }),
  'gensettle-care': z.strictObject({ care: careSchema }),
  'gensettle-dangers': z.strictObject({ dangers: z.array(dangerSchema) }),
  'gensettle-loads': z.strictObject({ loads: z.array(loadSchema), loadRules: loadRulesSchema }),
  'gensettle-motors': z.strictObject({ motors: motorsSchema }),
  'gensettle-links': z.strictObject({ links: linksSchema }),
  'gensettle-sizing': z.strictObject({ sizing: sizingSchema }),
  'gensettle-limits': z.strictObject({ limits: z.array(limitSchema) }),
  'gensettle-owed': z.strictObject({ owed: owedSchema }),
  'gensettle-stop-lines': z.strictObject({ stopLines: z.array(stopLineSchema) }),
  'gensettle-offers': z.strictObject({ offers: offerSchema }),
} as const

export type Source = Readonly<z.infer<typeof sourceSchema>>
export type Access = Readonly<z.infer<typeof accessSchema>>
export type Check = Readonly<z.infer<typeof checkSchema>>
export type Danger = Readonly<z.infer<typeof dangerSchema>>
export type Care = Readonly<z.infer<typeof careSchema>>
export type WholeSet = Readonly<z.infer<typeof wholeSetSchema>>
