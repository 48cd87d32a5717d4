/**
 * What is compared: a row for each alternative with its range, the table behind it, and what each is made of.
 *
 * @module
 */

import type { Row } from '../../alternatives/answer-view.js'
import { AxisNumbers, Gridlines, Range, RangeKey } from '../marks/range.js'
import { type Scale, scaleAround } from '../marks/scales.js'
import {
  Behind,
  Button,
  NumbersRow,
  NumbersTable,
  Passage,
  PlainButton,
  Tag,
  useFigures,
} from '../parts/index.js'
import { words } from '../words/alternatives.js'
import { sayNumber } from '../words/say.js'
import { figuresOf, headingOrder } from './alternatives-figures.js'
import { moneyOf, ninety, type OfAnswer, signOf } from './of-answer.js'

const { list, table } = words
const thousands = (amount: number) => sayNumber(amount / 1000, 1)

export interface ListProps extends OfAnswer {
  /** Opens the form for an alternative, or for a new one. */
  readonly onChange: (id: string) => void
}

export function AlternativesList(props: ListProps) {
  const { view, log } = props
  const years = `${sayNumber(view.horizonYears)}\u00a0years`
  const spreads = view.rows.flatMap(({ costSpread }) => [costSpread.low, costSpread.high])
  const scale = scaleAround(spreads, { fromZero: false, ticks: 6 })
  const best = view.rows.find(({ id }) => id === view.report.verdict.best)!
  return (
    <Passage title={list.title} says={list.says(years)} className="wide long">
      <div className="alternatives">
        <div className="row head">
          <span>{list.name}</span>
          <span className="axis-box">
            {list.axis(years, signOf(view))}
            <AxisNumbers scale={scale} say={(value) => sayNumber(value / 1000, scale.high < 5000 ? 1 : 0)} />
          </span>
          <span className="number">{list.expected(signOf(view))}</span>
          <span className="number">{list.stops}</span>
          <span className="number">{list.days}</span>
          <span className="number">{list.dangers}</span>
        </div>
        {view.rows.map((row) => (
          <AlternativeRow key={row.id} {...props} row={row} scale={scale} best={best} />
        ))}
      </div>
      <RangeKey range={list.range} mark={list.mark} />
      <p className="fine prose gap-small">{list.errorNote(sayNumber(view.histories))}</p>
      {!log.readOnly && (
        <div className="acts">
          <Button look="light" onClick={() => props.onChange('')}>
            {list.add}
          </Button>
        </div>
      )}
      <Behind name={list.behind}>
        <TableBehind {...props} />
      </Behind>
      <Behind name={list.working}>
        <Headings {...props} />
      </Behind>
    </Passage>
  )
}

interface RowProps extends ListProps {
  readonly row: Row
  readonly scale: Scale
  readonly best: Row
}

