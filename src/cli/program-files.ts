/**
 * The commands that read or write files: models written by hand, boats, photographs.
 *
 * @module
 */

import { type Command, Option } from 'commander'
import { answering, usual, wholeWithin, withSeed } from './program-parts.js'

const mostHistories = 1_000_000

export function layOutSimulate(made: Command): void {
  withSeed(
    usual(made, {
      example: 'gensettle simulate pump.json --histories 20000 --seed 1',
    }),
  )
    .argument('<file>', 'a life model as JSON; see docs/life-model.md')
    .addOption(
      new Option('--histories <count>', 'histories of each alternative')
        .default(20_000)
        .argParser(wholeWithin(2, mostHistories)),
    )
    .action(
      answering(async (file: string, options) => (await import('./simulate.js')).simulateFile(file, options)),
    )
}

export function layOutExport(made: Command): void {
  usual(made, {
    example: 'gensettle export petrel.boat --boat petrel',
    data: true,
  })
    .argument('<file>', 'a file that is not there yet')
    .option('--boat <name>', 'of this boat')
    .option('--without-places', 'for others: leave out photographs that tell where they were taken')
    .action(
      answering(async (file: string, options) =>
        (await import('./boat-file.js')).exportToFile(file, options),
      ),
    )
}

export function layOutPictures(made: Command): void {
  usual(made, {
    example: 'gensettle pictures for-the-workshop --boat petrel --job rewind',
    data: true,
  })
    .argument('<folder>', 'a folder that is not there yet')
    .option('--boat <name>', 'of this boat')
    .option('--job <name>', 'only those of entries that name this job')
    .option('--with-places', 'as they are, with whatever they tell of place and time')
    .action(
      answering(async (folder: string, options) =>
        (await import('./pictures.js')).copyPictures(folder, options),
      ),
    )
}

export function layOutImport(made: Command): void {
  usual(made, {
    example: 'gensettle import petrel.boat',
    data: true,
  })
    .argument('<file>', 'a file that "export" wrote')
    .action(
      answering(async (file: string, options) =>
        (await import('./boat-file.js')).importFromFile(file, options),
      ),
    )
}
