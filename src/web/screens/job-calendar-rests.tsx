/**
 * Beside the days of a job: what to order, power meanwhile, what can be added, and what all of it rests on.
 *
 * @module
 */

import { useState } from 'react'
import { moneyIn } from '../../alternatives/say.js'
import { inHundred } from '../../job/activities-words.js'
import type { Calendar, CalendarOrder } from '../../job/calendar.js'
import type { Moments } from '../../job/network-pert.js'
import { useSaid } from '../data/region.js'
import { EntryForm } from '../entry/entry-form.js'
import type { OfSet } from '../of-set.js'
import { Button, Heads, Lead, Passage } from '../parts/index.js'
import { words } from '../words/job-calendar.js'
import { lowerFirst, monthName, sayDate, sayList, sayNumber, upperFirst } from '../words/say.js'
import { sayDays } from './job-calendar-say.js'
import type { OfJob } from './job-frame.js'

interface OnlyCalendar {
  readonly calendar: Calendar
}

export function Orders({ calendar }: OnlyCalendar) {
  const inRegion = useSaid()
  const { orders, currency } = calendar
  const { orders: said } = words
  const due = orders.filter(({ isDue }) => isDue)
  const what = (order: CalendarOrder) => inRegion(order.what)
  const lead =
    due.length === 0 ? said.notToday : said.today(sayList(due.map((one) => lowerFirst(objectOf(what(one))))))
  return (
    <Passage title={said.title} says={said.says}>
      {orders.length === 0 ? (
        <p className="prose">{said.none}</p>
      ) : (
        <>
          <Lead>
            <b>{lead.bold}</b>
            {lead.after}
          </Lead>
          <table className="table folds gap">
            <Heads list={[said.heads.what, said.heads.by, said.heads.later]} />
            <tbody>
              {orders.map((order) => (
                <tr key={order.name}>
                  <th scope="row">{objectOf(what(order))}</th>
                  <td data-name={said.heads.by}>
                    {order.beginBy === null ? said.tooLate : sayDate(order.beginBy)}
                  </td>
                  <td data-name={said.heads.later}>{sayLater(order, currency)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </>
      )}
    </Passage>
  )
}

/** "Order the exhaust elbow, and wait for it" is about the exhaust elbow; what the owner wrote stays as it is. */
function objectOf(what: string): string {
  const [, object] = /^Order the (.+), and wait for it$/.exec(what) ?? []
  return object === undefined ? what : upperFirst(object)
}

function sayLater({ weekLater: { days, price } }: CalendarOrder, currency: string): string {
  const { orders: said } = words
  if (days < 0.05) return said.nothing
  const money = Math.round(price) >= 1 ? said.price(moneyIn(currency, price)) : ''
  return `${said.later(sayDays(days))}${money}`
}

export function PowerMeanwhile({ calendar: { months, price, currency } }: OnlyCalendar) {
  const { power: said } = words
  const [month, chance] = said.heads
  return (
    <Passage title={said.title} says={said.says}>
      {months.length === 0 ? (
        <p className="prose">{said.none}</p>
      ) : (
        <>
          <p className="prose">
            {said.price(moneyIn(currency, price.whole), moneyIn(currency, price.dayMore))}
          </p>
          <table className="table folds gap">
            <Heads list={[month, chance]} />
            <tbody>
              {months.map((one) => (
                <tr key={one.month}>
                  <th scope="row">
                    {monthName(Number(one.month.slice(5)) - 1)} {one.month.slice(0, 4)}
                  </th>
                  <td data-name={chance}>{inHundred(one.chance)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </>
      )}
    </Passage>
  )
}

const kinds = ['activity', 'free-days'] as const

/** Something more to be done, and days on which somebody is free. */
export function AddDays({ of, known }: { readonly of: OfSet; readonly known: OfJob }) {
  const [open, setOpen] = useState<(typeof kinds)[number]>()
  const { add: said } = words
  const { job, catalogue, register } = known
  return (
    <Passage title={said.title} says={said.says} className="screen-only">
      <div className="acts">
        {kinds.map((kind) => (
          <Button
            key={kind}
            aria-expanded={open === kind}
            onClick={() => setOpen(open === kind ? undefined : kind)}
          >
            {kind === 'activity' ? said.act : said.free}
          </Button>
        ))}
      </div>
      {open !== undefined && (
        <EntryForm
          key={open}
          boat={of.boat}
          set={of.set}
          purpose={{
            is: 'asked',
            name: `calendar-${open}`,
            kind: open,
            values: open === 'activity' ? { job: job.name } : {},
          }}
          currency={register.boatFacts.currency ?? 'USD'}
          catalogue={catalogue}
          onWritten={() => setOpen(undefined)}
        />
      )}
    </Passage>
  )
}

export function RestsOn({ calendar: { assumed, problems, byFormula, isDone } }: OnlyCalendar) {
  const { rests: said } = words
  const spread = ({ mean, sd }: Moments) => said.spread(sayNumber(mean), sayNumber(sd))
  return (
    <Passage title={said.title}>
      <ul className="prose">
        {problems.map(({ code, path, found, allowed }) => (
          <li key={`${code} ${path}`}>{said.turned(upperFirst(found), allowed)}</li>
        ))}
        {assumed.map((one) => (
          <li key={one}>{upperFirst(one)}.</li>
        ))}
        <li>{said.law}</li>
        {!isDone && <li>{said.formula(spread(byFormula.chain), spread(byFormula.met))}</li>}
      </ul>
    </Passage>
  )
}
