/**
 * What is still to be asked of each who offers, as a message to send; and what is paid ahead of the work.
 *
 * @module
 */

import { useState } from 'react'
import { messageTo, sayQuestion, sayWho, sayWorth } from '../../job/quotes-words.js'
import { Behind, Button, Heads, Passage } from '../parts/index.js'
import { words } from '../words/job-quotes.js'
import { sayDate, upperFirst } from '../words/say.js'
import type { AskedOffer, OfOffers } from './job-quotes-of.js'

interface AskProps {
  readonly of: OfOffers
  readonly told: readonly AskedOffer[]
}

export function QuestionsTo({ of, told }: AskProps) {
  const asked = told.filter(({ questions }) => questions.length > 0)
  return (
    <Passage title={words.ask} says={words.askSays}>
      {asked.length === 0 && <p className="prose">{words.askNone}</p>}
      {asked.map((one) => (
        <Asked key={one.offer.entry} of={of} one={one} />
      ))}
    </Passage>
  )
}

function Asked({ of: { say }, one }: { readonly of: OfOffers; readonly one: AskedOffer }) {
  const { offer, questions } = one
  const name = sayWho(offer, say)
  return (
    <section className="quote-asked" aria-label={name}>
      <h3>{upperFirst(name)}</h3>
      <ol>
        {questions.map((question) => (
          <li key={`${question.about} ${question.works.join(' ')}`}>
            {sayQuestion(question, offer, say)}{' '}
            <span className="second">{upperFirst(sayWorth(question, say))}.</span>
          </li>
        ))}
      </ol>
      <Message name={name} text={messageTo(offer, questions, say) ?? ''} />
    </section>
  )
}

function Message({ name, text }: { readonly name: string; readonly text: string }) {
  const [said, setSaid] = useState('')
  const copy = () => {
    void navigator.clipboard.writeText(text).then(
      () => setSaid(words.copied),
      () => setSaid(words.notCopied),
    )
  }
  return (
    <div className="quote-message">
      <Behind name={words.message(name)}>
        <pre>{text}</pre>
      </Behind>
      <div className="acts screen-only">
        <Button onClick={copy} aria-label={`${words.copy}: ${name}`}>
          {words.copy}
        </Button>
        <span aria-live="polite">{said}</span>
      </div>
    </div>
  )
}

export function PaidAheadOf({ of: { say }, told }: AskProps) {
  const staged = told.filter(({ ahead }) => ahead.stages.length > 0)
  if (staged.length === 0) return null
  return (
    <Passage title={words.ahead} says={words.aheadSays}>
      {staged.map(({ offer, ahead }) => {
        const name = upperFirst(sayWho(offer, say))
        return (
          <section key={offer.entry} className="quote-asked" aria-label={name}>
            <h3>{name}</h3>
            {ahead.beforeWork > 0 && <p className="prose">{words.before(say.money(ahead.beforeWork))}</p>}
            <table className="table" aria-label={name}>
              <Heads list={[words.stage, { number: words.paid }, { number: words.atRisk }]} />
              <tbody>
                {ahead.stages.map(({ when, money, ahead: risk }, i) => (
                  // biome-ignore lint/suspicious/noArrayIndexKey: two stages may be alike
                  <tr key={i}>
                    <th scope="row">{words.stages[when] ?? sayDate(when)}</th>
                    <td className="number">{say.money(money)}</td>
                    <td className="number">{say.money(risk)}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </section>
        )
      })}
    </Passage>
  )
}
