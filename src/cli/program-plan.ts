/**
 * The commands of measured power and of the run plan.
 *
 * @module
 */

import { type Command, InvalidArgumentError, Option } from 'commander'
import { seasons } from '../catalogue/load-schema.js'
import { batteryKinds } from '../sizing/battery.js'
import { answering, collect, demandBasis, ofSet, usual, wholeWithin, withSeed } from './program-parts.js'

export function layOutMeasured(made: Command): void {
  usual(made, {
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

export function layOutPlan(made: Command): void {
  withSeed(
    ofSet(
      usual(made, {
        example:
          'gensettle plan --boat marram\n  $ gensettle plan --quiet 21-9 --worth\n  $ gensettle plan --size-kw 5 --battery-kwh 10 --sun-watts 800\n  $ gensettle plan --write day.json\n  $ gensettle plan --with day.json',
        data: true,
      }),
    ),
  )
    .addOption(
      new Option('--season <which>', 'the weather; left out: that of most days aboard').choices([...seasons]),
    )
    .addOption(
      new Option('--size-kw <kilowatts>', 'a new set of another size').argParser(numberWithin(0.5, 100)),
    )
    .option(
      '--quiet <hours>',
      'hours in which the set is silent, such as 22-8, or none; left out: 23-7 unless it runs at night',
    )
    .addOption(demandBasis())
    .addOption(
      new Option('--battery-kwh <kWh>', 'a battery of so much, rated, with an inverter').argParser(
        numberWithin(0.1, 500),
      ),
    )
    .addOption(
      new Option('--battery-kind <which>', 'what it is of')
        .choices(Object.keys(batteryKinds))
        .default('lithium'),
    )
    .addOption(
      new Option('--inverter-kw <kW>', 'what the inverter gives').default(3).argParser(numberWithin(0, 100)),
    )
    .addOption(
      new Option('--charger-kw <kW>', 'what the charger takes').default(2).argParser(numberWithin(0, 100)),
    )
    .addOption(
      new Option('--sun-watts <W>', 'rating of the panels').default(0).argParser(numberWithin(0, 50_000)),
    )
    .addOption(
      new Option('--sun-hours <hours>', 'hours of full sun in a day')
        .default(4)
        .argParser(numberWithin(0, 12)),
    )
    .addOption(
      new Option('--shore-kw <kW>', 'what the shore gives all day')
        .default(0)
        .argParser(numberWithin(0, 100)),
    )
    .option('--with <file>', 'plan the day of that file; no boat is needed')
    .option('--write <file>', 'write the day, to be edited and given to --with')
    .option('--keep', 'keep the plan as the use from now on: forecast and alternatives follow it')
    .option('--worth', 'what the plan is worth in failures and money over the years kept')
    .action(answering(async (options) => (await import('./plan.js')).showPlan(options)))
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
