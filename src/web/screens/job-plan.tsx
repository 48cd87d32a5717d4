/**
 * What belongs with a job: which further parts to renew while the set is open for it, why, and the next best.
 *
 * @module
 */

import { useState } from 'react'
import { moneyIn } from '../../alternatives/say.js'
import type { WorthAdding } from '../../job/additions.js'
import { type Bundle, bundleWith } from '../../job/bundle.js'
import type { Job } from '../../job/jobs.js'
import { bundlingOf, type SayPlan, sayChoice, sayWhy } from '../../job/plan-job.js'
import type { Draft } from '../../logbook/draft.js'
import { useSaid } from '../data/region.js'
import { today } from '../data/today.js'
import type { OfSet } from '../of-set.js'
import { Behind, Button, FigureRow, type FigureSaid, Heads, Lead, Passage, Refining } from '../parts/index.js'
import { plan as words } from '../words/job.js'
import { sayNumber, upperFirst } from '../words/say.js'
import { type JobPlan, useJobPlan } from '../work/job-plan.js'
import type { JobWorthState } from '../work/messages.js'
import type { OfJob } from './job-frame.js'
import { Typed } from './plan-fields.js'

interface Limits {
  readonly money: string
  readonly days: string
}

export function BelongsWith({ of, known }: { readonly of: OfSet; readonly known: OfJob }) {
  const [limits, setLimits] = useState<Limits>({ money: '', days: '' })
  const [hoursPerDay, setHoursPerDay] = useState(6)
  const money = numberIn(limits.money)
  const days = numberIn(limits.days)
  const plan = useJobPlan(of, known.job, {
    ...(money === undefined ? {} : { money }),
    ...(days === undefined ? {} : { hours: days * hoursPerDay }),
  })
  if (plan.of !== undefined && plan.of.hoursPerDay !== hoursPerDay) setHoursPerDay(plan.of.hoursPerDay)
  return (
    <Passage title={words.title} says={words.says} className="screen-only">
      <div aria-live="polite">
        <HowFar plan={plan} />
      </div>
      {plan.of !== undefined && plan.worth !== undefined && plan.bundled?.ok && (
        <Choice
          key={plan.bundled.best.parts.join(' ')}
          of={of}
          known={known}
          plan={plan}
          best={plan.bundled.best}
          second={plan.bundled.second}
        />
      )}
      {plan.worth !== undefined && (
        <div className="entry-fields gap">
          <Typed
            name={words.mostMoney(plan.of?.currency ?? '')}
            value={limits.money}
            onChange={(typed) => setLimits({ ...limits, money: typed })}
          />
          <Typed
            name={words.mostDays}
            value={limits.days}
            onChange={(typed) => setLimits({ ...limits, days: typed })}
          />
        </div>
      )}
    </Passage>
  )
}

function HowFar({ plan }: { readonly plan: JobPlan }) {
  const { stage, share, problem, bundled } = plan
  if (stage === 'failed') return <p className="prose">{words.failed(problem ?? '')}</p>
  if (bundled !== undefined && !bundled.ok) return <p className="prose">{words.failed(bundled.words)}</p>
  if (stage === 'done')
    return bundled === undefined ? <p className="waiting second">{words.choosing}</p> : null
  return (
    <>
      <p className="waiting second">{words.working}</p>
      <Refining
        share={share}
        state={stage === 'working' ? 'refining' : 'stopped'}
        word={words.word}
        onStop={plan.stop}
        onGoOn={plan.goOn}
      />
    </>
  )
}

interface ChoiceProps {
  readonly of: OfSet
  readonly known: OfJob
  readonly plan: JobPlan
  readonly best: Bundle
  readonly second: Bundle | undefined
}

function Choice({ of, known, plan, best, second }: ChoiceProps) {
  const said = useSaid()
  const worth = plan.worth!
  const facts = plan.of!
  const { openings, tooSmall, unplayed } = worth
  const [chosen, setChosen] = useState<readonly string[]>(best.parts)
  const say = sayer(facts, said)
  const bundling = bundlingOf(worth, {})
  const own = bundleWith(
    bundling,
    new Set(worth.additions.flatMap(({ part }, at) => (chosen.includes(part) ? [at] : []))),
  )
  const ranked = worth.additions.toSorted((a, b) => gain(b, best) - gain(a, best))
  const first = ranked.slice(0, shownFirst)
  const others = ranked.slice(shownFirst)
  const isBest = own.parts.join(' ') === best.parts.join(' ')
  return (
    <>
      <Lead>
        {best.parts.length === 0 ? (
          <b>{words.nothing}</b>
        ) : (
          <>
            {words.renew}
            <b>{sayChoice(best, say)}</b>
            {words.costs(say.money(best.price))}
          </>
        )}{' '}
        {plan.together !== undefined &&
          words.together(
            say.money(plan.together.saves),
            say.money(plan.together.standardError),
            sayNumber(facts.horizonYears),
          )}
      </Lead>
      {second !== undefined && (
        <p className="prose gap-small">
          {words.second(sayChoice(second, say), say.money(best.net - second.net))}
        </p>
      )}
      {first.length > 0 && <Rows list={first} say={say} chosen={chosen} onChoose={setChosen} />}
      {others.length > 0 && (
        <Behind name={words.others(others.length)}>
          <Rows list={others} say={say} chosen={chosen} onChoose={setChosen} />
        </Behind>
      )}
      {!isBest && (
        <p className="prose gap-small" aria-live="polite">
          {words.own(say.money(own.price), say.money(best.net - own.net))}
        </p>
      )}
      <Accept of={of} known={known} own={own} say={say} />
      <Behind name={words.behind}>
        <ul className="prose">
          {openings.map(({ id, price }) => (
            <li key={id}>
              {words.opening(
                known.catalogue.access.find((way) => way.id === id)?.name ?? id,
                say.money(price),
              )}
            </li>
          ))}
          <li>{words.tooSmall(sayNumber(tooSmall))}</li>
          {unplayed > 0 && <li>{words.unplayed(sayNumber(unplayed))}</li>}
          <li>{words.cautious}</li>
        </ul>
      </Behind>
    </>
  )
}

