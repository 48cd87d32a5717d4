/**
 * The commands of measured power and of the run plan.
 *
 * @module
 */

import { type Command, InvalidArgumentError, Option } from 'commander'
import { answering, collect, command, wholeWithin } from './program-parts.js'

export function addPlanning(program: Command): void {
  command(program, 'measured', 'what a meter, a logger or a Signal K server recorded of the power drawn', {
    example:
      'gensettle measured week.csv --check\n  $ gensettle measured week.csv --column power="P total" --unit power=W --dates day-first\n  $ gensettle measured http://localhost:3000 --path electrical.ac.genset --seconds 600',
    data: true,
  })
    .argument('<recording>', 'a table, a recorded Signal K stream, or the address of a Signal K server')
    .option('--boat <name>', 'the boat; left out: your only one')
    .option('--set <name>', 'the set; left out: her only one')
    .addOption(
      new Option('--of <which>', 'what the meter saw: what the set gives, or all that the boat draws')
        .choices(['set', 'boat'])
        .default('set'),
    )
    .option(
      '--column <field=heading>',
      'which column holds a field, by heading or number; again for several',
      collect,
    )
    .option('--unit <field=unit>', 'the unit of a column; again for several', collect)
    .addOption(
      new Option('--dates <which>', 'how dates such as 3/4/2024 are written').choices([
        'day-first',
        'month-first',
      ]),
    )
    .addOption(new Option('--decimal <which>', 'the decimal mark').choices(['point', 'comma']))
    .addOption(
      new Option('--volts <volts>', 'the voltage, where only current was measured').argParser(
        numberWithin(50, 1000),
      ),
    )
    .addOption(
      new Option('--power-factor <factor>', 'the power factor, where none was measured').argParser(
        numberWithin(0.1, 1),
      ),
    )
    .addOption(
      new Option('--utc-offset <hours>', 'the boat’s clock before universal time').argParser(
        numberWithin(-14, 14),
      ),
    )
    .option('--path <path>', 'of several Signal K sources the one, such as electrical.ac.genset')
    .addOption(
      new Option('--seconds <count>', 'how long a server is listened to')
        .default(300)
        .argParser(wholeWithin(1, 604_800)),
    )
    .option('--check', 'read and judge, write nothing')
    .action(
      answering(async (recording: string, options) =>
        (await import('./measured.js')).measure(recording, options),
      ),
    )
}

function numberWithin(least: number, most: number) {
  return (text: string): number => {
    const value = Number(text)
    if (text.trim() === '' || !(value >= least && value <= most)) {
      throw new InvalidArgumentError(`A number from ${least} to ${most} is wanted.`)
    }
    return value
  }
}
