/**
 * `gensettle prove`: the tests, what each asks for, and the verdict of one that was made.
 *
 * @module
 */

import type { Problem } from '../catalogue/problem.js'
import { currentEntries } from '../logbook/current.js'
import type { Entry } from '../logbook/kinds.js'
import { limitsOf } from '../proof/limits.js'
import { linesBarring, sayBarring } from '../proof/owed.js'
import { readingBodyOf, typedFor } from '../proof/reading-body.js'
import { sayFigure, signOf } from '../proof/say-figure.js'
import type { Field, Judgement, ProofTest, Readings } from '../proof/test-type.js'
import { proofTests } from '../proof/tests.js'
import { registerOf } from '../register/register.js'
import { compose } from '../store/compose.js'
import type { Store } from '../store/store.js'
import { draftOf, withPhotographs } from './drafts.js'
import { boatToWrite, setToWrite } from './log.js'
import { withSet } from './of-set.js'
import { type DataOption, withStore } from './opened.js'
import { owedOfSet } from './owed.js'
import { shippedCatalogue, today } from './places.js'
import { type Result, refuse } from './result.js'
import { tableText } from './table.js'

export interface ProveOptions extends DataOption {
  readonly boat?: string
  readonly set?: string
  readonly from?: string
  readonly part?: string
  readonly by?: string
  readonly instrument?: string
  readonly remark?: string
  readonly photograph?: readonly string[]
  readonly sure?: readonly string[]
  /** The set is stopped, or the person stands clear. */
  readonly clear?: boolean
  /** Judge, and write nothing. */
  readonly try?: boolean
}

/** All tests, in the order in which they are made. */
export function listTests(): Result {
  const rows = proofTests.map(({ id, name, danger }) => [id, name, danger])
  return {
    ok: true,
    json: {
      type: 'gensettle/tests',
      version: 1,
      tests: proofTests.map(({ id, name, purpose, danger }) => ({ id, name, purpose, danger })),
    },
    text: [
      tableText([{ head: 'test' }, { head: 'what it is', wrap: 60 }, { head: 'taken' }], rows),
      '',
      '"gensettle prove TEST" says every step of one and what it asks for. Licensed people and local rules come first.',
    ].join('\n'),
  }
}

/** `prove TEST`: without readings its steps, with them the verdict, written into the log. */
export function prove(
  test: ProofTest,
  typed: Readonly<Record<string, string>>,
  options: ProveOptions,
): Promise<Result> | Result {
  if (Object.keys(typed).length === 0) {
    return test.plan === undefined || options.boat === undefined ? showTest(test) : showTestOf(test, options)
  }
  const { readings, problems } = readingsTyped(test, typed, options.sure ?? [])
  if (test.danger !== 'locked out' && options.clear !== true) {
    problems.push({
      code: 'missing',
      path: '--clear',
      found: 'nothing',
      allowed: `your word that the set is stopped or that you stand clear: read the steps with "gensettle prove ${test.id}", take the readings, stop, and only then type them with --clear`,
    })
  }
  if (options.part !== undefined && !(test.parts ?? []).includes(options.part)) {
    const allowed =
      test.parts === undefined ? 'nothing: it is of the whole set' : `one of: ${test.parts.join(', ')}`
    problems.push({ code: 'unknown-part', path: '--part', found: options.part, allowed })
  }
  if (problems.length > 0) return refuse(...problems)
  if (options.try) {
    return judged(test, {
      judgement: test.judge(readings, limitsOf(shippedCatalogue())),
      waitsFor: [],
      entry: null,
    })
  }
  return withStore(options, (store) => proveAndWrite(store, test, readings, options))
}

function readingsTyped(test: ProofTest, typed: Readonly<Record<string, string>>, sure: readonly string[]) {
  const problems: Problem[] = []
  const readings: Record<string, number | string> = {}
  for (const field of test.fields) {
    const text = typed[field.id]
    if (text === undefined) continue
    const read = typedFor(field, text)
    if (read.ok) readings[field.id] = read.value
    else problems.push({ code: 'wrong-form', path: `--${field.id}`, found: text, allowed: read.allowed })
  }
  for (const code of sure) readings[`sure-${code}`] = 'yes'
  return { readings, problems }
}

async function proveAndWrite(
  store: Store,
  test: ProofTest,
  readings: Readings,
  options: ProveOptions,
): Promise<Result> {
  const boat = boatToWrite(store, options.boat)
  const set = setToWrite(store, {
    kind: 'reading',
    boat: boat.ok ? boat.name : undefined,
    asked: options.set,
  })
  const part = options.part ?? test.parts?.[0]
  const body: Record<string, unknown> = {
    ...readingBodyOf(test, readings, {
      ...(part === undefined ? {} : { part }),
      ...(options.by === undefined ? {} : { testedBy: options.by }),
      ...(options.instrument === undefined ? {} : { instrument: options.instrument }),
      ...(options.remark === undefined ? {} : { remark: options.remark }),
    }),
  }
  const problems = [
    ...(boat.ok ? [] : boat.problems),
    ...(set.ok ? [] : set.problems),
    ...(await withPhotographs(store, body, options.photograph ?? [])),
  ]
  if (!boat.ok || !set.ok || set.set === null || problems.length > 0) return refuse(...problems)
  const draft = draftOf({
    boat: boat.name,
    set: set.set,
    kind: 'reading',
    from: options.from ?? today(),
    body,
  })
  const entries = compose(store, [draft], new Date())
  const appended = store.append(entries)
  if (!appended.ok) return appended
  const read = store.read(boat.name)
  if (!read.ok) return read
  return judgedOfLog(test, { entry: entries[0]!, all: read.entries, boat: boat.name, set: set.set })
}

