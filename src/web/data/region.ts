/**
 * The catalogue in the words of a boat's region.
 *
 * @module
 */

import type { Catalogue } from '../../catalogue/catalogue.js'
import { inRegion, type Region } from '../words/settings.js'

const american = new WeakMap<Catalogue, Catalogue>()

/** The same catalogue; only names differ. */
export function catalogueInWords(
  catalogue: Catalogue | undefined,
  region: Region | undefined,
): Catalogue | undefined {
  if (catalogue === undefined || region !== 'american') return catalogue
  const before = american.get(catalogue)
  if (before !== undefined) return before
  const named = <T extends { readonly name: string }>(one: T): T => ({
    ...one,
    name: inRegion(one.name, region),
  })
  const said: Catalogue = {
    ...catalogue,
    parts: catalogue.parts.map((part) => ({ ...named(part), modes: part.modes.map(named) })),
    checks: catalogue.checks.map(named),
    dangers: catalogue.dangers.map(named),
  }
  american.set(catalogue, said)
  return said
}
