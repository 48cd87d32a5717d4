/**
 * What jobs took, against what was expected of them, by kind; and whether that is heard.
 *
 * @module
 */

import { useId, useMemo, useState } from 'react'
import { moneyIn } from '../../alternatives/say.js'
import { excessesOf, type JobTaken, jobsTaken } from '../../job/actual.js'
import { fewJobs, type PooledOverrun, poolOverruns } from '../../job/overrun.js'
import type { Draft } from '../../logbook/draft.js'
import { setCatalogueOf } from '../../register/set-kind-of.js'
import { today } from '../data/today.js'
import type { OfSet } from '../of-set.js'
import { Passage } from '../parts/index.js'
import { took as words } from '../words/job.js'
import { sayNumber, upperFirst } from '../words/say.js'
import type { OfJob } from './job-frame.js'
import { SizingRows } from './sizing-rows.js'

export function WhatItTook({ of, known }: { readonly of: OfSet; readonly known: OfJob }) {
  const { register, catalogue, jobs, job } = known
  const taken = useMemo(
    () => jobsTaken(jobs, { register, catalogue: setCatalogueOf(register, catalogue).catalogue }),
    [jobs, register, catalogue],
  )
  const pooled = useMemo(() => poolOverruns(excessesOf(taken)), [taken])
  const own = taken.find((one) => one.job === job.name)
  if (taken.length === 0) return null
  return (
    <Passage title={words.title} says={words.says}>
      {own !== undefined && <Own taken={own} currency={register.boatFacts.currency ?? ''} />}
      {pooled.jobs > 0 && <Kinds pooled={pooled} />}
      <Heard of={of} known={known} />
    </Passage>
  )
}

function Own({ taken: { money, hours }, currency }: { readonly taken: JobTaken; readonly currency: string }) {
  const say = (amount: number) => moneyIn(currency, amount)
  return (
    <ul className="prose">
      <li>
        {money === undefined
          ? words.noMoney
          : words.money[money.from](say(money.expected), say(money.usual), say(money.came))}
      </li>
      <li>
        {hours === undefined ? words.noHours : words.hours(sayNumber(hours.expected), sayNumber(hours.used))}
      </li>
    </ul>
  )
}

function Kinds({ pooled }: { readonly pooled: PooledOverrun }) {
  return (
    <div className="gap">
      <SizingRows
        name={words.title}
        heads={words.heads}
        rows={pooled.kinds.map(({ kind, jobs, own, mean }) => [
          upperFirst(kind.replaceAll('-', ' ')),
          `${jobs}${jobs < fewJobs ? words.few : ''}`,
          `${Math.exp(own).toFixed(2)} ×`,
          `${Math.exp(mean).toFixed(2)} ×`,
        ])}
      />
    </div>
  )
}

/** The owner's word on it is an entry of terms, as every other. */
function Heard({ of: { boat }, known: { register, log } }: { readonly of: OfSet; readonly known: OfJob }) {
  const id = useId()
  const [state, setState] = useState<'still' | 'writing' | 'failed'>('still')
  const heard = register.terms.learnFromJobs === true
  const write = async (learnFromJobs: boolean) => {
    setState('writing')
    const draft = { boat, set: null, kind: 'terms', from: today(), body: { learnFromJobs } } as Draft
    const written = await log.append([draft])
    setState(written.ok ? 'still' : 'failed')
  }
  if (log.readOnly) return <p className="small gap">{words.readOnly}</p>
  return (
    <>
      <p className="picks gap">
        <label htmlFor={id}>
          <input
            id={id}
            type="checkbox"
            checked={heard}
            disabled={state === 'writing'}
            onChange={({ target }) => void write(target.checked)}
          />
          {words.heard}
        </label>
      </p>
      <p className="small prose gap-small">{words.heardSays}</p>
      {state === 'failed' && <p className="problem">{words.notWritten}</p>}
    </>
  )
}
