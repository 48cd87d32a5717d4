/**
 * The commands, their options and their help. What reckons or serves is loaded when it is asked for, so that a command that
 * only reads or writes an entry is there at once.
 *
 * @module
 */

import { Command, Option } from 'commander'
import { paperFields } from '../logbook/paper-log-columns.js'
import { listBoats } from './boats.js'
import { correctEntry, listEntries } from './log.js'
import { programVersion } from './places.js'
import { addFaults } from './program-faults.js'
import { addJob } from './program-job.js'
import { addLinks } from './program-links.js'
import { addKinds, flagsFromChanges } from './program-log-add.js'
import { addLookingBack } from './program-looking-back.js'
import { answering, collect, command, ofSet, wholeWithin, withSeed } from './program-parts.js'
import { addPlanning } from './program-plan.js'
import { addProof } from './program-proof.js'
import { addSizing } from './program-size.js'

const mostHistories = 1_000_000

/** The whole command line. Parsing it runs the command and sets the exit status. */
export function makeProgram(): Command {
  const program = new Command('gensettle')
    .description(
      'Mend, rebuild or replace an ageing diesel generating set, and the quote above which to walk away.',
    )
    .version(programVersion)
    .exitOverride()
    .showHelpAfterError('"--help" behind the command shows what it takes.')
    .configureHelp({ showGlobalOptions: false })
    .addHelpText(
      'after',
      `
Exit status: 0 done, 1 something wrong with what came in, 2 wrong use.

Example:
  $ gensettle demo
  $ gensettle log add set --boat petrel --set main --rating-kw 7 --rpm 1500 --built 2004
  $ gensettle log add hours 5240
  $ gensettle alternatives`,
    )
  addServing(program)
  addLog(program)
  addAnswers(program)
  addFaults(program)
  addLookingBack(program)
  addLinks(program)
  addProof(program)
  addSizing(program)
  addPlanning(program)
  addJob(program)
  addFiles(program)
  return program
}

function addServing(program: Command): void {
  withSeed(
    command(program, 'serve', 'serve the pages on this machine, and print every boat’s verdict', {
      example: 'gensettle serve --data ./logbook',
      data: true,
    }),
  ).action(async (options) => {
    const { serve } = await import('./serve.js')
    process.exitCode = await serve(options)
  })
  withSeed(
    command(program, 'demo', 'the verdicts of the demonstration boats', { example: 'gensettle demo' }),
  ).action(answering(async (options) => (await import('./serve.js')).demonstrate(options)))
  command(program, 'boats', 'whose logs there are', { example: 'gensettle boats', data: true }).action(
    answering((options) => listBoats(options)),
  )
}

function addLog(program: Command): void {
  const log = program.command('log').description('the logbook: add, list and correct entries')
  addKinds(log)
  command(log, 'list', 'entries as they stand now, and what is odd about them', {
    example: 'gensettle log list --kind finding --since 2023',
    data: true,
  })
    .option('--boat <name>', 'of this boat')
    .option('--set <name>', 'of this set')
    .option('--kind <kind>', 'of this kind')
    .option('--since <date>', 'from this day, month or year on')
    .option('--until <date>', 'up to this day, month or year')
    .action(answering((options) => listEntries(options)))
  command(log, 'import', 'read an old paper log from a table: a line of headings, then one row an entry', {
    example:
      'gensettle log import old-log.csv --check\n  $ gensettle log import old-log.csv --column date=Datum --column hours=Stunden --dates day-first',
    data: true,
  })
    .argument('<file>', `comma-separated values; columns hold ${paperFields.join(', ')}`)
    .option('--boat <name>', 'the boat; left out: your only one')
    .option('--set <name>', 'the set; left out: her only one')
    .option('--column <field=heading>', 'which column holds a field; again for several', collect)
    .addOption(choice('--dates', 'how dates such as 3/4/2019 are written', ['day-first', 'month-first']))
    .addOption(choice('--decimal', 'the decimal mark of numbers such as 1,234', ['point', 'comma']))
    .option('--check', 'read and judge, write nothing')
    .action(
      answering(async (file: string, options) => (await import('./import-log.js')).importLog(file, options)),
    )
  command(log, 'correct', 'put another entry in the place of one, which stays in the log; or take it back', {
    example:
      'gensettle log correct 01HZZZZZZZ0000000000000001 --change meter-hours=5240\n  $ gensettle log correct 01HZZZZZZZ0000000000000001 --take-back "was another boat"',
    data: true,
  })
    .argument('<id>', 'the id of the entry, as "log list" shows')
    .option('--change <field=value>', 'a field as "log add" names it; again for several', collect)
    .option('--body <json>', 'the whole body anew')
    .option('--set <name>', 'it was this set')
    .option('--from <date>', 'it was, or began, then')
    .option('--until <date>', 'it ended, or was before, then')
    .option('--take-back <reason>', 'take the entry as never written')
    .action(
      answering((id: string, { change, ...options }) =>
        correctEntry(id, { ...options, flags: flagsFromChanges(change ?? []), bare: [] }),
      ),
    )
}

function choice(flag: string, words: string, choices: readonly string[]): Option {
  return new Option(`${flag} <which>`, words).choices(choices)
}

function addAnswers(program: Command): void {
  ofSet(
    command(program, 'set', 'what a set is: parts and their ages, defects, dangers, quotes, money spent', {
      example: 'gensettle set --boat marram',
      data: true,
    }),
  ).action(answering(async (options) => (await import('./set.js')).showSet(options)))
  withSeed(
    ofSet(
      command(program, 'forecast', 'which part goes next, and what the figure rests on', {
        example: 'gensettle forecast --boat marram',
        data: true,
      }),
    ),
  )
    .option('--all', 'every part, not only the likeliest')
    .action(answering(async (options) => (await import('./forecast.js')).showForecast(options)))
  withSeed(
    ofSet(
      command(program, 'alternatives', 'what could be done, the verdict, and the walk-away price', {
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
  withSeed(
    ofSet(
      command(program, 'brief', 'the answer on two pages, for who was not there', {
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

function addFiles(program: Command): void {
  withSeed(
    command(program, 'simulate', 'play a life model that was written by hand', {
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
  command(program, 'export', 'write everything of a boat into one new file', {
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
  command(program, 'pictures', 'copy the photographs of a boat into a new folder, without their places', {
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
  command(program, 'import', 'add a boat file, or what it has more than the log', {
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
