/**
 * The frame of the pages of a job: which job, how far it has come, and the way from one of its pages to another.
 *
 * @module
 */

import { type ReactNode, useId, useMemo } from 'react'
import { type Job, jobNamedOrLast, jobsOf } from '../../job/jobs.js'
import type { OfSet } from '../of-set.js'
import { Lead, Link, Passage, Preparing, Say } from '../parts/index.js'
import { type BoatPage, boatPages, goTo, pathTo } from '../routes.js'
import { useAsked } from '../use-route.js'
import { words } from '../words/job.js'
import { shell } from '../words/shell.js'
import { type OfProof, useProof } from './of-proof.js'
import '../look/proof.css'
import '../look/job.css'

/** What a page of a job is handed: what the log says of the set, and the job that the page is of. */
export interface OfJob extends OfProof {
  readonly jobs: readonly Job[]
  readonly job: Job
}

type JobPage = Extract<BoatPage, 'job' | `job-${string}`>

/** In the order in which a job needs them. */
const order: readonly string[] = ['job', 'job-quotes', 'job-kit', 'job-calendar', 'job-apart', 'job-sheet']
const jobPages = boatPages
  .filter((page): page is JobPage => page === 'job' || page.startsWith('job-'))
  .toSorted((a, b) => order.indexOf(a) - order.indexOf(b))

export interface JobFrameProps {
  readonly of: OfSet
  readonly page: JobPage
  /** The page of a job, its first passage first. */
  readonly children: (known: OfJob) => ReactNode
  /** The page where the log speaks of no job; left out: how a job comes about. */
  readonly none?: (known: OfProof) => ReactNode
}

/** Draws the page for the job that the address names (`?job=NAME`), else for the one last spoken of. */
export function JobFrame({ of, page, children, none }: JobFrameProps) {
  const known = useProof(of)
  const asked = useAsked('job')
  const jobs = useMemo(
    () => (known === undefined ? [] : jobsOf(known.log.entries, of.set, known.owed.tests)),
    [known, of.set],
  )
  if (known === undefined) return <Preparing title={shell.pages[page]} words={words.preparing} />
  const job = jobNamedOrLast(jobs, asked)
  if (jobs.length === 0) return none?.(known) ?? <NoJob of={of} title={shell.pages[page]} />
  return (
    <>
      <nav className="job-way small screen-only" aria-label={words.way}>
        <Choice of={of} page={page} jobs={jobs} job={job} />
        <ul>
          {jobPages.map((name) => (
            <li key={name}>
              <Link to={pathToJob(of, name, job?.name)} aria-current={name === page ? 'page' : undefined}>
                {shell.pages[name]}
              </Link>
            </li>
          ))}
        </ul>
      </nav>
      {job === undefined ? (
        <Passage title={shell.pages[page]} first>
          <Say>{words.notFound(asked ?? '')}</Say>
          <Lead>{words.notFoundNext}</Lead>
        </Passage>
      ) : (
        children({ ...known, jobs, job })
      )}
    </>
  )
}

/** The address of a page of a job. */
export function pathToJob(of: OfSet, page: JobPage, job?: string): string {
  const path = pathTo({ page, boat: of.boat, set: of.set })
  return job === undefined ? path : `${path}?job=${encodeURIComponent(job)}`
}

interface ChoiceProps {
  readonly of: OfSet
  readonly page: JobPage
  readonly jobs: readonly Job[]
  readonly job: Job | undefined
}

function Choice({ of, page, jobs, job }: ChoiceProps) {
  const id = useId()
  return (
    <p className="job-choice">
      <label htmlFor={id}>{words.which}</label>{' '}
      <select
        id={id}
        className="input"
        value={job?.name ?? ''}
        onChange={({ target }) => goTo(pathToJob(of, page, target.value), { replace: true })}
      >
        {job === undefined && <option value="" />}
        {jobs.toReversed().map(({ name, state }) => (
          <option key={name} value={name}>
            {words.option(name, words.states[state])}
          </option>
        ))}
      </select>
    </p>
  )
}

function NoJob({ of, title }: { readonly of: OfSet; readonly title: string }) {
  const { none } = words
  return (
    <Passage title={title} first>
      <Say>{none.say}</Say>
      <Lead>{none.lead}</Lead>
      <p className="gap">
        <Link to={pathTo({ page: 'alternatives', ...of })}>{none.decide}</Link>
        {' · '}
        <Link to={pathTo({ page: 'logbook', ...of })}>{none.write}</Link>
      </p>
    </Passage>
  )
}
