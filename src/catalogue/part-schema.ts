/**
 * Form of a part of the set: how it ages, what it drags down, what a look and a repair cost.
 *
 * All figures are for a set of 10 kW at 1,500 or 1,800 rpm in salt water, money in the catalogue's own; `catalogueFor` scales them.
 *
 * @module
 */

import * as z from 'zod'

const id = z
  .string()
  .regex(/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/, 'must be words of small letters joined by hyphens')
const words = z.string().min(1)
const chance = z.number().min(0).max(1)
const positive = z.number().positive()
const notNegative = z.number().min(0)

/** Low, typical and high value of a figure that varies. */
export const spreadSchema = z
  .strictObject({ low: notNegative, typical: notNegative, high: notNegative })
  .refine(({ low, typical, high }) => low <= typical && typical <= high, 'must rise from low to high')

/** Hours of work by the owner and by a paid hand. [h] */
export const hoursSchema = z.strictObject({ owner: notNegative, paid: notNegative })

/** What runs a clock: running hours, the calendar, starts, or each time the windings are linked anew. */
export const clockSchema = z.enum(['hours', 'years', 'starts', 'relinkings'])

/** How the alternator gets its field and holds its voltage; `compound` is brushless. */
export const excitationSchema = z.enum([
  'brushless-regulator',
  'brushed-regulator',
  'capacitor',
  'compound',
  'brushed-compound',
])

/** Which sets a part or a mode belongs to; a field left out does not matter. */
export const fitsSchema = z.strictObject({
  excitation: z.array(excitationSchema).optional(),
  bearings: z.literal('two').optional(),
  governor: z.enum(['mechanical', 'electronic']).optional(),
  fuelSolenoid: z.enum(['energised-to-run', 'energised-to-stop']).optional(),
  /** On some boats only: who keeps the boat says whether it is there. */
  whenFitted: z.literal(true).optional(),
})

/** Damage that a failure does elsewhere. Where a trip is named, the chance with it working is `chance · (1 − tripSaves)`. */
export const linkSchema = z.strictObject({
  to: id,
  /** The mode of the other part that is brought on; left out: plain damage. */
  brings: id.optional(),
  /** `ruins`: the other part is done for at once. `starts-defect`: it begins to fail. */
  effect: z.enum(['ruins', 'starts-defect']),
  chance,
  trip: id.optional(),
  tripSaves: chance.optional(),
  what: words,
})

/** While this failure stands unrepaired, the hazard of a mode elsewhere is multiplied. */
export const wearLinkSchema = z.strictObject({ to: id, mode: id, factor: z.number().min(1), what: words })

/** What ends a failure, and what the part is like afterwards. */
export const remedySchema = z.strictObject({
  outcome: z.enum(['cleared', 'renewed', 'reconditioned', 'patched']),
  action: words,
  /** Which of the part's prices is paid. */
  supply: z.enum(['bought', 'made', 'none']),
  /** Share of that price. */
  partShare: chance,
  /** Share of the part's hours. */
  hoursShare: chance,
  /** `reconditioned` only: share of the age that is taken away (ρ). */
  takesAway: chance.optional(),
  /** A price of the whole set that is paid besides: path under `wholeSet`. */
  wholeSetPrice: words.optional(),
})

