/**
 * The forms of what `--json` prints, one for each `type`. Fields may come to be added; none that is told here goes.
 *
 * @module
 */

import * as z from 'zod'
import type { Summary } from '../alternatives/summary.js'
import { chance, entry, numbers, ofSet, perhaps, problem, texts, written } from './json-form-pieces.js'
import { bearing } from './json-forms-bearing.js'
import { brief } from './json-forms-brief.js'
import { faultFields } from './json-forms-faults.js'
import { jobFields } from './json-forms-job.js'
import { jobApartFields } from './json-forms-job-apart.js'
import { jobCalendarFields } from './json-forms-job-calendar.js'
import { jobQuotesFields } from './json-forms-job-quotes.js'
import { kitFields } from './json-forms-kit.js'
import { linksFields } from './json-forms-links.js'
import { lessons, lookingBackFields } from './json-forms-looking-back.js'
import { planFields } from './json-forms-plan.js'
import { openStop, proofFields } from './json-forms-proof.js'
import { sheetFields } from './json-forms-sheet.js'
import { sizeFields } from './json-forms-size.js'

const verdictOfBoat = z.object({
  name: z.string(),
  demonstration: z.boolean(),
  set: z.string(),
  verdict: z.string(),
  walkAway: z.string().nullable(),
  barred: texts,
  assumed: texts,
})

const estimate = z.object({ mean: z.number(), standardError: perhaps })
const ofMode = { part: z.string(), mode: z.string() }
const summary = {
  alternative: z.string(),
  histories: z.number(),
  cost: estimate,
  costSpread: z.object({ low: z.number(), middle: z.number(), high: z.number() }),
  worstTenth: z.number(),
  costPerYear: z.number(),
  headings: z.record(z.string(), estimate),
  daysWithoutPerYear: estimate,
  stopsPerYear: estimate,
  sameDayStopsPerYear: estimate,
  deratesPerYear: estimate,
  dangersPerYear: z.record(z.string(), z.number()),
  largestYear: z.object({ mean: z.number(), high: z.number() }),
  replacedShare: chance,
  firstFailure: z.array(z.object({ ...ofMode, share: chance })),
  failures: z.array(z.object({ ...ofMode, perYear: z.number() })),
} satisfies { readonly [Field in keyof Summary]: z.ZodType }

const span = z.object({ low: z.number(), high: z.number() })
const odds = { failing: z.array(chance), stopping: z.array(chance), failures: z.number(), cost: z.number() }
const played = {
  currency: z.string(),
  seed: z.number(),
  assumed: texts,
  refusedFigures: z.array(problem),
  caution: z.string(),
}

/** The verdict, and the price to walk away from. */
const report = {
  histories: z.number(),
  verdict: z.object({
    best: z.string(),
    next: z.string().nullable(),
    saving: z.number(),
    savingError: perhaps,
    chanceBest: chance,
    clearness: z.enum(['clear', 'leaning', 'too-close']),
  }),
  walkAway: z
    .object({
      price: z.number(),
      simulation: span,
      findingOut: span,
      quote: z.number(),
      otherwise: z.string(),
    })
    .nullable(),
}

