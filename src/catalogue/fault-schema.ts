/**
 * Form of what is known of faults: what goes wrong, how it shows, which look tells it, and what stops the work.
 *
 * @module
 */

import * as z from 'zod'
import { headSchema, sourceSchema } from './file-schema.js'
import { fitsSchema } from './part-schema.js'
import { handOvers } from './stop-line-schema.js'

const id = z
  .string()
  .regex(/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/, 'must be words of small letters joined by hyphens')
const words = z.string().min(1)
const chance = z.number().gt(0).lt(1)
const positive = z.number().positive()
const notNegative = z.number().min(0)
const place = z.strictObject({ part: id, mode: id.optional() })

const handOver = z.enum(handOvers)

/** What runs the clock that a fault comes by; those `-since-service` start anew when the part is renewed or serviced. */
const faultClocks = [
  'hours',
  'years',
  'starts',
  'hours-since-service',
  'years-since-service',
  'days-idle',
] as const

export const faultSchema = z.strictObject({
  id,
  name: words,
  group: id,
  /** How often it is the cause, beside the others; at the clock's reference age. */
  weight: positive,
  clock: z.strictObject({ of: z.enum(faultClocks), reference: positive, power: positive }).optional(),
  fits: fitsSchema.optional(),
  /** Chance that it brings on a symptom. */
  symptoms: z.record(id, chance),
  stopLines: z.array(id),
  /** Faults that it brings on when the set is run on. */
  dragsDown: z.array(id),
  /** Where it sits; none: not in the set. */
  parts: z.array(place),
  /** Work that is known to leave it behind. */
  afterWork: z.array(z.strictObject({ part: id, did: z.array(words).min(1) })).default([]),
  mend: words,
  handOver: handOver.optional(),
})

export const symptomSchema = z.strictObject({
  id,
  name: words,
  /** How people say it. */
  words: z.array(words).min(1),
  look: words.optional(),
  /** Chance that it is there with none of its faults. */
  leak: chance,
})

/** Risks of a look, from standing and isolated to live. */
export const checkRisks = ['none', 'running', 'fuel', 'energised', 'lifting'] as const

const outcomeSchema = z.strictObject({
  id,
  name: words,
  /** What is then known of a part: it is defective, or with a mode, in that mode. */
  finds: place.optional(),
})

/** Bands of a number, rising; the last has no end. */
const bandSchema = z.strictObject({
  outcome: id,
  upTo: positive.optional(),
  /** `share`: in per cent of what it is held against. */
  of: z.enum(['unit', 'share']).optional(),
})

export const faultCheckSchema = z.strictObject({
  id,
  name: words,
  how: words,
  tools: z.array(words),
  risk: z.enum(checkRisks),
  minutes: positive,
  usd: notNegative,
  clearFirst: z.array(id),
  /** Symptoms that it measures again. */
  remeasures: z.array(id),
  /** The usual one first. */
  outcomes: z.array(outcomeSchema).min(2),
  /** Chance of each outcome where the fault has nothing to do with it. */
  usual: z.record(id, chance),
  /** The same where it has, by fault. */
  given: z.record(id, z.record(id, chance)),
  /** The look of the catalogue by which a finding is entered. */
  by: id.optional(),
  /** Where a number tells the outcome. */
  reading: z
    .strictObject({
      what: words,
      unit: words,
      /** A second number that shares are taken of, asked with the first. */
      against: words.optional(),
      /** Shares are taken of what the set is rated at. */
      rated: z.enum(['volts', 'hertz']).optional(),
      /** Brought to 40 °C of the winding before it is judged. */
      corrected: z.literal('winding').optional(),
      bands: z.array(bandSchema).min(2),
    })
    .optional(),
})

export const ruleSchema = z.strictObject({
  /** Power of the likelihood: pieces of evidence are not independent. */
  temper: chance,
  /** Power of a symptom that a check has measured again. */
  remeasured: chance,
  pair: chance,
  dragLift: positive,
  clockLeast: positive,
  clockMost: positive,
  /** Put to the minutes of every look. [min] */
  lookMinutes: notNegative,
  usdPerHour: positive,
  riskFactor: z.strictObject(
    Object.fromEntries(checkRisks.map((risk) => [risk, positive])) as Record<
      (typeof checkRisks)[number],
      z.ZodNumber
    >,
  ),
  /** Closed cases that the weights of the catalogue count as. */
  closedCases: positive,
  /** Work just done multiplies what it is known to leave behind by this, fading with hours run or days gone by. */
  workFactor: positive,
  workHours: positive,
  workDays: positive,
  /** Power of what the forecast says of a part, beside the usual. */
  forecastPower: chance,
  /** A repair of what has no part in the catalogue, and one that is handed over. [USD] */
  repairUsd: positive,
  handOverUsd: positive,
})

/** The head of each file of the fault model. */
export const faultHeadSchema = headSchema.extend({
  type: z.enum([
    'gensettle-faults',
    'gensettle-symptoms',
    'gensettle-fault-checks',
    'gensettle-fault-rule',
    'gensettle-fault-sources',
  ]),
})

/** What stands beneath the head, by the file's type. */
export const faultBodySchemas = {
  'gensettle-faults': z.strictObject({ faults: z.array(faultSchema) }),
  'gensettle-symptoms': z.strictObject({ symptoms: z.array(symptomSchema) }),
  'gensettle-fault-checks': z.strictObject({ checks: z.array(faultCheckSchema) }),
  'gensettle-fault-rule': z.strictObject({ rule: ruleSchema }),
  'gensettle-fault-sources': z.strictObject({ sources: z.array(sourceSchema) }),
} as const

export type Fault = Readonly<z.infer<typeof faultSchema>>
export type Symptom = Readonly<z.infer<typeof symptomSchema>>
export type FaultCheck = Readonly<z.infer<typeof faultCheckSchema>>
export type FaultRule = Readonly<z.infer<typeof ruleSchema>>
