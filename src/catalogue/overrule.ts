/**
 * Figures of a set's catalogue looked at one by one, and set by the keeper of the boat.
 *
 * @module
 */

import * as z from 'zod'
import type { Catalogue } from './catalogue.js'
import { unitOf } from './figure-unit.js'
import { accessSchema, careSchema, checkSchema, dangerSchema, wholeSetSchema } from './file-schema.js'
import { loadRulesSchema, loadSchema, motorsSchema } from './load-schema.js'
import { offerSchema } from './offer-schema.js'
import { partSchema } from './part-schema.js'
import { mapFigures, namedPath, valueAt } from './path.js'
import { type Problem, shown } from './problem.js'
import type { Provenance } from './provenance.js'
import { referenceProblems } from './references.js'
import type { SetCatalogue } from './scale.js'
import { sizingSchema } from './sizing-schema.js'

/** A figure as the keeper of the boat has it. */
export interface Overruling {
  readonly path: string
  /** For this set, in this set's money. */
  readonly value: number
  readonly reason: string
}

export type Overruled =
  | { readonly ok: true; readonly catalogue: SetCatalogue }
  | { readonly ok: false; readonly problems: readonly Problem[] }

/** A figure with all that is to be said of it. */
export interface DescribedFigure extends Provenance {
  readonly path: string
  readonly value: number
  readonly unit: string
  /** What stands in the catalogue, before scaling or overruling. */
  readonly catalogueValue: number
}

/** Figures that have done their work when a catalogue is made for a set, or that are no matter of opinion; no limit of a test is. */
const fixed =
  /^(?:sources\.|links\.|limits\.|wholeSet\.(?:money|rating)\.|care\.(?:freshWaterFactor|twoPoleFactor)$)/

const bodySchema = z.object({
  parts: z.array(partSchema),
  access: z.array(accessSchema),
  checks: z.array(checkSchema),
  dangers: z.array(dangerSchema),
  wholeSet: wholeSetSchema,
  care: careSchema,
  loads: z.array(loadSchema),
  loadRules: loadRulesSchema,
  motors: motorsSchema,
  offers: offerSchema,
  sizing: sizingSchema,
})

/**
 * The catalogue with some figures set by the keeper of the boat. Refuses all of them, saying everything that is wrong,
 * if a path leads to no figure or a figure leaves its span. A later overruling of the same path wins. Where the typical figure of
 * a spread is set beyond its ends, these move in proportion with it, unless they are set too.
 */
export function overrule(catalogue: SetCatalogue, overrulings: readonly Overruling[]): Overruled {
  const problems = overrulings.flatMap((one) => pathProblems(catalogue, one))
  if (problems.length > 0) return { ok: false, problems }

  const values = new Map(overrulings.map((one) => [one.path, one.value]))
  const ends = endsMoved(catalogue, values)
  const body = mapFigures(bodyOf(catalogue), (value, path) => values.get(path) ?? ends.get(path) ?? value)
  const changed: SetCatalogue = {
    ...catalogue,
    ...body,
    overruled: new Map([
      ...catalogue.overruled,
      ...overrulings.map((one) => [one.path, one.reason] as const),
    ]),
  }
  const broken = [...spanProblems(body), ...referenceProblems(changed)]
  return broken.length > 0 ? { ok: false, problems: broken } : { ok: true, catalogue: changed }
}

/**
 * A figure with its unit, its origin and how it is held; undefined where the path leads to no figure.
 */
export function describeFigure(catalogue: SetCatalogue, path: string): DescribedFigure | undefined {
  const value = valueAt(catalogue, path)
  if (typeof value !== 'number') return undefined
  const catalogueValue = valueAt(catalogue.base, path)
  const reason = catalogue.overruled.get(path)
  const origin: Provenance | undefined =
    reason === undefined
      ? catalogue.origins.get(path)
      : { source: 'owner', place: reason, held: 'owner', alongside: [] }
  if (origin === undefined) return undefined
  const unit = unitOf(catalogue, path)
  return {
    ...origin,
    path,
    value,
    unit,
    catalogueValue: typeof catalogueValue === 'number' ? catalogueValue : value,
  }
}

function bodyOf(catalogue: Catalogue): z.infer<typeof bodySchema> {
  const { parts, access, checks, dangers, wholeSet, care, loads, loadRules, motors, offers, sizing } =
    catalogue
  return {
    parts: [...parts],
    access: [...access],
    checks: [...checks],
    dangers: [...dangers],
    wholeSet,
    care,
    loads: [...loads],
    loadRules,
    motors,
    offers,
    sizing,
  }
}

/** Low and high of spreads whose typical figure is set beyond them. */
function endsMoved(catalogue: Catalogue, values: ReadonlyMap<string, number>): Map<string, number> {
  const moved = new Map<string, number>()
  for (const [path, value] of values) {
    const spread = path.replace(/\.typical$/, '')
    const [low, typical, high] = ['low', 'typical', 'high'].map((end) =>
      valueAt(catalogue, `${spread}.${end}`),
    ) as (number | undefined)[]
    if (spread === path || low === undefined || high === undefined || !typical) continue
    if (value >= low && value <= high) continue
    moved.set(`${spread}.low`, (low * value) / typical)
    moved.set(`${spread}.high`, (high * value) / typical)
  }
  return moved
}

function pathProblems(catalogue: SetCatalogue, { path, value }: Overruling): Problem[] {
  if (fixed.test(path)) {
    return [{ code: 'fixed-figure', path, found: shown(value), allowed: 'the figures that follow from it' }]
  }
  if (typeof valueAt(catalogue, path) !== 'number' || !catalogue.origins.has(path)) {
    const allowed = 'the path of a figure of this set, such as parts.anode.modes.spent.scale'
    return [{ code: 'unknown-path', path, found: shown(value), allowed }]
  }
  return []
}

function spanProblems(body: z.infer<typeof bodySchema>): Problem[] {
  const parsed = bodySchema.safeParse(body)
  if (parsed.success) return []
  return parsed.error.issues.map((issue) => {
    const path = namedPath(body, issue.path)
    return { code: 'out-of-span', path, found: shown(valueAt(body, path)), allowed: issue.message }
  })
}
