/**
 * The forms of what the commands about leads print with `--json`.
 *
 * @module
 */

import * as z from 'zod'
import { chance, perhaps, texts } from './json-form-pieces.js'

const coil = z.object({ name: z.string(), start: z.string(), end: z.string(), degrees: z.number() })
const pair = z.object({ from: z.string(), to: z.string(), volts: perhaps, degrees: perhaps, ohms: perhaps })
const finding = z.object({ code: z.string(), stops: z.boolean(), says: z.string() })

/** What joined leads give. */
const linksAnswer = {
  joints: z.array(z.object({ leads: texts, lines: texts })),
  units: z
    .object({ volts: z.boolean(), amps: z.boolean(), ohms: z.boolean() })
    .describe('False: multiples of one coil’s EMF, of what it can carry, of its resistance.'),
  outlets: z.array(pair),
  everyPair: z.array(pair),
  loops: z.array(z.object({ coils: texts, volts: z.number(), amps: perhaps })),
  capacities: z.array(
    z.object({
      load: z.union([z.literal('all'), z.array(z.string()).length(2)]),
      lineAmps: z.number(),
      voltAmps: z.number(),
      share: z.number(),
      hottest: texts,
    }),
  ),
  sensed: z.object({ multiple: perhaps, drivesToV: perhaps, timesRated: perhaps }).nullable(),
  findings: z.array(finding),
  residual: z.number(),
}

const loaded = z
  .object({
    loads: z.array(
      z.object({ from: z.string(), to: z.string(), ohms: z.number(), volts: z.number(), amps: z.number() }),
    ),
    lines: z.array(z.object({ name: z.string(), amps: z.number() })),
  })
  .nullable()

const told = z.object({ source: z.string(), place: z.string(), held: z.string() })

const move = z
  .object({
    poles: perhaps,
    rpm: z.object({ now: z.number(), after: z.number() }).nullable(),
    breaker: z
      .object({
        afterKva: z.number(),
        nowAmps: z.number(),
        afterAmps: z.number(),
        nowMost: z.number(),
        afterMost: z.number(),
      })
      .nullable(),
    steps: z.array(z.object({ what: z.string(), says: z.string() })),
    aboard: z.array(
      z.object({
        load: z.string(),
        verdict: z.enum(['goes on', 'its plate decides', 'does not']),
        says: z.string(),
      }),
    ),
    instead: z.string(),
  })
  .nullable()

const record = z.object({
  entry: z.string().optional(),
  date: z.string().optional(),
  pattern: z.string().nullable(),
  joined: z.string(),
  lines: z.string(),
  sensing: z.string(),
  labels: texts,
  photographs: texts,
})
const change = z.object({ name: z.string(), found: z.string(), left: z.string() })

/** The fields of each type beside `type` and `version`. */
export const linksFields = {
  'gensettle/links': {
    pattern: z.string().nullable(),
    from: z.string().nullable().describe('Where this way of joining them comes from.'),
    joined: z.string(),
    lines: z.string(),
    coils: z.array(coil),
    ...linksAnswer,
    loaded,
    caution: z.string(),
  },
  'gensettle/link-patterns': {
    windings: z.array(
      z.object({
        id: z.string(),
        name: z.string(),
        coils: z.array(coil),
        marks: z.array(z.object({ id: z.string(), leads: texts, told })),
      }),
    ),
    patterns: z.array(
      z.object({
        id: z.string(),
        winding: z.string(),
        name: z.string(),
        joined: z.string(),
        lines: z.string(),
        told,
      }),
    ),
    supplies: z.array(
      z.object({
        id: z.string(),
        name: z.string(),
        kind: z.string(),
        volts: z.number(),
        hertz: z.number(),
      }),
    ),
  },
  'gensettle/links-wired-for': {
    supply: z.string(),
    winding: z.string(),
    ways: z.array(
      z.object({
        pattern: z.string(),
        name: z.string(),
        joined: z.string(),
        lines: z.string(),
        emfV: z.number(),
        flux: perhaps,
        fits: z.enum(['as-made', 'more-flux', 'less-flux', 'not-known']),
        lineAmps: z.number(),
        share: chance,
      }),
    ),
    move,
    caution: z.string(),
  },
  'gensettle/links-compared': {
    boat: z.string().optional(),
    set: z.string().optional(),
    asOf: z.string().optional(),
    found: record,
    left: record.nullable(),
    comparison: z
      .object({
        differences: z.array(
          z.object({ what: z.string(), lead: z.string(), found: z.string(), left: z.string() }),
        ),
        leads: z.array(z.object({ lead: z.string(), found: z.string(), left: z.string(), put: z.string() })),
        changes: z.array(change),
        stops: texts,
        lacks: texts,
        found: z.object(linksAnswer),
        left: z.object(linksAnswer),
      })
      .nullable(),
    caution: z.string(),
  },
  'gensettle/unmarked-leads': {
    winding: z.string(),
    left: z.number(),
    marks: z.array(z.object({ lead: z.string(), mark: z.string() })),
    next: z
      .object({
        join: z.array(z.string()).length(2),
        read: z.array(z.string()).length(2),
        tells: z.array(z.object({ volts: z.number(), says: z.string(), left: z.number() })),
      })
      .nullable(),
    doubtful: z.array(z.object({ joined: z.array(z.string()).length(2), volts: z.number() })),
    unequalPairs: z.array(z.object({ leads: z.array(z.string()).length(2), ohms: z.number().optional() })),
    caution: z.string(),
  },
} as const
