/**
 * Taking a job apart and putting it back: the next step, the order of undoing, the same list reversed, the way out.
 *
 * @module
 */

import { useMemo, useState } from 'react'
import { programVersion } from '../../alternatives/program-version.js'
import { type Apart, apartOf, linesBefore, proposedSteps } from '../../job/apart.js'
import { leadAdvice } from '../../job/apart-leads.js'
import { liftingAdvice, measureOut, type WayOut, wayOutOf } from '../../job/apart-out.js'
import { apartSheetOf, linesOfAll, sayWayOut } from '../../job/apart-sheet.js'
import { photographsOf } from '../../logbook/photographs.js'
import { loadFactsOf } from '../../register/load-facts.js'
import { useFaultModel } from '../data/fault-model.js'
import { useKept } from '../data/kept-text.js'
import { today } from '../data/today.js'
import { write } from '../data/write.js'
import { SendingState } from '../entry/sending-state.js'
import type { OfSet } from '../of-set.js'
import { Button, Cautions, Lead, Link, Passage, PlainButton, Preparing, Say } from '../parts/index.js'
import { pathTo } from '../routes.js'
import { words as jobWords } from '../words/job.js'
import { words } from '../words/job-apart.js'
import { PuttingBack } from './job-apart-back.js'
import { Order } from './job-apart-order.js'
import { MarkedPhotograph } from './job-apart-picture.js'
import { firstValues, StepForm } from './job-apart-step.js'
import { BehindLines } from './job-apart-stops.js'
import { JobFrame, type OfJob } from './job-frame.js'
import type { ApartKnown } from './of-apart.js'
import { SheetPaper } from './sheet-paper.js'
import '../look/faults.css'
import '../look/job-apart.css'

export function JobApartScreen(of: OfSet) {
  return (
    <JobFrame of={of} page="job-apart">
      {(known) => <ApartPage key={known.job.name} of={of} known={known} />}
    </JobFrame>
  )
}

