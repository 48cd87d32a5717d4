/**
 * The paragraph after the answer: from when to when, how much was told, and what was likely.
 *
 * @module
 */

import type { Hindsight } from '../../alternatives/hindsight.js'
import { hole, Said } from '../parts/index.js'
import { words } from '../words/looking-back.js'
import { plural, sayDate, sayNumber } from '../words/say.js'
import { bandFigures } from './looking-back-bands.js'

export function ToldLead({ hindsight }: { readonly hindsight: Hindsight }) {
  const { dates, months, allBands, wholeSet } = hindsight
  if (allBands === null) return null
  const { told, likely } = bandFigures(allBands, words.bands.all)
  const { low, high } = allBands.expectedBounds
  return (
    <Said
      className="lead"
      text={`${words.lead({
        dates: plural(dates.length, 'forecast'),
        first: sayDate(dates[0]!.asOf),
        last: sayDate(dates.at(-1)!.asOf),
        months,
        told: hole('told'),
        bounds: hole('likely'),
      })} ${words.set({
        stopped: sayNumber(wholeSet.came),
        spans: plural(wholeSet.spans, 'span'),
        expected: sayNumber(wholeSet.expected, 1),
      })}`}
      figures={{
        told: { ...told, says: plural(allBands.told, 'chance') },
        likely: { ...likely, says: `${low} to ${high}` },
      }}
    />
  )
}
