/**
 * What is coming: what is likely when, what it drags down, and what that rests on.
 *
 * @module
 */

import { useContext } from 'react'
import { monthsAhead as spans } from '../../forecast/odds.js'
import { useBoat } from '../data/boat.js'
import { basisInWords, RegionOfPage } from '../data/region.js'
import type { OfSet } from '../of-set.js'
import {
  Behind,
  Cautions,
  Failed,
  hole,
  Link,
  NumbersRow,
  NumbersTable,
  Passage,
  Preparing,
  Said,
} from '../parts/index.js'
import { pathTo } from '../routes.js'
import { words as alternatives } from '../words/alternatives.js'
import { words } from '../words/forecast.js'
import { words as back } from '../words/looking-back.js'
import { plural, sayNumber } from '../words/say.js'
import { useForecast } from '../work/answers.js'
import { entriesFigure, FailsTimes, TakenForGranted } from './alternatives-rests.js'
import { ComingPassage, OverTime } from './forecast-coming.js'
import { partFiguresOf } from './forecast-figures.js'
import { KnockOn } from './forecast-knock.js'
import { Lives, WhatGoesWhen } from './forecast-parts.js'
import { likeliestFirst, type OfForecast } from './of-forecast.js'
import { StopLines } from './stops.js'
import '../look/marks.css'

export function ForecastScreen({ boat, set }: OfSet) {
  const answer = useForecast(boat, set)
  const log = useBoat(boat)
  const basis = basisInWords(answer.basis, useContext(RegionOfPage))
  const { view, stage, following } = answer
  if (stage === 'failed') return <Failed title={words.title} words={words.failed} problem={answer.problem} />
  if (basis === undefined || view === undefined)
    return <Preparing title={words.title} words={words.preparing} />
  const of = { basis, view, log, keyOfAnswer: answer.key }
  return (
    <>
      <StopLines basis={basis} log={log} />
      <ComingPassage {...of} following={following} />
      <OverTime {...of} />
      <WhatGoesWhen {...of} />
      <Lives {...of} />
      <KnockOn {...of} />
      <Rests {...of} />
      <Passage title={back.ofForecast.title} says={back.ofForecast.says}>
        <Link to={pathTo({ page: 'looking-back', boat, set })}>{back.ofForecast.link}</Link>
      </Passage>
      <Passage title={alternatives.cautions.title} says={alternatives.cautions.says}>
        <Cautions list={alternatives.cautions.list} />
      </Passage>
    </>
  )
}

function Rests(of: OfForecast) {
  const { basis, view, log } = of
  const { rests } = words
  const told = Object.values(basis.restsOn).filter((entries) => entries.length > 0)
  const entries = [...new Set(told.flat())]
  const alone = basis.model.parts.length - told.length
  return (
    <Passage title={rests.title}>
      {entries.length === 0 ? (
        <p className="small prose">{rests.ofCatalogue}</p>
      ) : (
        <Said
          className="small prose"
          text={rests.says({
            entries: hole('entries'),
            parts: plural(told.length, 'part'),
            alone: plural(alone, 'part'),
          })}
          figures={{ entries: entriesFigure(log, { ids: entries, of: alternatives.rests.ofTheSet }) }}
        />
      )}
      {basis.register.letdowns.map(({ entry, times, firstDay, lastDay }) => (
        <p key={entry} className="small prose gap-small">
          {rests.letDowns(
            plural(times, 'time'),
            plural(Math.max(1, Math.round((lastDay - firstDay) / 365.25)), 'year'),
          )}
        </p>
      ))}
      <FailsTimes
        of={of}
        className="small prose gap-small"
        more={` ${rests.often} ${words.twenty.error({ lives: sayNumber(view.months.livesPerPart) })}`}
      />
      {basis.heard && <p className="small prose gap-small">{basis.heard}</p>}
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
  const heads = [...spans.map(table.months), table.stopping, table.defective, table.cost]
  return (
    <NumbersTable name={table.title} first={table.part} heads={heads}>
      {likeliestFirst(of).map((part) => {
        const { odds, name, money } = part
        const behind = partFiguresOf(of, part)
        return (
          <NumbersRow
            key={odds.part}
            name={name}
            heads={heads}
            figures={[
              ...odds.failing.map((chance, at) => behind.within(at, hundred(chance))),
              behind.stopping(hundred(odds.stopping[spans.indexOf(12)] ?? 0)),
              behind.defective(hundred(odds.defectiveNow)),
              behind.cost(money(odds.cost)),
            ]}
          />
        )
      })}
    </NumbersTable>
  )
}
