/**
 * The life model: everything a simulation needs, as one plain value that can be written by hand,
 * saved and run without any boat or catalogue. What each field means is told in `docs/life-model.md`.
 *
 * @module
 */

import { z } from 'zod'

const chance = z.number().min(0).max(1)
const money = z.number().min(0).max(1e9)
const id = z
  .string()
  .regex(/^[a-z0-9][a-zA-Z0-9_.-]{0,63}$/, 'an id of letters, digits, dot, dash or underscore')
const twelve = (value: z.ZodNumber) => z.array(value).length(12)
const logSd = z.number().min(0).max(3)

/** An uncertain amount: fixed, lognormal by its median, or exponential by its mean. */
export const amountSchema = z.union([
  z.number().min(0).max(1e9),
  z.strictObject({ median: money, logSd }),
  z.strictObject({ exponentialMean: money }),
])
export type Amount = z.infer<typeof amountSchema>

export const clockSchema = z.enum(['hours', 'years', 'starts'])
export type Clock = z.infer<typeof clockSchema>

/** From a defect that can be found to the failure. Absent: the mode fails without warning. */
const delaySchema = z.union([
  z.strictObject({ clock: clockSchema, median: z.number().positive().max(1e6), logSd }),
  z.strictObject({
    clock: clockSchema,
    shape: z.number().min(0.2).max(20),
    scale: z.number().positive().max(1e6),
  }),
])

const linkSchema = z.strictObject({
  part: id,
  /** The mode brought on there; without it the part is plainly damaged: renewed, with nothing following from it. */
  mode: id.optional(),
  chance,
  effect: z.enum(['ruins', 'starts-defect']).default('ruins'),
  /** A shutdown that, when it works, takes away `effectiveness` of the chance. */
  guard: z.strictObject({ part: id, effectiveness: chance }).optional(),
})

const wearSchema = z.strictObject({ part: id, mode: id, factor: z.number().min(1).max(100) })

/** What a mend costs, beside the access it needs. Hours are hands on. */
const repairSchema = z.strictObject({
  price: amountSchema.default(0),
  hours: z.number().min(0).max(2000).default(0),
  by: z.enum(['owner', 'paid']).default('paid'),
  trips: z.number().int().min(0).max(20).default(0),
  workshopDays: amountSchema.default(0),
  /** Where the piece may come from; chances sum to one. The last grows likelier by `lastLikelierPerYear`. */
  supply: z
    .array(
      z.strictObject({
        chance,
        days: amountSchema,
        priceFactor: z.number().min(0).max(20).default(1),
        quality: z.number().min(0.01).max(5).default(1),
      }),
    )
    .max(6)
    .default([]),
  lastLikelierPerYear: chance.default(0),
  wrongPartChance: chance.default(0),
  /** Chance that this work puts a new fault into what it opened. */
  intrusionChance: chance.default(0),
})

const outcomeSchema = z.enum(['cleared', 'renewed', 'reconditioned', 'patched'])
export type Outcome = z.infer<typeof outcomeSchema>

const remedySchema = z.strictObject({
  outcome: outcomeSchema.default('renewed'),
  /** `reconditioned`: share of the age taken away (Kijima II). */
  agesLess: chance.default(1),
  /** `patched`: factor on the time from defect to failure, drawn again. */
  delayFactor: z.number().positive().max(10).default(0.08),
  /** Where this mode's mend differs from the part's. */
  repair: repairSchema.optional(),
})

const likelihoodSchema = z.strictObject({
  sound: z.number().min(0).max(1e6),
  defective: z.number().min(0).max(1e6),
  failed: z.number().min(0).max(1e6).optional(),
})

/** Something seen at this mode: by a check that it knows, or as a pair (triple) of likelihoods. */
const observationSchema = z.union([
  z.strictObject({ yearsAgo: z.number().min(0).max(200), check: id, seen: z.boolean() }),
  z.strictObject({ yearsAgo: z.number().min(0).max(200), likelihood: likelihoodSchema }),
])

/** What it takes to make a check once, out of turn. Absent: nothing. */
const effortSchema = z.strictObject({
  /** Hands on, beside what is opened. */
  hours: z.number().min(0).max(500).default(0),
  /** And this share of the hours that mending the part takes. */
  shareOfRepairHours: z.number().min(0).max(5).default(0),
  by: z.enum(['owner', 'paid']).default('owner'),
  trips: z.number().int().min(0).max(20).default(0),
  price: money.default(0),
  access: z.array(id).max(20).default([]),
  /** What has to be opened for the part looked at, too. */
  opensPart: z.boolean().default(false),
  /** Chance that it puts a new fault into what it opened. */
  intrusionChance: chance.default(0),
})