export const modeSchema = z.strictObject({
  id,
  name: words,
  /** What a person may notice. */
  sign: words,
  fits: fitsSchema.optional(),
  clock: clockSchema,
  /** Weibull shape β of life to failure. */
  shape: positive,
  /** Weibull scale η on the clock: age by which 63 % have failed. */
  scale: positive,
  /** Log standard deviation of the scale between sets (τ). */
  scaleLogSd: notNegative,
  hidden: z.boolean().default(false),
  /** Chance that the failure stops the set. */
  stops: chance,
  /** Chance that it runs on at less than its rating. */
  derates: chance,
  dangers: z.array(id).default([]),
  /** Driven by salt: slower in fresh water. */
  salt: z.boolean().default(false),
  /** Driven by soot: faster at low load. */
  lowLoad: z.boolean().default(false),
  /** From the first that can be noticed to failure; null: no warning. */
  warning: z
    .strictObject({ clock: z.enum(['hours', 'years']), median: positive, logSd: positive })
    .nullable(),
  checks: z.array(
    z.strictObject({
      check: id,
      /** Chance that the check notices the defect. */
      detects: chance,
      /** Chance that it cries wolf; left out: as the check has it. */
      falseAlarm: chance.optional(),
    }),
  ),
  links: z.array(linkSchema).default([]),
  wearLinks: z.array(wearLinkSchema).default([]),
  remedy: remedySchema,
  otherRemedies: z.array(remedySchema).default([]),
})

export const serviceSchema = z.strictObject({
  /** Due at the earlier of the two; neither: never by rote. */
  everyHours: positive.optional(),
  everyYears: positive.optional(),
  action: words,
  /** The whole part is renewed: every mode starts anew. */
  renews: z.boolean().default(false),
  /** Modes that start anew. */
  clears: z.array(id).default([]),
  /** Checks that are done. */
  tests: z.array(id).default([]),
  opensSeal: z.boolean().default(false),
  /** Share of the part's typical price. */
  partShare: chance,
  hours: hoursSchema,
  /** Chance that the service itself leaves a fault, where it differs from the usual. */
  faultChance: chance.optional(),
})

export const partSchema = z.strictObject({
  id,
  name: words,
  alsoCalled: z.array(words).default([]),
  system: z.enum([
    'sea-water',
    'exchanger',
    'coolant',
    'exhaust',
    'fuel',
    'oil',
    'engine',
    'air',
    'drive',
    'frame',
    'starting',
    'trips',
    'speed',
    'alternator',
    'boat-power',
    'sound-case',
    'safety',
  ]),
  fits: fitsSchema.optional(),
  /**
   * Chance that a set has it of which nobody has said. Left out: every set has it, or where it is `whenFitted` none.
   * In a catalogue made for a set, left out means that it is there.
   */
  fittedChance: chance.optional(),
  access: z.strictObject({
    /** What must be open for this job alone. */
    opens: z.array(id),
    /** Access that lays it bare as well, so that the job can share it. */
    alsoReachedFrom: z.array(id).default([]),
  }),
  price: z.strictObject({
    original: spreadSchema,
    aftermarket: spreadSchema.optional(),
    made: spreadSchema.optional(),
  }),
  /** What a workshop takes besides, paid once per renewal (skimming, seats). */
  shopCharge: spreadSchema.optional(),
  /** What the third price buys. */
  madeMeans: z.enum(['made', 'rewound', 'rebuilt', 'exchanged']).optional(),
  leadDays: z.strictObject({ stocked: notNegative, ordered: notNegative, made: notNegative }),
  wrongPartChance: chance,
  /** Chance that the original can no longer be had, twenty years after the set was built. */
  goneAt20YearsChance: chance,
  /** Small things that the job needs besides. */
  alsoNeeded: z.array(words),
  /** How deep the repair goes: sets the chance that it leaves a fault. */
  work: z.enum(['minor', 'major', 'windings']),
  /** The job alone, access included. [h] */
  hours: hoursSchema,
  service: serviceSchema,
  notes: z.array(words).default([]),
  modes: z.array(modeSchema).min(1),
})

export type Spread = Readonly<z.infer<typeof spreadSchema>>
export type WorkHours = Readonly<z.infer<typeof hoursSchema>>
export type Excitation = z.infer<typeof excitationSchema>
export type Fits = Readonly<z.infer<typeof fitsSchema>>
export type Link = Readonly<z.infer<typeof linkSchema>>
export type Remedy = Readonly<z.infer<typeof remedySchema>>
export type Mode = Readonly<z.infer<typeof modeSchema>>
export type Part = Readonly<z.infer<typeof partSchema>>