/** As many are shown at once. */
const shownFirst = 6

/** What a part saves beyond its price; those of the best choice first. */
function gain({ part, saves, mayPutIn, price }: WorthAdding, best: Bundle): number {
  return saves - mayPutIn - price + (best.parts.includes(part) ? 1e12 : 0)
}

interface RowsProps {
  readonly list: readonly WorthAdding[]
  readonly say: SayPlan
  readonly chosen: readonly string[]
  readonly onChoose: (chosen: readonly string[]) => void
}

function Rows({ list, say, chosen, onChoose }: RowsProps) {
  return (
    <table className="table folds gap">
      <Heads list={[words.heads.part, { number: words.heads.now }, words.heads.why]} />
      <tbody>
        {list.map((one) => (
          <Row
            key={one.part}
            one={one}
            say={say}
            taken={chosen.includes(one.part)}
            onTake={(take) =>
              onChoose(take ? [...chosen, one.part] : chosen.filter((part) => part !== one.part))
            }
          />
        ))}
      </tbody>
    </table>
  )
}

interface RowProps {
  readonly one: WorthAdding
  readonly say: SayPlan
  readonly taken: boolean
  readonly onTake: (take: boolean) => void
}

function Row({ one, say, taken, onTake }: RowProps) {
  const name = upperFirst(say.named(one.part))
  return (
    <FigureRow columns={3}>
      {(row) => (
        <>
          <th scope="row">
            <label className="job-take">
              <input type="checkbox" checked={taken} onChange={({ target }) => onTake(target.checked)} />
              <span>{name}</span>
            </label>
          </th>
          <td className="number" data-name={words.heads.now}>
            {row.of('now', priceFigure(name, one, say))}
          </td>
          <td className="full">{sayWhy(one, say)}</td>
        </>
      )}
    </FigureRow>
  )
}

function priceFigure(name: string, one: WorthAdding, { money, figure }: SayPlan): FigureSaid {
  const { price } = words
  return {
    says: money(one.price),
    behind: () => ({
      name: price.name(name),
      value: price.value(
        money(one.saves),
        money(one.error),
        figure(one.failures.left),
        figure(one.failures.renewed),
      ),
      comesFrom: price.from,
      moves: price.moves,
    }),
  }
}

interface AcceptProps {
  readonly of: OfSet
  readonly known: OfJob
  readonly own: Bundle
  readonly say: SayPlan
}

function Accept({ of, known: { job, log }, own, say }: AcceptProps) {
  const [state, setState] = useState<'still' | 'writing' | 'failed'>('still')
  if (own.parts.length === 0) return null
  if (log.readOnly) return <p className="small gap">{words.readOnly}</p>
  const write = async () => {
    setState('writing')
    const written = await log.append([acceptance(of, job, own, sayChoice(own, say))])
    setState(written.ok ? 'still' : 'failed')
  }
  return (
    <>
      <div className="acts">
        <Button look="filled" disabled={state === 'writing'} onClick={() => void write()}>
          {words.take}
        </Button>
      </div>
      {state === 'failed' && <p className="problem">{words.notWritten}</p>}
    </>
  )
}

/** The decision that takes further parts into a job: all that it is to do then. */
function acceptance({ boat, set }: OfSet, job: Job, own: Bundle, choice: string): Draft {
  const parts = [
    ...job.parts.map(({ part, did }) => ({ part, did })),
    ...own.parts.map((part) => ({ part, did: 'renewed' as const })),
  ]
  const what = job.what ?? upperFirst(job.name.replaceAll('-', ' '))
  return {
    kind: 'decision',
    boat,
    set,
    from: today(),
    body: {
      choice: words.choice(what, choice).slice(0, longestChoice),
      job: job.name,
      ...(job.alternative === undefined ? {} : { alternative: job.alternative }),
      parts,
    },
  } as Draft
}

/** As an entry may have it. */
const longestChoice = 1000

function sayer(
  { names, currency }: NonNullable<JobWorthState['of']>,
  said: (text: string) => string,
): SayPlan {
  return {
    named: (id) => said(names[id] ?? id.replaceAll('-', ' ')),
    money: (amount) => moneyIn(currency, amount),
    figure: (value) => sayNumber(value, 2),
  }
}

function numberIn(text: string): number | undefined {
  const bare = text.replace(/[\s,]/g, '')
  return /^\d+(\.\d+)?$/.test(bare) ? Number(bare) : undefined
}
