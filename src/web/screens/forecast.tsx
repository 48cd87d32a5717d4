/**
 * What is coming: what is likely when, what it drags down, and what that rests on.
 *
 * @module
 */

import { useBoat } from '../data/boat.js'
import type { OfSet } from '../of-set.js'
import { Behind, Cautions, Lead, Passage, Say, WideTable } from '../parts/index.js'
import { words as alternatives } from '../words/alternatives.js'
import { words } from '../words/forecast.js'
import { plural, sayNumber } from '../words/say.js'
import { useForecast } from '../work/answers.js'
import { TakenForGranted } from './alternatives-rests.js'
import { ComingPassage, OverTime } from './forecast-coming.js'
import { KnockOn } from './forecast-knock.js'
import { Lives, WhatGoesWhen } from './forecast-parts.js'
import { likeliestFirst, type OfForecast } from './of-forecast.js'
import { StopLines } from './stops.js'
import '../look/marks.css'

export function ForecastScreen({ boat, set }: OfSet) {
  const answer = useForecast(boat, set)
  const log = useBoat(boat)
  const { basis, view, stage, following } = answer
  if (stage === 'failed') {
    return (
      <Passage title={words.title} first>
        <Say>{words.failed.say}</Say>
        <Lead>{words.failed.lead}</Lead>
        <p className="small gap-small">{answer.problem}</p>
      </Passage>
    )
  }
  if (basis === undefined || view === undefined) {
    return (
      <Passage title={words.title} first>
        <div aria-live="polite">
          <Say>{words.preparing.say}</Say>
          <Lead>{words.preparing.lead}</Lead>
        </div>
      </Passage>
    )
  }
  const of = { basis, view, log, keyOfAnswer: answer.key }
  return (
    <>
      <StopLines basis={basis} />
      <ComingPassage {...of} following={following} />
      <OverTime {...of} />
      <WhatGoesWhen {...of} />
      <Lives {...of} />
      <KnockOn {...of} />
      <Rests {...of} />
      <Passage title={alternatives.cautions.title} says={alternatives.cautions.says}>
        <Cautions list={alternatives.cautions.list} />
      </Passage>
    </>
  )
}

function Rests(of: OfForecast) {
  const { basis, view } = of
  const { rests } = words
  const told = Object.values(basis.restsOn).filter((entries) => entries.length > 0)
  const entries = new Set(told.flat())
  const alone = basis.model.parts.length - told.length
  return (
    <Passage title={rests.title}>
      <p className="small prose">
        {entries.size === 0
          ? rests.ofCatalogue
          : rests.says({
              entries: sayNumber(entries.size),
              parts: plural(told.length, 'part'),
              alone: plural(alone, 'part'),
            })}
      </p>
      {basis.register.letdowns.map(({ entry, times, firstDay, lastDay }) => (
        <p key={entry} className="small prose gap-small">
          {rests.letDowns(
            plural(times, 'time'),
            plural(Math.max(1, Math.round((lastDay - firstDay) / 365.25)), 'year'),
          )}
        </p>
      ))}
      <p className="small prose gap-small">
        {alternatives.rests.fails({
          times: sayNumber(basis.failsTimes.mean, 1),
          low: sayNumber(basis.failsTimes.low, 1),
          high: sayNumber(basis.failsTimes.high, 1),
        })}{' '}
        {rests.often} {words.twenty.error({ lives: sayNumber(view.months.livesPerPart) })}
      </p>
      <TakenForGranted title={alternatives.rests.assumed} list={basis.assumed} />
      <Behind name={words.table.title}>
        <AllParts {...of} />
      </Behind>
    </Passage>
  )
}

function AllParts(of: OfForecast) {
  const { table } = words
  const hundred = (chance: number) => sayNumber(chance * 100, chance < 0.1 ? 1 : 0)
  return (
    <WideTable name={table.title}>
      <table className="table" style={{ minWidth: 820 }}>
        <thead>
          <tr>
            <th scope="col">{table.part}</th>
            {[3, 6, 12, 24].map((months) => (
              <th scope="col" key={months} className="number">
                {table.months(months)}
              </th>
            ))}
            <th scope="col" className="number">
              {table.stopping}
            </th>
            <th scope="col" className="number">
              {table.defective}
            </th>
            <th scope="col" className="number">
              {table.cost}
            </th>
          </tr>
        </thead>
        <tbody>
          {likeliestFirst(of).map(({ odds, name, money }) => (
            <tr key={odds.part}>
              <th scope="row">{name}</th>
              {odds.failing.map((chance, i) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: the spans are always the same four
                <td key={i} className="number">
                  {hundred(chance)}
                </td>
              ))}
              <td className="number">{hundred(odds.stopping[2] ?? 0)}</td>
              <td className="number">{hundred(odds.defectiveNow)}</td>
              <td className="number">{money(odds.cost)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </WideTable>
  )
}
