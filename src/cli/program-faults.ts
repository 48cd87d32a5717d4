/**
 * The commands of the faults room.
 *
 * @module
 */

import { type Command, InvalidArgumentError, Option } from 'commander'
import { answering, command, ofSet, wholeWithin } from './program-parts.js'

export function layOutFaults(faults: Command): void {
  ofCase(
    faults,
    'start',
    'begin a case; the stop questions come before anything else',
    'gensettle faults start overheats after twenty minutes --nothing-dangerous',
  )
    .argument('[about...]', 'what is wrong, in your words')
    .addOption(new Option('--idle <days>', 'days that it had stood before').argParser(wholeWithin(0, 36_500)))
    .option('--nothing-dangerous', 'none of what the stop questions ask for is so')
    .action(
      answering(async (about: readonly string[], options) =>
        (await import('./faults.js')).startCase(about, options),
      ),
    )
  ofCase(
    faults,
    'answer',
    'answer a stop question, a symptom or a check; any answer may be given anew or taken back',
    'gensettle faults answer carbon-monoxide no\n  $ gensettle faults answer little-water present\n  $ gensettle faults answer impeller vanes-gone\n  $ gensettle faults answer volts-unloaded 195\n  $ gensettle faults answer flooding cleared --because "hose renewed, bilge dry"',
  )
    .argument('<what>', 'the name of a stop question, a symptom or a check')
    .argument(
      '<answer>',
      'yes or no; present, absent or unknown; an outcome, a number or could-not; take-back',
    )
    .addOption(new Option('--against <number>', 'what a reading is held against').argParser(numberAbove0))
    .addOption(new Option('--winding <celsius>', 'how warm the winding was').argParser(anyNumber))
    .option('--because <text>', 'how a stop line was cleared, or why it is overruled')
    .action(
      answering(async (what: string, said: string, options) =>
        (await import('./faults.js')).answerCase([what, said], options),
      ),
    )
  ofCase(faults, 'next', 'how the case stands, and what to look at next', 'gensettle faults next').action(
    answering(async (options) => (await import('./faults.js')).nextOfCase(options)),
  )
  ofCase(
    faults,
    'why',
    'which answers speak for and against a fault, what looks the same, what it drags down',
    'gensettle faults why\n  $ gensettle faults why impeller-worn',
  )
    .argument('[fault]', 'a fault as "faults next" names it; left out: the first three')
    .action(
      answering(async (fault: string | undefined, options) =>
        (await import('./faults.js')).whyOfCase(fault, options),
      ),
    )
  ofCase(
    faults,
    'close',
    'close a case with what it really was; what was seen goes into the log',
    'gensettle faults close impeller-worn\n  $ gensettle faults close --was "a rag in the intake"',
  )
    .argument('[fault]', 'the fault that it proved to be, as "faults next" names it')
    .option('--was <text>', 'what it was, in your words')
    .action(
      answering(async (fault: string | undefined, options) =>
        (await import('./faults.js')).closeCase(fault, options),
      ),
    )
  ofCase(
    faults,
    'sheet',
    'the case on one sheet, for a mechanic who was not there',
    'gensettle faults sheet --write case.html',
  )
    .option('--write <file>', 'write it as one file of HTML that prints on A4 or Letter')
    .action(answering(async (options) => (await import('./faults-sheet.js')).showSheet(options)))
  ofSet(
    command(faults, 'cases', 'the cases of a set, and where the truth had stood in the list of each', {
      example: 'gensettle faults cases',
      data: true,
    }),
  ).action(answering(async (options) => (await import('./faults.js')).listCases(options)))
  command(faults, 'symptoms', 'symptoms by plain words', {
    example: 'gensettle faults symptoms smoke stings the eyes',
  })
    .argument('[words...]', 'as you would say it; left out: all')
    .action(answering(async (words: readonly string[]) => (await import('./faults.js')).showSymptoms(words)))
}

function ofCase(faults: Command, name: string, description: string, example: string): Command {
  return ofSet(command(faults, name, description, { example, data: true }), { asNoted: false }).option(
    '--case <name>',
    'the case; left out: the one that is open',
  )
}

function anyNumber(text: string): number {
  const value = Number(text)
  if (text.trim() === '' || !Number.isFinite(value)) throw new InvalidArgumentError('A number is wanted.')
  return value
}

function numberAbove0(text: string): number {
  const value = anyNumber(text)
  if (value <= 0) throw new InvalidArgumentError('A number above 0 is wanted.')
  return value
}
