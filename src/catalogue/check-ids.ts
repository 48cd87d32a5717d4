/**
 * What an entry may name as the check or the test that it is of.
 *
 * @module
 */

import type { Catalogue } from './catalogue.js'

/** Ids of the checks of ordinary care, and of the tests that are owed after work. */
export function checkIdsOf({ checks, owed }: Pick<Catalogue, 'checks' | 'owed'>): ReadonlySet<string> {
  return new Set([...checks.map(({ id }) => id), ...owed.stages.flatMap(({ tests }) => tests)])
}
