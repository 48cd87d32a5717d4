/**
 * The set: its side view as the way in, its parts by what must be opened, its dangers and protections.
 *
 * @module
 */

import { useContext } from 'react'
import { useBoat } from '../data/boat.js'
import { basisInWords, RegionOfPage } from '../data/region.js'
import { LifeKey } from '../marks/life-row.js'
import { SideView } from '../marks/side-view.js'
import type { OfSet } from '../of-set.js'
import { Failed, type FigureSaid, hole, Passage, Preparing, Said, Say, useFigures } from '../parts/index.js'
import { figures } from '../words/figures.js'
import { words as forecastWords } from '../words/forecast.js'
import { lowerFirst, plural, sayHours, sayList, shortName } from '../words/say.js'
import { words } from '../words/set.js'
import { useForecast } from '../work/answers.js'
import { type NamedPath, Overruling } from './behind-figures.js'
import { LifeOfPart } from './forecast-parts.js'
import type { OfForecast } from './of-forecast.js'
import { evidenceOf, foundIn, type Group, groupsOf, layoutOf, suspectedIn } from './set-parts.js'
import { Dangers, Protections, Spent } from './set-safety.js'
import { StopLines } from './stops.js'
import '../look/marks.css'
import '../look/set.css'

export function SetScreen({ boat, set }: OfSet) {
  const answer = useForecast(boat, set)
  const log = useBoat(boat)
  const basis = basisInWords(answer.basis, useContext(RegionOfPage))
  const { view, stage } = answer
  if (stage === 'failed')
    return <Failed title={words.title} words={forecastWords.failed} problem={answer.problem} />
  if (basis === undefined || view === undefined)
    return <Preparing title={words.title} words={words.preparing} />
  const of = { basis, view, log, keyOfAnswer: answer.key }
  const groups = groupsOf(of)
  return (
    <>
      <StopLines basis={basis} log={log} />
      <Head of={of} groups={groups} following={answer.following} />
      <Side of={of} groups={groups} />
      <Passage title={words.groups.title} says={words.groups.says.map((line) => <p key={line}>{line}</p>)}>
        {groups.map((group) => (
          <GroupOfParts key={group.id} group={group} of={of} />
        ))}
        <LifeKey words={forecastWords.lives.key} />
      </Passage>
      <Dangers {...of} />
      <Protections {...of} />
      <Spent {...of} />
    </>
  )
}

interface Grouped {
  readonly of: OfForecast
  readonly groups: readonly Group[]
}

function Head({ of, groups, following }: Grouped & { readonly following: boolean }) {
  const { basis } = of
  const found = foundIn(basis)
  const suspected = suspectedIn(basis)
  const covers = groups.filter(({ parts }) => parts.some(({ odds }) => found.has(odds.part))).length
  const name = (part: string) => lowerFirst(shortName(basis.names.parts[part] ?? part))
  const unknown = basis.model.parts.filter(({ id }) => {
    const age = basis.register.parts.get(id)?.age
    return age === undefined || age === 'unknown'
  })
  const silent = basis.model.parts.filter(({ id }) => (basis.restsOn[id] ?? []).length === 0)
  const counted = (title: string, parts: typeof unknown): FigureSaid => ({
    says: String(parts.length),
    behind: () => ({
      name: title,
      value: sayList(parts.map(({ id }) => name(id))) || figures.set.none,
      comesFrom: figures.counted,
      moves: figures.set.moves,
    }),
  })
  const sentence = words.found({
    count: words.numbers[found.size] ?? words.things(found.size),
    covers: words.covers(covers),
  })
  return (
    <Passage
      title={words.title}
      first
      says={
        <>
          <p>{words.parts(plural(basis.model.parts.length, 'part'))}</p>
          {following && <p>{words.following}</p>}
        </>
      }
    >
      <Say>
        {found.size === 0 && suspected.size > 0 ? (
          <>
            <b>{words.suspectedOnly.bold}</b>
            {words.suspectedOnly.after(
              sayList(
                [...suspected].map((part) => `the ${name(part)}`),
                'or',
              ),
            )}
          </>
        ) : found.size === 0 ? (
          <>
            <b>{words.foundNothing.bold}</b>
            {words.foundNothing.after}
          </>
        ) : (
          <>
            <b>{sentence.before}</b>
            {sentence.after}
          </>
        )}
      </Say>
      <Said
        className="lead"
        text={words.lead({
          found:
            found.size > 0
              ? words.theFound(capital(sayList([...found].map((part) => `the ${name(part)}`))))
              : '',
          unknown: `there are ${hole('unknown')}`,
          silent: hole('silent'),
        })}
        figures={{
          unknown: counted(figures.set.unknown, unknown),
          silent: counted(figures.set.silent, silent),
        }}
      />
    </Passage>
  )
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}

