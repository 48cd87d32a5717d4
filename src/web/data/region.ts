/**
 * What the core says, in the words of a boat's region.
 *
 * @module
 */

import { createContext, useContext } from 'react'
import type { AnswerView } from '../../alternatives/answer-view.js'
import type { Basis } from '../../alternatives/figures.js'
import type { Catalogue } from '../../catalogue/catalogue.js'
import { inRegion, type Region } from '../words/region.js'
import { withUnits } from '../words/say.js'

/** The words of the boat whose page is open. */
export const RegionOfPage = createContext<Region | undefined>(undefined)

/** Says a sentence in the words of the boat whose page is open. */
export function useSaid(): (sentence: string) => string {
  const region = useContext(RegionOfPage)
  return (sentence) => inRegion(sentence, region)
}

/** The same catalogue; only what is read of it differs. */
export const catalogueInWords = inWords((catalogue: Catalogue, said): Catalogue => {
  const named = <T extends { readonly name: string }>(one: T): T => ({ ...one, name: said(one.name) })
  return {
    ...catalogue,
    parts: catalogue.parts.map((part) => ({ ...named(part), modes: part.modes.map(named) })),
    access: catalogue.access.map(named),
    checks: catalogue.checks.map(named),
    dangers: catalogue.dangers.map(named),
  }
})

/** What an answer starts from. */
export const basisInWords = inWords((basis: Basis, said): Basis => {
  const { names, model, assumed } = basis
  const named = <T extends { readonly name?: string | undefined }>(one: T): T =>
    one.name === undefined ? one : { ...one, name: said(one.name) }
  return {
    ...basis,
    assumed: assumed.map(said),
    names: {
      parts: each(names.parts, said),
      checks: each(names.checks, said),
      modes: each(names.modes, said),
      access: each(names.access, named),
      dangers: each(names.dangers, (danger) => ({ ...named(danger), caution: said(danger.caution) })),
    },
    model: {
      ...model,
      parts: model.parts.map(named),
      candidates: model.candidates.map(named),
      alternatives: model.alternatives.map((one) => ({ ...named(one), ...barredIn(one, said) })),
    },
  }
})

/** The rows of an answer. */
export const viewInWords = inWords(
  (view: AnswerView, said): AnswerView => ({
    ...view,
    rows: view.rows.map((row) => ({ ...row, name: said(row.name), ...barredIn(row, said) })),
  }),
)

type Said = (sentence: string) => string

function barredIn(of: { readonly barred?: string | undefined }, said: Said): { barred?: string } {
  return of.barred === undefined ? {} : { barred: said(of.barred) }
}

function each<T>(of: Readonly<Record<string, T>>, say: (one: T) => T): Readonly<Record<string, T>> {
  return Object.fromEntries(Object.entries(of).map(([id, one]) => [id, say(one)]))
}

/** Says a value in the words of a region, numbers not parted from their units, once for each value. */
function inWords<T extends object>(
  say: (value: T, said: Said) => T,
): (value: T | undefined, region: Region | undefined) => T | undefined {
  const before = { british: new WeakMap<T, T>(), american: new WeakMap<T, T>() }
  return (value, region = 'british') => {
    if (value === undefined) return value
    const known = before[region].get(value)
    if (known !== undefined) return known
    const made = say(value, (sentence) => withUnits(inRegion(sentence, region)))
    before[region].set(value, made)
    return made
  }
}