const modeSchema = z.strictObject({
  id,
  name: z.string().max(200).optional(),
  clock: clockSchema,
  shape: z.number().min(0.2).max(20),
  /** Characteristic life to failure, on the mode's clock. */
  scale: z.number().positive().max(1e9),
  /** Log-sd of the mode's own scale, beside the set factor. */
  logSd: logSd.default(0),
  /** Factor on the scale of the onset; the delay stays as it is. */
  lifeFactor: z.number().min(0.01).max(100).optional(),
  delay: delaySchema.optional(),
  hidden: z.boolean().default(false),
  stops: chance.default(1),
  derates: chance.default(0),
  dangers: z.array(id).max(20).default([]),
  /** Factor on the hour clock for hours under about 30 % load. */
  soot: z.number().min(1).max(20).default(1),
  checks: z
    .array(
      z.strictObject({
        check: id,
        detection: chance,
        falseAlarm: chance.default(0),
        detectionFailed: chance.optional(),
      }),
    )
    .max(20)
    .default([]),
  links: z.array(linkSchema).max(30).default([]),
  wear: z.array(wearSchema).max(30).default([]),
  /** When it was last cleared by itself, where that is known: its ages count from then. */
  clearedYearsAgo: z.number().min(0).max(200).optional(),
  remedy: remedySchema.default({ outcome: 'renewed', agesLess: 1, delayFactor: 0.08 }),
  observations: z.array(observationSchema).max(500).default([]),
})

const agesSchema = z.strictObject({
  years: z.number().min(0).max(200).optional(),
  hours: z.number().min(0).max(1e6).optional(),
  starts: z.number().min(0).max(1e6).optional(),
})

const serviceSchema = z.strictObject({
  everyHours: z.number().positive().max(1e6).optional(),
  everyYears: z.number().positive().max(100).optional(),
  diligence: chance.default(1),
  renews: z.boolean().default(false),
  clears: z.array(id).max(20).default([]),
  price: money.default(0),
  hours: z.number().min(0).max(2000).default(0),
  by: z.enum(['owner', 'paid']).default('owner'),
})

const partSchema = z.strictObject({
  id,
  name: z.string().max(200).optional(),
  system: z.string().max(60).optional(),
  access: z.array(id).max(20).default([]),
  /** Age now on each clock; what is left out follows from the past track. `unknown`: played forward from the set's first day. */
  age: z.union([z.literal('unknown'), agesSchema]).default({ years: 0 }),
  /** Of the piece in place: its life against that of a good one, until it is renewed. */
  quality: z.number().min(0.01).max(5).default(1),
  /**
   * The first renewal in this position that is known of, where pieces before it are not: what became of them is taken from
   * its time alone. `watchedFromYearsAgo`: from when on an earlier one would be known too.
   */
  firstRenewal: z
    .strictObject({
      yearsAgo: z.number().min(0).max(200),
      watchedFromYearsAgo: z.number().min(0).max(200).optional(),
    })
    .optional(),
  /** How earlier lives in this position ended. */
  pastLives: z
    .array(
      z.strictObject({
        age: agesSchema,
        ended: z.union([
          z.strictObject({ failed: id }),
          z.strictObject({ defective: id }),
          z.literal('sound'),
          z.literal('failed-cause-unknown'),
        ]),
      }),
    )
    .max(200)
    .default([]),
  /** Spans in which the log is complete, so that nothing entered means nothing done (work) or no stop (stops). */
  complete: z
    .array(
      z.strictObject({
        of: z.enum(['work', 'stops']),
        fromYearsAgo: z.number().min(0),
        toYearsAgo: z.number().min(0),
      }),
    )
    .max(100)
    .default([]),
  /** The mode that stands failed, and known to be, now. */
  broken: id.optional(),
  repair: repairSchema.prefault({}),
  service: serviceSchema.optional(),
  modes: z.array(modeSchema).min(1).max(16),
})

const quoteSchema = z.strictObject({
  price: money,
  /** Bill over quote: lognormal with this median. */
  overrun: z.strictObject({ median: z.number().positive().max(10), logSd }).default({ median: 1, logSd: 0 }),
  /** What the quote leaves out (removal, lifting, test, carriage). */
  besides: amountSchema.default(0),
})