function AlternativeRow({ row, scale, best, onChange, ...of }: RowProps) {
  const { view, basis, log } = of
  const figures = useFigures()
  const behind = figuresOf(of)
  const money = moneyOf(view)
  const isBest = row.id === best.id
  const isOpenStop =
    row.barred !== undefined &&
    basis.stops.some(({ why, passedOver }) => passedOver === undefined && row.barred?.includes(why))
  const { low, middle, high } = row.costSpread
  const against = `${row.against.mean < 0 ? '−' : '+'}\u00a0${sayNumber(Math.abs(row.against.mean), 0)} ±\u00a0${sayNumber(ninety * row.against.standardError, 0)}`
  const named = (name: string) => ({ label: `${row.name}: ${name}` })
  return (
    <div className={`row opens ${isBest ? 'best' : ''}`}>
      <span className="name">
        <b>{row.name}</b> {isBest && <Tag look="underlined">{list.best}</Tag>}
        {row.barred !== undefined && <Tag look="solid">{list.barred}</Tag>}{' '}
        {!log.readOnly && (
          <PlainButton
            className="fine screen-only"
            onClick={() => onChange(row.id)}
            aria-label={`${list.change}: ${row.name}`}
          >
            {list.change}
          </PlainButton>
        )}
      </span>
      <span className="draws">
        <Gridlines scale={scale} mark={best.cost.mean} />
        <Range
          scale={scale}
          low={low}
          middle={middle}
          high={high}
          expected={row.cost.mean}
          look={isBest ? 'best' : row.barred === undefined ? undefined : 'barred'}
          say={thousands}
          label={list.drawing({ name: row.name, low: money(low), middle: money(middle), high: money(high) })}
        />
      </span>
      <span className="number">
        <span className="name-of">{list.expectedShort}</span>
        {figures.of('cost', behind.cost(row, sayNumber(row.cost.mean)), {
          ...named(list.expectedShort),
          leads: true,
        })}
        <span className="under whole">
          {isBest
            ? `±\u00a0${sayNumber(ninety * row.cost.standardError, 0)}`
            : figures.of('against', behind.against(row, against), named(list.againstShort))}
        </span>
      </span>
      <span className="number">
        <span className="name-of">{list.stopsShort}</span>
        {figures.of('stops', behind.stops(row, sayNumber(row.stopsPerYear.mean, 1)), named(list.stops))}
      </span>
      <span className="number">
        <span className="name-of">{list.daysShort}</span>
        {figures.of('days', behind.days(row, sayNumber(row.daysWithoutPerYear.mean, 1)), named(list.days))}
      </span>
      <span className="number">
        <span className="name-of">{list.dangersShort}</span>
        {figures.of('dangers', behind.dangers(row, sayNumber(row.dangers * 100, 1)), named(list.dangers))}
      </span>
      {row.barred !== undefined && (
        <span className="whole-row">{isOpenStop ? list.stopAbove : `${row.barred} ${list.canBeChosen}`}</span>
      )}
      {figures.any && <span className="whole-row">{figures.opened()}</span>}
    </div>
  )
}

function TableBehind(of: OfAnswer) {
  const { view, basis } = of
  const most = basis.model.mostPayableInOneYear
  const money = moneyOf(view)
  const behind = figuresOf(of)
  const whole = (amount: number) => sayNumber(amount, 0)
  const heads = [
    table.low,
    table.middle,
    table.high,
    table.worst,
    table.perYear,
    table.largest,
    ...(most === undefined ? [] : [table.overMost(money(most))]),
    table.replaced,
  ]
  return (
    <NumbersTable name={list.behind} first={table.name(signOf(view))} heads={heads}>
      {view.rows.map((row) => (
        <NumbersRow
          key={row.id}
          name={`${row.name}${row.barred === undefined ? '' : ` (${list.barred.toLowerCase()})`}`}
          heads={heads}
          figures={[
            behind.share(row, 'low', whole(row.costSpread.low)),
            behind.share(row, 'middle', whole(row.costSpread.middle)),
            behind.share(row, 'high', whole(row.costSpread.high)),
            behind.worst(row, whole(row.worstTenth)),
            behind.perYear(row, whole(row.costPerYear)),
            behind.largest(row, whole(row.largestYear.mean)),
            ...(row.overMost
              ? [
                  behind.overMost(
                    row,
                    `${whole(row.overMost.mean * 100)} ±\u00a0${whole(ninety * row.overMost.standardError * 100)}`,
                  ),
                ]
              : []),
            behind.replaced(row, whole(row.replacedShare * 100)),
          ]}
        />
      ))}
    </NumbersTable>
  )
}

/** The working: under which heads the money goes. */
function Headings(of: OfAnswer) {
  const { view } = of
  const behind = figuresOf(of)
  const shown = headingOrder.filter((heading) =>
    view.rows.some((row) => Math.abs(row.headings[heading].mean) >= 0.5),
  )
  const heads = shown.map((heading) => words.headings[heading])
  return (
    <NumbersTable name={words.headingsName} first={table.name(signOf(view))} heads={heads}>
      {view.rows.map((row) => (
        <NumbersRow
          key={row.id}
          name={row.name}
          heads={heads}
          figures={shown.map((heading) =>
            behind.heading(row, heading, sayNumber(row.headings[heading].mean, 0)),
          )}
        />
      ))}
    </NumbersTable>
  )
}
