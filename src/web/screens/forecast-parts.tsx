/**
 * What goes when, as twenty boats, and the ages of the parts with half gone on one upright.
 *
 * @module
 */

import { useState } from 'react'
import { MonthLetters } from '../marks/chance-over-time.js'
import { LifeKey, LifeRow } from '../marks/life-row.js'
import { boats, boatsByMonth, leastDrawn } from '../marks/twenty.js'
import { TwentyBoats } from '../marks/twenty-boats.js'
import { Button, Passage, useFigures } from '../parts/index.js'
import { words } from '../words/forecast.js'
import { monthName, plural, sayChance, sayYears } from '../words/say.js'
import { partFiguresOf } from './forecast-figures.js'
import { firstYearOf, likeliestFirst, type OfForecast, type PartShown } from './of-forecast.js'
import { foundIn } from './set-parts.js'

const few = 12

export function WhatGoesWhen(of: OfForecast) {
  const [all, setAll] = useState(false)
  const { months } = of.view.months
  const parts = likeliestFirst(of)
  const shown = all ? parts : parts.slice(0, few)
  const firstYear = firstYearOf(of)
  const { twenty } = words
  const letters = (
    <span className="letters-box">
      <MonthLetters months={months} firstYear={firstYear} />
    </span>
  )
  return (
    <Passage
      title={twenty.title}
      says={twenty.says.map((line) => <p key={line}>{line}</p>)}
      className="wide long"
    >
      <div className="boats">
        <div className="row axis">
          <span />
          {letters}
          <span className="count fine">{twenty.within(months.length - 1)}</span>
        </div>
        {shown.map((part) => (
          <BoatsRow key={part.odds.part} part={part} of={of} firstYear={firstYear} />
        ))}
        <div className="row axis below">
          <span />
          {letters}
          <span />
        </div>
      </div>
      {parts.length > few && (
        <div className="acts">
          <Button look="light" onClick={() => setAll(!all)}>
            {all ? twenty.showFew : twenty.showAll(parts.length)}
          </Button>
        </div>
      )}
    </Passage>
  )
}

interface RowProps {
  readonly part: PartShown
  readonly of: OfForecast
  readonly firstYear: number
}

function BoatsRow({ part, of, firstYear }: RowProps) {
  const figures = useFigures()
  const { months } = of.view.months
  const { byMonth, name } = part
  const counts = boatsByMonth(byMonth)
  const most = Math.max(...counts)
  const whole = byMonth.at(-1)!
  const count = whole < leastDrawn ? sayChance(whole) : words.twenty.of(Math.round(whole * boats))
  const when = most > 1 ? words.twenty.mostlyIn(monthName(months[counts.indexOf(most)]!.month)) : ''
  return (
    <div className="row opens">
      <span>
        <b>{name}</b>
        <span className="under">{restsOnWords(part)}</span>
      </span>
      <TwentyBoats
        months={months}
        firstYear={firstYear}
        failing={byMonth}
        label={words.twenty.drawing({ part: name, count, when })}
      />
      <span className="count">
        {figures.of('boats', partFiguresOf(of, part).boats(count), { label: name, leads: true, bold: true })}
      </span>
      {figures.any && <span className="whole-row">{figures.opened()}</span>}
    </div>
  )
}

export function restsOnWords({ entries }: Pick<PartShown, 'entries'>): string {
  return entries.length === 0
    ? words.twenty.catalogueOnly
    : words.twenty.entries(plural(entries.length, 'entry', 'entries'))
}

export function Lives(of: OfForecast) {
  const parts = likeliestFirst(of).slice(0, few)
  const { lives } = words
  return (
    <Passage
      title={lives.title}
      says={lives.says.map((line) => <p key={line}>{line}</p>)}
      className="wide long"
    >
      <div className="lives">
        {parts.map((part) => (
          <LifeOfPart key={part.odds.part} part={part} of={of} />
        ))}
      </div>
      <LifeKey words={lives.key} />
    </Passage>
  )
}

/** The age of one part against the ages by which such parts have gone. */
export function LifeOfPart({
  part,
  of,
  under,
}: {
  readonly part: PartShown
  readonly of: OfForecast
  readonly under?: string
}) {
  const figures = useFigures()
  const { basis } = of
  const { span, name } = part
  const { lives } = words
  const age = ageOf(part, basis)
  const said = typeof age === 'number' ? lives.age(sayYears(age)) : lives.unknown
  return (
    <div className="row opens">
      <span>
        <b>{name}</b>
        <span className="under">{under ?? said}</span>
      </span>
      <span className="draws">
        <LifeRow
          span={span}
          age={age}
          looks={looksOf(part, basis, age)}
          found={foundIn(basis).has(part.odds.part)}
          label={lives.drawing({
            part: name,
            age: said,
            tenth: sayYears(span.tenth),
            half: sayYears(span.half),
            ninth: sayYears(span.ninth),
          })}
        />
      </span>
      <span className="count">
        <span className="under">{lives.half}</span>
        {figures.of('half', partFiguresOf(of, part).half(sayYears(span.half)), {
          label: `${name}, ${lives.half}`,
          leads: true,
          bold: true,
        })}
      </span>
      {figures.any && <span className="whole-row">{figures.opened()}</span>}
    </div>
  )
}

/** Age now; a part that nobody has dated is at most as old as the set. */
function ageOf(
  { odds }: PartShown,
  { register, model }: OfForecast['basis'],
): number | { readonly atMost: number } {
  const age = register.parts.get(odds.part)?.age
  return age === undefined || age === 'unknown' ? { atMost: model.set.ageYears } : age.years
}

function looksOf(
  { odds }: PartShown,
  { register }: OfForecast['basis'],
  age: ReturnType<typeof ageOf>,
): number[] {
  const now = typeof age === 'number' ? age : age.atMost
  const ages = register.looks
    .filter(
      ({ verdict, about }) => verdict === 'nothing-seen' && about.some(({ part }) => part === odds.part),
    )
    .map(({ day }) => now - (register.asOfDay - day) / 365.25)
  return [...new Set(ages.filter((years) => years > 0))].slice(-6)
}
