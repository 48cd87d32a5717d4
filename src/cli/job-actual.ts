/**
 * `gensettle job actual`: what jobs took, against what was expected of them.
 *
 * @module
 */

import { shortCaution } from '../alternatives/cautions.js'
import { moneyIn } from '../alternatives/say.js'
import { excessesOf, type JobTaken, jobsTaken } from '../job/actual.js'
import { jobsOf } from '../job/jobs.js'
import { fewJobs, furtherJob, learnedFrom, type PooledOverrun, poolOverruns } from '../job/overrun.js'
import { registerOf } from '../register/register.js'
import { setCatalogueOf } from '../register/set-kind-of.js'
import { type SetOptions, withSet } from './of-set.js'
import { shippedCatalogue } from './places.js'
import { type Result, refuse } from './result.js'
import { figure, tableText } from './table.js'

export interface JobActualOptions extends SetOptions {
  /** Left out: every job that is done. */
  readonly job?: string | undefined
}

export function showJobActual(options: JobActualOptions): Promise<Result> {
  return withSet(options, ({ entries, boat, set, asOf }) => {
    const catalogue = shippedCatalogue()
    const register = registerOf({ entries, boat, set, asOf, catalogue })
    const known = { register, catalogue: setCatalogueOf(register, catalogue).catalogue }
    const all = jobsTaken(jobsOf(entries, set), known)
    const taken = options.job === undefined ? all : all.filter(({ job }) => job === options.job)
    if (options.job !== undefined && taken.length === 0) {
      const allowed = `a job that is done: ${all.map(({ job }) => job).join(', ') || 'none yet'}`
      return refuse({ code: 'not-one-of', path: 'job', found: options.job, allowed })
    }
    // a kind is judged by all of its jobs, whichever is asked for
    const pooled = poolOverruns(excessesOf(all))
    const heard = register.terms.learnFromJobs === true
    const currency = register.boatFacts.currency ?? ''
    return {
      ok: true,
      json: {
        type: 'gensettle/job-actual',
        version: 1,
        boat,
        set,
        asOf,
        currency,
        heard,
        jobs: taken,
        kinds: pooled.kinds.map((one) => ({
          kind: one.kind,
          jobs: one.jobs,
          own: Math.exp(one.own),
          ...furtherJob(one),
          few: one.jobs < fewJobs,
        })),
        further: learnedFrom(pooled).further,
        caution: shortCaution,
      },
      text: [...jobsText(taken, currency), ...kindsText(pooled), sayHeard(heard), shortCaution].join('\n'),
    }
  })
}

function jobsText(taken: readonly JobTaken[], currency: string): string[] {
  if (taken.length === 0) return ['No job is done yet of which the log tells.']
  const say = (amount: number) => moneyIn(currency, amount)
  return [
    tableText(
      [
        { head: 'job' },
        { head: 'kind' },
        { head: 'expected' },
        { head: 'came to' },
        { head: 'hours expected' },
        { head: 'used' },
      ],
      taken.map(({ job, kind, money, hours }) => [
        job,
        kind.replaceAll('-', ' '),
        money === undefined
          ? ''
          : `${say(money.expected)}, by ${money.from === 'quote' ? 'its quote' : 'usual prices'}`,
        money === undefined ? 'nobody wrote it down' : say(money.came),
        hours === undefined ? '' : figure(hours.expected),
        hours === undefined ? '' : figure(hours.used),
      ]),
    ),
  ]
}

function kindsText(pooled: PooledOverrun): string[] {
  if (pooled.jobs === 0) return []
  return [
    '',
    tableText(
      [
        { head: 'kind of job' },
        { head: 'jobs' },
        { head: 'times the usual' },
        { head: 'taken as' },
        { head: '' },
      ],
      pooled.kinds.map(({ kind, jobs, own, mean }) => [
        kind.replaceAll('-', ' '),
        String(jobs),
        Math.exp(own).toFixed(2),
        Math.exp(mean).toFixed(2),
        jobs < fewJobs ? 'too few to speak for themselves: held close to all others' : '',
      ]),
    ),
  ]
}

function sayHeard(heard: boolean): string {
  return heard
    ? 'As you asked, this is heard in what work is expected to come to.'
    : 'It moves no figure unless you ask for it: "gensettle log add terms --learn-from-jobs yes".'
}
