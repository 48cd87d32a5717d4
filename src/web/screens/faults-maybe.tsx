/**
 * What it may be, why, and the cheapest way on; on paper also what to look at next.
 *
 * @module
 */

import { owedJobOf } from '../../faults/case-entries.js'
import { confirmWords } from '../../faults/stop-lines.js'
import { whyOf } from '../../faults/why.js'
import {
  checkName,
  faultName,
  handOverNames,
  riskNames,
  sayAnswerKey,
  sayChance,
} from '../../faults/words.js'
import { proofTestOf } from '../../proof/tests.js'
import { useCatalogue } from '../data/catalogue.js'
import { Behind, Passage } from '../parts/index.js'
import { words } from '../words/faults.js'
import { lowerFirst, sayList, sayNumber, shortName } from '../words/say.js'
import type { OfCase } from './of-case.js'

const { maybe, cheapest, closed: over, sheet } = words
const fewFaults = 6
const barWidth = 72

export function MayBe(of: OfCase) {
  const { model, diagnosis, own } = of
  const { ranked, second, unexplained } = diagnosis
  const any = own.body.symptoms.length + own.body.checks.length > 0
  return (
    <Passage title={maybe.title} says={any ? maybe.says : maybe.prior}>
      <ul className="maybe" aria-label={maybe.caption}>
        {ranked.slice(0, fewFaults).map(({ fault, chance }) => (
          <li key={fault}>
            <div className="row">
              <span>{faultName(model, fault)}</span>
              <span className="number">
                <svg width={barWidth} height="12" aria-hidden="true">
                  <line className="hair" x1="0" x2={barWidth} y1="6" y2="6" />
                  <line className="stroke" x1="0" x2={barWidth * chance} y1="6" y2="6" />
                </svg>
                <b>{sayChance(chance)}</b>
              </span>
            </div>
            <p className="small second">{maybe.mend(mendOf(of, fault))}</p>
            <Behind name={`${maybe.why}: ${lowerFirst(faultName(model, fault))}`}>
              <WhyFault of={of} fault={fault} />
            </Behind>
          </li>
        ))}
      </ul>
      {second !== undefined && (
        <p className="gap">{maybe.second(faultName(model, second.fault), sayChance(second.chance))}</p>
      )}
      {unexplained && <p className="gap">{maybe.unexplained}</p>}
      {any && <p className="prose gap">{sayCheapest(of)}</p>}
    </Passage>
  )
}

function mendOf({ model }: OfCase, id: string): string {
  const fault = model.faults.find((one) => one.id === id)!
  return fault.handOver === undefined ? fault.mend : `${fault.mend} (${handOverNames[fault.handOver]})`
}

function WhyFault({ of, fault }: { readonly of: OfCase; readonly fault: string }) {
  const { model, tables, diagnosis, catalogue } = of
  const why = whyOf(tables, diagnosis.posterior, {
    fault,
    left: diagnosis.left,
    catalogue,
  })
  const partName = (id: string) =>
    lowerFirst(shortName(catalogue.parts.find((part) => part.id === id)?.name ?? id))
  const said = (times: number) =>
    Math.abs(Math.log(times)) < 0.02
      ? maybe.nothing
      : times > 1
        ? maybe.times(sayNumber(times, 1))
        : maybe.timesAgainst(sayNumber(1 / times, 1))
  return (
    <ul className="why small">
      {why.speaks.length === 0 && <li>{maybe.silent}</li>}
      {why.speaks.map(({ answer, times }) => (
        <li key={sayAnswerKey(model, answer)}>
          {sayAnswerKey(model, answer)}: <b>{said(times)}</b>
        </li>
      ))}
      {why.looksAlike.map((one) => (
        <li key={one.fault}>
          {maybe.alike(faultName(model, one.fault), sayChance(one.chance))}
          {one.toldApartBy === undefined ? '' : maybe.apart(checkName(model, one.toldApartBy))}
        </li>
      ))}
      {why.dragsDown.length > 0 && (
        <li>{maybe.brings(sayList(why.dragsDown.map((id) => lowerFirst(faultName(model, id)))))}</li>
      )}
      {why.draggedParts.map(({ part, chance, what }) => (
        <li key={part}>{maybe.drags(partName(part), sayChance(chance), what)}</li>
      ))}
    </ul>
  )
}

function sayCheapest({ model, diagnosis, sayCost }: OfCase): string {
  const best = diagnosis.cheapest
  if (best.do === 'look') {
    const name = lowerFirst(checkName(model, best.check))
    return cheapest.look(name, sayCost(best.totalCost), sayCost(best.mendingNow))
  }
  if (best.do === 'hand-over') return cheapest.hand(sayCost(best.totalCost))
  const { mend } = model.faults.find(({ id }) => id === best.fault)!
  return `${cheapest.mend(lowerFirst(mend), sayCost(best.totalCost))}${cheapest.stops}`
}

/** On paper: the looks with boxes to tick, and a line for what it was. */
export function SheetLooks({ diagnosis }: OfCase) {
  return (
    <div className="print-only">
      <Passage title={sheet.title}>
        {diagnosis.suggestions.map(({ check, confirm }) => (
          <div key={check.id} className="sheet-look">
            <p>
              <b>{check.name}</b>, {check.minutes} min, {riskNames[check.risk]}
            </p>
            <p>{check.how}</p>
            <ul>
              {confirm.flatMap((line) =>
                confirmWords(line).map((one) => <li key={`${line.id}${one}`}>☐ {one}</li>),
              )}
            </ul>
            <p>{check.outcomes.map(({ name }) => `☐ ${name}`).join('   ')}</p>
          </div>
        ))}
        {diagnosis.suggestions.length === 0 && <p>{words.look.none}</p>}
      </Passage>
      <Passage title={sheet.really}>
        <p>____________________________________________________________</p>
        <p className="fine">{words.caution}</p>
      </Passage>
    </div>
  )
}

/** What it proved to be, and what is owed. */
export function Closed({ model, own }: OfCase) {
  const { closed } = own.body
  const catalogue = useCatalogue()
  if (closed === undefined || catalogue === undefined) return null
  const job = owedJobOf(model, own.body, catalogue.owed)
  const was = closed.was ?? (closed.fault === undefined ? undefined : faultName(model, closed.fault))
  return (
    <Passage title={over.title}>
      <p className="lead">{was === undefined ? over.unknown : over.was(was)}</p>
      {closed.place !== undefined && closed.chance !== undefined && (
        <p className="gap-small">{over.place(closed.place, sayChance(closed.chance))}</p>
      )}
      {job?.mend !== undefined && (
        <p className="gap-small">
          {over.todo(job.handOver === undefined ? job.mend : `${job.mend}, ${handOverNames[job.handOver]}`)}
        </p>
      )}
      {job !== undefined && job.testsOwed.length > 0 && (
        <p className="gap-small">
          {over.tests(sayList(job.testsOwed.map((id) => lowerFirst(checkName(model, id)))))}
        </p>
      )}
      {job !== undefined && job.proofsOwed.length > 0 && (
        <p className="gap-small">
          {over.proofs(sayList(job.proofsOwed.map((id) => lowerFirst(proofTestOf(id)?.name ?? id))))}
        </p>
      )}
      {job !== undefined && job.openLines.length > 0 && (
        <p className="gap-small">
          <b>{over.lines(sayList(job.openLines.map((id) => id.replaceAll('-', ' '))))}</b>
        </p>
      )}
    </Passage>
  )
}
