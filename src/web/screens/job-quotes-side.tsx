/**
 * Offers side by side: a row for each with its range on one scale.
 *
 * @module
 */

import { sayWho } from '../../job/quotes-words.js'
import { AxisNumbers, Gridlines, Range, RangeKey } from '../marks/range.js'
import { type Scale, scaleAround } from '../marks/scales.js'
import { Passage, Tag } from '../parts/index.js'
import { words } from '../words/job-quotes.js'
import { sayChance, sayDate, sayNumber, upperFirst } from '../words/say.js'
import type { AskedOffer, OfOffers } from './job-quotes-of.js'

interface SideProps {
  readonly of: OfOffers
  readonly told: readonly AskedOffer[]
}

export function SideBySide({ of, told }: SideProps) {
  const { heads } = words
  const sign = of.say.money(1).replace('1', '').trim()
  const scale = scaleAround(
    told.flatMap(({ spread }) => [spread.low, spread.high]),
    { fromZero: false, ticks: 6 },
  )
  const [best] = told
  if (best === undefined) return null
  return (
    <Passage title={words.sideBySide} says={words.sideBySideSays} className="wide long">
      <div className="quotes">
        <div className="row head">
          <span>{heads.offer}</span>
          <span className="axis-box">
            {heads.axis(sign)}
            <AxisNumbers scale={scale} say={(value) => sayNumber(value / 1000, 1)} />
          </span>
          <span className="number">{heads.all}</span>
          <span className="number">{heads.cheapest}</span>
          <span className="number">{heads.walkAway}</span>
        </div>
        {told.map((one) => (
          <OfferRow
            key={one.offer.entry}
            of={of}
            one={one}
            best={best}
            scale={scale}
            alone={told.length === 1}
          />
        ))}
      </div>
      <RangeKey range={words.range} mark={words.mark} />
    </Passage>
  )
}

interface RowProps {
  readonly of: OfOffers
  readonly one: AskedOffer
  readonly best: AskedOffer
  readonly scale: Scale
  /** There is no other offer. */
  readonly alone: boolean
}

function OfferRow({ of: { say }, one, best, scale, alone }: RowProps) {
  const { offer, expected, spread, cheapest, walkAwayPrice } = one
  const { heads } = words
  const name = upperFirst(sayWho(offer, say))
  const isBest = one === best && !alone
  const { low, middle, high } = spread
  return (
    <div className={`row ${isBest ? 'best' : ''}`}>
      <span className="name">
        <b>{name}</b> {isBest && <Tag look="underlined">{words.best}</Tag>}{' '}
        {offer.expired && <Tag look="outline">{words.lapsed}</Tag>}
        <span className="under">
          {words.asOffered(say.money(offer.amount), sayDate(offer.from))}
          {offer.inPlaceOf.length > 0 && `, ${words.inPlaceOf(offer.inPlaceOf.length)}`}
        </span>
      </span>
      <span className="draws">
        <Gridlines scale={scale} mark={best.expected} />
        <Range
          scale={scale}
          low={low}
          middle={middle}
          high={high}
          expected={expected}
          look={isBest ? 'best' : undefined}
          say={(amount) => sayNumber(amount / 1000, 1)}
          label={words.drawing({
            name,
            low: say.money(low),
            middle: say.money(middle),
            high: say.money(high),
          })}
        />
      </span>
      <span className="number">
        <span className="name-of">{heads.all}</span>
        <b>{say.money(expected)}</b>
      </span>
      <span className="number">
        <span className="name-of">{heads.cheapest}</span>
        {alone ? '–' : sayChance(cheapest)}
      </span>
      <span className="number">
        <span className="name-of">{heads.walkAway}</span>
        {walkAwayPrice === undefined
          ? '–'
          : walkAwayPrice > 0
            ? say.money(walkAwayPrice)
            : words.notEvenFreeShort}
      </span>
    </div>
  )
}
