/**
 * The commands of the job in hand.
 *
 * @module
 */

import { type Command, InvalidArgumentError, Option } from 'commander'
import { answering, command, ofSet, withSeed } from './program-parts.js'

export function addJob(program: Command): void {
  const job = program.command('job').description('a job that is decided: what belongs with it')
  withSeed(
    ofSet(
      command(job, 'plan', 'which further parts to renew while the set is open for a job, and why', {
        example: 'gensettle job plan --boat marram --alternative mend --most-money 500',
        data: true,
      }),
    ),
  )
    .option(
      '--alternative <id>',
      'the job, as "alternatives --json" names it; left out: the best that keeps the set',
    )
    .addOption(new Option('--most-money <amount>', 'for all that is added').argParser(fromNought))
    .addOption(new Option('--most-days <days>', 'of work for all that is added').argParser(fromNought))
    .action(answering(async (options) => (await import('./job.js')).planJob(options)))
}

function fromNought(text: string): number {
  const value = Number(text)
  if (!/^\d+(\.\d+)?$/.test(text)) throw new InvalidArgumentError('A number from 0 on is wanted.')
  return value
}
