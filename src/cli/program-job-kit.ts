/**
 * The commands about the pieces of a job.
 *
 * @module
 */

import type { Command } from 'commander'
import { answering, collect, command, ofSet } from './program-parts.js'

export function addJobKit(job: Command): void {
  ofSet(
    command(job, 'kit', 'what a job needs in hand, what is still to be ordered, settled or checked', {
      example:
        'gensettle job kit rewind-2026 --boat marram\n  $ gensettle job kit --boat teasel --part sea-pump-body,drive-belt --messages',
      data: true,
    }).argument('[job]', 'its name in the log; left out: the one in hand'),
  )
    .option('--part <part>', 'parts to be renewed, in the place of a job; again for several', collect)
    .option('--messages', 'only the messages to suppliers')
    .option('--html <file>', 'write the lists as one page to print')
    .action(
      answering(async (name, options) => (await import('./job-kit.js')).showKit({ ...options, job: name })),
    )
  command(job, 'fits', 'whether a piece goes in the place of another, by the numbers or sizes on both', {
    example:
      'gensettle job fits 6205-2RS/C3 6205-ZZ\n  $ gensettle job fits "30 µF 450 V" "30 µF 500 V class B"',
  })
    .argument('<old>', 'what stands on the old one')
    .argument('<new>', 'what stands on the new one')
    .action(
      answering(async (old: string, replacement: string) =>
        (await import('./job-kit.js')).showFits({ old, replacement }),
      ),
    )
}