const actionSchema = z.strictObject({
  /** Parts (or single modes) put right now, planned, as one job. */
  parts: z
    .array(
      z.strictObject({
        part: id,
        mode: id.optional(),
        outcome: outcomeSchema.default('renewed'),
        quality: z.number().min(0.01).max(5).default(1),
        agesLess: chance.default(1),
      }),
    )
    .min(1)
    .max(200),
  /** Without a quote the job is priced from the parts' repairs. */
  quote: quoteSchema.optional(),
  /** A usual price for the whole job, where no quote is in hand; the overrun of labour is put on it. */
  price: amountSchema.optional(),
  /** Days without the set, beside the wait when it is down already. */
  days: amountSchema.optional(),
  wait: amountSchema.default(0),
  intrusionChance: chance.default(0),
})

const limitSchema = z.strictObject({
  /** A job estimated above this is not mended: at now, half way, and the horizon; straight between. */
  knots: z.tuple([money, money, money]),
  above: z.union([z.strictObject({ replaceWith: id }), z.literal('give-up')]),
})

const alternativeSchema = z.strictObject({
  id,
  name: z.string().max(200).optional(),
  now: z
    .union([z.literal('leave'), actionSchema, z.strictObject({ replaceWith: id }), z.literal('give-up')])
    .default('leave'),
  replaceLater: z.strictObject({ year: z.number().min(0).max(100), with: id }).optional(),
  limit: limitSchema.optional(),
  /** Shown but never recommended, and why. */
  barred: z.string().max(500).optional(),
})

const resaleSchema = z.strictObject({
  newPrice: money,
  share: chance.default(0.55),
  fallPerYear: z.number().min(0).max(2).default(0.085),
  least: money.default(0),
  deadShare: chance.default(0.3),
})

const candidateSchema = z.strictObject({
  id,
  name: z.string().max(200).optional(),
  price: amountSchema,
  install: amountSchema.default(0),
  leadDays: amountSchema.default(0),
  installDays: amountSchema.default(0),
  guaranteeYears: z.number().min(0).max(20).default(0),
  /** Factor on every hour-clock scale against the parts as listed. */
  hourLifeFactor: z.number().positive().max(10).default(1),
  partPriceFactor: z.number().positive().max(10).default(1),
  labourFactor: z.number().positive().max(10).default(1),
  lowLoadShare: chance.optional(),
  fuelPerHour: money.optional(),
  /** Mean number of faults built in, each of which shows early. */
  infantFaults: z.number().min(0).max(20).default(0),
  /** Used, with an unknown past. */
  used: z
    .strictObject({
      years: z.number().positive().max(100),
      hours: z.number().min(0).max(1e6),
      starts: z.number().min(0).max(1e6).default(0),
    })
    .optional(),
  resale: resaleSchema.optional(),
})

