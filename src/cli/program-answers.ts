/**
 * The commands that say what a set is, what is likely of it, and what to do.
 *
 * @module
 */

import { type Command, Option } from 'commander'
import { answering, ofSet, usual, wholeWithin, withSeed } from './program-parts.js'

const mostHistories = 1_000_000

export function layOutSet(made: Command): void {
  ofSet(
    usual(made, {
      example: 'gensettle set --boat marram',
      data: true,
    }),
  ).action(answering(async (options) => (await import('./set.js')).showSet(options)))
}

export function layOutForecast(made: Command): void {
  withSeed(
    ofSet(
      usual(made, {
        example: 'gensettle forecast --boat marram',
        data: true,
      }),
    ),
  )
    .option('--all', 'every part, not only the likeliest')
    .action(answering(async (options) => (await import('./forecast.js')).showForecast(options)))
}

export function layOutAlternatives(made: Command): void {
  withSeed(
    ofSet(
      usual(made, {
        example:
          'gensettle alternatives --boat marram\n  $ gensettle alternatives --boat marram --write list.json\n  $ gensettle alternatives --boat marram --with list.json\n  $ gensettle alternatives --boat quillback --find-out --what-changes',
        data: true,
      }),
    ),
  )
    .addOption(
      new Option('--histories <count>', 'histories of each; left out: until the verdict stands').argParser(
        wholeWithin(2, mostHistories),
      ),
    )
    .option('--write <file>', 'write the alternatives as laid out, to be edited and given to --with')
    .option('--with <file>', 'look at the alternatives of that file; nothing enters the log')
    .option('--write-model <file>', 'write the life model with the alternatives, for "gensettle simulate"')
    .option('--find-out', 'what is worth finding out before choosing')
    .option('--what-changes', 'the value of each input at which the answer changes')
    .option('--when', 'when to replace, if not now')
    .action(answering(async (options) => (await import('./alternatives.js')).showAlternatives(options)))
}

export function layOutBrief(made: Command): void {
  withSeed(
    ofSet(
      usual(made, {
        example: 'gensettle brief --boat marram\n  $ gensettle brief --boat marram --write brief.html',
        data: true,
      }),
    ),
  )
    .addOption(
      new Option('--histories <count>', 'histories of each; left out: until the verdict stands').argParser(
        wholeWithin(2, mostHistories),
      ),
    )
    .option('--write <file>', 'write it as one file of HTML that prints on two pages')
    .action(answering(async (options) => (await import('./brief.js')).showBrief(options)))
}
