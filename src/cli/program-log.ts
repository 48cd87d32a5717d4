/**
 * The commands of the logbook.
 *
 * @module
 */

import { type Command, Option } from 'commander'
import { paperFields } from '../logbook/paper-log-columns.js'
import type { Typed } from './drafts.js'
import { layOutAdd } from './program-log-add.js'
import { answering, collect, command, laidOutWhenCalled } from './program-parts.js'

export function layOutLog(log: Command): void {
  laidOutWhenCalled(log, 'add', 'write one entry; odd ones are written and asked about', layOutAdd)
  command(log, 'list', 'entries as they stand now, and what is odd about them', {
    example: 'gensettle log list --kind finding --since 2023',
    data: true,
  })
    .option('--boat <name>', 'of this boat')
    .option('--set <name>', 'of this set')
    .option('--kind <kind>', 'of this kind')
    .option('--since <date>', 'from this day, month or year on')
    .option('--until <date>', 'up to this day, month or year')
    .action(answering(async (options) => (await import('./log-list.js')).listEntries(options)))
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
      answering(async (id: string, { change, ...options }) =>
        (await import('./log.js')).correctEntry(id, {
          ...options,
          flags: flagsFromChanges(change ?? []),
          bare: [],
        }),
      ),
    )
}

function choice(flag: string, words: string, choices: readonly string[]): Option {
  return new Option(`${flag} <which>`, words).choices(choices)
}

/** `field=value` pairs by field. */
function flagsFromChanges(changes: readonly string[]): Typed['flags'] {
  const flags: Record<string, string[]> = {}
  for (const change of changes) {
    const at = change.indexOf('=')
    const name = at < 0 ? change : change.slice(0, at)
    flags[name] = [...(flags[name] ?? []), at < 0 ? '' : change.slice(at + 1)]
  }
  return flags
}
