/**
 * What may be passed over with a written reason, and what no reason lifts.
 *
 * @module
 */

import type { Catalogue } from './catalogue.js'
import type { StopLine } from './stop-line-schema.js'

/** Tests that close a stop line which no reason lifts. */
export function neverPassedOver(stopLines: readonly StopLine[]): ReadonlySet<string> {
  return new Set(
    stopLines
      .filter((line) => line.neverPassedOver)
      .flatMap(({ opensByTests }) => opensByTests.map(({ test }) => test)),
  )
}

/** Stop lines and tests by name, each with whether a reason passes it over. */
export function passableOf({
  stopLines,
  owed,
}: Pick<Catalogue, 'stopLines' | 'owed'>): ReadonlyMap<string, boolean> {
  const never = neverPassedOver(stopLines)
  return new Map([
    ...owed.stages.flatMap(({ tests }) => tests.map((test) => [test, !never.has(test)] as const)),
    // A line and a test of one name: what the line says holds.
    ...stopLines.map((line) => [line.id, line.neverPassedOver !== true] as const),
  ])
}
