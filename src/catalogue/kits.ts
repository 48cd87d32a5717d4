/**
 * The files of the kits read into one value, every name in them looked up and every figure with its origin.
 *
 * @module
 */

import type * as z from 'zod'
import type { Catalogue } from './catalogue.js'
import type { Source } from './file-schema.js'
import {
  type KitQuestion,
  type KitSupplier,
  type Kits,
  kitBodySchemas,
  kitHeadSchema,
  type PartKit,
  type StandardSizes,
} from './kit-schema.js'
import type { Problem } from './problem.js'
import type { Provenance } from './provenance.js'
import { readTypedFile } from './typed-file.js'

export interface ReadKits {
  readonly kits: Kits
  /** Documents that they lean on besides those of the catalogue. */
  readonly sources: readonly Source[]
  /** Path of a figure to where it comes from. */
  readonly origins: ReadonlyMap<string, Provenance>
}

export type ParsedKits =
  | ({ readonly ok: true } & ReadKits)
  | { readonly ok: false; readonly problems: readonly Problem[] }

interface Body {
  readonly suppliers?: readonly KitSupplier[]
  readonly questions?: readonly KitQuestion[]
  readonly kits?: readonly PartKit[]
  readonly sizes?: StandardSizes
  readonly sources?: readonly Source[]
}

/** Reads the files, given by name, and says everything that is wrong at once. */
export function parseKits(
  files: Readonly<Record<string, unknown>>,
  catalogue: Pick<Catalogue, 'parts' | 'sources'>,
): ParsedKits {
  const read = Object.entries(files).map(([name, content]) =>
    readTypedFile<Body, z.infer<typeof forms.head>>({ name, content }, forms),
  )
  const problems = read.flatMap((file) => file.problems)
  if (problems.length > 0) return { ok: false, problems }
  const bodies = read.map(({ body }) => body)
  const [sizes, ...more] = bodies.flatMap((body) => (body.sizes === undefined ? [] : [body.sizes]))
  if (sizes === undefined || more.length > 0) {
    const found = `${sizes === undefined ? 0 : more.length + 1} files`
    const path = 'gensettle-standard-sizes'
    return { ok: false, problems: [{ code: 'file-count', path, found, allowed: 'exactly one file' }] }
  }
  const made: ReadKits = {
    kits: {
      suppliers: bodies.flatMap((body) => body.suppliers ?? []),
      questions: bodies.flatMap((body) => body.questions ?? []),
      kits: bodies.flatMap((body) => body.kits ?? []),
      sizes,
    },
    sources: bodies.flatMap((body) => body.sources ?? []),
    origins: new Map(read.flatMap(({ origins }) => [...origins])),
  }
  const broken = kitReferenceProblems(made, catalogue)
  return broken.length > 0 ? { ok: false, problems: broken } : { ok: true, ...made }
}

/** Names that lead nowhere or stand twice, parts without a kit, and needs of a part that no piece, stuff or question sees to. */
function kitReferenceProblems(
  { kits: { suppliers, questions, kits, sizes }, sources, origins }: ReadKits,
  catalogue: Pick<Catalogue, 'parts' | 'sources'>,
): Problem[] {
  const problems: Problem[] = []
  const say = (code: string, path: string, found: string, allowed: string) =>
    problems.push({ code, path, found, allowed })
  const ids = (list: readonly { readonly id: string }[]) => new Set(list.map(({ id }) => id))
  const known = { supplier: ids(suppliers), question: ids(questions) }
  const mustKnow = (kind: keyof typeof known, names: readonly string[], path: string) => {
    for (const found of names.filter((name) => !known[kind].has(name))) {
      say('unknown-name', path, found, `a ${kind} of the kits`)
    }
  }
  for (const kit of kits) {
    const path = `kits.${kit.part}`
    const needs = catalogue.parts.find(({ id }) => id === kit.part)?.alsoNeeded
    if (needs === undefined) say('unknown-name', path, kit.part, 'a part of the catalogue')
    mustKnow('supplier', [kit.supplier], path)
    mustKnow('question', kit.asks, path)
    for (const { id, supplier, asks } of [...kit.pieces, ...kit.ready]) {
      mustKnow('supplier', supplier === undefined ? [] : [supplier], `${path}.${id}`)
      mustKnow('question', asks, `${path}.${id}`)
    }
    for (const { need, by } of kit.settled) mustKnow('question', by, `${path}.${need}`)
    const met = new Set([...kit.pieces, ...kit.ready, ...kit.settled].map(({ need }) => need))
    for (const need of needs ?? []) {
      if (!met.has(need))
        say('missing', path, need, 'a piece, stuff or question for each that the part needs')
      met.delete(need)
    }
    for (const extra of met) say('unknown-name', path, extra, 'what the part also needs')
    for (const twice of repeats([...kit.pieces, ...kit.ready].map(({ id }) => id))) {
      say('twice', path, twice, 'each name once')
    }
  }
  for (const { id } of catalogue.parts) {
    if (!kits.some(({ part }) => part === id)) say('missing', `kits.${id}`, 'nothing', 'a kit for every part')
  }
  const lists = { suppliers, questions, kits: kits.map(({ part }) => ({ id: part })), sources }
  for (const [path, list] of Object.entries(lists)) {
    for (const twice of repeats(list.map(({ id }) => id))) say('twice', path, twice, 'each name once')
  }
  const documents = ids([...catalogue.sources, ...sources])
  for (const { is, told } of sizes.bearingMarks) {
    if (!documents.has(told.source)) say('unknown-name', `sizes.bearingMarks.${is}`, told.source, 'a source')
  }
  for (const [path, origin] of origins) {
    for (const { source } of [origin, ...origin.alongside]) {
      if (!documents.has(source)) say('unknown-name', path, source, 'a source')
    }
  }
  return problems
}

function repeats(names: readonly string[]): readonly string[] {
  return [...new Set(names.filter((name, at) => names.indexOf(name) < at))]
}

const forms = {
  head: kitHeadSchema,
  bodies: kitBodySchemas,
  plain: 'gensettle-kit-sources',
} as const
