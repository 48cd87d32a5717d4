/**
 * The command that puts the offers for a job side by side.
 *
 * @module
 */

import { type Command, Option } from 'commander'
import { answering, command, ofSet, wholeWithin, withSeed } from './program-parts.js'

export function addJobQuotes(job: Command): void {
  withSeed(
    ofSet(
      command(job, 'quotes', 'the offers for a job on one scope, and what is still to be asked', {
        example: 'gensettle job quotes rewind-2026 --boat marram',
        data: true,
      }).argument('[job]', 'its name in the log; left out: the one in hand'),
    ),
  )
    .addOption(
      new Option('--histories <number>', 'where the price to walk away from is reckoned').argParser(
        wholeWithin(100, 1_000_000),
      ),
    )
    .action(
      answering(async (name, options) =>
        (await import('./job-quotes.js')).compareQuotes({ ...options, job: name }),
      ),
    )
}
