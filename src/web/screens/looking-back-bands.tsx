/**
 * Band by band of chance: what was expected and what came, drawn and as a table; and the score with its parts.
 *
 * @module
 */

import type { Hindsight } from '../../alternatives/hindsight.js'
import type { Band, Brier } from '../../forecast/calibration.js'
import { AxisNumbers } from '../marks/range.js'
import { scaleAround } from '../marks/scales.js'
import { ToldAgainstCame } from '../marks/told-against-came.js'
import { Behind, type FigureSaid, Lead, NumbersRow, NumbersTable, Passage } from '../parts/index.js'
import { words } from '../words/looking-back.js'
import { sayNumber } from '../words/say.js'

const { bands: said, score } = words
const heads = [said.heads.told, said.heads.expected, said.heads.came, said.heads.likely, said.heads.share]

export function Bands({ hindsight: { bands, allBands } }: { readonly hindsight: Hindsight }) {
  if (allBands === null) return null
  const rows = [
    ...bands.map((band) => ({ band, name: said.name(inHundred(band.from), inHundred(band.to)) })),
    { band: allBands, name: said.all },
  ]
  const most = rows.flatMap(({ band }) => [band.expectedBounds.high, band.came, 1])
  const scale = scaleAround(most, { fromZero: true, ticks: 4 })
  const whole = { ...scale, ticks: scale.ticks.filter(Number.isInteger) }
  return (
    <Passage title={said.title} says={said.says.map((line) => <p key={line}>{line}</p>)}>
      <ul className="told-came">
        {rows.map(({ band, name }) => (
          <li key={name}>
            <b>{name}</b>
            <ToldAgainstCame
              scale={whole}
              expected={band.expected}
              likely={band.expectedBounds}
              came={band.came}
              label={said.drawing({
                name,
                ...band.expectedBounds,
                expected: sayNumber(band.expected, 1),
                came: band.came,
              })}
            />
            <span className="small">
              {said.row(band.came, sayNumber(band.expected, 1))}
              <span className="second">, {said.judged[band.judged]}</span>
            </span>
          </li>
        ))}
        <li className="axis" aria-hidden="true">
          <span />
          <AxisNumbers scale={whole} say={(value) => sayNumber(value, 0)} />
        </li>
      </ul>
      <Behind name={said.behind}>
        <NumbersTable name={said.behind} first={said.band} heads={heads}>
          {rows.map(({ band, name }) => {
            const { told, expected, came, likely, share } = bandFigures(band, name)
            return (
              <NumbersRow
                key={name}
                name={name}
                heads={heads}
                figures={[told, expected, came, likely, share]}
              />
            )
          })}
        </NumbersTable>
      </Behind>
    </Passage>
  )
}

/** Everything behind the figures of a band. */
export function bandFigures(band: Band, name: string) {
  const { expectedBounds, shareBounds } = band
  const figure = (key: keyof typeof said.means, says: string): FigureSaid => ({
    says,
    behind: () => ({
      name: `${name}: ${said.heads[key].charAt(0).toLowerCase()}${said.heads[key].slice(1)}`,
      value: says,
      comesFrom: said.from,
      moves: said.means[key],
    }),
  })
  return {
    told: figure('told', sayNumber(band.told, 0)),
    expected: figure('expected', sayNumber(band.expected, 2)),
    came: figure('came', String(band.came)),
    likely: figure('likely', `${expectedBounds.low} to ${expectedBounds.high}`),
    share: figure('share', `${inHundred(shareBounds.low)} to ${inHundred(shareBounds.high)}`),
  }
}

function inHundred(share: number): string {
  return sayNumber(100 * share)
}

export function Score({ hindsight, brier }: { readonly hindsight: Hindsight; readonly brier: Brier }) {
  const fine = (value: number) =>
    Math.abs(value) < 5e-7
      ? '0'
      : value.toLocaleString('en-GB', { maximumSignificantDigits: 2 }).replace('-', '−')
  const why = Object.entries(score.why).flatMap(([key, says]) => {
    const count = hindsight.leftOut[key as keyof typeof score.why]
    return count === 0 ? [] : [`${count} ${says}`]
  })
  return (
    <Passage title={score.title} says={score.says}>
      <Lead>{brier.skill === null ? score.noSkill : score.skill(sayNumber(100 * brier.skill, 0))}</Lead>
      <p className="small prose gap-small">
        {score.parts({
          score: fine(brier.score),
          reliability: fine(brier.reliability),
          resolution: fine(brier.resolution),
          uncertainty: fine(brier.uncertainty),
          within: fine(brier.withinBands),
        })}
      </p>
      {why.length > 0 && <p className="small prose gap-small">{score.leftOut(why.join('; '))}</p>}
    </Passage>
  )
}
