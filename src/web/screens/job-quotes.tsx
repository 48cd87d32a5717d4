/**
 * The offers for a job side by side: which to take, why, what is still to be asked, and what is paid ahead of the work.
 *
 * @module
 */

import { useMemo } from 'react'
import type { Problem } from '../../catalogue/problem.js'
import type { WalkAwayCost } from '../../job/quotes.js'
import { type WalkAwayFound, walkAwayOf } from '../../job/quotes-walk-away.js'
import { sayAnswer } from '../../job/quotes-words.js'
import { useLive } from '../data/value.js'
import type { OfSet } from '../of-set.js'
import { Lead, Link, Passage, Say } from '../parts/index.js'
import { pathTo } from '../routes.js'
import { words } from '../words/job-quotes.js'
import { lowerFirst } from '../words/say.js'
import { useAnswer } from '../work/answers.js'
import { JobFrame, type OfJob } from './job-frame.js'
import { PaidAheadOf, QuestionsTo } from './job-quotes-ask.js'
import { LinesOf } from './job-quotes-lines.js'
import { type OfOffers, useComparison, useOffers } from './job-quotes-of.js'
import { SideBySide } from './job-quotes-side.js'
import '../look/job-quotes.css'

export function JobQuotesScreen(of: OfSet) {
  return (
    <JobFrame of={of} page="job-quotes">
      {(known) => <Quotes of={of} known={known} />}
    </JobFrame>
  )
}

function Quotes({ of, known }: { readonly of: OfSet; readonly known: OfJob }) {
  const told = useOffers(of, known)
  const { offers, kept, problems } = told
  const inHand = known.register.openQuotes.filter(({ covers }) => covers.newSet === undefined).at(-1)
  const isOpen = known.register.openQuotes.some(({ job }) => job === known.job.name)
  if (offers.length === 0) return <NoOffers of={of} problems={problems} />
  if (kept !== undefined) return <OffersPage told={told} walkAway={kept} />
  if (!isOpen) return <OffersPage told={told} note={words.noWalkAway} />
  if (inHand?.job !== known.job.name)
    return <OffersPage told={told} note={words.notInHand(inHand?.job.replaceAll('-', ' ') ?? '')} />
  return <Reckoned told={told} />
}

/** With the price to walk away from as the page of alternatives reckons it. */
function Reckoned({ told }: { readonly told: OfOffers }) {
  const { view, basis, progress } = useAnswer(told.of.boat, told.of.set, {}, { roughFirst: false })
  const { rough } = useLive(progress)
  // first figures may lie far off
  const walkAway = rough ? undefined : view?.report.walkAway
  const found = useMemo((): WalkAwayFound | undefined => {
    const read = walkAway && basis && walkAwayOf(walkAway, basis.model)
    return read ? { ...read, from: 'reckoned' } : undefined
  }, [walkAway, basis])
  if (found === undefined) return <OffersPage told={told} note={words.reckoning} />
  return <OffersPage told={told} walkAway={found} />
}

interface PageProps {
  readonly told: OfOffers
  readonly walkAway?: WalkAwayFound
  /** Why there is no price to walk away from. */
  readonly note?: string
}

function OffersPage({ told: of, walkAway, note }: PageProps) {
  const { comparison, told } = useComparison(of, walkAway)
  const { lead, clause, rest } = sayAnswer(comparison, of.say)
  return (
    <>
      <Passage title={words.title} says={words.says} first>
        <Say>
          {lead}
          <b>{clause}</b>
        </Say>
        <Lead>
          {rest}{' '}
          <span aria-live="polite">
            {walkAway !== undefined && comparison.walkAway !== undefined
              ? sayWalkAway(walkAway, comparison.walkAway, of.say.money)
              : note}
          </span>
        </Lead>
      </Passage>
      <SideBySide of={of} told={told} />
      <LinesOf of={of} told={told} />
      <QuestionsTo of={of} told={told} />
      <PaidAheadOf of={of} told={told} />
      <Problems of={of.of} list={[...of.problems, ...comparison.problems]} />
    </>
  )
}

function sayWalkAway(
  { from, otherwise }: WalkAwayFound,
  { cost, low, high }: WalkAwayCost,
  money: (amount: number) => string,
): string {
  const said = words.from[from]
  const lead =
    cost <= 0
      ? words.notEvenFree(said)
      : words.walkAway({
          cost: money(cost),
          low: money(low),
          high: money(high),
          from: said,
          moves: low < high,
        })
  return otherwise === undefined ? lead : `${lead}${words.otherwise(lowerFirst(otherwise))}`
}

function NoOffers({ of, problems }: { readonly of: OfSet; readonly problems: readonly Problem[] }) {
  const { none } = words
  return (
    <>
      <Passage title={words.title} says={words.says} first>
        <Say>{none.say}</Say>
        <Lead>{none.lead}</Lead>
        <p className="gap">
          <Link to={pathTo({ page: 'logbook', ...of })}>{none.write}</Link>
        </p>
      </Passage>
      <Problems of={of} list={problems} />
    </>
  )
}

function Problems({ of, list }: { readonly of: OfSet; readonly list: readonly Problem[] }) {
  if (list.length === 0) return null
  return (
    <Passage title={words.problems} says={words.problemsSay}>
      <ul className="quote-problems">
        {list.map(({ code, path, found, allowed }) => (
          <li key={`${code} ${path}`}>
            {words.problem[code] ?? allowed} <span className="second">{found}</span>
          </li>
        ))}
      </ul>
      <p className="gap-small screen-only">
        <Link to={pathTo({ page: 'logbook', ...of })}>{words.toLogbook}</Link>
      </p>
    </Passage>
  )
}