function Side({ of, groups }: Grouped) {
  const { basis } = of
  const found = foundIn(basis)
  const suspected = suspectedIn(basis)
  const name = (part: string) => lowerFirst(shortName(basis.names.parts[part] ?? part))
  const { side } = words
  const ways = groups.map((group) => ({
    ...group,
    foundCount: group.parts.filter(({ odds }) => found.has(odds.part)).length,
  }))
  return (
    <Passage title={side.title} says={side.says}>
      <SideView
        layout={layoutOf(basis)}
        parts={new Set(basis.model.parts.map(({ id }) => id))}
        found={found}
        suspected={suspected}
        waysIn={ways.map(({ id, letter, name: way, foundCount }) => ({
          access: id,
          letter,
          name: `${letter}: ${way}${foundCount > 0 ? `, ${side.foundIn(foundCount)}` : ''}`,
          found: foundCount > 0,
          href: `#way-${letter}`,
        }))}
        label={side.drawing({
          found: sayList([...found].map(name)),
          suspected: sayList([...suspected].map(name)),
        })}
      />
      <nav className="ways-in" aria-label={side.letters}>
        {ways.map(({ id, letter, name: way, hours, parts, foundCount }) => (
          <a key={id} href={`#way-${letter}`}>
            <span className="letter" aria-hidden="true">
              {letter}
            </span>
            <span>
              <b>{way}</b>
              <span className="under">
                {[
                  hours === 0 ? side.readAndFeel : sayHours(hours),
                  plural(parts.length, 'part'),
                  ...(foundCount > 0 ? [side.foundIn(foundCount)] : []),
                ].join(', ')}
              </span>
            </span>
          </a>
        ))}
      </nav>
    </Passage>
  )
}

function GroupOfParts({ group, of }: { readonly group: Group; readonly of: OfForecast }) {
  const { id, letter, name, hours, parts } = group
  const opening = useFigures()
  const toOpen: FigureSaid = {
    says: sayHours(hours),
    behind: () => ({
      name: figures.set.open(name),
      value: sayHours(hours),
      comesFrom: figures.set.openFrom,
      moves: figures.set.openMoves,
      overrule: <Overruling of={of} paths={waysIn(of, id)} />,
    }),
  }
  return (
    <section className="group" id={`way-${letter}`} aria-label={name}>
      <h3>
        <span className="letter" aria-hidden="true">
          {letter}
        </span>
        {name}
        <span className="time">
          {hours === 0
            ? words.side.readAndFeel
            : opening.fill(words.side.toOpen(hole('hours')), { hours: toOpen })}
        </span>
      </h3>
      {opening.opened()}
      <div className="lives">
        {parts.map((part) => (
          <LifeOfPart key={part.odds.part} part={part} of={of} under={evidenceOf(part, of.basis)} />
        ))}
      </div>
    </section>
  )
}

/** A way in and all that it includes, each with its own hours. */
function waysIn(of: OfForecast, id: string): NamedPath[] {
  const way = of.basis.names.access[id]
  if (way === undefined) return []
  return [
    { path: `access.${id}.setUpHours.owner`, name: way.name },
    ...way.includes.flatMap((other) => waysIn(of, other)),
  ]
}
