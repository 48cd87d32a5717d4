/**
 * Past choices: what was said where an answer was kept, what was done, and what came after.
 *
 * @module
 */

import { useSaid } from '../data/region.js'
import { Lead, Passage } from '../parts/index.js'
import { words } from '../words/looking-back.js'
import { lowerFirst, plural, sayDate, sayList, sayNumber } from '../words/say.js'
import type { LookedAtChoice } from '../work/look-back-says.js'
import type { Saying } from './looking-back-saying.js'

const { choices: said } = words

export function PastChoices({
  choices,
  saying,
}: {
  readonly choices: readonly LookedAtChoice[]
  readonly saying: Saying
}) {
  return (
    <Passage title={said.title} says={said.says}>
      {choices.length === 0 && <Lead>{said.none}</Lead>}
      <ol className="past-choices">
        {choices.toReversed().map((choice) => (
          <li key={choice.entry}>
            <Choice choice={choice} saying={saying} />
          </li>
        ))}
      </ol>
    </Passage>
  )
}

function sayThen(then: LookedAtChoice['said'], money: Saying['money']): string {
  if (then === undefined) return said.nothingKept
  if ('verdict' in then) return said.wouldHaveSaid(then.verdict)
  return said.said(lowerFirst(then.best), then.walkAway === undefined ? undefined : money(then.walkAway))
}

function Choice({ choice, saying }: { readonly choice: LookedAtChoice; readonly saying: Saying }) {
  const { asOf, kind, what, quoted, said: then, isAsked, after } = choice
  const { money, part } = saying
  const inRegion = useSaid()
  const parts = (ids: readonly string[]) => sayList([...new Set(ids)].map(part))
  const done = after.done.map(({ day, parts: worked, set }) =>
    set === undefined
      ? said.work({ day: sayDate(day), parts: parts(worked) })
      : said.setMoved({ day: sayDate(day), set }),
  )
  return (
    <>
      <h3>
        {sayDate(asOf)}. {said.kinds[kind]}: {what}
        {quoted !== undefined && <span className="second">, {said.quoted(money(quoted))}</span>}
      </h3>
      <p className="small prose">{isAsked ? said.isAsked : inRegion(sayThen(then, money))}</p>
      <p className="small prose">{said.done(done.length === 0 ? said.nothingDone : done.join('; '))}</p>
      <p className="small prose">
        {said.after({
          until: sayDate(after.until),
          failures: after.failures.length === 0 ? said.noFailure : said.failures(parts(after.failures)),
          stops: plural(after.stops, 'stop'),
          days: `${sayNumber(after.daysWithoutPower)}\u00a0${after.daysWithoutPower === 1 ? 'day' : 'days'}`,
          paid: money(after.paid),
        })}
      </p>
    </>
  )
}