export const lifeModelSchema = z.strictObject({
  type: z.literal('gensettle/life-model'),
  version: z.literal(1),
  title: z.string().max(200).default(''),
  currency: z.string().max(10).default(''),
  horizonYears: z.number().positive().max(100),
  /** Nine times in ten it is at least `low`, and at most `high`: how well the years are known. Only what they would be worth to know hangs on it. */
  horizonMayBe: z
    .strictObject({ low: z.number().positive().max(100), high: z.number().positive().max(100) })
    .optional(),
  /** Real, continuous. [1/year] */
  realInterestPerYear: z.number().min(0).max(0.5).default(0),
  /** Month of the year in which the simulation starts: 0 is 1 January, 6.5 mid-July. */
  startMonth: z.number().min(0).max(11.999).default(0),
  use: z
    .strictObject({
      hoursByMonth: twelve(z.number().min(0).max(745)),
      startsByMonth: twelve(z.number().min(0).max(5000)).default(Array(12).fill(0)),
      /** Share of days on which power is needed. */
      powerNeededByMonth: twelve(chance).default(Array(12).fill(1)),
      lowLoadShare: chance.default(0),
    })
    .default({
      hoursByMonth: Array(12).fill(730.5),
      startsByMonth: Array(12).fill(0),
      powerNeededByMonth: Array(12).fill(1),
      lowLoadShare: 0,
    }),
  past: z
    .strictObject({
      /** Running totals since the set's first day, oldest first, the last at 0 years ago. */
      track: z
        .array(
          z.strictObject({
            yearsAgo: z.number().min(0).max(200),
            hours: z.number().min(0).max(1e6),
            starts: z.number().min(0).max(1e6).default(0),
          }),
        )
        .min(2)
        .max(5000),
      lowLoadShare: chance.default(0),
    })
    .optional(),
  setFactor: z
    .strictObject({
      boatLogSd: logSd,
      setLogSd: logSd,
      /** Times the set let the owner down that are entered nowhere, over spans declared complete. */
      letDowns: z
        .array(
          z.strictObject({
            fromYearsAgo: z.number().min(0),
            toYearsAgo: z.number().min(0),
            count: z.number().int().min(0).max(10000),
          }),
        )
        .max(20)
        .default([]),
    })
    .default({ boatLogSd: 0, setLogSd: 0, letDowns: [] }),
  /** Ordinary care: each check at the shorter of its hours and one season. */
  checks: z
    .array(
      z.strictObject({
        id,
        name: z.string().max(200).optional(),
        everyHours: z.number().positive().max(1e6),
        diligence: chance.default(1),
        effort: effortSchema.optional(),
      }),
    )
    .max(60)
    .default([]),
  care: z
    .strictObject({ fittingOutShare: chance.default(0.5), restChance: chance.default(0.7) })
    .prefault({}),
  labour: z
    .strictObject({
      paidPerHour: money.default(0),
      ownPerHour: money.default(0),
      perTrip: money.default(0),
      hoursPerDay: z.number().positive().max(24).default(8),
      overrun: z
        .strictObject({ median: z.number().positive().max(10), logSd })
        .default({ median: 1, logSd: 0 }),
      ownerAccessFactor: z.number().positive().max(10).default(1),
    })
    .prefault({}),
  access: z
    .array(
      z.strictObject({ id, hours: z.number().min(0).max(500), includes: z.array(id).max(20).default([]) }),
    )
    .max(60)
    .default([]),
  powerLoss: z
    .strictObject({
      /** Price of an outage by its days without wanted power: straight between points, the last slope goes on. */
      curve: z
        .array(z.strictObject({ days: z.number().min(0).max(1000), cost: money }))
        .min(1)
        .max(20),
      byMonth: twelve(z.number().min(0).max(100)).default(Array(12).fill(1)),
    })
    .default({ curve: [{ days: 0, cost: 0 }], byMonth: Array(12).fill(1) }),
  /** Chance that a failure carrying a danger becomes the event itself. */
  dangers: z.record(id, chance).default({}),
  intrusion: z
    .strictObject({
      testsCatch: chance.default(0),
      onset: z
        .strictObject({ shape: z.number().min(0.2).max(20), scaleHours: z.number().positive().max(1e6) })
        .default({ shape: 0.6, scaleHours: 12 }),
    })
    .prefault({}),
  fuelPerHour: money.default(0),
  upkeepPerYear: money.default(0),
  set: z
    .strictObject({
      resale: resaleSchema.optional(),
      salvageAtReplacement: money.default(0),
      ageYears: z.number().min(0).max(200).default(0),
    })
    .prefault({}),
  giveUp: z
    .strictObject({
      costNow: amountSchema.default(0),
      costPerYear: money.default(0),
      daysWithoutPerYear: z.number().min(0).max(366).default(0),
    })
    .prefault({}),
  /** One symptom that several modes may give; seen or looked for and not seen. */
  symptoms: z
    .array(
      z.strictObject({
        yearsAgo: z.number().min(0).max(200),
        falseAlarm: chance.default(0),
        seen: z.boolean(),
        modes: z
          .array(z.strictObject({ part: id, mode: id, detection: chance }))
          .min(1)
          .max(30),
      }),
    )
    .max(200)
    .default([]),
  mostPayableInOneYear: money.optional(),
  candidates: z.array(candidateSchema).max(20).default([]),
  parts: z.array(partSchema).min(1).max(500),
  alternatives: z
    .array(alternativeSchema)
    .min(1)
    .max(40)
    .default([{ id: 'leave', now: 'leave' }]),
})

export type LifeModel = z.infer<typeof lifeModelSchema>
/** What may be written by hand: everything that has a usual value may be left out. */
export type LifeModelInput = z.input<typeof lifeModelSchema>
export type LifePart = LifeModel['parts'][number]
export type LifeMode = LifePart['modes'][number]
export type Repair = LifePart['repair']
export type CheckEffort = z.infer<typeof effortSchema>
export type Alternative = LifeModel['alternatives'][number]
export type Candidate = LifeModel['candidates'][number]
