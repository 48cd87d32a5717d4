/**
 * Form of what draws power aboard, of the rules by which a list of it is read, and of the tables of motors.
 *
 * @module
 */

import * as z from 'zod'
import { spreadSchema } from './part-schema.js'

const id = z
  .string()
  .regex(/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/, 'must be words of small letters joined by hyphens')
const words = z.string().min(1)
const share = z.number().min(0).max(1)
const positive = z.number().positive()
const notNegative = z.number().min(0)

/** What is going on aboard when power is drawn. */
export const occasions = ['day', 'evening', 'night', 'cooking', 'laundry', 'charging'] as const
export type Occasion = (typeof occasions)[number]

export const seasons = ['hot', 'warm', 'mild', 'cold'] as const
export type Season = (typeof seasons)[number]

/** When a load is wanted at all; `with-climate`: whenever an air conditioner or heater of the list is. */
export const seasonKinds = ['all', 'cooling', 'heating', 'with-climate'] as const

const byOccasion = z.partialRecord(z.enum(occasions), notNegative)

/** What it draws at one voltage and frequency. */
const drawSchema = z.strictObject({
  volts: positive,
  runW: positive,
  powerFactor: z.number().min(0.05).max(1),
  /** With the rotor standing still. [A] Left out: no motor that matters. */
  lockedRotorA: positive.optional(),
})

export const loadSchema = z.strictObject({
  id,
  name: words,
  group: z.enum([
    'climate',
    'hot-water',
    'cold',
    'galley',
    'laundry',
    'water',
    'safety',
    'charging',
    'hotel',
    'deck',
  ]),
  /** On a boat of 120 or 120/240 V 60 Hz, and on one of 230 V 50 Hz. */
  sixty: drawSchema,
  fifty: drawSchema,
  motor: z
    .strictObject({
      kind: z.enum([
        'capacitor-start',
        'capacitor-run',
        'capacitor-start-and-run',
        'commutator',
        'electronic',
        'electronic-drive',
      ]),
      startPowerFactor: z.number().min(0.05).max(1),
      startSeconds: positive,
      /** Starting current behind a soft starter, as a share of that without; left out: none can be fitted. */
      softStartFactor: share.optional(),
      /** The locked-rotor current is that of the motor alone; a heater beside it switches by itself. */
      besideHeater: z.literal(true).optional(),
    })
    .optional(),
  /** Share of the time on, while it is switched on. */
  duty: spreadSchema,
  runs: z.enum(['thermostat', 'steady', 'programme', 'by-hand', 'on-demand', 'charge']),
  onMinutes: positive.optional(),
  cyclesPerHourAtHalf: positive.optional(),
  /** Hours a day switched on, by occasion. */
  hours: byOccasion,
  season: z.enum(seasonKinds),
  canWait: z.enum(['not', 'a-little', 'to-another-hour', 'in-pieces', 'turned-down', 'with-climate']),
  /** Duty more for each degree outside above the usual. [1/K] */
  perDegree: notNegative.optional(),
  note: words.optional(),
})

/** How a list of loads is read: the occasions, the seasons, the weather they share, and what is not known of them. */
export const loadRulesSchema = z.strictObject({
  occasions: z.array(
    z.strictObject({
      id: z.enum(occasions),
      name: words,
      /** Length in a day. */
      hours: positive,
      /** It falls within this other one, whose loads go on meanwhile. */
      within: z.enum(occasions).optional(),
    }),
  ),
  seasons: z.array(
    z.strictObject({
      id: z.enum(seasons),
      name: words,
      outsideC: z.number(),
      coolingDuty: share,
      heatingDuty: share,
    }),
  ),
  weather: z.strictObject({
    /** Share of the days on which the weather is harder than usual for the season; on the others it is easier. */
    hardShare: share,
    /** By so much the duty of cooling and heating is then more, or less. */
    dutySwing: share,
    /** Outside temperature at which the typical duty of refrigerators holds. */
    dutyReferenceC: z.number(),
  }),
  spread: z.strictObject({ runLogSd: notNegative, lockedRotorLogSd: notNegative, hoursLogSd: notNegative }),
  softStart: z.strictObject({ usualFactor: share, againstLoadFactor: share }),
  /** Where the keeper says nothing: hours of a day with the set running, and shares of the days of use by season. */
  usualHabits: z.strictObject({
    setHours: z.record(z.enum(occasions), notNegative),
    dayShares: z.record(z.enum(seasons), share),
  }),
})

const currentsOf = z.strictObject({
  horsepower: positive,
  amps: z.array(z.strictObject({ volts: positive, amps: positive })),
})

export const motorsSchema = z.strictObject({
  /** Locked-rotor kVA per horsepower; the lower end belongs to the letter, the upper end to the next. */
  letters: z.array(
    z.strictObject({
      letter: z.string().regex(/^[A-V]$/),
      fromKVAPerHp: notNegative,
      belowKVAPerHp: positive.optional(),
    }),
  ),
  usualLetters: z.array(
    z.strictObject({ phases: z.literal([1, 3]), horsepower: positive, letter: z.string().regex(/^[A-V]$/) }),
  ),
  singlePhase: z.array(currentsOf),
  threePhase: z.array(currentsOf),
  lockedRotorTimesFullLoad: z.strictObject({ singlePhase: positive }),
  startPowerFactor: z.strictObject({ singlePhase: spreadSchema, threePhaseSmall: spreadSchema }),
})

export type CatalogueLoad = Readonly<z.infer<typeof loadSchema>>
export type LoadRules = Readonly<z.infer<typeof loadRulesSchema>>
export type Motors = Readonly<z.infer<typeof motorsSchema>>