/** The verdict as the log gives it, with what the set tells filled in and what stands in the way. */
function judgedOfLog(
  test: ProofTest,
  of: { readonly entry: Entry; readonly all: readonly Entry[]; readonly boat: string; readonly set: string },
): Result {
  const { boat, set, entry } = of
  const entries = currentEntries(of.all).entries
  const asOf = [today(), entry.until].sort().at(-1)!
  const { owed, result } = owedOfSet(
    { entries, boat, set, asOf: asOf.length === 10 ? asOf : today() },
    entry.id,
  )
  const mine = owed.tests.find((one) => one.test === test.id)
  if (result === undefined)
    return judged(test, { judgement: test.judge({}, limitsOf(shippedCatalogue())), waitsFor: [], entry })
  const { lines } = owed
  const barring = linesBarring(test.id, { lines, owed: shippedCatalogue().owed })
  const waitsFor = mine?.waitsFor ?? barring.map(sayBarring)
  return judged(test, { judgement: result.judgement, waitsFor, entry })
}

function judged(
  test: ProofTest,
  of: {
    readonly judgement: Judgement
    readonly waitsFor: readonly string[]
    readonly entry: Entry | null
  },
): Result {
  const { judgement, waitsFor, entry } = of
  return {
    ok: true,
    json: { type: 'gensettle/prove', version: 1, test: test.id, entry, judgement, waitsFor },
    text: [
      ...judgementLines(test, judgement),
      ...(waitsFor.length > 0
        ? ['', 'Came too soon: it waits for', ...waitsFor.map((one) => `  ${one}`)]
        : []),
      '',
      entry === null
        ? 'Tried only: nothing was written.'
        : `Written to the log of ${entry.boat} (${entry.id}).`,
    ].join('\n'),
  }
}

const heads = { pass: 'Passes', fail: 'FAILS', 'cannot tell': 'Cannot tell' } as const

/** A judgement in lines. */
export function judgementLines(test: ProofTest, judgement: Judgement): string[] {
  const { verdict, band, says, worked, limits, next, asks } = judgement
  const name = test.bands.find(({ id }) => id === band)?.name
  return [
    `${heads[verdict]}${name === undefined ? '' : `: ${name}`}`,
    ...(asks.length === 0 ? [says] : []),
    ...asks.map(
      ({ code, question, confirmable }) =>
        `Asked: ${question}${confirmable ? ` (it is so: --sure ${code})` : ''}`,
    ),
    ...worked.map((one) => `  ${one.name}: ${sayFigure(one.value, one.unit)}`),
    ...limits.map(
      (limit) =>
        `  limit: ${limit.name}, ${sayFigure(limit.value, limit.unit)} (${limit.source}, ${limit.place}; ${limit.held})`,
    ),
    `Next: ${next}`,
  ]
}

/** With what its steps come to for the set. */
function showTestOf(test: ProofTest, options: ProveOptions): Promise<Result> {
  return withSet(options, ({ entries, boat, set, asOf }) => {
    const { setFacts } = registerOf({ entries, boat, set, asOf, catalogue: shippedCatalogue() })
    return showTest(test, setFacts.ratingKw)
  })
}

function showTest(test: ProofTest, ratingKw?: number): Result {
  const catalogue = shippedCatalogue()
  const plan = ratingKw === undefined ? [] : (test.plan?.(ratingKw, limitsOf(catalogue)) ?? [])
  const cautions = test.dangers.flatMap((id) => catalogue.dangers.find((one) => one.id === id) ?? [])
  return {
    ok: true,
    json: {
      type: 'gensettle/test',
      version: 1,
      ...shownTest(test),
      plan,
      cautions: cautions.map(({ name, caution }) => ({ name, caution })),
    },
    text: [
      test.name,
      test.purpose,
      'Licensed people and local rules come first.',
      `With: ${test.instrument}. Taken: ${test.danger}.`,
      '',
      ...cautions.map(({ name, caution }) => `${name}: ${caution}`),
      '',
      'Every step, to be read before the first is done:',
      ...test.steps.map((step, i) => `  ${i + 1}. ${step}`),
      ...(plan.length === 0 ? [] : ['', `For ${ratingKw} kW:`, ...plan.map((line) => `  ${line}`)]),
      ...(test.plan !== undefined && plan.length === 0
        ? ['', 'In kilowatts for your set: with --boat and its name.']
        : []),
      '',
      ...(test.danger === 'locked out'
        ? []
        : ['Type nothing while it runs: stop, or stand clear, then say so with --clear.', '']),
      'What it asks for:',
      ...test.fields.filter(({ further }) => !further).map(fieldLine),
      ...(test.fields.some(({ further }) => further)
        ? ['And to have more worked out:', ...test.fields.filter(({ further }) => further).map(fieldLine)]
        : []),
    ].join('\n'),
  }
}

function shownTest({ judge: _, plan: __, ...test }: ProofTest) {
  return test
}

function fieldLine(field: Field): string {
  const takes =
    field.kind === 'choice'
      ? field.choices.map(({ id }) => id).join(' or ')
      : field.units.map((unit) => signOf(unit)).join(', ')
  return `  --${field.id}  ${field.name}${takes === '' ? '' : ` [${takes}]`}${field.needed ? '' : ', may be left out'}`
}
