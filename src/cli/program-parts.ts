/**
 * What commands are made of: the options that all have, and how their answer is printed.
 *
 * @module
 */

import { type Command, InvalidArgumentError, Option } from 'commander'
import { demandBases } from '../sizing/demand-basis.js'
import { print, type Result } from './result.js'

export interface CommandTold {
  readonly example: string
  /** It opens the owner's log. */
  readonly data?: boolean
}

/** What every command has: --json, an example, and --data where it opens the owner's log. */
export function usual(made: Command, { example, data = false }: CommandTold): Command {
  made
    .option('--json', 'print the answer as JSON; its form is told in docs/command-line.md')
    .addHelpText('after', `\nExample:\n  $ ${example}`)
  return data ? made.option('--data <folder>', 'the data folder; left out: your own') : made
}

/** A command with what every command has. */
export function command(parent: Command, name: string, description: string, told: CommandTold): Command {
  return usual(parent.command(name).description(description), told)
}

/** Lays out what a command takes and does. */
export type LayOut = (made: Command) => void | Promise<void>

/** A command that is laid out when it is called, so that what the others need is not loaded. */
export function laidOutWhenCalled(parent: Command, name: string, description: string, layOut: LayOut): void {
  const made = parent.command(name).description(description)
  parent.hook('preSubcommand', (_parent, called) => (called === made ? layOut(made) : undefined))
}

/** --seed */
export function withSeed(made: Command): Command {
  const most = 0xffffffff
  return made.addOption(
    new Option('--seed <number>', 'the same seed gives the same histories')
      .default(1)
      .argParser(wholeWithin(0, most)),
  )
}

/** --boat, --set, --as-of and, where it can be asked, --as-noted */
export function ofSet(made: Command, { asNoted = true }: { readonly asNoted?: boolean } = {}): Command {
  made
    .option('--boat <name>', 'the boat; left out: your only one')
    .option('--set <name>', 'the set; left out: her only one')
    .option('--as-of <day>', 'as of that day; left out: today')
  return asNoted
    ? made.option('--as-noted', 'with what was noted by that day; entries typed in later are not used')
    : made
}

/** --by */
export function demandBasis(): Option {
  return new Option(
    '--by <which>',
    'what tells what is drawn; left out: the list, corrected by the latest recording where there is one',
  ).choices([...demandBases])
}

/** A whole number from `least` to `most`. */
export function wholeWithin(least: number, most: number) {
  return (text: string): number => {
    const value = Number(text)
    if (!/^\d+$/.test(text) || value < least || value > most) {
      throw new InvalidArgumentError(`A whole number from ${least} to ${most} is wanted.`)
    }
    return value
  }
}

/** Gathers an option that may be given several times. */
export function collect(text: string, before: unknown): readonly string[] {
  return [...(Array.isArray(before) ? before : []), text]
}

// biome-ignore lint/suspicious/noExplicitAny: commander hands on whatever arguments and options the command declared.
type Any = any

/** An action that prints what the command comes to and sets the exit status. */
export function answering(run: (...args: Any[]) => Promise<Result>) {
  return async (...args: Any[]): Promise<void> => {
    const made = args.at(-1) as Command
    process.exitCode = print(await run(...args.slice(0, -1)), made.opts())
  }
}