/** The fields of each type beside `type` and `version`. */
const fields = {
  'gensettle/problems': { problems: z.array(problem).min(1) },
  'gensettle/serve': { address: z.string(), boats: z.array(verdictOfBoat), cautions: texts },
  'gensettle/demo': { boats: z.array(verdictOfBoat), cautions: texts },
  'gensettle/boats': {
    boats: z.array(
      z.object({
        boat: z.string(),
        demonstration: z.boolean(),
        sets: texts,
        entries: z.number(),
        first: z.string().optional(),
        last: z.string().optional(),
      }),
    ),
  },
  'gensettle/log-add': written,
  'gensettle/log-correct': written,
  'gensettle/log-import': {
    ...written,
    read: z.object({
      columns: z.record(z.string(), z.string()),
      otherColumns: texts,
      dateOrder: z.string(),
      decimal: z.string(),
      rows: z.number(),
      guessed: z.array(z.object({ row: z.number(), as: z.string() })),
      unknownParts: z.array(z.object({ row: z.number(), found: z.string() })),
    }),
  },
  'gensettle/log-list': {
    ...written,
    disputes: z.array(z.object({ tips: z.array(entry).min(1) })),
    troubles: z.array(problem),
  },
  'gensettle/set': {
    ...ofSet,
    asOfDay: z.number(),
    boatFacts: z.record(z.string(), z.unknown()),
    setFacts: z.record(z.string(), z.unknown()),
    terms: z.record(z.string(), z.unknown()),
    given: z.record(z.string(), z.string()),
    hours: z.object({
      points: z.array(z.object({ day: z.number(), hours: z.number() })),
      perYear: z.number().optional(),
    }),
    parts: z.array(
      z.object({
        part: z.string(),
        age: z.union([z.literal('unknown'), z.object({ years: z.number(), hours: z.number().optional() })]),
        removed: z.boolean(),
        entries: texts,
      }),
    ),
    looks: z.array(z.object({ entry: z.string(), day: z.number(), verdict: z.string() })),
    readings: z.array(z.object({ entry: z.string(), day: z.number(), test: z.string() })),
    stops: z.array(z.object({ entry: z.string(), day: z.number(), open: z.boolean() })),
    openDefects: z.array(z.object({ entry: z.string(), day: z.number() })),
    broken: z.array(z.object({ part: z.string(), entry: z.string() })),
    openDangers: z.array(z.object({ danger: z.string(), ...ofMode, madeSafeBy: z.string().optional() })),
    protections: z.array(
      z.object({ part: z.string(), fitted: z.enum(['fitted', 'not-fitted', 'not-known']) }),
    ),
    spent: z.object({
      total: z.number(),
      byYear: z.record(z.string(), z.number()),
      bySystem: z.record(z.string(), z.number()),
    }),
    openQuotes: z.array(
      z.object({ entry: z.string(), job: z.string(), withTax: z.number(), expired: z.boolean() }),
    ),
    overruns: z.array(z.object({ quote: z.string(), quoted: z.number(), billed: z.number() })),
    ownAlternatives: z.array(z.object({ id: z.string(), entry: z.string() })),
  },
  'gensettle/forecast': {
    ...ofSet,
    ...played,
    lessons,
    livesPerPart: z.number(),
    monthsAhead: numbers,
    whole: z.object({ ...odds, dangers: z.record(z.string(), z.number()) }),
    parts: z.array(
      z.object({
        part: z.string(),
        ...odds,
        knockOnCost: z.number(),
        dragsDown: z.array(z.object({ part: z.string(), perYear: z.number(), cost: z.number() })),
        defectiveNow: chance,
        failedUnnoticedNow: chance,
        halfGoneYears: perhaps,
        dangers: z.record(z.string(), z.number()),
        standardError: z.number(),
        restsOn: texts,
      }),
    ),
  },
  'gensettle/alternatives': {
    ...ofSet,
    ...played,
    horizonYears: z.number(),
    ...report,
    sayings: z.object({ verdict: z.string(), walkAway: z.string(), barred: texts }),
    alternatives: z
      .array(
        z.object({ id: z.string(), name: z.string().optional(), barred: z.string().optional(), ...summary }),
      )
      .describe('Each also has its fields in the life model, as alternatives.schema.json tells.'),
    stops: z.array(openStop),
    refusedAlternatives: z.array(problem),
    lessons,
    ...bearing,
  },
  'gensettle/brief': {
    ...ofSet,
    currency: z.string(),
    seed: z.number(),
    ...report,
    brief,
    caution: z.string(),
  },
  ...faultFields,
  ...jobFields,
  ...jobQuotesFields,
  ...jobApartFields,
  ...jobCalendarFields,
  ...kitFields,
  ...lookingBackFields,
  ...proofFields,
  ...planFields,
  ...sizeFields,
  ...linksFields,
  ...sheetFields,
  'gensettle/simulation': {
    title: z.string(),
    currency: z.string(),
    horizonYears: z.number(),
    histories: z.number(),
    seed: z.number(),
    alternatives: z.array(z.object(summary)),
    caution: z.string(),
  },
  'gensettle/export': {
    boat: z.string(),
    file: z.string(),
    entries: z.number(),
    photographs: z.number(),
    absent: z.number(),
    tellPlace: z.number().describe('Photographs in the file that tell, or may tell, where they were taken.'),
    leftOut: z.number().describe('Photographs that were left out because they would have.'),
  },
  'gensettle/pictures': {
    boat: z.string(),
    folder: z.string(),
    places: z.boolean().describe('Whether they went as they are, with whatever they tell of place and time.'),
    written: z.array(
      z.object({
        file: z.string(),
        entry: z.string(),
        sha256: z.string().describe('Of the photograph that it was made from.'),
      }),
    ),
    problems: z.array(
      z.object({ code: z.string(), path: z.string(), found: z.string(), allowed: z.string() }),
    ),
  },
  'gensettle/import': {
    boat: z.string(),
    added: z.number(),
    alreadyHeld: z.number(),
    photographs: z.number(),
  },
} as const

/** The form of an answer of any type. */
export const answerForm = z.discriminatedUnion(
  'type',
  Object.entries(fields).map(([type, shape]) =>
    z.object({ type: z.literal(type), version: z.literal(1), ...shape }),
  ) as unknown as [z.ZodObject, ...z.ZodObject[]],
)

/** JSON Schema (draft 2020-12) of everything that `--json` prints. */
export function answersJsonSchema(): Readonly<Record<string, unknown>> {
  const { $schema, ...rest } = z.toJSONSchema(answerForm, { io: 'input', reused: 'ref' })
  return {
    $comment: 'Generated from src/cli/json-forms.ts; do not edit.',
    $schema,
    title: 'What a Gensettle command prints with --json',
    ...rest,
  }
}
