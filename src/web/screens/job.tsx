/**
 * A job: how far it has come, what belongs to it, and what the log says of it.
 *
 * @module
 */

import { isOpen } from '../../job/jobs.js'
import type { Deed } from '../../register/register-types.js'
import { moneySayer, sayEntry } from '../entry/say-entry.js'
import type { OfSet } from '../of-set.js'
import { Cautions, Lead, Link, Passage, Say, Tag } from '../parts/index.js'
import { pathTo } from '../routes.js'
import { words } from '../words/job.js'
import { choiceName, kindNames } from '../words/logbook.js'
import { lowerFirst, sayDate, upperFirst } from '../words/say.js'
import { JobFrame, type OfJob } from './job-frame.js'
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
        {job.state === 'done' && (
          <p className="gap-small">
            <Link to={pathTo({ page: 'proof', ...of })}>{head.toProof}</Link>
          </p>
        )}
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
      {!isOpen(job) && <WhatItTook of={of} known={known} />}
      <Spoken known={known} />
      <Passage title={words.cautionsTitle}>
        <Cautions list={words.cautions} />
      </Passage>
    </>
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
