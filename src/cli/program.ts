/**
 * The commands. What each takes and does is loaded when it is called, so that one that only reads or writes an entry is there
 * at once.
 *
 * @module
 */

import { Command } from 'commander'
import { programVersion } from '../alternatives/program-version.js'
import { type LayOut, laidOutWhenCalled } from './program-parts.js'

interface Called {
  readonly name: string
  readonly told: string
  readonly layOut: LayOut
}

/** In the order in which the help shows them. */
const commands: readonly Called[] = [
  {
    name: 'serve',
    told: 'serve the pages on this machine, and print every boat’s verdict',
    layOut: async (made) => (await import('./program-serving.js')).layOutServe(made),
  },
  {
    name: 'demo',
    told: 'the verdicts of the demonstration boats',
    layOut: async (made) => (await import('./program-serving.js')).layOutDemo(made),
  },
  {
    name: 'boats',
    told: 'whose logs there are',
    layOut: async (made) => (await import('./program-serving.js')).layOutBoats(made),
  },
  {
    name: 'log',
    told: 'the logbook: add, list and correct entries',
    layOut: async (made) => (await import('./program-log.js')).layOutLog(made),
  },
  {
    name: 'set',
    told: 'what a set is: parts and their ages, defects, dangers, quotes, money spent',
    layOut: async (made) => (await import('./program-answers.js')).layOutSet(made),
  },
  {
    name: 'forecast',
    told: 'which part goes next, and what the figure rests on',
    layOut: async (made) => (await import('./program-answers.js')).layOutForecast(made),
  },
  {
    name: 'alternatives',
    told: 'what could be done, the verdict, and the walk-away price',
    layOut: async (made) => (await import('./program-answers.js')).layOutAlternatives(made),
  },
  {
    name: 'brief',
    told: 'the answer on two pages, for who was not there',
    layOut: async (made) => (await import('./program-answers.js')).layOutBrief(made),
  },
  {
    name: 'faults',
    told: 'what is wrong, and the next look that tells most: begin a case, answer, and close it',
    layOut: async (made) => (await import('./program-faults.js')).layOutFaults(made),
  },
  {
    name: 'hindsight',
    told: 'whether past forecasts came true, and what past choices came to',
    layOut: async (made) => (await import('./program-looking-back.js')).layOutHindsight(made),
  },
  {
    name: 'decide',
    told: 'work the answer out, and keep it in the log with what you settled',
    layOut: async (made) => (await import('./program-looking-back.js')).layOutDecide(made),
  },
  {
    name: 'rerun',
    told: 'run the answer kept with a decision again, and compare every figure',
    layOut: async (made) => (await import('./program-looking-back.js')).layOutRerun(made),
  },
  {
    name: 'lessons',
    told: 'what your boats teach one another; they only hear it where you want that',
    layOut: async (made) => (await import('./program-looking-back.js')).layOutLessons(made),
  },
  {
    name: 'links',
    told: 'what a winding gives as its leads are joined, and which to join',
    layOut: async (made) => (await import('./program-links.js')).layOutLinks(made),
  },
  {
    name: 'leads',
    told: 'which unmarked lead is which: what to join and measure next, until all are found',
    layOut: async (made) => (await import('./program-links.js')).layOutLeads(made),
  },
  {
    name: 'shop-sheet',
    told: 'the sheet that goes to a workshop with the part',
    layOut: async (made) => (await import('./program-links.js')).layOutShopSheet(made),
  },
  {
    name: 'prove',
    told: 'a test before power is trusted: its steps, its verdict, written to the log',
    layOut: async (made) => (await import('./program-proof.js')).layOutProve(made),
  },
  {
    name: 'owed',
    told: 'tests owed before it is turned, energised, loaded and left alone',
    layOut: async (made) => (await import('./program-proof.js')).layOutOwed(made),
  },
  {
    name: 'loads',
    told: 'what draws power aboard; or loads of the catalogue, searched',
    layOut: async (made) => (await import('./program-size.js')).layOutLoads(made),
  },
  {
    name: 'size',
    told: 'what is drawn together, by occasion, and which size of set carries it',
    layOut: async (made) => (await import('./program-size.js')).layOutSize(made),
  },
  {
    name: 'plan',
    told: 'what may wait, in the fewest, well-loaded hours of a day; against today’s habit',
    layOut: async (made) => (await import('./program-plan.js')).layOutPlan(made),
  },
  {
    name: 'measured',
    told: 'what a meter, a logger or a Signal K server recorded of the power drawn',
    layOut: async (made) => (await import('./program-plan.js')).layOutMeasured(made),
  },
  {
    name: 'job',
    told: 'a job that is decided: what belongs with it',
    layOut: async (made) => (await import('./program-job.js')).layOutJob(made),
  },
  {
    name: 'simulate',
    told: 'play a life model that was written by hand',
    layOut: async (made) => (await import('./program-files.js')).layOutSimulate(made),
  },
  {
    name: 'export',
    told: 'write everything of a boat into one new file',
    layOut: async (made) => (await import('./program-files.js')).layOutExport(made),
  },
  {
    name: 'pictures',
    told: 'copy the photographs of a boat into a new folder, without their places',
    layOut: async (made) => (await import('./program-files.js')).layOutPictures(made),
  },
  {
    name: 'import',
    told: 'add a boat file, or what it has more than the log',
    layOut: async (made) => (await import('./program-files.js')).layOutImport(made),
  },
]

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
  for (const { name, told, layOut } of commands) laidOutWhenCalled(program, name, told, layOut)
  return program
}
