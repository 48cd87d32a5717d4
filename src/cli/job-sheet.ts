/**
 * `gensettle job sheet`: the sheet of a job, for whoever does it.
 *
 * @module
 */

import { programVersion } from '../alternatives/program-version.js'
import { calendarOf, usualHistories } from '../job/calendar.js'
import { jobNamedOrLast, jobsOf } from '../job/jobs.js'
import { kitOf } from '../job/kit.js'
import { jobSheetOf } from '../job/sheet.js'
import { limitsOf } from '../proof/limits.js'
import { owedOf } from '../proof/owed.js'
import { registerOf } from '../register/register.js'
import { setCatalogueOf } from '../register/set-kind-of.js'
import { newFileProblems, writeNewFile } from './new-file.js'
import { type SetOptions, withSet } from './of-set.js'
import { shippedCatalogue } from './places.js'
import { type Result, refuse } from './result.js'
import { shippedKits } from './shipped.js'
import { sheetText } from './shop-sheet.js'
import { shopSheetHtml } from './shop-sheet-html.js'

export interface JobSheetOptions extends SetOptions {
  /** A job that the log speaks of; left out: the one in hand. */
  readonly job?: string | undefined
  readonly html?: string
}

/** As the page of the calendar has it. */
const calendarSeed = 1
const histories = usualHistories

export function showJobSheet(options: JobSheetOptions): Promise<Result> {
  return withSet(options, ({ named, entries, boat, set, asOf }) => {
    const file = { path: '--html', file: options.html }
    const catalogue = shippedCatalogue()
    const register = registerOf({ entries, boat, set, asOf, catalogue })
    const owed = owedOf({ ...catalogue, entries, register, limits: limitsOf(catalogue) })
    const jobs = jobsOf(entries, set, owed.tests)
    const job = jobNamedOrLast(jobs, options.job)
    const problems = [...newFileProblems([file])]
    if (job === undefined) {
      const allowed = `a job that the log speaks of: ${jobs.map(({ name }) => name).join(', ') || 'none yet'}`
      problems.push({ code: 'not-one-of', path: 'job', found: options.job ?? 'none', allowed })
    }
    if (problems.length > 0 || job === undefined) return refuse(...problems)
    const forSet = setCatalogueOf(register, catalogue).catalogue
    const { terms } = register
    const planned = calendarOf({ job, entries, register, catalogue: forSet, seed: calendarSeed, histories })
    const sheet = jobSheetOf({
      register,
      job,
      catalogue,
      forSet,
      owed,
      kit: kitOf({ job, entries, set, asOf, kits: shippedKits(), catalogue: forSet, terms }),
      calendar: planned.ok ? planned.calendar : undefined,
      demonstration: named.demonstration,
      program: programVersion,
    })
    const unwritten = writeNewFile({ ...file, text: shopSheetHtml(sheet) })
    if (unwritten.length > 0) return refuse(...unwritten)
    return {
      ok: true,
      json: {
        type: 'gensettle/job-sheet',
        version: 1,
        boat,
        set,
        asOf,
        job: job.name,
        state: job.state,
        sheet,
      },
      text: [
        ...sheetText(sheet),
        ...(options.html === undefined ? [] : ['', `Written: ${options.html}`]),
      ].join('\n'),
    }
  })
}
