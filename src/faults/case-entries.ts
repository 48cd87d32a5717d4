/**
 * What a closed case leaves in the log: readings, findings, and the job that is owed.
 *
 * @module
 */

import type { FaultCheck } from '../catalogue/fault-schema.js'
import type { CatalogueOwed } from '../catalogue/owed-schema.js'
import type { FaultModel } from '../catalogue/read-fault-model.js'
import type { HandOver } from '../catalogue/stop-line-schema.js'
import type { Draft } from '../logbook/draft.js'
import type { Body } from '../logbook/kinds.js'
import type { CaseBody, CaseClosed, CheckAnswer, FaultCase } from './case.js'
import { keptAs } from './proved.js'
import { type LineState, lineStates } from './stop-lines.js'

type Finding = Body<'finding'>
type Place = Finding['about'][number]
type ReadingUnit = Body<'reading'>['values'][number]['unit']

/** What is to be done, as plain data: the parts, what mends them, who takes it over, and what must be proved afterwards. */
export interface OwedJob {
  readonly parts: readonly Place[]
  readonly mend?: string
  readonly handOver?: HandOver
  /** Checks that came out wrong: to be done again until they come out right. */
  readonly testsOwed: readonly string[]
  /** Tests of the proof that are owed once its parts are renewed, in the order in which they are made. */
  readonly proofsOwed: readonly string[]
  /** Stop lines that stand open: nothing runs or is energised before they are cleared. */
  readonly openLines: readonly string[]
}

/** Where and when the entries belong. */
export interface EntryPlace {
  readonly boat: string
  readonly set: string
  readonly from: string
}

/** The entry that stands for a case from now on, in the place of the one before. It keeps the day on which the case began. */
export function draftOfCase(at: EntryPlace, body: CaseBody, before?: FaultCase): Draft {
  const from = before?.from ?? at.from
  return {
    ...at,
    kind: 'case',
    from,
    ...(body.closed === undefined || from > at.from ? {} : { until: at.from }),
    body,
    ...(before === undefined ? {} : { corrects: [before.entry] }),
  }
}

/** The readings and findings of a case that closes. A diagnosis is not among them: only what was seen, and what it proved to be. */
export function entriesOfCase(model: FaultModel, body: CaseBody, at: EntryPlace): Draft[] {
  const ofChecks = body.checks.flatMap((answer) => {
    const check = model.checks.find(({ id }) => id === answer.check)
    if (check === undefined || answer.outcome === undefined) return []
    const reading = readingOf(check, answer)
    const finding = findingOf(check, answer.outcome)
    return [
      ...(reading === undefined ? [] : [{ ...at, kind: 'reading' as const, body: reading }]),
      ...(finding === undefined ? [] : [{ ...at, kind: 'finding' as const, body: finding }]),
    ]
  })
  const proved = provedFinding(model, body.closed)
  const told = ofChecks.some(
    ({ kind, body: one }) =>
      kind === 'finding' &&
      one.verdict === 'defect-seen' &&
      proved?.about.some(({ part }) => one.about.some((other) => other.part === part)),
  )
  return [
    ...ofChecks,
    ...(proved === undefined || told ? [] : [{ ...at, kind: 'finding' as const, body: proved }]),
  ]
}

/** The job that a case leads to; none where nobody knows what it was. */
export function owedJobOf(
  model: FaultModel,
  body: CaseBody,
  owed: Pick<CatalogueOwed, 'rules' | 'stages'>,
): OwedJob | undefined {
  const { closed } = body
  if (closed === undefined || closed.as === 'not-known') return undefined
  const fault = model.faults.find(({ id }) => id === closed.fault)
  const wrong = body.checks.flatMap(({ check: id, outcome }) => {
    const check = model.checks.find((one) => one.id === id)
    return check === undefined || outcome === undefined || outcome === check.outcomes[0]!.id ? [] : [id]
  })
  const open = lineStates(model, body).filter(({ is }: LineState) => is === 'open')
  return {
    parts: fault?.parts ?? [],
    ...(fault === undefined ? {} : { mend: fault.mend }),
    ...(fault?.handOver === undefined ? {} : { handOver: fault.handOver }),
    testsOwed: wrong,
    proofsOwed: proofsAfter(fault?.parts ?? [], owed),
    openLines: open.map(({ line }) => line.id),
  }
}

function proofsAfter(
  parts: readonly Place[],
  { rules, stages }: Pick<CatalogueOwed, 'rules' | 'stages'>,
): string[] {
  const asked = new Set(
    rules
      .filter((rule) => rule.did.includes('renewed') && parts.some(({ part }) => rule.parts.includes(part)))
      .flatMap(({ tests }) => tests),
  )
  return stages.flatMap(({ tests }) => tests).filter((test) => asked.has(test))
}

/** The reading of a check with a number. One that is a test of the proof goes by its names, so that all read it alike. */
function readingOf(check: FaultCheck, answer: CheckAnswer): Body<'reading'> | undefined {
  const { value, against, windingC } = answer
  if (value === undefined || check.reading === undefined) return undefined
  const unit = check.reading.unit as ReadingUnit
  const part = check.outcomes.find(({ finds }) => finds !== undefined)?.finds?.part
  const { test, field } = keptAs(check.id)
  return {
    test,
    ...(part === undefined ? {} : { part }),
    values: [
      { name: field, value, unit },
      ...(against === undefined ? [] : [{ name: 'against', value: against, unit }]),
    ],
    ...(windingC === undefined
      ? {}
      : { conditions: [{ name: 'winding', value: windingC, unit: 'C' as const }] }),
  }
}

/** The usual outcome of a look at parts is that nothing was seen on them; another that shows one is a defect of it. */
function findingOf(check: FaultCheck, outcome: string): Finding | undefined {
  const by = check.by === undefined ? {} : { check: check.by }
  const [usual] = check.outcomes
  const found = check.outcomes.find(({ id }) => id === outcome)
  if (found === undefined || check.by === undefined) return undefined
  if (found.id === usual!.id) {
    const about = eachOnce(check.outcomes.flatMap(({ finds }) => (finds === undefined ? [] : [finds])))
    return about.length === 0 ? undefined : { about, verdict: 'nothing-seen', seen: found.name, ...by }
  }
  if (found.finds === undefined) return undefined
  return { about: [found.finds], verdict: 'defect-seen', seen: found.name, ...by }
}

/** What it proved to be, where that is one of the list and sits in one place; of several, nobody said which. */
function provedFinding(model: FaultModel, closed: CaseClosed | undefined): Finding | undefined {
  const fault = closed?.as === 'listed' ? model.faults.find(({ id }) => id === closed.fault) : undefined
  if (fault === undefined || fault.parts.length === 0) return undefined
  return { about: [...fault.parts], verdict: 'defect-seen', seen: closed?.was ?? fault.name }
}

function eachOnce(places: readonly Place[]): Place[] {
  const seen = new Set<string>()
  return places.filter(({ part, mode }) => {
    const key = `${part} ${mode}`
    return seen.size !== seen.add(key).size
  })
}
