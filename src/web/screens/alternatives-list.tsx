/**
 * What is compared: a row for each alternative with its range, the table behind it, and what each is made of.
 *
 * @module
 */

import { useId, useState } from 'react'
import { openStops } from '../../alternatives/open-stops.js'
import { AxisNumbers, Gridlines, Range, RangeKey } from '../marks/range.js'
import { type Scale, scaleAround } from '../marks/scales.js'
import { Behind, Button, FigureButton, Opened, Passage, PlainButton, Tag, WideTable } from '../parts/index.js'
import { words } from '../words/alternatives.js'
import { sayNumber } from '../words/say.js'
import type { Row } from '../work/answer-view.js'
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
    <Passage title={list.title} says={list.says(years)}>
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

function AlternativeRow({ row, scale, best, view, basis, log, onChange }: RowProps) {
  const [open, setOpen] = useState(false)
  const id = useId()
  const money = moneyOf(view)
  const isBest = row.id === best.id
  const isOpenStop =
    row.barred !== undefined &&
    openStops(basis.register, basis.model).some(({ why }) => row.barred?.includes(why))
  const { low, middle, high } = row.costSpread
  return (
    <div className={`row ${isBest ? 'best' : ''}`}>
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
        <FigureButton
          open={open}
          onToggle={() => setOpen(!open)}
          controls={id}
          label={`${list.costName(row.name)}, ${money(row.cost.mean)}`}
        >
          {sayNumber(row.cost.mean)}
        </FigureButton>
        <span className="under whole">
          {isBest
            ? `± ${sayNumber(ninety * row.cost.standardError, 0)}`
            : `${row.against.mean < 0 ? '−' : '+'} ${sayNumber(Math.abs(row.against.mean), 0)} ± ${sayNumber(ninety * row.against.standardError, 0)}`}
        </span>
      </span>
      <span className="number">
        <span className="name-of">{list.stopsShort}</span>
        {sayNumber(row.stopsPerYear.mean, 1)}
      </span>
      <span className="number">
        <span className="name-of">{list.daysShort}</span>
        {sayNumber(row.daysWithoutPerYear.mean, 1)}
      </span>
      <span className="number">
        <span className="name-of">{list.dangersShort}</span>
        {sayNumber(row.dangers * 100, 1)}
      </span>
      {row.barred !== undefined && (
        <span className="whole-row">{isOpenStop ? list.stopAbove : `${row.barred} ${list.canBeChosen}`}</span>
      )}
      {open && (
        <span className="whole-row">
          <Opened
            id={id}
            behind={{
              name: list.costName(row.name),
              value: `${money(row.cost.mean)} ± ${money(ninety * row.cost.standardError)}: ${headingsOf(row, money)}`,
              comesFrom: list.costFrom(sayNumber(row.histories)),
              moves: list.costMoves,
            }}
          />
        </span>
      )}
    </div>
  )
}

type Headed = keyof typeof words.headings
const headingOrder = Object.keys(words.headings) as Headed[]

function headingsOf(row: Row, money: (amount: number) => string): string {
  return headingOrder
    .filter((heading) => Math.abs(row.headings[heading].mean) >= 0.5)
    .map((heading) => `${words.headings[heading]} ${money(row.headings[heading].mean)}`)
    .join(', ')
}

function TableBehind({ view, basis }: OfAnswer) {
  const most = basis.model.mostPayableInOneYear
  const money = moneyOf(view)
  const whole = (amount: number) => sayNumber(amount, 0)
  return (
    <WideTable name={list.behind}>
      <table className="table" style={{ minWidth: 700 }}>
        <thead>
          <tr>
            <th scope="col">{table.name(signOf(view))}</th>
            <th scope="col" className="number">
              {table.low}
            </th>
            <th scope="col" className="number">
              {table.middle}
            </th>
            <th scope="col" className="number">
              {table.high}
            </th>
            <th scope="col" className="number">
              {table.worst}
            </th>
            <th scope="col" className="number">
              {table.perYear}
            </th>
            <th scope="col" className="number">
              {table.largest}
            </th>
            {most !== undefined && (
              <th scope="col" className="number">
                {table.overMost(money(most))}
              </th>
            )}
            <th scope="col" className="number">
              {table.replaced}
            </th>
          </tr>
        </thead>
        <tbody>
          {view.rows.map((row) => (
            <tr key={row.id}>
              <th scope="row">
                {row.name}
                {row.barred === undefined ? '' : ` (${list.barred.toLowerCase()})`}
              </th>
              <td className="number">{whole(row.costSpread.low)}</td>
              <td className="number">{whole(row.costSpread.middle)}</td>
              <td className="number">{whole(row.costSpread.high)}</td>
              <td className="number">{whole(row.worstTenth)}</td>
              <td className="number">{whole(row.costPerYear)}</td>
              <td className="number">{whole(row.largestYear.mean)}</td>
              {row.overMost && (
                <td className="number">
                  {whole(row.overMost.mean * 100)} ± {whole(ninety * row.overMost.standardError * 100)}
                </td>
              )}
              <td className="number">{whole(row.replacedShare * 100)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </WideTable>
  )
}

/** The working: under which heads the money goes. */
function Headings({ view }: OfAnswer) {
  const shown = headingOrder.filter((heading) =>
    view.rows.some((row) => Math.abs(row.headings[heading].mean) >= 0.5),
  )
  return (
    <WideTable name={words.headingsName}>
      <table className="table" style={{ minWidth: 760 }}>
        <thead>
          <tr>
            <th scope="col">{table.name(signOf(view))}</th>
            {shown.map((heading) => (
              <th scope="col" key={heading} className="number">
                {words.headings[heading]}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {view.rows.map((row) => (
            <tr key={row.id}>
              <th scope="row">{row.name}</th>
              {shown.map((heading) => (
                <td key={heading} className="number">
                  {sayNumber(row.headings[heading].mean, 0)}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </WideTable>
  )
}
