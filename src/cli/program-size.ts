/**
 * The commands of sizing.
 *
 * @module
 */

import type { Command } from 'commander'
import { answering, demandBasis, ofSet, usual } from './program-parts.js'

export function layOutLoads(made: Command): void {
  ofSet(
    usual(made, {
      example: 'gensettle loads --boat marram\n  $ gensettle loads --search "water heater"',
      data: true,
    }),
  )
    .option('--search <words>', 'loads of the catalogue that have these words in name or group')
    .action(answering(async (options) => (await import('./size.js')).showLoads(options)))
}

export function layOutSize(made: Command): void {
  ofSet(
    usual(made, {
      example: 'gensettle size --boat quillback\n  $ gensettle size --boat quillback --sizes 6,8,10',
      data: true,
    }),
  )
    .addOption(demandBasis())
    .option('--all', 'every check of every set, passed ones too, and each occasion')
    .option('--sizes <list>', 'look at these ratings [kW] beside the present set and those that are offered')
    .action(answering(async (options) => (await import('./size.js')).showSize(options)))
}
