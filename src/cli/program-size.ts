/**
 * The commands of sizing.
 *
 * @module
 */

import type { Command } from 'commander'
import { answering, command, demandBasis, ofSet } from './program-parts.js'

export function addSizing(program: Command): void {
  ofSet(
    command(program, 'loads', 'what draws power aboard; or loads of the catalogue, searched', {
      example: 'gensettle loads --boat marram\n  $ gensettle loads --search "water heater"',
      data: true,
    }),
  )
    .option('--search <words>', 'loads of the catalogue that have these words in name or group')
    .action(answering(async (options) => (await import('./size.js')).showLoads(options)))
  ofSet(
    command(program, 'size', 'what is drawn together, by occasion, and which size of set carries it', {
      example: 'gensettle size --boat quillback\n  $ gensettle size --boat quillback --sizes 6,8,10',
      data: true,
    }),
  )
    .addOption(demandBasis())
    .option('--all', 'every check of every set, passed ones too, and each occasion')
    .option('--sizes <list>', 'look at these ratings [kW] beside the present set and those that are offered')
    .action(answering(async (options) => (await import('./size.js')).showSize(options)))
}
