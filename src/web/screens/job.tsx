/**
 * A job: how far it has come, what belongs to it, and what the log says of it.
 *
 * @module
 */

import { isOpen, type Job } from '../../job/jobs.js'
import type { Deed } from '../../register/register-types.js'
import { moneySayer, sayEntry } from '../entry/say-entry.js'
import type { OfSet } from '../of-set.js'
import { Cautions, Lead, Link, Passage, Say, Tag } from '../parts/index.js'
import { pathTo } from '../routes.js'
import { choiceName } from '../words/entry/choices.js'
import { kindNames } from '../words/entry/kinds.js'
import { words } from '../words/job.js'
import { lowerFirst, sayDate, upperFirst } from '../words/say.js'
import { WriteDone } from './job-done.js'
import { JobFrame, type OfJob, pathToJob } from './job-frame.js'
import { BelongsWith } from './job-plan.js'
import { WhatItTook } from './job-took.js'

export function JobScreen(of: OfSet) {
  return (
    <JobFrame of={of} page="job">
      {(known) => <JobPage of={of} known={known} />}
    </JobFrame>
  )
}

function JobPage({ of, known }: { readonly of: OfSet; readonly known: OfJob }) {
  const { job } = known
  const { head } = words
  const left = job.parts.filter(({ isDone }) => !isDone)
  return (
    <>
      <Passage title={head.title} says={head.says} first>
        <Say>
          {job.what ?? upperFirst(job.name.replaceAll('-', ' '))}: <b>{head.states[job.state]}.</b>
        </Say>
        <Lead>{head.next[job.state]}</Lead>
        <Next of={of} job={job} />
      </Passage>
      <Passage title={words.parts.title} says={left.length === 0 ? undefined : words.parts.says}>
        {job.parts.length === 0 ? (
          <p className="prose">{words.parts.none}</p>
        ) : (
          <ul className="job-parts">
            {job.parts.map(({ part, did, isDone }) => (
              <li key={`${part} ${did}`}>
                <b>
                  {known.catalogue.parts.find(({ id }) => id === part)?.name ?? part.replaceAll('-', ' ')}
                </b>{' '}
                {isDone ? deed(did) : words.parts.toBe(deed(did))}{' '}
                {isDone && <Tag look="outline">{words.parts.isDone}</Tag>}
              </li>
            ))}
          </ul>
        )}
      </Passage>
      {isOpen(job) && <BelongsWith of={of} known={known} />}
      {isOpen(job) && job.state !== 'offered' && <WriteDone of={of} known={known} />}
      {!isOpen(job) && <WhatItTook of={of} known={known} />}
      <Spoken known={known} />
      <Passage title={words.cautionsTitle}>
        <Cautions list={words.cautions} />
      </Passage>
    </>
  )
}

/** The page that the job asks for next. */
function Next({ of, job }: { readonly of: OfSet; readonly job: Job }) {
  const { to } = words.head
  const link = {
    declined: undefined,
    offered: [pathToJob(of, 'job-quotes', job.name), to.quotes],
    decided: [pathToJob(of, 'job-kit', job.name), to.kit],
    ordered: [pathToJob(of, 'job-kit', job.name), to.kit],
    apart: [pathToJob(of, 'job-apart', job.name), to.apart],
    done: [pathTo({ page: 'proof', ...of }), to.proof],
    proved: undefined,
  }[job.state]
  if (link === undefined) return null
  const [path = '', name] = link
  return (
    <p className="gap-small">
      <Link to={path}>{name}</Link>
    </p>
  )
}

const deed = (did: Deed) => lowerFirst(choiceName('work', 'did', did))

function Spoken({ known: { job, register, catalogue } }: { readonly known: OfJob }) {
  const money = moneySayer(register.boatFacts.currency ?? 'USD')
  return (
    <Passage title={words.entries.title} says={words.entries.says}>
      <ul className="job-entries">
        {job.entries.map((entry) => (
          <li key={entry.id}>
            <span className="second">{sayDate(entry.from)}</span> {kindNames[entry.kind]}:{' '}
            {sayEntry(entry, { catalogue, money })}
            {entry.kind === 'bill' && `, ${money(entry.body.amount)}`}
          </li>
        ))}
      </ul>
    </Passage>
  )
}
