/**
 * Entries from what a person typed: on the command line, or in a row of an old paper log.
 *
 * @module
 */

import { existsSync, readFileSync } from 'node:fs'
import type { Problem } from '../catalogue/problem.js'
import type { Kind } from '../logbook/kinds.js'
import type { Photograph } from '../logbook/photographs.js'
import type { Draft } from '../store/compose.js'
import type { Store } from '../store/store.js'
import { type BodyField, fieldsOf, put, valueTyped } from './body-fields.js'

/** Fields of a kind that may be typed without their names, in this order; the last one takes what is left over. */
const bareFields: Readonly<Partial<Record<Kind, readonly string[]>>> = {
  hours: ['meter-hours'],
  'meter-changed': ['new-meter-hours'],
  fitted: ['part'],
  overrule: ['path', 'value'],
  reading: ['test'],
  'passed-over': ['about'],
  quote: ['job', 'amount'],
  bill: ['amount'],
  particulars: ['part', 'number'],
  order: ['state'],
  note: ['text'],
  activity: ['job', 'name', 'what'],
  'free-days': ['who', 'weekdays'],
  alternative: ['id', 'name'],
  load: ['id', 'is'],
  'house-rule': ['id', 'loads'],
  candidate: ['id', 'rating-kw'],
  decision: ['choice'],
  'danger-safe': ['danger'],
  letdowns: ['times'],
  complete: ['of'],
  'photograph-removed': ['sha256'],
}

/** Short ways to say what a field and its value are: `--defect-seen "weeps when hot"`. */
export const shortWays: Readonly<Partial<Record<Kind, readonly ShortWay[]>>> = {
  finding: [
    { flag: 'part', of: 'about', words: 'part[:mode] that was looked at; again for several' },
    { flag: 'nothing-seen', sets: ['verdict', 'nothing-seen'], also: 'seen', words: 'nothing was found' },
    {
      flag: 'defect-seen',
      sets: ['verdict', 'defect-seen'],
      also: 'seen',
      words: 'a defect was found, and what was seen',
    },
    {
      flag: 'unsure',
      sets: ['verdict', 'unsure'],
      also: 'seen',
      words: 'it may be a defect, and what was seen',
    },
  ],
  stop: [
    { flag: 'days', of: 'days-without-power', words: 'days without power' },
    {
      flag: 'same-day',
      sets: ['curedSameDay', true],
      words: 'cured aboard within the day; left out: it was not',
    },
  ],
}

export interface ShortWay {
  readonly flag: string
  readonly words: string
  /** The flag it stands for. */
  readonly of?: string
  /** The field it sets, and to what. */
  readonly sets?: readonly [string, unknown]
  /** The field that takes the text after it, if there is any. */
  readonly also?: string
}

export function bareFieldsOf(kind: Kind): readonly BodyField[] {
  const fields = fieldsOf(kind)
  return (bareFields[kind] ?? []).map((flag) => fields.find((field) => field.flag === flag)!)
}

/** What was typed for one entry. */
export interface Typed {
  readonly kind: Kind
  readonly bare: readonly string[]
  /** By flag without hyphens; a flag alone is `true`. */
  readonly flags: Readonly<Record<string, readonly (string | true)[]>>
  /** A body, or a part of one, as JSON. */
  readonly bodyText?: string
}

/** The body that was typed. What cannot be understood is handed on, for the check of the entry to refuse. */
export function bodyFrom({ kind, bare, flags, bodyText }: Typed): {
  readonly body: Record<string, unknown>
  readonly problems: readonly Problem[]
} {
  const problems: Problem[] = []
  const body: Record<string, unknown> = {}
  if (bodyText !== undefined) {
    const given = recordOf(bodyText)
    if (given === undefined) {
      problems.push({
        code: 'not-json',
        path: '--body',
        found: bodyText,
        allowed: 'a body as JSON: {"field": …}',
      })
    } else Object.assign(body, given)
  }
  const fields = fieldsOf(kind)
  const bares = bareFieldsOf(kind)
  bares.forEach((field, i) => {
    const texts = i === bares.length - 1 ? bare.slice(i) : bare.slice(i, i + 1)
    if (texts.length === 0) return
    const texts1 = field.takes.form === 'list' ? texts : [texts.join(' ')]
    put(body, field.path, valueTyped(field.takes, texts1))
  })
  if (bare.length > 0 && bares.length === 0) {
    const allowed = `fields by their names; see "gensettle log add ${kind} --help"`
    problems.push({ code: 'unknown-field', path: kind, found: bare.join(' '), allowed })
  }
  for (const [flag, values] of Object.entries(flags)) {
    const short = shortWays[kind]?.find((way) => way.flag === flag)
    const field = fields.find((one) => one.flag === (short?.of ?? short?.also ?? flag))
    if (short?.sets) put(body, [short.sets[0]], short.sets[1])
    const texts = values.filter((value) => value !== true)
    if (field !== undefined && (texts.length > 0 || short?.sets === undefined)) {
      put(body, field.path, valueTyped(field.takes, texts.length > 0 ? texts : ['yes']))
    }
  }
  return { body, problems }
}

/** What goes without saying in a new entry of a kind. */
export function withUsual(kind: Kind, body: Record<string, unknown>): Record<string, unknown> {
  if (kind === 'stop') return { curedSameDay: false, ...body }
  if (kind !== 'quote') return body
  const { covers } = body
  const whole = typeof covers === 'object' && covers !== null ? { covers: { parts: [], ...covers } } : {}
  return { excludes: [], ...body, ...whole }
}

/** Puts photographs into the store, each one whole, and names them in the body. */
export async function withPhotographs(
  store: Store,
  body: Record<string, unknown>,
  files: readonly string[],
): Promise<readonly Problem[]> {
  if (files.length === 0) return []
  const { keepPicture } = await import('../store/pictures.js')
  const problems: Problem[] = []
  const photographs: Photograph[] = []
  for (const file of files) {
    if (!existsSync(file)) {
      const allowed = 'a file that can be read'
      problems.push({ code: 'no-such-file', path: '--photograph', found: file, allowed })
      continue
    }
    const kept = await keepPicture(store, readFileSync(file))
    if (kept.ok) photographs.push(kept.photograph)
    else problems.push(...kept.problems.map((problem) => ({ ...problem, path: `--photograph ${file}` })))
  }
  if (photographs.length > 0) body.photographs = photographs
  return problems
}

/** A draft whose form is still to be checked. */
export function draftOf(of: {
  readonly boat: string
  readonly set: string | null
  readonly kind: Kind
  readonly from: string
  readonly until?: string | undefined
  readonly body: Record<string, unknown>
}): Draft {
  const { until, ...rest } = of
  return { ...rest, ...(until === undefined ? {} : { until }) } as unknown as Draft
}

export function recordOf(text: string): Record<string, unknown> | undefined {
  try {
    const value = JSON.parse(text) as unknown
    if (typeof value !== 'object' || value === null || Array.isArray(value)) return undefined
    return value as Record<string, unknown>
  } catch {
    return undefined
  }
}
