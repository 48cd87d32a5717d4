/**
 * The commands of the job in hand.
 *
 * @module
 */

import { type Command, InvalidArgumentError, Option } from 'commander'
import { addJobApart } from './program-job-apart.js'
import { addJobCalendar } from './program-job-calendar.js'
import { addJobKit } from './program-job-kit.js'
import { addJobQuotes } from './program-job-quotes.js'
import { answering, command, ofSet, withSeed } from './program-parts.js'

export function layOutJob(job: Command): void {
  withSeed(
    ofSet(
      command(job, 'plan', 'which further parts to renew while the set is open for a job, and why', {
        example: 'gensettle job plan rewind-2026 --boat marram --most-money 500',
        data: true,
      }).argument(
        '[job]',
        'its name in the log; left out: the one in hand, else the best that keeps the set',
      ),
    ),
  )
    .option('--alternative <id>', 'in the place of a job, as "alternatives --json" names it')
    .addOption(new Option('--most-money <amount>', 'for all that is added').argParser(fromNought))
    .addOption(new Option('--most-days <days>', 'of work for all that is added').argParser(fromNought))
    .action(answering(async (job, options) => (await import('./job.js')).planJob({ ...options, job })))
  ofSet(
    command(job, 'sheet', 'the sheet of a job: scope, order, cautions, time, money, tests owed', {
      example: 'gensettle job sheet rewind-2026 --boat marram --html sheet.html',
      data: true,
    }).argument('[job]', 'its name in the log; left out: the one in hand'),
  )
    .option('--html <file>', 'write it as one page of HTML, to be printed')
    .action(
      answering(async (job, options) => (await import('./job-sheet.js')).showJobSheet({ ...options, job })),
    )
  ofSet(
    command(job, 'actual', 'what jobs took, against what was expected of them', {
      example: 'gensettle job actual --boat marram',
      data: true,
    }).argument('[job]', 'its name in the log; left out: every job that is done'),
  ).action(
    answering(async (job, options) => (await import('./job-actual.js')).showJobActual({ ...options, job })),
  )
  addJobKit(job)
  addJobApart(job)
  addJobCalendar(job)
  addJobQuotes(job)
}

function fromNought(text: string): number {
  const value = Number(text)
  if (!/^\d+(\.\d+)?$/.test(text)) throw new InvalidArgumentError('A number from 0 on is wanted.')
  return value
}
