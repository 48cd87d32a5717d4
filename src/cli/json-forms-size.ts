/**
 * The forms of what `loads` and `size` print with --json.
 *
 * @module
 */

import * as z from 'zod'
import { heldKinds } from '../catalogue/provenance.js'
import {
  chance,
  demandBasis,
  durationCurve,
  measuredDemand,
  numbers,
  ofSet,
  problem,
  texts,
} from './json-form-pieces.js'

const load = z.object({
  id: z.string(),
  name: z.string(),
  is: z.string().optional(),
  basis: z.enum(['catalogue', 'nameplate', 'measured']),
  volts: z.number(),
  leg: z.enum(['one', 'two', 'both']),
  watts: z.number(),
  vars: z.number(),
  start: z
    .object({
      va: z.number(),
      powerFactor: z.number(),
      softStarter: z.boolean(),
      letter: z.string().optional(),
      seconds: z.number().optional(),
    })
    .optional(),
  duty: z.record(z.string(), z.object({ easy: chance, hard: chance })),
  hours: z.record(z.string(), z.number()),
  shed: z.number().optional(),
})
const rule = z.object({ id: z.string(), loads: texts, atMost: z.number() })
const list = { loads: z.array(load), rules: z.array(rule), assumed: texts, problems: z.array(problem) }
const points = z.object({ p50: z.number(), p95: z.number(), p99: z.number(), most: z.number() })
const verdict = z.enum(['passes', 'tight', 'fails', 'cannot-tell'])
const check = z.object({
  check: z.string(),
  verdict,
  found: z.number().optional(),
  limit: z.number().optional(),
  unit: z.string(),
  by: z.number().optional(),
  occasion: z.string().optional(),
  season: z.string().optional(),
  about: z.string().optional(),
  bears: z.object({ startKVA: z.number(), setKVA: z.number() }).optional(),
  perYear: z.number().optional(),
  limitPath: z.string().optional(),
  usual: texts.optional(),
})
const where = { occasion: z.string(), hours: z.number() }

export const sizeFields = {
  'gensettle/load-search': {
    search: z.string(),
    loads: z.array(z.object({ id: z.string(), name: z.string(), group: z.string() })),
  },
  'gensettle/loads': { ...ofSet, ...list, reckoned: z.array(load).optional() },
  'gensettle/size': {
    ...ofSet,
    ...list,
    reckoned: z.array(load),
    saying: z.string(),
    basis: demandBasis,
    measured: measuredDemand.optional(),
    twoLegs: z.boolean(),
    hoursPerYear: z.number(),
    kept: chance,
    connectedKW: z.number(),
    demandFactor: z.number(),
    smallest: z.string().optional(),
    figures: z.array(
      z.object({
        ...where,
        season: z.string(),
        meanKW: z.number(),
        kW: points,
        kVA: points,
        legMeansKW: numbers,
      }),
    ),
    limits: z.array(
      z.object({
        check: z.string(),
        path: z.string(),
        title: z.string(),
        place: z.string(),
        held: z.enum(heldKinds),
      }),
    ),
    trades: z.object({
      yearsKept: z.number(),
      assumed: texts,
      choices: z.array(
        z.object({
          id: z.string(),
          ratingKW: z.number(),
          rules: z.array(z.object({ loads: texts, waitingHours: z.number() })),
          softStarters: texts,
          waitingHours: z.number(),
          overloadsLeft: z.number(),
          combinations: z.number(),
          saves: z.number().optional(),
          each: z.array(
            z.object({ loads: texts, neededWithout: z.string().optional(), saves: z.number().optional() }),
          ),
          eachStarter: z.array(
            z.object({
              load: z.string(),
              price: z.number(),
              neededWithout: z.string().optional(),
              saves: z.number().optional(),
            }),
          ),
        }),
      ),
      blocked: z.array(
        z.object({ id: z.string(), ratingKW: z.number(), blockedBy: texts, resource: z.string() }),
      ),
    }),
    curves: z.array(z.object({ ...where, kW: points, curve: durationCurve })),
    sets: z.array(
      z.object({
        set: z.object({
          id: z.string(),
          name: z.string(),
          ratingKW: z.number(),
          kVA: z.number(),
          madeForHertz: z.number().optional(),
        }),
        verdict,
        place: verdict,
        engineKW: z.number(),
        alternatorKVA: z.number(),
        engineFactor: z.number(),
        engineFactorByTest: z.number().optional(),
        alternatorFactor: z.number(),
        alternatorFactorByRise: z.number(),
        fuel: z.object({ litres: z.number(), litresPerKWh: z.number().optional(), co2Kg: z.number() }),
        lowShare: chance,
        overloadsPerYear: z.number(),
        overloadsUnshed: z.number().optional(),
        dipsPerYear: z.number(),
        checks: z.array(check),
        occasions: z.array(
          z.object({
            ...where,
            p99KW: z.number(),
            p99KVA: z.number(),
            overShare: chance,
            lowShare: chance,
            overloadsPerYear: z.number(),
            dipsPerYear: z.number(),
            checks: z.array(check),
          }),
        ),
      }),
    ),
  },
} as const
