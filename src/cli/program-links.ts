/**
 * The commands about leads and how they are joined.
 *
 * @module
 */

import { type Command, InvalidArgumentError, Option } from 'commander'
import { answering, collect, ofSet, usual } from './program-parts.js'

export function layOutLinks(made: Command): void {
  usual(made, {
    example: [
      'gensettle links',
      'gensettle links --pattern series-star --emf 120 --amps 20.8',
      'gensettle links --winding four-leads --leads T2-T4 --lines L=T1,N=T3 --emf 115 --sensing S1=T1,S2=T3 --set-to 230',
      'gensettle links --boat petrel',
      'gensettle links --wired-for 240-60 --winding twelve-leads --emf 120 --hertz 60',
      'gensettle links --wired-for 240-60 --now 230-50 --winding twelve-leads --rpm 1500 --kva 10',
    ].join('\n  $ '),
  })
    .option('--pattern <name>', 'a way of joining them that has a name; "links" alone lists all')
    .option(
      '--joined <file>',
      'a file of lines such as "winding: four-leads", "joined: T2-T3", "lines: L=T1, N=T4"',
    )
    .option('--leads <text>', 'the joints as text, such as T4-T7,T5-T8')
    .option('--lines <text>', 'with --leads: what goes out, such as L1=T1,N=T10')
    .option('--winding <name>', 'with --leads and --wired-for: four-leads or twelve-leads')
    .option('--marks <which>', 'how the leads are marked: nema (T1 …) or iec (U1 …)')
    .option('--sensing <text>', 'where the regulator looks, such as S1=T1,S2=T4')
    .option('--load <text>', 'loads in ohms, such as "L1-N 12, L2-N 48": what each gets')
    .option('--open <line>', 'with --load: this line is broken; again for several', collect)
    .option('--html <file>', 'write the drawing, large, as one page of HTML')
    .option(
      '--found <file>',
      'with --left: leads as found against leads as left, each a file as for --joined',
    )
    .option('--left <file>', 'with --found')
    .option('--boat <name>', 'leads as found and as left of the log of this boat')
    .option('--set <name>', 'with --boat: the set; left out: her only one')
    .option('--as-of <day>', 'with --boat: as of that day; left out: today')
    .option('--data <folder>', 'with --boat: the data folder; left out: your own')
    .option('--wired-for <supply>', 'which leads are joined for that supply')
    .option('--now <supply>', 'with --wired-for: what she is wired for now, and all that hangs on the change')
  for (const [flag, words] of numbers) {
    made.addOption(new Option(`--${flag} <number>`, words).argParser(positive))
  }
  made.action(
    answering(async (options) => {
      const { wiredFor, found, left, boat } = options
      if (wiredFor !== undefined) return (await import('./links-wired.js')).showWiredFor(options)
      if ([found, left, boat].every((one) => one === undefined))
        return (await import('./links.js')).showLinks(options)
      return (await import('./links-compared.js')).showCompared(options)
    }),
  )
}

export function layOutLeads(made: Command): void {
  usual(made, {
    example:
      'gensettle leads --winding four-leads --pairs "a-b 0.31, c-d 0.31" --each 20 --readings "a-c 40"',
  })
    .requiredOption('--winding <name>', 'four-leads or twelve-leads')
    .requiredOption(
      '--pairs <text>',
      'leads that read through, and the ohms between them: "a-d 0.31, b-c 0.30"',
    )
    .option(
      '--readings <text>',
      'one lead each of two pairs joined, and the volts between the others: "a-b 20, a-c 0"',
    )
    .addOption(
      new Option('--each <volts>', 'what one pair reads by itself in the same run').argParser(positive),
    )
    .option('--marks <which>', 'marks to give them: nema (T1 …) or iec (U1 …)')
    .action(answering(async (options) => (await import('./leads.js')).findUnmarked(options)))
}

export function layOutShopSheet(made: Command): void {
  ofSet(
    usual(made, {
      example:
        'gensettle shop-sheet --boat marram --html sheet.html\n  $ gensettle shop-sheet --boat quillback --ask bearings,test --ask-above 900',
      data: true,
    }),
    { asNoted: false },
  )
    .option(
      '--ask <jobs>',
      'rewind-stator, rewind-rotor, exciter, dry-and-varnish, bearings, test; left out: what open quotes cover',
      collect,
    )
    .option('--words <text>', 'what else is asked, in your words')
    .option('--linked <pattern>', 'the pattern that the leads come back in; left out: as found')
    .addOption(
      new Option(
        '--ask-above <price>',
        'the price above which to ask first; left out: the one settled on, or quoted',
      ).argParser(positive),
    )
    .addOption(
      new Option('--resistance <ohms>', 'ohms of one half, where they were measured').argParser(positive),
    )
    .option('--html <file>', 'write it as one page of HTML, to be printed')
    .action(answering(async (options) => (await import('./shop-sheet.js')).showShopSheet(options)))
}

const numbers = [
  ['emf', 'volts of one coil; with --wired-for: those it is made for'],
  ['hertz', 'with --wired-for: the frequency at which it is made for them'],
  ['amps', 'what one coil may carry'],
  ['resistance', 'ohms of one coil'],
  ['reactance', 'ohms of one coil'],
  ['set-to', 'volts that the regulator is set to hold between its leads'],
  ['rpm', 'with --now: the speed of the set now'],
  ['kva', 'with --now: what the set gives'],
] as const

function positive(text: string): number {
  const value = Number(text)
  if (!Number.isFinite(value) || value < 0 || text.trim() === '') {
    throw new InvalidArgumentError('A number from 0 on is wanted.')
  }
  return value
}
