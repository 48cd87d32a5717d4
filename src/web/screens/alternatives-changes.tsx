/**
 * What would change the answer: each input by itself, and two at once.
 *
 * @module
 */

import type { WhatChanges } from '../../alternatives/bearing.js'
import { sayBarred, sayInput, sayInputNow, sayInputValue, sayTurns } from '../../alternatives/say-bearing.js'
import type { InputTurns, Lead as LeadOf } from '../../alternatives/turning-points.js'
import type { TwoWayMap } from '../../alternatives/two-way-map.js'
import type { LifeModel } from '../../forecast/life-model.js'
import { useSaid } from '../data/region.js'
import { LeadBar, LeadKey, TieLine } from '../marks/lead-bar.js'
import { AxisNumbers } from '../marks/range.js'
import { type Scale, scaleAround } from '../marks/scales.js'
import { TwoWay } from '../marks/two-way.js'
import { Behind, type FigureSaid, NumbersRow, NumbersTable, Passage } from '../parts/index.js'
import { bearing } from '../words/bearing.js'
import { sayNumber, upperFirst } from '../words/say.js'
import { HowFar, type OfBearing } from './alternatives-finding.js'
import { moneyOf, nameIn, nameWithin, signOf } from './of-answer.js'

const { changes: words } = bearing

export function WouldChange(of: OfBearing) {
  const { changes } = of.bearing
  return (
    <Passage title={words.title} says={words.says} className="wide long">
      <HowFar bearing={of.bearing} has={changes !== undefined} />
      {changes === null && <p className="prose">{words.one}</p>}
      {changes && <Inputs {...of} changes={changes} />}
    </Passage>
  )
}

function Inputs(of: OfBearing & { readonly changes: WhatChanges }) {
  const { basis, view, changes } = of
  const { model } = basis
  const said = useSaid()
  const { turning, maps } = changes
  const inputs = [...turning.inputs].sort((a, b) => swing(b) - swing(a))
  const scale = scaleAround(
    inputs.flatMap(({ lead }) => [lead.low.value, lead.high.value]),
    { fromZero: true, ticks: 6 },
  )
  const shortly = (amount: number) => sayNumber(amount / 1000, decimalsOf(amount / 1000))
  return (
    <>
      <div className="inputs">
        <div className="row head">
          <span>{words.input}</span>
          <span className="axis-box">
            {`${words.ahead}, ${signOf(view)}\u00a0thousand`}
            <AxisNumbers scale={scale} say={shortly} />
          </span>
          <span>{words.turns}</span>
        </div>
        {inputs.map((input) => (
          <InputRow key={input.id} of={of} input={input} model={model} scale={scale} />
        ))}
      </div>
      <LeadKey low={words.keyLow} high={words.keyHigh} nought={words.keyNought} />
      {sayBarred(model, turning).map((line) => (
        <p key={line} className="prose gap-small">
          {said(line)}
        </p>
      ))}
      <Behind name={words.behind}>
        <NumbersTable name={words.behind} first={words.input} heads={[words.low, words.high]}>
          {inputs.map((input) => (
            <NumbersRow
              key={input.id}
              name={upperFirst(said(sayInput(input.id)))}
              heads={[words.low, words.high]}
              figures={[leadFigure(of, input, input.lead.low), leadFigure(of, input, input.lead.high)]}
            />
          ))}
        </NumbersTable>
      </Behind>
      <Behind name={words.maps}>
        {maps.map((map) => (
          <MapOf key={map.down.id} of={of} map={map} />
        ))}
      </Behind>
    </>
  )
}

/** As many decimals as a round number has. */
function decimalsOf(value: number): number {
  return `${Number(value.toFixed(3))}`.split('.')[1]?.length ?? 0
}

function swing({ lead }: InputTurns): number {
  return Math.abs(lead.high.value - lead.low.value)
}

function InputRow({
  of,
  input,
  model,
  scale,
}: {
  readonly of: OfBearing
  readonly input: InputTurns
  readonly model: LifeModel
  readonly scale: Scale
}) {
  const said = useSaid()
  const money = moneyOf(of.view)
  const { low, high } = input.lead
  const name = upperFirst(said(sayInput(input.id)))
  const now = sayInputNow(model, input)
  const label = words.drawing({ input: name, low: money(low.value), high: money(high.value) })
  return (
    <div className="row">
      <span className="name">
        <b>{name}</b>
        {now !== undefined && <span className="under">{`${words.now} ${now}`}</span>}
      </span>
      <span className="draws">
        <TieLine scale={scale} />
        <LeadBar
          scale={scale}
          low={low.value}
          high={high.value}
          turns={input.below !== undefined || input.above !== undefined}
          label={label}
        />
      </span>
      <span className="small">{said(sayTurns(model, input))}</span>
    </div>
  )
}

function leadFigure({ view }: OfBearing, { id }: InputTurns, { value, error }: LeadOf): FigureSaid {
  const money = moneyOf(view)
  return {
    says: money(value),
    behind: () => ({
      name: words.leadFigure.name(upperFirst(sayInput(id))),
      value: `${money(value)} ± ${money(error)}`,
      comesFrom: words.leadFigure.from,
    }),
  }
}

function MapOf({ of, map }: { readonly of: OfBearing; readonly map: TwoWayMap }) {
  const said = useSaid()
  const { model } = of.basis
  const across = (value: number) => sayInputValue(model, map.across.id, value)
  const down = (value: number) => sayInputValue(model, map.down.id, value)
  const within = nameWithin(of.view)
  const rows = map.rows
    .map(({ down: y, first, changes }) =>
      [
        words.mapRow(down(y), within(first)),
        ...changes.map(({ at, to }) => words.mapFrom(across(at), within(to))),
      ].join(', '),
    )
    .join('; ')
  const [acrossName, downName] = [said(sayInput(map.across.id)), said(sayInput(map.down.id))]
  return (
    <figure className="gap-small">
      <figcaption className="small">{upperFirst(words.map(acrossName, downName))}</figcaption>
      <TwoWay
        map={map}
        name={nameIn(of.view)}
        across={across}
        down={down}
        here={words.here}
        label={words.mapDrawing({ across: acrossName, down: downName, rows })}
      />
    </figure>
  )
}
