/**
 * The parts of a set by what must be opened for them, and the last that the log says of each.
 *
 * @module
 */

import type { Basis } from '../../alternatives/figures.js'
import type { Look } from '../../register/register-types.js'
import type { Layout } from '../marks/side-view-pieces.js'
import { plural, sayDay, sayYears } from '../words/say.js'
import { words } from '../words/set.js'
import { likeliestFirst, type OfForecast, type PartShown } from './of-forecast.js'

/** Parts behind one way in. */
export interface Group {
  readonly id: string
  readonly letter: string
  readonly name: string
  /** To open and close it, with all that it includes. */
  readonly hours: number
  readonly parts: readonly PartShown[]
}

/** Groups from what is quickest opened to what is longest; within each, what goes first stands first. */
export function groupsOf(of: Pick<OfForecast, 'basis' | 'view'>): readonly Group[] {
  const { names, model } = of.basis
  const accessOf = new Map(model.parts.map(({ id, access }) => [id, access]))
  const hoursOf = (access: string): number => {
    const way = names.access[access]
    return way === undefined ? 0 : way.hours + way.includes.reduce((sum, other) => sum + hoursOf(other), 0)
  }
  const groups = new Map<string, PartShown[]>()
  for (const part of likeliestFirst(of)) {
    const ways = accessOf.get(part.odds.part) ?? []
    const deepest = ways.toSorted((a, b) => hoursOf(b) - hoursOf(a))[0] ?? ''
    const list = groups.get(deepest)
    if (list === undefined) groups.set(deepest, [part])
    else list.push(part)
  }
  return [...groups]
    .map(([id, parts]) => ({
      id,
      name: names.access[id]?.name ?? words.side.nothingToOpen,
      hours: hoursOf(id),
      parts,
    }))
    .sort((a, b) => a.hours - b.hours)
    .map((group, i) => ({ ...group, letter: String.fromCharCode(65 + i) }))
}

/** Parts that something was found at: broken, seen defective, with a danger that is not made safe, or under a stop. */
export function foundIn({
  register,
  model,
  stops,
}: Pick<Basis, 'register' | 'model' | 'stops'>): ReadonlySet<string> {
  const known = new Set(model.parts.map(({ id }) => id))
  const found = [
    ...register.broken.map(({ part }) => part),
    ...register.openDefects.flatMap(onlyPart),
    ...stops.flatMap(({ parts }) => (parts.length === 1 ? parts : [])),
  ]
  return new Set(found.filter((part) => known.has(part)))
}

/** Parts of which one may be behind something seen. */
export function suspectedIn(basis: Pick<Basis, 'register' | 'model' | 'stops'>): ReadonlySet<string> {
  const found = foundIn(basis)
  const several = basis.register.openDefects.filter((look) => onlyPart(look).length === 0)
  return new Set(
    several.flatMap(({ about }) => about.map(({ part }) => part)).filter((part) => !found.has(part)),
  )
}

/** The part that a look is about, if it is about one alone. */
function onlyPart({ about }: Look): string[] {
  const parts = [...new Set(about.map(({ part }) => part))]
  return parts.length === 1 ? parts : []
}

/** The last that the log says of a part, in a line. */
export function evidenceOf({ odds, entries }: PartShown, { register }: Pick<Basis, 'register'>): string {
  const { part } = odds
  const { groups } = words
  const of = register.parts.get(part)
  const age = of === undefined || of.age === 'unknown' ? undefined : `${sayYears(of.age.years)} old`
  const seen = register.openDefects.filter(({ about }) => about.some((each) => each.part === part)).at(-1)
  if (seen !== undefined) {
    const what = firstWords(seen.seen) ?? groups.seenPlain
    return (onlyPart(seen).length === 1 ? groups.seen : groups.maybe)(what, sayDay(seen.day))
  }
  const look = register.looks
    .filter(({ about, verdict }) => verdict === 'nothing-seen' && about.some((each) => each.part === part))
    .at(-1)
  const mend = of?.mends.at(-1)
  const last =
    mend !== undefined && (look === undefined || mend.day >= look.day)
      ? groups.did(groups.deeds[mend.did] ?? mend.did, sayDay(mend.day))
      : look !== undefined
        ? groups.nothingSeen(sayDay(look.day))
        : undefined
  if (entries.length === 0) return [age, groups.silent].filter(Boolean).join('; ')
  return [age, last, groups.entries(plural(entries.length, 'entry', 'entries'))].filter(Boolean).join('; ')
}

/** As much of a remark as fits beside a drawing. */
function firstWords(text: string | undefined): string | undefined {
  if (text === undefined) return undefined
  const clause = text.split(/[.;]/)[0]!.trim()
  return clause.length <= 80 ? clause : `${clause.slice(0, 77).replace(/\s+\S*$/, '')} …`
}

/** How the set is drawn. */
export function layoutOf({ register }: Pick<Basis, 'register'>): Layout {
  const { ratingKw = 8, rpm = 1500, bearings = 1, excitation = 'brushless-regulator' } = register.setFacts
  return { ratingKw, rpm, bearings, regulator: excitation.endsWith('regulator') }
}
