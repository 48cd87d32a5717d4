/**
 * The commands of proof: each test with its fields as options, and what is owed.
 *
 * @module
 */

import { type Command, Option } from 'commander'
import { signOf } from '../proof/say-figure.js'
import type { Field, ProofTest } from '../proof/test-type.js'
import { proofTests } from '../proof/tests.js'
import { answering, collect, laidOutWhenCalled, ofSet, usual } from './program-parts.js'

export function layOutProve(made: Command): void {
  usual(made, {
    example:
      'gensettle prove\n  $ gensettle prove insulation-test\n  $ gensettle prove insulation-test --winding-to-frame 1.8 --winding 18 --part stator-winding',
  }).action(answering(async () => (await import('./prove.js')).listTests()))
  for (const test of proofTests) {
    laidOutWhenCalled(made, test.id, test.name, (one) => layOutTest(one, test))
  }
}

export function layOutOwed(made: Command): void {
  ofSet(
    usual(made, {
      example: 'gensettle owed marram\n  $ gensettle owed --boat petrel --lock-out',
      data: true,
    }),
  )
    .argument('[boat]', 'the boat; left out: your only one')
    .option('--lock-out', 'with the list of locking out, and what is handed to licensed people')
    .action(
      answering(async (boat: string | undefined, options) =>
        (await import('./owed.js')).showOwed(boat, options),
      ),
    )
}

/** Options of every test, beside its fields. */
const common = new Set([
  'boat',
  'set',
  'from',
  'part',
  'by',
  'instrument',
  'remark',
  'photograph',
  'sure',
  'clear',
  'try',
  'json',
  'data',
])

function layOutTest(made: Command, test: ProofTest): void {
  usual(made, { example: `gensettle prove ${test.id}`, data: true })
    .option('--boat <name>', 'the boat; left out: your only one')
    .option('--set <name>', 'the set; left out: her only one')
    .option('--from <date>', 'when it was measured; left out: today')
    .option('--by <text>', 'who measured it')
    .option('--instrument <text>', 'with what')
    .option('--remark <text>', 'anything else about it')
    .option('--photograph <file>', 'a photograph to keep with it; again for several', collect)
    .option('--sure <code>', 'what was asked is so, by its code; again for several', collect)
    .option('--try', 'judge only, write nothing')
  if (test.danger !== 'locked out') made.option('--clear', 'the set is stopped, or you stand clear')
  if (test.parts !== undefined)
    made.option('--part <name>', `of which part: ${test.parts.join(', ')}; left out: the first`)
  for (const field of test.fields) {
    made.addOption(new Option(`--${field.id} <value>`, toldOf(field)))
  }
  made.action(
    answering(async (options) => {
      const typed: Record<string, string> = {}
      for (const option of made.options) {
        const flag = option.long?.slice(2) ?? ''
        const value: unknown = made.getOptionValue(option.attributeName())
        if (!common.has(flag) && typeof value === 'string') typed[flag] = value
      }
      return (await import('./prove.js')).prove(test, typed, options)
    }),
  )
}

function toldOf(field: Field): string {
  const takes =
    field.kind === 'choice'
      ? field.choices.map(({ id }) => id).join(', ')
      : field.units.map(signOf).filter(Boolean).join(', ')
  return `${field.name}${takes === '' ? '' : ` (${takes})`}`
}
