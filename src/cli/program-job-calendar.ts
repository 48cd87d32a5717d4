/**
 * The command of a job's calendar.
 *
 * @module
 */

import type { Command } from 'commander'
import { answering, command, ofSet, withSeed } from './program-parts.js'

export function addJobCalendar(job: Command): void {
  withSeed(
    ofSet(
      command(
        job,
        'calendar',
        'what must be done by when, the chance to be ready by a day, what to order today',
        {
          example: 'gensettle job calendar rewind-2026 --boat marram --ready-by 2027-04-01 --ics rewind.ics',
          data: true,
        },
      ).argument('[job]', 'its name in the log; left out: the one in hand'),
    ),
  )
    .option('--ready-by <day>', 'the chance to be ready by that day; left out: the day that 8 in 10 keep')
    .option('--ics <file>', 'write the days as iCalendar into a new file')
    .action(
      answering(async (job, options) =>
        (await import('./job-calendar.js')).showJobCalendar({ ...options, job }),
      ),
    )
}
