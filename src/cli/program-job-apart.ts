/**
 * The command about taking apart and putting back.
 *
 * @module
 */

import type { Command } from 'commander'
import { answering, command, ofSet } from './program-parts.js'

export function addJobApart(job: Command): void {
  ofSet(
    command(job, 'apart', 'what to undo in which order, how far it has come apart, and the way back', {
      example:
        'gensettle job apart rewind-2026 --boat marram --html apart.html\n  $ gensettle log add apart-step --job rewind-2026 --n 1 --what "panels off" --proposed panels-off --photograph panels.jpg',
      data: true,
    }).argument('[job]', 'its name in the log; left out: the one in hand'),
  )
    .option('--out', 'the set leaves the boat for it')
    .option('--html <file>', 'write it as one page of HTML with its pictures, to be printed')
    .action(
      answering(async (name, options) =>
        (await import('./job-apart.js')).showJobApart({ ...options, job: name }),
      ),
    )
}
