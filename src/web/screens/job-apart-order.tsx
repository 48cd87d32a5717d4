/**
 * The order of undoing, as it was done and as it is still proposed.
 *
 * @module
 */

import type { ApartStep } from '../../job/apart.js'
import { hasFasteners, torqueOf } from '../../job/apart-sheet.js'
import { sayBag } from '../../job/apart-words.js'
import { photographsOf } from '../../logbook/photographs.js'
import { Passage } from '../parts/index.js'
import { words } from '../words/job-apart.js'
import { sayDate } from '../words/say.js'
import { MarkedPhotograph } from './job-apart-picture.js'
import type { ApartKnown } from './of-apart.js'

export function Order({ apart }: ApartKnown) {
  if (apart.steps.length === 0) return null
  return (
    <Passage title={words.order.title} says={words.order.says} className="long">
      <ol className="apart-order">
        {apart.steps.map((step, at) => (
          <Step key={step.key} step={step} place={step.entry?.body.n ?? at + 1} />
        ))}
      </ol>
    </Passage>
  )
}

function Step({ step, place }: { readonly step: ApartStep; readonly place: number }) {
  const { order } = words
  const { entry, refit, proposal, what } = step
  const states =
    entry === undefined
      ? [order.toCome]
      : entry.body.notNeeded
        ? [order.notNeeded]
        : [order.done(sayDate(entry.from)), ...(refit === undefined ? [] : [order.back(sayDate(refit.from))])]
  return (
    <li className={entry === undefined ? 'to-come' : ''}>
      <span className="place">{place}</span>
      <div>
        <p>
          {entry === undefined ? what : <b>{what}</b>} <span className="fine">{states.join(', ')}</span>
        </p>
        <Details step={step} />
        {entry === undefined && proposal !== undefined && (
          <p className="fine">{order.pictureFirst(proposal.pictures.join('; '))}</p>
        )}
        {entry !== undefined && photographsOf(entry).length > 0 && (
          <div className="apart-photographs">
            {photographsOf(entry).map((photograph) => (
              <MarkedPhotograph key={photograph.sha256} photograph={photograph} />
            ))}
          </div>
        )}
      </div>
    </li>
  )
}

/** Leads, bag, torque and remark of a step that was written down. */
export function Details({ step }: { readonly step: ApartStep }) {
  const { entry } = step
  if (entry === undefined) return null
  const { leads = [], joined = [], bag, remark } = entry.body
  const lines = [
    ...(leads.length === 0
      ? []
      : [
          words.order.leads(
            leads
              .map(({ lead, label, from }) => [lead, `“${label}”`, from].filter(Boolean).join(' '))
              .join(', '),
          ),
        ]),
    ...(joined.length === 0 ? [] : [words.order.joined(joined.join(', '))]),
    ...(bag === undefined ? [] : [sayBag(bag)]),
    ...(hasFasteners(step) ? [words.back.torque(torqueOf(step))] : []),
    ...(remark === undefined ? [] : [remark]),
  ]
  return lines.map((line) => (
    <p className="small second" key={line}>
      {line}
    </p>
  ))
}
