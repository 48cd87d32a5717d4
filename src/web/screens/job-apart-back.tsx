/**
 * Putting back: the list of undoing reversed, the picture from before beside the new one.
 *
 * @module
 */

import { type ApartStep, linesBefore } from '../../job/apart.js'
import { sayRefitStep } from '../../job/apart-words.js'
import { photographsOf } from '../../logbook/photographs.js'
import { today } from '../data/today.js'
import { Passage } from '../parts/index.js'
import { words } from '../words/job-apart.js'
import { sayDate } from '../words/say.js'
import { Details } from './job-apart-order.js'
import { MarkedPhotograph } from './job-apart-picture.js'
import { StepForm } from './job-apart-step.js'
import { BehindLines } from './job-apart-stops.js'
import type { ApartKnown } from './of-apart.js'

export function PuttingBack(props: ApartKnown) {
  const { apart, known } = props
  const { back } = words
  return (
    <Passage title={back.title} says={back.says} className="long">
      {apart.back.length === 0 && <p className="prose">{back.none}</p>}
      <ol className="apart-order">
        {apart.back.map((step) => (
          <li key={step.key}>
            <span className="place">{step.entry?.body.n}</span>
            <div>
              <p>
                <b>{step.what}</b>{' '}
                {step.refit !== undefined && (
                  <span className="fine">
                    {[sayDate(step.refit.from), sayRefitStep(step.refit.body), step.refit.body.remark]
                      .filter(Boolean)
                      .join('; ')}
                  </span>
                )}
              </p>
              {step.refit !== undefined ? (
                <Both step={step} />
              ) : (
                <>
                  <Details step={step} />
                  {step.key === apart.nextBack?.key && !known.log.readOnly && (
                    <NextBack {...props} step={step} />
                  )}
                </>
              )}
            </div>
          </li>
        ))}
      </ol>
    </Passage>
  )
}

/** Before and now, of a step that is back. */
function Both({ step }: { readonly step: ApartStep }) {
  const now = step.refit === undefined ? [] : photographsOf(step.refit)
  if (now.length === 0) return null
  return (
    <div className="apart-beside">
      <Before step={step} />
      <div>
        <h3 className="small">{words.back.now}</h3>
        {now.map((photograph) => (
          <MarkedPhotograph key={photograph.sha256} photograph={photograph} />
        ))}
      </div>
    </div>
  )
}

function Before({ step }: { readonly step: ApartStep }) {
  const before = step.entry === undefined ? [] : photographsOf(step.entry)
  return (
    <div>
      <h3 className="small">{words.back.before}</h3>
      {before.length === 0 && <p className="fine">{words.back.noBefore}</p>}
      {before.map((photograph) => (
        <MarkedPhotograph key={photograph.sha256} photograph={photograph} />
      ))}
    </div>
  )
}

function NextBack({
  of,
  known,
  apart,
  stopLines,
  slot,
  say,
  step,
}: ApartKnown & { readonly step: ApartStep }) {
  const day = today()
  const lines = linesBefore(step, { apart, day, stopLines })
  return (
    <BehindLines lines={lines} slot={`${slot}.lines.${day}`}>
      {(cleared) => (
        <StepForm
          of={of}
          known={known}
          kind="refit-step"
          slot={`${slot}.back.${step.key}`}
          base={{
            job: known.job.name,
            step: step.key,
            ...(cleared.length === 0 ? {} : { cleared }),
          }}
          pictureSlots={[words.back.now]}
          first={{}}
          name={words.back.next(step.what)}
          act={words.back.tick}
          fieldsTitle={words.back.fields}
          onWritten={say}
        >
          <Before step={step} />
        </StepForm>
      )}
    </BehindLines>
  )
}