function ApartPage({ of, known }: { readonly of: OfSet; readonly known: OfJob }) {
  const { log, job, register, catalogue } = known
  const model = useFaultModel()
  const slot = `${of.boat}.${of.set}.apart.${job.name}`
  const [out, setOut] = useKept<boolean>(`${slot}.out`, false)
  const [said, setSaid] = useState('')
  const apart = useMemo(() => {
    const { leads } = register.setFacts
    const proposed = proposedSteps({ parts: job.parts, access: out ? ['set-out'] : [], leads }, catalogue)
    const all = [...log.kept, ...log.waiting]
    return apartOf(log.entries, { set: of.set, job: job.name, proposed, all })
  }, [log, job, register, catalogue, of.set, out])
  const way = useMemo(() => {
    if (!apart.steps.some(({ access }) => access === 'set-out')) return undefined
    const { space } = loadFactsOf(log.entries, { ...of, asOf: today() })
    return wayOutOf(catalogue, { facts: register.setFacts, space })
  }, [apart, log, catalogue, register, of])
  if (model === undefined) return <Preparing title={words.title} words={jobWords.preparing} />
  const shared = { of, known, apart, stopLines: model.stopLines, slot, say: setSaid }
  return (
    <>
      <div className="screen-only">
        <Where {...shared} said={said} out={out} onOut={setOut} />
        {!log.readOnly && <Next {...shared} />}
        <Order {...shared} />
        <PuttingBack {...shared} />
        {way !== undefined && <Out way={way} />}
        <Passage title={words.leadsTitle}>
          <ul className="prose">
            {leadAdvice.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
          <p className="prose gap-small">
            {words.links} <Link to={pathTo({ page: 'links', ...of })}>{words.toLinks}</Link>.
          </p>
        </Passage>
        <Passage title={jobWords.cautionsTitle}>
          <Cautions list={words.cautions} />
        </Passage>
      </div>
      <div className="brief print-only" aria-hidden="true">
        <SheetPaper
          sheet={apartSheetOf({
            register,
            job: job.name,
            apart,
            stopLines: linesOfAll(apart, model.stopLines),
            ...(way === undefined ? {} : { wayOut: way }),
            demonstration: log.readOnly,
            program: programVersion,
          })}
        />
        <PrintedPictures apart={apart} />
      </div>
    </>
  )
}

function Where({
  of,
  known,
  apart,
  said,
  out,
  onOut,
}: ApartKnown & {
  readonly said: string
  readonly out: boolean
  readonly onOut: (out: boolean | undefined) => void
}) {
  const { steps, back, nextBack, loose, sharedPlaces } = apart
  const done = steps.filter(({ entry }) => entry !== undefined).length
  const returned = back.filter(({ refit }) => refit !== undefined).length
  const isBack = back.length > 0 && nextBack === undefined
  return (
    <Passage title={words.title} first says={words.says}>
      {steps.length === 0 ? (
        <>
          <Say>
            {words.nothing.before}
            <b>{words.nothing.bold}</b>
          </Say>
          <Lead>{words.nothing.lead}</Lead>
        </>
      ) : (
        <Say>
          {words.count(done, steps.length)}
          {back.length > 0 && (
            <>
              , <b>{words.backCount(returned, back.length)}</b>
            </>
          )}
          .
        </Say>
      )}
      {isBack && (
        <Lead>
          {words.allBack} {words.toProof} <Link to={pathTo({ page: 'proof', ...of })}>{words.proof}</Link>
        </Lead>
      )}
      {known.log.readOnly && <p className="prose">{words.readOnly}</p>}
      {loose.length > 0 && <p className="problem">{words.loose(loose.length)}</p>}
      {sharedPlaces.length > 0 && <p className="problem">{words.shared(sharedPlaces.join(', '))}</p>}
      <p className="gap-small">
        <label className="apart-out">
          <input type="checkbox" checked={out} onChange={() => onOut(out ? undefined : true)} />
          {words.out}
        </label>
      </p>
      <p className="fine">{words.print}</p>
      <div aria-live="polite">{said !== '' && <p className="written">{said}</p>}</div>
      <SendingState boat={of.boat} />
    </Passage>
  )
}

/** The step that comes next, behind its stop lines. */
function Next(props: ApartKnown) {
  const { of, known, apart, stopLines, slot, say } = props
  const [own, setOwn] = useState(false)
  const step = own ? undefined : apart.next
  const day = today()
  const lines = linesBefore(step ?? {}, { apart, day, stopLines })
  const proposal = step?.proposal
  const body = (cleared: readonly string[]) => ({
    job: known.job.name,
    n: apart.nextN,
    ...(step === undefined ? {} : { what: step.what, proposed: step.key }),
    ...(step?.access === undefined ? {} : { access: step.access }),
    ...(cleared.length === 0 ? {} : { cleared }),
  })
  const passBy = async () => {
    if (step === undefined) return
    const draft = {
      ...of,
      kind: 'apart-step' as const,
      from: day,
      body: { ...body([]), what: step.what, notNeeded: true as const },
    }
    const written = await write([draft])
    say(
      written.ok
        ? words.step.written(`${step.what}: ${words.order.notNeeded}`)
        : written.problems.map(({ found }) => found).join(' '),
    )
  }
  return (
    <Passage title={step === undefined ? words.step.ownTitle : words.step.title} says={words.step.says}>
      {step !== undefined && <p className="apart-what">{step.what}.</p>}
      {proposal?.leads !== undefined && (
        <p className="prose">
          {proposal.leads.length === 0
            ? words.step.leadsUnknown
            : words.step.leads(proposal.leads.join(', '))}
        </p>
      )}
      <BehindLines key={step?.key ?? 'own'} lines={lines} slot={`${slot}.lines.${day}`}>
        {(cleared) => (
          <StepForm
            key={step?.key ?? 'own'}
            of={of}
            known={known}
            kind="apart-step"
            slot={`${slot}.${step?.key ?? 'own'}`}
            base={body(cleared)}
            pictureSlots={proposal?.pictures ?? []}
            first={step === undefined ? {} : firstValues(step)}
            name={step?.what ?? words.step.ownTitle}
            act={words.step.write}
            fieldsTitle={words.step.fields}
            open={step === undefined ? ['what'] : []}
            acts={
              step !== undefined && (
                <Button look="light" onClick={() => void passBy()}>
                  {words.step.notNeeded}
                </Button>
              )
            }
            onWritten={say}
          />
        )}
      </BehindLines>
      {apart.next !== undefined && (
        <p className="gap-small">
          <PlainButton onClick={() => setOwn(!own)}>{own ? words.step.proposed : words.step.own}</PlainButton>
        </p>
      )}
    </Passage>
  )
}

/** Small, upright, and without where they were taken. */
function PrintedPictures({ apart }: { readonly apart: Apart }) {
  const taken = apart.steps.flatMap(({ key, what, entry, refit }) =>
    [entry, refit].flatMap((one) =>
      one === undefined || photographsOf(one).length === 0
        ? []
        : [{ key: `${key} ${one.kind}`, what: `${entry?.body.n}. ${what}`, photographs: photographsOf(one) }],
    ),
  )
  if (taken.length === 0) return null
  return (
    <Passage title={words.picturesTitle}>
      {taken.map(({ key, what, photographs }) => (
        <div key={key}>
          <p className="small">{what}</p>
          <div className="apart-photographs">
            {photographs.map((photograph) => (
              <MarkedPhotograph key={photograph.sha256} photograph={photograph} />
            ))}
          </div>
        </div>
      ))}
    </Passage>
  )
}

function Out({ way }: { readonly way: WayOut }) {
  const { wayOut } = words
  return (
    <Passage title={wayOut.title} says={wayOut.says}>
      {sayWayOut(way).map((line) => (
        <p className="prose" key={line}>
          {line}
        </p>
      ))}
      {(
        [
          [wayOut.measure, measureOut],
          [wayOut.lift, liftingAdvice],
        ] as const
      ).map(([title, lines]) => (
        <div key={title}>
          <h3 className="gap-small">{title}</h3>
          <ul className="prose">
            {lines.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </div>
      ))}
    </Passage>
  )
}
