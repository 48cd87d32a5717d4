/**
 * The commands that look back, and what lets them: hindsight, decisions that are kept, and lessons of other boats.
 *
 * @module
 */

import { type Command, Option } from 'commander'
import { answering, ofSet, usual, wholeWithin, withSeed } from './program-parts.js'

const mostHistories = 1_000_000

export function layOutHindsight(made: Command): void {
  withSeed(
    ofSet(
      usual(made, {
        example:
          'gensettle hindsight --boat marram\n  $ gensettle hindsight --boat marram --months 12 --dates 8\n  $ gensettle hindsight --boat marram --by-date',
        data: true,
      }),
      { asNoted: false },
    ),
  )
    .addOption(
      new Option('--months <count>', 'months that each forecast reaches, and that lie between two')
        .choices(['3', '6', '12', '24'])
        .default('6'),
    )
    .addOption(
      new Option('--dates <count>', 'so many past dates, the latest')
        .default(20)
        .argParser(wholeWithin(1, 200)),
    )
    .addOption(
      new Option('--choices <count>', 'so many past choices, the latest; each takes some seconds')
        .default(5)
        .argParser(wholeWithin(0, 100)),
    )
    .option('--by-date', 'by the day things happened, not as noted by then: for a log typed in at once')
    .action(answering(async (options) => (await import('./hindsight.js')).showHindsight(options)))
}

export function layOutDecide(made: Command): void {
  withSeed(
    ofSet(
      usual(made, {
        example:
          'gensettle decide --alternative leave --because "two summers left"\n  $ gensettle decide "Have it rewound in the winter" --alternative mend --job rewind',
        data: true,
      }),
      { asNoted: false },
    ),
  )
    .argument('[choice...]', 'what you settled, in your words; left out: the name of the alternative')
    .requiredOption('--alternative <id>', 'the alternative that you took, as "alternatives --json" names it')
    .option('--because <text>', 'why')
    .option('--job <name>', 'the job that it is about')
    .addOption(
      new Option('--histories <count>', 'histories of each; left out: until the verdict stands').argParser(
        wholeWithin(2, mostHistories),
      ),
    )
    .action(
      answering(async (words: readonly string[], options) =>
        (await import('./decide.js')).decide(words, options),
      ),
    )
}

export function layOutRerun(made: Command): void {
  usual(made, {
    example: 'gensettle rerun 01HZZZZZZZ0000000000000001',
    data: true,
  })
    .argument('<id>', 'the id of the decision, as "log list --kind decision" shows')
    .action(answering(async (id: string, options) => (await import('./decide.js')).rerun(id, options)))
}

export function layOutLessons(made: Command): void {
  withSeed(
    usual(made, {
      example: 'gensettle lessons\n  $ gensettle lessons on',
      data: true,
    }),
  )
    .argument('[how]', 'on or off; left out: how it stands')
    .action(
      answering(async (how: string | undefined, options) =>
        (await import('./lessons.js')).showLessons(how, options),
      ),
    )
}
