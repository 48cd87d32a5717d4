/**
 * The proof report: every test that was made with its limit and source, who made it, and what stands open.
 *
 * @module
 */

import type { Limit } from './limits.js'
import type { OpenLine } from './open-lines.js'
import type { Owed, OwedTest } from './owed.js'
import type { ProofResult } from './results.js'
import { sayFigure } from './say-figure.js'
import type { Field, Readings } from './test-type.js'
import { proofTestOf, proofTests } from './tests.js'

/** One test of the report. */
export interface ReportRow {
  readonly result: ProofResult
  readonly name: string
  /** What was read, field by field. */
  readonly read: readonly string[]
  readonly limits: readonly Limit[]
}

export interface ProofReport {
  readonly rows: readonly ReportRow[]
  /** Sentences on all that is not proved: open lines, failed, doubtful, owed, passed over. */
  readonly open: readonly string[]
  /** Who tested, and with what, each once. */
  readonly testers: readonly string[]
  readonly instruments: readonly string[]
}

/** Gathers what is owed and what was made, in the order in which tests are made. */
export function reportOf(owed: Owed): ProofReport {
  const place = new Map(proofTests.map(({ id }, at) => [id, at]))
  const rows = [...owed.results]
    .sort((a, b) => (place.get(a.test) ?? 0) - (place.get(b.test) ?? 0) || a.order - b.order)
    .map((result) => ({
      result,
      name: proofTestOf(result.test)?.name ?? result.test,
      read: readIn(result),
      limits: result.judgement.limits,
    }))
  return {
    rows,
    open: [...owed.lines.map(lineOf), ...owed.tests.flatMap(openOf)],
    testers: once(owed.results.map(({ testedBy }) => testedBy)),
    instruments: once(owed.results.map(({ instrument }) => instrument)),
  }
}

function lineOf({ hazard, why, passedOver }: OpenLine): string {
  return passedOver === undefined
    ? `Stop line, ${hazard}: ${why}`
    : `Stop line passed over on ${passedOver.date}, ${hazard}: ${why} The reason: ${passedOver.because}`
}

function openOf({ name, part, is, results, passedOver, because }: OwedTest): string[] {
  const of = part === undefined ? name : `${name}, ${part.replaceAll('-', ' ')}`
  if (is === 'passed') return []
  if (is === 'passed over') return [`Passed over: ${of}. ${passedOver?.because ?? ''}`]
  if (is === 'owed') return [`Owed: ${of}. ${because[0]?.why ?? ''}`]
  const says = results.find(({ judgement }) => judgement.verdict !== 'pass')?.judgement.says ?? ''
  return [`${is === 'failed' ? 'Failed' : 'Cannot be told'}: ${of}. ${says}`]
}

function readIn({ test, readings }: ProofResult): string[] {
  return (proofTestOf(test)?.fields ?? []).flatMap((field) => saidOf(field, readings))
}

function saidOf(field: Field, readings: Readings): string[] {
  const value = readings[field.id]
  if (value === undefined) return []
  if (field.kind === 'number')
    return typeof value === 'number' ? [`${field.name}: ${sayFigure(value, field.unit)}`] : []
  const name = field.choices.find(({ id }) => id === value)?.name
  return name === undefined ? [] : [`${field.name.replace(/\?$/, '')}: ${name}`]
}

function once(names: readonly (string | undefined)[]): string[] {
  return [...new Set(names.filter((name) => name !== undefined))]
}
