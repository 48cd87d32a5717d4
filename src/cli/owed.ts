/**
 * `gensettle owed`: tests that are owed, in their order, and what bars each step.
 *
 * @module
 */

import type { Entry } from '../logbook/kinds.js'
import { limitsOf } from '../proof/limits.js'
import type { OpenLine } from '../proof/open-lines.js'
import { type Owed, type OwedTest, owedOf } from '../proof/owed.js'
import type { ProofResult } from '../proof/results.js'
import { registerOf } from '../register/register.js'
import { type SetOptions, withSet } from './of-set.js'
import { shippedCatalogue } from './places.js'
import type { Result } from './result.js'

interface OfSet {
  readonly entries: readonly Entry[]
  readonly boat: string
  readonly set: string
  readonly asOf: string
}

/** What is owed of a set; and of one entry, what it came to. */
export function owedOfSet(
  of: OfSet,
  entry?: string,
): { readonly owed: Owed; readonly result: ProofResult | undefined } {
  const catalogue = shippedCatalogue()
  const register = registerOf({ ...of, catalogue })
  const owed = owedOf({
    ...catalogue,
    entries: of.entries,
    register,
    limits: limitsOf(catalogue),
  })
  return { owed, result: owed.results.find((one) => one.entry === entry) }
}

export interface OwedOptions extends SetOptions {
  /** With the checklist of locking out, and what is handed over. */
  readonly lockOut?: boolean
}

export function showOwed(boatNamed: string | undefined, options: OwedOptions): Promise<Result> {
  const boatOption = options.boat ?? boatNamed
  return withSet(
    { ...options, ...(boatOption === undefined ? {} : { boat: boatOption }) },
    ({ entries, boat, set, asOf }) => {
      const { owed } = owedOfSet({ entries, boat, set, asOf })
      const { lockOut, handOver } = shippedCatalogue().owed
      return {
        ok: true,
        json: { type: 'gensettle/owed', version: 1, boat, set, asOf, ...owed, lockOut, handOver },
        text: [
          `${boat}, ${set}, as of ${asOf}. Licensed people and local rules come first.`,
          ...linesText(owed.lines),
          ...testsText(owed.tests),
          '',
          ...owed.gates.map(({ name, says }) => `${name}: ${says}`),
          ...(options.lockOut
            ? ['', 'Locking out, in this order:', ...lockOut.map((step, i) => `  [ ] ${i + 1}. ${step}`)]
            : []),
          ...(options.lockOut
            ? ['', 'Handed to licensed people:', ...handOver.map((line) => `  ${line}`)]
            : []),
          '',
          'Silence of the log proves nothing.',
        ].join('\n'),
      }
    },
  )
}

function linesText(lines: readonly OpenLine[]): string[] {
  return lines.flatMap(({ line, hazard, why, act, clearWhen, never, passedOver, licensed }) => [
    '',
    `${passedOver === undefined ? 'STOP' : 'Passed over'}: ${hazard} (${line})`,
    `  ${why}`,
    `  ${act}`,
    `  Clear when: ${clearWhen.join('; ')}.`,
    ...(licensed ? ['  A licensed marine electrician, where one careful look does not settle it.'] : []),
    ...(passedOver === undefined
      ? [
          never
            ? '  No reason passes it over.'
            : `  Passed over only with a reason that stays: gensettle log add passed-over ${line} --because …`,
        ]
      : [`  Because: ${passedOver.because} (${passedOver.date})`]),
  ])
}

function testsText(tests: readonly OwedTest[]): string[] {
  if (tests.length === 0) return ['', 'No test is owed: the log tells of no work that asks for one.']
  const stages = [...new Set(tests.map(({ stage }) => stage))]
  return stages.flatMap((stage) => [
    '',
    `${stage}:`,
    ...tests.filter((one) => one.stage === stage).flatMap(testText),
  ])
}

function testText({ test, name, part, is, because, waitsFor, passedOver, results }: OwedTest): string[] {
  const works = [...new Set(because.map((one) => `${one.part ?? 'what was found on'} ${one.date}`))].join(
    ', ',
  )
  return [
    `  ${is.padEnd(11)}  ${test}${part === undefined ? '' : ` --part ${part}`}  ${name}`,
    ...(is === 'owed'
      ? [`               after ${works}`]
      : results.map(({ judgement, date }) => `               ${date}: ${judgement.says}`)),
    ...(passedOver === undefined ? [] : [`               because: ${passedOver.because}`]),
    ...(waitsFor.length === 0 || is === 'passed'
      ? []
      : [
          `               waits for ${waitsFor[0]}${waitsFor.length > 1 ? ` and ${waitsFor.length - 1} more` : ''}`,
        ]),
  ]
}
